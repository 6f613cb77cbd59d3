package lid

import (
	"errors"
	"math"

	"rootbell/internal/base/plane"
)

// A rule is one border of the region in the form the search needs: a slack
// that is never negative inside, with its gradient. Where the slack is a
// convex function (half-planes, everything outside a convex core) its tangent
// never promises more room than there is, so a step that keeps the tangents
// keeps the border. Only a `within` rule with a curved border breaks this.
type rule struct {
	kind   ruleKind
	core   coreKind
	a, b   plane.Point // point: a; box: lower left, upper right; segment: ends; half-plane: normal, -
	radius float64
	poly   []side
	// box holds every place where the slack is below zero; it is everywhere
	// for borders that bend or run around the region.
	box plane.Rect
}

type ruleKind uint8

const (
	halfPlane ruleKind = iota // a·p >= radius, |a| = 1
	beyond                    // distance to core >= radius
	within                    // distance to core <= radius
)

type coreKind uint8

const (
	corePoint coreKind = iota
	coreBox
	coreSegment
	corePolygon
)

// side is one side of a convex polygon: a point on it, its outward normal, its
// direction and length.
type side struct {
	at, out, dir plane.Point
	length       float64
}

func (r *Region) addInset(b Inset) error {
	in := b.Shape.Bounds().Grown(-b.Margin)
	r.box = r.box.Meet(in)
	switch s := b.Shape.(type) {
	case plane.Rect:
	case plane.RoundedRect:
		if s.Radius > b.Margin {
			core := s.Grown(-s.Radius)
			r.rules = append(r.rules, rule{
				kind: within, core: coreBox, a: core.Min, b: core.Max, radius: s.Radius - b.Margin,
			})
		}
	case plane.Circle:
		r.rules = append(r.rules, rule{kind: within, a: s.Centre, radius: s.Radius - b.Margin})
		if s.Radius < b.Margin {
			return ErrNoRoom
		}
	case plane.Capsule:
		r.rules = append(r.rules, rule{
			kind: within, core: coreSegment, a: s.A, b: s.B, radius: s.Width/2 - b.Margin,
		})
		if s.Width/2 < b.Margin {
			return ErrNoRoom
		}
	case plane.Polygon:
		r.addPolygonInset(s.Anticlockwise(), b.Margin)
	default:
		return errors.New("this kind of outline cannot bound a region")
	}
	return nil
}

// addPolygonInset keeps centres inside the hull, and away from the convex
// pieces of each pocket between the polygon and its hull.
func (r *Region) addPolygonInset(p plane.Polygon, margin float64) {
	hull := plane.Hull(p)
	for k, a := range hull {
		b := hull[(k+1)%len(hull)]
		d := b.Sub(a)
		n := d.Left().Times(1 / d.Length())
		r.rules = append(r.rules, rule{kind: halfPlane, a: n, radius: n.Dot(a) + margin})
	}
	for _, pocket := range pockets(p, hull) {
		r.addConvexPieces(pocket, margin)
	}
}

// pockets returns the areas between a simple anticlockwise polygon and its hull.
func pockets(p, hull plane.Polygon) []plane.Polygon {
	onHull := func(q plane.Point) bool {
		for k := range hull {
			s := plane.Segment{A: hull[k], B: hull[(k+1)%len(hull)]}
			if s.B.Sub(s.A).Cross(q.Sub(s.A)) == 0 {
				return true
			}
		}
		return false
	}
	n := len(p)
	start := 0
	for p[start] != hull[0] {
		start++
	}
	var out []plane.Polygon
	run := plane.Polygon{p[start]}
	for k := 1; k <= n; k++ {
		q := p[(start+k)%n]
		run = append(run, q)
		if !onHull(q) {
			continue
		}
		if len(run) > 2 {
			out = append(out, run.Anticlockwise())
		}
		run = plane.Polygon{q}
	}
	return out
}

func (r *Region) addKeepOut(o KeepOut) error {
	switch s := o.Shape.(type) {
	case plane.Rect:
		r.rules = append(r.rules, rule{kind: beyond, core: coreBox, a: s.Min, b: s.Max, radius: o.Clearance})
	case plane.RoundedRect:
		core := s.Grown(-s.Radius)
		r.rules = append(r.rules, rule{
			kind: beyond, core: coreBox, a: core.Min, b: core.Max, radius: s.Radius + o.Clearance,
		})
	case plane.Circle:
		r.rules = append(r.rules, rule{kind: beyond, a: s.Centre, radius: s.Radius + o.Clearance})
	case plane.Capsule:
		r.rules = append(r.rules, rule{
			kind: beyond, core: coreSegment, a: s.A, b: s.B, radius: s.Width/2 + o.Clearance,
		})
	case plane.Polygon:
		r.addConvexPieces(s, o.Clearance)
	default:
		return errors.New("this kind of shape cannot be kept clear")
	}
	return nil
}

