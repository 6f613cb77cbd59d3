package lid

import (
	"math"

	"rootbell/internal/base/plane"
)

// Bound is a distance that no layout of n points in the region can exceed,
// with what a pencil needs to check it.
type Bound struct {
	Distance float64
	Kind     BoundKind
	// Hull of the region (a hair larger, never smaller): its area in mm²,
	// perimeter and diameter in mm.
	Area, Perimeter, Diameter float64
	// Long and Short are the sides of a box around the region, and Columns
	// and Rows the cells into which it is cut, where Kind uses them.
	Long, Short   float64
	Columns, Rows int
}

// BoundKind tells which argument gives the bound.
type BoundKind string

// The arguments. For each: n points, least distance d.
const (
	// ByArea: n <= (2/√3) A/d² + P/(2d) + 1 for a convex region of area A and
	// perimeter P (Oler, Acta Math. 105, 1961; Groemer, Math. Z. 73, 1960).
	ByArea BoundKind = "area"
	// ByDiameter: no two points are further apart than the region is wide.
	ByDiameter BoundKind = "diameter"
	// ByStrips: sorted along a box of sides a and b, one of n-1 gaps is at
	// most a/(n-1), so d <= √(a²/(n-1)² + b²).
	ByStrips BoundKind = "strips"
	// ByCells: of n points, two share one of fewer than n equal cells of a
	// box, so d is at most the cell's diagonal.
	ByCells BoundKind = "cells"
	// ByTriples: of n points, three share one of fewer than n/2 equal cells,
	// so d is at most what three points can have in such a cell.
	ByTriples BoundKind = "triples"
)

// Bound returns the least of the bounds known for n points in the region. It
// holds for every layout, found or not. For n below 2 there is no distance
// and the bound is zero.
func (r *Region) Bound(n int) Bound { return boundOn(r.hull(), n) }

func boundOn(hull plane.Polygon, n int) Bound {
	b := Bound{
		Distance: math.Inf(1), Area: hull.Area(), Perimeter: hull.Perimeter(), Diameter: plane.Diameter(hull),
	}
	if n < 2 {
		b.Distance = 0
		return b
	}
	try := func(d float64, kind BoundKind, long, short float64, columns, rows int) {
		// Arguments that agree are told apart by rounding alone: the first wins.
		if d < b.Distance*(1-1e-12) {
			b.Distance, b.Kind = d, kind
			b.Long, b.Short, b.Columns, b.Rows = long, short, columns, rows
		}
	}
	try(b.Diameter, ByDiameter, 0, 0, 0, 0)
	try(spacingFromArea(float64(n-1), b.Area, b.Perimeter), ByArea, 0, 0, 0, 0)
	for _, box := range boxesAround(hull) {
		boxBounds(n, max(box[0], box[1]), min(box[0], box[1]), try)
	}
	return b
}

type tryBound func(d float64, kind BoundKind, long, short float64, columns, rows int)

// boxBounds tries every argument that cuts a box of sides a >= b.
func boxBounds(n int, a, b float64, try tryBound) {
	for _, s := range [2][2]float64{{a, b}, {b, a}} {
		gap := s[0] / float64(n-1)
		try(math.Sqrt(float64(gap*gap)+float64(s[1]*s[1])), ByStrips, s[0], s[1], n-1, 1)
	}
	for columns := 1; columns < n; columns++ {
		for rows := 1; columns*rows < n; rows++ {
			w, h := a/float64(columns), b/float64(rows)
			try(math.Sqrt(float64(w*w)+float64(h*h)), ByCells, a, b, columns, rows)
			if 2*columns*rows < n {
				try(threeIn(max(w, h), min(w, h)), ByTriples, a, b, columns, rows)
			}
		}
	}
}

// threeIn is the largest least distance of three points in a box of sides
// a >= b: an isosceles triangle over the long side, or the largest
// equilateral triangle, with a corner in a corner.
func threeIn(a, b float64) float64 {
	if a >= 2*b/math.Sqrt(3) {
		return math.Sqrt(float64(a*a)/4 + float64(b*b))
	}
	return 2 * math.Sqrt(float64(a*a)+float64(b*b)-float64(math.Sqrt(3)*a*b))
}

// boxesAround returns the sides of the boxes around the hull, one along each
// of its longer sides and the upright one.
func boxesAround(hull plane.Polygon) [][2]float64 {
	box := hull.Bounds()
	out := [][2]float64{{box.Width(), box.Height()}}
	around := hull.Perimeter()
	for k, a := range hull {
		d := hull[(k+1)%len(hull)].Sub(a)
		l := d.Length()
		if l < around/50 {
			continue
		}
		d = d.Times(1 / l)
		lo, hi := plane.Point{X: math.Inf(1), Y: math.Inf(1)}, plane.Point{X: math.Inf(-1), Y: math.Inf(-1)}
		for _, p := range hull {
			u, v := p.Dot(d), p.Dot(d.Left())
			lo = plane.Point{X: min(lo.X, u), Y: min(lo.Y, v)}
			hi = plane.Point{X: max(hi.X, u), Y: max(hi.Y, v)}
		}
		out = append(out, [2]float64{hi.X - lo.X, hi.Y - lo.Y})
	}
	return out
}
