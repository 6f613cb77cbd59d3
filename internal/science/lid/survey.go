package lid

import (
	"math"

	"rootbell/internal/base/plane"
)

// areaIn is the free area of a cell of the box, which is cut in four as often
// as cuts says where a border crosses it: the slack changes no faster than the
// distance, so its value in the middle tells whether one can.
func (r *Region) areaIn(c plane.Rect, cuts int) float64 {
	m, half := c.Centre(), c.Min.To(c.Max)/2
	least := math.Inf(1)
	for k := range r.rules {
		if s, _, _ := r.rules[k].at(m.X, m.Y); s < least {
			least = s
		}
	}
	switch {
	case least >= half || cuts == 0 && least >= 0:
		return float64(c.Width() * c.Height())
	case least <= -half || cuts == 0:
		return 0
	}
	sum := 0.0
	for _, q := range quarters(c) {
		sum += r.areaIn(q, cuts-1)
	}
	return sum
}

// findDeepest finds the point with the most room around it, to well under a
// millimetre: the place for a single hole. Of places about equally deep it is
// the one nearest the middle, unless that pull leads out of a slender region.
func (r *Region) findDeepest() plane.Point {
	const towardsMiddle = 0.01
	if p := r.deepestWith(towardsMiddle); r.Contains(p) {
		return p
	}
	return r.deepestWith(0)
}

// deepestWith cuts cells in four for as long as they could hold a better
// point than the best so far: a cell's middle tells the most that the cell
// could hold.
func (r *Region) deepestWith(pull float64) plane.Point {
	const cells = 32
	w, h := r.box.Width(), r.box.Height()
	size := max(w, h) / cells
	if size == 0 {
		return r.box.Min
	}
	nx, ny := max(1, int(math.Ceil(w/size))), max(1, int(math.Ceil(h/size)))
	v := visit{region: r, pull: pull, best: math.Inf(-1)}
	v.w, v.h = w/float64(nx), h/float64(ny)
	for j := range ny {
		for i := range nx {
			v.look(plane.Point{
				X: r.box.Min.X + float64((float64(i)+0.5)*v.w),
				Y: r.box.Min.Y + float64((float64(j)+0.5)*v.h),
			})
		}
	}
	// A ring has its deepest points all round: then a rough answer is enough.
	const most = 4000
	for len(v.found) > 0 && len(v.found) < most {
		v.deepen()
	}
	return r.box.Clamp(v.at)
}

// visit is the search for the deepest point. Of places equally deep, as in
// the middle of a long lid, the one nearest the middle of the box wins: the
// pull times the distance from there is taken off the slack.
type visit struct {
	region *Region
	pull   float64
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

// look judges a cell by its middle and keeps it.
func (v *visit) look(mid plane.Point) {
	s := v.region.Slack(mid)
	worth := s - float64(v.pull*mid.To(v.region.box.Centre()))
	if worth > v.best {
		v.best, v.at = worth, mid
	}
	half := math.Sqrt(float64(v.w*v.w)+float64(v.h*v.h)) / 2
	v.found = append(v.found, cell{mid, worth + float64((1+v.pull)*half)})
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
