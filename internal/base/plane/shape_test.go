package plane

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// sampleMM is the tolerance of lengths that are computed exactly but for
// rounding, on shapes of some hundred millimetres.
const sampleMM = 1e-9

func point(t *rapid.T, name string, reach float64) Point {
	return Point{
		rapid.Float64Range(-reach, reach).Draw(t, name+" x"),
		rapid.Float64Range(-reach, reach).Draw(t, name+" y"),
	}
}

// drawShape draws any shape of this package.
func drawShape(t *rapid.T) Shape {
	a := point(t, "corner", 300)
	w := rapid.Float64Range(1, 400).Draw(t, "width")
	h := rapid.Float64Range(1, 400).Draw(t, "height")
	r := Rect{a, a.Add(Point{w, h})}
	rounded := RoundedRect{r, rapid.Float64Range(0, 0.5).Draw(t, "radius") * math.Min(r.Max.X-r.Min.X, r.Max.Y-r.Min.Y)}
	switch rapid.IntRange(0, 6).Draw(t, "kind") {
	case 0:
		return r
	case 1:
		return rounded
	case 2:
		return rounded.Outline()
	case 3:
		return Circle{a, w}
	case 4:
		return Capsule{Segment{a, point(t, "end", 300)}, w}
	case 5:
		return star(t, a)
	}
	return Regular(Circle{a, w}, rapid.IntRange(3, 12).Draw(t, "sides"))
}

// star draws a simple polygon, as a rule not convex: corners at rising angles
// about a centre.
func star(t *rapid.T, c Point) Polygon {
	n := rapid.IntRange(3, 11).Draw(t, "corners")
	p := make(Polygon, n)
	for k := range p {
		r := rapid.Float64Range(20, 250).Draw(t, "reach")
		p[k] = Arc{c, r, 0, 0}.At(2 * math.Pi * float64(k) / float64(n))
	}
	if rapid.Bool().Draw(t, "clockwise") {
		for i, j := 0, n-1; i < j; i, j = i+1, j-1 {
			p[i], p[j] = p[j], p[i]
		}
	}
	return p
}

func TestShapesKeepTheirLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShape(t)
		if err := s.Check(); err != nil {
			t.Fatalf("%#v: %v", s, err)
		}
		p, q := point(t, "p", 700), point(t, "q", 700)
		d := s.Distance(p)
		n := s.Nearest(p)
		if off := math.Abs(p.To(n) - math.Abs(d)); off > sampleMM {
			t.Errorf("%#v: nearest point of %v lies %g from it, distance says %g", s, p, p.To(n), d)
		}
		if on := s.Distance(n); math.Abs(on) > 1e-7 {
			t.Errorf("%#v: nearest point %v has distance %g to the outline", s, n, on)
		}
		if e := s.Distance(q); math.Abs(d-e) > p.To(q)+1e-7 {
			t.Errorf("%#v: distance changes by %g over %g", s, d-e, p.To(q))
		}
		if b := s.Bounds(); d >= 0 && b.Distance(p) < d-1e-7 {
			t.Errorf("%#v: %v lies %g inside, but only %g inside the bounds %v", s, p, d, b.Distance(p), b)
		}
	})
}

// TestDistanceAgainstOutlinePoints measures the distance to many points of
// the outline, found by following rays to where the shape ends by bisection.
func TestDistanceAgainstOutlinePoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Point{}
		r := Rect{Point{-150, -80}, Point{150, 80}}
		s := []Shape{
			r,
			RoundedRect{r, 50},
			RoundedRect{r, 50}.Outline(),
			Circle{c, 90},
			Capsule{Segment{Point{-60, 0}, Point{60, 30}}, 50},
			Polygon(star(t, c)),
		}[rapid.IntRange(0, 5).Draw(t, "shape")]
		p := point(t, "p", 300)
		const rays = 4000
		best := math.Inf(1)
		for k := range rays {
			dir := Arc{c, 1, 0, 0}.At(2 * math.Pi * float64(k) / rays)
			in, out := 0.0, 1000.0
			for range 45 {
				m := (in + out) / 2
				if s.Distance(dir.Times(m)) > 0 {
					in = m
				} else {
					out = m
				}
			}
			best = math.Min(best, p.To(dir.Times(in)))
		}
		// Rays leave gaps of at most 0.4 mm at 250 mm, wider on slanting sides.
		got := math.Abs(s.Distance(p))
		if got > best+1e-6 || best-got > 5 {
			t.Errorf("%#v at %v: distance %g, nearest of %d outline points %g", s, p, got, rays, best)
		}
	})
}

