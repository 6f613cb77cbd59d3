package lid

import (
	"testing"

	"rootbell/internal/base/plane"
)

const (
	// spacingTolerance is how far below a spacing of the table a layout may
	// stay, and tableTolerance how far above it: the table has twelve digits.
	spacingTolerance = 1e-6
	tableTolerance   = 1e-8
)

// views are ways of laying the same lid on the bench.
var views = []struct {
	name string
	seed uint64
	look func(plane.Point) plane.Point
}{
	{"as it is", 1, func(p plane.Point) plane.Point { return p }},
	{"mirrored", 2, func(p plane.Point) plane.Point { return plane.Point{X: -p.X, Y: p.Y} }},
	{"turned", 3, func(p plane.Point) plane.Point { return plane.Point{X: -p.Y, Y: p.X} }},
}

// seen returns the domain as seen through a map of the plane that keeps
// rectangles upright.
func (d domain) seen(m func(plane.Point) plane.Point) domain {
	shape := func(s plane.Shape) plane.Shape {
		switch s := s.(type) {
		case plane.Rect:
			a, b := m(s.Min), m(s.Max)
			return plane.Box(a.X, a.Y, b.X, b.Y)
		case plane.Circle:
			return plane.Circle{Centre: m(s.Centre), Radius: s.Radius}
		}
		panic("a domain has a shape that the test does not know")
	}
	out := domain{scale: d.scale}
	for _, b := range d.bounds {
		out.bounds = append(out.bounds, Inset{shape(b.Shape), b.Margin})
	}
	for _, k := range d.keep {
		out.keep = append(out.keep, KeepOut{shape(k.Shape), k.Clearance})
	}
	return out
}

func TestSpacingsOfTheTable(t *testing.T) {
	for _, v := range views {
		t.Run(v.name, func(t *testing.T) {
			t.Parallel()
			for _, c := range spacings(t) {
				d := domains()[c.domain].seen(v.look)
				l := spread(t, d.region(t), c.n, Search{Seed: v.seed})
				gap := 1 - l.ExactSpacing/(c.d*d.scale)
				if gap > spacingTolerance || gap < -tableTolerance {
					t.Errorf("%s, n=%d: %.9f, table %.9f (%.2g below)", c.domain, c.n, l.ExactSpacing/d.scale, c.d, gap)
				}
				if l.Measured.Slack < -feasibleMM || l.Measured.Spacing < l.ExactSpacing-4*grainMM {
					t.Errorf("%s, n=%d: rounded: %+v", c.domain, c.n, l.Measured)
				}
			}
		})
	}
}

// Quick effort may lose one part in a hundred.
func TestQuickEffortLosesLittle(t *testing.T) {
	for _, c := range spacings(t) {
		d := domains()[c.domain]
		l := spread(t, d.region(t), c.n, Search{Effort: Quick, Seed: 1})
		if gap := 1 - l.ExactSpacing/(c.d*d.scale); gap > 0.01 {
			t.Errorf("%s, n=%d: quick effort loses %.2f %%", c.domain, c.n, 100*gap)
		}
	}
}
