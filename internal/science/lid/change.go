package lid

import "math"

// change takes one of the best optima and disturbs it.
func (s *solver) change() {
	o := &s.pool.kept[s.rng.IntN(min(elites, len(s.pool.kept)))]
	copy(s.x[:s.free], o.x)
	copy(s.y[:s.free], o.y)
	switch u := s.rng.Float64(); {
	case u < 0.5:
		s.moveToHoles(o.t)
	case u < 0.7:
		s.jitter(s.between(0.05, 0.4))
	case u < 0.87:
		s.scrambleDisc()
	default:
		s.shiftPart()
	}
}

// moveToHoles moves one to three points, half the time ones in many contacts,
// into the largest holes that some random probes find.
func (s *solver) moveToHoles(t float64) {
	for range 1 + s.rng.IntN(min(3, s.free)) {
		i := s.rng.IntN(s.free)
		if s.rng.IntN(2) == 0 {
			for range 3 {
				if j := s.rng.IntN(s.free); s.contacts(j, t) > s.contacts(i, t) {
					i = j
				}
			}
		}
		s.intoHole(i, 20+s.rng.IntN(150))
	}
	s.jitter(0.02)
}

// contacts counts the points that hold point i at spacing t.
func (s *solver) contacts(i int, t float64) int {
	near := t * (1 + 1e-6)
	count := 0
	for j := range s.n {
		dx, dy := s.x[i]-s.x[j], s.y[i]-s.y[j]
		if j != i && float64(dx*dx)+float64(dy*dy) <= float64(near*near) {
			count++
		}
	}
	return count
}

// intoHole puts point i at that of the random probes with the most distance
// to all other points.
func (s *solver) intoHole(i, probes int) {
	best, bx, by := -1.0, s.x[i], s.y[i]
	for range probes {
		x := s.lo.X + float64(s.rng.Float64()*(s.hi.X-s.lo.X))
		y := s.lo.Y + float64(s.rng.Float64()*(s.hi.Y-s.lo.Y))
		q := math.Inf(1)
		for j := range s.n {
			if j == i {
				continue
			}
			dx, dy := x-s.x[j], y-s.y[j]
			if d := float64(dx*dx) + float64(dy*dy); d < q {
				q = d
				if q <= best {
					break
				}
			}
		}
		if q > best && s.slack(x, y) >= 0 {
			best, bx, by = q, x, y
		}
	}
	s.x[i], s.y[i] = bx, by
}

func (s *solver) jitter(size float64) {
	for i := range s.free {
		s.x[i] += float64(size * s.bell())
		s.y[i] += float64(size * s.bell())
	}
}

// scrambleDisc lays the points of a disc anew at random places of the disc.
func (s *solver) scrambleDisc() {
	cx, cy := s.randomPoint()
	r := s.between(0.8, 2)
	for i := range s.free {
		dx, dy := s.x[i]-cx, s.y[i]-cy
		if float64(dx*dx)+float64(dy*dy) > float64(r*r) {
			continue
		}
		ux, uy := s.direction()
		f := r * math.Sqrt(s.rng.Float64())
		s.x[i], s.y[i] = cx+float64(f*ux), cy+float64(f*uy)
	}
	s.jitter(0.02)
}

// shiftPart moves, or mirrors along the cut, everything beyond a line across
// the region.
func (s *solver) shiftPart() {
	ux, uy := 1.0, 0.0
	switch s.rng.IntN(3) {
	case 1:
		ux, uy = 0, 1
	case 2:
		ux, uy = s.direction()
	}
	px, py := s.randomPoint()
	by := s.between(-0.6, 0.6)
	mirror := s.rng.IntN(2) == 0
	for i := range s.free {
		dx, dy := s.x[i]-px, s.y[i]-py
		if float64(dx*ux)+float64(dy*uy) < 0 {
			continue
		}
		along := float64(dy*ux) - float64(dx*uy)
		move := by
		if mirror {
			// The middle of the box goes to itself.
			mid := float64(px*uy) - float64(py*ux)
			move = 2 * (mid - along)
		}
		s.x[i] -= float64(move * uy)
		s.y[i] += float64(move * ux)
	}
	s.jitter(0.03)
}
