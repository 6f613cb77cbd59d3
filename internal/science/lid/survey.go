package lid

import (
	"math"

	"rootbell/internal/base/plane"
)

// survey measures the free area and finds the deepest point; false where no
// room is found. Cells are cut in four for as long as they could hold a
// better point than the best so far: a cell's middle tells the most that the
// cell could hold, because the slack changes no faster than the distance.
func (r *Region) survey() bool {
	const cells = 32
	w, h := r.box.Width(), r.box.Height()
	size := max(w, h) / cells
	if size == 0 {
		r.deepest = r.box.Min
		return r.Contains(r.deepest)
	}
	nx, ny := max(1, int(math.Ceil(w/size))), max(1, int(math.Ceil(h/size)))
	v := visit{region: r, best: math.Inf(-1)}
	v.w, v.h = w/float64(nx), h/float64(ny)
	inside := 0
	for j := range ny {
		for i := range nx {
			s := v.look(plane.Point{
				X: r.box.Min.X + float64((float64(i)+0.5)*v.w),
				Y: r.box.Min.Y + float64((float64(j)+0.5)*v.h),
			})
			if s >= 0 {
				inside++
			}
		}
	}
	r.area = float64(inside) * v.w * v.h
	// A ring has its deepest points all round: then a rough answer is enough.
	const most = 4000
	for len(v.found) > 0 && len(v.found) < most {
		v.deepen()
	}
	r.deepest = r.box.Clamp(v.at)
	return r.Contains(r.deepest)
}

// visit is the search for the deepest point. Of places equally deep, as in
// the middle of a long lid, the one nearest the middle of the box wins: a
// hundredth of the distance from there is taken off the slack.
type visit struct {
	region *Region
	w, h   float64 // size of the cells in found
	best   float64
	at     plane.Point
	found  []cell
}

// cell is a part of the box: its middle and the most that it could hold.
type cell struct {
	mid   plane.Point
	reach float64
}

const towardsMiddle = 0.01

// look judges a cell by its middle, keeps it, and returns the slack there.
func (v *visit) look(mid plane.Point) float64 {
	s := v.region.Slack(mid)
	worth := s - float64(towardsMiddle*mid.To(v.region.box.Centre()))
	if worth > v.best {
		v.best, v.at = worth, mid
	}
	half := math.Sqrt(float64(v.w*v.w)+float64(v.h*v.h)) / 2
	v.found = append(v.found, cell{mid, worth + float64((1+towardsMiddle)*half)})
	return s
}

// deepen cuts each cell in four that could beat the best.
func (v *visit) deepen() {
	const fineMM = 0.001
	old := v.found
	v.found = nil
	v.w, v.h = v.w/2, v.h/2
	for _, c := range old {
		if c.reach <= v.best+fineMM {
			continue
		}
		for _, d := range [4]plane.Point{{X: -1, Y: -1}, {X: 1, Y: -1}, {X: -1, Y: 1}, {X: 1, Y: 1}} {
			v.look(plane.Point{X: c.mid.X + float64(d.X*v.w)/2, Y: c.mid.Y + float64(d.Y*v.h)/2})
		}
	}
}
