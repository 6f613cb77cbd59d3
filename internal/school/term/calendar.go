package term

import (
	"slices"
	"time"
)

// What is taken where the plan says nothing (common practice, no source; each
// school has its own): the first person there, the last one gone, in minutes
// after midnight.
const (
	ArriveMin = 8*60 + 30
	LeaveMin  = 15*60 + 30
)

// weekdays are the open days where the plan says nothing: weekends are closed.
var weekdays = [...]time.Weekday{time.Monday, time.Tuesday, time.Wednesday, time.Thursday, time.Friday}

// Closure is days on which nobody comes, and why.
type Closure struct {
	Span
	Why string
}

// Given is a calendar as the school gives it. The zero value is a school that
// said nothing: open on weekdays, from 0:00 to 0:00.
type Given struct {
	Terms     []Span         // in any order
	OpenDays  []time.Weekday // none: Monday to Friday
	Closed    []Closure      // in any order
	ArriveMin int            // minutes after midnight, 0 to 1440
	LeaveMin  int
}

// Calendar answers what the school's days are. It never changes.
type Calendar struct {
	terms   []Span // by first day
	closed  []Closure
	within  []Span // the terms, joined where they touch; none: no term bounds it
	shut    []Span // the closed days, joined
	open    [7]bool
	assumed bool
	arrive  int
	leave   int
}

// New is the calendar of what is given. Spans that end before they begin hold
// no day and are left out.
func New(g Given) *Calendar {
	c := &Calendar{arrive: g.ArriveMin, leave: g.LeaveMin, assumed: len(g.OpenDays) == 0}
	days := g.OpenDays
	if c.assumed {
		days = weekdays[:]
	}
	for _, w := range days {
		c.open[(int(w)%7+7)%7] = true
	}
	for _, t := range g.Terms {
		if t.Days() > 0 {
			c.terms = append(c.terms, t)
		}
	}
	for _, s := range g.Closed {
		if s.Days() > 0 {
			c.closed = append(c.closed, s)
			c.shut = append(c.shut, s.Span)
		}
	}
	byFirst := func(a, b Span) int {
		if order := a.From.Compare(b.From); order != 0 {
			return order
		}
		return a.To.Compare(b.To)
	}
	slices.SortStableFunc(c.terms, byFirst)
	slices.SortStableFunc(c.closed, func(a, b Closure) int { return byFirst(a.Span, b.Span) })
	slices.SortStableFunc(c.shut, byFirst)
	c.within, c.shut = joined(c.terms), joined(c.shut)
	return c
}

// joined makes one span of spans that overlap or touch. They come by first day.
func joined(spans []Span) []Span {
	var out []Span
	for _, s := range spans {
		if n := len(out); n > 0 && s.From.Since(out[n-1].To) <= 1 {
			if s.To.After(out[n-1].To) {
				out[n-1].To = s.To
			}
			continue
		}
		out = append(out, s)
	}
	return out
}

// Known tells whether the calendar has a term. Without one every week of the
// year counts as school, less the closed days.
func (c *Calendar) Known() bool { return len(c.terms) > 0 }

// Assumed tells whether nobody said which days of the week are open, so that
// Monday to Friday are taken.
func (c *Calendar) Assumed() bool { return c.assumed }

// Weekdays are the days of the week with school, from Sunday on.
func (c *Calendar) Weekdays() []time.Weekday {
	var out []time.Weekday
	for i, open := range c.open {
		if open {
			out = append(out, time.Weekday(i))
		}
	}
	return out
}

// Terms are the terms by their first day.
func (c *Calendar) Terms() []Span { return slices.Clone(c.terms) }

// Closures are the closed days as given, by their first day.
func (c *Calendar) Closures() []Closure { return slices.Clone(c.closed) }

// Kind is what sort of day it is at the school.
type Kind int

// The four sorts of day. Only on an open one somebody comes.
const (
	Open    Kind = iota
	Weekly       // a day of the week without school, such as Saturday
	Shut         // one of the closed days given
	Outside      // outside every term
)

// Day is one day of the calendar. Why is said for closed days given with a reason.
type Day struct {
	Date
	Kind Kind
	Why  string
}

// On is what sort of day it is. A day that is closed twice over counts as
// outside the terms first, then as one of the closed days.
func (c *Calendar) On(d Date) Day {
	if _, inside := c.holding(c.within, d); c.Known() && !inside {
		return Day{Date: d, Kind: Outside}
	}
	if _, shut := c.holding(c.shut, d); shut {
		return Day{Date: d, Kind: Shut, Why: c.why(d)}
	}
	if !c.open[d.Weekday()] {
		return Day{Date: d, Kind: Weekly}
	}
	return Day{Date: d, Kind: Open}
}

// Open tells whether somebody comes on the day.
func (c *Calendar) Open(d Date) bool { return c.On(d).Kind == Open }

func (c *Calendar) why(d Date) string {
	for _, s := range c.closed {
		if s.Why != "" && s.Holds(d) {
			return s.Why
		}
	}
	return ""
}

// holding is the one of the joined spans that the day falls in.
func (c *Calendar) holding(spans []Span, d Date) (Span, bool) {
	i, found := slices.BinarySearchFunc(spans, d, func(s Span, d Date) int {
		switch {
		case s.To.Before(d):
			return -1
		case s.From.After(d):
			return 1
		}
		return 0
	})
	if !found {
		return Span{}, false
	}
	return spans[i], true
}

// TermAt is the term that a day falls in, by its place among Terms.
func (c *Calendar) TermAt(d Date) (int, bool) {
	i := slices.IndexFunc(c.terms, func(t Span) bool { return t.Holds(d) })
	return i, i >= 0
}

// Current is the term to show on a day: the one it falls in, else the next to
// come, else the last one. False without terms.
func (c *Calendar) Current(d Date) (int, bool) {
	if i, in := c.TermAt(d); in {
		return i, true
	}
	for i, t := range c.terms {
		if t.From.After(d) {
			return i, true
		}
	}
	last, found := -1, Date{}
	for i, t := range c.terms {
		if last < 0 || t.To.After(found) {
			last, found = i, t.To
		}
	}
	return last, last >= 0
}
