package figure

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// Strip is the strip of the term: its weeks with their numbers and Mondays, a
// cell a day, closed days hatched (fill url(#hatch), a pattern that the page
// has), today filled, and the meal hanging from its day. For a desk it is
// 1032 px wide and shows the term of today, else the next one, else the last,
// at most 26 weeks of it; for a hand it is 328 px wide and shows the week of
// today and the two after it. today may be no day; nothing is filled then. ok
// is false for a plan without terms.
func Strip(a *garden.Assessment, today term.Date, w Width) (svg string, ok bool) {
	f, ok := stripOf(a, today, w)
	if !ok {
		return "", false
	}
	f.draw()
	return f.svg(), true
}

// stripFigure is one strip being drawn.
type stripFigure struct {
	pen
	calendar *term.Calendar
	which    int // the term's place among the calendar's
	span     term.Span
	weeks    []term.Week // that are shown
	today    term.Date
	meal     term.Date // no day where the plan has none
	hand     bool
	left     float64 // where the first day begins
	day      float64 // width of a day
	top      float64 // of the row of days
	cell     float64 // its height
	tubs     []tubLine
	low      float64 // where the tubs' lines end
}

// Sizes of the strip in px, and how many weeks it may show.
const (
	stripDesk  = 1032.0
	stripHand  = 328.0
	stripLeft  = 82.0 // for the words before the rows
	mostWeeks  = 26
	weeksPast  = 6 // of a term too long to be shown whole, before today
	weeksHand  = 3
	labelFrom  = 4.0 // between a week's line and its words
	lineHeight = 14.0
)

func stripOf(a *garden.Assessment, today term.Date, w Width) (*stripFigure, bool) {
	if a == nil || a.Term == nil || !a.Term.Known() {
		return nil, false
	}
	f := &stripFigure{calendar: a.Term, today: today, hand: w == Hand, meal: term.Date(a.Plan.School.Meal.Day), tubs: tubLines(a)}
	day := today
	if !day.Set() {
		day = a.Term.Terms()[0].From
	}
	f.which, _ = a.Term.Current(day)
	f.span = a.Term.Terms()[f.which]
	f.width, f.cell, f.top = stripDesk, 15, 22
	if f.hand {
		f.width, f.cell, f.top = stripHand, 20, 20
	}
	f.setWeeks(day)
	if !f.hand {
		f.left = stripLeft
	}
	f.day = (f.width - 1 - f.left) / float64(7*len(f.weeks))
	if !f.oneLine() {
		f.top += lineHeight
	}
	return f, true
}

// setWeeks takes the weeks that are shown.
func (f *stripFigure) setWeeks(day term.Date) {
	first, last := 1, f.calendar.WeekCount(f.which)
	now := f.calendar.WeekOf(f.which, day)
	switch {
	case f.hand:
		first, last = now, now+weeksHand-1
	case last > mostWeeks:
		first = max(1, min(now-weeksPast, last-mostWeeks+1))
		last = first + mostWeeks - 1
	}
	for n := first; n <= last; n++ {
		f.weeks = append(f.weeks, f.calendar.Week(f.which, n))
	}
}

// shown are the days from the first to the last cell.
func (f *stripFigure) shown() term.Span {
	return term.Span{From: f.weeks[0].Monday, To: f.weeks[len(f.weeks)-1].Span().To}
}

// x is where a day's cell begins.
func (f *stripFigure) x(d term.Date) float64 {
	return f.left + f.day*float64(d.Since(f.weeks[0].Monday))
}

func (f *stripFigure) foot() float64 { return f.top + f.cell }

func (f *stripFigure) draw() {
	f.height = f.hangRow(hangRows)
	f.rowNames()
	f.heads()
	f.days()
	f.reasons()
	f.hangings()
	f.tubRows()
	f.height = f.lowest()
}

