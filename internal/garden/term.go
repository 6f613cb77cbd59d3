package garden

import (
	"fmt"
	"slices"
	"time"

	"rootbell/internal/garden/plan"
	"rootbell/internal/school/term"
)

// calendar is the school's calendar as the plan gives it, with what is not
// given taken by default.
func calendar(s plan.School) *term.Calendar {
	g := term.Given{
		ArriveMin: int(s.Arrive.Or(term.ArriveMin)),
		LeaveMin:  int(s.Leave.Or(term.LeaveMin)),
		OpenDays:  openDays(s.OpenDays),
	}
	for _, t := range s.Terms {
		g.Terms = append(g.Terms, termSpan(t))
	}
	for _, c := range s.Closed {
		g.Closed = append(g.Closed, term.Closure{Span: closedSpan(c), Why: c.Why})
	}
	return term.New(g)
}

// dayNames are the days of the week as a plan writes them.
var dayNames = [...]string{"sun", "mon", "tue", "wed", "thu", "fri", "sat"}

func openDays(names []string) []time.Weekday {
	var out []time.Weekday
	for i, name := range dayNames {
		if slices.Contains(names, name) {
			out = append(out, time.Weekday(i))
		}
	}
	return out
}

func termSpan(t plan.Term) term.Span { return term.Span{From: term.Date(t.From), To: term.Date(t.To)} }

func closedSpan(c plan.Closed) term.Span {
	if c.Day.Set() {
		return term.Span{From: term.Date(c.Day), To: term.Date(c.Day)}
	}
	return term.Span{From: term.Date(c.From), To: term.Date(c.To)}
}

// yearDays is longer than any term.
const yearDays = 366

// term enters the calendar, and says what in it does not agree.
func (a *assessor) term() *term.Calendar {
	s := a.plan.School
	c := calendar(s)
	for i := range s.Terms {
		a.termDays(i, c)
	}
	if s.OpenDays != nil && len(s.OpenDays) == 0 {
		a.warn("open-days-none", "school.open_days", "No day of the week is named as one with school, so Monday to Friday are taken.", "Name them: open_days: [mon, tue, wed, thu, fri].")
	}
	for i, closed := range s.Closed {
		a.closedDays(i, closedSpan(closed), c)
	}
	if s.Leave.Given || s.Arrive.Given {
		arrive, leave := s.Arrive.Or(term.ArriveMin), s.Leave.Or(term.LeaveMin)
		if leave <= arrive {
			field := "school.leave"
			if !s.Leave.Given {
				field = "school.arrive"
			}
			a.stop("leave-before-arrive", field, fmt.Sprintf("The last person leaves at %s, and the first one comes at %s.", leave, arrive), "Write both by the 24-hour clock, such as \"15:30\": school.arrive, school.leave.")
		}
	}
	if s.Meal.Day.Set() {
		a.mealDay(term.Date(s.Meal.Day), c)
	}
	return c
}

func (a *assessor) termDays(i int, c *term.Calendar) {
	field, s := fmt.Sprintf("school.terms[%d]", i), termSpan(a.plan.School.Terms[i])
	switch days := s.Days(); {
	case days == 0:
		a.stop("term-backwards", field+".to", fmt.Sprintf("The term ends on %s, before it begins on %s.", s.To.Long(), s.From.Long()), "Swap the two days, or look at their years.")
		return
	case days > yearDays:
		a.warn("term-long", field, fmt.Sprintf("The term from %s to %s is longer than a year.", s.From.Long(), s.To.Long()), "Look at the years. Write each term of a school year by itself.")
		return
	}
	for j, other := range a.plan.School.Terms[:i] {
		if o := termSpan(other); s.Meets(o) {
			a.warn("terms-overlap", field, fmt.Sprintf("This term begins on %s and ends on %s, and shares days with term %d, from %s to %s.", s.From.Long(), s.To.Long(), j+1, o.From.Long(), o.To.Long()), "A school has one term at a time: change the first or the last day of one.")
			return
		}
	}
	if first, found := c.OpenFrom(s.From); !found || first.After(s.To) {
		a.warn("term-without-days", field, fmt.Sprintf("The term from %s to %s has no day on which somebody comes.", s.From.Long(), s.To.Long()), "Look at school.open_days and school.closed.")
	}
}

func (a *assessor) closedDays(i int, s term.Span, c *term.Calendar) {
	field := fmt.Sprintf("school.closed[%d]", i)
	if s.Days() == 0 {
		a.stop("closed-backwards", field+".to", fmt.Sprintf("The closed days end on %s, before they begin on %s.", s.To.Long(), s.From.Long()), "Swap the two days, or look at their years.")
		return
	}
	if c.Known() && !slices.ContainsFunc(c.Terms(), s.Meets) {
		a.note("closed-outside-terms", field, fmt.Sprintf("%s in no term, so it changes nothing.", lies(s)), "Look at the year, or take it out.")
	}
}

func lies(s term.Span) string {
	if s.From == s.To {
		return fmt.Sprintf("The closed day %s lies", s.From.Long())
	}
	return fmt.Sprintf("The closed stretch from %s to %s lies", s.From.Long(), s.To.Long())
}

func (a *assessor) mealDay(d term.Date, c *term.Calendar) {
	reason := ""
	switch on := c.On(d); {
	case on.Kind == term.Open:
		return
	case on.Kind == term.Outside:
		reason = "outside every term"
	case on.Kind == term.Weekly:
		reason = "a day of the week without school"
	case on.Why != "":
		reason = "closed: " + on.Why
	default:
		reason = "one of the closed days"
	}
	hint := "Choose another day."
	before, was := c.Previous(d)
	after, comes := c.Next(d)
	switch {
	case was && comes:
		hint = fmt.Sprintf("The open days next to it are %s and %s.", before.Long(), after.Long())
	case was:
		hint = fmt.Sprintf("The last open day before it is %s.", before.Long())
	case comes:
		hint = fmt.Sprintf("The first open day after it is %s.", after.Long())
	}
	a.warn("meal-closed", "school.meal.day", fmt.Sprintf("The meal is on %s, %s. Nobody is there to harvest and eat.", d.Long(), reason), hint)
}
