package forecast

import (
	"math"
	"math/rand/v2"
	"slices"

	"rootbell/internal/science/crop"
)

// Method says how readings change a forecast, and why so.
const Method = "Each reading moves every member by the share of its surprise that the members' own spread explains, " +
	"the instrument's error put in (ensemble Kalman filter: Evensen 1994, Burgers et al. 1998). " +
	"It learns from one reading at a time, in one pass, and a thousand members stay a thousand: " +
	"keeping only members that fit would leave a handful after six readings."

// read lets the members expect some readings and learn from them, one after
// another.
func (e *ensemble) read(readings []int) {
	for _, i := range readings {
		r := &e.Readings[i]
		expects := make([]float64, len(e.members))
		e.each(func(k int, m *member) { expects[k] = m.expects(e.course, r) })
		noise := e.noise(i, r.SD)
		for k := range expects {
			e.column[k] = expects[k] + noise[k]
		}
		slices.Sort(e.column)
		band := bandOf(e.column)
		may := len(e.members) > 1 && !e.options.NoLearning && (e.options.LearnToHour <= 0 || r.AtHour <= e.options.LearnToHour)
		far := band.Far(r.Value)
		e.out.Expected = append(e.out.Expected, Expected{i, band, may && !far})
		switch {
		case may && !far:
			e.learn(r, expects, noise)
		case may && r.Of == Level:
			e.each(func(k int, m *member) { m.stand(e.course, r.Value-noise[k]) })
		}
	}
}

// stand puts a member's water where it was read, its strength as it was: of a
// leak or a top-up that nobody wrote down no factor tells anything.
func (m *member) stand(c *course, mm float64) {
	m.Litres = max(0, min(c.mostL, c.Tub.LitresAt(max(0, mm))))
}

// streamOfNoise keeps the chance of readings apart from that of members.
const streamOfNoise = 1 << 40

// noise is an instrument's error for each member, nought on the whole.
func (e *ensemble) noise(reading int, sd float64) []float64 {
	out := make([]float64, len(e.members))
	if len(out) == 1 {
		return out
	}
	random := rand.New(rand.NewPCG(e.options.Seed, streamOfNoise+uint64(reading)))
	mean := 0.0
	for k := range out {
		out[k] = sd * random.NormFloat64()
		mean += out[k] / float64(len(out))
	}
	for k := range out {
		out[k] -= mean
	}
	return out
}

// expects is what a member expects an instrument without error to show.
func (m *member) expects(c *course, r *Reading) float64 {
	switch r.Of {
	case Level:
		return c.Tub.LevelMM(m.Litres)
	case Strength:
		return m.shownEC()
	}
	s := &c.Tub.Stands[r.Stand]
	switch r.Of {
	case Height:
		return m.height(c, r.Stand)
	case Leaves:
		return m.leavesOf(c, r.Stand)
	}
	return s.Model.HarvestG(m.Stands[r.Stand], s.PerM2)
}

// height is how tall the plants of a stand are over the lid, in mm.
func (m *member) height(c *course, stand int) float64 {
	s := &c.Tub.Stands[stand]
	return s.Crop.HeightMM(s.Model.ShootG(m.Stands[stand], s.PerM2)) * m.factors.Value(Tall)
}

// learn moves every member by its surprise. What is moved are the factors, the
// water, its salts and the logarithm of each stand's mass.
func (e *ensemble) learn(r *Reading, expects, noise []float64) {
	n := float64(len(e.members))
	mean, spread := 0.0, 0.0
	for _, x := range expects {
		mean += x / n
	}
	for _, x := range expects {
		spread += (x - mean) * (x - mean) / (n - 1)
	}
	width := int(factorCount) + 2 + len(e.Tub.Stands)
	gain := make([]float64, width)
	for k := range e.members {
		for j := range width {
			gain[j] += e.members[k].part(j) * (expects[k] - mean) / (n - 1)
		}
	}
	for j := range gain {
		gain[j] /= spread + r.SD*r.SD
	}
	e.each(func(k int, m *member) {
		surprise := r.Value - noise[k] - expects[k]
		for j, g := range gain {
			m.move(e.course, j, g*surprise)
		}
		m.prepare(e.course)
	})
}

// part is one of the numbers that a member learns.
func (m *member) part(j int) float64 {
	switch j -= int(factorCount); {
	case j < 0:
		return m.factors[j+int(factorCount)]
	case j == 0:
		return m.Litres
	case j == 1:
		return m.shownEC()
	default:
		return math.Log(max(m.Stands[j-2].DryG(), tiny))
	}
}

// mostECmS is stronger than any solution that a meter of a class shows, mS/cm:
// what is left of a tub that is nearly dry is said to be no stronger, or a few
// such members would decide what all learn.
const mostECmS = 20

// shownEC is the strength that a meter would show.
func (m *member) shownEC() float64 { return min(m.ECmS, mostECmS) }

// tiny is a dry mass in g/m² under any that lives, so that there is a logarithm.
const tiny = 1e-9

// farthest is how many standard deviations a factor may be learned away.
const farthest = 5

// move changes one of those numbers, within what can be.
func (m *member) move(c *course, j int, by float64) {
	switch j -= int(factorCount); {
	case j < 0:
		f := &m.factors[j+int(factorCount)]
		*f = max(-farthest, min(farthest, *f+by))
	case j == 0:
		m.Litres = max(0, min(c.mostL, m.Litres+by))
	case j == 1:
		m.ECmS = max(0, min(mostECmS, m.shownEC()+by))
	default:
		times := math.Exp(max(-1, min(1, by)))
		s := m.Stands[j-2]
		m.Stands[j-2] = crop.State{Store: s.Store * times, Structure: s.Structure * times}
	}
}
