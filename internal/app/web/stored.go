package web

import (
	"errors"
	"net/http"
	"os"
	"path/filepath"

	"rootbell/internal/app/store"
)

// showStored says what is kept where, and what is not.
func (s *Server) showStored(w http.ResponseWriter, r *http.Request) {
	gardens, err := s.Store.Gardens(r.Context())
	if err != nil {
		s.failed(w, r, err)
		return
	}
	f := s.plainFrame(r, "What is stored where", "stored")
	f.Message = messages[r.URL.Query().Get("said")]
	s.show(w, http.StatusOK, "stored", f, struct {
		Data    string
		Gardens []store.Garden
		Version string
	}{s.Data, gardens, s.Version})
}

// showSafety is the page of cautions.
func (s *Server) showSafety(w http.ResponseWriter, r *http.Request) {
	s.show(w, http.StatusOK, "safety", s.plainFrame(r, "Safety", "safety"), nil)
}

// exportGarden gives one garden with all its revisions as one text file.
func (s *Server) exportGarden(w http.ResponseWriter, r *http.Request) {
	o, ok := s.open(w, r)
	if !ok {
		return
	}
	if o.Example {
		s.downloadText(w, r)
		return
	}
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	w.Header().Set("Content-Disposition", `attachment; filename="`+fileName(o.Name)+`.garden.txt"`)
	if err := s.Store.Export(r.Context(), o.ID, w); err != nil {
		s.failed(w, r, err)
	}
}

// importGarden reads one garden back.
func (s *Server) importGarden(w http.ResponseWriter, r *http.Request) {
	file, _, err := r.FormFile("file")
	if err != nil {
		s.refuse(w, r, http.StatusBadRequest, "No file was chosen, or it was too long.", "Choose the text file that 'take a garden along' made.")
		return
	}
	g, err := s.Store.Import(r.Context(), file, s.Now())
	_ = file.Close() // it was only read
	var refused *store.Refused
	switch {
	case err == nil:
		http.Redirect(w, r, pageAddress("build", g.ID, "", "imported"), http.StatusSeeOther)
	case errors.As(err, &refused):
		s.refuse(w, r, http.StatusUnprocessableEntity, "The file was not read in: "+refused.Error()+".", "Nothing of it was stored. Choose another file.")
	default:
		s.failed(w, r, err)
	}
}

// downloadBackup is the whole database as one file, made while it is in use.
func (s *Server) downloadBackup(w http.ResponseWriter, r *http.Request) {
	folder, err := os.MkdirTemp("", "rootbell-backup")
	if err != nil {
		s.failed(w, r, err)
		return
	}
	defer func() { _ = os.RemoveAll(folder) }() // a temporary copy that was sent
	path := filepath.Join(folder, "rootbell.db")
	if err := s.Store.Backup(r.Context(), path); err != nil {
		s.failed(w, r, err)
		return
	}
	w.Header().Set("Content-Type", "application/octet-stream")
	w.Header().Set("Content-Disposition", `attachment; filename="rootbell-`+s.Now().Format("2006-01-02")+`.db"`)
	http.ServeFile(w, r, path)
}
