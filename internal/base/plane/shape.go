package plane

import "math"

// Shape is a closed area of the plane.
type Shape interface {
	// Distance is the signed distance in mm from p to the outline: positive
	// inside, negative outside.
	Distance(p Point) float64
	// Nearest is the point of the outline closest to p; of several, one.
	Nearest(p Point) Point
	// Bounds is the smallest upright rectangle around the shape.
	Bounds() Rect
	// Area is in square millimetres, never negative.
	Area() float64
	// Perimeter is the length of the outline in mm.
	Perimeter() float64
	// Check says what makes the shape impossible, or nil.
	Check() error
}

// Circle is a disc. A radius of zero is a point.
type Circle struct {
	Centre Point
	Radius float64
}

// Distance returns the signed distance from p to the rim.
func (c Circle) Distance(p Point) float64 { return c.Radius - c.Centre.To(p) }

// Nearest returns the point of the rim closest to p; for the centre itself
// the rim's point to the right.
func (c Circle) Nearest(p Point) Point {
	d := p.Sub(c.Centre)
	r := d.Length()
	if r == 0 {
		return Point{c.Centre.X + c.Radius, c.Centre.Y}
	}
	return c.Centre.Add(d.Times(c.Radius / r))
}

// Bounds returns the square around the circle.
func (c Circle) Bounds() Rect {
	return Rect{
		Point{c.Centre.X - c.Radius, c.Centre.Y - c.Radius},
		Point{c.Centre.X + c.Radius, c.Centre.Y + c.Radius},
	}
}

// Area returns πr².
func (c Circle) Area() float64 { return math.Pi * c.Radius * c.Radius }

// Perimeter returns 2πr.
func (c Circle) Perimeter() float64 { return 2 * math.Pi * c.Radius }

// Capsule is everything within Width/2 of the segment: a rib or a strap with
// rounded ends.
type Capsule struct {
	Segment
	Width float64
}

// Distance returns the signed distance from p to the outline. Inside it is
// exact as well: the nearest outline point lies straight out from the segment.
func (c Capsule) Distance(p Point) float64 { return c.Width/2 - p.To(c.Segment.Nearest(p)) }

// Nearest returns the point of the outline closest to p.
func (c Capsule) Nearest(p Point) Point {
	q := c.Segment.Nearest(p)
	d := p.Sub(q)
	r := d.Length()
	if r == 0 {
		along := c.B.Sub(c.A)
		if along.Length() == 0 {
			along = Point{0, -1}
		}
		d = along.Left()
		r = d.Length()
	}
	return q.Add(d.Times(c.Width / 2 / r))
}

// Bounds returns the smallest upright rectangle around the capsule.
func (c Capsule) Bounds() Rect { return c.Segment.Bounds().Grown(c.Width / 2) }

// Area returns length times width plus the two round ends.
func (c Capsule) Area() float64 {
	return c.Length()*c.Width + math.Pi*c.Width*c.Width/4
}

// Perimeter returns the length of the outline.
func (c Capsule) Perimeter() float64 { return 2*c.Length() + math.Pi*c.Width }
