package lid

import "math"

// pairUp makes the current points symmetric: the first of each two keeps its
// place and the second becomes its image; a few stand on the axis. Called at
// each start of a symmetric search.
func (s *solver) pairUp() {
	onAxis := s.free % 2
	if s.sym.xx*s.sym.yy < 0 { // a mirror has a line of places, a half-turn one point
		onAxis += 2 * s.rng.IntN(3)
	}
	onAxis = min(onAxis, s.free)
	s.partner = grown(s.partner, s.free)
	for i := range s.free - onAxis {
		s.partner[i] = int32(i ^ 1)
	}
	for i := s.free - onAxis; i < s.free; i++ {
		s.partner[i] = int32(i)
	}
	s.settle()
}

// settle puts each point's partner exactly on its image.
func (s *solver) settle() {
	for i, j := range s.partner {
		switch {
		case int(j) == i:
			x, y := s.sym.of(s.x[i], s.y[i])
			s.x[i], s.y[i] = (s.x[i]+x)/2, (s.y[i]+y)/2
		case int(j) > i:
			s.x[j], s.y[j] = s.sym.of(s.x[i], s.y[i])
		}
	}
}

// partners finds each point's image among the points; nil where one is
// missing. Optima in the pool keep their points but not who pairs with whom.
func (s *solver) partners() []int32 {
	out := make([]int32, s.free)
	for i := range s.free {
		x, y := s.sym.of(s.x[i], s.y[i])
		best := math.Inf(1)
		for j := range s.free {
			dx, dy := x-s.x[j], y-s.y[j]
			if d := float64(dx*dx) + float64(dy*dy); d < best {
				best, out[i] = d, int32(j)
			}
		}
	}
	for i, j := range out {
		if int(out[j]) != i {
			return nil
		}
	}
	return out
}
