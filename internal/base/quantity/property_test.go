package quantity

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

var allKinds = []Kind{
	Length, SmallLength, Area, Volume, SmallVolume, Mass, SmallMass, Time, Temperature, Density, Content, AirFlow,
	DailyVolume, Power, PhotonFlux, PPFD, Illuminance, Conductivity, Share, MoleFraction, Count, Factor, Money, PHScale,
}

// What is shown can be typed, and is then shown the same again.
func TestShownCanBeTyped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(allKinds).Draw(t, "kind")
		s := rapid.SampledFrom([]System{Metric, US}).Draw(t, "system")
		least := 0.0
		if maySink(k) && k.Dim != TemperatureDim {
			least = -2000
		}
		base := k.Unit(s).Base(rapid.Float64Range(least, 1e6).Draw(t, "value"))
		text := Format(k, base, s)
		again, err := Parse(k, text)
		if err != nil {
			t.Fatalf("%q cannot be typed: %v", text, err)
		}
		if back := Format(k, again, s); back != text {
			t.Fatalf("%q is shown as %q when typed", text, back)
		}
		if shown := Shown(k, base, s); !close15(k.Unit(s).Base(shown), again) && math.Abs(shown-k.Unit(s).From(again)) > 1e-9 {
			t.Fatalf("Shown gives %v for %q", shown, text)
		}
	})
}

// A mark is nowhere further from the length than half a step of the ruler, and
// can be typed.
func TestMarksAreNear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := rapid.Float64Range(-3000, 3000).Draw(t, "mm")
		s := rapid.SampledFrom([]System{Metric, US}).Draw(t, "system")
		half := map[System]float64{Metric: 0.5, US: 25.4 / 32}[s]
		read, err := ParseAs[MM](FormatMark(mm, s))
		if err != nil {
			t.Fatal(err)
		}
		// The slack is that of a tie, and a rounding of float64.
		if math.Abs(float64(read)-mm) > half+1e-6 || math.Abs(float64(read)-MarkMM(mm, s)) > 1e-9 {
			t.Fatalf("%v mm is marked as %s, %v mm", mm, FormatMark(mm, s), read)
		}
	})
}

// Every name of every unit is read, in any case where that is not ambiguous,
// and means its unit.
func TestEveryNameIsRead(t *testing.T) {
	for _, row := range simpleUnits {
		for name := range strings.SplitSeq(row.names, "|") {
			k := Kind{Name: "a thing", Dim: row.unit.Dim, Metric: Unit{Symbol: "u", Scale: 2}}
			got, err := Parse(k, "2 "+name)
			if err != nil || !close15(got, row.unit.Base(2)) {
				t.Errorf("2 %s = %v, %v; want %v", name, got, err, row.unit.Base(2))
			}
		}
	}
}

// Typed quantities come back from base units.
func TestBaseAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		value := rapid.Float64Range(-100, 1e6).Draw(t, "value")
		back(t, MM(value))
		back(t, L(value))
		back(t, KG(value))
		back(t, G(value))
		back(t, DegC(value))
		back(t, MSPerCM(value))
		back(t, MGPerL(value))
		back(t, KGPerL(value))
		back(t, LPerMin(value))
		back(t, LPerDay(value))
		back(t, W(value))
		back(t, UmolPerS(value))
		back(t, Fraction(value))
		back(t, Days(value))
	})
}

func back[Q Quantity](t *rapid.T, q Q) {
	got := FromBase[Q](q.Base())
	if d := math.Abs(float64(got - q)); d > 1e-12*math.Abs(float64(q)) && d > 1e-12*273.15 {
		t.Fatalf("%T(%v) comes back as %v", q, q, got)
	}
}
