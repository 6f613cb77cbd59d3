package forecast

import (
	"math"
	"testing"
)

// One reading of a quantity that has a normal spread moves the middle and
// narrows the spread as the textbook says: (Kalman, J. Basic Eng. 82:35-45,
// 1960, from memory): middle + s²/(s²+r²) surprise, and s r/√(s²+r²).
func TestPublishedUpdate(t *testing.T) {
	const members = 20000
	s := season(t, 1)
	s.Tub.Stands = nil
	s.Tub.OpenShare = 0
	sd := s.Tub.Start.ECmS * mixSpread
	for _, r := range []struct{ value, sd float64 }{{1.4, 0.05}, {1.5, 0.05}, {1.3, 0.2}, {1.45, 0.01}} {
		s.Readings = []Reading{{AtHour: 2, Of: Strength, Value: r.value, SD: r.sd}}
		got := run(t, s, Options{Members: members, Seed: 5}).Days[0].ECmS
		share := sd * sd / (sd*sd + r.sd*r.sd)
		middle, spread := 1.4+share*(r.value-1.4), math.Sqrt(share)*r.sd
		// EC is spread by its logarithm, which at 5 % is off normal by a
		// thousandth; and 20,000 members know a middle to a hundredth of the
		// spread.
		if math.Abs(got.P50-middle) > 0.002+0.03*spread {
			t.Errorf("%+v: the middle is %.4f, want %.4f", r, got.P50, middle)
		}
		if w := (got.P95 - got.P5) / 2 / 1.6449; math.Abs(w/spread-1) > 0.05 {
			t.Errorf("%+v: the spread is %.4f, want %.4f", r, w, spread)
		}
	}
}

// A class whose plants drink half as much again is known for it after some
// weeks, and more surely than before.
func TestThirstIsLearned(t *testing.T) {
	thirsty := func(f *Factors) { *f = Factors{Thirst: math.Log(1.5) / spreads[Thirst]} }
	s, _ := synthetic(t, 28, 11, thirsty)
	known, unknown := run(t, s, Options{Members: 400}), run(t, s, Options{Members: 400, NoLearning: true})
	got, before := known.Learned(Thirst), unknown.Learned(Thirst)
	if !(got.P50 > 1.2) || !(math.Log(got.P95/got.P5) < 0.75*math.Log(before.P95/before.P5)) {
		t.Errorf("thirst is taken for %+v, at first for %+v", got, before)
	}
	if says, guess := known.Guess(s.Readings); guess || says == "" {
		t.Errorf("%v %q", guess, says)
	}
	if says, guess := unknown.Guess(s.Readings); !guess || says == "" {
		t.Errorf("%v %q", guess, says)
	}
	next := season(t, 14)
	first, again := run(t, next, Options{Members: 400, Seed: 9}), run(t, next, Options{Members: 400, Seed: 9, Known: known.Factors})
	if !(again.Learned(Thirst).P50 > first.Learned(Thirst).P50+0.1) {
		t.Error("the next crop does not know")
	}
	if a, b := again.Learned(Start), first.Learned(Start); a != b {
		t.Error("the next crop's young plants are not new")
	}
}

// Two readings of the level are the model's guess still.
func TestTwoReadingsAreAGuess(t *testing.T) {
	s, _ := synthetic(t, 7, 1, nil)
	for n, want := range []bool{true, true, true, false} {
		var few []Reading
		levels := 0
		for _, r := range s.Readings {
			if r.Of == Level {
				if levels++; levels > n {
					break
				}
			}
			few = append(few, r)
		}
		short := s
		short.Readings = few
		if _, guess := run(t, short, Options{Members: 20}).Guess(few); guess != want {
			t.Errorf("%d readings: %v", n, guess)
		}
	}
}

// Later readings are scored and not learned from.
func TestScoredOnly(t *testing.T) {
	s, _ := synthetic(t, 21, 2, nil)
	f := run(t, s, Options{Members: 50, LearnToHour: 24 * 7})
	for _, x := range f.Expected {
		if early := s.Readings[x.Reading].AtHour <= 24*7; x.Learned != early {
			t.Errorf("hour %v: %v", s.Readings[x.Reading].AtHour, x.Learned)
		}
	}
	for i := range s.Readings {
		if s.Readings[i].AtHour > 24*7 {
			s.Readings[i].Value *= 0.5
		}
	}
	other := run(t, s, Options{Members: 50, LearnToHour: 24 * 7})
	if f.Days[20].Litres != other.Days[20].Litres {
		t.Error("a reading that is only scored changes the forecast")
	}
}

// Scores are counted as one counts by hand.
func TestScores(t *testing.T) {
	band := Band{1, 2, 3, 4, 5}
	f := Forecast{Expected: []Expected{{0, band, true}, {1, band, true}, {2, band, true}, {3, Band{P50: 1}, true}}}
	readings := []Reading{{AtHour: 0, Value: 100}, {AtHour: 24, Value: 2.5}, {AtHour: 48, Value: 4.5}, {AtHour: 60, Of: Strength, Value: 2}}
	got := f.Scores(readings, 1)
	want := []Score{{Level, 2, 2, 1, 1}, {Strength, 1, 0, 0, 1}}
	if len(got) != 2 || got[0] != want[0] || got[1] != want[1] {
		t.Errorf("%+v", got)
	}
}

// What is left of a tub that is nearly dry is as strong as its salts make it,
// without end. No meter shows that, and a few such members must not decide what
// all learn.
func TestATubThatRanDryTeachesNothingAbsurd(t *testing.T) {
	s := season(t, 30)
	s.Tub.Start.Litres = 4
	for day := 18; day < 28; day += 2 {
		s.Readings = append(s.Readings, Reading{AtHour: 24 * float64(day), Of: Level, Value: 12, SD: 3}, Reading{AtHour: 24*float64(day) + 1, Of: Strength, Value: 3, SD: 0.1})
	}
	s.Events = append(s.Events, Event{AtHour: 24*28 + 9, Kind: FillTo, LineMM: s.Tub.LineMM, ECmS: 1})
	f := run(t, s, Options{Members: 200, Seed: 1})
	for i, d := range f.Days {
		if d.ECmS.P95 > 20 || d.Litres.P95 > s.Tub.LitresAt(s.Tub.Shape.HeightMM()) {
			t.Errorf("day %d: EC %+v, %+v L", i+1, d.ECmS, d.Litres)
		}
	}
	for k := range factorCount {
		if v := f.Learned(k); !finite(v.P5, v.P50, v.P95) {
			t.Errorf("factor %d is %+v", k, v)
		}
	}
	// Filled up again, what is in the tub is what was poured in and a little salt.
	if ec := f.Days[len(f.Days)-1].ECmS.P50; ec < 0.5 || ec > 2.5 {
		t.Errorf("after filling up at EC 1 the tub is at %v", ec)
	}
}