func (r *Region) addConvexPieces(p plane.Polygon, clearance float64) {
	for _, piece := range p.ConvexPieces() {
		r.rules = append(r.rules, rule{kind: beyond, core: corePolygon, poly: sides(piece), radius: clearance})
	}
}

func sides(p plane.Polygon) []side {
	out := make([]side, 0, len(p))
	for k, a := range p {
		d := p[(k+1)%len(p)].Sub(a)
		l := d.Length()
		d = d.Times(1 / l)
		out = append(out, side{at: a, out: plane.Point{X: d.Y, Y: -d.X}, dir: d, length: l})
	}
	return out
}

// bounded returns the rule with its box.
func (r rule) bounded() rule {
	r.box = plane.Box(math.Inf(-1), math.Inf(-1), math.Inf(1), math.Inf(1))
	if r.kind != beyond {
		return r
	}
	b := plane.Rect{Min: r.a, Max: r.a}
	switch r.core {
	case corePoint:
	case coreBox:
		b.Max = r.b
	case coreSegment:
		b = plane.Box(min(r.a.X, r.b.X), min(r.a.Y, r.b.Y), max(r.a.X, r.b.X), max(r.a.Y, r.b.Y))
	case corePolygon:
		corners := make(plane.Polygon, len(r.poly))
		for k, e := range r.poly {
			corners[k] = e.at
		}
		b = corners.Bounds()
	}
	r.box = b.Grown(r.radius)
	return r
}

// clearOf reports cheaply that the slack at (x, y) is surely at least margin.
func (r *rule) clearOf(x, y, margin float64) bool {
	return x < r.box.Min.X-margin || x > r.box.Max.X+margin || y < r.box.Min.Y-margin || y > r.box.Max.Y+margin
}

// at returns the slack at (x, y) and its gradient, a unit vector.
func (r *rule) at(x, y float64) (s, gx, gy float64) {
	if r.kind == halfPlane {
		return float64(r.a.X*x) + float64(r.a.Y*y) - r.radius, r.a.X, r.a.Y
	}
	var d float64
	switch r.core {
	case corePoint:
		d, gx, gy = fromPoint(x-r.a.X, y-r.a.Y)
	case coreBox:
		d, gx, gy = r.fromBox(x, y)
	case coreSegment:
		d, gx, gy = r.fromSegment(x, y)
	case corePolygon:
		d, gx, gy = fromPolygon(r.poly, x, y)
	}
	if r.kind == within {
		return r.radius - d, -gx, -gy
	}
	return d - r.radius, gx, gy
}

func fromPoint(dx, dy float64) (d, gx, gy float64) {
	d = math.Sqrt(float64(dx*dx) + float64(dy*dy))
	if d == 0 {
		return 0, 1, 0
	}
	return d, dx / d, dy / d
}

// fromBox is the signed distance from the core's border, negative inside.
func (r *rule) fromBox(x, y float64) (d, gx, gy float64) {
	dx, sx := x-r.b.X, 1.0
	if lo := r.a.X - x; lo > dx {
		dx, sx = lo, -1
	}
	dy, sy := y-r.b.Y, 1.0
	if lo := r.a.Y - y; lo > dy {
		dy, sy = lo, -1
	}
	switch {
	case dx > 0 && dy > 0:
		d, gx, gy = fromPoint(dx, dy)
		return d, gx * sx, gy * sy
	case dx >= dy:
		return dx, sx, 0
	}
	return dy, 0, sy
}

func (r *rule) fromSegment(x, y float64) (d, gx, gy float64) {
	ex, ey := r.b.X-r.a.X, r.b.Y-r.a.Y
	px, py := x-r.a.X, y-r.a.Y
	ee := float64(ex*ex) + float64(ey*ey)
	f := 0.0
	if ee > 0 {
		f = min(1, max(0, (float64(px*ex)+float64(py*ey))/ee))
	}
	return fromPoint(px-float64(f*ex), py-float64(f*ey))
}

// fromPolygon is the signed distance from a convex polygon, negative inside.
func fromPolygon(sides []side, x, y float64) (d, gx, gy float64) {
	in, k := math.Inf(-1), 0
	for i := range sides {
		s := &sides[i]
		h := float64((x-s.at.X)*s.out.X) + float64((y-s.at.Y)*s.out.Y)
		if h > in {
			in, k = h, i
		}
	}
	if in <= 0 {
		return in, sides[k].out.X, sides[k].out.Y
	}
	d = math.Inf(1)
	for i := range sides {
		s := &sides[i]
		px, py := x-s.at.X, y-s.at.Y
		if float64(px*s.out.X)+float64(py*s.out.Y) <= 0 {
			continue // seen from behind: another side is nearer
		}
		f := float64(px*s.dir.X) + float64(py*s.dir.Y)
		f = min(s.length, max(0, f))
		if e, ex, ey := fromPoint(px-float64(f*s.dir.X), py-float64(f*s.dir.Y)); e < d {
			d, gx, gy = e, ex, ey
		}
	}
	return d, gx, gy
}
