package forecast

import (
	"math"
	"math/rand/v2"
	"testing"
)

// truth is one course drawn from what an ensemble is drawn from: the tub at
// each of some hours, in order.
func truth(t testing.TB, s Season, seed uint64, change func(*Factors)) func(r Reading) float64 {
	t.Helper()
	c := lay(s)
	m := &member{random: rand.New(rand.NewPCG(seed, streamOfNoise-1))}
	m.factors = draw(m.random, rand.New(rand.NewPCG(seed, streamOfLeaves-1)))
	if change != nil {
		change(&m.factors)
	}
	m.begin(c)
	m.happen(c, c.first.events)
	seen := map[int]float64{}
	for i := range c.segments {
		g := &c.segments[i]
		m.pass(c, g)
		for _, k := range g.readings {
			seen[k] = m.expects(c, &c.Readings[k])
		}
		m.happen(c, g.events)
	}
	return func(r Reading) float64 {
		for k, x := range s.Readings {
			if x == r {
				return seen[k]
			}
		}
		t.Fatal("no such reading")
		return math.NaN()
	}
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
	return seen(t, s, seed, change)
}

// seen is a season whose readings are filled in.
func seen(t testing.TB, s Season, seed uint64, change func(*Factors)) (_ Season, truths []float64) {
	see := truth(t, s, seed, change)
	random := rand.New(rand.NewPCG(seed, streamOfNoise-2))
	truths = make([]float64, len(s.Readings))
	for i := range s.Readings {
		truths[i] = see(s.Readings[i])
	}
	for i := range s.Readings {
		s.Readings[i].Value = max(0, truths[i]+s.Readings[i].SD*random.NormFloat64())
	}
	return s, truths
}
