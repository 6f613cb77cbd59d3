package web

import (
	"context"
	"net/http"
	"strings"

	"rootbell/internal/app/store"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/term"
	"rootbell/internal/science/lid"
)

// classBody is the page Class.
type classBody struct {
	ID       string
	Example  bool
	Base     int
	Form     classForm
	Work     *classWork
	Problems []problemView
}

// classed is the garden worked out in full at this moment, with its class and
// what its tubs are filled with, from the whole logbook.
func (s *Server) classed(ctx context.Context, o *opened) (*garden.Assessment, error) {
	a, err := s.work.of(ctx, o.Text, o.Plan, o.Today, lid.Full, garden.StageMix|garden.StageClass)
	if err != nil {
		return nil, err
	}
	m := garden.Morning{Zone: o.Now.Location()}
	if o.bound() {
		m.On, m.At = o.Today, o.Now
		kept, err := s.readings(ctx, o, store.Span{})
		if err != nil {
			return nil, err
		}
		m.Readings = rowsOf(kept)
	}
	return a.Asked(m), nil
}

// handedOn lends the class's assessment the seasons of its tubs: the report and
// the hand-over pack tell how forecasts did, and what comes next.
func (s *Server) handedOn(ctx context.Context, o *opened, a *garden.Assessment) (*garden.Assessment, error) {
	seasoned, err := s.seasoned(ctx, o, lid.Full)
	if err != nil || len(seasoned.Tubs) != len(a.Tubs) {
		return a, err
	}
	lent := *a
	lent.Tubs = append([]garden.Tub(nil), a.Tubs...)
	for i := range lent.Tubs {
		lent.Tubs[i].Season = seasoned.Tubs[i].Season
	}
	return &lent, nil
}

// classHasCome tells whether the page Class stands in front: from the term's
// second week on, when plants come into the tub and there is something to do, or
// as soon as the plan says who does what.
func classHasCome(o *opened, a *garden.Assessment) bool {
	if o.Plan == nil {
		return false
	}
	if s := o.Plan.School; len(s.Jobs)+len(s.Pairs.Wanted)+len(s.Pairs.Never)+len(s.Absent) > 0 {
		return true
	}
	if a == nil || !a.Term.Known() {
		return false
	}
	day := term.Date(o.Today)
	i, ok := a.Term.TermAt(day)
	return ok && a.Term.WeekOf(i, day) > buildingWeeks
}

// showClass is the page Class.
func (s *Server) showClass(w http.ResponseWriter, r *http.Request) {
	o, a, ok := s.readyFor(w, r, s.classed)
	if !ok {
		return
	}
	s.classPage(w, r, http.StatusOK, o, a, &form{text: o.Text, units: o.Plan.Units})
}

// classPage writes the page. Where what was typed cannot be worked out, the form
// has it and a is the last that could be.
func (s *Server) classPage(w http.ResponseWriter, r *http.Request, status int, o *opened, a *garden.Assessment, f *form) {
	body := classBody{ID: o.ID, Example: o.Example, Base: o.Revision.Number, Form: classFormOf(f, a)}
	for _, p := range f.problems {
		body.Problems = append(body.Problems, f.classProblem(p))
	}
	body.Work = classWorkOf(o, a, f)
	for _, one := range body.Work.Findings {
		body.Form.Open = body.Form.Open || strings.HasPrefix(one.Address, "#f-class-job") || strings.HasPrefix(one.Address, "#f-class-wanted") ||
			strings.HasPrefix(one.Address, "#f-class-never") || strings.HasPrefix(one.Address, "#f-class-away")
	}
	frame := s.frameOf(r, o, a, "class", "Class")
	frame.Here = "/g/" + o.ID + "/class"
	frame.Message = messages[r.URL.Query().Get("said")]
	frame.Style = []string{classStyle}
	s.show(w, status, "class", frame, body)
}

// classProblem is a problem with its place in the form.
func (f *form) classProblem(p plan.Problem) problemView {
	v := f.problem(p, 0)
	if strings.HasPrefix(p.Field, classField) {
		v.Address = "#" + idOf(p.Field)
	}
	return v
}

// saveClass puts the form in the plan. Nothing of it is stored where anything in
// it cannot be read, such as a name where a number belongs.
func (s *Server) saveClass(w http.ResponseWriter, r *http.Request) {
	p, ok := s.began(w, r)
	if !ok {
		return
	}
	classFormOf(p.f, nil)
	p.typed()
	p.text, p.problems = applied(p.o.Text, p.edits)
	p.classLists()
	p.read()
	if len(p.problems) > 0 {
		p.f.intoClass(p.problems)
		last, err := s.classed(r.Context(), p.o)
		if err != nil {
			s.failed(w, r, err)
			return
		}
		s.classPage(w, r, http.StatusUnprocessableEntity, p.o, last, p.f)
		return
	}
	if s.save(w, r, p.o.ID, p.base, p.text, p.mine(), why(p)) {
		http.Redirect(w, r, "/g/"+p.o.ID+"/class?said=saved", http.StatusSeeOther)
	}
}
