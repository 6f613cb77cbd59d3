// Package figure draws an assessment for a page on a screen: inline SVG in
// pixels, coloured by the classes of the page's style sheet alone, with
// lettering that keeps its size.
//
// Every figure has one scale in both directions. Its numbers are lengths that
// a ruler can read, in the plan's unit system. Text keeps clear of lines and of
// other text; where a word finds no room the drawing leaves it out, and the
// figure's label still says it.
package figure

import "rootbell/internal/garden"

// Width is which of its two drawings a figure is. The style sheet of the page
// shows one of them.
type Width int

// The widths. The zero value is Desk.
const (
	Desk Width = iota
	Hand
)

// String is the name used in ids and classes.
func (w Width) String() string {
	if w == Hand {
		return "hand"
	}
	return "desk"
}

// pick is the desk's value or the hand's.
func (w Width) pick(desk, hand float64) float64 {
	if w == Hand {
		return hand
	}
	return desk
}

// Lid is the lid of one tub from above, 806 px wide for a desk, 328 for a hand.
// An empty layout name stands for the layout chosen in the plan. Where no holes
// could be laid out, the lid's outline is drawn with what is kept clear. ok is
// false where not even the outline is known, or no layout has the name.
//
// Each hole is a g of class hole that can have the focus, in the order of the
// numbers, with data-n and its centre in mm in the plan's coordinates, data-x
// and data-y. The svg says how these become pixels: x = data-x0 + data-scale·mm,
// y = data-y0 − data-scale·mm; data-step is the ruler's step in mm.
func Lid(a *garden.Assessment, tub int, layout string, w Width) (svg string, ok bool) {
	f, ok := lidOf(a, tub, layout, w, wholeLid(w))
	if !ok {
		return "", false
	}
	f.draw()
	return f.svg(), true
}

// Layout is one layout of a tub small, with its least distance, to stand beside
// others: 260 px wide for a desk, 328 for a hand. An empty name stands for the
// layout chosen. ok is false where there is none of that name.
func Layout(a *garden.Assessment, tub int, layout string, w Width) (svg string, ok bool) {
	f, ok := lidOf(a, tub, layout, w, smallLid(w))
	if !ok || !f.laid {
		return "", false
	}
	f.drawSmall()
	return f.svg(), true
}

// LidNoted is Lid with what its lines mean, to stand under it: 'Each square is
// 1 cm. …'.
func LidNoted(a *garden.Assessment, tub int, layout string, w Width) (svg, note string, ok bool) {
	f, ok := lidOf(a, tub, layout, w, wholeLid(w))
	if !ok {
		return "", "", false
	}
	f.draw()
	return f.svg(), f.note(), true // only now is it known what found no room
}

// Section is one tub cut upright in its bay, 1036 px wide for a desk, 328 for a
// hand. ok is false where no lid could be laid out.
func Section(a *garden.Assessment, tub int, w Width) (svg string, ok bool) {
	f, ok := sectionOf(a, tub, w)
	if !ok {
		return "", false
	}
	f.draw()
	return f.svg(), true
}

// SectionNote says under the drawing of Section what its lines mean and what
// was not measured. Empty where Section draws nothing.
func SectionNote(a *garden.Assessment, tub int, w Width) string {
	f, ok := sectionOf(a, tub, w)
	if !ok {
		return ""
	}
	return f.note()
}
