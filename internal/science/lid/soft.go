package lid

// lbfgs is a limited-memory quasi-Newton minimiser (Nocedal 1980) with its
// working memory.
type lbfgs struct {
	x, g, nx, ng, dir []float64
	s, y              [memory][]float64
	rho, alpha        [memory]float64
}

const (
	memory    = 6
	softSteps = 60
	softStop  = 1e-3 // relative decrease; further convergence ends on saddles
)

func (b *lbfgs) grow(n int) {
	for _, v := range []*[]float64{&b.x, &b.g, &b.nx, &b.ng, &b.dir} {
		*v = make([]float64, n)
	}
	for k := range memory {
		b.s[k], b.y[k] = make([]float64, n), make([]float64, n)
	}
}

// relax presses soft discs of the given diameter apart and into the region,
// and stops early: a target near the best spacing and loose convergence keep
// the points away from the symmetric saddles that full convergence ends on.
func (s *solver) relax(diameter float64) {
	b := &s.soft
	for i := range s.free {
		b.x[2*i], b.x[2*i+1] = s.x[i], s.y[i]
	}
	e := s.energy(b.x, b.g, diameter)
	kept, next := 0, 0
	for range softSteps {
		if e < 1e-18 {
			break
		}
		slope := b.direction(kept, next)
		if slope >= 0 {
			break
		}
		ne, ok := s.lineSearch(e, slope, diameter)
		if !ok {
			break
		}
		if b.remember(next) {
			next = (next + 1) % memory
			kept = min(kept+1, memory)
		}
		b.x, b.nx = b.nx, b.x
		b.g, b.ng = b.ng, b.g
		done := e-ne < softStop*e
		e = ne
		if done {
			break
		}
	}
	for i := range s.free {
		s.x[i], s.y[i] = b.x[2*i], b.x[2*i+1]
	}
}

// lineSearch halves the step until it gains enough (Armijo).
func (s *solver) lineSearch(e, slope, diameter float64) (float64, bool) {
	b := &s.soft
	step := 1.0
	for range 12 {
		for k := range b.x {
			b.nx[k] = b.x[k] + float64(step*b.dir[k])
		}
		ne := s.energy(b.nx, b.ng, diameter)
		if ne <= e+float64(1e-4*step*slope) {
			return ne, true
		}
		// The minimum of the parabola through what is known.
		q := -float64(slope*step) / (2 * ((ne-e)/step - slope))
		step = min(max(q, 0.1*step), 0.5*step)
	}
	return e, false
}

// direction leaves the search direction in dir and returns its slope.
func (b *lbfgs) direction(kept, next int) float64 {
	for k, g := range b.g {
		b.dir[k] = -g
	}
	for m := 1; m <= kept; m++ {
		k := (next - m + memory) % memory
		b.alpha[k] = float64(b.rho[k] * dot(b.s[k], b.dir))
		axpy(b.dir, b.y[k], -b.alpha[k])
	}
	scale := 0.0
	if kept > 0 {
		k := (next - 1 + memory) % memory
		scale = 1 / (b.rho[k] * dot(b.y[k], b.y[k]))
	} else {
		// The soft discs' curvature is about the diameter squared, near 1.
		scale = 0.5
	}
	for k := range b.dir {
		b.dir[k] *= scale
	}
	for m := kept; m >= 1; m-- {
		k := (next - m + memory) % memory
		beta := float64(b.rho[k] * dot(b.y[k], b.dir))
		axpy(b.dir, b.s[k], b.alpha[k]-beta)
	}
	return dot(b.g, b.dir)
}

// remember keeps the last step and change of gradient; false where they tell
// of no curvature.
func (b *lbfgs) remember(k int) bool {
	sy := 0.0
	s, y := b.s[k], b.y[k]
	for i := range s {
		s[i] = b.nx[i] - b.x[i]
		y[i] = b.ng[i] - b.g[i]
		sy += float64(s[i] * y[i])
	}
	if sy <= 1e-12*dot(y, y) {
		return false
	}
	b.rho[k] = 1 / sy
	return true
}

// dot adds in four lanes, in an order that is the same everywhere.
func dot(a, b []float64) float64 {
	var s0, s1, s2, s3 float64
	for len(a) >= 4 && len(b) >= 4 {
		s0 += float64(a[0] * b[0])
		s1 += float64(a[1] * b[1])
		s2 += float64(a[2] * b[2])
		s3 += float64(a[3] * b[3])
		a, b = a[4:], b[4:]
	}
	b = b[:len(a)]
	for k, v := range a {
		s0 += float64(v * b[k])
	}
	return (s0 + s1) + (s2 + s3)
}

