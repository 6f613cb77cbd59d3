package web

import (
	"fmt"
	"net/http"
	"strconv"

	"rootbell/internal/garden/plan"
)

// historyBody lists the revisions of a garden, or shows one against the next.
type historyBody struct {
	ID        string
	Revisions []revisionView
	One       *revisionView
	Against   int
	Changes   []plan.Difference
	Lines     []lineChange
}

type revisionView struct {
	Number    int
	When, Why string
	Latest    bool
}

func (s *Server) showHistory(w http.ResponseWriter, r *http.Request) {
	o, ok := s.open(w, r)
	if !ok {
		return
	}
	if o.Example {
		s.refuse(w, r, http.StatusNotFound, "An example has no earlier plans.", "Make it yours first: each time you save, the plan before is kept.")
		return
	}
	revisions, err := s.Store.Revisions(r.Context(), o.ID)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	body := historyBody{ID: o.ID}
	for i, rev := range revisions {
		body.Revisions = append(body.Revisions, revisionView{rev.Number, rev.At.In(o.Now.Location()).Format("Mon 2 Jan 2006, 15:04"), rev.Why, i == 0})
	}
	f := s.frameOf(r, o, nil, "text", "Earlier plans")
	f.Message = messages[r.URL.Query().Get("said")]
	s.show(w, http.StatusOK, "history", f, body)
}

// showRevision shows what one revision changed.
func (s *Server) showRevision(w http.ResponseWriter, r *http.Request) {
	number, err := strconv.Atoi(r.PathValue("number"))
	if err != nil || number < 1 {
		s.refuse(w, r, http.StatusNotFound, "There is no such revision.", "Open 'earlier plans' for the list.")
		return
	}
	o, err := s.garden(r.Context(), r.PathValue("garden"), number, viewing{})
	if err != nil {
		s.failed(w, r, err)
		return
	}
	g, err := s.Store.Garden(r.Context(), o.ID)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	var before []byte
	if number > 1 {
		rev, err := s.Store.Revision(r.Context(), o.ID, number-1)
		if err != nil {
			s.failed(w, r, err)
			return
		}
		before = rev.Text
	}
	one := revisionView{number, o.Revision.At.In(o.Now.Location()).Format("Mon 2 Jan 2006, 15:04"), o.Revision.Why, g.Revision == number}
	body := historyBody{ID: o.ID, One: &one, Against: number - 1, Lines: linesChanged(before, o.Text)}
	if before != nil {
		body.Changes = plan.Differences(before, o.Text)
	}
	s.show(w, http.StatusOK, "history", s.frameOf(r, o, nil, "text", fmt.Sprintf("Revision %d", number)), body)
}

// goBack makes an earlier text the latest one again, as a new revision.
func (s *Server) goBack(w http.ResponseWriter, r *http.Request) {
	number, err := strconv.Atoi(r.PathValue("number"))
	if err != nil || number < 1 {
		s.refuse(w, r, http.StatusNotFound, "There is no such revision.", "Open 'earlier plans' for the list.")
		return
	}
	id := r.PathValue("garden")
	old, err := s.Store.Revision(r.Context(), id, number)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	g, err := s.Store.Garden(r.Context(), id)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	if s.save(w, r, id, g.Revision, old.Text, nil, fmt.Sprintf("back to revision %d", number)) {
		http.Redirect(w, r, "/g/"+id+"/history?said=returned", http.StatusSeeOther)
	}
}
