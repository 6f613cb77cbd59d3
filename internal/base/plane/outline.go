package plane

import "math"

// Outline is a closed chain of lines and arcs that does not cross itself,
// either way round; each edge starts where the one before ended.
type Outline []Edge

// Distance returns the signed distance from p to the outline.
func (o Outline) Distance(p Point) float64 {
	d := p.To(o.Nearest(p))
	if o.Contains(p) {
		return d
	}
	return -d
}

// Nearest returns the point of the outline closest to p.
func (o Outline) Nearest(p Point) Point {
	best, at := math.Inf(1), Point{}
	for _, e := range o {
		n := e.Nearest(p)
		if d := p.To(n); d < best {
			best, at = d, n
		}
	}
	return at
}

// Contains reports whether p lies inside, by adding up the angles under which
// p sees the edges: a full turn from inside, none from outside. On the
// outline itself the answer may be either.
func (o Outline) Contains(p Point) bool {
	sum := 0.0
	for _, e := range o {
		sum += winding(e, p)
	}
	return math.Abs(sum) > math.Pi
}

// winding is the angle through which a line from p to the edge turns as it
// runs along the edge.
func winding(e Edge, p Point) float64 {
	s, t := e.Start().Sub(p), e.End().Sub(p)
	angle := math.Atan2(s.Cross(t), s.Dot(t))
	a, ok := e.(Arc)
	if !ok {
		return angle
	}
	// From outside its circle an arc is seen like its chord; from inside the
	// line of sight turns the way the arc runs, all along.
	switch {
	case p.To(a.Centre) >= a.Radius:
		return angle
	case math.Abs(a.Sweep) >= 2*math.Pi:
		return math.Copysign(2*math.Pi, a.Sweep)
	case (angle < 0) != (a.Sweep < 0):
		return angle + math.Copysign(2*math.Pi, a.Sweep)
	}
	return angle
}

// Bounds returns the smallest upright rectangle around the outline.
func (o Outline) Bounds() Rect {
	if len(o) == 0 {
		return Rect{}
	}
	r := o[0].Bounds()
	for _, e := range o[1:] {
		r = r.Join(e.Bounds())
	}
	return r
}

// Area returns the area in square millimetres.
func (o Outline) Area() float64 {
	sum := 0.0
	for _, e := range o {
		sum += e.area2()
	}
	return math.Abs(sum) / 2
}

// Perimeter returns the length of the outline.
func (o Outline) Perimeter() float64 {
	sum := 0.0
	for _, e := range o {
		sum += e.Length()
	}
	return sum
}