func axpy(a, b []float64, f float64) {
	for len(a) >= 4 && len(b) >= 4 {
		a[0] += float64(f * b[0])
		a[1] += float64(f * b[1])
		a[2] += float64(f * b[2])
		a[3] += float64(f * b[3])
		a, b = a[4:], b[4:]
	}
	b = b[:len(a)]
	for k := range a {
		a[k] += float64(f * b[k])
	}
}

// neighbours lists the pairs that can touch, until some point has moved too
// far for the list to be sure.
type neighbours struct {
	pairs [][2]int32 // the first of each is free
	at    []float64  // where the points were
	reach float64
}

// skin is how much beyond touching a pair is still listed, in spacings.
const skin = 0.5

// refresh lists the pairs anew if the list is for another diameter or a point
// has moved so far along an axis that two such moves, each along a diagonal,
// could close the skin: 2·√2·0.35 < 1.
func (b *neighbours) refresh(s *solver, x []float64, diameter float64) {
	const mostMove = skin * 0.35
	if b.reach == diameter && len(b.at) == len(x) {
		moved := false
		at := b.at[:len(x)]
		for k, v := range x {
			if d := v - at[k]; d > mostMove || d < -mostMove {
				moved = true
				break
			}
		}
		if !moved {
			return
		}
	}
	b.reach = diameter
	b.at = append(b.at[:0], x...)
	b.pairs = b.pairs[:0]
	far := diameter + skin
	ff := float64(far * far)
	for i := range s.free {
		xi, yi := x[2*i], x[2*i+1]
		for j := i + 1; j < s.free; j++ {
			dx, dy := xi-x[2*j], yi-x[2*j+1]
			if float64(dx*dx)+float64(dy*dy) < ff {
				b.pairs = append(b.pairs, [2]int32{int32(i), int32(j)})
			}
		}
		for j := s.free; j < s.n; j++ {
			dx, dy := xi-s.x[j], yi-s.y[j]
			if float64(dx*dx)+float64(dy*dy) < ff {
				b.pairs = append(b.pairs, [2]int32{int32(i), int32(j)})
			}
		}
	}
}

// energy is the sum over pairs of max(0, D²-r²)²/4 and over borders of
// 2D² slack² where overstepped, with its gradient.
func (s *solver) energy(x, g []float64, diameter float64) float64 {
	dd := float64(diameter * diameter)
	clear(g)
	e := 0.0
	s.near.refresh(s, x, diameter)
	for _, p := range s.near.pairs {
		i, j := int(p[0]), int(p[1])
		if j >= s.free {
			dx, dy := x[2*i]-s.x[j], x[2*i+1]-s.y[j]
			if q := dd - float64(dx*dx) - float64(dy*dy); q > 0 {
				e += float64(q*q) / 4
				g[2*i] -= float64(q * dx)
				g[2*i+1] -= float64(q * dy)
			}
			continue
		}
		dx, dy := x[2*i]-x[2*j], x[2*i+1]-x[2*j+1]
		q := dd - float64(dx*dx) - float64(dy*dy)
		if q <= 0 {
			continue
		}
		e += float64(q*q) / 4
		fx, fy := float64(q*dx), float64(q*dy)
		g[2*i] -= fx
		g[2*i+1] -= fy
		g[2*j] += fx
		g[2*j+1] += fy
	}
	for i := range s.free {
		we, wx, wy := s.wallEnergy(x[2*i], x[2*i+1], dd)
		e += we
		g[2*i] += wx
		g[2*i+1] += wy
	}
	return e
}

func (s *solver) wallEnergy(x, y, dd float64) (e, gx, gy float64) {
	add := func(v, nx, ny float64) {
		e += float64(2 * dd * float64(v*v))
		gx += float64(4 * dd * float64(v*nx))
		gy += float64(4 * dd * float64(v*ny))
	}
	if v := x - s.lo.X; v < 0 {
		add(v, 1, 0)
	} else if v := s.hi.X - x; v < 0 {
		add(v, -1, 0)
	}
	if v := y - s.lo.Y; v < 0 {
		add(v, 0, 1)
	} else if v := s.hi.Y - y; v < 0 {
		add(v, 0, -1)
	}
	for k := range s.rules {
		if v, nx, ny := s.rules[k].at(x, y); v < 0 {
			add(v, nx, ny)
		}
	}
	return e, gx, gy
}
