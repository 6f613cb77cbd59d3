package lid

import "math"

// rowSet is the list of rows of one linear program before they enter the
// tableau: pairs first, then borders.
type rowSet struct {
	pairs []pairRow
	walls []wallRow
	force []float64
}

type pairRow struct {
	i, j   int32
	d      float64
	ux, uy float64 // unit vector from j to i
}

type wallRow struct {
	i      int32
	s      float64
	gx, gy float64
}

const (
	firstReach = 0.1   // first bound on a move, in spacings
	leastReach = 0.03  // later bound while the steps succeed
	stopGain   = 4e-12 // below this a gain is the noise of the arithmetic
	// searchGain ends a climb in the search. Where no border bends outwards the
	// next gain is about the square of the last.
	searchGain = 1e-5
	tinyReach  = 1e-9
	moreLPs    = 120
)

const (
	// lagGains is how many of its last gains a start may lag behind the worst
	// of the elites before it is dropped: gains shrink fast. Of starts that
	// end at the best, measured, about one in forty lags so.
	lagGains = 2
	// poorOutlook is by how much of that a start's outlook may lag before
	// the first program.
	poorOutlook = 0.01
)

// climb runs the sequence of linear programs from the current points: each
// maximises the least linearised distance over moves of at most reach. A
// distance is a convex function, so its tangent never overstates it, and each
// step is a gain; one below enough is the last. Returns the least distance
// reached; false where the start was given up for being behind floor (pass
// zero to never give up).
func (s *solver) climb(reach, floor, enough float64) (float64, bool) {
	t := s.least(s.x, s.y)
	start := reach
	for range moreLPs {
		if s.lp.work >= s.lp.spare {
			break
		}
		s.collect(t, reach)
		s.program(reach)
		s.tryMoves()
		if s.curved && !s.project(s.tx, s.ty) {
			reach /= 4
			if reach < tinyReach {
				break
			}
			continue
		}
		got := s.least(s.tx, s.ty)
		gain := got - t
		if gain <= 0 {
			if !s.curved && gain > -stopGain || reach < tinyReach {
				break
			}
			reach /= 4
			continue
		}
		copy(s.x[:s.free], s.tx[:s.free])
		copy(s.y[:s.free], s.ty[:s.free])
		t = got
		if floor-t > lagGains*gain || floor > 0 && s.goingBack(t) {
			return t, false
		}
		if gain < enough {
			break
		}
		reach = s.nextReach(reach, start, gain)
	}
	return t, true
}

func (s *solver) nextReach(reach, start, gain float64) float64 {
	if reach < leastReach { // recovering after a curved border
		return min(2*reach, start)
	}
	return min(reach, max(8*gain, leastReach))
}

// collect lists the pairs and borders that moves of at most reach can touch.
func (s *solver) collect(t, reach float64) {
	const both = 2.83 // two moves along the diagonal of the box of moves
	far := t + float64(both*reach)
	if c := 2 * t; c < far && c > t {
		far = c
	}
	s.rows.pairs = s.rows.pairs[:0]
	for i := range s.free {
		xi, yi := s.x[i], s.y[i]
		for j := i + 1; j < s.n; j++ {
			dx, dy := xi-s.x[j], yi-s.y[j]
			q := float64(dx*dx) + float64(dy*dy)
			if q > float64(far*far) {
				continue
			}
			row := pairRow{i: int32(i), j: int32(j), d: math.Sqrt(q), ux: 1}
			if row.d > 1e-12 {
				row.ux, row.uy = dx/row.d, dy/row.d
			} else {
				row.ux, row.uy = s.direction()
			}
			s.rows.pairs = append(s.rows.pairs, row)
		}
	}
	s.rows.walls = s.rows.walls[:0]
	for k := range s.rules {
		r := &s.rules[k]
		for i := range s.free {
			if r.clearOf(s.x[i], s.y[i], 1.5*reach) {
				continue
			}
			v, gx, gy := r.at(s.x[i], s.y[i])
			if v < 1.5*reach {
				s.rows.walls = append(s.rows.walls, wallRow{int32(i), v, gx, gy})
			}
		}
	}
}

// program fills and solves the linear program over the collected rows.
func (s *solver) program(reach float64) {
	nv := 2 * s.free
	p := &s.lp
	pairs, walls := s.rows.pairs, s.rows.walls
	p.begin(nv, len(pairs)+len(walls))
	s.pressed()
	for i := range s.free {
		s.bounds(2*i, s.x[i], reach, s.lo.X, s.hi.X)
		s.bounds(2*i+1, s.y[i], reach, s.lo.Y, s.hi.Y)
	}
	for k := range pairs {
		q := &pairs[k]
		p.beta[k] = q.d + s.noise()
		p.put(k, int(2*q.i), q.ux)
		p.put(k, int(2*q.i+1), q.uy)
		if int(q.j) < s.free {
			p.put(k, int(2*q.j), -q.ux)
			p.put(k, int(2*q.j+1), -q.uy)
		}
		*at(p.row(k), nv) = -1
	}
	for k := range walls {
		q, r := &walls[k], len(pairs)+k
		p.beta[r] = max(q.s, 0) + s.noise()
		p.put(r, int(2*q.i), q.gx)
		p.put(r, int(2*q.i+1), q.gy)
		*at(p.row(r), nv+1) = 1
	}
	p.solve(len(pairs))
}

// pressed adds up how each point is pressed by the others, near ones most.
func (s *solver) pressed() {
	s.rows.force = grown(s.rows.force, 2*s.n)
	f := s.rows.force
	clear(f)
	for k := range s.rows.pairs {
		q := &s.rows.pairs[k]
		w := 1 / float64(q.d*q.d*q.d*q.d+1e-30)
		f[2*q.i] += float64(w * q.ux)
		f[2*q.i+1] += float64(w * q.uy)
		f[2*q.j] -= float64(w * q.ux)
		f[2*q.j+1] -= float64(w * q.uy)
	}
}

// bounds bounds a move by the reach and the region's box, and starts it at
// the bound to which the point is pressed.
func (s *solver) bounds(v int, at, reach, lo, hi float64) {
	s.lp.lo[v] = min(max(-reach, lo-at), 0)
	s.lp.hi[v] = max(min(reach, hi-at), 0)
	s.lp.corner(v, v, s.rows.force[v] > 0)
}

// noise keeps rows from being exactly dependent, far below stopGain.
func (s *solver) noise() float64 { return 1e-14 + float64(s.rng.Float64()*1e-12) }

// tryMoves writes the moved points to the trial arrays.
func (s *solver) tryMoves() {
	v := s.lp.val
	if s.sym != nil {
		s.sym.average(v, s.partner)
	}
	for i := range s.free {
		s.tx[i] = min(max(s.x[i]+v[2*i], s.lo.X), s.hi.X)
		s.ty[i] = min(max(s.y[i]+v[2*i+1], s.lo.Y), s.hi.Y)
	}
}
