package lid

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"

	"rootbell/internal/base/plane"
)

// Ruled is a layout whose every coordinate is a mark of the ruler.
type Ruled struct {
	Layout Layout
	// Widest is the best layout found without a ruler, from the same search.
	Widest Layout
	// Loss is the part of Widest's least distance that the ruler costs, 0 to 1.
	Loss float64
	// Symmetric tells whether the layout was made its own mirror image, or
	// its own half-turn, and SymmetryCost what part of the best least distance
	// on the ruler that costs (0 to 1, also where it was too dear to take; -1
	// where lid and marks have no symmetry in common).
	Symmetric    bool
	SymmetryCost float64
}

// dearSymmetry is what a symmetry may cost; one that costs more is not taken.
const dearSymmetry = 0.01

// ErrNoMark says that the ruler has no room for the holes.
var ErrNoMark = errors.New("the ruler's step is too coarse: there are not enough marks inside the margins")

// Snap lays the points on the ruler's marks, as far apart as a local search
// from many of the optima finds; fixed holes stay where they are, on a mark or
// not. Where the region and the marks are symmetric, so is the layout if that
// costs at most one part in a hundred. With ErrNoMark the widest layout is
// given all the same.
func (f *Optima) Snap(ctx context.Context, u Ruler) (Ruled, error) {
	r, fixed := f.region, f.ask.Fixed
	m, err := r.mesh(u)
	if err != nil {
		return Ruled{}, err
	}
	out := Ruled{Widest: f.Widest(), SymmetryCost: -1}
	switch {
	case f.n == len(fixed):
		return Ruled{Layout: out.Widest, Widest: out.Widest}, nil
	case f.n == 1:
		return r.snapOne(m)
	}
	best := f.solver().snapPool(m, nil)
	if best.d <= 0 {
		return out, ErrNoMark
	}
	starts := f.starts
	if len(fixed) == 0 {
		even, more, err := r.snapSymmetric(ctx, f.n, m, f.ask)
		if err != nil {
			return Ruled{}, err
		}
		starts += more
		if even.d > 0 {
			out.SymmetryCost = max(0, 1-even.d/best.d)
			if out.SymmetryCost <= dearSymmetry {
				best, out.Symmetric = even, true
			}
		}
	}
	out.Layout = r.marked(best.points(m), fixed, starts)
	k := len(fixed)
	out.Loss = max(0, 1-spacingOfFree(out.Layout.Points, k)/spacingOfFree(out.Widest.Exact, k))
	return out, nil
}

// marked is finished for points that are on marks already: nothing is rounded.
func (r *Region) marked(free, fixed []plane.Point, starts int) Layout {
	sortByRows(free)
	all := append(append([]plane.Point(nil), fixed...), free...)
	l := Layout{Exact: all, Points: append([]plane.Point(nil), all...), Starts: starts}
	l.ExactSpacing, _, _ = leastDistance(all)
	l.Measured = r.Remeasure(l.Points)
	return l
}

// spacingOfFree is the least distance between two points of which the second
// is not fixed.
func spacingOfFree(points []plane.Point, fixed int) float64 {
	d := math.Inf(1)
	for i := fixed; i < len(points); i++ {
		for j := range i {
			d = min(d, points[i].To(points[j]))
		}
	}
	return d
}

func (r *Region) snapOne(m *mesh) (Ruled, error) {
	out := Ruled{Widest: r.finished([]plane.Point{r.deepest()}, nil, 0)}
	i, j, ok := m.nearest(r.deepest())
	if !ok {
		return out, ErrNoMark
	}
	out.Layout = r.marked([]plane.Point{m.at(i, j)}, nil, 0)
	return out, nil
}

// snapPool snaps each optimum of the pool, best first, until the next one is
// not better than what is snapped already.
func (s *solver) snapPool(m *mesh, t *twin) nodes {
	var best nodes
	for k := range s.pool.kept {
		if s.pool.kept[k].t*s.unit <= best.d {
			break
		}
		s.take(k)
		w := newWalk(s, m, t, rand.New(rand.NewPCG(s.seed, uint64(1_000_000+k))))
		if w == nil {
			continue
		}
		if got := w.run(); got.d > best.d*(1+1e-12) {
			best = got
		}
	}
	return best
}

// snapSymmetric does the same under each symmetry that the region and the
// marks share, and returns the best.
func (r *Region) snapSymmetric(ctx context.Context, n int, m *mesh, o Search) (nodes, int, error) {
	var best nodes
	starts := 0
	for _, sym := range r.symmetries() {
		t := newTwin(m, sym, r.box.Centre())
		if t == nil {
			continue
		}
		s := newSolver(r, n, nil, o.Seed)
		s.lp.spare = o.effort().allowance()
		s.sym = &sym
		k, err := s.search(ctx, max(o.effort().starts(n)/2, 8), math.Inf(1))
		starts += k
		if err != nil {
			return best, starts, err
		}
		if got := s.snapPool(m, t); got.d > best.d*(1+1e-12) {
			best = got
		}
	}
	return best, starts, nil
}
