package lid

import (
	"context"
	"errors"
	"math"
)

// Most is the answer to how many holes fit at a wanted distance.
type Most struct {
	Layout Layout
	Count  int
	// Proved is the number that no layout can exceed, by Bound.
	Proved int
}

// MostAt lays as many points as it finds with at least the wanted distance
// (mm) between any two, up to two hundred; the fixed ones count and stay.
// It gallops from what the area lets expect, one search for each count tried.
func (r *Region) MostAt(ctx context.Context, distance float64, o Search) (Most, error) {
	if !(distance > 0) || math.IsInf(distance, 1) {
		return Most{}, errors.New("the wanted distance must be above zero")
	}
	if err := r.checkCount(max(1, len(o.Fixed)), o.Fixed); err != nil {
		return Most{}, err
	}
	m := Most{Proved: r.provedMost(distance)}
	least, best := max(1, len(o.Fixed)), -1
	guess := min(max(least, r.latticeCount(distance)), pointReach)
	spare := 2 * o.effort().allowance()
	fits := func(n int) (bool, error) {
		l, work, err := r.reach(ctx, n, distance, o, max(spare, o.effort().allowance()/leastShare))
		spare -= work
		if err != nil || !l.keeps(distance, len(o.Fixed)) {
			return false, err
		}
		m.Layout, best = l, n
		return true, nil
	}
	for n := guess; n >= least; n-- {
		ok, err := fits(n)
		if err != nil {
			return Most{}, err
		}
		if ok {
			break
		}
	}
	if best < 0 {
		return Most{}, errors.New("not even the fixed holes keep the wanted distance")
	}
	for best < pointReach && best < m.Proved {
		ok, err := fits(best + 1)
		if err != nil {
			return Most{}, err
		}
		if !ok {
			break
		}
	}
	m.Count = best
	return m, nil
}

// keeps reports whether all distances that a search can change are at least
// the wanted one.
func (l Layout) keeps(distance float64, fixed int) bool {
	for i := fixed; i < len(l.Points); i++ {
		for j := range i {
			if l.Points[i].To(l.Points[j]) < distance-feasibleMM {
				return false
			}
		}
	}
	return true
}

// reach searches for n points and stops as soon as the wanted distance is
// there, with the rounding of the coordinates to spare; the layout is then
// spread no further than that start got.
// spare is the arithmetic it may do, work what it did.
func (r *Region) reach(ctx context.Context, n int, distance float64, o Search, spare int64) (l Layout, work int64, err error) {
	if n <= 1 || n == len(o.Fixed) {
		l, err = r.Spread(ctx, n, o)
		return l, 0, err
	}
	const rounding = 2 * grainMM
	s := newSolver(r, n, o.Fixed, o.Seed)
	s.lp.spare = spare
	starts, err := s.search(ctx, o.effort().starts(n), (distance+rounding)/s.unit)
	if err != nil {
		return Layout{}, 0, err
	}
	work = s.lp.work
	return s.layout(o.Fixed, starts), work, nil
}

// leastShare is the part of a search's allowance that each count tried has at
// least, so that also the last of many is looked at.
const leastShare = 16

// provedMost is the largest count whose bound allows the distance.
func (r *Region) provedMost(distance float64) int {
	hull := r.hull()
	n := 1
	for n < pointReach && boundOn(hull, n+1).Distance >= distance-feasibleMM {
		n++
	}
	return n
}

// latticeCount is how many points the free area lets expect at a distance:
// a hexagonal lattice on the area plus half a spacing along the box's border.
func (r *Region) latticeCount(distance float64) int {
	d := distance
	n := 2/math.Sqrt(3)*r.area/float64(d*d) + float64(r.box.Perimeter()/(2*d)*0.8)
	return max(1, int(math.Min(n, pointReach)))
}
