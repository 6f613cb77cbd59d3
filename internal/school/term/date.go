package term

import (
	"fmt"
	"time"
)

// Date is a day of the calendar, without an hour or a zone. The zero value is
// no day. Years 0 to 9999 are written with four digits.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// DateOf is the day that a moment falls on in the moment's own zone.
func DateOf(t time.Time) Date {
	y, m, d := t.Date()
	return Date{y, m, d}
}

// ParseDate reads a day as ISO 8601 writes it: 2027-02-10.
func ParseDate(text string) (Date, error) {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return Date{}, fmt.Errorf("%q is no day; a day is written as 2027-02-10, year, month, day", text)
	}
	return DateOf(t), nil
}

// Set tells whether it is a day at all.
func (d Date) Set() bool { return d != Date{} }

// String is the day as ISO 8601 writes it: 2027-02-10.
func (d Date) String() string { return fmt.Sprintf("%04d-%02d-%02d", d.Year, int(d.Month), d.Day) }

// Words is the day as people say it within a school year: Wed 10 Feb.
func (d Date) Words() string { return d.noon().Format("Mon 2 Jan") }

// Short is the day without its weekday: 10 Feb.
func (d Date) Short() string { return d.noon().Format("2 Jan") }

// Long is the day with its year, for days of another school year: Wed 10 Feb 2027.
func (d Date) Long() string { return d.noon().Format("Mon 2 Jan 2006") }

// Weekday is the day of the week.
func (d Date) Weekday() time.Weekday { return d.noon().Weekday() }

// Add is the day so many days later; earlier for a negative number.
func (d Date) Add(days int) Date { return DateOf(d.noon().AddDate(0, 0, days)) }

// Since is how many days d lies after the other day; negative before it.
func (d Date) Since(other Date) int {
	const day = 24 * 60 * 60
	return int((d.noon().Unix() - other.noon().Unix()) / day)
}

// Compare is -1, 0 or +1 as d lies before, on or after the other day.
func (d Date) Compare(other Date) int {
	return d.noon().Compare(other.noon())
}

// Before tells whether d is an earlier day.
func (d Date) Before(other Date) bool { return d.Compare(other) < 0 }

// After tells whether d is a later day.
func (d Date) After(other Date) bool { return d.Compare(other) > 0 }

// Monday is the Monday of the day's week: the day itself or the last one before.
func (d Date) Monday() Date {
	const days = 7
	return d.Add(-(int(d.Weekday()) - int(time.Monday) + days) % days)
}

// At is the moment of so many minutes after midnight on the day, by the clock
// of the zone (nil: UTC). Where the clock skips that time or shows it twice, it
// is read as time.Date reads it.
func (d Date) At(minutes int, zone *time.Location) time.Time {
	if zone == nil {
		zone = time.UTC
	}
	return time.Date(d.Year, d.Month, d.Day, 0, minutes, 0, 0, zone)
}

// noon stands in for the day in sums of days, which no clock change then moves.
func (d Date) noon() time.Time { return time.Date(d.Year, d.Month, d.Day, 12, 0, 0, 0, time.UTC) }

// Span is days in a row, the first and the last one counted.
type Span struct{ From, To Date }

// Days is how many days the span has; none where To lies before From.
func (s Span) Days() int { return max(0, s.To.Since(s.From)+1) }

// Holds tells whether the day is one of the span's.
func (s Span) Holds(d Date) bool { return !d.Before(s.From) && !d.After(s.To) }

// Meets tells whether the two spans share a day.
func (s Span) Meets(other Span) bool {
	return s.Days() > 0 && other.Days() > 0 && !s.To.Before(other.From) && !other.To.Before(s.From)
}
