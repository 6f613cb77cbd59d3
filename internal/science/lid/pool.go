package lid

import "math"

const (
	elites     = 4  // how many of the best distinct optima seed new starts
	mostOptima = 40 // how many are kept; a ruler's layouts begin from them
)

// optimum is one local optimum: its spacing and its points in the solver's
// units.
type optimum struct {
	t    float64
	x, y []float64
	held []bool // points that touch others; the rest are loose
}

// pool keeps the best optima of distinct spacing, best first.
type pool struct {
	kept []optimum
	n    int // points of each
}

// add keeps the points if they are among the best and differ in spacing from
// those kept. Two optima of the same spacing are as a rule mirror images.
func (p *pool) add(t float64, x, y []float64) {
	const same = 1e-7 // the search stops at searchGain, which leaves far less than this to gain
	at := len(p.kept)
	for k, o := range p.kept {
		if math.Abs(o.t-t) <= same*t {
			if t > o.t {
				p.kept[k] = p.fill(o, t, x, y)
			}
			return
		}
		if t > o.t {
			at = k
			break
		}
	}
	if at >= mostOptima {
		return
	}
	for k := at; k < len(p.kept); k++ {
		if math.Abs(p.kept[k].t-t) <= same*t {
			// The same optimum reached less closely: replaced.
			o := p.kept[k]
			copy(p.kept[at+1:k+1], p.kept[at:k])
			p.kept[at] = p.fill(o, t, x, y)
			return
		}
	}
	var o optimum
	if len(p.kept) < mostOptima {
		o = optimum{x: make([]float64, p.n), y: make([]float64, p.n), held: make([]bool, p.n)}
		p.kept = append(p.kept, optimum{})
	} else {
		o = p.kept[len(p.kept)-1]
	}
	copy(p.kept[at+1:], p.kept[at:])
	p.kept[at] = p.fill(o, t, x, y)
}

func (p *pool) fill(o optimum, t float64, x, y []float64) optimum {
	o.t = t
	copy(o.x, x)
	copy(o.y, y)
	near := t * (1 + 1e-6)
	for i := range o.held {
		o.held[i] = false
		for j := range o.x {
			dx, dy := x[i]-x[j], y[i]-y[j]
			if i != j && float64(dx*dx)+float64(dy*dy) < float64(near*near) {
				o.held[i] = true
				break
			}
		}
	}
	return o
}

const (
	backSpacing = 3e-6 // how near an optimum's spacing, relatively,
	backPlace   = 0.02 // and its places, in spacings, counts as going there again
)

// goingBack reports whether the current points are on their way to one of the
// best optima or to a mirror image of it, which would tell nothing new.
func (s *solver) goingBack(t float64) bool {
	for k := range min(elites, len(s.pool.kept)) {
		o := &s.pool.kept[k]
		if t > o.t || t < o.t*(1-backSpacing) {
			continue
		}
		if s.sameAs(o, symmetry{xx: 1, yy: 1}) {
			return true
		}
		for _, m := range s.region.symmetries() {
			if s.sameAs(o, m) {
				return true
			}
		}
	}
	return false
}

// sameAs reports whether each held point of the optimum, seen through the
// symmetry, has one of the current points next to it.
func (s *solver) sameAs(o *optimum, m symmetry) bool {
	for i := range s.free {
		if !o.held[i] {
			continue
		}
		x, y := m.of(o.x[i], o.y[i])
		found := false
		for j := range s.free {
			dx, dy := x-s.x[j], y-s.y[j]
			if float64(dx*dx)+float64(dy*dy) < backPlace*backPlace {
				found = true
				break
			}
		}
		if !found {
			return false
		}
	}
	return true
}

// floor is the spacing below which a start is not worth following: that of
// the last elite, or zero until there are enough of them.
func (p *pool) floor() float64 {
	if len(p.kept) < elites {
		return 0
	}
	return p.kept[elites-1].t
}
