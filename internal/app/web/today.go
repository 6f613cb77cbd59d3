package web

import (
	"context"
	"fmt"
	"html/template"
	"net/http"

	"rootbell/internal/app/store"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/figure"
	"rootbell/internal/paper/pack"
	"rootbell/internal/school/term"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/reading"
)

// mostOfTub is how many of a tub's last readings a morning rests on: more than a
// class takes between two changes of the water.
const mostOfTub = 400

// todayBody is the page Today.
type todayBody struct {
	ID      string
	Example bool
	Day     string // Wed 10 Feb, week 5
	On, And string // of the address, where another day is asked for
	Bold    string
	Rest    string
	Today   *garden.Today
	Tubs    []todayTub
	Ahead   string
	Until   string // when the last one leaves
	Papers  []todayPaper
	Low     []lowAhead // tubs that may run low while nobody comes
	Begins  bool       // nothing was ever read: the tubs may not stand yet
}

// todayTub is one tub as it was last read.
type todayTub struct {
	Name    string
	Picture template.HTML
	Quiet   string // how long the pump may be off for a lesson
	*garden.TubToday
}

type todayPaper struct{ Name, Title string }

// showToday is the page Today: what there is to do this morning, for whoever
// stands at the tubs.
func (s *Server) showToday(w http.ResponseWriter, r *http.Request) {
	o, ok := s.open(w, r)
	if !ok {
		return
	}
	if o.Plan == nil {
		http.Redirect(w, r, "/g/"+o.ID+"/text", http.StatusSeeOther)
		return
	}
	on, ok := s.dayAsked(w, r)
	if !ok {
		return
	}
	a, err := s.morning(r.Context(), o, on)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	body := todayOf(o, a)
	for _, p := range pack.TodayOf(a, revisionOf(o)) {
		body.Papers = append(body.Papers, todayPaper{p.Name, p.Title})
	}
	if !on.Set() {
		body.Low = s.runsLow(o)
	}
	if on.Set() {
		body.And = "on=" + on.String()
		body.On = "?" + body.And
	}
	f := s.frameOf(r, o, a, "today", "Today")
	f.Drawing = "Today, " + body.Day
	f.Script = []string{"working.js"}
	s.show(w, http.StatusOK, "today", f, body)
}

// readyOn is ready with the mix and the logbook, or with the season where the
// address asks for a number of it, on the day that it asks for; not set is now.
// query is the address's, to go on with.
func (s *Server) readyOn(w http.ResponseWriter, r *http.Request) (_ *opened, _ *garden.Assessment, query string, ok bool) {
	assess := s.mixed
	if asksSeason(r) {
		assess = func(ctx context.Context, o *opened) (*garden.Assessment, error) { return s.seasoned(ctx, o, lid.Full) }
	}
	o, plain, ok := s.readyFor(w, r, assess)
	if !ok {
		return nil, nil, "", false
	}
	on, ok := s.dayAsked(w, r)
	if !ok {
		return nil, nil, "", false
	}
	a, err := s.asked(r.Context(), o, plain, on)
	if err != nil {
		s.failed(w, r, err)
		return nil, nil, "", false
	}
	if on.Set() {
		query = "on=" + on.String()
	}
	return o, a, query, true
}

// dayAsked is the day that an address asks for; not set where it asks for none.
func (s *Server) dayAsked(w http.ResponseWriter, r *http.Request) (plan.Date, bool) {
	typed := r.URL.Query().Get("on")
	if typed == "" {
		return plan.Date{}, true
	}
	day, err := term.ParseDate(typed)
	if err != nil {
		s.refuse(w, r, http.StatusBadRequest, typed+" is no day.", "Write it as 2027-02-10.")
		return plan.Date{}, false
	}
	return plan.Date(day), true
}

// morning is the garden's assessment with its logbook, on a day; not set is now.
// An example without a logbook begins on its first school day.
func (s *Server) morning(ctx context.Context, o *opened, on plan.Date) (*garden.Assessment, error) {
	a, err := s.work.of(ctx, o.Text, o.Plan, o.Today, lid.Quick, garden.StageMix)
	if err != nil {
		return nil, err
	}
	return s.asked(ctx, o, a, on)
}

// asked is an assessment on such a morning.
func (s *Server) asked(ctx context.Context, o *opened, a *garden.Assessment, on plan.Date) (_ *garden.Assessment, err error) {
	m := garden.Morning{On: on, Zone: o.Now.Location()}
	if o.bound() {
		if !on.Set() {
			m.On, m.At = o.Today, o.Now
		}
		if m.Readings, err = s.lastReadings(ctx, o); err != nil {
			return nil, err
		}
	}
	return a.Asked(m), nil
}

// lastReadings are the last rows of each tub, in the order in which they were
// written down.
func (s *Server) lastReadings(ctx context.Context, o *opened) ([]reading.Row, error) {
	if o.rows != nil {
		return o.rows, nil
	}
	out := []reading.Row{}
	for _, t := range o.Plan.Tubs {
		kept, err := s.readings(ctx, o, store.Span{Tub: t.Name, Most: mostOfTub})
		if err != nil {
			return nil, err
		}
		out = append(out, rowsOf(kept)...)
	}
	o.rows = out
	return out, nil
}

func todayOf(o *opened, a *garden.Assessment) todayBody {
	t := a.Today
	b := todayBody{ID: o.ID, Example: o.Example, Day: t.Day(a), Today: t, Ahead: t.AheadWords(), Begins: !o.Example}
	b.Bold, b.Rest = t.Answer()
	for i := range a.Tubs {
		if a.Tubs[i].Today == nil {
			continue
		}
		tub := todayTub{Name: a.Tubs[i].Name, TubToday: a.Tubs[i].Today}
		if svg, ok := figure.Today(a, i); ok {
			tub.Picture = template.HTML(svg)
		}
		if x := a.Tubs[i].Oxygen; x != nil {
			tub.Quiet = x.QuietWords()
		}
		b.Begins = b.Begins && tub.ReadOn == ""
		b.Tubs = append(b.Tubs, tub)
	}
	if t.Open && t.On.Set() {
		b.Until = a.Term.Leaves(t.On, t.At.Location()).Format("15:04")
	}
	return b
}

// nextToday says in a few words what is due, for the list of gardens.
func (s *Server) nextToday(ctx context.Context, o *opened) (next string, act bool, err error) {
	a, err := s.morning(ctx, o, plan.Date{})
	if err != nil || a.Today == nil {
		return "", false, err
	}
	t := a.Today
	for _, step := range t.Steps {
		if step.Kind == garden.StepDo {
			return step.Head, true, nil
		}
	}
	bold, rest := t.Answer()
	return fmt.Sprintf("%s %s", bold, rest), false, nil
}
