package web

import (
	"context"
	"crypto/sha256"
	"fmt"
	"net/http"
	"runtime"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/reading"
)

// seasonBody is the page Season of one tub.
type seasonBody struct {
	ID       string
	Example  bool
	Base     int
	Tub      string
	Others   []string
	Form     seasonForm
	Work     *seasonWork
	Problems []problemView
}

func seasonAddress(id, tub, said string) string {
	return strings.Replace(buildAddress(id, tub, said), "/build", "/season", 1)
}

// quickMembers is how many runs of a forecast a quick answer counts: enough for
// a chance within some 1 in 10.
const quickMembers = 100

// membersOf is how many runs an effort counts; 0 is as many as usual.
func membersOf(effort lid.Effort) int {
	if effort == lid.Quick {
		return quickMembers
	}
	return 0
}

// season works a plan out with its tubs' days, from the readings so far. Quick
// effort counts fewer runs; the full answer is given where it is there.
func (k *assessments) season(ctx context.Context, text []byte, p *plan.Plan, m garden.Morning, effort lid.Effort) (*garden.Assessment, error) {
	full, asked := seasonKey(text, m, lid.Full), seasonKey(text, m, effort)
	if a, ok := k.last.find(full, asked); ok {
		return a, nil
	}
	select {
	case k.turn <- struct{}{}:
		defer func() { <-k.turn }()
	case <-ctx.Done():
		return nil, ctx.Err()
	}
	a, err := garden.Assess(ctx, garden.Inputs{
		Plan: p, On: m.On, Zone: m.Zone, Readings: m.Readings,
		Effort: effort, Seed: 1, Memory: k.memory, Stages: garden.StageSeason,
		Members: membersOf(effort), Workers: runtime.GOMAXPROCS(0),
	})
	if err != nil {
		return nil, err
	}
	k.last.keep(asked, a)
	return a, nil
}

// seasonKey is what a season depends on. Readings are only ever added, so their
// ids say what they are.
func seasonKey(text []byte, m garden.Morning, effort lid.Effort) fingerprint {
	h := sha256.New()
	_, _ = fmt.Fprintf(h, "season %d %s %s %d ", effort, m.On, m.Zone, len(text)) // a hash never fails
	_, _ = h.Write(text)
	for _, r := range m.Readings {
		_, _ = fmt.Fprintf(h, " %q", r.ID)
	}
	return fingerprint(h.Sum(nil))
}

// seasonMorning is the day on which a season is asked for. An example without a
// logbook begins on its first school day.
func (s *Server) seasonMorning(ctx context.Context, o *opened) (m garden.Morning, err error) {
	m.Zone = o.Now.Location()
	if !o.bound() {
		return m, nil
	}
	m.On = o.Today
	m.Readings, err = s.lastReadings(ctx, o)
	return m, err
}

// seasoned is the garden with its tubs' seasons.
func (s *Server) seasoned(ctx context.Context, o *opened, effort lid.Effort) (*garden.Assessment, error) {
	m, err := s.seasonMorning(ctx, o)
	if err != nil {
		return nil, err
	}
	a, err := s.work.season(ctx, o.Text, o.Plan, m, effort)
	if err == nil {
		s.seasons.keep(stripKey(o), a)
	}
	return a, err
}

// seasonKept is the season of a garden on a morning, where it was worked out
// already; nil else.
func (s *Server) seasonKept(o *opened, readings []reading.Row) *garden.Assessment {
	m := garden.Morning{Zone: o.Now.Location(), On: o.Today, Readings: readings}
	if !o.bound() {
		m.On, m.Readings = plan.Date{}, nil
	}
	a, _ := s.work.last.find(seasonKey(o.Text, m, lid.Full), seasonKey(o.Text, m, lid.Quick))
	return a
}

// stripKey finds the season that was last worked out for a plan on a day,
// whatever was read since: good enough for the strip.
func stripKey(o *opened) fingerprint {
	return sha256.Sum256(fmt.Appendf(nil, "%s %s %s", o.ID, o.Today, o.Text))
}

// withSeasons lends an assessment the seasons that were last worked out for its
// plan, so that the strip shows them on every page; none is worked out for it.
func (s *Server) withSeasons(o *opened, a *garden.Assessment) *garden.Assessment {
	kept, ok := s.seasons.find(stripKey(o))
	if !ok || len(kept.Tubs) != len(a.Tubs) || len(a.Tubs) > 0 && a.Tubs[0].Season != nil {
		return a
	}
	lent := *a
	lent.Tubs = append([]garden.Tub(nil), a.Tubs...)
	for i := range lent.Tubs {
		lent.Tubs[i].Season = kept.Tubs[i].Season
	}
	return &lent
}

