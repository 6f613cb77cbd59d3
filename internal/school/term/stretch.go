package term

import (
	"slices"
	"strings"
	"time"
)

// Stretch is a closed stretch: days in a row on which nobody comes, as many as
// there are. It lies between two open days.
type Stretch struct {
	Span
	Why   string    // 'weekend', the reasons given, or what else closes the days
	Since time.Time // when the last person leaves on the open day before
	Until time.Time // when the first one comes on the open day after
}

// Hours is how long nobody is there, as a tub counts it: an hour less or more
// where the clocks change meanwhile.
func (s Stretch) Hours() float64 { return s.Until.Sub(s.Since).Hours() }

// Before is the last open day before the stretch.
func (s Stretch) Before() Date { return s.From.Add(-1) }

// After is the first open day after it.
func (s Stretch) After() Date { return s.To.Add(1) }

// Stretches are the closed stretches with a day in the span, in their order.
// The zone (nil: UTC) is the school's: its clock changes count. What comes
// before the first open day of all and after the last has no end and is none.
func (c *Calendar) Stretches(in Span, zone *time.Location) []Stretch {
	var out []Stretch
	last, found := c.Previous(in.From)
	if !found {
		if last, found = c.OpenFrom(in.From); !found {
			return nil
		}
	}
	for !last.After(in.To) {
		next, more := c.Next(last)
		if !more {
			return out
		}
		if s := (Span{last.Add(1), next.Add(-1)}); s.Meets(in) {
			out = append(out, c.stretch(s, zone))
		}
		last = next
	}
	return out
}

// StretchAt is the closed stretch that a day lies in. False on an open day, and
// before the first open day and after the last.
func (c *Calendar) StretchAt(d Date, zone *time.Location) (Stretch, bool) {
	if c.Open(d) {
		return Stretch{}, false
	}
	last, before := c.Previous(d)
	next, after := c.Next(d)
	if !before || !after {
		return Stretch{}, false
	}
	return c.stretch(Span{last.Add(1), next.Add(-1)}, zone), true
}

func (c *Calendar) stretch(s Span, zone *time.Location) Stretch {
	return Stretch{
		Span: s, Why: c.reasons(s),
		Since: s.From.Add(-1).At(c.leave, zone), Until: s.To.Add(1).At(c.arrive, zone),
	}
}

// What closes a stretch for which no reason is given.
const (
	betweenTerms   = "between terms"
	closedDays     = "closed"
	weekend        = "weekend"
	betweenLessons = "no school day"
)

// reasons are why a stretch is closed: those given, each once, and without any
// what sort of days they are. A stretch can have hundreds of days, so it is
// looked at by its closures and terms.
func (c *Calendar) reasons(s Span) string {
	var out []string
	add := func(why string) {
		if why != "" && !slices.Contains(out, why) {
			out = append(out, why)
		}
	}
	shut := false
	for _, closure := range c.closed {
		if closure.Meets(s) {
			shut = true
			add(closure.Why)
		}
	}
	if _, between := c.outsideIn(s); between {
		add(betweenTerms)
	}
	switch {
	case len(out) > 0:
	case shut:
		add(closedDays)
	case s.Days() == 2 && s.From.Weekday() == time.Saturday:
		add(weekend)
	default:
		add(betweenLessons)
	}
	return strings.Join(out, ", ")
}

// outsideIn is the first day of a span that lies outside every term.
func (c *Calendar) outsideIn(s Span) (Date, bool) {
	if !c.Known() {
		return Date{}, false
	}
	d := s.From
	if t, inside := c.holding(c.within, d); inside {
		d = t.To.Add(1)
	}
	return d, !d.After(s.To)
}
