package web

import (
	"net/http"

	"rootbell/internal/garden"
	"rootbell/internal/paper/pack"
	"rootbell/internal/paper/scene"
)

// showPapers lists the papers of the garden.
func (s *Server) showPapers(w http.ResponseWriter, r *http.Request) {
	o, a, ok := s.ready(w, r)
	if !ok {
		return
	}
	s.show(w, http.StatusOK, "papers", s.frameOf(r, o, a, "papers", "Papers"), struct {
		ID     string
		Papers []pack.Paper
	}{o.ID, pack.Build(a)})
}

// downloadPaper draws one paper, for the paper that is in the printer.
func (s *Server) downloadPaper(w http.ResponseWriter, r *http.Request) {
	_, a, ok := s.ready(w, r)
	if !ok {
		return
	}
	p, ok := pack.Find(a, r.PathValue("name"))
	if !ok {
		s.refuse(w, r, http.StatusNotFound, "There is no such paper for this garden now.", "The page 'papers' lists all of them.")
		return
	}
	text, err := p.Draw(sizeOf(a, r.URL.Query().Get("paper")))
	if err != nil {
		s.refuse(w, r, http.StatusInternalServerError, "The paper could not be drawn: "+err.Error()+".", "Change the measures and try again.")
		return
	}
	w.Header().Set("Content-Type", p.Kind.MediaType())
	w.Header().Set("Content-Disposition", `attachment; filename="`+p.Name+`"`)
	_, _ = w.Write(text)
}

// sizeOf is the size of paper asked for, else the plan's.
func sizeOf(a *garden.Assessment, asked string) scene.Size {
	if asked == "" {
		asked = a.Paper()
	}
	if asked == "Letter" {
		return scene.Letter
	}
	return scene.A4
}

// showPaperPage is a paper as a page.
func (s *Server) showPaperPage(w http.ResponseWriter, r *http.Request) {
	s.refuse(w, r, http.StatusNotFound, "This paper has no page yet.", "Download it instead.")
}
