package web

import (
	"encoding/json"
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
)

// posting is a form as it came in, on the revision it began from.
type posting struct {
	o        *opened
	f        *form
	tub      int
	base     int
	text     []byte // with the form's changes
	edits    []edit
	plan     *plan.Plan
	problems []plan.Problem
	added    bool // a tub was added, which is shown next
}

// readForm reads what was posted; what is too long or broken is answered here.
func (s *Server) readForm(w http.ResponseWriter, r *http.Request) (ok bool) {
	if err := r.ParseForm(); err != nil {
		s.refuse(w, r, http.StatusRequestEntityTooLarge, "The form was too long or broken, so nothing was read.", "Go back and try again with less in it.")
		return false
	}
	return true
}

// began reads a form that began from a revision; what cannot be read is
// answered here.
func (s *Server) began(w http.ResponseWriter, r *http.Request) (p *posting, ok bool) {
	if !s.readForm(w, r) {
		return nil, false
	}
	if strings.HasPrefix(r.PathValue("garden"), examplePrefix) {
		s.readOnly(w, r)
		return nil, false
	}
	base, err := strconv.Atoi(r.PostForm.Get("base"))
	if err != nil || base < 1 {
		s.refuse(w, r, http.StatusBadRequest, "This form does not say which plan it began from.", "Open the page again and type it there.")
		return nil, false
	}
	o, err := s.garden(r.Context(), r.PathValue("garden"), base, viewing{})
	if err != nil {
		s.failed(w, r, err)
		return nil, false
	}
	if o.Plan == nil {
		http.Redirect(w, r, "/g/"+o.ID+"/text", http.StatusSeeOther)
		return nil, false
	}
	f := &form{text: o.Text, posted: r.PostForm, units: o.Plan.Units}
	return &posting{o: o, f: f, tub: tubAsked(o.Plan, r.PostForm.Get("tub")), base: base}, true
}

// posted reads a page's form and makes its changes on the revision it began
// from.
func (s *Server) posted(w http.ResponseWriter, r *http.Request, page *formPage) (p *posting, ok bool) {
	if p, ok = s.began(w, r); !ok {
		return nil, false
	}
	var a *garden.Assessment
	if page.asksFirst {
		var err error
		if a, err = page.assess(s, r.Context(), p.o, lid.Full); err != nil {
			s.failed(w, r, err)
			return nil, false
		}
	}
	page.fields(p.f, a, p.tub)
	for _, c := range p.f.changes() {
		p.edits = append(p.edits, edit{c, false})
	}
	if page.lists != nil {
		p.edits = append(p.edits, page.lists(p.f, p.tub)...)
	}
	p.text, p.problems = applied(p.o.Text, p.edits)
	if page.press != nil {
		page.press(p, r.PostForm.Get("do"))
	}
	if len(p.problems) == 0 {
		p.plan, p.problems = plan.Parse("plan", p.text)
	}
	if page.home != nil {
		page.home(p.f, p.problems)
	}
	p.f.problems = p.problems
	return p, true
}

// done takes the text that a button made, or says at its field why it could not.
// The edit without a path tells that the text as a whole is wanted.
func (p *posting) done(text []byte, err error, field, hint string) {
	if err != nil {
		p.problems = append(p.problems, plan.Problem{Field: field, What: err.Error(), Hint: hint})
		return
	}
	p.text = text
	p.edits = append(p.edits, edit{plan.Change{}, true})
}

// mine are the changes as a conflict shows them; none where a shape or a bag was
// added or taken out, and the whole text is what is wanted.
func (p *posting) mine() []edit {
	if slices.ContainsFunc(p.edits, func(e edit) bool { return e.Path == "" }) {
		return nil
	}
	return p.edits
}

// why says in a few words what a revision changed.
func (p *posting) why() string {
	d := plan.Differences(p.o.Text, p.text)
	switch len(d) {
	case 0:
		return "put in the plan"
	case 1:
		return d[0].Words + " changed"
	}
	return fmt.Sprintf("%s and %d more changed", d[0].Words, len(d)-1)
}

// next is the place of the tub to show once the form is saved.
func (p *posting) next() int {
	if p.added {
		return len(p.plan.Tubs) - 1
	}
	return p.tub
}

// typedPlan is the garden with what is typed in place of what is saved.
func (p *posting) typedPlan() *opened {
	o := *p.o
	o.Text, o.Plan, o.typed = p.text, p.plan, true
	return &o
}

func answerJSON(w http.ResponseWriter, v any) {
	w.Header().Set("Content-Type", "application/json; charset=utf-8")
	if err := json.NewEncoder(w).Encode(v); err != nil {
		return // the browser is gone, and nobody is left to be told
	}
}
