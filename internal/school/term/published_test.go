package term

import (
	"math"
	"testing"
	"time"
)

// zeller is the day of the week by the congruence that Zeller published in 1882,
// for the Gregorian calendar: an oracle that shares nothing with package time.
func zeller(d Date) time.Weekday {
	y, m := d.Year, int(d.Month)
	if m < 3 {
		y, m = y-1, m+12
	}
	century, year := floorDiv(y, 100), y-100*floorDiv(y, 100)
	h := d.Day + 13*(m+1)/5 + year + year/4 + floorDiv(century, 4) + 5*century
	return time.Weekday(((h+6)%7 + 7) % 7) // h counts from Saturday
}

// julianDay is the day number of the Gregorian calendar after Fliegel and Van
// Flandern (1968), Communications of the ACM 11, 657, in whole numbers only.
func julianDay(d Date) int {
	y, m := d.Year, int(d.Month)
	a := (m - 14) / 12
	return d.Day - 32075 + 1461*(y+4800+a)/4 + 367*(m-2-a*12)/12 - 3*((y+4900+a)/100)/4
}

func floorDiv(a, b int) int { return int(math.Floor(float64(a) / float64(b))) }

func TestPublishedDays(t *testing.T) {
	for _, c := range []struct {
		date    string
		weekday time.Weekday
		julian  int
		source  string
	}{
		{"2000-01-01", time.Saturday, 2451545, "Explanatory Supplement to the Astronomical Almanac: epoch J2000.0 is JD 2451545.0; from memory"},
		{"1858-11-17", time.Wednesday, 2400001, "Explanatory Supplement: MJD counts from JD 2400000.5; from memory"},
		{"1985-04-12", time.Friday, 2446168, "ISO 8601, whose worked example is week 15, day 5 of 1985; from memory. Day number computed"},
	} {
		d := day(t, c.date)
		if d.Weekday() != c.weekday || zeller(d) != c.weekday {
			t.Errorf("%s is a %v, by Zeller a %v, want %v (%s)", c.date, d.Weekday(), zeller(d), c.weekday, c.source)
		}
		if got := d.Since(day(t, "2000-01-01")) + 2451545; got != c.julian || julianDay(d) != c.julian {
			t.Errorf("%s is day %d, by Fliegel and Van Flandern %d, want %d (%s)", c.date, got, julianDay(d), c.julian, c.source)
		}
	}
}

// Hours that nobody is there, each worked out from the rule named.
func TestPublishedHours(t *testing.T) {
	const (
		clock = "computed: days × 24 h from 15:30 to 08:30"
		eu    = "Directive 2000/84/EC: summer time runs from the last Sunday in March to the last Sunday in October, changing at 01:00 UTC; from memory"
		us    = "15 U.S.C. 260a as amended by the Energy Policy Act of 2005: from the second Sunday of March to the first Sunday of November; from memory"
		south = "New South Wales, Standard Time Act 1987: until the first Sunday in April; from memory"
	)
	for _, c := range []struct {
		name, zone string
		closed     Span
		why        string
		hours      float64
		source     string
	}{
		{"a weekend", "Europe/Dublin", span(t, "2027-02-06", "2027-02-07"), "weekend", 65, clock},
		{"a long weekend", "Europe/Dublin", span(t, "2027-05-01", "2027-05-03"), "closed", 89, clock},
		{"a week's break", "Europe/Dublin", span(t, "2027-02-13", "2027-02-21"), "closed", 233, clock},
		{"a week's break with the autumn change", "Europe/Dublin", span(t, "2027-10-23", "2027-10-31"), "closed", 234, eu},
		{"two weeks", "Europe/Dublin", span(t, "2027-12-18", "2028-01-02"), "closed", 401, clock},
		{"Tuesday's bell to Monday's", "America/New_York", span(t, "2027-11-24", "2027-11-28"), "closed", 137, clock},
		{"spring forward in Europe", "Europe/Dublin", span(t, "2027-03-27", "2027-03-28"), "weekend", 64, eu},
		{"fall back in Europe", "Europe/Paris", span(t, "2027-10-30", "2027-10-31"), "weekend", 66, eu},
		{"spring forward in America", "America/New_York", span(t, "2027-03-13", "2027-03-14"), "weekend", 64, us},
		{"fall back in America", "America/New_York", span(t, "2027-11-06", "2027-11-07"), "weekend", 66, us},
		{"the same weekend where clocks stay", "America/Phoenix", span(t, "2027-03-13", "2027-03-14"), "weekend", 65, us + "; Arizona keeps standard time"},
		{"fall back in the south", "Australia/Sydney", span(t, "2027-04-03", "2027-04-04"), "weekend", 66, south},
	} {
		given := Given{Terms: []Span{{c.closed.From.Add(-9), c.closed.To.Add(9)}}, ArriveMin: ArriveMin, LeaveMin: LeaveMin}
		if c.closed.Days() > 2 {
			given.Closed = []Closure{{Span: c.closed}}
		}
		got := New(given).Stretches(c.closed, zone(t, c.zone))
		if len(got) != 1 || got[0].Span != c.closed || got[0].Why != c.why || got[0].Hours() != c.hours {
			t.Errorf("%s: %v, want %v of %v h for %q (%s)", c.name, got, c.closed, c.hours, c.why, c.source)
		}
	}
}
