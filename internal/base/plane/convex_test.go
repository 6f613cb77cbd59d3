package plane

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestConvexPiecesCoverThePolygonOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := star(t, point(t, "centre", 100))
		pieces := p.ConvexPieces()
		sum := 0.0
		for _, c := range pieces {
			if !c.Convex() {
				t.Errorf("%v: piece %v is not convex", p, c)
			}
			if c.area2() <= 0 {
				t.Errorf("%v: piece %v runs clockwise or is empty", p, c)
			}
			sum += c.Area()
		}
		if math.Abs(sum-p.Area()) > 1e-9*p.Area() {
			t.Errorf("%v: pieces have area %g, polygon %g", p, sum, p.Area())
		}
		q := point(t, "q", 400)
		inside := math.Inf(-1)
		for _, c := range pieces {
			inside = math.Max(inside, c.Distance(q))
		}
		if d := p.Distance(q); math.Abs(d) > sampleMM && (d > 0) != (inside > -sampleMM) {
			t.Errorf("%v at %v: distance %g, but %g to the nearest piece", p, q, d, inside)
		}
	})
}

func TestConvexPiecesOfPlainShapes(t *testing.T) {
	for name, c := range map[string]struct {
		p     Polygon
		least int // pieces that no split can go below
		most  int
	}{
		"square":    {Polygon{{0, 0}, {1, 0}, {1, 1}, {0, 1}}, 1, 1},
		"clockwise": {Polygon{{0, 1}, {1, 1}, {1, 0}, {0, 0}}, 1, 1},
		"L":         {Polygon{{0, 0}, {2, 0}, {2, 1}, {1, 1}, {1, 2}, {0, 2}}, 2, 2},
		"plus": {Polygon{
			{1, 0}, {2, 0}, {2, 1}, {3, 1}, {3, 2}, {2, 2}, {2, 3}, {1, 3}, {1, 2}, {0, 2}, {0, 1}, {1, 1},
		}, 3, 5},
		"with straight corners": {Polygon{{0, 0}, {1, 0}, {2, 0}, {2, 2}, {1, 1}, {0, 2}}, 2, 2},
	} {
		if got := len(c.p.ConvexPieces()); got < c.least || got > c.most {
			t.Errorf("%s: %d pieces, want %d to %d", name, got, c.least, c.most)
		}
	}
}

func TestHullHoldsAllPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 30).Draw(t, "n")
		pts := make([]Point, n)
		for k := range pts { // whole numbers, so that many points are in line
			pts[k] = Point{float64(rapid.IntRange(0, 6).Draw(t, "x")), float64(rapid.IntRange(0, 6).Draw(t, "y"))}
		}
		h := Hull(pts)
		if len(h) < 3 {
			return // all in line
		}
		for k := range h {
			if turn(h[k], h[(k+1)%len(h)], h[(k+2)%len(h)]) <= 0 {
				t.Errorf("hull %v does not turn left at corner %d", h, (k+1)%len(h))
			}
		}
		for _, p := range pts {
			if d := h.Distance(p); d < -sampleMM {
				t.Errorf("hull %v leaves out %v by %g", h, p, d)
			}
		}
		far := 0.0
		for _, p := range pts {
			for _, q := range pts {
				far = math.Max(far, math.Hypot(p.X-q.X, p.Y-q.Y))
			}
		}
		if d := Diameter(h); math.Abs(d-far) > sampleMM {
			t.Errorf("diameter %g, farthest pair %g", d, far)
		}
	})
}

func TestImpossibleShapesAreNamed(t *testing.T) {
	for name, c := range map[string]struct {
		s    Shape
		says string
	}{
		"two corners":         {Polygon{{0, 0}, {1, 0}}, "three corners"},
		"bow tie":             {Polygon{{0, 0}, {10, 10}, {10, 0}, {0, 10}}, "crosses"},
		"spike":               {Polygon{{0, 0}, {10, 0}, {20, 0}, {10, 0.0}, {10, 10}}, "same place"},
		"folded back":         {Polygon{{0, 0}, {10, 0}, {5, 0}, {5, 10}}, "crosses"},
		"corner on a side":    {Polygon{{0, 0}, {10, 0}, {10, 10}, {5, 0}, {0, 10}}, "crosses"},
		"not a number":        {Polygon{{0, 0}, {math.NaN(), 0}, {1, 1}}, "corner 2"},
		"radius below zero":   {Circle{Point{}, -1}, "radius"},
		"radius too large":    {RoundedRect{Box(0, 0, 10, 20), 6}, "corner radius"},
		"flat rectangle":      {Box(0, 0, 10, 0), "above zero"},
		"endless rib":         {Capsule{Segment{Point{}, Point{math.Inf(1), 0}}, 1}, "not a number"},
		"outline with a gap":  {Outline{Segment{Point{}, Point{1, 0}}, Segment{Point{1, 1}, Point{}}}, "edge 2"},
		"outline without any": {Outline{}, "no edges"},
	} {
		err := c.s.Check()
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want a message with %q", name, err, c.says)
		}
	}
}

func TestArcsKeepTheirBounds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Arc{
			point(t, "centre", 100), rapid.Float64Range(1, 200).Draw(t, "radius"),
			rapid.Float64Range(-7, 7).Draw(t, "from"), rapid.Float64Range(-2*math.Pi, 2*math.Pi).Draw(t, "sweep"),
		}
		b := a.Bounds()
		p := point(t, "p", 400)
		near := math.Inf(1)
		for k := range 400 {
			q := a.At(a.From + a.Sweep*float64(k)/399)
			if b.Distance(q) < -sampleMM {
				t.Errorf("%v: point %v outside its bounds %v", a, q, b)
			}
			near = math.Min(near, p.To(q))
		}
		// Sample points are at most 4 mm apart along the arc.
		if d := p.To(a.Nearest(p)); d > near+sampleMM || near-d > 4 {
			t.Errorf("%v: nearest to %v is %g away, of 400 points %g", a, p, d, near)
		}
	})
}
