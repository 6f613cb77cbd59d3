package figure

import (
	"fmt"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// tubLine is a tub's way through the term: sown, moved into its tub, harvested.
// A day that is not known is not set.
type tubLine struct {
	name, crops     string
	sow, move, ripe term.Date
	last            term.Date // of the harvest
}

// tubLines are those of the tubs whose season was worked out.
func tubLines(a *garden.Assessment) []tubLine {
	var out []tubLine
	for _, t := range a.Tubs {
		s := t.Season
		if s == nil {
			continue
		}
		l := tubLine{name: t.Name, sow: dayOf(s.SowOn), move: dayOf(s.TransplantOn), ripe: dayOf(s.HarvestFrom), last: dayOf(s.HarvestTo)}
		if l.ripe.Set() && l.last.Before(l.ripe) {
			l.last = l.ripe
		}
		var crops []string
		for _, c := range t.Crops {
			crops = append(crops, c.Name)
		}
		l.crops = listed(crops)
		if l.sow.Set() || l.move.Set() {
			out = append(out, l)
		}
	}
	return out
}

func dayOf(text string) term.Date {
	d, _ := term.ParseDate(text) // what cannot be read is no day
	return d
}

// Sizes of a tub's line in px.
const (
	tubRowPX   = 27.0
	tubLinePX  = 21.0 // of the line under the row's top
	tubWordsPX = 11.0 // of the base line of its words
	sowRingPX  = 3.6
	moveHalfPX = 4.5
	ripeHalfPX = 4.5
)

// tubRows draws a line for each tub under all that hangs from the days.
func (f *stripFigure) tubRows() {
	if len(f.tubs) == 0 {
		return
	}
	top := f.lowest() + 2
	for _, l := range f.tubs {
		f.height = top + tubRowPX
		f.tubRow(l, top)
		top += tubRowPX
	}
	f.low = top
}

// tubRow draws one of them: a ring, dashes for the nursery, an upright stroke, a
// thick line, a block.
func (f *stripFigure) tubRow(l tubLine, top float64) {
	y := top + tubLinePX
	if l.sow.Set() && l.move.Set() {
		f.stretch("hid", l.sow, l.move, y)
	}
	if l.move.Set() {
		end := l.ripe
		if !end.Set() {
			end = f.shown().To
		}
		f.stretch("k", l.move, end, y)
	}
	if l.ripe.Set() {
		f.block(l, y)
	}
	if f.shown().Holds(l.sow) {
		f.circle("ring", scene.Point{X: f.middle(l.sow), Y: y}, sowRingPX)
	}
	if f.shown().Holds(l.move) {
		x := f.middle(l.move)
		f.line("k", scene.Point{X: x, Y: y - moveHalfPX}, scene.Point{X: x, Y: y + moveHalfPX})
	}
	f.tubWords(l, top+tubWordsPX)
	if name := (lettering{words: l.crops, class: "sm lt", anchor: scene.End, at: scene.Point{X: f.left - 10, Y: y + 4}}); !f.hand && name.long() < f.left-12 {
		f.text(name)
	}
}

func (f *stripFigure) middle(d term.Date) float64 { return f.x(d) + f.day/2 }

// stretch draws the part that is shown of a line from one day to another.
func (f *stripFigure) stretch(class string, from, to term.Date, y float64) {
	all := f.shown()
	if to.Before(from) || !all.Meets(term.Span{From: from, To: to}) {
		return
	}
	left, right := f.x(all.From), f.x(all.To.Add(1))
	if all.Holds(from) {
		left = f.middle(from)
	}
	if all.Holds(to) {
		right = f.middle(to)
	}
	f.line(class, scene.Point{X: left, Y: y}, scene.Point{X: right, Y: y})
}

// block is the days of the harvest.
func (f *stripFigure) block(l tubLine, y float64) {
	all := f.shown()
	if !all.Meets(term.Span{From: l.ripe, To: l.last}) {
		return
	}
	left, right := f.x(all.From), f.x(all.To.Add(1))
	if all.Holds(l.ripe) {
		left = f.x(l.ripe)
	}
	if all.Holds(l.last) {
		right = f.x(l.last.Add(1))
	}
	f.printf(`<rect class="solid" x="%s" y="%s" width="%s" height="%s"/>`, px(left), px(y-ripeHalfPX), px(max(right-left, 3)), px(2*ripeHalfPX))
}

// tubWords stand above the line, each at its mark; the first bears the tub's
// name.
func (f *stripFigure) tubWords(l tubLine, base float64) {
	all := f.shown()
	head := l.name + ": "
	at := func(d term.Date, words string) {
		if !all.Holds(d) {
			return
		}
		x, y := f.middle(d), base
		choices := []lettering{
			{words: head + words, class: "sm", at: scene.Point{X: x - sowRingPX, Y: y}},
			{words: head + words, class: "sm", anchor: scene.Middle, at: scene.Point{X: x, Y: y}},
			{words: head + words, class: "sm", anchor: scene.End, at: scene.Point{X: x + sowRingPX, Y: y}},
		}
		if f.place(choices...) {
			head = ""
		}
	}
	at(l.sow, "sow")
	at(l.move, "into the tub")
	at(l.ripe, "harvest")
	if words := l.before(all.From); words != "" && head != "" {
		f.place(lettering{words: head + words, class: "sm", at: scene.Point{X: f.left + 1, Y: base}})
	}
}

// before says where a tub stands as the days shown begin.
func (l tubLine) before(from term.Date) string {
	switch {
	case l.ripe.Set() && !from.Before(l.last):
		return "harvested by " + l.last.Words()
	case l.move.Set() && l.move.Before(from):
		return "in the tub"
	case l.sow.Set() && l.sow.Before(from):
		return "in the nursery"
	case l.sow.Set():
		return "sow on " + l.sow.Words()
	}
	return ""
}

// text is a tub's line as a sentence.
func (l tubLine) text() string {
	var parts []string
	if l.sow.Set() {
		parts = append(parts, "sow on "+l.sow.Words())
	}
	if l.move.Set() {
		parts = append(parts, "into the tub on "+l.move.Words())
	}
	switch {
	case l.ripe.Set() && l.last != l.ripe:
		parts = append(parts, fmt.Sprintf("harvest from %s to %s", l.ripe.Words(), l.last.Words()))
	case l.ripe.Set():
		parts = append(parts, "harvest on "+l.ripe.Words())
	}
	return l.name + ": " + strings.Join(parts, ", ") + "."
}

// in are the days of a tub that fall in a span, as sentences.
func (l tubLine) in(span term.Span) []string {
	var out []string
	for _, d := range []struct {
		on    term.Date
		words string
	}{{l.sow, "Sow " + l.name + " on "}, {l.move, "Move " + l.name + " into its tub on "}, {l.ripe, "Harvest " + l.name + " from "}} {
		if d.on.Set() && span.Holds(d.on) {
			out = append(out, d.words+d.on.Words()+".")
		}
	}
	return out
}
