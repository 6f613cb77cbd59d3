package web

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strconv"

	"rootbell/internal/app/store"
	"rootbell/internal/garden/plan"
)

// edit is one change of a plan's text; Whole puts a group or a list as a whole.
type edit struct {
	plan.Change
	Whole bool
}

// applied is a text with edits made, and what could not be: each at its field.
func applied(text []byte, edits []edit) ([]byte, []plan.Problem) {
	var problems []plan.Problem
	var values []plan.Change
	for _, e := range edits {
		if !e.Whole {
			values = append(values, e.Change)
		}
	}
	text, refused := plan.EditAll(text, values)
	for _, r := range refused {
		problems = append(problems, plan.Problem{Field: r.Path, What: r.Error(), Hint: "Change it on the page 'plan as text'."})
	}
	for _, e := range edits {
		if !e.Whole {
			continue
		}
		out, err := plan.Replace(text, e.Path, e.Typed)
		if err != nil {
			problems = append(problems, plan.Problem{Field: e.Path, What: err.Error(), Hint: "Change it on the page 'plan as text'."})
			continue
		}
		text = out
	}
	return text, problems
}

// nameOf is what the garden of a text is called.
func nameOf(text []byte) string {
	name, _, _, _ := plan.Value(text, "garden")
	return name
}

// save stores a text as the next revision. A conflict shows both sides and
// stores nothing; what else went wrong is answered too, and ok is false.
func (s *Server) save(w http.ResponseWriter, r *http.Request, id string, base int, text []byte, mine []edit, why string) (ok bool) {
	_, err := s.Store.Save(r.Context(), id, base, nameOf(text), text, why, s.Now())
	var conflict *store.Conflict
	switch {
	case err == nil:
		return true
	case errors.As(err, &conflict):
		s.showConflict(w, r, id, base, conflict.Latest, text, mine)
	default:
		s.failed(w, r, err)
	}
	return false
}

// conflictBody is a change that met another one.
type conflictBody struct {
	ID          string
	Base, Now   int
	When, Why   string
	Theirs      []plan.Difference
	Mine        []mineView
	Overlap     bool
	Text        string // the whole text, where it was typed as text
	Back        string
	Differences []plan.Difference // theirs against mine, where the text was typed
}

type mineView struct {
	edit
	Words   string
	Touched bool // the other one changed it too
}

// showConflict shows what the other tab changed beside what this one wants.
func (s *Server) showConflict(w http.ResponseWriter, r *http.Request, id string, base int, latest store.Revision, text []byte, mine []edit) {
	o, err := s.garden(r.Context(), id, 0, viewing{})
	if err != nil {
		s.failed(w, r, err)
		return
	}
	began, err := s.Store.Revision(r.Context(), id, base)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	body := conflictBody{
		ID: id, Base: base, Now: latest.Number, Why: latest.Why, When: latest.At.In(o.Now.Location()).Format("Mon 2 Jan, 15:04"),
		Theirs: plan.Differences(began.Text, latest.Text), Back: r.Header.Get("Referer"),
	}
	for _, m := range mine {
		was, _, _, _ := plan.Value(began.Text, m.Path)
		is, _, _, _ := plan.Value(latest.Text, m.Path)
		touched := was != is
		if m.Whole {
			for _, d := range body.Theirs {
				touched = touched || len(d.Path) >= len(m.Path) && d.Path[:len(m.Path)] == m.Path
			}
		}
		body.Mine = append(body.Mine, mineView{m, plan.PathWords(text, m.Path), touched})
		body.Overlap = body.Overlap || touched
	}
	if mine == nil {
		body.Text = string(text)
		body.Differences = plan.Differences(latest.Text, text)
	}
	f := s.frameOf(r, o, nil, "build", "Two changes")
	f.Here = "/g/" + id + "/build"
	s.show(w, http.StatusConflict, "conflict", f, body)
}

// merge puts changes on top of the revision that the conflict showed.
func (s *Server) merge(w http.ResponseWriter, r *http.Request) {
	o, ok := s.open(w, r)
	if !ok {
		return
	}
	if o.Example {
		s.readOnly(w, r)
		return
	}
	base, _ := strconv.Atoi(r.FormValue("base"))
	edits := postedEdits(r.PostForm)
	text, problems := applied(o.Text, edits)
	if len(problems) == 0 {
		_, problems = plan.Parse("plan", text)
	}
	if len(problems) > 0 {
		s.refuse(w, r, http.StatusUnprocessableEntity, "The two changes do not fit together: "+problems[0].What+".", problems[0].Hint)
		return
	}
	if s.save(w, r, o.ID, base, text, edits, "put on top of a change made in another tab") {
		http.Redirect(w, r, "/g/"+o.ID+"/build?said=saved", http.StatusSeeOther)
	}
}

// postedEdits reads the edits that a conflict's page carries.
func postedEdits(posted url.Values) []edit {
	var out []edit
	for i := range mostHoles {
		at := func(end string) string { return fmt.Sprintf("mine.%d.%s", i, end) }
		if !posted.Has(at("path")) {
			break
		}
		if posted.Get("only") == "untouched" && posted.Get(at("touched")) != "" {
			continue
		}
		out = append(out, edit{plan.Change{Path: posted.Get(at("path")), Typed: posted.Get(at("typed"))}, posted.Get(at("whole")) != ""})
	}
	return out
}

// readOnly answers a change to an example.
func (s *Server) readOnly(w http.ResponseWriter, r *http.Request) {
	s.refuse(w, r, http.StatusForbidden, "This is an example, to look at.", "Press 'Make it mine' at the top of its pages and change the copy.")
}
