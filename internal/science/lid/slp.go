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
	tinyReach  = 1e-9
	moreLPs    = 120
)

// giveUp tells after each of the first programs by how much of the worst
// kept optimum a start may lag before it is dropped.
var giveUp = [5]float64{0.08, 0.03, 0.012, 0.004, 0.001}

// climb runs the sequence of linear programs from the current points: each
// maximises the least linearised distance over moves of at most reach. A
// distance is a convex function, so its tangent never overstates it, and each
// step is a gain. Returns the least distance reached; false where the start
// was given up for being behind floor (pass zero to never give up).
func (s *solver) climb(reach, floor float64) (float64, bool) {
	t := s.least(s.x, s.y)
	start := reach
	for k := range moreLPs {
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
		if k < len(giveUp) && t < floor*(1-giveUp[k]) {
			return t, false
		}
		if floor > 0 && s.goingBack(t) {
			return t, false
		}
		if gain < stopGain {
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
	p.begin(nv, len(s.rows.pairs)+len(s.rows.walls))
	for i := range s.free {
		p.lo[2*i], p.hi[2*i] = max(-reach, s.lo.X-s.x[i]), min(reach, s.hi.X-s.x[i])
		p.lo[2*i+1], p.hi[2*i+1] = max(-reach, s.lo.Y-s.y[i]), min(reach, s.hi.Y-s.y[i])
		for c := 2 * i; c < 2*i+2; c++ {
			p.lo[c], p.hi[c] = min(p.lo[c], 0), max(p.hi[c], 0)
		}
	}
	s.rows.force = grown(s.rows.force, nv)
	clear(s.rows.force)
	for k := range s.rows.pairs {
		q := &s.rows.pairs[k]
		row := p.row(k)
		row[2*q.i], row[2*q.i+1] = q.ux, q.uy
		w := 1 / float64(q.d*q.d*q.d*q.d+1e-30)
		s.rows.force[2*q.i] += float64(w * q.ux)
		s.rows.force[2*q.i+1] += float64(w * q.uy)
		if int(q.j) < s.free {
			row[2*q.j], row[2*q.j+1] = -q.ux, -q.uy
			s.rows.force[2*q.j] -= float64(w * q.ux)
			s.rows.force[2*q.j+1] -= float64(w * q.uy)
		}
		row[nv] = -1
		p.beta[k] = q.d + s.noise()
	}
	for k := range s.rows.walls {
		q := &s.rows.walls[k]
		row := p.row(len(s.rows.pairs) + k)
		row[2*q.i], row[2*q.i+1] = q.gx, q.gy
		row[nv+1] = 1
		p.beta[len(s.rows.pairs)+k] = max(q.s, 0) + s.noise()
	}
	for c, f := range s.rows.force {
		p.upper[c] = f > 0
	}
	p.solve(len(s.rows.pairs))
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
