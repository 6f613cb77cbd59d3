package lid

import (
	"math"
	"testing"

	"rootbell/internal/base/plane"
)

func TestFreeAreaByHand(t *testing.T) {
	round := []Inset{{plane.Circle{Centre: plane.Point{X: 150, Y: 150}, Radius: 150}, 30}}
	for name, c := range map[string]struct {
		bounds []Inset
		keep   []KeepOut
		want   float64
	}{
		"rectangle":    {[]Inset{{plane.Box(0, 0, 400, 300), 50}}, nil, 300 * 200},
		"disc":         {round, nil, math.Pi * 120 * 120},
		"ring":         {round, []KeepOut{{plane.Circle{Centre: plane.Point{X: 150, Y: 150}, Radius: 40}, 30}}, math.Pi * (120*120 - 70*70)},
		"corner hatch": {[]Inset{{plane.Box(0, 0, 400, 300), 0}}, []KeepOut{{plane.Box(300, 200, 400, 300), 40}}, 400*300 - 100*100 - 2*40*100 - math.Pi*40*40/4},
	} {
		r, err := NewRegion(c.bounds, c.keep)
		if err != nil {
			t.Fatal(name, err)
		}
		if math.Abs(r.area/c.want-1) > 0.01 {
			t.Errorf("%s: %.0f mm², by hand %.0f", name, r.area, c.want)
		}
	}
}

// A wall leaves a strip along one end, half a millimetre deep and far from the
// middle: one hole goes there, not to the middle of the wall's edge. The strip
// is equally deep all along, so its depth is found to a tenth only.
func TestOneHoleInASliver(t *testing.T) {
	r, err := NewRegion([]Inset{{plane.Box(0, 0, 1000, 300), 10}}, []KeepOut{{plane.Box(-50, -50, 900, 350), 89}})
	if err != nil {
		t.Fatal(err)
	}
	p := r.deepest()
	if s := r.Slack(p); s < 0.4 || s > 0.5+feasibleMM {
		t.Errorf("%v with room %g, by hand 0.5 along the strip", p, s)
	}
}

// Two soft discs that a rectangle cannot hold lie along its diagonal, and
// their outlook is the diagonal, whatever their size.
func TestOutlookOfTwoIsTheDiagonal(t *testing.T) {
	for _, side := range []float64{1, 1.5, 2, 5} {
		r := rectangle(side).region(t)
		diagonal := math.Hypot(side, 1) * unitSide
		s := newSolver(r, 2, nil, 1)
		for _, larger := range []float64{1.01, 1.05, 1.2} {
			s.x[0], s.y[0], s.x[1], s.y[1] = s.lo.X, s.lo.Y, s.hi.X, s.hi.Y
			if got := s.relax(diagonal*larger/s.unit) * s.unit; math.Abs(got/diagonal-1) > 0.002 {
				t.Errorf("sides %g and 1, discs %g as wide: outlook %.2f, diagonal %.2f", side, larger, got, diagonal)
			}
		}
	}
}
