package figure

import (
	"math"

	"rootbell/internal/paper/scene"
)

// room is what stands on a figure already. The zero value is an empty figure.
type room struct {
	lines []hindrance
	taken []box // lettering, and areas where none may stand
}

// hindrance is a straight line with the harm it does to a text on it.
type hindrance struct {
	from, to scene.Point
	weight   float64
}

// flatPX is how far a chord may leave its arc where only lettering asks.
const flatPX = 0.4

func (r *room) line(from, to scene.Point, weight float64) {
	if weight > 0 {
		r.lines = append(r.lines, hindrance{from, to, weight})
	}
}

func (r *room) path(path scene.Path, weight float64) {
	points := path.Flat(flatPX)
	for i, p := range points {
		if i+1 < len(points) {
			r.line(p, points[i+1], weight)
		} else if path.Closed {
			r.line(p, points[0], weight)
		}
	}
}

func (r *room) take(t lettering) { r.taken = append(r.taken, t.box(0)) }

// block keeps lettering out of an area.
func (r *room) block(b scene.Box) { r.taken = append(r.taken, upright(b)) }

// airPX is kept between lettering and everything else.
const airPX = 2.5

// harm is what a text would cover: the weights of lines, and out of the
// question, which is infinite, where other text stands or the figure ends.
func (p *pen) harm(t lettering) float64 {
	bounds := t.box(0).bounds()
	if bounds.Min.X < 0 || bounds.Min.Y < 0 || bounds.Max.X > p.width || bounds.Max.Y > p.height {
		return math.Inf(1)
	}
	own := t.box(airPX)
	for _, b := range p.room.taken {
		if own.overlaps(b) {
			return math.Inf(1)
		}
	}
	sum := 0.0
	for _, l := range p.room.lines {
		if own.meets(l.from, l.to) {
			sum += l.weight
		}
	}
	return sum
}

// crossed is the weight of the lines and text that a line would cross.
func (p *pen) crossed(from, to scene.Point) float64 {
	sum := 0.0
	for _, b := range p.room.taken {
		if b.meets(from, to) {
			return math.Inf(1)
		}
	}
	for _, l := range p.room.lines {
		if crosses(from, to, l.from, l.to) {
			sum += l.weight
		}
	}
	return sum
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
		if p.harm(t) == 0 {
			p.text(t)
			return true
		}
	}
	return false
}