func (f *stripFigure) rowNames() {
	if f.hand {
		return
	}
	f.text(lettering{words: "week", class: "sm lt", anchor: scene.End, at: scene.Point{X: f.left - 10, Y: 14}})
	f.text(lettering{words: "school days", class: "sm lt", anchor: scene.End, at: scene.Point{X: f.left - 10, Y: f.top + 12}})
}

// weekHead are the words over a week, in their order: its number, bold, with
// the word before it where no row has that name, and its Monday. A week before
// the term or after it has no number.
type weekHead struct{ week, number, monday lettering }

func (f *stripFigure) headOf(w term.Week) weekHead {
	h := weekHead{week: lettering{class: "sm"}, number: lettering{class: "sm b"}, monday: lettering{words: w.Monday.Short(), class: "sm"}}
	if w.Number >= 1 && w.Number <= f.calendar.WeekCount(f.which) {
		h.number.words = strconv.Itoa(w.Number)
		if f.hand {
			h.week.words = "week"
		}
	}
	return h
}

// set puts the words in their places from a week's line on, and tells how far
// they run. The Monday stands under the number unless both are in one line.
func (h *weekHead) set(x float64, one bool) float64 {
	at := scene.Point{X: x + labelFrom, Y: 14}
	h.week.at, h.number.at, h.monday.at = at, at, at
	if h.week.words != "" {
		h.number.at.X = at.X + h.week.long() + 3
	}
	switch {
	case !one:
		h.monday.at.Y += lineHeight
	case h.number.words != "":
		h.monday.at.X = h.number.at.X + h.number.long() + 5
	}
	return max(h.monday.at.X+h.monday.long(), h.numberEnd()) - x
}

func (h weekHead) numberEnd() float64 { return h.number.at.X + h.number.long() }

// oneLine tells whether each week has room for its number and its Monday side
// by side.
func (f *stripFigure) oneLine() bool {
	for _, w := range f.weeks {
		h := f.headOf(w)
		if h.set(0, true)+airPX > 7*f.day {
			return false
		}
	}
	return true
}

// every is how many weeks apart the words that run so far can be written.
func (f *stripFigure) every(run func(h *weekHead) float64) int {
	widest := 0.0
	for _, w := range f.weeks {
		h := f.headOf(w)
		widest = max(widest, run(&h))
	}
	return max(1, int(math.Ceil((widest+airPX)/(7*f.day))))
}

// heads writes the words over the weeks. Where number and Monday stand under
// each other each of them is written as often as it has room.
func (f *stripFigure) heads() {
	one := f.oneLine()
	everyMonday := f.every(func(h *weekHead) float64 { return h.set(0, one) })
	everyNumber := f.every(func(h *weekHead) float64 { h.set(0, one); return h.numberEnd() })
	for i, w := range f.weeks {
		x := f.x(w.Monday)
		h := f.headOf(w)
		fits := x+h.set(x, one) <= f.width
		if h.number.words != "" && i%everyNumber == 0 && h.numberEnd() <= f.width {
			if h.week.words != "" {
				f.text(h.week)
			}
			f.text(h.number)
		}
		if i%everyMonday == 0 && fits {
			f.text(h.monday)
			f.weekLine(x, 4, f.foot())
			continue
		}
		// The Monday of the week before runs past this line.
		if i%everyNumber == 0 {
			f.weekLine(x, 4, 4+lineHeight)
		}
		f.weekLine(x, f.top, f.foot())
	}
	f.weekLine(f.x(f.shown().To.Add(1)), 4, f.foot())
}

func (f *stripFigure) weekLine(x, from, to float64) {
	f.line("n", scene.Point{X: x, Y: from}, scene.Point{X: x, Y: to})
}

