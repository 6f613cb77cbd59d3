package season

import (
	"context"
	"math"
	"slices"

	"rootbell/internal/school/term"
)

// moves are what else could be done where the wish cannot be met from a
// candidate on: each is worked out, and those that do not help are left out.
func (s *search) moves(ctx context.Context, best int, a *Answer) ([]Move, error) {
	f, err := s.run(ctx, s.course(s.days[best], true), s.e.search())
	if err != nil {
		return nil, err
	}
	out := s.fewer(f, a.Wanted)
	for _, ask := range []func(context.Context, int, *Answer) (Move, bool, error){s.later, s.bought, s.longer, s.brighter} {
		m, helps, err := ask(ctx, best, a)
		if err != nil {
			return nil, err
		}
		if helps {
			out = append(out, m)
		}
	}
	return out, nil
}

// fewer are the moves that ask for less of a tub: what it brings with the
// chance wanted goes round fewer eaters, as smaller portions, or in more tubs.
func (s *search) fewer(f Followed, wanted float64) (out []Move) {
	sure := func(g func(i int) float64) float64 {
		var all []float64
		for i := range f.Ends {
			all = append(all, g(i))
		}
		slices.Sort(all)
		return quantile(all, 1-wanted)
	}
	if s.w.NeededG <= 0 {
		if each := sure(func(i int) float64 { return s.smallest(f, i) }); each >= 1 {
			out = append(out, Move{Kind: "smaller", G: math.Floor(each), Chance: wanted})
		}
		return out
	}
	brings := sure(func(i int) float64 { return s.crop(f, i) })
	if !(brings >= 1) {
		return nil
	}
	if tubs := math.Ceil(s.w.NeededG / brings); tubs <= mostTubs {
		out = append(out, Move{Kind: "tubs", Count: int(tubs), Chance: wanted})
	}
	if s.w.Eaters > 0 && s.w.PortionG > 0 {
		share := brings / s.w.NeededG
		if g := math.Floor(s.w.PortionG * share); g >= 1 {
			out = append(out, Move{Kind: "portion", G: g, Chance: wanted})
		}
		if n := math.Floor(float64(s.w.Eaters) * share); n >= 1 {
			out = append(out, Move{Kind: "eaters", Count: int(n), Chance: wanted})
		}
	}
	return out
}

// mostTubs is more than any class has.
const mostTubs = 8

// crop is the mass of all plants of a member at the end.
func (s *search) crop(f Followed, member int) (g float64) {
	end := f.Ends[member]
	for j := range s.w.Tub.Stands {
		st := &s.w.Tub.Stands[j]
		g += st.Model.HarvestG(end.Stands[j], st.PerM2) * float64(end.Plants[j])
	}
	return g
}

// smallest is the mass of a member's lightest plant.
func (s *search) smallest(f Followed, member int) float64 {
	end, least := f.Ends[member], math.Inf(1)
	for j := range s.w.Tub.Stands {
		st := &s.w.Tub.Stands[j]
		if end.Plants[j] > 0 {
			least = min(least, st.Model.HarvestG(end.Stands[j], st.PerM2))
		}
	}
	return least
}

// later is the first open day on which the same plants are ready.
func (s *search) later(ctx context.Context, best int, a *Answer) (Move, bool, error) {
	c := s.course(s.days[best], true)
	d, p, ok, err := s.readyOn(ctx, c, s.by.Add(1), s.by.Add(mostLater), a.Wanted)
	return Move{Kind: "later", On: d, Chance: p}, ok, err
}

// mostLater is how far a meal is put off at most, in days.
const mostLater = 60

// readyOn is the first open day from one on, up to another, on which a course
// has the chance wanted.
func (s *search) readyOn(ctx context.Context, c Course, from, to term.Date, wanted float64) (term.Date, float64, bool, error) {
	to, ok := s.w.Calendar.OpenUntil(to)
	if !ok || to.Before(from) {
		return to, 0, false, nil
	}
	c.To = to
	f, err := s.run(ctx, c, s.e.search())
	if err != nil {
		return to, 0, false, err
	}
	for i, day := range f.Days {
		if d := f.Dates[i]; d.Open && !d.Date.Before(from) && day.Ready >= wanted {
			return d.Date, day.Ready, true, nil
		}
	}
	return to, 0, false, nil
}

// bought are seedlings instead of seed: they move in as soon as they can come.
func (s *search) bought(ctx context.Context, best int, a *Answer) (Move, bool, error) {
	on, ok := settleFrom(s.w.Calendar, s.w.Today.Add(s.w.lead()))
	if s.w.MoveOn.Set() || !ok || !on.Before(s.days[best]) {
		return Move{}, false, nil
	}
	p, err := s.with(ctx, Course{Bed: s.w.Bed, MoveOn: on, To: s.by, NeedG: s.w.NeededG, Held: true})
	return Move{Kind: "seedlings", On: on, Chance: p}, p > a.Chance+helps, err
}

// helps is how much a chance must rise for a move to be worth a word.
const helps = 0.02

// with is the chance at the end of a course.
func (s *search) with(ctx context.Context, c Course) (float64, error) {
	f, err := s.run(ctx, c, s.e.search())
	if err != nil {
		return 0, err
	}
	return f.Days[len(f.Days)-1].Ready, nil
}

// longer is a lamp that is lit for as long as helps.
func (s *search) longer(ctx context.Context, best int, a *Answer) (Move, bool, error) {
	most := value(factLampMost)
	if s.w.NoLamp || s.w.Lamp.Hours() >= most-0.5 {
		return Move{}, false, nil
	}
	c := s.course(s.days[best], true)
	c.Lamp.ToMin = (c.Lamp.FromMin + int(60*most)) % dayMinutes
	p, err := s.with(ctx, c)
	return Move{Kind: "light", Hours: most, Chance: p}, p > a.Chance+helps, err
}

// brighter is so many times the light, the least in quarters that does, up to
// the most that the crops gain from.
func (s *search) brighter(ctx context.Context, best int, a *Answer) (Move, bool, error) {
	m, most := Move{Kind: "light", Times: 1}, s.mostLight()
	for m.Times+lightStep <= most && m.Chance < a.Wanted {
		m.Times += lightStep
		c := s.course(s.days[best], true)
		c.Tub.Stands = slices.Clone(c.Tub.Stands)
		for j := range c.Tub.Stands {
			c.Tub.Stands[j].PPFD *= m.Times
		}
		p, err := s.with(ctx, c)
		if err != nil {
			return m, false, err
		}
		m.Chance = p
	}
	return m, m.Chance > a.Chance+helps, nil
}

// lightStep is the step in which more light is tried.
const lightStep = 0.25

// mostLight is how many times the present light the crop that minds it first
// still gains from, by the upper end of its light of a day.
func (s *search) mostLight() float64 {
	most := math.Inf(1)
	for _, c := range s.w.Crops {
		for _, j := range c.Stands {
			day := s.w.Tub.Stands[j].PPFD * s.w.Lamp.Hours() * 3600e-6
			if day > 0 {
				most = min(most, c.Kind.DLI().High/day)
			}
		}
	}
	if math.IsInf(most, 1) {
		return 1
	}
	return min(most, 4)
}
