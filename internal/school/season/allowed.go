package season

import (
	"time"

	"rootbell/internal/school/term"
)

// Settles tells whether a day suits sowing, thinning or moving plants: it is
// open, and so many open days come after it before the next long closed
// stretch, so that what was disturbed is looked after while it settles.
func Settles(c *term.Calendar, d term.Date) bool {
	if !c.Open(d) {
		return false
	}
	long := longStretch(c)
	for range int(value(factSettleDays)) {
		next, ok := c.Next(d)
		if !ok || next.Since(d)-1 >= long {
			return false
		}
		d = next
	}
	return true
}

// longStretch is how many closed days in a row are more than this school's
// plants are used to: a club that meets once a week has six in every week.
func longStretch(c *term.Calendar) int {
	open := c.Weekdays()
	gap := 0
	for i, d := range open {
		next := open[(i+1)%len(open)]
		days := (int(next-d)+daysAWeek-1)%daysAWeek + 1
		gap = max(gap, days-1)
	}
	return max(int(value(factSettleStretch)), gap+1)
}

const daysAWeek = int(time.Saturday) + 1

// mostSettle bounds how far a day that suits is looked for: a year and more.
const mostSettle = 400

// settleFrom is the first day on or after a day that suits; false where none
// comes within a year.
func settleFrom(c *term.Calendar, d term.Date) (term.Date, bool) {
	last := d.Add(mostSettle)
	d, ok := c.OpenFrom(d)
	for ok && !d.After(last) && !Settles(c, d) {
		d, ok = c.Next(d)
	}
	return d, ok && !d.After(last)
}

// settleUntil is the last day on or before a day that suits, not before a
// first one.
func settleUntil(c *term.Calendar, d, first term.Date) (term.Date, bool) {
	if start := d.Add(-mostSettle); first.Before(start) {
		first = start
	}
	d, ok := c.OpenUntil(d)
	for ok && !d.Before(first) && !Settles(c, d) {
		d, ok = c.Previous(d)
	}
	return d, ok && !d.Before(first)
}
