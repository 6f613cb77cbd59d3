package lid

import (
	"cmp"
	"math"
	"slices"

	"rootbell/internal/base/plane"
)

// centreRattlers moves each point that nothing holds to where its nearest
// neighbour is farthest.
func (s *solver) centreRattlers() {
	t := s.least(s.x, s.y)
	one := *s
	one.n, one.free = s.n, 1
	one.x, one.y = make([]float64, s.n), make([]float64, s.n)
	one.tx, one.ty = make([]float64, s.n), make([]float64, s.n)
	one.sym = nil
	for range 2 {
		for i := range s.free {
			copy(one.x, s.x)
			copy(one.y, s.y)
			one.x[0], one.y[0], one.x[i], one.y[i] = s.x[i], s.y[i], s.x[0], s.y[0]
			copy(one.tx, one.x)
			copy(one.ty, one.y)
			before := one.least(one.x, one.y)
			after, _ := one.climb(firstReach, 0, stopGain)
			if after > before+1e-7 && after > t {
				s.x[i], s.y[i] = one.x[0], one.y[0]
			}
		}
	}
	if s.least(s.x, s.y) < t-stopGain {
		s.take(0) // cannot happen: a rattler's move only gains
	}
}

// canonical returns the free points in millimetres, sorted, as the first in
// order of their images under the region's symmetries, after the fixed ones.
// With fixed points there is only the one image.
func (s *solver) canonical(fixed []plane.Point) []plane.Point {
	pts := make([]plane.Point, s.free)
	for k := range pts {
		pts[k] = s.outward(k)
	}
	sortByRows(pts)
	if len(fixed) == 0 {
		best := pts
		for _, m := range s.region.symmetries() {
			img := make([]plane.Point, len(pts))
			inside := true
			for k, p := range pts {
				img[k] = m.about(s.origin, p)
				inside = inside && s.region.Contains(img[k])
			}
			sortByRows(img)
			if inside && slices.CompareFunc(img, best, compareRounded) < 0 {
				best = img
			}
		}
		pts = best
	}
	return append(slices.Clone(fixed), pts...)
}

// grainMM is what coordinates are rounded to.
const grainMM = 0.01

func rounded(v float64) float64 { return math.Round(v/grainMM) * grainMM }

func compareRounded(a, b plane.Point) int {
	return cmp.Or(cmp.Compare(rounded(a.Y), rounded(b.Y)), cmp.Compare(rounded(a.X), rounded(b.X)))
}

func sortByRows(p []plane.Point) { slices.SortStableFunc(p, compareRounded) }

// finished rounds the points and measures what came of it.
func (r *Region) finished(exact, fixed []plane.Point, starts int) Layout {
	l := Layout{Exact: exact, Starts: starts, Points: slices.Clone(exact)}
	for k := len(fixed); k < len(exact); k++ {
		l.Points[k] = r.roundInwards(exact[k])
	}
	l.ExactSpacing, _, _ = leastDistance(exact)
	l.Measured = r.Remeasure(l.Points)
	return l
}

// roundInwards returns the node of the hundredth-millimetre grid nearest to p
// that lies in the region. Where the region is too narrow for any of the nodes
// about p, it returns p, or the nearest place found in the region if p itself
// oversteps by the search's own rounding.
func (r *Region) roundInwards(p plane.Point) plane.Point {
	const about = 2
	i, j := math.Round(p.X/grainMM), math.Round(p.Y/grainMM)
	best, at := math.Inf(1), p
	for dj := -about; dj <= about; dj++ {
		for di := -about; di <= about; di++ {
			q := plane.Point{X: (i + float64(di)) / 100, Y: (j + float64(dj)) / 100}
			if d := p.To(q); d < best && r.Contains(q) {
				best, at = d, q
			}
		}
	}
	for size := feasibleMM; size < grainMM && !r.Contains(at); size *= 2 {
		for _, d := range [8]plane.Point{
			{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {X: 1, Y: 1}, {X: -1, Y: 1}, {X: 1, Y: -1}, {X: -1, Y: -1},
		} {
			if q := p.Add(d.Times(size)); r.Contains(q) {
				at = q
				break
			}
		}
	}
	return at
}
