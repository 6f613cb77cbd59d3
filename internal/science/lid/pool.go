package lid

import "math"

// elites is how many of the best distinct optima seed new starts.
const elites = 4

// optimum is one local optimum: its spacing and its points in the solver's
// units.
type optimum struct {
	t    float64
	x, y []float64
}

// pool keeps the best optima of distinct spacing, best first.
type pool struct {
	kept []optimum
	size int
	n    int
}

func newPool(n, size int) pool { return pool{n: n, size: size} }

// add keeps the points if they are among the best and differ in spacing from
// those kept. Two optima of the same spacing are as a rule mirror images.
func (p *pool) add(t float64, x, y []float64) {
	const same = 1e-9
	at := len(p.kept)
	for k, o := range p.kept {
		if math.Abs(o.t-t) <= same*t {
			if t > o.t {
				p.kept[k].t = t
				copy(p.kept[k].x, x)
				copy(p.kept[k].y, y)
			}
			return
		}
		if t > o.t {
			at = k
			break
		}
	}
	if at >= p.size {
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
	if len(p.kept) < p.size {
		o = optimum{x: make([]float64, p.n), y: make([]float64, p.n)}
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
	return o
}

// floor is the spacing below which a start is not worth following: that of
// the last elite, or zero until there are enough of them.
func (p *pool) floor() float64 {
	if len(p.kept) < elites {
		return 0
	}
	return p.kept[elites-1].t
}
