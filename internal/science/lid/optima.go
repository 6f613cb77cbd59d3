package lid

import (
	"context"
	"math"
	"slices"
	"sync"

	"rootbell/internal/base/plane"
)

// Optima are the local optima that one search found for one question, best
// first. The widest layout and any number of ruled ones come from them without
// searching again.
type Optima struct {
	region *Region
	n      int
	ask    Search
	kept   []optimum
	starts int
	widest func() Layout // worked out once, when asked
}

// Optima searches for ways to lay n points, the fixed ones among them, so that
// the least distance between two is as large as the effort finds. Distances
// between two fixed points do not count in the search. The error says what is
// impossible, or that ctx ended first.
func (r *Region) Optima(ctx context.Context, n int, o Search) (*Optima, error) {
	if err := r.checkCount(n, o.Fixed); err != nil {
		return nil, err
	}
	o.Fixed = slices.Clone(o.Fixed)
	f := &Optima{region: r, n: n, ask: o}
	f.widest = sync.OnceValue(f.layWidest)
	if f.settled() {
		return f, nil
	}
	s := f.solver()
	starts, err := s.search(ctx, o.effort().starts(n), math.Inf(1))
	if err != nil {
		return nil, err
	}
	f.starts, f.kept = starts, s.pool.kept
	return f, nil
}

// settled tells that there was nothing to search for.
func (f *Optima) settled() bool { return f.n == 1 || f.n == len(f.ask.Fixed) }

// solver returns a fresh solver that knows the optima.
func (f *Optima) solver() *solver {
	s := newSolver(f.region, f.n, f.ask.Fixed, f.ask.Seed)
	s.lp.spare = f.ask.effort().allowance()
	s.pool.kept = f.kept
	return s
}

// Widest is the best of the optima.
func (f *Optima) Widest() Layout { return f.widest() }

func (f *Optima) layWidest() Layout {
	switch {
	case f.n == len(f.ask.Fixed):
		return f.region.finished(f.ask.Fixed, f.ask.Fixed, 0)
	case f.n == 1:
		return f.region.finished([]plane.Point{f.region.deepest()}, nil, 0)
	}
	return f.solver().layout(f.ask.Fixed, f.starts)
}