// TestAreaAgainstCounting counts cells of a grid inside; the error is at most
// half the cells that the outline passes through.
func TestAreaAgainstCounting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawShape(t)
		b := s.Bounds()
		const cells = 120
		w, h := b.Width()/cells, b.Height()/cells
		sum := 0
		for j := range cells {
			for i := range cells {
				if s.Distance(Point{b.Min.X + (float64(i)+0.5)*w, b.Min.Y + (float64(j)+0.5)*h}) > 0 {
					sum++
				}
			}
		}
		counted := float64(sum) * w * h
		crossed := (s.Perimeter()/math.Min(w, h) + 8) * w * h
		if math.Abs(counted-s.Area()) > crossed {
			t.Errorf("%#v: area %g, counted %g", s, s.Area(), counted)
		}
	})
}

func TestMeasuresByFormula(t *testing.T) {
	r := Box(300, 200, 0, 0)
	for _, c := range []struct {
		name            string
		s               Shape
		area, perimeter float64
	}{
		{"rectangle", r, 60000, 1000},
		{"rounded", RoundedRect{r, 40}, 60000 - (4-math.Pi)*1600, 1000 - 320 + 80*math.Pi},
		{"rounded as lines and arcs", RoundedRect{r, 40}.Outline(), 60000 - (4-math.Pi)*1600, 1000 - 320 + 80*math.Pi},
		{"circle", Circle{Point{5, 7}, 10}, 100 * math.Pi, 20 * math.Pi},
		{"circle as one arc", Outline{Arc{Point{5, 7}, 10, 1, 2 * math.Pi}}, 100 * math.Pi, 20 * math.Pi},
		{"rib", Capsule{Segment{Point{0, 0}, Point{30, 40}}, 10}, 500 + 25*math.Pi, 100 + 10*math.Pi},
		{"three-four-five", Polygon{{0, 0}, {4, 0}, {0, 3}}, 6, 12},
		{"the same clockwise", Polygon{{0, 3}, {4, 0}, {0, 0}}, 6, 12},
		{"half disc, clockwise", Outline{Arc{Point{}, 10, 0, -math.Pi}, Segment{Point{-10, 0}, Point{10, 0}}}, 50 * math.Pi, 20 + 10*math.Pi},
	} {
		if math.Abs(c.s.Area()-c.area) > 1e-9*c.area || math.Abs(c.s.Perimeter()-c.perimeter) > 1e-9*c.perimeter {
			t.Errorf("%s: area %g, perimeter %g; formula %g, %g", c.name, c.s.Area(), c.s.Perimeter(), c.area, c.perimeter)
		}
	}
}

func TestSignedDistanceByHand(t *testing.T) {
	r := Box(0, 0, 300, 200)
	l := Polygon{{0, 0}, {200, 0}, {200, 100}, {100, 100}, {100, 200}, {0, 200}}
	for _, c := range []struct {
		name string
		s    Shape
		p    Point
		d    float64
	}{
		{"inside a rectangle", r, Point{150, 30}, 30},
		{"off its corner", r, Point{303, 204}, -5},
		{"in a rounded corner", RoundedRect{r, 50}, Point{20, 10}, 0},
		{"outside the rounded corner", RoundedRect{r, 50}, Point{0, 0}, 50 - 50*math.Sqrt2},
		{"by the inner corner of an L", l, Point{97, 96}, 5},
		{"in the notch of an L", l, Point{150, 130}, -30},
		{"on a rib's axis", Capsule{Segment{Point{0, 0}, Point{100, 0}}, 8}, Point{50, 0}, 4},
		{"beyond a rib's end", Capsule{Segment{Point{0, 0}, Point{100, 0}}, 8}, Point{103, 4}, -1},
		{"centre of a circle", Circle{Point{1, 2}, 3}, Point{1, 2}, 3},
	} {
		if got := c.s.Distance(c.p); math.Abs(got-c.d) > sampleMM {
			t.Errorf("%s: %g, by hand %g", c.name, got, c.d)
		}
	}
}
