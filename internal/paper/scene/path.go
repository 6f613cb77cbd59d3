package scene

import "math"

// Vertex is a corner of a path. Bulge shapes the way to the next vertex:
// 0 is straight, otherwise the tangent of a quarter of the arc's angle,
// positive when the arc runs counter-clockwise.
type Vertex struct {
	Point
	Bulge float64
}

// Path is a chain of straight and round pieces, closed back to its first
// vertex when Closed. The zero value is the empty path.
type Path struct {
	Vertices []Vertex
	Closed   bool
}

// Polygon is the closed path through the corners.
func Polygon(corners ...Point) Path {
	path := Polyline(corners...)
	path.Closed = true
	return path
}

// Polyline is the open path through the points.
func Polyline(points ...Point) Path {
	path := Path{Vertices: make([]Vertex, len(points))}
	for i, p := range points {
		path.Vertices[i].Point = p
	}
	return path
}

// Rectangle is the outline of a box.
func Rectangle(b Box) Path {
	return Polygon(b.Min, Point{b.Max.X, b.Min.Y}, b.Max, Point{b.Min.X, b.Max.Y})
}

// RoundedRectangle is the outline of a box with its corners rounded off to
// radius mm, at most half the shorter side.
func RoundedRectangle(b Box, radius float64) Path {
	r := math.Min(radius, math.Min(b.Width(), b.Height())/2)
	if r <= 0 {
		return Rectangle(b)
	}
	quarter := math.Tan(math.Pi / 8)
	corner := func(x, y, bulge float64) Vertex { return Vertex{Point{x, y}, bulge} }
	return Path{Closed: true, Vertices: []Vertex{
		corner(b.Min.X+r, b.Min.Y, 0), corner(b.Max.X-r, b.Min.Y, quarter),
		corner(b.Max.X, b.Min.Y+r, 0), corner(b.Max.X, b.Max.Y-r, quarter),
		corner(b.Max.X-r, b.Max.Y, 0), corner(b.Min.X+r, b.Max.Y, quarter),
		corner(b.Min.X, b.Max.Y-r, 0), corner(b.Min.X, b.Min.Y+r, quarter),
	}}
}

// Disc is the outline of a full circle, as two half circles.
func Disc(centre Point, radius float64) Path {
	return Path{Closed: true, Vertices: []Vertex{
		{Point{centre.X + radius, centre.Y}, 1},
		{Point{centre.X - radius, centre.Y}, 1},
	}}
}

// Mapped is the path with each vertex moved by a turn, a shift or an even
// scaling; the bulges stay as they are, so a mirror image is not among them.
func (p Path) Mapped(move func(Point) Point) Path {
	out := Path{Vertices: make([]Vertex, len(p.Vertices)), Closed: p.Closed}
	for i, v := range p.Vertices {
		out.Vertices[i] = Vertex{move(v.Point), v.Bulge}
	}
	return out
}

// piece is the way from one vertex to the next.
type piece struct {
	from, to Point
	bulge    float64
}

// arc gives the circle a round piece lies on, where it starts and how far it
// sweeps, in radians, counter-clockwise positive. Only for a bulge other than 0.
func (s piece) arc() (centre Point, radius, start, sweep float64) {
	chord := s.to.Minus(s.from)
	length := math.Hypot(chord.X, chord.Y)
	radius = length * (1 + s.bulge*s.bulge) / (4 * math.Abs(s.bulge))
	// The centre lies on the left of the chord for a short arc that turns left.
	k := (1 - s.bulge*s.bulge) / (4 * s.bulge)
	centre = s.from.Plus(chord.Times(0.5)).Plus(Point{-chord.Y, chord.X}.Times(k))
	start = math.Atan2(s.from.Y-centre.Y, s.from.X-centre.X)
	return centre, radius, start, 4 * math.Atan(s.bulge)
}

func (p Path) pieces() []piece {
	var out []piece
	for i, v := range p.Vertices {
		next := i + 1
		if next == len(p.Vertices) {
			if !p.Closed {
				break
			}
			next = 0
		}
		out = append(out, piece{v.Point, p.Vertices[next].Point, v.Bulge})
	}
	return out
}

// Flat is the path's points with each arc replaced by chords that stay within
// tolerance mm of it.
func (p Path) Flat(tolerance float64) []Point {
	var out []Point
	for _, s := range p.pieces() {
		out = append(out, s.from)
		if s.bulge == 0 {
			continue
		}
		centre, radius, start, sweep := s.arc()
		n := chords(radius, sweep, tolerance)
		for i := 1; i < n; i++ {
			sin, cos := math.Sincos(start + sweep*float64(i)/float64(n))
			out = append(out, Point{centre.X + radius*cos, centre.Y + radius*sin})
		}
	}
	if n := len(p.Vertices); n > 0 && !p.Closed {
		out = append(out, p.Vertices[n-1].Point)
	}
	return out
}

// mostChords is the largest number of chords an arc is cut into.
const mostChords = 720

func chords(radius, sweep, tolerance float64) int {
	if !(radius > tolerance) {
		return 1
	}
	step := 2 * math.Acos(1-tolerance/radius)
	n := math.Ceil(math.Abs(sweep) / step)
	if !(n < mostChords) {
		return mostChords
	}
	return max(1, int(n))
}

// Bounds is the smallest upright box round the path.
func (p Path) Bounds() Box {
	box := EmptyBox()
	for _, s := range p.pieces() {
		box = box.With(s.from).With(s.to)
		if s.bulge == 0 {
			continue
		}
		centre, radius, start, sweep := s.arc()
		for quarter := range 4 {
			angle := float64(quarter) * math.Pi / 2
			if onArc(angle, start, sweep) {
				sin, cos := math.Sincos(angle)
				box = box.With(Point{centre.X + radius*cos, centre.Y + radius*sin})
			}
		}
	}
	return box
}

func onArc(angle, start, sweep float64) bool {
	if sweep < 0 {
		start, sweep = start+sweep, -sweep
	}
	turn := math.Mod(angle-start, 2*math.Pi)
	if turn < 0 {
		turn += 2 * math.Pi
	}
	return turn <= sweep
}

func (p Path) finite() bool {
	for _, v := range p.Vertices {
		if !v.finite() || !finite(v.Bulge) {
			return false
		}
	}
	return true
}
