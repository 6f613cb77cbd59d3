package steering

import (
	"math"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/reading"
)

// The sums held against solutions whose EC others worked out: EC is taken for
// salts, and how far that is off is measured here, not tuned away.
func TestPublishedMixing(t *testing.T) {
	const usgs = "computed with the USGS speciation program PHREEQC 3: Hoagland no. 1 at 0.1, 0.25, 0.5, 0.75, 1 and 2 times its strength"
	of := map[float64]float64{0.1: 248, 0.25: 595, 0.5: 1142, 0.75: 1664, 1: 2171, 2: 4089} // µS/cm
	for _, c := range []struct {
		from, to float64
		off      float64 // how much the straight line may be off: measured, rounded up
	}{{1, 0.75, 0.025}, {1, 0.5, 0.05}, {2, 1, 0.06}, {0.5, 0.25, 0.041}} {
		// Pure water to 10 L until the strength is c.to: 10·from/to L in all.
		litres := 10 * c.from / c.to
		got := inEC.after.Value(quantity.L(10).Base(), 0, mS(of[c.from]/1000).Base(), quantity.L(litres-10).Base(), 0)
		after := quantity.MillisiemensPerCM.From(got) * 1000
		if math.Abs(after/of[c.to]-1) > c.off {
			t.Errorf("%v to %v times: %v µS/cm, want %v within %v (%s)", c.from, c.to, after, of[c.to], c.off, usgs)
		}
		if after > of[c.to] {
			t.Errorf("%v to %v times: %v is above %v; the straight line reads low", c.from, c.to, after, of[c.to])
		}
	}
}

// table is a curve through points that others worked out, straight in between.
type table [][2]float64 // parts, EC

func (c table) EC(parts float64) float64 {
	i := 1
	for i < len(c)-1 && c[i][0] < parts {
		i++
	}
	a, b := c[i-1], c[i]
	return a[1] + (b[1]-a[1])*(parts-a[0])/(b[0]-a[0])
}

func (c table) Strength(ec float64) (float64, bool) {
	if ec < c[0][1] || ec > c[len(c)-1][1] {
		return 0, false
	}
	i := 1
	for c[i][1] < ec {
		i++
	}
	a, b := c[i-1], c[i]
	return a[0] + (b[0]-a[0])*(ec-a[1])/(b[1]-a[1]), true
}

// The same solutions by their curve: a tub at full strength that should read
// what half strength reads takes as much water as it holds, where the straight
// line would pour in 90 % of that.
func TestPublishedMixingByTheCurve(t *testing.T) {
	const usgs = "computed with the USGS speciation program PHREEQC 3: Hoagland no. 1 at 0, 0.1, 0.25, 0.5, 0.75, 1 and 2 times its strength"
	hoagland := table{{0, 0}, {0.1, 0.248}, {0.25, 0.595}, {0.5, 1.142}, {0.75, 1.664}, {1, 2.171}, {2, 4.089}}
	for _, c := range []struct {
		from, to mS
		water    float64 // to 10 L, from the strengths
	}{{2.171, 1.664, 10 * (1/0.75 - 1)}, {2.171, 1.142, 10}, {4.089, 2.171, 10}, {1.142, 0.595, 10}} {
		tub := Tub{
			NowL: 10, FillL: 40, MostL: 40, EC: reading.Range[mS]{Low: c.from - 0.01, High: c.from + 0.01}, Readings: 2,
			Low: c.to - 0.1, High: c.to + 0.1, Target: c.to, Tap: Tap{Told: true, Safe: true}, Curve: hoagland,
		}
		a := Strength(working.NewBook(), tub)
		after := quantity.MillisiemensPerCM.From(a.After.Base)
		if math.Abs(in(a.PourIn)-c.water) > 1e-9 || math.Abs(after-float64(c.to)) > 1e-9 {
			t.Errorf("%v to %v: %v L to %v, want %v L (%s)", c.from, c.to, in(a.PourIn), after, c.water, usgs)
		}
		tub.Curve = nil
		if by := in(Strength(working.NewBook(), tub).PourIn); by >= c.water {
			t.Errorf("%v to %v: the straight line pours in %v L, not less than %v", c.from, c.to, by, c.water)
		}
	}
}

