package sheet

import (
	"cmp"
	"slices"
)

// pairs are the distances to measure after marking and after drilling: those
// given, or each hole's nearest neighbour and the two that lie farthest apart.
func (l Lid) pairs() []Pair {
	if len(l.Pairs) > 0 {
		return l.Pairs
	}
	chosen := map[[2]int]bool{}
	var out []Pair
	add := func(p Pair) {
		if key := [2]int{p.A, p.B}; !chosen[key] {
			chosen[key] = true
			out = append(out, p)
		}
	}
	all := l.allPairs()
	for _, h := range l.Holes {
		for _, p := range all {
			if p.A == h.N || p.B == h.N {
				add(p)
				break
			}
		}
	}
	if len(all) > 0 {
		add(all[len(all)-1])
	}
	slices.SortStableFunc(out, byHole)
	return out
}

// allPairs are all distances between two holes, the shortest first.
func (l Lid) allPairs() []Pair {
	var out []Pair
	for i, a := range l.Holes {
		for _, b := range l.Holes[i+1:] {
			out = append(out, Pair{A: min(a.N, b.N), B: max(a.N, b.N), MM: a.At().Distance(b.At())})
		}
	}
	slices.SortStableFunc(out, func(p, q Pair) int { return cmp.Or(cmp.Compare(p.MM, q.MM), byHole(p, q)) })
	return out
}

func byHole(p, q Pair) int { return cmp.Or(cmp.Compare(p.A, q.A), cmp.Compare(p.B, q.B)) }
