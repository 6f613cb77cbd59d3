package figure

import (
	"math"

	"rootbell/internal/paper/scene"
)

// room is what stands on a figure already. The zero value is an empty figure.
type room struct {
	lines   []hindrance
	taken   []box // lettering
	blocked []box // areas where none may stand
}

// hindrance is a straight line with the harm it does to a text on it, and to a
// leader across it.
type hindrance struct {
	from, to      scene.Point
	weight, cross float64
	around        scene.Box
	behind        bool // covered by the holes
}

// softPX is the harm that crossing a line does which a leader has to cross, to
// come out of the lid.
const softPX = 6.0

// flatPX is how far a chord may leave its arc where only lettering asks.
const flatPX = 0.4

func (r *room) line(from, to scene.Point, weight, cross float64) {
	if weight > 0 {
		r.lines = append(r.lines, hindrance{from: from, to: to, weight: weight, cross: cross, around: scene.EmptyBox().With(from).With(to)})
	}
}

func (r *room) path(path scene.Path, weight, cross float64) {
	points := path.Flat(flatPX)
	for i, p := range points {
		if i+1 < len(points) {
			r.line(p, points[i+1], weight, cross)
		} else if path.Closed {
			r.line(p, points[0], weight, cross)
		}
	}
}

func (r *room) take(t lettering) { r.taken = append(r.taken, t.box(0).known()) }

// block keeps lettering out of an area.
func (r *room) block(b scene.Box) { r.blocked = append(r.blocked, upright(b).known()) }

// cover says of all lines so far that holes drawn over them cover them.
func (r *room) cover() {
	for i := range r.lines {
		r.lines[i].behind = true
	}
}

// airPX is kept between lettering and everything else.
const airPX = 2.5

// harm is what a text would cover: the weights of lines, and out of the
// question, which is infinite, where other text stands or the figure ends.
func (p *pen) harm(t lettering) float64 {
	if !p.clearOfWords(t) {
		return math.Inf(1)
	}
	sum := 0.0
	own := t.box(airPX)
	bounds := own.bounds()
	for _, l := range p.room.lines {
		if near(bounds, l.around) && own.meets(l.from, l.to) {
			sum += l.weight
		}
	}
	return sum
}

// free says whether a text would cover nothing. One that stands in a hole does
// not cover what lies behind that.
func (p *pen) free(t lettering, inHole bool) bool {
	own := t.box(airPX)
	bounds := own.bounds()
	for _, l := range p.room.lines {
		if near(bounds, l.around) && (!l.behind || !inHole) && own.meets(l.from, l.to) {
			return false
		}
	}
	return p.clearOfWords(t)
}

// clearOfWords says whether a text stands in the figure and on no other text.
func (p *pen) clearOfWords(t lettering) bool {
	own := t.box(airPX)
	bounds := own.bounds()
	// Written so that a place that is no number is none.
	if !(bounds.Min.X >= -airPX && bounds.Min.Y >= -airPX && bounds.Max.X <= p.width+airPX && bounds.Max.Y <= p.height+airPX) {
		return false
	}
	for _, taken := range [2][]box{p.room.taken, p.room.blocked} {
		for _, b := range taken {
			if near(bounds, b.around) && own.overlaps(b) {
				return false
			}
		}
	}
	return true
}

// crossed is the weight of the lines and text that a line would cross.
func (p *pen) crossed(from, to scene.Point) float64 {
	sum, bounds := 0.0, scene.EmptyBox().With(from).With(to)
	for _, taken := range [2][]box{p.room.taken, p.room.blocked} {
		for _, b := range taken {
			if near(bounds, b.around) && b.meets(from, to) {
				return math.Inf(1)
			}
		}
	}
	for _, l := range p.room.lines {
		if near(bounds, l.around) && crosses(from, to, l.from, l.to) {
			sum += l.cross
		}
	}
	return sum
}

// near says whether two boxes share a point, edges included.
func near(b, c scene.Box) bool {
	return b.Min.X <= c.Max.X && c.Min.X <= b.Max.X && b.Min.Y <= c.Max.Y && c.Min.Y <= b.Max.Y
}

// crosses says whether two straight lines cut each other between their ends.
func crosses(a, b, c, d scene.Point) bool {
	side := func(p, q, r scene.Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}

// place writes the first of the choices that covers nothing; ok is false, and
// nothing is written, where each would.
func (p *pen) place(choices ...lettering) (ok bool) {
	for _, t := range choices {
		if p.free(t, false) {
			p.text(t)
			return true
		}
	}
	return false
}
