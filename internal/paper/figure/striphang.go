package figure

import (
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// hanging is one line of words under the row of days, with the line that runs
// from its day down to it. Words that hang from no day have no such line.
type hanging struct {
	lettering
	hangs    bool
	from, to scene.Point
}

// hits tells whether two of them would run into each other.
func (h hanging) hits(o hanging) bool {
	own, other := h.box(airPX), o.box(airPX)
	return own.overlaps(o.box(0)) || o.hangs && own.meets(o.from, o.to) || h.hangs && other.meets(h.from, h.to)
}

// hangings are what hangs under the row of days: today, the meal, and for a
// hand the day after the closed ones. Each has its places in the order in which
// they are good; the first set of places in which all have room is taken.
func (f *stripFigure) hangings() {
	var all [][]hanging
	if words := f.todayWords(); words != "" {
		all = append(all, f.hungAt(f.today, words))
	}
	if f.shown().Holds(f.meal) && f.meal != f.today {
		all = append(all, f.hungAt(f.meal, "eat, "+f.meal.Words()))
	}
	if words := f.againWords(); f.hand && words != "" {
		all = append(all, f.loose(words))
	}
	for _, h := range f.placed(all, nil) {
		if h.hangs {
			f.line("n", h.from, h.to)
		}
		f.text(h.lettering)
	}
}

// placed gives each its first place that runs into none of those taken; it
// leaves out the last of them where no set of places has room for all.
func (f *stripFigure) placed(all [][]hanging, taken []hanging) []hanging {
	if len(all) == 0 {
		return taken
	}
	most := taken
	for _, h := range all[0] {
		if !f.inside(h) || anyHits(taken, h) {
			continue
		}
		got := f.placed(all[1:], append(taken[:len(taken):len(taken)], h))
		if len(got) == len(taken)+len(all) {
			return got
		}
		if len(got) > len(most) {
			most = got
		}
	}
	return most
}

func (f *stripFigure) inside(h hanging) bool {
	b := h.box(0).bounds()
	return b.Min.X >= 0 && b.Max.X <= f.width
}

func anyHits(taken []hanging, h hanging) bool {
	for _, o := range taken {
		if h.hits(o) {
			return true
		}
	}
	return false
}

// hangRows is how many rows of words there may be under the days; besidePX is
// how far words begin, or end, on the other side of the line they hang from.
const (
	hangRows = 3
	besidePX = 3.0
)

// hangRow is the base line of a row of words under the days.
func (f *stripFigure) hangRow(row int) float64 {
	return f.foot() + 7 + smallPX*over + float64(row)*(lineHeight+1)
}

// hungAt are the places for words that hang from a day. The line to a day that
// is not shown is left out.
func (f *stripFigure) hungAt(d term.Date, words string) []hanging {
	var out []hanging
	for row := range hangRows {
		y := f.hangRow(row)
		h := hanging{lettering: lettering{words: words, class: "sm b"}}
		if !f.shown().Holds(d) {
			h.at = scene.Point{X: f.left, Y: y}
			out = append(out, h)
			continue
		}
		x := f.x(d) + f.day/2
		h.hangs, h.from, h.to = true, scene.Point{X: x, Y: f.foot()}, scene.Point{X: x, Y: y - smallPX*over - 1}
		h.at = scene.Point{X: x - besidePX, Y: y}
		out = append(out, h)
		h.anchor, h.at.X = scene.End, x+besidePX
		out = append(out, h)
		h.anchor, h.at.X = scene.Middle, x
		out = append(out, h)
	}
	return out
}

// loose are the places for words that hang from no day: at the right end, then
// at the left one.
func (f *stripFigure) loose(words string) []hanging {
	var out []hanging
	for row := range hangRows {
		h := hanging{lettering: lettering{words: words, class: "sm", anchor: scene.End}}
		h.at = scene.Point{X: f.width - 1, Y: f.hangRow(row)}
		out = append(out, h)
		h.anchor, h.at.X = scene.Start, 1
		out = append(out, h)
	}
	return out
}

// todayWords name today; on the day of the meal they say that too, and outside
// the term how it lies to it.
func (f *stripFigure) todayWords() string {
	if !f.today.Set() {
		return ""
	}
	words := "today, " + f.today.Words()
	switch {
	case f.today == f.meal:
		words += ": eat"
	case f.hand:
	case f.today.Before(f.span.From):
		words += ": the term begins on " + f.span.From.Words()
	case f.today.After(f.span.To):
		words += ": the term ended on " + f.span.To.Words()
	}
	return words
}

// againWords name the open day after the next closed ones; empty where every
// day shown is open.
func (f *stripFigure) againWords() string {
	closed := f.today
	if !closed.Set() {
		closed = f.weeks[0].Monday
	}
	for f.calendar.Open(closed) {
		if closed = closed.Add(1); closed.After(f.shown().To) {
			return ""
		}
	}
	next, comes := f.calendar.OpenFrom(closed)
	last, was := f.calendar.OpenUntil(closed)
	switch {
	case comes && was:
		return "open again on " + next.Words()
	case comes:
		return "opens on " + next.Words()
	case was:
		return "last open day: " + last.Words()
	}
	return "no open day"
}

// lowest is where the figure ends, under the last row used.
func (f *stripFigure) lowest() float64 {
	low := max(f.foot()+1, f.low)
	for _, b := range f.room.taken {
		low = max(low, b.bounds().Max.Y+3)
	}
	return low
}
