package web

import (
	"net/http"
	"strings"

	"rootbell/internal/garden/plan"
)

// viewing is the units and the paper chosen where no garden of one's own is
// open: on the first page, in the examples, on the pages about safety.
type viewing struct{ Units, Paper string }

const (
	unitsCookie = "rootbell-units"
	paperCookie = "rootbell-paper"
)

// viewOf reads what was chosen; what was not, or is no choice, is left empty.
func viewOf(r *http.Request) viewing {
	pick := func(name string, words ...string) string {
		c, err := r.Cookie(name)
		if err != nil {
			return ""
		}
		for _, word := range words {
			if c.Value == word {
				return word
			}
		}
		return ""
	}
	return viewing{pick(unitsCookie, "metric", "us"), pick(paperCookie, "A4", "Letter")}
}

// orElse fills what was not chosen.
func (v viewing) orElse() viewing {
	if v.Units == "" {
		v.Units = "metric"
	}
	if v.Paper == "" {
		v.Paper = map[string]string{"metric": "A4", "us": "Letter"}[v.Units]
	}
	return v
}

// apply shows an example in the units and for the paper chosen.
func (v viewing) apply(text []byte) []byte {
	for path, word := range map[string]string{"units": v.Units, "paper": v.Paper} {
		if word == "" {
			continue
		}
		if out, err := plan.Edit(text, path, word); err == nil {
			text = out
		}
	}
	return text
}

// chooseView switches units or paper: in a garden of one's own that is a change
// of the plan, elsewhere it is kept in the browser.
func (s *Server) chooseView(w http.ResponseWriter, r *http.Request) {
	back := r.FormValue("back")
	if !strings.HasPrefix(back, "/") || strings.HasPrefix(back, "//") || strings.ContainsAny(back, "\\\r\n") {
		back = "/"
	}
	id := r.FormValue("garden")
	for _, c := range []struct {
		path, cookie string
		words        []string
	}{{"units", unitsCookie, []string{"metric", "us"}}, {"paper", paperCookie, []string{"A4", "Letter"}}} {
		word := r.FormValue(c.path)
		if word != c.words[0] && word != c.words[1] {
			continue
		}
		if id == "" || strings.HasPrefix(id, examplePrefix) {
			http.SetCookie(w, &http.Cookie{Name: c.cookie, Value: word, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode, MaxAge: 366 * 24 * 3600})
			continue
		}
		if !s.editLatest(w, r, id, c.path, word, "shown in other units or on other paper") {
			return
		}
	}
	http.Redirect(w, r, back, http.StatusSeeOther)
}

// editLatest changes one value of the latest text.
func (s *Server) editLatest(w http.ResponseWriter, r *http.Request, id, path, typed, why string) bool {
	rev, err := s.Store.Revision(r.Context(), id, 0)
	if err != nil {
		s.failed(w, r, err)
		return false
	}
	text, err := plan.Edit(rev.Text, path, typed)
	if err != nil {
		s.refuse(w, r, http.StatusConflict, "The plan could not be changed: "+err.Error()+".", "Mend it on the page 'plan as text' first.")
		return false
	}
	if _, err := s.Store.Save(r.Context(), id, rev.Number, nameOf(text), text, why, s.Now()); err != nil {
		s.failed(w, r, err)
		return false
	}
	return true
}
