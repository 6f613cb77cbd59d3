package lid

import (
	"math"
	"slices"
)

// begin writes the k-th start's points: by lot uniform, a lattice, a
// symmetric pattern, or a change of one of the best optima so far.
func (s *solver) begin(k int) {
	s.pcg.Seed(s.seed, uint64(k)+1)
	u := s.rng.Float64()
	switch {
	case u >= 0.6 && len(s.pool.kept) > 0:
		s.change()
	case u < 0.3 || (u >= 0.6 && k%2 == 0):
		s.scatter(0)
	case u < 0.5 || u >= 0.6:
		s.lattice()
	default:
		s.symmetric()
	}
	if s.sym != nil {
		s.pairUp()
	}
}

// scatter lays the free points from the given one on at random.
func (s *solver) scatter(from int) {
	for i := from; i < s.free; i++ {
		s.x[i], s.y[i] = s.randomPoint()
	}
}

// guess is the spacing that the search expects: the best so far, else a
// little less than Oler's inequality allows.
func (s *solver) guess() float64 {
	if s.best > 0 {
		return s.best
	}
	return 0.9
}

type node struct{ x, y, room float64 }

// lattice lays a hexagonal (one in six: square) lattice of about the expected
// spacing over the region and keeps the nodes with the most room.
func (s *solver) lattice() {
	d := s.guess() * s.between(0.93, 1.05)
	h := d * (math.Sqrt(3) / 2) * s.between(0.93, 1.07)
	shift := d / 2
	if s.rng.IntN(6) == 0 {
		h, shift = d*s.between(0.93, 1.07), 0
	}
	cx, cy := 1.0, 0.0
	switch s.rng.IntN(3) {
	case 1:
		cx, cy = 0, 1
	case 2:
		cx, cy = s.direction()
	}
	ox, oy := s.between(0, d), s.between(0, 2*h)
	if s.rng.IntN(2) == 0 {
		ox, oy = s.lo.X, s.lo.Y
	}
	noise := s.between(0, 0.3)
	nodes := s.latticeNodes(d, h, shift, cx, cy, ox, oy, noise)
	jitter := 0.02
	if s.rng.IntN(2) == 0 {
		jitter = 0.1
	}
	k := 0
	for ; k < len(nodes) && k < s.free; k++ {
		s.x[k] = nodes[k].x + float64(jitter*s.bell())
		s.y[k] = nodes[k].y + float64(jitter*s.bell())
	}
	s.scatter(k)
}

// latticeNodes lists lattice nodes in or near the region, most noisy room first,
// leaving out those that coincide with fixed points.
func (s *solver) latticeNodes(d, h, shift, cx, cy, ox, oy, noise float64) []node {
	const most = 4 * pointReach
	w, v := s.hi.X-s.lo.X, s.hi.Y-s.lo.Y
	half := math.Sqrt(float64(w*w)+float64(v*v)) + d + 2*h
	rows, cols := int(half/h)+1, int(half/d)+1
	var out []node
	for r := -rows; r <= rows && len(out) < most; r++ {
		off := 0.0
		if r%2 != 0 {
			off = shift
		}
		for c := -cols; c <= cols; c++ {
			a, b := float64(float64(c)*d)+off, float64(float64(r)*h)
			x, y := ox+float64(cx*a)-float64(cy*b), oy+float64(cy*a)+float64(cx*b)
			if x < s.lo.X-0.3 || x > s.hi.X+0.3 || y < s.lo.Y-0.3 || y > s.hi.Y+0.3 {
				continue
			}
			room := s.slack(x, y)
			if room < -0.4 || s.nearFixed(x, y, 0.6*d) {
				continue
			}
			out = append(out, node{x, y, room + float64(noise*s.bell())})
		}
	}
	slices.SortStableFunc(out, func(a, b node) int {
		switch {
		case a.room > b.room:
			return -1
		case a.room < b.room:
			return 1
		}
		return 0
	})
	return out
}

func (s *solver) nearFixed(x, y, d float64) bool {
	for j := s.free; j < s.n; j++ {
		dx, dy := x-s.x[j], y-s.y[j]
		if float64(dx*dx)+float64(dy*dy) < float64(d*d) {
			return true
		}
	}
	return false
}

// symmetric lays half of the points at random and the rest as their images
// under a half-turn or a mirror of the box.
func (s *solver) symmetric() {
	kind := s.rng.IntN(3)
	s.scatter(0)
	for i := 0; i+1 < s.free; i += 2 {
		x, y := s.x[i], s.y[i]
		if kind != 1 {
			x = -x
		}
		if kind != 2 {
			y = -y
		}
		s.x[i+1], s.y[i+1] = x, y
	}
}
