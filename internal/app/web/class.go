package web

import (
	"context"

	"rootbell/internal/app/store"
	"rootbell/internal/garden"
	"rootbell/internal/school/term"
	"rootbell/internal/science/lid"
)

// classPage is the page Class. Nothing of it is stored where anything in it
// cannot be read, such as a name where a number belongs.
func classPage() *formPage {
	return &formPage{
		name: "class", title: "Class", drawing: "Class", styles: []string{classStyle},
		assess: func(s *Server, ctx context.Context, o *opened, _ lid.Effort) (*garden.Assessment, error) {
			return s.classed(ctx, o)
		},
		fields: func(f *form, a *garden.Assessment, _ int) any { return classFormOf(f, a) },
		work:   func(o *opened, a *garden.Assessment, f *form, _ int) any { return classWorkOf(o, a, f) },
		press:  (*posting).pressClass,
		home:   (*form).intoClass,
		last:   "What stands below is the last rota that could be made.",
	}
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
