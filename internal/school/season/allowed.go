package season

import "rootbell/internal/school/term"

// Settles tells whether a day suits sowing, thinning or moving plants: it is
// open, and so many open days come after it before the next long closed
// stretch, so that what was disturbed is looked after while it settles.
func Settles(c *term.Calendar, d term.Date) bool {
	if !c.Open(d) {
		return false
	}
	days := int(value(factSettleDays))
	for at := d; days > 0; {
		next, ok := c.Next(at)
		if !ok || next.Since(at)-1 >= int(value(factSettleStretch)) {
			return false
		}
		at, days = next, days-1
	}
	return true
}

// settleFrom is the first day on or after a day that suits; false where none
// comes.
func settleFrom(c *term.Calendar, d term.Date) (term.Date, bool) {
	d, ok := c.OpenFrom(d)
	for ok && !Settles(c, d) {
		d, ok = c.Next(d)
	}
	return d, ok
}

// settleUntil is the last day on or before a day that suits, not before a
// first one.
func settleUntil(c *term.Calendar, d, first term.Date) (term.Date, bool) {
	d, ok := c.OpenUntil(d)
	for ok && !d.Before(first) && !Settles(c, d) {
		d, ok = c.Previous(d)
	}
	return d, ok && !d.Before(first)
}