// Sums that anybody can do with a pencil.
func TestWorkedSums(t *testing.T) {
	const alloy = "mixing by mass balance, C1·V1 + C2·V2 = C3·V3, any school text; worked by hand"
	tub := func(now, most quantity.L, ec, target, tap mS) Tub {
		return Tub{NowL: now, FillL: most, MostL: most, EC: reading.Range[mS]{Low: ec - 0.01, High: ec + 0.01}, Readings: 2, Low: target - 0.1, High: target + 0.1, Target: target, Tap: Tap{EC: tap, Told: true, Safe: true}}
	}
	for _, c := range []struct {
		name             string
		tub              Tub
		out, pour, after float64
	}{
		{"10 L at 2.0 to 1.0 with pure water: 10 L more", tub(10, 20, 2, 1, 0), 0, 10, 1},
		{"the same with no room: half is swapped", tub(20, 20, 2, 1, 0), 10, 10, 1},
		{"20 L at 2.0 to 1.6 with tap of 0.4: 20 × 0.4/1.2", tub(20, 40, 2, 1.6, 0.4), 0, 20.0 / 3, 1.6},
		{"the same with no room: 20 × 0.4/1.6", tub(20, 20, 2, 1.6, 0.4), 5, 5, 1.6},
	} {
		a := Strength(working.NewBook(), c.tub)
		after := quantity.MillisiemensPerCM.From(a.After.Base)
		if math.Abs(in(a.TakeOut)-c.out) > 1e-9 || math.Abs(in(a.PourIn)-c.pour) > 1e-9 || math.Abs(after-c.after) > 1e-9 {
			t.Errorf("%s: out %v, in %v, to %v; want %v, %v, %v (%s)", c.name, in(a.TakeOut), in(a.PourIn), after, c.out, c.pour, c.after, alloy)
		}
	}
}

// What the limits rest on.
func TestPublishedLimits(t *testing.T) {
	const harm = "McGehee & Raudales, HortTechnology 33(1):125, 2023: 0.5 mg/L of chlorine cost 30 % of the shoot"
	if got := 2 * value(factTopupShareMax) / 100; got != 0.5 {
		t.Errorf("2 mg/L in the share allowed are %v mg/L, want 0.5 (%s)", got, harm)
	}
	const kratky = "Kratky, Acta Hort. 648:83-89, 2004, abstract: additions above 2 cm may injure the plants"
	if got := StillRaiseMM(); got != 20 {
		t.Errorf("a still tub may rise by %v mm, want 20 (%s)", got, kratky)
	}
}

// What the plants took. A tub that loses water alone gets stronger by V0/V1.
func TestWhatPlantsTook(t *testing.T) {
	const byHand = "mass balance, worked by hand"
	exact := func(ec mS) reading.Range[mS] { return reading.Range[mS]{Low: ec - 0.01, High: ec + 0.01} }
	for _, c := range []struct {
		name    string
		span    Span
		course  Course
		of      Liquid
		drankAt float64
	}{
		{"water alone: 20 × 1.4 = 16 × 1.75", Span{ThenL: 20, NowL: 16, ThenEC: exact(1.4), NowEC: exact(1.75)}, Rising, Water, 0},
		{"at the tub's strength", Span{ThenL: 20, NowL: 16, ThenEC: exact(1.4), NowEC: exact(1.4)}, Steady, Feed, 1.4},
		{"food faster: (28 − 16 × 1.2)/4", Span{ThenL: 20, NowL: 16, ThenEC: exact(1.4), NowEC: exact(1.2)}, Falling, Feed, 2.2},
		{"topped up with tap water: (28 + 4 × 0.4 − 20 × 1.2)/4", Span{ThenL: 20, NowL: 20, PouredL: 4, PouredEC: 0.4, ThenEC: exact(1.4), NowEC: exact(1.2)}, Falling, Feed, 1.4},
		{"hardly anything drunk", Span{ThenL: 20, NowL: 19.8, ThenEC: exact(1.4), NowEC: exact(1.2), ErrorL: 0.8}, NotEnough, "", math.NaN()},
		{"a pen leaves too much open", Span{ThenL: 20, NowL: 19, ThenEC: reading.Range[mS]{Low: 1.27, High: 1.53}, NowEC: reading.Range[mS]{Low: 1.28, High: 1.54}, ErrorL: 0.5}, NotEnough, "", math.NaN()},
		{"EC not read", Span{ThenL: 20, NowL: 16}, NotEnough, "", math.NaN()},
	} {
		got := Drank(working.NewBook(), c.span)
		at := quantity.MillisiemensPerCM.From(got.DrankAt.Base)
		if got.Course != c.course || got.Of != c.of || got.Text == "" || !math.IsNaN(c.drankAt) && math.Abs(at-c.drankAt) > 1e-9 {
			t.Errorf("%s: %s, %s, drank at %v; want %s, %s, %v (%s)", c.name, got.Course, got.Of, at, c.course, c.of, c.drankAt, byHand)
		}
	}
}
