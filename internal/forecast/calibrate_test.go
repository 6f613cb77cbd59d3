package forecast

import (
	"flag"
	"fmt"
	"math"
	"slices"
	"testing"
)

// More seasons and members than those of every run are asked for by hand.
var (
	calibrate = flag.Int("calibrate", 20, "seasons of TestCalibration and TestWrongModel")
	courses   = flag.Int("members", 200, "members of their ensembles")
)

// truthSeeds begin here, and were so before the first run.
const truthSeeds = 1_000_000

const (
	seasonDays = 35
	learnDays  = 14
)

// What is counted: each quantity that is read, and what nobody can read without
// picking the plant.
const (
	truthOfMass = quantityCount
	countedOf   = quantityCount + 1
)

var names = [countedOf]string{"level, mm", "EC, mS/cm", "height, mm", "mass picked, g", "leaves", "mass at the week's end, g"}

// tally counts how often bands held.
type tally struct{ wide, half, all int }

func (c *tally) count(b Band, v float64) {
	c.all++
	if b.Wide(v) {
		c.wide++
	}
	if b.Half(v) {
		c.half++
	}
}

// String is the counts in percent, with what chance alone leaves open.
func (c tally) String() string {
	n := float64(c.all)
	wide, half := float64(c.wide)/n, float64(c.half)/n
	by := func(p float64) float64 { return 196 * math.Sqrt(p*(1-p)/n) }
	return fmt.Sprintf("%.1f ± %.1f %% in nine in ten, %.1f ± %.1f %% in one in two, of %d", 100*wide, by(wide), 100*half, by(half), c.all)
}

// between are the ends of the interval in which a binomial of n tries falls
// but for one in a thousand on each side.
func between(n int, p float64) (low, high int) {
	low, high = -1, n
	below, term := 0.0, math.Pow(1-p, float64(n))
	for k := 0; k <= n; k++ {
		if below+term > 1e-3 && low < 0 {
			low = k
		}
		if below += term; below < 1-1e-3 {
			high = k + 1
		}
		term *= float64(n-k) / float64(k+1) * p / (1 - p)
	}
	return low, min(n, high)
}

// On seasons from the ensemble's own distribution, nine readings in ten lie in
// the wide band and one in two in the middle half: without learning, and in the
// weeks after it stopped. One reading of each season is counted for each
// quantity and week, and the true mass of a plant at each week's end, so that the
// counts of a week are binomial.
func TestCalibration(t *testing.T) {
	var counts [3][countedOf][seasonDays / 7]tally
	for i := range *calibrate {
		s, _ := synthetic(t, seasonDays, truthSeeds+uint64(i), nil)
		masses := trueMasses(s, truthSeeds+uint64(i))
		for k, o := range []Options{{NoLearning: true}, {LearnToHour: learnDays * 24}, {}} {
			o.Members, o.Seed, o.Workers = *courses, uint64(i), 2
			f := run(t, s, o)
			seen := map[[2]int]bool{}
			for _, x := range f.Expected {
				r := s.Readings[x.Reading]
				week := int(r.AtHour / 24 / 7)
				if key := [2]int{int(r.Of), week}; !seen[key] {
					seen[key] = true
					counts[k][r.Of][week].count(x.Band, r.Value)
				}
			}
			for day := 6; day < seasonDays; day += 7 {
				counts[k][truthOfMass][day/7].count(f.Days[day].Stands[0].MassG, masses[day])
			}
		}
	}
	for k, how := range []string{"nothing learned", "learned for two weeks", "learned all along"} {
		for of, weeks := range counts[k] {
			var pooled tally
			for week, c := range weeks {
				if c.all == 0 {
					continue
				}
				pooled = tally{pooled.wide + c.wide, pooled.half + c.half, pooled.all + c.all}
				t.Logf("%s; %s; week %d: %s", how, names[of], week+1, c)
				if *calibrate > 20 {
					continue
				}
				if low, high := between(c.all, 0.9); c.wide < low || c.wide > high {
					t.Errorf("%s, %s, week %d: %d of %d in nine in ten, want %d to %d", how, names[of], week+1, c.wide, c.all, low, high)
				}
			}
			if pooled.all > 0 {
				t.Logf("%s; %s; pooled: %s", how, names[of], pooled)
			}
		}
	}
}

// A class whose growth, thirst and salts are 30 % off the model fills its tub up
// for three weeks and then leaves it for one: how far is the level of that week
// off, with six readings of the level and four others, and with none? What comes is told, and
// only that readings do no harm is asserted.
func TestWrongModel(t *testing.T) {
	const left = 21 * 24
	none, six, count := 0.0, 0.0, 0
	for i := range *calibrate {
		off := func(k Factor) float64 { // each up or down by 30 %
			if i>>int(k)&1 == 0 {
				return math.Log(1.3) / spreads[k]
			}
			return math.Log(0.7) / spreads[k]
		}
		s := filled(t, 28)
		s.Tub.Stands[0].Plants = 8
		s.Events = slices.DeleteFunc(s.Events, func(e Event) bool { return e.AtHour > left })
		s.Readings = slices.DeleteFunc(readDays(28), func(r Reading) bool { return r.AtHour < 7*24 })
		s, truths := seen(s, truthSeeds+uint64(i), func(f *Factors) {
			*f = Factors{Growth: off(Growth), Thirst: off(Thirst), Uptake: off(Uptake)}
		})
		with := run(t, s, Options{Members: *courses, Seed: uint64(i), Workers: 2, LearnToHour: left})
		without := run(t, s, Options{Members: *courses, Seed: uint64(i), Workers: 2, NoLearning: true})
		for k, x := range with.Expected {
			if r := s.Readings[x.Reading]; r.Of == Level && r.AtHour > left {
				six += math.Abs(x.Band.P50 - truths[x.Reading])
				none += math.Abs(without.Expected[k].Band.P50 - truths[x.Reading])
				count++
			}
		}
	}
	t.Logf("level in a week left alone: off by %.2f mm after six readings, by %.2f mm after none (%d levels)", six/float64(count), none/float64(count), count)
	if six > none {
		t.Error("readings do harm")
	}
}
