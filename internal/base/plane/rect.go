package plane

import "math"

// Rect is an upright rectangle from its lower left to its upper right corner.
type Rect struct{ Min, Max Point }

// Box returns the rectangle between two corners given in any order.
func Box(x0, y0, x1, y1 float64) Rect {
	return Segment{Point{x0, y0}, Point{x1, y1}}.Bounds()
}

// Width returns the extent in x.
func (r Rect) Width() float64 { return r.Max.X - r.Min.X }

// Height returns the extent in y.
func (r Rect) Height() float64 { return r.Max.Y - r.Min.Y }

// Centre returns the middle.
func (r Rect) Centre() Point { return Point{(r.Min.X + r.Max.X) / 2, (r.Min.Y + r.Max.Y) / 2} }

// Grown returns the rectangle with each side moved out by m (in, where m is
// negative; the result may then be empty, with Min above Max).
func (r Rect) Grown(m float64) Rect {
	return Rect{Point{r.Min.X - m, r.Min.Y - m}, Point{r.Max.X + m, r.Max.Y + m}}
}

// Meet returns the common part; it is empty where Min is above Max.
func (r Rect) Meet(o Rect) Rect {
	return Rect{
		Point{max(r.Min.X, o.Min.X), max(r.Min.Y, o.Min.Y)},
		Point{min(r.Max.X, o.Max.X), min(r.Max.Y, o.Max.Y)},
	}
}

// Join returns the smallest rectangle around both.
func (r Rect) Join(o Rect) Rect { return r.grownTo(o.Min).grownTo(o.Max) }

// Empty reports whether no point lies in the rectangle.
func (r Rect) Empty() bool { return r.Min.X > r.Max.X || r.Min.Y > r.Max.Y }

// Clamp returns the point of the rectangle closest to p.
func (r Rect) Clamp(p Point) Point {
	return Point{
		min(max(p.X, r.Min.X), r.Max.X),
		min(max(p.Y, r.Min.Y), r.Max.Y),
	}
}

// Corners returns the four corners, anticlockwise from the lower left.
func (r Rect) Corners() [4]Point {
	return [4]Point{r.Min, {r.Max.X, r.Min.Y}, r.Max, {r.Min.X, r.Max.Y}}
}

func (r Rect) holds(p Point) bool {
	return p.X >= r.Min.X && p.X <= r.Max.X && p.Y >= r.Min.Y && p.Y <= r.Max.Y
}

func (r Rect) grownTo(p Point) Rect {
	return Rect{
		Point{min(r.Min.X, p.X), min(r.Min.Y, p.Y)},
		Point{max(r.Max.X, p.X), max(r.Max.Y, p.Y)},
	}
}

// Distance returns the signed distance from p to the outline.
func (r Rect) Distance(p Point) float64 {
	in := min(min(p.X-r.Min.X, r.Max.X-p.X), min(p.Y-r.Min.Y, r.Max.Y-p.Y))
	if in >= 0 {
		return in
	}
	return -p.To(r.Clamp(p))
}

// Nearest returns the point of the outline closest to p.
func (r Rect) Nearest(p Point) Point {
	if !r.holds(p) {
		return r.Clamp(p)
	}
	best, q := p.X-r.Min.X, Point{r.Min.X, p.Y}
	for _, c := range [3]struct {
		d float64
		q Point
	}{
		{r.Max.X - p.X, Point{r.Max.X, p.Y}},
		{p.Y - r.Min.Y, Point{p.X, r.Min.Y}},
		{r.Max.Y - p.Y, Point{p.X, r.Max.Y}},
	} {
		if c.d < best {
			best, q = c.d, c.q
		}
	}
	return q
}

// Bounds returns the rectangle itself.
func (r Rect) Bounds() Rect { return r }

// Area returns width times height.
func (r Rect) Area() float64 { return r.Width() * r.Height() }

// Perimeter returns twice width plus height.
func (r Rect) Perimeter() float64 { return 2 * (r.Width() + r.Height()) }

// RoundedRect is an upright rectangle whose four corners are rounded with
// Radius, from 0 to half the shorter side.
type RoundedRect struct {
	Rect
	Radius float64
}

// core is the rectangle that the corner centres span.
func (r RoundedRect) core() Rect { return r.Grown(-r.Radius) }

// Distance returns the signed distance from p to the outline. It is exact
// inside and outside.
func (r RoundedRect) Distance(p Point) float64 {
	return r.core().Distance(p) + r.Radius
}

// Nearest returns the point of the outline closest to p.
func (r RoundedRect) Nearest(p Point) Point {
	core := r.core()
	if core.holds(p) {
		return r.Rect.Nearest(p)
	}
	c := core.Clamp(p)
	d := p.Sub(c)
	return c.Add(d.Times(r.Radius / d.Length()))
}

// Area returns the rectangle's area less the four corners.
func (r RoundedRect) Area() float64 {
	return r.Rect.Area() - (4-math.Pi)*r.Radius*r.Radius
}

// Perimeter returns the length of the outline.
func (r RoundedRect) Perimeter() float64 {
	return r.Rect.Perimeter() - (8-2*math.Pi)*r.Radius
}

// Outline returns the same shape as lines and arcs, anticlockwise from the
// lower left corner's end.
func (r RoundedRect) Outline() Outline {
	if r.Radius == 0 {
		c := r.Corners()
		return Polygon(c[:]).Outline()
	}
	core := r.core().Corners()
	var o Outline
	var last Point
	for k, c := range core {
		a := Arc{c, r.Radius, float64(k+2) * math.Pi / 2, math.Pi / 2}
		if k > 0 {
			o = append(o, Segment{last, a.Start()})
		}
		o = append(o, a)
		last = a.End()
	}
	return append(o, Segment{last, o[0].Start()})
}
