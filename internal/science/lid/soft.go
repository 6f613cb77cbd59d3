package lid

import (
	"math"

	"rootbell/internal/base/plane"
)

// lbfgs is a limited-memory quasi-Newton minimiser (Nocedal 1980) with its
// working memory. Places are those of the free points; in x and nx the fixed
// ones follow.
type lbfgs struct {
	x, nx, g, ng, dir []plane.Point
	s, y              [memory][]plane.Point
	rho, alpha        [memory]float64
	scale             float64 // of the last step remembered: s·y / y·y
}

const (
	memory    = 3 // more costs as much as the energy and saves no step
	softSteps = 80
	softStop  = 1e-3 // relative decrease; further convergence ends on saddles
	softest   = 1e-18
)

func (b *lbfgs) grow(n, free int) {
	all := make([]plane.Point, 2*n+(3+2*memory)*free)
	part := func(k int) []plane.Point {
		p := all[:k:k]
		all = all[k:]
		return p
	}
	b.x, b.nx = part(n), part(n)
	b.g, b.ng, b.dir = part(free), part(free), part(free)
	for k := range memory {
		b.s[k], b.y[k] = part(free), part(free)
	}
}

// relax presses soft discs of the given diameter apart and into the region,
// and stops early: a target near the best spacing and loose convergence keep
// the points away from the symmetric saddles that full convergence ends on.
// It returns the outlook of where it stopped.
func (s *solver) relax(diameter float64) float64 {
	b := &s.soft
	for i := range s.n {
		p := plane.Point{X: s.x[i], Y: s.y[i]}
		b.x[i], b.nx[i] = p, p
	}
	e := s.energy(b.x, b.g, diameter)
	kept, next := 0, 0
	for range softSteps {
		if e < softest {
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
	for i, p := range b.x[:s.free] {
		s.x[i], s.y[i] = p.X, p.Y
	}
	return s.outlook(b.x, diameter)
}

// lineSearch halves the step until it gains enough (Armijo).
func (s *solver) lineSearch(e, slope, diameter float64) (float64, bool) {
	b := &s.soft
	step := 1.0
	for range 12 {
		x, nx := b.x[:len(b.dir)], b.nx[:len(b.dir)]
		for k, d := range b.dir {
			nx[k] = plane.Point{X: x[k].X + float64(step*d.X), Y: x[k].Y + float64(step*d.Y)}
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
		b.dir[k] = plane.Point{X: -g.X, Y: -g.Y}
	}
	for m := 1; m <= kept; m++ {
		k := (next - m + memory) % memory
		b.alpha[k] = float64(b.rho[k] * dot(b.s[k], b.dir))
		axpy(b.dir, b.y[k], -b.alpha[k])
	}
	// The soft discs' curvature is about the diameter squared, near 1.
	scale := 0.5
	if kept > 0 {
		scale = b.scale
	}
	for k := range b.dir {
		b.dir[k].X *= scale
		b.dir[k].Y *= scale
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
	s, y := b.s[k], b.y[k]
	n := len(s)
	y, x, nx, g, ng := y[:n], b.x[:n], b.nx[:n], b.g[:n], b.ng[:n]
	for i := range s {
		s[i] = plane.Point{X: nx[i].X - x[i].X, Y: nx[i].Y - x[i].Y}
		y[i] = plane.Point{X: ng[i].X - g[i].X, Y: ng[i].Y - g[i].Y}
	}
	sy, yy := dot(s, y), dot(y, y)
	if sy <= 1e-12*yy {
		return false
	}
	b.rho[k], b.scale = 1/sy, sy/yy
	return true
}

// dot adds in four lanes, in an order that is the same everywhere.
func dot(a, b []plane.Point) float64 {
	var s0, s1, s2, s3 float64
	b = b[:len(a)]
	k := 0
	for ; k+1 < len(a); k += 2 {
		p, q, u, v := &a[k], &b[k], &a[k+1], &b[k+1]
		s0 += float64(p.X * q.X)
		s1 += float64(p.Y * q.Y)
		s2 += float64(u.X * v.X)
		s3 += float64(u.Y * v.Y)
	}
	if k < len(a) {
		s0 += float64(a[k].X * b[k].X)
		s1 += float64(a[k].Y * b[k].Y)
	}
	return (s0 + s1) + (s2 + s3)
}

func axpy(a, b []plane.Point, f float64) {
	b = b[:len(a)]
	for k := range a {
		p, q := &a[k], &b[k]
		p.X += float64(f * q.X)
		p.Y += float64(f * q.Y)
	}
}

// neighbours lists, point by point, the later ones that it can touch, until
// some point has moved too far for the list to be sure.
type neighbours struct {
	end   []int32       // of each free point's part of other
	other []int32       // fixed points have the highest numbers
	at    []plane.Point // where the points were
	reach float64
}

// skin is how much beyond touching a pair is still listed, in spacings.
const skin = 0.5

// refresh lists the pairs anew if the list is for another diameter or a point
// has moved so far along an axis that two such moves, each along a diagonal,
// could close the skin: 2·√2·0.35 < 1.
func (b *neighbours) refresh(x []plane.Point, free int, diameter float64) {
	if b.reach == diameter && len(b.at) == free && !b.moved(x) {
		return
	}
	b.reach = diameter
	b.at = append(b.at[:0], x[:free]...)
	b.end, b.other = b.end[:0], b.other[:0]
	far := diameter + skin
	ff := float64(far * far)
	for i, p := range x[:free] {
		for j := i + 1; j < len(x); j++ {
			dx, dy := p.X-x[j].X, p.Y-x[j].Y
			if float64(dx*dx)+float64(dy*dy) < ff {
				b.other = append(b.other, int32(j))
			}
		}
		b.end = append(b.end, int32(len(b.other)))
	}
}

func (b *neighbours) moved(x []plane.Point) bool {
	const most = skin * 0.35
	x = x[:len(b.at)]
	for k, p := range b.at {
		dx, dy := x[k].X-p.X, x[k].Y-p.Y
		if dx > most || dx < -most || dy > most || dy < -most {
			return true
		}
	}
	return false
}

// energy is the sum over pairs of max(0, D²-r²)²/4 and over borders of
// 2D² slack² where overstepped; g becomes its gradient.
func (s *solver) energy(x, g []plane.Point, diameter float64) float64 {
	s.near.refresh(x, s.free, diameter)
	dd := float64(diameter * diameter)
	clear(g)
	e := 0.0
	from := int32(0)
	for i := range g {
		p, gx, gy := x[i], 0.0, 0.0
		if len(s.rules) > 0 || p.X < s.lo.X || p.X > s.hi.X || p.Y < s.lo.Y || p.Y > s.hi.Y {
			var we float64
			we, gx, gy = s.wallEnergy(p.X, p.Y, dd)
			e += we
		}
		to := s.near.end[i]
		for _, j := range s.near.other[from:to] {
			o := &x[j]
			dx, dy := p.X-o.X, p.Y-o.Y
			q := dd - float64(dx*dx) - float64(dy*dy)
			if q <= 0 {
				continue
			}
			e += float64(q*q) / 4
			fx, fy := float64(q*dx), float64(q*dy)
			gx -= fx
			gy -= fy
			if int(j) < len(g) {
				g[j].X += fx
				g[j].Y += fy
			}
		}
		g[i].X += gx
		g[i].Y += gy
		from = to
	}
	return e
}

func (s *solver) wallEnergy(x, y, dd float64) (e, gx, gy float64) {
	if v := min(x-s.lo.X, 0) + max(x-s.hi.X, 0); v != 0 {
		e += float64(v * v)
		gx += float64(2 * v)
	}
	if v := min(y-s.lo.Y, 0) + max(y-s.hi.Y, 0); v != 0 {
		e += float64(v * v)
		gy += float64(2 * v)
	}
	for k := range s.rules {
		r := &s.rules[k]
		if r.clearOf(x, y, 0) {
			continue
		}
		if v, nx, ny := r.at(x, y); v < 0 {
			e += float64(v * v)
			gx += float64(2 * v * nx)
			gy += float64(2 * v * ny)
		}
	}
	return float64(2 * dd * e), float64(2 * dd * gx), float64(2 * dd * gy)
}

// outlook tells about how far apart the points can get from where relax left
// them, before any linear program: the presses between the soft discs, taken
// as its multipliers, weigh the distances and the borders overstepped. Where
// they balance, no small moves reach more. Infinite where nothing presses.
func (s *solver) outlook(x []plane.Point, diameter float64) float64 {
	dd := float64(diameter * diameter)
	press, sum := 0.0, 0.0
	from := int32(0)
	for i, p := range x[:s.free] {
		to := s.near.end[i]
		for _, j := range s.near.other[from:to] {
			dx, dy := p.X-x[j].X, p.Y-x[j].Y
			r := float64(dx*dx) + float64(dy*dy)
			if q := dd - r; q > 0 {
				press += float64(q * math.Sqrt(r))
				sum += float64(q * r)
			}
		}
		e, _, _ := s.wallEnergy(p.X, p.Y, dd)
		sum -= 2 * e
		from = to
	}
	if press == 0 {
		return math.Inf(1)
	}
	return sum / press
}
