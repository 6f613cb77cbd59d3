package lid

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"

	"rootbell/internal/base/plane"
)

// Effort is how many starts a search makes for each point it lays.
type Effort int

// Full is the effort for a lid that will be drilled, Quick that for a page
// which answers while someone types.
const (
	Full  Effort = 30
	Quick Effort = 4
)

// starts is the stopping rule, which knows nothing of the answer: Effort
// starts for each hole and at least forty; beyond forty holes (below Full:
// beyond twenty-four), where each start takes longer, fewer in proportion to
// the square of the count.
func (e Effort) starts(n int) int {
	whole := 40
	if e < Full {
		whole = 24
	}
	if n > whole {
		return max(int(e)*whole*whole*whole/(n*n), 8)
	}
	return max(int(e)*n, 40)
}

// allowance bounds the arithmetic of all linear programs of one search, in quads
// of a tableau. It is more than eighty holes need; far beyond them the last
// starts stay as the pressed discs left them.
func (e Effort) allowance() int64 { return int64(e) * 5e7 }

// polishShare is the part of the full allowance that the last polish has.
const polishShare = 16

// Search is what a search needs besides the region.
type Search struct {
	Fixed  []plane.Point // holes that are there already and stay
	Effort Effort        // zero counts as Full
	Seed   uint64
}

func (o Search) effort() Effort {
	if o.Effort <= 0 {
		return Full
	}
	return o.Effort
}

// Layout is where holes go: fixed ones first, in the order given, the others
// from the bottom up, each row from the left.
type Layout struct {
	// Points are rounded to a hundredth of a millimetre, inwards where the
	// nearest would leave the region.
	Points []plane.Point
	// Measured is what separate code read off the rounded points.
	Measured Measure
	// Exact and ExactSpacing are the points before rounding, in the same
	// order, and the least distance between two of them.
	Exact        []plane.Point
	ExactSpacing float64
	// Starts counts the starts made.
	Starts int
}

// Spread is the widest of the Optima.
func (r *Region) Spread(ctx context.Context, n int, o Search) (Layout, error) {
	f, err := r.Optima(ctx, n, o)
	if err != nil {
		return Layout{}, err
	}
	return f.Widest(), nil
}

func (r *Region) checkCount(n int, fixed []plane.Point) error {
	switch {
	case n < 1:
		return errors.New("there must be at least one hole")
	case n > pointReach:
		return fmt.Errorf("more than %d holes are not laid", pointReach)
	case n < len(fixed):
		return fmt.Errorf("%d holes are fixed, more than the %d wanted", len(fixed), n)
	}
	for k, f := range fixed {
		if !f.Finite() || math.Abs(f.X) > hugeMM || math.Abs(f.Y) > hugeMM {
			return fmt.Errorf("fixed hole %d has no usable place", k+1)
		}
	}
	return nil
}

// search makes the given number of starts, or fewer where the wanted spacing
// (in the solver's units) is reached, and leaves the optima in the pool.
func (s *solver) search(ctx context.Context, starts int, wanted float64) (int, error) {
	for k := range starts {
		if err := ctx.Err(); err != nil {
			return k, err
		}
		if s.lp.work >= s.lp.spare && len(s.pool.kept) > 0 {
			return k, nil
		}
		s.begin(k)
		s.fromHere()
		if s.best >= wanted {
			return k + 1, nil
		}
	}
	if len(s.pool.kept) == 0 {
		// Every start was lost to borders: the region is next to nothing.
		d := s.inward(s.region.deepest())
		for i := range s.free {
			s.x[i], s.y[i] = d.X, d.Y
		}
		s.pool.add(0, s.x, s.y)
	}
	return starts, nil
}

// fromHere takes the current points to a local optimum and keeps it.
func (s *solver) fromHere() {
	outlook := s.relax(s.guess() * s.between(0.99, 1.03))
	if s.sym != nil {
		s.settle()
	}
	floor := s.pool.floor()
	if outlook < floor*(1-poorOutlook) || !s.project(s.x, s.y) {
		return
	}
	enough := searchGain
	if s.curved {
		enough = stopGain
	}
	t, ok := s.climb(firstReach, floor, enough)
	if ok && s.feasible() {
		s.best = max(s.best, t)
		s.pool.add(t, s.x, s.y)
	}
}

// layout polishes the best optimum and turns it into millimetres. An optimum
// that turns out to overstep a border, as where two all but meet, makes room
// for the next.
func (s *solver) layout(fixed []plane.Point, starts int) Layout {
	for k := range s.pool.kept {
		s.take(k)
		s.lp.work = 0
		s.lp.spare = Full.allowance() / polishShare
		s.polish()
		s.centreRattlers()
		l := s.region.finished(s.canonical(fixed), fixed, starts)
		if s.region.holdsAll(l.Points[len(fixed):]) {
			return l
		}
	}
	all := slices.Clone(fixed)
	for range s.free {
		all = append(all, s.region.deepest())
	}
	return s.region.finished(all, fixed, starts)
}

func (r *Region) holdsAll(points []plane.Point) bool {
	for _, p := range points {
		if !r.Contains(p) {
			return false
		}
	}
	return true
}

func (s *solver) take(k int) {
	o := &s.pool.kept[k]
	copy(s.x[:s.free], o.x)
	copy(s.y[:s.free], o.y)
	copy(s.tx, s.x)
	copy(s.ty, s.y)
}

// polish runs the programs again from fresh reaches, which cures what a
// rounded border stopped early.
func (s *solver) polish() {
	t := s.least(s.x, s.y)
	for range 3 {
		got, _ := s.climb(leastReach, 0, stopGain)
		if got <= t+stopGain {
			return
		}
		t = got
	}
}
