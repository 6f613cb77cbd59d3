package season

import (
	"context"
	"math"
	"time"

	"rootbell/internal/forecast"
)

// attempt is one way to leave a tub. The zero attempt leaves it as it stands.
type attempt struct {
	lineMM  float64 // filled up to; 0: no more than as a matter of course
	lamp    *Lamp
	out     []int // plants taken out of each stand
	visit   time.Time
	visitL  float64
	still   bool // the pump is off, and the water may fall to where roots in the air gap allow
	failure *forecast.Event
}

// tries are what can be tried for one closed stretch.
type tries struct {
	Course
	Standing
	ways  Ways
	e     Effort
	clock Clock
	ends  []forecast.State // of the course, on the day of the meal
}

// season is the stretch as a forecast follows it from its first hour, when
// somebody leaves it in one way.
func (t tries) season(a attempt) forecast.Season {
	from, until := t.Stretch.Since, t.Stretch.Until
	c := t.Course
	if a.lamp != nil {
		c.Lamp = *a.lamp
	}
	s := forecast.Season{Tub: c.Tub, NeedG: c.NeedG, Events: c.opening(a.out, a.lineMM)}
	if a.still {
		s.Tub.Still = true
		if t.ways.StillLowestMM > 0 {
			s.Tub.LowestMM = t.ways.StillLowestMM
		}
	}
	at := from
	for _, d := range append(t.dates(), t.Stretch.After()) {
		to := c.leaves(d)
		if to.After(until) {
			to = until
		}
		if to.After(at) {
			s.Days = append(s.Days, c.Spans(at, to))
		}
		at = to
	}
	hours := until.Sub(from).Hours()
	s.Watches = []forecast.Watch{{FromHour: 0, ToHour: hours}}
	if a.visitL > 0 {
		s.Events = append(s.Events, forecast.Event{AtHour: a.visit.Sub(from).Hours(), Kind: forecast.TopUp, Litres: a.visitL, ECmS: t.ways.VisitECmS})
	}
	if a.failure != nil {
		s.Events = append(s.Events, *a.failure)
	}
	return s
}

// thirst is how thirsty the members of a try are.
type thirst func(of []forecast.Factors) []forecast.Factors

// asTheyAre leaves the members as they are.
func asTheyAre(of []forecast.Factors) []forecast.Factors { return of }

// high gives each member the thirst that nine classes in ten do not reach.
func high(of []forecast.Factors) []forecast.Factors {
	out := make([]forecast.Factors, len(of))
	var all []float64
	for i, f := range of {
		out[i], all = f, append(all, f[forecast.Thirst])
	}
	bandOf(all) // sorts
	at := quantile(all, value(factLeaveThirst)/100)
	for i := range out {
		out[i][forecast.Thirst] = at
	}
	return out
}

// more gives each member so many times its thirst.
func more(times float64) thirst {
	spread := math.Log(forecast.Factors{forecast.Thirst: 1}.Value(forecast.Thirst))
	return func(of []forecast.Factors) []forecast.Factors {
		out := make([]forecast.Factors, len(of))
		for i, f := range of {
			out[i] = f
			out[i][forecast.Thirst] += math.Log(times) / spread
		}
		return out
	}
}

// from is how the first so many of the members go on from the stretch's first
// hour.
func (t tries) from(members int, as thirst) forecast.Options {
	members = min(members, len(t.State.Ends))
	start := forecast.Forecast{Members: members, Ends: t.State.Ends[:members], Factors: as(t.State.Factors[:members])}
	return forecast.Options{Seed: t.seed, Workers: t.e.Workers, After: &start, NoLearning: true}
}

// run follows an attempt with the first so many of the members.
func (t tries) run(ctx context.Context, a attempt, members int, as thirst) (forecast.Forecast, error) {
	return forecast.Run(ctx, t.season(a), t.from(members, as))
}

// risk is the chance of falling below the lowest line.
func (t tries) risk(ctx context.Context, a attempt, members int, as thirst) (float64, error) {
	f, err := t.run(ctx, a, members, as)
	if err != nil {
		return 0, err
	}
	return f.Stretches[0].Risk, nil
}
