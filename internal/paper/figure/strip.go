package figure

import (
	"fmt"
	"strconv"

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
	f := &stripFigure{calendar: a.Term, today: today, hand: w == Hand, meal: term.Date(a.Plan.School.Meal.Day)}
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
	f.height = f.foot() + 2*lineHeight + 7
	f.rowNames()
	f.heads()
	f.days()
	f.reasons()
	f.hangings()
	f.height = f.lowest()
}

func (f *stripFigure) rowNames() {
	if f.hand {
		return
	}
	f.text(lettering{words: "week", class: "sm lt", anchor: scene.End, at: scene.Point{X: f.left - 10, Y: 14}})
	f.text(lettering{words: "school days", class: "sm lt", anchor: scene.End, at: scene.Point{X: f.left - 10, Y: f.top + 12}})
}

// weekWords are the words over a week: its number, bold, and its Monday. A week
// before the term or after it has no number.
func (f *stripFigure) weekWords(w term.Week) (number, monday string) {
	if w.Number >= 1 && w.Number <= f.calendar.WeekCount(f.which) {
		number = strconv.Itoa(w.Number)
		if f.hand {
			number = "week " + number
		}
	}
	return number, w.Monday.Short()
}

// oneLine tells whether each week has room for its number and its Monday side
// by side.
func (f *stripFigure) oneLine() bool {
	for _, w := range f.weeks {
		number, monday := f.weekWords(w)
		if labelFrom+f.headWidth(number)+smallText(monday).long()+airPX > 7*f.day {
			return false
		}
	}
	return true
}

// headWidth is how far a week's Monday stands from its number's begin.
func (f *stripFigure) headWidth(number string) float64 {
	if number == "" {
		return 0
	}
	return lettering{words: number, class: "sm b"}.long() + 6
}

func smallText(words string) lettering { return lettering{words: words, class: "sm"} }

// every is how many weeks apart the Mondays are written where they stand under
// the numbers.
func (f *stripFigure) every() int {
	widest := 0.0
	for _, w := range f.weeks {
		widest = max(widest, smallText(w.Monday.Short()).long())
	}
	n := 1
	for float64(n)*7*f.day < widest+labelFrom+airPX {
		n++
	}
	return n
}

func (f *stripFigure) heads() {
	one, every := f.oneLine(), f.every()
	for i, w := range f.weeks {
		x := f.x(w.Monday)
		number, monday := f.weekWords(w)
		f.line("n", scene.Point{X: x, Y: 4}, scene.Point{X: x, Y: f.foot()})
		at := scene.Point{X: x + labelFrom, Y: 14}
		if number != "" {
			f.text(lettering{words: number, class: "sm b", at: at})
		}
		switch {
		case one:
			f.text(lettering{words: monday, class: "sm", at: at.Plus(scene.Point{X: f.headWidth(number)})})
		case i%every == 0 && at.X+smallText(monday).long() <= f.width:
			f.text(lettering{words: monday, class: "sm", at: at.Plus(scene.Point{Y: lineHeight})})
		}
	}
	end := f.x(f.shown().To.Add(1))
	f.line("n", scene.Point{X: end, Y: 4}, scene.Point{X: end, Y: f.foot()})
}

// days draws a cell for each day. A script finds a day by data-day.
func (f *stripFigure) days() {
	for _, w := range f.weeks {
		for _, d := range w.Days {
			x := f.x(d.Date)
			class, fill := "day", ""
			switch {
			case d.Date == f.today:
				class = "day now"
			case d.Kind != term.Open:
				class, fill = "day shut", ` fill="url(#hatch)"`
			}
			f.printf(`<rect class="%s" data-day="%s"%s x="%s" y="%s" width="%s" height="%s"/>`,
				class, d.Date, fill, px(x), px(f.top), px(f.day), px(f.cell))
			if f.hand && (d.Kind == term.Open || d.Date == f.today) {
				f.initial(d.Date, x)
			}
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
// where the hatching is wide enough and today is not among them.
func (f *stripFigure) reasons() {
	shown := f.shown()
	for _, s := range f.calendar.Closures() {
		from, to := s.From, s.To
		if from.Before(shown.From) {
			from = shown.From
		}
		if to.After(shown.To) {
			to = shown.To
		}
		part := term.Span{From: from, To: to}
		if s.Why == "" || part.Days() == 0 || part.Holds(f.today) {
			continue
		}
		left, right := f.x(from), f.x(to.Add(1))
		t := lettering{words: s.Why, class: "sm", anchor: scene.Middle, at: scene.Point{X: (left + right) / 2, Y: f.top + f.cell/2 + 4}}
		plate := t.box(3).bounds()
		if plate.Width() > right-left-2 || f.harm(t) > 0 {
			continue
		}
		f.printf(`<rect class="plate" x="%s" y="%s" width="%s" height="%s"/>`, px(plate.Min.X), px(f.top+1), px(plate.Width()), px(f.cell-2))
		f.text(t)
	}
}

// svg is the finished figure.
func (f *stripFigure) svg() string {
	w := Desk
	if f.hand {
		w = Hand
	}
	return fmt.Sprintf(`<svg class="fig term" id="strip-%s" width="%s" height="%s" viewBox="0 0 %s %s" role="img" aria-label="%s">%s</svg>`,
		w, px(f.width), px(f.height), px(f.width), px(f.height), escaped(f.label()), f.out.String())
}
