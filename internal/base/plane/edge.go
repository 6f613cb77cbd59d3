package plane

import "math"

// Edge is a piece of an outline, run from its start to its end.
type Edge interface {
	// Start and End are where the edge begins and ends.
	Start() Point
	End() Point
	// Length is the length along the edge in mm.
	Length() float64
	// Nearest is the point of the edge closest to p; of several, one of them.
	Nearest(p Point) Point
	// Bounds is the smallest upright rectangle around the edge.
	Bounds() Rect
	// area2 is twice the signed area swept from the origin (Green's theorem).
	area2() float64
}

// Segment is the straight line from A to B. A may equal B.
type Segment struct{ A, B Point }

// Start returns A.
func (s Segment) Start() Point { return s.A }

// End returns B.
func (s Segment) End() Point { return s.B }

// Length returns the length in mm.
func (s Segment) Length() float64 { return s.A.To(s.B) }

// Nearest returns the point of the segment closest to p.
func (s Segment) Nearest(p Point) Point {
	d := s.B.Sub(s.A)
	dd := d.Dot(d)
	if dd == 0 {
		return s.A
	}
	f := p.Sub(s.A).Dot(d) / dd
	switch {
	case f <= 0:
		return s.A
	case f >= 1:
		return s.B
	}
	return Point{s.A.X + float64(f*d.X), s.A.Y + float64(f*d.Y)}
}

// Bounds returns the smallest upright rectangle around the segment.
func (s Segment) Bounds() Rect {
	return Rect{
		Point{min(s.A.X, s.B.X), min(s.A.Y, s.B.Y)},
		Point{max(s.A.X, s.B.X), max(s.A.Y, s.B.Y)},
	}
}

func (s Segment) area2() float64 { return s.A.Cross(s.B) }

// crosses reports whether the segments share any point.
func (s Segment) crosses(o Segment) bool {
	a, b := turn(s.A, s.B, o.A), turn(s.A, s.B, o.B)
	c, d := turn(o.A, o.B, s.A), turn(o.A, o.B, s.B)
	if ((a > 0) != (b > 0)) && ((c > 0) != (d > 0)) && a != 0 && b != 0 && c != 0 && d != 0 {
		return true
	}
	return a == 0 && s.Bounds().holds(o.A) || b == 0 && s.Bounds().holds(o.B) ||
		c == 0 && o.Bounds().holds(s.A) || d == 0 && o.Bounds().holds(s.B)
}

// Arc is a piece of a circle. It starts at angle From (radians, from the
// x axis, anticlockwise) and runs through Sweep radians: anticlockwise where
// Sweep is positive, clockwise where it is negative, at most one full turn.
type Arc struct {
	Centre Point
	Radius float64
	From   float64
	Sweep  float64
}

// At returns the point at the given angle in radians.
func (a Arc) At(angle float64) Point {
	return Point{a.Centre.X + a.Radius*math.Cos(angle), a.Centre.Y + a.Radius*math.Sin(angle)}
}

// Start returns the first point.
func (a Arc) Start() Point { return a.At(a.From) }

// End returns the last point.
func (a Arc) End() Point { return a.At(a.From + a.Sweep) }

// Length returns the length along the arc in mm.
func (a Arc) Length() float64 { return a.Radius * math.Abs(a.Sweep) }

// covers reports whether the arc passes through the given angle.
func (a Arc) covers(angle float64) bool {
	from := a.From
	if a.Sweep < 0 {
		from += a.Sweep
	}
	off := math.Mod(angle-from, 2*math.Pi)
	if off < 0 {
		off += 2 * math.Pi
	}
	return off <= math.Abs(a.Sweep)
}

// Nearest returns the point of the arc closest to p.
func (a Arc) Nearest(p Point) Point {
	d := p.Sub(a.Centre)
	if r := d.Length(); r > 0 && a.covers(math.Atan2(d.Y, d.X)) {
		return a.Centre.Add(d.Times(a.Radius / r))
	}
	s, e := a.Start(), a.End()
	if p.To(s) <= p.To(e) {
		return s
	}
	return e
}

// Bounds returns the smallest upright rectangle around the arc.
func (a Arc) Bounds() Rect {
	b := Segment{a.Start(), a.End()}.Bounds()
	for k := range 4 {
		angle := float64(k) * math.Pi / 2
		if a.covers(angle) {
			b = b.grownTo(a.At(angle))
		}
	}
	return b
}

func (a Arc) area2() float64 {
	return a.Start().Cross(a.End()) + a.Radius*a.Radius*(a.Sweep-math.Sin(a.Sweep))
}
