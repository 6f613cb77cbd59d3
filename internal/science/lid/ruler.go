package lid

import (
	"errors"
	"math"
	"slices"

	"rootbell/internal/base/plane"
)

// Ruler says where marks may be set out: at whole multiples of Step (mm) from
// the origin, the lid's lower left corner, in both directions; with Borders
// also on the lines that bound the region's box, which are drawn anyway.
type Ruler struct {
	Step    float64
	Borders bool
}

// mesh is the nodes of a ruler in the region's box.
type mesh struct {
	region *Region
	xs, ys []float64
	known  []int8 // 0 not asked yet, 1 in the region, -1 not
}

// mostLines keeps a mesh within memory: a step finer than this allows is not
// a ruler's.
const mostLines = 4000

func (r *Region) mesh(u Ruler) (*mesh, error) {
	if !(u.Step > 0) || math.IsInf(u.Step, 1) {
		return nil, errors.New("the ruler's step must be above zero")
	}
	if max(r.box.Width(), r.box.Height())/u.Step > mostLines {
		return nil, errors.New("the ruler's step is too fine for a lid of this size")
	}
	m := &mesh{region: r}
	m.xs = lines(r.box.Min.X, r.box.Max.X, u)
	m.ys = lines(r.box.Min.Y, r.box.Max.Y, u)
	m.known = make([]int8, len(m.xs)*len(m.ys))
	return m, nil
}

// lines lists the marks from lo to hi, rising.
func lines(lo, hi float64, u Ruler) []float64 {
	var out []float64
	for k := math.Ceil((lo - feasibleMM) / u.Step); ; k++ {
		v := k * u.Step
		if v > hi+feasibleMM {
			break
		}
		out = append(out, v)
	}
	if !u.Borders {
		return out
	}
	for _, b := range [2]float64{lo, hi} {
		if !slices.ContainsFunc(out, func(v float64) bool { return math.Abs(v-b) < grainMM }) {
			out = append(out, b)
		}
	}
	slices.Sort(out)
	return out
}

func (m *mesh) at(i, j int) plane.Point { return plane.Point{X: m.xs[i], Y: m.ys[j]} }

// holds reports whether node (i, j) exists and lies in the region.
func (m *mesh) holds(i, j int) bool {
	if i < 0 || j < 0 || i >= len(m.xs) || j >= len(m.ys) {
		return false
	}
	k := &m.known[j*len(m.xs)+i]
	if *k == 0 {
		*k = -1
		if m.region.Contains(m.at(i, j)) {
			*k = 1
		}
	}
	return *k > 0
}

// nearest returns the node of the region closest to p; false where there is
// none.
func (m *mesh) nearest(p plane.Point) (int, int, bool) {
	if len(m.xs) == 0 || len(m.ys) == 0 {
		return 0, 0, false
	}
	ci, cj := closest(m.xs, p.X), closest(m.ys, p.Y)
	best, bi, bj := math.Inf(1), 0, 0
	for ring := 0; ring < max(len(m.xs), len(m.ys)); ring++ {
		for j := cj - ring; j <= cj+ring; j++ {
			step := 1
			if j != cj-ring && j != cj+ring {
				step = max(2*ring, 1)
			}
			for i := ci - ring; i <= ci+ring; i += step {
				if !m.holds(i, j) {
					continue
				}
				if d := p.To(m.at(i, j)); d < best {
					best, bi, bj = d, i, j
				}
			}
		}
		// One more ring may still hold a node closer in a straight line.
		if !math.IsInf(best, 1) && ring > 2 {
			break
		}
	}
	return bi, bj, !math.IsInf(best, 1)
}

func closest(v []float64, x float64) int {
	k, _ := slices.BinarySearch(v, x)
	if k > 0 && (k == len(v) || x-v[k-1] <= v[k]-x) {
		k--
	}
	return k
}

// image maps line numbers to those of their images under v -> 2c-v; nil where
// an image is no line.
func image(v []float64, c float64) []int {
	out := make([]int, len(v))
	for k, x := range v {
		y := 2*c - x
		i := closest(v, y)
		if math.Abs(v[i]-y) > 1e-6 {
			return nil
		}
		out[k] = i
	}
	return out
}
