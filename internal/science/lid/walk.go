package lid

import (
	"math"
	"math/rand/v2"

	"rootbell/internal/base/plane"
)

// nodes is a layout on the lines of a mesh, with its least distance; zero
// where there is none.
type nodes struct {
	i, j []int
	d    float64
}

func (n nodes) points(m *mesh) []plane.Point {
	out := make([]plane.Point, len(n.i))
	for k := range out {
		out[k] = m.at(n.i[k], n.j[k])
	}
	return out
}

// twin maps each node of a mesh to its image under a symmetry.
type twin struct {
	i, j []int // nil: the coordinate stays
}

func newTwin(m *mesh, sym symmetry, c plane.Point) *twin {
	if sym.xx == 0 {
		return nil // a mirror along a diagonal helps nobody to mark
	}
	t := &twin{}
	if sym.xx < 0 {
		if t.i = image(m.xs, c.X); t.i == nil {
			return nil
		}
	}
	if sym.yy < 0 {
		if t.j = image(m.ys, c.Y); t.j == nil {
			return nil
		}
	}
	return t
}

func (t *twin) of(i, j int) (int, int) {
	if t.i != nil {
		i = t.i[i]
	}
	if t.j != nil {
		j = t.j[j]
	}
	return i, j
}

// walk is a local search over nodes: one end of a shortest pair at a time
// goes to the best of its neighbouring nodes.
type walk struct {
	m       *mesh
	t       *twin
	partner []int32
	now     nodes
	x, y    []float64 // places of the free points, then of the fixed ones
	rng     *rand.Rand
}

func newWalk(s *solver, m *mesh, t *twin, rng *rand.Rand) *walk {
	w := &walk{
		m: m, t: t, rng: rng,
		now: nodes{i: make([]int, s.free), j: make([]int, s.free)},
		x:   make([]float64, s.n), y: make([]float64, s.n),
	}
	if t != nil {
		w.partner = s.partners()
		if w.partner == nil {
			return nil
		}
	}
	for k := range s.n {
		p := s.outward(k)
		w.x[k], w.y[k] = p.X, p.Y
	}
	for k := range s.free {
		if t != nil && int(w.partner[k]) < k {
			continue
		}
		i, j, ok := m.nearest(s.outward(k))
		if !ok || !w.place(k, i, j) {
			return nil
		}
	}
	return w
}

// place puts point k, and its image, on a node; false where the image is not
// in the region or a point that is its own image would leave the axis.
func (w *walk) place(k, i, j int) bool {
	if !w.m.holds(i, j) {
		return false
	}
	if w.t != nil {
		ti, tj := w.t.of(i, j)
		p := int(w.partner[k])
		if p == k && (ti != i || tj != j) || !w.m.holds(ti, tj) {
			return false
		}
		w.set(p, ti, tj)
	}
	w.set(k, i, j)
	return true
}

func (w *walk) set(k, i, j int) {
	w.now.i[k], w.now.j[k] = i, j
	w.x[k], w.y[k] = w.m.xs[i], w.m.ys[j]
}

// tie is the relative difference below which two squared distances are one.
const tie = 1e-9

// least returns the smallest squared distance, how many pairs have it, and
// the points of one of them picked by lot.
func (w *walk) least() (q float64, count, a, b int) {
	q = math.Inf(1)
	free := len(w.now.i)
	for i := range free {
		for j := i + 1; j < len(w.x); j++ {
			d := w.square(i, j)
			switch {
			case d < q*(1-tie):
				q, count, a, b = d, 1, i, j
			case d <= q*(1+tie):
				count++
				if w.rng.IntN(count) == 0 {
					a, b = i, j
				}
			}
		}
	}
	return q, count, a, b
}

func (w *walk) square(i, j int) float64 {
	dx, dy := w.x[i]-w.x[j], w.y[i]-w.y[j]
	return float64(dx*dx) + float64(dy*dy)
}

// run walks and returns the best layout met.
func (w *walk) run() nodes {
	steps := 400 + 40*len(w.now.i)
	q, count, a, b := w.least()
	best := w.copyOf(q)
	for range steps {
		k := a
		if b < len(w.now.i) && w.rng.IntN(2) == 0 {
			k = b
		}
		i, j := w.now.i[k], w.now.j[k]
		ni, nj, ok := w.bestAround(k)
		if !ok {
			q, count, a, b = w.least()
			continue
		}
		w.place(k, ni, nj)
		nq, ncount, na, nb := w.least()
		better := nq > q*(1+tie) || nq >= q*(1-tie) && ncount < count
		if !better && w.rng.IntN(6) != 0 {
			w.place(k, i, j)
			q, count, a, b = w.least()
			continue
		}
		q, count, a, b = nq, ncount, na, nb
		if d := math.Sqrt(q); d > best.d*(1+1e-12) {
			best = w.copyOf(q)
		}
	}
	return best
}

func (w *walk) copyOf(q float64) nodes {
	return nodes{append([]int(nil), w.now.i...), append([]int(nil), w.now.j...), math.Sqrt(q)}
}

// bestAround returns the node of the 5 by 5 about point k, other than its own,
// where its own least distance is largest; ties by lot.
func (w *walk) bestAround(k int) (bi, bj int, ok bool) {
	i, j := w.now.i[k], w.now.j[k]
	best, ties := -1.0, 0
	for dj := -2; dj <= 2; dj++ {
		for di := -2; di <= 2; di++ {
			if di == 0 && dj == 0 || !w.place(k, i+di, j+dj) {
				continue
			}
			q := math.Inf(1)
			for o := range w.x {
				if o != k {
					q = min(q, w.square(k, o))
				}
			}
			switch {
			case q > best*(1+tie):
				best, ties, bi, bj, ok = q, 1, i+di, j+dj, true
			case q >= best*(1-tie):
				ties++
				if w.rng.IntN(ties) == 0 {
					bi, bj = i+di, j+dj
				}
			}
		}
	}
	w.place(k, i, j)
	return bi, bj, ok
}
