package term

// lastYear is the last year that a date is written in.
const lastYear = 9999

// OpenFrom is the first open day on or after a day. False where no open day
// comes any more.
func (c *Calendar) OpenFrom(d Date) (Date, bool) {
	for d.Year <= lastYear {
		day := c.On(d)
		switch day.Kind {
		case Open:
			return d, true
		case Shut:
			span, _ := c.holding(c.shut, d)
			d = span.To.Add(1)
		case Outside:
			next, more := c.termAfter(d)
			if !more {
				return Date{}, false
			}
			d = next
		default:
			d = d.Add(1)
		}
	}
	return Date{}, false
}

// OpenUntil is the last open day on or before a day. False where there was none.
func (c *Calendar) OpenUntil(d Date) (Date, bool) {
	for d.Year >= 0 {
		day := c.On(d)
		switch day.Kind {
		case Open:
			return d, true
		case Shut:
			span, _ := c.holding(c.shut, d)
			d = span.From.Add(-1)
		case Outside:
			last, more := c.termBefore(d)
			if !more {
				return Date{}, false
			}
			d = last
		default:
			d = d.Add(-1)
		}
	}
	return Date{}, false
}

// Next is the first open day after a day.
func (c *Calendar) Next(d Date) (Date, bool) { return c.OpenFrom(d.Add(1)) }

// Previous is the last open day before a day.
func (c *Calendar) Previous(d Date) (Date, bool) { return c.OpenUntil(d.Add(-1)) }

// First is the first open day of all the terms.
func (c *Calendar) First() (Date, bool) {
	if !c.Known() {
		return Date{}, false
	}
	return c.OpenFrom(c.within[0].From)
}

// Last is the last open day of all the terms.
func (c *Calendar) Last() (Date, bool) {
	if !c.Known() {
		return Date{}, false
	}
	return c.OpenUntil(c.within[len(c.within)-1].To)
}

// OpenDays are the school days of a span in their order, none where it ends
// before it begins.
func (c *Calendar) OpenDays(s Span) []Date {
	var out []Date
	for d, more := c.OpenFrom(s.From); more && !d.After(s.To); d, more = c.Next(d) {
		out = append(out, d)
	}
	return out
}

// termAfter is the first day of the next stretch of terms.
func (c *Calendar) termAfter(d Date) (Date, bool) {
	for _, t := range c.within {
		if t.From.After(d) {
			return t.From, true
		}
	}
	return Date{}, false
}

// termBefore is the last day of the stretch of terms before.
func (c *Calendar) termBefore(d Date) (Date, bool) {
	for i := len(c.within) - 1; i >= 0; i-- {
		if c.within[i].To.Before(d) {
			return c.within[i].To, true
		}
	}
	return Date{}, false
}
