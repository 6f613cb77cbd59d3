package lid

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/bits"
	"slices"

	"rootbell/internal/base/plane"
)

// Chosen is the answer to which k of the given holes lie furthest apart.
type Chosen struct {
	Holes   []int   // numbers of the chosen holes, from 0, rising
	Spacing float64 // least distance between two of them, mm; 0 for one
	// Proved tells that no other choice has a larger least distance. Where it
	// is false the node limit was met first: the best found is given, and
	// Bound is the distance that no choice exceeds.
	Proved bool
	Bound  float64
	Nodes  int // nodes of the search tree over all probes
}

// chooseReach is how many holes Choose takes: one machine word a row.
const chooseReach = 64

// nodeLimit ends a search that grows too large, at some seconds.
const nodeLimit = 10_000_000

// Choose picks k of the holes, the fixed ones (by number) among them, so that
// the least distance between two is as large as can be: exactly, by asking
// for ever larger distances whether k holes are all that far apart, which is
// a clique in the graph of far pairs (bounded by greedy colouring, Tomita and
// Seki 2003). Distances between two fixed holes cap the answer like all
// others.
func Choose(ctx context.Context, holes []plane.Point, k int, fixed []int) (Chosen, error) {
	if err := checkChoice(holes, k, fixed); err != nil {
		return Chosen{}, err
	}
	c := newChooser(ctx, holes, k, fixed)
	if k == 1 {
		one := 0
		if len(fixed) == 1 {
			one = fixed[0]
		}
		return Chosen{Holes: []int{one}, Proved: true}, nil
	}
	c.greedy()
	c.bisect()
	if c.err != nil {
		return Chosen{}, c.err
	}
	return c.answer(), nil
}

func checkChoice(holes []plane.Point, k int, fixed []int) error {
	switch {
	case len(holes) > chooseReach:
		return fmt.Errorf("at most %d holes can be chosen from, not %d", chooseReach, len(holes))
	case k < 1 || k > len(holes):
		return fmt.Errorf("cannot choose %d of %d holes", k, len(holes))
	case len(fixed) > k:
		return errors.New("more holes are fixed than are to be chosen")
	}
	for i, f := range fixed {
		if f < 0 || f >= len(holes) || slices.Contains(fixed[:i], f) {
			return fmt.Errorf("fixed hole number %d is not one of the holes, or is given twice", f)
		}
	}
	for i, h := range holes {
		if !h.Finite() {
			return fmt.Errorf("hole %d has no usable place", i)
		}
	}
	return nil
}

type chooser struct {
	ctx    context.Context
	err    error
	m, k   int
	rank   [][]int32 // index of each pair's distance among the distinct ones
	dist   []float64 // distinct distances, rising
	order  []int     // holes in the order of the words' bits
	fixed  uint64
	far    [chooseReach]uint64
	best   []int
	low    int // index of the best distance reached
	high   int // least index known to be out of reach
	nodes  int
	proved bool
	stack  []int
}

// mergeMM is how close two distances are to count as one.
const mergeMM = 1e-9

func newChooser(ctx context.Context, holes []plane.Point, k int, fixed []int) *chooser {
	c := &chooser{ctx: ctx, m: len(holes), k: k, low: -1, proved: true}
	c.sortByCrowding(holes)
	for b, h := range c.order {
		if slices.Contains(fixed, h) {
			c.fixed |= 1 << b
		}
	}
	c.measure(holes)
	c.high = len(c.dist)
	return c
}

// sortByCrowding numbers the holes with the most near neighbours first.
func (c *chooser) sortByCrowding(holes []plane.Point) {
	near := make([]float64, c.m)
	c.order = make([]int, c.m)
	for i, p := range holes {
		c.order[i] = i
		for j, q := range holes {
			if i != j {
				d := p.To(q)
				near[i] += 1 / (float64(d*d) + mergeMM)
			}
		}
	}
	slices.SortStableFunc(c.order, func(a, b int) int {
		switch {
		case near[a] > near[b]:
			return -1
		case near[a] < near[b]:
			return 1
		}
		return 0
	})
}

func (c *chooser) measure(holes []plane.Point) {
	type pair struct {
		d    float64
		i, j int
	}
	var pairs []pair
	for i := range c.m {
		for j := range i {
			pairs = append(pairs, pair{holes[c.order[i]].To(holes[c.order[j]]), i, j})
		}
	}
	slices.SortStableFunc(pairs, func(a, b pair) int {
		switch {
		case a.d < b.d:
			return -1
		case a.d > b.d:
			return 1
		}
		return 0
	})
	c.rank = make([][]int32, c.m)
	for i := range c.rank {
		c.rank[i] = make([]int32, c.m)
	}
	for _, p := range pairs {
		if n := len(c.dist); n == 0 || p.d > c.dist[n-1]+mergeMM {
			c.dist = append(c.dist, p.d)
		}
		r := int32(len(c.dist) - 1)
		c.rank[p.i][p.j], c.rank[p.j][p.i] = r, r
	}
}

