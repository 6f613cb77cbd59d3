package scene

import "math"

// Point is a place in millimetres, x to the right and y up.
type Point struct{ X, Y float64 }

// Plus is the point moved by q.
func (p Point) Plus(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Minus is the step from q to p.
func (p Point) Minus(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Times is the step made k times as long.
func (p Point) Times(k float64) Point { return Point{p.X * k, p.Y * k} }

// Turned is the point turned about the origin, counter-clockwise in degrees.
func (p Point) Turned(degrees float64) Point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return Point{p.X*cos - p.Y*sin, p.X*sin + p.Y*cos}
}

// Distance is the straight distance between two points in mm.
func (p Point) Distance(q Point) float64 { return math.Hypot(p.X-q.X, p.Y-q.Y) }

func (p Point) finite() bool { return finite(p.X) && finite(p.Y) }

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// Box is an upright rectangle in mm. The zero value is the empty box at the
// origin; EmptyBox holds nothing at all.
type Box struct{ Min, Max Point }

// EmptyBox is the box that holds no point: the start of a union.
func EmptyBox() Box {
	inf := math.Inf(1)
	return Box{Point{inf, inf}, Point{-inf, -inf}}
}

// BoxAt is the box with its lower left corner at the point.
func BoxAt(lowerLeft Point, width, height float64) Box {
	return Box{lowerLeft, Point{lowerLeft.X + width, lowerLeft.Y + height}}
}

// Width is the box's extent along x, 0 when it is empty.
func (b Box) Width() float64 { return math.Max(0, b.Max.X-b.Min.X) }

// Height is the box's extent along y, 0 when it is empty.
func (b Box) Height() float64 { return math.Max(0, b.Max.Y-b.Min.Y) }

// Centre is the middle of the box.
func (b Box) Centre() Point { return b.Min.Plus(b.Max).Times(0.5) }

// With is the smallest box that holds this one and the point.
func (b Box) With(p Point) Box {
	return Box{
		Point{math.Min(b.Min.X, p.X), math.Min(b.Min.Y, p.Y)},
		Point{math.Max(b.Max.X, p.X), math.Max(b.Max.Y, p.Y)},
	}
}

// Union is the smallest box that holds both.
func (b Box) Union(c Box) Box { return b.With(c.Min).With(c.Max) }

// Grown is the box with every side moved outwards by mm.
func (b Box) Grown(mm float64) Box {
	return Box{Point{b.Min.X - mm, b.Min.Y - mm}, Point{b.Max.X + mm, b.Max.Y + mm}}
}

// Moved is the box moved by a step.
func (b Box) Moved(by Point) Box { return Box{b.Min.Plus(by), b.Max.Plus(by)} }

// Overlaps says whether the two boxes share more than an edge.
func (b Box) Overlaps(c Box) bool {
	return b.Min.X < c.Max.X && c.Min.X < b.Max.X && b.Min.Y < c.Max.Y && c.Min.Y < b.Max.Y
}

// Holds says whether c lies inside b, edges included, within slack mm.
func (b Box) Holds(c Box, slack float64) bool {
	return c.Min.X >= b.Min.X-slack && c.Min.Y >= b.Min.Y-slack &&
		c.Max.X <= b.Max.X+slack && c.Max.Y <= b.Max.Y+slack
}
