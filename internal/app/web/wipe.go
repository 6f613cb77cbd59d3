package web

import (
	"errors"
	"net/http"
	"strconv"
	"strings"

	"rootbell/internal/app/store"
	"rootbell/internal/garden/plan"
)

// wipeBody asks once more before a class is wiped.
type wipeBody struct {
	ID, Name string
	Base     int
	Keys     string // of the latest plan, in words
	Readings int
}

// wipeClass takes the class out of a garden at the end of the year: the first
// press shows what goes and what stays, the second does it.
func (s *Server) wipeClass(w http.ResponseWriter, r *http.Request) {
	o, ok := s.open(w, r)
	if !ok {
		return
	}
	if o.Example {
		s.readOnly(w, r)
		return
	}
	if err := r.ParseForm(); err != nil {
		s.refuse(w, r, http.StatusRequestEntityTooLarge, "The form was too long or broken, so nothing was read.", "Go back and try again.")
		return
	}
	if !r.PostForm.Has("sure") {
		s.askWipe(w, r, o)
		return
	}
	base, err := strconv.Atoi(r.PostForm.Get("sure"))
	if err != nil || base < 1 {
		s.refuse(w, r, http.StatusBadRequest, "This form does not say which plan it began from, so nothing was wiped.", "Open the page 'What is stored where' again.")
		return
	}
	wiped, err := s.Store.WipeClass(r.Context(), o.ID, base, plan.WithoutClass, "the class wiped at the end of the year", s.Now())
	var changed *store.Conflict
	var refused *store.Refused
	switch {
	case err == nil && wiped.Left:
		http.Redirect(w, r, "/stored?said=wipedleft", http.StatusSeeOther)
	case err == nil:
		http.Redirect(w, r, "/stored?said=wiped", http.StatusSeeOther)
	case errors.As(err, &changed):
		s.refuse(w, r, http.StatusConflict, "The plan was changed meanwhile, so nothing was wiped.", "Look at it, then press again on the page 'What is stored where'.")
	case errors.As(err, &refused):
		s.refuse(w, r, http.StatusUnprocessableEntity, "Nothing was wiped: "+refused.What+".", sentence(refused.Hint))
	default:
		s.failed(w, r, err)
	}
}

// askWipe is the page between the two presses.
func (s *Server) askWipe(w http.ResponseWriter, r *http.Request, o *opened) {
	tagged, err := s.Store.Tagged(r.Context(), o.ID)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	f := s.plainFrame(r, "Wipe the class", "stored")
	f.Here = "/stored"
	s.show(w, http.StatusOK, "wipe", f, wipeBody{ID: o.ID, Name: o.Name, Base: o.Revision.Number, Keys: strings.Join(plan.ClassKeys(o.Text), ", "), Readings: tagged})
}
