package web

import (
	"fmt"
	"net/http"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
)

// chooseBody is the page Choose.
type chooseBody struct {
	ID       string
	Example  bool
	Base     int
	Form     chooseForm
	Work     *chooseWork
	Problems []problemView
}

// showChoose is the page Choose.
func (s *Server) showChoose(w http.ResponseWriter, r *http.Request) {
	o, a, ok := s.readyFor(w, r, s.mixed)
	if !ok {
		return
	}
	s.choosePage(w, r, http.StatusOK, o, a, &form{text: o.Text, units: o.Plan.Units})
}

// choosePage writes the page. Where what was typed cannot be worked out, the
// form has it and a is the last that could be.
func (s *Server) choosePage(w http.ResponseWriter, r *http.Request, status int, o *opened, a *garden.Assessment, f *form) {
	body := chooseBody{ID: o.ID, Example: o.Example, Base: o.Revision.Number, Form: chooseFormOf(f, a)}
	for _, p := range f.problems {
		body.Problems = append(body.Problems, f.chooseProblem(p))
	}
	body.Work = s.chooseWork(o, a, f)
	frame := s.frameOf(r, o, a, "choose", "Choose")
	frame.Here = "/g/" + o.ID + "/choose"
	frame.Drawing = "Buy or build"
	frame.Message = messages[r.URL.Query().Get("said")]
	if !o.Example {
		frame.Script = []string{"choose.js"}
	}
	frame.Script = append(frame.Script, "working.js")
	frame.Style = []string{paperStyle, chooseStyle}
	s.show(w, status, "choose", frame, body)
}

// chooseProblem is a problem with its place in the form.
func (f *form) chooseProblem(p plan.Problem) problemView {
	field := p.Field
	if path, _, in := strings.Cut(p.Field, "["); in && strings.HasPrefix(path, kit) {
		field = path
	}
	v := f.problem(p, 0)
	if head, rest, ok := strings.Cut(strings.TrimPrefix(p.Field, "offers["), "]."); ok && strings.HasPrefix(p.Field, "offers[") {
		rest, _, _ = strings.Cut(rest, "[")
		v.Address = "#" + idOf("offers["+head+"]."+rest)
		v.Field = "offers[" + head + "]." + rest
		if label, known := f.labels[v.Field]; known {
			v.Where = label
		}
	}
	if strings.HasPrefix(field, kit) {
		v.Address = "#f-" + strings.ReplaceAll(field, ".", "-")
	}
	return v
}

// postedChoose reads the form and makes its changes on the revision it began
// from.
func (s *Server) postedChoose(w http.ResponseWriter, r *http.Request) (p posting, a *garden.Assessment, ok bool) {
	if p, ok = s.began(w, r); !ok {
		return p, nil, false
	}
	a, err := s.mixed(r.Context(), p.o)
	if err != nil {
		s.failed(w, r, err)
		return p, nil, false
	}
	chooseFormOf(p.f, a)
	p.typed()
	p.edits = append(p.edits, p.f.listChanges()...)
	p.text, p.problems = applied(p.o.Text, p.edits)
	do := r.PostForm.Get("do")
	if do == "save" && p.f.kitBegun() {
		do = "offer" // what was typed is not lost for the wrong button
	}
	p.offers(do)
	p.read()
	if do == "offer" {
		p.f.intoKit(p.problems, p.f.doc().Items("offers"))
	}
	return p, a, true
}

// offers does what a button of the form asks beyond putting the values in.
func (p *posting) offers(do string) {
	word, index, _ := strings.Cut(do, "-")
	var err error
	text := p.text
	switch word {
	case "offer":
		item, problem := p.f.kitItem()
		if problem != nil {
			p.problems = append(p.problems, *problem)
			return
		}
		text, err = plan.Append(text, "offers", item)
	case "without":
		text, err = plan.Remove(text, fmt.Sprintf("offers[%s]", index))
	default:
		return
	}
	p.done(text, err, "offers", "change it on the page 'plan as text'")
}

// saveChoose puts the form in the plan.
func (s *Server) saveChoose(w http.ResponseWriter, r *http.Request) {
	p, last, ok := s.postedChoose(w, r)
	if !ok {
		return
	}
	if len(p.problems) > 0 {
		s.choosePage(w, r, http.StatusUnprocessableEntity, p.o, last, p.f)
		return
	}
	if s.save(w, r, p.o.ID, p.base, p.text, p.mine(), why(p)) {
		http.Redirect(w, r, "/g/"+p.o.ID+"/choose?said=saved", http.StatusSeeOther)
	}
}

// tryChoose works out what is being typed; nothing is saved.
func (s *Server) tryChoose(w http.ResponseWriter, r *http.Request) {
	p, _, ok := s.postedChoose(w, r)
	if !ok {
		return
	}
	if p.refused(w, p.f.chooseProblem, lastNumbers) {
		return
	}
	o := p.typedPlan()
	a, err := s.mixed(r.Context(), o)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	work := s.chooseWork(o, a, p.f)
	answerJSON(w, tried{Problems: []problemView{}, Status: "Not in the plan yet.", Full: true, Parts: s.parts("choose", []string{"answer", "findings", "side", "options", "deep"}, work)})
}
