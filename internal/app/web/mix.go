package web

import (
	"fmt"
	"net/http"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
)

// mixBody is the page Mix of one tub.
type mixBody struct {
	ID       string
	Example  bool
	Base     int
	Tub      string
	Others   []string
	Form     mixForm
	Work     *mixWork
	Problems []problemView
}

func mixAddress(id, tub, said string) string {
	return strings.Replace(buildAddress(id, tub, said), "/build", "/mix", 1)
}

// showMix is the page Mix.
func (s *Server) showMix(w http.ResponseWriter, r *http.Request) {
	o, a, ok := s.readyFor(w, r, s.mixed)
	if !ok {
		return
	}
	f := &form{text: o.Text, units: o.Plan.Units}
	s.mixPage(w, r, http.StatusOK, o, a, f, tubAsked(o.Plan, r.URL.Query().Get("tub")))
}

// mixPage writes the page. Where what was typed cannot be worked out, the form
// has it and a is the last that could be.
func (s *Server) mixPage(w http.ResponseWriter, r *http.Request, status int, o *opened, a *garden.Assessment, f *form, tub int) {
	body := mixBody{ID: o.ID, Example: o.Example, Base: o.Revision.Number, Tub: o.Plan.Tubs[tub].Name, Form: formOf(f, tub)}
	for i, t := range o.Plan.Tubs {
		if i != tub {
			body.Others = append(body.Others, t.Name)
		}
	}
	for _, p := range f.problems {
		body.Problems = append(body.Problems, f.mixProblem(p, tub))
	}
	body.Work = s.mixWork(o, a, f, tub)
	frame := s.frameOf(r, o, a, "mix", "Mix")
	frame.Here = mixAddress(o.ID, body.Tub, "")
	frame.Drawing = body.Tub + ": nutrient solution"
	frame.Message = messages[r.URL.Query().Get("said")]
	if !o.Example {
		frame.Script = []string{"mix.js"}
	}
	frame.Script = append(frame.Script, "working.js")
	frame.Style = []string{mixStyle}
	s.show(w, status, "mix", frame, body)
}

// mixProblem is a problem with its place in the form.
func (f *form) mixProblem(p plan.Problem, tub int) problemView {
	v := f.problem(p, tub)
	if strings.HasPrefix(p.Field, bottle) {
		v.Address = "#f-" + strings.ReplaceAll(p.Field, ".", "-")
	}
	return v
}

// postedMix reads the form and makes its changes on the revision it began from.
func (s *Server) postedMix(w http.ResponseWriter, r *http.Request) (p posting, ok bool) {
	if p, ok = s.began(w, r); !ok {
		return p, false
	}
	formOf(p.f, p.tub)
	p.typed()
	p.text, p.problems = applied(p.o.Text, p.edits)
	p.shelf(r.PostForm.Get("do"))
	p.read()
	if r.PostForm.Get("do") == "shelf" {
		p.f.intoBottle(p.problems)
	}
	return p, true
}

// shelf does what a button of the form asks beyond putting the values in.
func (p *posting) shelf(do string) {
	word, index, _ := strings.Cut(do, "-")
	var err error
	text := p.text
	field := "fertilisers"
	switch word {
	case "shelf":
		item, problem := p.f.bottleItem()
		if problem != nil {
			p.problems = append(p.problems, *problem)
			return
		}
		text, err = plan.Append(text, field, item)
	case "off":
		text, err = plan.Remove(text, fmt.Sprintf("%s[%s]", field, index))
	case "noacid":
		field = "acids[0]"
		text, err = plan.Remove(text, field)
	case "nobase":
		field = "bases[0]"
		text, err = plan.Remove(text, field)
	default:
		return
	}
	p.done(text, err, field, "change it on the page 'plan as text'")
}

// saveMix puts the form in the plan.
func (s *Server) saveMix(w http.ResponseWriter, r *http.Request) {
	p, ok := s.postedMix(w, r)
	if !ok {
		return
	}
	if len(p.problems) > 0 {
		last, err := s.mixed(r.Context(), p.o)
		if err != nil {
			s.failed(w, r, err)
			return
		}
		s.mixPage(w, r, http.StatusUnprocessableEntity, p.o, last, p.f, p.tub)
		return
	}
	if s.save(w, r, p.o.ID, p.base, p.text, p.mine(), why(p)) {
		http.Redirect(w, r, mixAddress(p.o.ID, p.plan.Tubs[p.tub].Name, "saved"), http.StatusSeeOther)
	}
}

// tryMix works out what is being typed; nothing is saved.
func (s *Server) tryMix(w http.ResponseWriter, r *http.Request) {
	p, ok := s.postedMix(w, r)
	if !ok {
		return
	}
	if p.refused(w, func(q plan.Problem) problemView { return p.f.mixProblem(q, p.tub) }, lastNumbers) {
		return
	}
	o := p.typedPlan()
	a, err := s.mixed(r.Context(), o)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	work := s.mixWork(o, a, p.f, p.tub)
	answerJSON(w, tried{Problems: []problemView{}, Status: "Not in the plan yet.", Full: true, Parts: s.parts("mix", []string{"answer", "findings", "steps", "meter", "deep"}, work)})
}
