package forecast

import (
	"math"
	"testing"

	"rootbell/internal/science/crop"
)

// Leaves go with day-degrees over 0 °C from the day seedlings show (J. Agric.
// Sci. Cambridge, abstracts: see facts.csv). In a steady room of 21 °C the sum is
// by hand: 14 days at 20 °C before the move and so many at 21 °C after it, 0.03
// leaves for each (from memory, no source).
func TestLeavesByHand(t *testing.T) {
	for _, name := range []string{"leaf lettuce", "butterhead", "romaine"} {
		for days, want := range map[int]float64{0: 8.4, 5: 11.55, 10: 14.7, 20: 21} {
			s := steadyRoom(t, 21)
			s.Tub.Stands[0].Crop, _ = crop.Find(name)
			s.Tub.Stands[0].Warmed = 14 * 20
			s.Readings = []Reading{{AtHour: 24 * float64(days), Of: Leaves, Value: want, SD: 1}}
			if got := run(t, s, Options{Members: 1}).Expected[0].Band.P50; math.Abs(got-want) > 1e-9*want {
				t.Errorf("%s after %d days: %v leaves, want %v", name, days, got, want)
			}
		}
	}
}

// leafy is a season whose leaves are counted once a week and nothing else is
// read.
func leafy(t testing.TB, days int) Season {
	s := filled(t, days)
	s.Tub.Stands[0].Crop, _ = crop.Find("leaf lettuce")
	s.Tub.Stands[0].Warmed = 250
	for d := 2; d < days; d += 7 {
		s.Readings = append(s.Readings, Reading{AtHour: 24*float64(d) + 9, Of: Leaves, SD: LeavesSD()})
	}
	return s
}

// A variety with three leaves where the rule has two is known for it after some
// counts, and more surely than before; and what is not read moves nothing.
func TestLeavesAreLearned(t *testing.T) {
	many := func(f *Factors) { *f = Factors{Leafing: math.Log(1.5) / spreads[Leafing]} }
	s, _ := seen(leafy(t, 28), 4, many)
	known, unknown := run(t, s, Options{Members: 300}), run(t, s, Options{Members: 300, NoLearning: true})
	got, before := known.Learned(Leafing), unknown.Learned(Leafing)
	if !(got.P50 > 1.35 && got.P50 < 1.65) || !(math.Log(got.P95/got.P5) < 0.4*math.Log(before.P95/before.P5)) {
		t.Errorf("leaves by warmth are taken for %+v, at first for %+v", got, before)
	}
	for d, day := range unknown.Days {
		// The spread of 300 members' middle is a hundredth; a count of leaves says
		// little of the room's warmth, and nothing else of the water.
		if other := known.Days[d]; math.Abs(other.Litres.P50/day.Litres.P50-1) > 0.02 {
			t.Errorf("day %d: leaves move the water from %v to %v L", d+1, day.Litres.P50, other.Litres.P50)
		}
	}
}

// Where nobody counts leaves, a crop that is counted is followed as one that is
// not: to the last bit.
func TestLeavesThatNobodyCounts(t *testing.T) {
	s, _ := synthetic(t, 14, 6, nil)
	with, without := s, s
	with.Tub.Stands = append([]Stand(nil), s.Tub.Stands...)
	with.Tub.Stands[0].Warmed = 300
	a, b := run(t, with, Options{Members: 50}), run(t, without, Options{Members: 50})
	for d := range a.Days {
		if a.Days[d].Litres != b.Days[d].Litres || a.Days[d].ECmS != b.Days[d].ECmS || a.Days[d].Stands[0] != b.Days[d].Stands[0] {
			t.Errorf("day %d: %+v and %+v", d+1, a.Days[d], b.Days[d])
		}
	}
}

// Of the counts of seasons from the ensemble's own distribution nine in ten lie
// in the wide band, learned from or not. The last of each season is taken, so
// that they are binomial.
func TestCalibrationOfLeaves(t *testing.T) {
	var counts [2]tally
	for i := range *calibrate {
		s, _ := seen(leafy(t, 28), truthSeeds+uint64(i), nil)
		for k, o := range []Options{{NoLearning: true}, {}} {
			o.Members, o.Seed = *courses, uint64(i)
			f := run(t, s, o)
			x := f.Expected[len(f.Expected)-1]
			counts[k].count(x.Band, s.Readings[x.Reading].Value)
		}
	}
	for k, how := range []string{"nothing learned", "learned all along"} {
		t.Logf("%s; leaves: %s", how, counts[k])
		if low, high := between(counts[k].all, 0.9); counts[k].wide < low || counts[k].wide > high {
			t.Errorf("%s: %d of %d in nine in ten, want %d to %d", how, counts[k].wide, counts[k].all, low, high)
		}
	}
}
