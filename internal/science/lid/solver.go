package lid

import (
	"math"
	"math/rand/v2"

	"rootbell/internal/base/plane"
)

// pointReach is the most points that one search lays.
const pointReach = 200

// solver holds the working memory of one search: points in units of the
// spacing that Oler's inequality allows, so that every tolerance below is
// relative to the spacing, with the origin in the middle of the region's box.
// Free points come first in x and y, fixed ones after them.
type solver struct {
	region  *Region
	unit    float64 // mm per unit of length
	origin  plane.Point
	rules   []rule
	curved  bool // a border bends outwards, so a tangent can promise too much
	lo, hi  plane.Point
	n, free int
	x, y    []float64
	tx, ty  []float64 // trial points
	rng     *rand.Rand
	pcg     *rand.PCG
	seed    uint64
	lp      simplex
	rows    rowSet
	soft    lbfgs
	near    neighbours
	pool    pool
	best    float64
	sym     *symmetry // where set, every step keeps this symmetry
	partner []int32
}

func newSolver(r *Region, n int, fixed []plane.Point, seed uint64) *solver {
	s := &solver{region: r, n: n, free: n - len(fixed), seed: seed}
	s.unit = expectedSpacing(r, n)
	s.origin = r.box.Centre()
	s.lo, s.hi = s.inward(r.box.Min), s.inward(r.box.Max)
	for _, q := range r.rules {
		s.rules = append(s.rules, s.scaled(q).bounded())
		s.curved = s.curved || q.kind == within
	}
	s.x, s.y = make([]float64, n), make([]float64, n)
	s.tx, s.ty = make([]float64, n), make([]float64, n)
	for k, f := range fixed {
		q := s.inward(f)
		s.x[s.free+k], s.y[s.free+k] = q.X, q.Y
		s.tx[s.free+k], s.ty[s.free+k] = q.X, q.Y
	}
	s.pcg = rand.NewPCG(seed, 0)
	s.rng = rand.New(s.pcg)
	s.pool.n = n
	s.lp.spare = math.MaxInt64
	s.soft.grow(n, s.free)
	return s
}

// expectedSpacing solves Oler's inequality n-1 = (2/√3)A/d² + P/(2d) for d,
// with the free area and the box's outline.
func expectedSpacing(r *Region, n int) float64 {
	k := float64(max(n, 2) - 1)
	d := spacingFromArea(k, r.area, r.box.Perimeter())
	if d <= 0 {
		return 1
	}
	return d
}

// spacingFromArea is the positive root of k d² - (P/2) d - (2/√3) A = 0.
func spacingFromArea(k, area, perimeter float64) float64 {
	b := perimeter / 4
	return (b + math.Sqrt(float64(b*b)+float64(k*2/math.Sqrt(3)*area))) / k
}

func (s *solver) inward(p plane.Point) plane.Point { return p.Sub(s.origin).Times(1 / s.unit) }

func (s *solver) outward(k int) plane.Point {
	return plane.Point{
		X: s.origin.X + float64(s.x[k]*s.unit),
		Y: s.origin.Y + float64(s.y[k]*s.unit),
	}
}

func (s *solver) scaled(r rule) rule {
	q := r
	q.radius = r.radius / s.unit
	if r.kind == halfPlane {
		q.radius = (r.radius - r.a.Dot(s.origin)) / s.unit
		return q
	}
	q.a, q.b = s.inward(r.a), s.inward(r.b)
	q.poly = make([]side, len(r.poly))
	for k, e := range r.poly {
		e.at, e.length = s.inward(e.at), e.length/s.unit
		q.poly[k] = e
	}
	return q
}

// least returns the smallest distance between two points of which at least
// one is free; infinity where there is none.
func (s *solver) least(x, y []float64) float64 {
	best := math.Inf(1)
	for i := range s.free {
		xi, yi := x[i], y[i]
		for j := i + 1; j < s.n; j++ {
			dx, dy := xi-x[j], yi-y[j]
			if d := float64(dx*dx) + float64(dy*dy); d < best {
				best = d
			}
		}
	}
	return math.Sqrt(best)
}

