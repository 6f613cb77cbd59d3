package plane

import "math"

// Polygon is a simple polygon given by its corners in order, either way
// round, without repeating the first. Check tells whether it is one.
type Polygon []Point

// Regular returns the polygon of n corners on the circle, the first to the
// right of the centre.
func Regular(c Circle, n int) Polygon {
	p := make(Polygon, n)
	for k := range p {
		p[k] = Arc{c.Centre, c.Radius, 0, 0}.At(2 * math.Pi * float64(k) / float64(n))
	}
	return p
}

// edge returns the side from corner k to the next.
func (p Polygon) edge(k int) Segment { return Segment{p[k], p[(k+1)%len(p)]} }

// area2 is twice the signed area: positive where the corners run
// anticlockwise. It is summed from the first corner, which keeps a small
// polygon far from the origin exact.
func (p Polygon) area2() float64 {
	sum := 0.0
	for k := 1; k+1 < len(p); k++ {
		sum += turn(p[0], p[k], p[k+1])
	}
	return sum
}

// Contains reports whether q lies inside, by counting crossings of a ray to
// the right. On the outline itself the answer may be either.
func (p Polygon) Contains(q Point) bool {
	in := false
	for k := range p {
		e := p.edge(k)
		if (e.A.Y > q.Y) == (e.B.Y > q.Y) {
			continue
		}
		left := turn(e.A, e.B, q) > 0
		if left == (e.B.Y > e.A.Y) {
			in = !in
		}
	}
	return in
}

// Nearest returns the point of the outline closest to q.
func (p Polygon) Nearest(q Point) Point {
	best, at := math.Inf(1), Point{}
	for k := range p {
		n := p.edge(k).Nearest(q)
		if d := q.To(n); d < best {
			best, at = d, n
		}
	}
	return at
}

// Distance returns the signed distance from q to the outline.
func (p Polygon) Distance(q Point) float64 {
	d := q.To(p.Nearest(q))
	if p.Contains(q) {
		return d
	}
	return -d
}

// Bounds returns the smallest upright rectangle around the polygon.
func (p Polygon) Bounds() Rect {
	if len(p) == 0 {
		return Rect{}
	}
	r := Rect{p[0], p[0]}
	for _, c := range p[1:] {
		r = r.grownTo(c)
	}
	return r
}

// Area returns the area in square millimetres.
func (p Polygon) Area() float64 { return math.Abs(p.area2()) / 2 }

// Perimeter returns the length of the outline.
func (p Polygon) Perimeter() float64 {
	sum := 0.0
	for k := range p {
		sum += p.edge(k).Length()
	}
	return sum
}

// Anticlockwise returns the same polygon with its corners running
// anticlockwise. The receiver is left as it is.
func (p Polygon) Anticlockwise() Polygon {
	q := append(Polygon(nil), p...)
	if q.area2() < 0 {
		for i, j := 0, len(q)-1; i < j; i, j = i+1, j-1 {
			q[i], q[j] = q[j], q[i]
		}
	}
	return q
}

// Outline returns the polygon as a chain of lines.
func (p Polygon) Outline() Outline {
	o := make(Outline, len(p))
	for k := range p {
		o[k] = p.edge(k)
	}
	return o
}

// Convex reports whether no corner turns inwards. Straight corners are
// allowed.
func (p Polygon) Convex() bool {
	q := p.Anticlockwise()
	n := len(q)
	for k := range q {
		if turn(q[k], q[(k+1)%n], q[(k+2)%n]) < 0 {
			return false
		}
	}
	return n >= 3
}
