package web

import (
	"context"
	"crypto/sha256"
	"fmt"
	"runtime"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/reading"
)

// seasonPage is the page Season.
func seasonPage() *formPage {
	return &formPage{
		name: "season", title: "Season", ofTub: true, drawing: "its days",
		scripts: []string{"working.js"}, styles: []string{seasonStyle},
		assess: (*Server).seasoned,
		fields: func(f *form, _ *garden.Assessment, tub int) any { return seasonFormOf(f, tub) },
		work:   func(o *opened, a *garden.Assessment, f *form, tub int) any { return seasonWorkOf(o, a, f, tub) },
		last:   lastBelow,
		tries: &formTries{
			parts: []string{"season-answer", "season-findings", "season-closed", "season-tasks", "season-charts", "season-days", "season-deep", "season-counted"},
			strip: true,
			wrong: lastHere,
			full:  notYet,
			quick: "From few runs so far; all of them are on their way.",
		},
	}
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

// seasoned is the garden with its tubs' seasons. What is only being typed moves
// no other page's strip.
func (s *Server) seasoned(ctx context.Context, o *opened, effort lid.Effort) (*garden.Assessment, error) {
	m, err := s.seasonMorning(ctx, o)
	if err != nil {
		return nil, err
	}
	a, err := s.work.season(ctx, o.Text, o.Plan, m, effort)
	if err == nil && !o.typed {
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
