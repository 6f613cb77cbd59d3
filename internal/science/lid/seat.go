package lid

import (
	"math"

	"rootbell/internal/base/plane"
)

// Seat finds a place for one more hole, on a whole multiple of step (mm) from
// the origin, where cost is least; ties go to the lowest, then leftmost. The
// region is that of the extra hole: the lid with its own margin, its own
// clearance from the keep-clear shapes and from the holes that are there
// already, as circles. cost must be finite and change by no more than the
// distance does (as distances do). False where no place of that grid is in the
// region.
func (r *Region) Seat(step float64, cost func(plane.Point) float64) (plane.Point, bool) {
	m, err := r.mesh(Ruler{Step: step})
	if err != nil {
		return plane.Point{}, false
	}
	best, at, found := math.Inf(1), plane.Point{}, false
	for j := range m.ys {
		for i := 0; i < len(m.xs); {
			p := m.at(i, j)
			if c := cost(p); c >= best-feasibleMM {
				// Nothing nearer than this can be better.
				i += max(1, int((c-best)/step))
				continue
			} else if s := r.Slack(p); s >= -feasibleMM {
				best, at, found = c, p, true
			} else {
				i += max(0, int(-s/step)-1)
			}
			i++
		}
	}
	return at, found
}

// NearOutline is the cost of lying away from the outline of s: the distance
// to it, in mm.
func NearOutline(s plane.Shape) func(plane.Point) float64 {
	return func(p plane.Point) float64 { return math.Abs(s.Distance(p)) }
}

// Roomiest is the cost of lying near a border of the region: the place with
// the most room all round is best.
func (r *Region) Roomiest() func(plane.Point) float64 {
	return func(p plane.Point) float64 { return -r.Slack(p) }
}
