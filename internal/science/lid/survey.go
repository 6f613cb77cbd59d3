package lid

import (
	"math"

	"rootbell/internal/base/plane"
)

// survey measures the free area and finds the deepest point; false where no
// room is found. Cells are cut in four for as long as they could hold a
// deeper point than the best so far: the slack never changes faster than the
// distance, so a cell's middle tells the most that the cell could hold.
func (r *Region) survey() bool {
	const cells = 96
	w, h := r.box.Width(), r.box.Height()
	size := max(w, h) / cells
	if size == 0 {
		r.deepest = r.box.Min
		return r.Contains(r.deepest)
	}
	nx, ny := max(1, int(math.Ceil(w/size))), max(1, int(math.Ceil(h/size)))
	cw, ch := w/float64(nx), h/float64(ny)
	best := math.Inf(-1)
	count := 0
	var open []cell
	for j := range ny {
		for i := range nx {
			c := cell{
				mid: plane.Point{
					X: r.box.Min.X + float64((float64(i)+0.5)*cw),
					Y: r.box.Min.Y + float64((float64(j)+0.5)*ch),
				},
				w: cw, h: ch,
			}
			s := r.Slack(c.mid)
			if s >= 0 {
				count++
			}
			c.reach = s + math.Sqrt(float64(cw*cw)+float64(ch*ch))/2
			if s > best {
				best, r.deepest = s, c.mid
			}
			open = append(open, c)
		}
	}
	for len(open) > 0 {
		open, best = r.deepen(open, best)
	}
	r.area = float64(count) * cw * ch
	if best < 0 {
		// A region without width may still hold points on its border.
		r.deepest = r.box.Clamp(r.deepest)
		return r.Contains(r.deepest)
	}
	return true
}

type cell struct {
	mid         plane.Point
	w, h, reach float64
}

// deepen cuts each cell in four that could beat the best by a hundredth of a
// millimetre, and returns the quarters.
func (r *Region) deepen(open []cell, best float64) ([]cell, float64) {
	const fineMM = 0.01
	const most = 20_000 // a plateau (a long narrow lid) is not searched for ever
	var next []cell
	for _, c := range open {
		if c.reach <= max(best, -feasibleMM)+fineMM || len(next) > most {
			continue
		}
		w, h := c.w/2, c.h/2
		for _, d := range [4]plane.Point{{X: -1, Y: -1}, {X: 1, Y: -1}, {X: -1, Y: 1}, {X: 1, Y: 1}} {
			q := cell{
				mid: plane.Point{X: c.mid.X + float64(d.X*w)/2, Y: c.mid.Y + float64(d.Y*h)/2},
				w:   w, h: h,
			}
			s := r.Slack(q.mid)
			q.reach = s + math.Sqrt(float64(w*w)+float64(h*h))/2
			if s > best {
				best, r.deepest = s, q.mid
			}
			next = append(next, q)
		}
	}
	return next, best
}
