package tub

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/base/working/pencil"
)

// plain is a tub of 52 × 36 cm at the top, 46 × 30 at the base, 22 high, with
// corners of 4 cm, a lid of 2 mm on its rim and cups of 65 mm.
func plain(t testing.TB) (Shape, Setup) {
	return rectTub(t, [2]float64{520, 360}, [2]float64{460, 300}, 220, 40, 40),
		Setup{ThicknessMM: 2, CupDepthMM: 65, CupBodyMM: 68, Stones: 1, TapeErrorMM: 2, EmptyMass: 2}
}

func at(t testing.TB, n working.Number) float64 {
	t.Helper()
	got, err := pencil.Round(n.Show(quantity.Metric).PutIn, n.Kind.Decimals[quantity.Metric])
	if err != nil || got != n.Show(quantity.Metric).Value {
		t.Errorf("%s: shown %v, the pencil finds %v, %v", n.Name, n.Show(quantity.Metric).Value, got, err)
	}
	return got
}

// The figures are worked out with a pencil: A = L·W − (4 − π)·40², straight
// between base and top, V = h/6·(A₀ + 4·A½ + A).
func TestLinesOfATub(t *testing.T) {
	s, set := plain(t)
	b := working.NewBook()
	l := s.Lines(b, set)
	fill := s.Water(b, "volume_fill", "water at the fill line", l.Fill, 2)
	lowered := s.Water(b, "volume_lowered", "water at the lowered line", l.Lowered, 2)
	lowest := s.Water(b, "volume_lowest", "water at the lowest line", l.Lowest, 2)
	for _, c := range []struct {
		number working.Number
		want   float64
		source string
	}{
		{l.CupBottom, 15.7, "22 + 0.2 − 6.5 cm"},
		{l.Fill, 16.7, "1 cm over the cup's bottom"},
		{l.Lowered, 13.2, "2.5 cm under it"},
		{l.Lowest, 8, "the larger of 8 and 2.5 + 5 cm"},
		{l.Highest, 19, "22 − 3 cm"},
		{fill, 25.8, "by hand: 16.7/6·(1366.3 + 4·1544.5 + 1733.2) cm³"},
		{lowered, 19.9, "by hand"},
		{lowest, 11.6, "by hand"},
		{Reserve(b, "reserve", "water from the transplant line to the lowest", fill, lowest), 14.2, "25.82 − 11.61 L"},
		{Reserve(b, "reserve_lowered", "water from the lowered line to the lowest", lowered, lowest), 8.3, "19.90 − 11.61 L"},
	} {
		if got := at(t, c.number); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s is %v, want %v (%s)", c.number.Name, got, c.want, c.source)
		}
	}
}

func TestWhatThePlanSaysTakesTheDefaultsPlace(t *testing.T) {
	s, set := plain(t)
	depth, stone := 150.0, 50.0
	warm := quantity.DegC(24)
	set.Still, set.FillDepthMM, set.StoneHeightMM, set.Water = true, &depth, &stone, &warm
	b := working.NewBook()
	l := s.Lines(b, set)
	fill := s.Water(b, "volume_fill", "water", l.Fill, 2)
	s.Load(b, l, set, fill, b.Typed("cups", "cups", "n", quantity.Count, 8, 0))
	if l.Fill.Base != 150 || l.Lowest.Base != 100 {
		t.Errorf("fill %v, lowest %v", l.Fill.Base, l.Lowest.Base)
	}
	for _, key := range []string{"stone_height", "water_temperature"} {
		if n, ok := b.Find(key); ok {
			t.Errorf("the default %s is listed beside what was typed", n.Name)
		}
	}
	set.FillDepthMM = nil
	if l := s.Lines(working.NewBook(), set); l.Fill.Base != 177 {
		t.Errorf("a still tub is filled to %v mm, want 20 mm over the cup's bottom", l.Fill.Base)
	}
}

// 8 cups of 68 mm stand 10 mm deep and a stone is 50 across and 25 high:
// 8·36.32 + 49.09 mL. Water at 20 °C weighs 0.9982 kg/L.
func TestLoadOfATub(t *testing.T) {
	s, set := plain(t)
	cool := quantity.DegC(20)
	set.Water = &cool
	b := working.NewBook()
	l := s.Lines(b, set)
	fill := s.Water(b, "volume_fill", "water at the fill line", l.Fill, 2)
	load := s.Load(b, l, set, fill, b.Typed("cups", "cups", "n", quantity.Count, 8, 0))
	for _, c := range []struct {
		number       working.Number
		base, within float64
	}{
		{load.Displaced, (8*math.Pi*34*34*10 + math.Pi*25*25*25), 1e-6},
		{load.Solution, fill.Base - load.Displaced.Base, 1e-6},
		{load.Mass, 2 + load.Solution.Base/1e6*0.9982067, 1e-5},
		{load.Trips, 4, 0},
	} {
		if math.Abs(c.number.Base-c.base) > c.within {
			t.Errorf("%s is %v, want %v", c.number.Name, c.number.Base, c.base)
		}
		at(t, c.number)
	}
	if d := Lasts(b, Reserve(b, "r", "reserve", fill, load.Displaced), 0); d.Known() {
		t.Errorf("a tub that takes no water lasts %v days", d.Base)
	}
	days := Lasts(b.In("x"), b.Typed("w", "water", "V", quantity.Volume, 8.3e6, 0), 1.5)
	if got := at(t, days); math.Abs(got-5.5) > 1e-12 {
		t.Errorf("8.3 L at 1.5 L a day last %v days", got)
	}
}

// The working of a volume and the fast form that searches use are one law.
func TestWaterIsTheVolumeOfTheShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyTub(t)
		if rapid.Bool().Draw(t, "poured") {
			s = anyPoured(t)
		}
		depth := s.HeightMM() * rapid.Float64Range(0.01, 1).Draw(t, "filled")
		b := working.NewBook()
		n := s.Water(b, "v", "water", b.Typed("h", "depth", "h", quantity.Length, depth, 2), 2)
		if want := s.Volume(depth).Base(); math.Abs(n.Base/want-1) > 1e-12 {
			t.Fatalf("with working %v, without %v", n.Base, want)
		}
		if e := n.Error(); !(e > 0) || math.IsInf(e, 1) {
			t.Fatalf("error %v of %v", e, n.Base)
		}
		for _, sys := range []quantity.System{quantity.Metric, quantity.US} {
			shown := n.Show(sys)
			if got, err := pencil.Round(shown.PutIn, shown.Decimals); err != nil || got != shown.Value {
				t.Fatalf("%s: shown %v, put in %s gives %v, %v", sys, shown.Value, shown.PutIn, got, err)
			}
		}
	})
}