// days draws a cell for each day, the closed ones hatched and today filled. All
// cells are one path and all hatching is another: the strip stands on every page.
func (f *stripFigure) days() {
	var cells, shut strings.Builder
	all := f.shown()
	frame := func(d *strings.Builder, from, to float64) {
		d.WriteString("M" + px(from) + " " + px(f.top) + "H" + px(to) + "V" + px(f.foot()) + "H" + px(from) + "Z")
	}
	frame(&cells, f.x(all.From), f.x(all.To.Add(1)))
	hatched := func(d term.Date) bool { return d != f.today && !f.calendar.Open(d) }
	for d, from := all.From, all.From; !d.After(all.To); d = d.Add(1) {
		if d != all.From {
			cells.WriteString("M" + px(f.x(d)) + " " + px(f.top) + "V" + px(f.foot()))
		}
		if !hatched(d) {
			from = d.Add(1)
		} else if next := d.Add(1); next.After(all.To) || !hatched(next) {
			frame(&shut, f.x(from), f.x(next))
			from = next
		}
	}
	if shut.Len() > 0 {
		f.printf(`<path class="shut" fill="url(#hatch)" d="%s"/>`, shut.String())
	}
	f.printf(`<path class="day" d="%s"/>`, cells.String())
	if all.Holds(f.today) {
		f.printf(`<rect class="day now" x="%s" y="%s" width="%s" height="%s"/>`, px(f.x(f.today)), px(f.top), px(f.day), px(f.cell))
	}
	for d := all.From; f.hand && !d.After(all.To); d = d.Add(1) {
		if d == f.today || f.calendar.Open(d) {
			f.initial(d, f.x(d))
		}
	}
}

// initial writes the first letter of an open day into its cell.
func (f *stripFigure) initial(d term.Date, x float64) {
	class := "sm"
	if d == f.today {
		class = "sm reversed"
	}
	f.text(lettering{words: d.Weekday().String()[:1], class: class, anchor: scene.Middle, at: scene.Point{X: x + f.day/2, Y: f.top + 14}})
}

// reasons writes why days are closed over them, on the ground of the page,
// where the hatching round them is wide enough and today is not among it.
func (f *stripFigure) reasons() {
	for _, s := range f.calendar.Closures() {
		run, shown := f.hatched(s.Span)
		if s.Why == "" || !shown || run.Holds(f.today) {
			continue
		}
		left, right := f.x(run.From), f.x(run.To.Add(1))
		t := lettering{words: s.Why, class: "sm", anchor: scene.Middle, at: scene.Point{X: (left + right) / 2, Y: f.top + f.cell/2 + 4}}
		plate := t.box(3).bounds()
		if plate.Width() > right-left-2 || f.harm(t) > 0 {
			continue
		}
		f.printf(`<rect class="plate" x="%s" y="%s" width="%s" height="%s"/>`, px(plate.Min.X), px(f.top+1), px(plate.Width()), px(f.cell-2))
		f.text(t)
	}
}

// hatched are the closed days shown that lie round a closure without an open
// one between; shown is false where the strip has no day of the closure.
func (f *stripFigure) hatched(s term.Span) (run term.Span, shown bool) {
	all := f.shown()
	if !s.Meets(all) {
		return run, false
	}
	run = s
	if run.From.Before(all.From) {
		run.From = all.From
	}
	if run.To.After(all.To) {
		run.To = all.To
	}
	for d := run.From.Add(-1); !d.Before(all.From) && !f.calendar.Open(d); d = d.Add(-1) {
		run.From = d
	}
	for d := run.To.Add(1); !d.After(all.To) && !f.calendar.Open(d); d = d.Add(1) {
		run.To = d
	}
	return run, true
}

// svg is the finished figure.
func (f *stripFigure) svg() string {
	w := Desk
	if f.hand {
		w = Hand
	}
	return fmt.Sprintf(`<svg class="fig term" id="strip-%s" data-from="%s" width="%s" height="%s" viewBox="0 0 %s %s" role="img" aria-label="%s">%s</svg>`,
		w, f.shown().From, px(f.width), px(f.height), px(f.width), px(f.height), escaped(f.label()), f.out.String())
}