// showSeason is the page Season.
func (s *Server) showSeason(w http.ResponseWriter, r *http.Request) {
	o, a, ok := s.readyFor(w, r, func(ctx context.Context, o *opened) (*garden.Assessment, error) {
		return s.seasoned(ctx, o, lid.Full)
	})
	if !ok {
		return
	}
	f := &form{text: o.Text, units: o.Plan.Units}
	s.seasonPage(w, r, http.StatusOK, o, a, f, tubAsked(o.Plan, r.URL.Query().Get("tub")))
}

// seasonPage writes the page. Where what was typed cannot be worked out, the
// form has it and a is the last that could be.
func (s *Server) seasonPage(w http.ResponseWriter, r *http.Request, status int, o *opened, a *garden.Assessment, f *form, tub int) {
	body := seasonBody{ID: o.ID, Example: o.Example, Base: o.Revision.Number, Tub: o.Plan.Tubs[tub].Name, Form: seasonFormOf(f, tub)}
	for i, t := range o.Plan.Tubs {
		if i != tub {
			body.Others = append(body.Others, t.Name)
		}
	}
	for _, p := range f.problems {
		body.Problems = append(body.Problems, f.problem(p, tub))
	}
	body.Work = seasonWorkOf(o, a, f, tub)
	frame := s.frameOf(r, o, a, "season", "Season")
	frame.Here = seasonAddress(o.ID, body.Tub, "")
	frame.Drawing = body.Tub + ": its days"
	frame.Message = messages[r.URL.Query().Get("said")]
	if !o.Example {
		frame.Script = []string{"season.js"}
	}
	frame.Script = append(frame.Script, "working.js")
	frame.Style = []string{seasonStyle}
	s.show(w, status, "season", frame, body)
}

// postedSeason reads the form and makes its changes on the revision it began
// from.
func (s *Server) postedSeason(w http.ResponseWriter, r *http.Request) (p posting, ok bool) {
	if p, ok = s.began(w, r); !ok {
		return p, false
	}
	seasonFormOf(p.f, p.tub)
	p.typed()
	p.text, p.problems = applied(p.o.Text, p.edits)
	p.read()
	return p, true
}

// saveSeason puts the form in the plan.
func (s *Server) saveSeason(w http.ResponseWriter, r *http.Request) {
	p, ok := s.postedSeason(w, r)
	if !ok {
		return
	}
	if len(p.problems) > 0 {
		last, err := s.seasoned(r.Context(), p.o, lid.Full)
		if err != nil {
			s.failed(w, r, err)
			return
		}
		s.seasonPage(w, r, http.StatusUnprocessableEntity, p.o, last, p.f, p.tub)
		return
	}
	if s.save(w, r, p.o.ID, p.base, p.text, p.mine(), why(p)) {
		http.Redirect(w, r, seasonAddress(p.o.ID, p.plan.Tubs[p.tub].Name, "saved"), http.StatusSeeOther)
	}
}

// seasonParts are the parts of the page that follow what is typed.
var seasonParts = []string{"answer", "findings", "closed", "tasks", "charts", "days", "deep", "counted"}

// trySeason works out what is being typed, with fewer runs first and then with
// all; nothing is saved.
func (s *Server) trySeason(w http.ResponseWriter, r *http.Request) {
	p, ok := s.postedSeason(w, r)
	if !ok {
		return
	}
	if p.refused(w, func(q plan.Problem) problemView { return p.f.problem(q, p.tub) }, lastNumbers) {
		return
	}
	effort := effortAsked(r)
	o := p.typedPlan()
	m, err := s.seasonMorning(r.Context(), o)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	a, err := s.work.season(r.Context(), o.Text, o.Plan, m, effort)
	if err != nil {
		s.failed(w, r, err)
		return
	}
	work := seasonWorkOf(o, a, p.f, p.tub)
	out := tried{Problems: []problemView{}, Full: effort == lid.Full, Status: "Not in the plan yet.", Parts: s.parts("season", seasonParts, work)}
	if !out.Full {
		out.Status = "From few runs so far; all of them are on their way."
	}
	strip := stripOf(a, o.Today)
	out.Parts["term-desk"], out.Parts["term-hand"] = string(strip.Desk), string(strip.Hand)
	answerJSON(w, out)
}
