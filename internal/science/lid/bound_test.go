package lid

import (
	"context"
	"math"
	"testing"

	"rootbell/internal/base/plane"
)

// The bound is tight where the argument for a formula is one of its own.
func TestBoundIsTightForFewPointsInARectangle(t *testing.T) {
	for _, a := range []float64{1, 4.0 / 3, 1.5, 2, 3} {
		r := rectangle(a).region(t)
		for _, f := range formulas {
			if f.n == 4 && a < math.Sqrt(3) || !f.holds(a, 1) {
				continue // for four in a wide rectangle no proof is known here
			}
			b := r.Bound(f.n)
			if want := f.d(a, 1); math.Abs(b.Distance/unitSide/want-1) > 1e-9 {
				t.Errorf("n=%d in %g by 1: bound %.9f (%s), formula %.9f", f.n, a, b.Distance/unitSide, b.Kind, want)
			}
		}
	}
}

func TestBoundIsAboveEveryKnownLayout(t *testing.T) {
	for _, c := range spacings(t) {
		d := domains()[c.domain]
		b := d.region(t).Bound(c.n)
		if b.Distance < c.d*d.scale*(1-tableTolerance) {
			t.Errorf("%s, n=%d: bound %.9f below a known layout's %.9f", c.domain, c.n, b.Distance/d.scale, c.d)
		}
		if c.d*d.scale < 0.6*b.Distance {
			t.Errorf("%s, n=%d: bound %.6f says next to nothing about %.6f", c.domain, c.n, b.Distance/d.scale, c.d)
		}
	}
	for _, p := range published {
		if b := rectangle(1).region(t).Bound(p.n); b.Distance/unitSide < p.d*(1-tableTolerance) {
			t.Errorf("square, n=%d: bound %.9f below the published %.9f", p.n, b.Distance/unitSide, p.d)
		}
	}
}

// Oler's inequality by hand: eleven points in a square of side 1 have
// 10 d² = 2/√3 + 2 d, so d = (1 + √(1 + 20/√3)) / 10.
func TestAreaBoundByHand(t *testing.T) {
	b := rectangle(1).region(t).Bound(11)
	if want := (1 + math.Sqrt(1+20/math.Sqrt(3))) / 10; b.Kind != ByArea || math.Abs(b.Distance/unitSide-want) > 1e-9 {
		t.Errorf("bound %.9f by %s, by hand %.9f by area", b.Distance/unitSide, b.Kind, want)
	}
	if b.Area != unitSide*unitSide || b.Perimeter != 4*unitSide {
		t.Errorf("area %g, perimeter %g of a square of %d", b.Area, b.Perimeter, unitSide)
	}
}

// A round lid's hull is the circle: its measures are known.
func TestHullOfARoundLid(t *testing.T) {
	r, err := NewRegion([]Inset{{plane.Circle{Centre: plane.Point{X: 200, Y: 200}, Radius: 200}, 40}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	b := r.Bound(8)
	for name, c := range map[string][2]float64{
		"area": {b.Area, math.Pi * 160 * 160}, "perimeter": {b.Perimeter, 2 * math.Pi * 160}, "diameter": {b.Diameter, 320},
	} {
		if c[0] < c[1] || c[0] > c[1]*1.006 {
			t.Errorf("%s %g, of the circle %g", name, c[0], c[1])
		}
	}
}

// The hatch takes a corner of the box, and the hull knows it.
func TestHullLeavesOutAClosedCorner(t *testing.T) {
	r := domains()["lidB_rect"].region(t)
	hull := r.hull()
	if d := hull.Distance(plane.Point{X: 545, Y: 345}); d > 0 {
		t.Errorf("the corner that the hatch closes lies %g inside the hull", d)
	}
	for k := range 2000 {
		f := float64(k)
		p := plane.Point{X: 55 + math.Mod(f*0.754877666, 1)*490, Y: 55 + math.Mod(f*0.569840291, 1)*290}
		if r.Contains(p) && hull.Distance(p) < -feasibleMM {
			t.Errorf("%v is in the region and not in its hull", p)
		}
	}
}

func TestMostStopsAtTheBound(t *testing.T) {
	// Twelve by a grid of 100 mm: by the table no fewer, by area no more than
	// the bound allows.
	r, err := NewRegion([]Inset{{plane.Box(0, 0, 400, 300), 50}}, nil)
	if err != nil {
		t.Fatal(err)
	}
	m, err := r.MostAt(context.Background(), 99.9, Search{})
	if err != nil || m.Count < 12 || m.Count > m.Proved || m.Layout.Measured.Spacing < 99.9 {
		t.Errorf("at 99.9 mm in 300 by 200: %d of at most %d, spacing %g, %v", m.Count, m.Proved, m.Layout.Measured.Spacing, err)
	}
	none, err := r.MostAt(context.Background(), 1000, Search{})
	if err != nil || none.Count != 1 || none.Proved != 1 {
		t.Errorf("at a metre: %+v, %v", none, err)
	}
	for _, d := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if _, err := r.MostAt(context.Background(), d, Search{}); err == nil {
			t.Errorf("distance %g: no error", d)
		}
	}
}
