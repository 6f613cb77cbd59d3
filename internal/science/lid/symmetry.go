package lid

import (
	"math"

	"rootbell/internal/base/plane"
)

// symmetry is a map of the plane that may leave a region as it is, about the
// middle of the region's box: (x, y) to (xx x + xy y, yx x + yy y).
type symmetry struct {
	xx, xy, yx, yy float64
}

var allSymmetries = [...]symmetry{
	{-1, 0, 0, 1},
	{1, 0, 0, -1},
	{-1, 0, 0, -1},
	{0, 1, 1, 0},
	{0, -1, -1, 0},
	{0, -1, 1, 0},
	{0, 1, -1, 0},
}

func (m symmetry) of(x, y float64) (float64, float64) {
	return float64(m.xx*x) + float64(m.xy*y), float64(m.yx*x) + float64(m.yy*y)
}

func (m symmetry) about(c, p plane.Point) plane.Point {
	x, y := m.of(p.X-c.X, p.Y-c.Y)
	return plane.Point{X: c.X + x, Y: c.Y + y}
}

// findSymmetries lists the maps that leave the region as it is, judged by the
// slack at the nodes of a grid: a sliver between the nodes can be missed, so
// whoever moves a point by one of them asks the region again.
func (r *Region) findSymmetries() []symmetry {
	var out []symmetry
	for _, m := range allSymmetries {
		if r.has(m) {
			out = append(out, m)
		}
	}
	return out
}

func (r *Region) has(m symmetry) bool {
	const nodes, sameMM = 9, 1e-6
	w, h := r.box.Width(), r.box.Height()
	if m.xx == 0 && math.Abs(w-h) > sameMM {
		return false
	}
	c := r.box.Centre()
	for j := range nodes {
		for i := range nodes {
			p := plane.Point{
				X: r.box.Min.X + float64(w*(float64(i)+0.37)/nodes),
				Y: r.box.Min.Y + float64(h*(float64(j)+0.61)/nodes),
			}
			a, b := r.Slack(p), r.Slack(m.about(c, p))
			// Deep outside the zones overlap and no search goes there.
			if math.Abs(a-b) > sameMM && max(a, b) > -w/nodes {
				return false
			}
		}
	}
	return true
}

// average makes the moves of each point and of its image the same.
func (m *symmetry) average(v []float64, partner []int32) {
	for i, j := range partner {
		if int(j) < i {
			continue
		}
		jx, jy := m.of(v[2*j], v[2*j+1])
		ax, ay := (v[2*i]+jx)/2, (v[2*i+1]+jy)/2
		v[2*i], v[2*i+1] = ax, ay
		v[2*j], v[2*j+1] = m.of(ax, ay)
	}
}
