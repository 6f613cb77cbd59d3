package figure

import (
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// hangings are what hangs under the row of days: today, the meal, and for a
// hand the day after the closed ones.
func (f *stripFigure) hangings() {
	f.hangToday()
	if f.shown().Holds(f.meal) {
		f.hang(f.meal, "eat, "+f.meal.Words(), "sm b")
	}
	if f.hand {
		f.again()
	}
}

// hang writes words under a day, in the first row that has room, with a line
// from the day down to them.
func (f *stripFigure) hang(d term.Date, words, class string) {
	x := f.x(d) + f.day/2
	for row := range 3 {
		y := f.hangRow(row)
		drop := [2]scene.Point{{X: x, Y: f.foot()}, {X: x, Y: y - smallPX*over - 1}}
		t := lettering{words: words, class: class}
		// Beside the line first, so that the eye runs down it, then over its end.
		for _, c := range []struct {
			anchor scene.Anchor
			x      float64
		}{{scene.Start, x - 6}, {scene.End, x + 6}, {scene.Middle, x}} {
			t.anchor, t.at = c.anchor, scene.Point{X: c.x, Y: y}
			if f.harm(t) == 0 && f.crossed(drop[0], drop[1]) == 0 {
				f.line("n", drop[0], drop[1])
				f.text(t)
				return
			}
		}
	}
}

// hangRow is the base line of a row of words under the days.
func (f *stripFigure) hangRow(row int) float64 {
	return f.foot() + 7 + smallPX*over + float64(row)*lineHeight
}

// lowest is where the figure ends, under the last row used.
func (f *stripFigure) lowest() float64 {
	low := f.foot() + 1
	for _, b := range f.room.taken {
		low = max(low, b.bounds().Max.Y+3)
	}
	return low
}

func (f *stripFigure) hangToday() {
	if !f.today.Set() {
		return
	}
	if f.shown().Holds(f.today) {
		f.hang(f.today, "today, "+f.today.Words(), "sm b")
		return
	}
	words := "today, " + f.today.Words()
	switch {
	case f.today.Before(f.span.From):
		words += ": the term begins on " + f.span.From.Words()
	case f.today.After(f.span.To):
		words += ": the term ended on " + f.span.To.Words()
	}
	f.place(lettering{words: words, class: "sm b", at: scene.Point{X: f.left, Y: f.hangRow(0)}})
}

// again says when somebody comes again after the next closed days.
func (f *stripFigure) again() {
	words := f.againWords()
	for row := 0; row < 3 && words != ""; row++ {
		y := f.hangRow(row)
		right := lettering{words: words, class: "sm", anchor: scene.End, at: scene.Point{X: f.width - 1, Y: y}}
		left := lettering{words: words, class: "sm", at: scene.Point{X: 0, Y: y}}
		if f.place(right, left) {
			return
		}
	}
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
