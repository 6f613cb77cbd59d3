package term

// Week is one week of a term, Monday to Sunday.
type Week struct {
	Number int  // 1 is the week of the term's first day
	Monday Date // also where the term begins later in the week
	Days   [7]Day
}

// Weeks are the weeks of a term, by its place among Terms; none for a term that
// is not there. Days of the first and the last week that lie outside the term
// are among them, as what they are.
func (c *Calendar) Weeks(term int) []Week {
	var out []Week
	for n := 1; n <= c.WeekCount(term); n++ {
		out = append(out, c.Week(term, n))
	}
	return out
}

// WeekCount is how many weeks, Monday to Sunday, a term touches; 0 for a term
// that is not there.
func (c *Calendar) WeekCount(term int) int {
	if term < 0 || term >= len(c.terms) {
		return 0
	}
	t := c.terms[term]
	return t.To.Monday().Since(t.From.Monday())/7 + 1
}

// WeekOf is the number of the week of a term that a day falls in: 1 is its
// first week, and days before it have 0 or less. It is 0 for a term that is not
// there.
func (c *Calendar) WeekOf(term int, d Date) int {
	if term < 0 || term >= len(c.terms) {
		return 0
	}
	return d.Monday().Since(c.terms[term].From.Monday())/7 + 1
}

// Week is a week of a term by its number, 1 for the first. Numbers that the
// term does not have count on before and after it; a term that is not there
// gives the zero week.
func (c *Calendar) Week(term, number int) Week {
	if term < 0 || term >= len(c.terms) {
		return Week{}
	}
	return c.week(number, c.terms[term].From.Monday().Add(7*(number-1)))
}

func (c *Calendar) week(number int, monday Date) Week {
	w := Week{Number: number, Monday: monday}
	for i := range w.Days {
		w.Days[i] = c.On(monday.Add(i))
	}
	return w
}

// Span is the week from its Monday to its Sunday.
func (w Week) Span() Span { return Span{w.Monday, w.Monday.Add(6)} }

// Shut tells whether nobody comes all week.
func (w Week) Shut() bool {
	for _, d := range w.Days {
		if d.Kind == Open {
			return false
		}
	}
	return true
}
