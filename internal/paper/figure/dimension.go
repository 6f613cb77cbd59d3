package figure

import (
	"math"

	"rootbell/internal/paper/scene"
)

// Lengths of a dimension in px: an extension line starts off the part and runs
// past the dimension line; a stroke marks each end.
const (
	extensionOff  = 3.0
	extensionPast = 4.0
	strokePX      = 10.0
	numberLift    = 4.0
)

// dimension is a length between two pixels, drawn aside of them.
type dimension struct {
	a, b  scene.Point
	aside scene.Point // from the part to the line; zero where the line lies on the part
	words []string    // what it may say, the fullest first; each begins with the number
	kept  bool        // whether the words must stand between the ends
	also  string      // goes to the other side of the line where the number stands alone
}

func (d dimension) ends() (from, to scene.Point) { return d.a.Plus(d.aside), d.b.Plus(d.aside) }

// readable is the angle of the line as its words are read: from below or from
// the right.
func (d dimension) readable() float64 {
	step := d.b.Minus(d.a)
	turn := math.Atan2(step.Y, step.X) * 180 / math.Pi
	if turn <= -90-tilt {
		turn += 180
	}
	if turn > 90-tilt {
		turn -= 180
	}
	return turn
}

// tilt is by how many degrees a line may lean over so that its words still read
// upwards.
const tilt = 30.0

// choices are the places for the words: over the line in the middle or nearer
// to an end, or under it, fewer words before a worse place; then beyond an end.
func (d dimension) choices(class string) []lettering {
	from, to := d.ends()
	turn := d.readable()
	over := scene.Point{Y: -numberLift}.Turned(turn)
	below := scene.Point{Y: numberLift + letterPX*0.74}.Turned(turn)
	along := scene.Point{X: 1}.Turned(turn)
	left, right := from, to
	if to.Minus(from).X*along.X+to.Minus(from).Y*along.Y < 0 {
		left, right = to, from
	}
	var out []lettering
	for _, words := range d.words {
		t := lettering{words: words, class: class, anchor: scene.Middle, turn: turn}
		room := left.Distance(right) - 6
		for _, share := range []float64{0.5, 0.4, 0.6, 0.3, 0.7} {
			for _, lift := range []scene.Point{over, below} {
				t.at = left.Plus(right.Minus(left).Times(share)).Plus(lift)
				if t.long() <= 2*room*min(share, 1-share) {
					out = append(out, t)
				}
			}
		}
	}
	if d.kept {
		return out
	}
	middle := scene.Point{Y: letterPX * 0.36}.Turned(turn)
	for _, words := range d.words {
		t := lettering{words: words, class: class, turn: turn}
		t.anchor, t.at = scene.Start, right.Plus(along.Times(strokePX)).Plus(middle)
		out = append(out, t)
		t.anchor, t.at = scene.End, left.Minus(along.Times(strokePX)).Plus(middle)
		out = append(out, t)
	}
	return out
}

// measure draws a dimension with the first of its words that finds room. ok is
// false, and nothing is drawn, where none does.
func (p *pen) measure(d dimension, class string) (ok bool) {
	if p.strikesWords(d) {
		return false
	}
	for _, t := range d.choices(class) {
		if p.free(t, false) {
			p.strike(d)
			p.text(t)
			if d.also != "" && t.words == d.words[len(d.words)-1] {
				p.place(d.opposite(t)...)
			}
			p.printf(`</g>`)
			return true
		}
	}
	return false
}

// opposite are the places across the line from a number over or under it.
func (d dimension) opposite(number lettering) []lettering {
	d.words = []string{d.also}
	var out []lettering
	for _, t := range d.choices(number.class) {
		if t.anchor == scene.Middle && t.at.Distance(number.at) < 2*letterPX {
			out = append(out, t)
		}
	}
	return out
}

// strikesWords says whether a line of the dimension would run through words.
func (p *pen) strikesWords(d dimension) bool {
	from, to := d.ends()
	for _, b := range p.room.taken {
		if b.meets(from, to) || b.meets(d.a, from) || b.meets(d.b, to) {
			return true
		}
	}
	return false
}

// strike draws the lines of a dimension and leaves its group open for the words.
func (p *pen) strike(d dimension) {
	from, to := d.ends()
	p.printf(`<g class="dimension">`)
	if away := math.Hypot(d.aside.X, d.aside.Y); away > extensionOff {
		out := d.aside.Times(1 / away)
		for _, end := range []scene.Point{d.a, d.b} {
			p.line("n", end.Plus(out.Times(extensionOff)), end.Plus(d.aside).Plus(out.Times(extensionPast)))
		}
	}
	p.line("dim", from, to)
	along := to.Minus(from)
	stroke := along.Times(strokePX / 2 / math.Max(math.Hypot(along.X, along.Y), 1e-9)).Turned(-45)
	for _, end := range []scene.Point{from, to} {
		p.line("tick", end.Minus(stroke), end.Plus(stroke))
	}
}
