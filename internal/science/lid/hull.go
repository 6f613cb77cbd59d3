package lid

import (
	"math"

	"rootbell/internal/base/plane"
)

// The box is cut into coarse by coarse cells, and those along the hull in four
// as often as cuts says.
const coarse, cuts = 32, 5

// cellHull returns a convex polygon that holds the whole region and is larger
// by no more than a few thousandths of its size. A cell of the box is left
// out where the slack at its middle proves it empty: the slack never changes
// faster than the distance. Cells along the hull are cut in four again and
// again; those well inside it only lend it their corners.
func (r *Region) cellHull() plane.Polygon {
	w, h := r.box.Width()/coarse, r.box.Height()/coarse
	var cells []plane.Rect
	for j := range coarse {
		for i := range coarse {
			c := plane.Box(
				r.box.Min.X+float64(w*float64(i)), r.box.Min.Y+float64(h*float64(j)),
				r.box.Min.X+float64(w*float64(i+1)), r.box.Min.Y+float64(h*float64(j+1)),
			)
			if i == coarse-1 {
				c.Max.X = r.box.Max.X
			}
			if j == coarse-1 {
				c.Max.Y = r.box.Max.Y
			}
			cells = r.unlessEmpty(cells, c)
		}
	}
	var inner plane.Polygon
	hull := r.hullOf(inner, cells)
	for range cuts {
		var cut, deep []plane.Rect
		lines := sideLines(hull)
		for _, c := range cells {
			if !touches(lines, c) {
				deep = append(deep, c)
				continue
			}
			for _, q := range quarters(c) {
				cut = r.unlessEmpty(cut, q)
			}
		}
		inner = r.hullOf(inner, deep)
		cells = cut
		hull = r.hullOf(inner, cells)
	}
	return hull
}

func quarters(c plane.Rect) [4]plane.Rect {
	m := c.Centre()
	return [4]plane.Rect{
		plane.Box(c.Min.X, c.Min.Y, m.X, m.Y), plane.Box(m.X, c.Min.Y, c.Max.X, m.Y),
		plane.Box(c.Min.X, m.Y, m.X, c.Max.Y), plane.Box(m.X, m.Y, c.Max.X, c.Max.Y),
	}
}

func (r *Region) unlessEmpty(cells []plane.Rect, c plane.Rect) []plane.Rect {
	if r.Slack(c.Centre())+c.Min.To(c.Max)/2 < -feasibleMM {
		return cells
	}
	return append(cells, c)
}

// hullOf returns the hull of inner and the cells. All corners lie on the rows
// of the finest grid, and of a row only the two outermost can be on the hull.
func (r *Region) hullOf(inner plane.Polygon, cells []plane.Rect) plane.Polygon {
	const rows = coarse << cuts
	var left, right [rows + 1]plane.Point
	var used [rows + 1]bool
	for _, c := range cells {
		for _, y := range [2]float64{c.Min.Y, c.Max.Y} {
			k := 0
			if h := r.box.Height(); h > 0 {
				k = int(math.Round((y - r.box.Min.Y) / h * rows))
			}
			if !used[k] || c.Min.X < left[k].X {
				left[k] = plane.Point{X: c.Min.X, Y: y}
			}
			if !used[k] || c.Max.X > right[k].X {
				right[k] = plane.Point{X: c.Max.X, Y: y}
			}
			used[k] = true
		}
	}
	pts := append(make([]plane.Point, 0, len(inner)+2*rows), inner...)
	for k, ok := range used {
		if ok {
			pts = append(pts, left[k], right[k])
		}
	}
	return plane.Hull(pts)
}

// sideLine is one side of a hull as a line: normal·p = at, inwards positive.
type sideLine struct {
	normal plane.Point
	at     float64
}

func sideLines(hull plane.Polygon) []sideLine {
	out := make([]sideLine, len(hull))
	for k, a := range hull {
		d := hull[(k+1)%len(hull)].Sub(a)
		n := d.Left().Times(1 / d.Length())
		out[k] = sideLine{n, n.Dot(a)}
	}
	return out
}

// touches reports whether the cell lies so near the hull's outline, which may
// be off by a cell's size, that a corner of it could be a corner of the
// region's own hull.
func touches(hull []sideLine, c plane.Rect) bool {
	m, near := c.Centre(), 3*c.Min.To(c.Max)
	for _, s := range hull {
		if s.normal.Dot(m)-s.at <= near {
			return true
		}
	}
	return false
}
