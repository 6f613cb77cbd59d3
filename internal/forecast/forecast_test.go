package forecast

import (
	"context"
	"encoding/json"
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/science/water"
)

func run(t testing.TB, s Season, o Options) Forecast {
	t.Helper()
	f, err := Run(context.Background(), s, o)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// drawEvents is anything that may happen to a tub.
func drawEvents(t *rapid.T, days int) []Event {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Event {
		return Event{
			AtHour: rapid.Float64Range(0, float64(24*days)).Draw(t, "hour"),
			Kind:   Kind(rapid.IntRange(int(TopUp), int(PowerCut)).Draw(t, "kind")),
			Litres: rapid.Float64Range(0, 30).Draw(t, "litres"), ECmS: rapid.Float64Range(0, 3).Draw(t, "ec"),
			LineMM: rapid.Float64Range(0, 400).Draw(t, "line"), DropMM: rapid.Float64Range(0, 50).Draw(t, "drop"),
			Hours: rapid.Float64Range(0, 60).Draw(t, "hours"), Plants: rapid.IntRange(0, 3).Draw(t, "plants"),
		}
	}), 0, 12).Draw(t, "events")
}

// What went in and what went out is what stands in the tub, and nothing in it
// is ever under nought, over the rim or no number.
func TestBalance(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := season(t, 12)
		s.Tub.Still = rapid.Bool().Draw(rt, "still")
		s.Tub.OpenShare = rapid.Float64Range(0, 1).Draw(rt, "open")
		s.Tub.Stands[0].Plants = rapid.IntRange(0, 40).Draw(rt, "plants")
		s.Tub.Stands[0].Model.StartG = rapid.Float64Range(0, 8).Draw(rt, "start")
		s.Events = drawEvents(rt, 12)
		f := run(t, s, Options{Members: 3, Seed: rapid.Uint64().Draw(rt, "seed")})
		for _, m := range f.Ends {
			l := m.Ledger
			litres := l.PouredL - l.DrunkL - l.VapourL - l.ThrownL
			if math.Abs(litres-m.Litres) > 1e-9 {
				rt.Fatalf("%v L stand, the sum is %v", m.Litres, litres)
			}
			salts := l.PouredSalt - l.TakenSalt - l.ThrownSalt
			if math.Abs(salts-m.Litres*m.ECmS) > 1e-9 {
				rt.Fatalf("salts of %v, the sum is %v", m.Litres*m.ECmS, salts)
			}
			most := water.UptakeEC() * math.Exp(5*spreads[Uptake]) * l.DrunkL
			if l.TakenSalt < -1e-9 && m.Litres > 0 || m.Litres > 0 && l.ThrownL == 0 && l.TakenSalt > most+1e-9 {
				rt.Fatalf("plants took salts of %v with %v L", l.TakenSalt, l.DrunkL)
			}
			if m.Litres < 0 || m.ECmS < 0 || !finite(m.Litres, m.ECmS, m.OxygenMgL) || m.Litres > s.Tub.LitresAt(s.Tub.LineMM+6*fillMM) {
				rt.Fatalf("%+v", m)
			}
		}
	})
}

// Any number of workers gives the same bytes, and another seed other ones.
func TestWorkersChangeNothing(t *testing.T) {
	s := filled(t, 14)
	s.Readings = []Reading{{AtHour: 80, Of: Level, Value: 228, SD: 2}, {AtHour: 200, Of: Strength, Value: 1.3, SD: 0.1}}
	s.Watches = []Watch{{24 * 4, 24 * 7}}
	bytes := func(o Options) string {
		f := run(t, s, o)
		for i := range f.Stretches {
			f.Stretches[i].DryAt = Band{} // JSON has no infinity
		}
		text, err := json.Marshal(f)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	one := bytes(Options{Members: 101, Seed: 7})
	for _, workers := range []int{2, 3, 8, 64} {
		if bytes(Options{Members: 101, Seed: 7, Workers: workers}) != one {
			t.Errorf("%d workers give another forecast", workers)
		}
	}
	if bytes(Options{Members: 101, Seed: 8}) == one {
		t.Error("another seed gives the same forecast")
	}
}

// A season that ends early is the beginning of a longer one.
func TestNothingKnowsTheFuture(t *testing.T) {
	long, short := run(t, filled(t, 20), Options{Members: 20}), run(t, filled(t, 12), Options{Members: 20})
	for d, day := range short.Days {
		if day.Litres != long.Days[d].Litres || day.ECmS != long.Days[d].ECmS {
			t.Fatalf("day %d differs", d+1)
		}
	}
}

// An end that is asked for is an end.
func TestGivesUp(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := Run(ctx, season(t, 3), Options{Members: 2}); !errors.Is(err, context.Canceled) {
		t.Fatal(err)
	}
}
