package sheet

import (
	"cmp"
	"slices"
)

// MeasurePairs are the distances to measure after marking and after drilling:
// those given, or the shortest ones that tie all holes together and the two
// longest, which show a pattern that leans.
func (l Lid) MeasurePairs() []Pair {
	if len(l.Pairs) > 0 {
		return l.Pairs
	}
	all := l.allPairs()
	out := tied(l.Holes, all)
	for i := len(all) - 1; i >= 0 && i >= len(all)-2; i-- {
		if !slices.Contains(out, all[i]) {
			out = append(out, all[i])
		}
	}
	slices.SortStableFunc(out, byHole)
	return out
}

// tied are the shortest pairs that link every hole with every other one: pairs
// are taken by length, but none between holes that are linked already.
func tied(holes []Hole, byLength []Pair) []Pair {
	group := map[int]int{}
	for _, h := range holes {
		group[h.N] = h.N
	}
	var out []Pair
	for _, p := range byLength {
		from, to := group[p.B], group[p.A]
		if from == to {
			continue
		}
		out = append(out, p)
		for n, g := range group {
			if g == from {
				group[n] = to
			}
		}
	}
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
