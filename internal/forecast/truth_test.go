package forecast

import (
	"math/rand/v2"
	"testing"
)

// trueCourse is one course drawn from what an ensemble is drawn from. It is
// looked at after each segment, before what happens then.
func trueCourse(s Season, seed uint64, change func(*Factors), look func(*course, *member, *segment)) {
	c := lay(s)
	m := &member{random: rand.New(rand.NewPCG(seed, streamOfNoise-1))}
	m.factors = draw(m.random, rand.New(rand.NewPCG(seed, streamOfLeaves-1)))
	if change != nil {
		change(&m.factors)
	}
	m.begin(c)
	m.happen(c, c.first.events)
	for i := range c.segments {
		g := &c.segments[i]
		m.pass(c, g)
		look(c, m, g)
		m.happen(c, g.events)
	}
}

// truth is what such a course has to read at each reading's hour.
func truth(s Season, seed uint64, change func(*Factors)) []float64 {
	out := make([]float64, len(s.Readings))
	trueCourse(s, seed, change, func(c *course, m *member, g *segment) {
		for _, k := range g.readings {
			out[k] = m.expects(c, &c.Readings[k])
		}
	})
	return out
}

// trueMasses are the fresh masses of a plant of the first stand at the end of
// each day of the same course.
func trueMasses(s Season, seed uint64) (out []float64) {
	trueCourse(s, seed, nil, func(c *course, m *member, g *segment) {
		if g.day >= 0 {
			first := &c.Tub.Stands[0]
			out = append(out, first.Model.HarvestG(m.Stands[0], first.PerM2))
		}
	})
	return out
}

// readDays are a class's usual readings: the level on three days of the week,
// EC on one, height on one, before anything is poured; and a plant is picked and
// weighed on the last day.
func readDays(days int) []Reading {
	var out []Reading
	for d := range days {
		at := float64(24*d) + 8.75
		switch d % 7 {
		case 0:
			out = append(out, Reading{AtHour: at, Of: Level, SD: 2}, Reading{AtHour: at, Of: Strength, SD: 0.08})
		case 2:
			out = append(out, Reading{AtHour: at, Of: Level, SD: 2}, Reading{AtHour: at, Of: Height, SD: 8})
		case 4:
			out = append(out, Reading{AtHour: at, Of: Level, SD: 2})
		}
	}
	return append(out, Reading{AtHour: float64(24*days) - 15.25, Of: Picked, SD: 5})
}

// synthetic is a season whose readings come from a truth that nobody is told,
// with the truth of each.
func synthetic(t testing.TB, days int, seed uint64, change func(*Factors)) (s Season, truths []float64) {
	s = filled(t, days)
	s.Tub.Stands[0].Plants = 8
	s.Readings = readDays(days)
	return seen(s, seed, change)
}

// seen is a season whose readings are filled in.
func seen(s Season, seed uint64, change func(*Factors)) (_ Season, truths []float64) {
	truths = truth(s, seed, change)
	random := rand.New(rand.NewPCG(seed, streamOfNoise-2))
	for i := range s.Readings {
		s.Readings[i].Value = max(0, truths[i]+s.Readings[i].SD*random.NormFloat64())
	}
	return s, truths
}
