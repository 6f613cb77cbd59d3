package forecast

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"sync"
)

// DefaultMembers is how many courses a forecast follows where nobody says.
const DefaultMembers = 1000

// mostMembers bounds an ensemble's memory.
const mostMembers = 100_000

// Options are how a forecast is made. The same season, Members and Seed give
// the same bytes, whatever the number of Workers. Tubs that are followed with
// one seed have members with the same factors: a class's room is one.
type Options struct {
	Members     int // 0 for DefaultMembers; 1 is the model itself, without any chance
	Seed        uint64
	Workers     int       // at once; under 1 is 1
	Known       []Factors // of an earlier crop of this class, as Forecast.Factors gave them; with one member, the case asked for
	After       *Forecast // the members go on where it ended, with what it learned; the seed should be another one
	NoLearning  bool      // readings are only scored
	LearnToHour float64   // later readings are only scored; 0 for no such hour
}

// ensemble is all members at one moment.
type ensemble struct {
	*course
	options Options
	members []member
	column  []float64 // one number for each member
	out     Forecast
}

// Run follows a season. It gives up with the context's error when that ends.
func Run(ctx context.Context, s Season, o Options) (Forecast, error) {
	if err := s.Check(); err != nil {
		return Forecast{}, err
	}
	if err := o.check(s); err != nil {
		return Forecast{}, err
	}
	if o.After != nil {
		o.Members = len(o.After.Ends)
	}
	if o.Members <= 0 {
		o.Members = DefaultMembers
	}
	o.Members, o.Workers = min(o.Members, mostMembers), max(1, min(o.Workers, 64))
	e := &ensemble{course: lay(s), options: o, members: make([]member, o.Members), column: make([]float64, o.Members)}
	e.each(e.begin)
	e.read(e.first.readings)
	e.each(func(_ int, m *member) { m.happen(e.course, e.first.events) })
	if err := e.follow(ctx); err != nil {
		return Forecast{}, err
	}
	return e.finish(), nil
}

// check tells whether a season can go on where another ended.
func (o Options) check(s Season) error {
	if o.After == nil {
		return nil
	}
	if len(o.After.Ends) == 0 || len(o.After.Ends) != len(o.After.Factors) {
		return errors.New("the forecast to go on from has no members")
	}
	for _, end := range o.After.Ends {
		if len(end.Stands) != len(s.Tub.Stands) || len(end.Plants) != len(s.Tub.Stands) {
			return errors.New("the forecast to go on from has other stands")
		}
	}
	return nil
}

// begin is a member's own chance: it depends on the seed and on the member's
// number alone.
func (e *ensemble) begin(i int, m *member) {
	m.random = rand.New(rand.NewPCG(e.options.Seed, uint64(i)))
	m.steady = len(e.members) == 1
	if after := e.options.After; after != nil {
		m.factors = after.Factors[i]
		m.goOn(e.course, after.Ends[i])
		return
	}
	if !m.steady {
		m.factors = draw(m.random, rand.New(rand.NewPCG(e.options.Seed, streamOfLeaves+uint64(i))))
	}
	if known := e.options.Known; len(known) > 0 {
		start := m.factors[Start] // young plants are new with each crop
		m.factors = known[i%len(known)]
		m.factors[Start] = start
	}
	m.begin(e.course)
}

// follow carries all members from one stop to the next: a day's end, or a
// reading, at which they learn from it together.
func (e *ensemble) follow(ctx context.Context) error {
	from := 0
	for to := range e.segments {
		g := &e.segments[to]
		if g.day < 0 && len(g.readings) == 0 {
			continue
		}
		if err := ctx.Err(); err != nil {
			return err
		}
		leg, stop := e.segments[from:to+1], len(g.readings) > 0
		e.each(func(_ int, m *member) {
			for i := range leg {
				m.pass(e.course, &leg[i])
				if i < len(leg)-1 || !stop {
					m.happen(e.course, leg[i].events)
				}
			}
		})
		if stop {
			e.read(g.readings)
			e.each(func(_ int, m *member) { m.happen(e.course, g.events) })
		}
		if g.day >= 0 {
			e.note()
		}
		from = to + 1
	}
	return nil
}

// each does something with every member, a share of them in each worker. What
// it does must rest on the member alone.
func (e *ensemble) each(do func(i int, m *member)) {
	workers := min(e.options.Workers, len(e.members))
	var all sync.WaitGroup
	for w := 1; w < workers; w++ {
		all.Go(func() { e.share(w, workers, do) })
	}
	e.share(0, workers, do)
	all.Wait()
}

func (e *ensemble) share(worker, workers int, do func(i int, m *member)) {
	n := len(e.members)
	for i := worker * n / workers; i < (worker+1)*n/workers; i++ {
		do(i, &e.members[i])
	}
}

// band is that of one number of every member.
func (e *ensemble) band(of func(m *member) float64) Band {
	for i := range e.members {
		e.column[i] = of(&e.members[i])
	}
	slices.Sort(e.column)
	return bandOf(e.column)
}

// part is the share of the members of which something is true.
func (e *ensemble) part(is func(m *member) bool) float64 {
	n := 0
	for i := range e.members {
		if is(&e.members[i]) {
			n++
		}
	}
	return float64(n) / float64(len(e.members))
}

// note writes down a day's end.
func (e *ensemble) note() {
	day := DayBands{
		Litres:  e.band(func(m *member) float64 { return m.Litres }),
		ECmS:    e.band(func(m *member) float64 { return m.shownEC() }),
		DrunkL:  e.band(func(m *member) float64 { return m.Ledger.DrunkL + m.Ledger.VapourL }),
		PouredL: e.band(func(m *member) float64 { return m.Ledger.PouredL }),
		CropG:   e.band(func(m *member) float64 { return m.crop(e.course) }),
		Ready:   e.part(func(m *member) bool { return m.enough(e.course) }),
		Stands:  make([]StandBands, len(e.Tub.Stands)),
	}
	day.LevelMM = day.Litres.through(e.Tub.LevelMM)
	if !e.Tub.Still {
		day.OxygenMgL = e.band(func(m *member) float64 { return m.leastMgL })
	}
	for j := range e.Tub.Stands {
		s := &e.Tub.Stands[j]
		mass := func(m *member) float64 { return s.Model.HarvestG(m.Stands[j], s.PerM2) }
		day.Stands[j].MassG = e.band(mass)
		if s.Crop.Name != "" {
			day.Stands[j].HeightMM = e.band(func(m *member) float64 { return m.height(e.course, j) })
		}
		if s.PickG > 0 {
			day.Stands[j].Ready = e.part(func(m *member) bool { return mass(m) >= s.PickG })
		}
	}
	e.out.Days = append(e.out.Days, day)
}

// finish puts together what a forecast is.
func (e *ensemble) finish() Forecast {
	f := e.out
	f.Members = len(e.members)
	for i := range e.Watches {
		f.Stretches = append(f.Stretches, Stretch{
			Risk:  e.part(func(m *member) bool { return !math.IsInf(m.dryAt[i], 1) }),
			DryAt: e.band(func(m *member) float64 { return m.dryAt[i] }),
		})
	}
	for i := range e.members {
		f.Factors = append(f.Factors, e.members[i].factors)
		f.Ends = append(f.Ends, e.members[i].State)
	}
	return f
}