// slack is the room at a point in the solver's units, by its own rules.
func (s *solver) slack(x, y float64) float64 {
	m := min(x-s.lo.X, s.hi.X-x, y-s.lo.Y, s.hi.Y-y)
	for k := range s.rules {
		if s.rules[k].clearOf(x, y, m) {
			continue
		}
		if v, _, _ := s.rules[k].at(x, y); v < m {
			m = v
		}
	}
	return m
}

// project moves every free point into the region, by the nearest way over
// each border in turn, and reports whether that worked.
func (s *solver) project(x, y []float64) bool {
	ok := true
	for i := range s.free {
		if !s.projectPoint(&x[i], &y[i]) {
			ok = false
		}
	}
	return ok
}

func (s *solver) projectPoint(px, py *float64) bool {
	const rounds, enough = 24, -1e-13
	x, y := min(max(*px, s.lo.X), s.hi.X), min(max(*py, s.lo.Y), s.hi.Y)
	inside := false
	for range rounds {
		inside = true
		for k := range s.rules {
			v, gx, gy := s.rules[k].at(x, y)
			if v < enough {
				inside = false
				x -= float64(v * gx)
				y -= float64(v * gy)
			}
		}
		x, y = min(max(x, s.lo.X), s.hi.X), min(max(y, s.lo.Y), s.hi.Y)
		if inside {
			break
		}
	}
	if !inside && s.slack(x, y) < -nearBorder {
		inside = s.rescue(&x, &y)
	} else {
		inside = true
	}
	*px, *py = x, y
	return inside
}

// nearBorder is how far over a border, in spacings, a point may be found and
// still count as on it.
const nearBorder = 1e-11

// rescue moves a point that is trapped between borders to the nearest place of
// the region that it sees in one of sixteen directions.
func (s *solver) rescue(px, py *float64) bool {
	// The directions are Pythagorean: exact, and near enough to even.
	dirs := [4][2]float64{{1, 0}, {12.0 / 13, 5.0 / 13}, {20.0 / 29, 21.0 / 29}, {5.0 / 13, 12.0 / 13}}
	const step, reach = 0.02, 3.0
	for r := step; r < reach; r *= 1.1 {
		for _, d := range dirs {
			x, y := d[0]*r, d[1]*r
			for range 4 {
				x, y = -y, x
				if s.slack(*px+x, *py+y) >= 0 {
					*px += x
					*py += y
					return true
				}
			}
		}
	}
	return false
}

// feasible reports whether all free points lie in the region.
func (s *solver) feasible() bool {
	for i := range s.free {
		if s.slack(s.x[i], s.y[i]) < -nearBorder {
			return false
		}
	}
	return true
}

// randomPoint returns a uniform point of the region, or its deepest point
// where forty tries found none.
func (s *solver) randomPoint() (x, y float64) {
	for range 40 {
		x = s.lo.X + float64(s.rng.Float64()*(s.hi.X-s.lo.X))
		y = s.lo.Y + float64(s.rng.Float64()*(s.hi.Y-s.lo.Y))
		if s.slack(x, y) >= 0 {
			return x, y
		}
	}
	d := s.inward(s.region.deepest())
	return d.X, d.Y
}

// between returns a uniform number from a to b.
func (s *solver) between(a, b float64) float64 { return a + float64(s.rng.Float64()*(b-a)) }

// direction returns a random unit vector, without trigonometry.
func (s *solver) direction() (x, y float64) {
	for {
		x, y = s.between(-1, 1), s.between(-1, 1)
		if q := float64(x*x) + float64(y*y); q > 1e-4 && q <= 1 {
			l := math.Sqrt(q)
			return x / l, y / l
		}
	}
}

// bell returns a number with mean 0 and standard deviation 1, near enough to
// normal for jitter: the sum of three uniform ones.
func (s *solver) bell() float64 {
	return 2 * (s.rng.Float64() + s.rng.Float64() + s.rng.Float64() - 1.5)
}
