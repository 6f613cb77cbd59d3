package lid

import (
	"math"
	"slices"

	"rootbell/internal/base/plane"
)

// Measure is what a ruler would read off a layout.
type Measure struct {
	Spacing float64 // least distance between two points; 0 for fewer than two
	Pair    [2]int  // the two points, counted from 0
	Slack   float64 // least room to the region's border; negative: outside
	Tight   int     // the point with that room
	// Marks is how many distinct measures must be set out: the different x
	// and the different y, a tenth of a millimetre apart.
	Marks int
}

// Remeasure reads the distances off the points. It shares nothing with the
// search but the shapes as they were given.
func (r *Region) Remeasure(points []plane.Point) Measure {
	var m Measure
	var i, j int
	m.Spacing, i, j = leastDistance(points)
	m.Pair = [2]int{i, j}
	m.Slack = math.Inf(1)
	for k, p := range points {
		if s := r.Slack(p); s < m.Slack {
			m.Slack, m.Tight = s, k
		}
	}
	m.Marks = marks(points)
	return m
}

func leastDistance(points []plane.Point) (d float64, a, b int) {
	if len(points) < 2 {
		return 0, 0, 0
	}
	d = math.Inf(1)
	for i, p := range points {
		for j := i + 1; j < len(points); j++ {
			if e := p.To(points[j]); e < d {
				d, a, b = e, i, j
			}
		}
	}
	return d, a, b
}

func marks(points []plane.Point) int {
	xs := make([]float64, len(points))
	ys := make([]float64, len(points))
	for k, p := range points {
		xs[k], ys[k] = p.X, p.Y
	}
	return distinct(xs) + distinct(ys)
}

func distinct(v []float64) int {
	const sameMM = 0.1
	slices.Sort(v)
	count := 0
	last := math.Inf(-1)
	for _, x := range v {
		if x > last+sameMM {
			count++
			last = x
		}
	}
	return count
}
