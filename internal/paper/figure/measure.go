package figure

import (
	"fmt"
	"math"

	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// The letters of what to measure. They stand in rings on the drawings, and the
// form has the same ones before its labels. A round tub takes the letters of
// the tub's long measures, a round lid that of its length; I is left out, since
// it reads as a 1.
const (
	LetterTopLong  = "A"
	LetterTopWide  = "B"
	LetterBaseLong = "C"
	LetterBaseWide = "D"
	LetterHeight   = "E"
	LetterLidLong  = "F"
	LetterLidWide  = "G"
	LetterCupRim   = "H"
	LetterCupBody  = "J"
	LetterCupDepth = "K"
	LetterPoured   = "A" // litres or gallons poured in so far
	LetterDeep     = "B" // how deep they stand
)

// TubMM are the inside measures of a tub with straight sides, in mm. A measure
// that was not typed is 0.
type TubMM struct{ TopLong, TopWide, BaseLong, BaseWide, Height float64 }

// RoundMM are the inside measures of a round tub, in mm; 0 was not typed.
type RoundMM struct{ Top, Base, Height float64 }

// LidMM are the measures of a lid's flat part, in mm; 0 was not typed. A round
// lid has a Diameter and neither of the others.
type LidMM struct {
	Long, Wide, Diameter float64
	Round                bool // asked for by its diameter, typed or not
}

// CupMM are the measures of a net cup, in mm; 0 was not typed.
type CupMM struct{ Rim, Body, Depth float64 }

// measured is one length that a drawing asks for.
type measured struct {
	letter string
	name   string // as the drawing's label says it
	mm     float64
}

func (m measured) typed() bool { return m.mm > 0 && m.mm < longestMM }

// longestMM is more than anything that stands on a shelf.
const longestMM = 10_000

// measureFigure is one drawing of what to measure.
type measureFigure struct {
	pen
	id     string
	title  string
	system garden.System
	silent bool // what was typed cannot be a shape: no numbers
	hand   bool
	asked  []measured
}

// The widths of the drawings of what to measure, in px.
const (
	measureDesk = 560.0
	measureHand = 328.0
)

func newMeasure(id, title string, s garden.System, w Width) *measureFigure {
	f := &measureFigure{id: "measure-" + id + "-" + w.String(), title: title, system: s, hand: w == Hand}
	f.width, f.scale = w.pick(measureDesk, measureHand), 1
	return f
}

// shape makes lengths that may be drawn out of what was typed: what is missing
// is taken in the proportion of the usual shape. Where fits says that they can
// be no such thing, the usual shape is drawn and no number.
func (f *measureFigure) shape(typed, usual []float64, fits func(v []float64) bool) []float64 {
	scale, n := 0.0, 0
	for i, v := range typed {
		if (measured{mm: v}).typed() {
			scale, n = scale+v/usual[i], n+1
		}
	}
	if n == 0 {
		return usual
	}
	out := make([]float64, len(usual))
	for i, v := range typed {
		out[i] = usual[i] * scale / float64(n)
		if (measured{mm: v}).typed() {
			out[i] = v
		}
	}
	if !fits(out) {
		f.silent = true
		return usual
	}
	return out
}

// number is what stands beside a ring: the length typed, as a ruler reads it.
func (f *measureFigure) number(m measured) string {
	if f.silent || !m.typed() {
		return ""
	}
	return sheet.Mark(m.mm, f.system)
}

// Sizes of a ring in px.
const (
	ringPX  = 9.0
	ringGap = 5.0 // from the ring to its number
	liftPX  = 6.0 // from the line to the number over it
	// digitHalfPX is from a number's base line to its middle.
	digitHalfPX = 4.3
)

// ring draws a letter in a ring.
func (f *measureFigure) ring(letter string, at scene.Point) {
	f.printf(`<circle class="ring" cx="%s" cy="%s" r="%s"/>`, px(at.X), px(at.Y), px(ringPX))
	f.text(lettering{words: letter, class: "sm b", anchor: scene.Middle, at: at.Plus(scene.Point{Y: digitHalfPX})})
	f.room.block(scene.BoxAt(at.Minus(scene.Point{X: ringPX, Y: ringPX}), 2*ringPX, 2*ringPX))
}

// ask draws a length with extension lines, strokes, its ring on the line and
// the number beside it. aside is the step from the part to the line.
func (f *measureFigure) ask(m measured, a, b, aside scene.Point) {
	f.asked = append(f.asked, m)
	f.strike(dimension{a: a, b: b, aside: aside})
	from, to := a.Plus(aside), b.Plus(aside)
	number := lettering{words: f.number(m), class: "sm"}
	level := from.Y == to.Y
	middle := from.Plus(to).Times(0.5)
	// Ring and number together stand over the middle of a line that is long enough.
	if beside := 2*ringPX + ringGap + number.long(); level && number.words != "" && from.Distance(to) > beside+2*strokePX {
		middle.X -= (number.long() + ringGap) / 2
	}
	f.ring(m.letter, middle)
	f.printf(`</g>`)
	if number.words != "" {
		f.text(f.least(number.besides(middle, level, aside.Y < 0)))
	}
}

// besides are the places of a number by its ring, the best first.
func (t lettering) besides(ring scene.Point, level, above bool) []lettering {
	right, left, over, under := t, t, t, t
	right.at = ring.Plus(scene.Point{X: ringPX + ringGap, Y: digitHalfPX})
	left.anchor, left.at = scene.End, ring.Plus(scene.Point{X: -ringPX - ringGap, Y: digitHalfPX})
	over.anchor, over.at = scene.Middle, ring.Minus(scene.Point{Y: ringPX + 6})
	under.anchor, under.at = scene.Middle, ring.Plus(scene.Point{Y: ringPX + 4 + 2*digitHalfPX})
	if !level {
		low := under
		low.anchor, low.at.X = scene.Start, ring.X+ringGap
		return []lettering{right, left, low}
	}
	right.at.Y = ring.Y - liftPX
	if above {
		return []lettering{right, over, under}
	}
	return []lettering{right, under, over}
}

// least is the one of the places that covers the least; the first among equals.
func (f *measureFigure) least(places []lettering) lettering {
	best, least := places[0], math.Inf(1)
	for _, t := range places {
		if harm := f.harm(t); harm < least {
			best, least = t, harm
		}
	}
	return best
}

// svg is the finished figure. Its label names what each letter asks for, with
// the length that was typed.
func (f *measureFigure) svg() string {
	label := f.title + "."
	for _, m := range f.asked {
		label += fmt.Sprintf(" %s: %s", m.letter, m.name)
		if n := f.number(m); n != "" {
			label += ", " + n + " " + sheet.UnitName(f.system)
		}
		label += "."
	}
	return fmt.Sprintf(`<svg class="fig" id="%s" width="%s" height="%s" viewBox="0 0 %s %s" role="img" aria-label="%s">%s</svg>`,
		f.id, px(f.width), px(f.height), px(f.width), px(f.height), escaped(label), f.out.String())
}
