package figure

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"rootbell/internal/garden"
	"rootbell/internal/school/term"
)

// StripText says what Strip shows as sentences, one for each week of the term
// of today: 'Week 6, from Mon 15 Feb: closed. Mon 15 to Fri 19 Feb: break.' It
// is nil for a plan without terms.
func StripText(a *garden.Assessment, today term.Date) []string {
	f, ok := stripOf(a, today, Desk)
	if !ok {
		return nil
	}
	var out []string
	for _, w := range f.weeks {
		out = append(out, f.weekText(w))
	}
	return out
}

func (f *stripFigure) weekText(w term.Week) string {
	text := fmt.Sprintf("Week %d, from %s: ", w.Number, w.Monday.Words())
	if open := openNames(w.Days[:]); open == "" {
		text += "closed."
	} else {
		text += "open " + open + "."
	}
	for _, s := range f.closedIn(w.Span()) {
		text += " " + upperFirst(s) + "."
	}
	if w.Span().Holds(f.span.From) {
		text += " The term begins on " + f.span.From.Words() + "."
	}
	if w.Span().Holds(f.span.To) {
		text += " The term ends on " + f.span.To.Words() + "."
	}
	if f.today.Set() && w.Span().Holds(f.today) {
		text += " Today is " + f.today.Words() + "."
	}
	if f.meal.Set() && w.Span().Holds(f.meal) {
		text += " Eat on " + f.meal.Words() + "."
	}
	for _, l := range f.tubs {
		for _, words := range l.in(w.Span()) {
			text += " " + words
		}
	}
	return text
}

// closedIn are the closed days given that fall in a span: 'Mon 8 Mar: staff day'.
func (f *stripFigure) closedIn(in term.Span) []string {
	var out []string
	for _, c := range f.calendar.Closures() {
		if !c.Meets(in) || !c.Meets(f.span) {
			continue
		}
		from, to := c.From, c.To
		if from.Before(in.From) {
			from = in.From
		}
		if to.After(in.To) {
			to = in.To
		}
		text := from.Words()
		if from != to {
			text += " to " + to.Words()
		}
		why := c.Why
		if why == "" {
			why = "closed"
		}
		out = append(out, text+": "+why)
	}
	return out
}

// openNames are the open days of a week: 'Mon to Fri', 'Mon, Wed and Fri'.
func openNames(days []term.Day) string {
	var open []int
	for i, d := range days {
		if d.Kind == term.Open {
			open = append(open, i)
		}
	}
	return dayList(open, func(i int) string { return days[i].Date.Weekday().String()[:3] })
}

// dayList names days by their number: three or more in a row by the first and
// the last.
func dayList(days []int, name func(int) string) string {
	var parts []string
	for i := 0; i < len(days); {
		end := i
		for end+1 < len(days) && days[end+1] == days[end]+1 {
			end++
		}
		switch {
		case end-i >= 2:
			parts = append(parts, name(days[i])+" to "+name(days[end]))
		default:
			for ; i <= end; i++ {
				parts = append(parts, name(days[i]))
			}
		}
		i = end + 1
	}
	return listed(parts)
}

func listed(parts []string) string {
	if len(parts) < 2 {
		return strings.Join(parts, "")
	}
	return strings.Join(parts[:len(parts)-1], ", ") + " and " + parts[len(parts)-1]
}

func upperFirst(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// label is what the strip shows, in sentences.
func (f *stripFigure) label() string {
	var text string
	if f.hand {
		text = fmt.Sprintf("Three weeks from %s.", f.weeks[0].Monday.Words())
	} else {
		text = fmt.Sprintf("Term from %s to %s, %s.", f.span.From.Words(), f.span.To.Long(), count(f.calendar.WeekCount(f.which), "week"))
		if n := f.calendar.WeekCount(f.which); n > len(f.weeks) {
			text += fmt.Sprintf(" Weeks %d to %d are shown.", f.weeks[0].Number, f.weeks[len(f.weeks)-1].Number)
		}
	}
	closed := f.closedIn(f.shown())
	if weekly := f.weeklyNames(); weekly != "" {
		closed = append([]string{"every " + weekly}, closed...)
	}
	if len(closed) > 0 {
		text += " Hatched days are closed: " + strings.Join(closed, "; ") + "."
	}
	if f.today.Set() {
		text += " Today is " + f.today.Words() + f.weekOfToday() + "."
	}
	if f.meal.Set() && f.shown().Holds(f.meal) {
		text += " The meal is on " + f.meal.Words() + "."
	}
	if words := f.againWords(); f.hand && words != "" {
		text += " " + upperFirst(words) + "."
	}
	for _, l := range f.tubs {
		text += " " + l.text()
	}
	return text
}

func (f *stripFigure) weekOfToday() string {
	n := f.calendar.WeekOf(f.which, f.today)
	if n < 1 || n > f.calendar.WeekCount(f.which) {
		return ""
	}
	return fmt.Sprintf(", in week %d", n)
}

// weeklyNames are the days of the week without school, Monday first.
func (f *stripFigure) weeklyNames() string {
	var shut []int
	for i := range 7 {
		if !slices.Contains(f.calendar.Weekdays(), time.Weekday((i+1)%7)) {
			shut = append(shut, i)
		}
	}
	return dayList(shut, func(i int) string { return time.Weekday((i + 1) % 7).String()[:3] })
}