// accept keeps a choice (as bits) if it reaches further than the best.
func (c *chooser) accept(chosen []int) {
	low := len(c.dist)
	for i, a := range chosen {
		for _, b := range chosen[:i] {
			low = min(low, int(c.rank[a][b]))
		}
	}
	if low > c.low {
		c.low = low
		c.best = append(c.best[:0], chosen...)
	}
}

// greedy gives a first choice: from each start the farthest hole is added
// until there are enough.
func (c *chooser) greedy() {
	for start := range c.m {
		var chosen []int
		for b := range c.m {
			if c.fixed>>b&1 == 1 {
				chosen = append(chosen, b)
			}
		}
		if c.fixed>>start&1 == 0 && len(chosen) < c.k {
			chosen = append(chosen, start)
		}
		for len(chosen) < c.k {
			chosen = append(chosen, c.farthest(chosen))
		}
		c.accept(chosen)
	}
}

func (c *chooser) farthest(chosen []int) int {
	best, at := int32(-1), 0
	for b := range c.m {
		if slices.Contains(chosen, b) {
			continue
		}
		least := int32(math.MaxInt32)
		for _, a := range chosen {
			least = min(least, c.rank[a][b])
		}
		if least > best {
			best, at = least, b
		}
	}
	return at
}

// bisect gallops upwards from what is reached, then halves what is left.
func (c *chooser) bisect() {
	for jump := 1; c.low+1 < c.high && c.err == nil; jump *= 2 {
		ok, known := c.probe(min(c.low+jump, c.high-1))
		if !known {
			break
		}
		if !ok {
			break
		}
	}
	for c.low+1 < c.high && c.err == nil {
		if _, known := c.probe(c.low + (c.high-c.low)/2); !known {
			c.proved = false
			return
		}
	}
}

// probe asks whether k holes have all distances of at least rank r, and
// narrows low or high; known is false where the node limit was met.
func (c *chooser) probe(r int) (ok, known bool) {
	all := ^uint64(0) >> (64 - c.m)
	for i := range c.m {
		c.far[i] = 0
		for j := range c.m {
			if i != j && int(c.rank[i][j]) >= r {
				c.far[i] |= 1 << j
			}
		}
	}
	cand := all
	c.stack = c.stack[:0]
	for f := c.fixed; f != 0; f &= f - 1 {
		b := bits.TrailingZeros64(f)
		if f&(f-1)&^c.far[b] != 0 {
			c.high = min(c.high, r)
			return false, true
		}
		cand &= c.far[b]
		c.stack = append(c.stack, b)
	}
	limit := c.nodes + nodeLimit
	switch found := c.extend(cand, c.k-len(c.stack), limit); {
	case found:
		return true, true
	case c.nodes >= limit || c.err != nil:
		return false, false
	}
	c.high = min(c.high, r)
	return false, true
}

// extend looks for a clique of the wanted size among the candidates.
func (c *chooser) extend(cand uint64, wanted, limit int) bool {
	if wanted == 0 {
		c.accept(c.stack)
		return true
	}
	if bits.OnesCount64(cand) < wanted {
		return false
	}
	c.nodes++
	if c.nodes >= limit {
		return false
	}
	if c.nodes&4095 == 0 && c.ctx.Err() != nil {
		c.err = c.ctx.Err()
		return false
	}
	// Colour classes hold mutually near holes: a clique takes one of each.
	// Only holes of colours beyond the first wanted-1 need be branched on.
	var order [chooseReach]uint8
	count := c.colour(cand, wanted, &order)
	for n := count - 1; n >= 0; n-- {
		b := int(order[n])
		c.stack = append(c.stack, b)
		if c.extend(cand&c.far[b], wanted-1, limit) {
			return true
		}
		c.stack = c.stack[:len(c.stack)-1]
		cand &^= 1 << b
		if c.nodes >= limit || c.err != nil {
			return false
		}
	}
	return false
}

// colour paints the candidates greedily and lists those whose colour is
// beyond the first wanted-1.
func (c *chooser) colour(cand uint64, wanted int, order *[chooseReach]uint8) int {
	count := 0
	left := cand
	for colour := 1; left != 0; colour++ {
		class := left
		for class != 0 {
			b := bits.TrailingZeros64(class)
			left &^= 1 << b
			class &^= 1<<b | c.far[b]
			if colour >= wanted {
				order[count] = uint8(b)
				count++
			}
		}
	}
	return count
}

func (c *chooser) answer() Chosen {
	out := Chosen{Spacing: c.dist[c.low], Proved: c.proved, Nodes: c.nodes}
	for _, b := range c.best {
		out.Holes = append(out.Holes, c.order[b])
	}
	slices.Sort(out.Holes)
	out.Bound = out.Spacing
	if !c.proved {
		out.Bound = c.dist[c.high-1]
	}
	return out
}
