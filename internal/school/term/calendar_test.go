package term

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestDaysOfTheTerm(t *testing.T) {
	c := fernhollow(t)
	for _, w := range []struct {
		date string
		kind Kind
		why  string
	}{
		{"2027-01-10", Outside, ""},
		{"2027-01-11", Open, ""},
		{"2027-02-12", Open, ""},
		{"2027-02-13", Weekly, ""},
		{"2027-02-15", Shut, "break"},
		{"2027-02-19", Shut, "break"},
		{"2027-02-20", Weekly, ""},
		{"2027-02-22", Open, ""},
		{"2027-03-08", Shut, "staff day"},
		{"2027-04-02", Open, ""},
		{"2027-04-03", Outside, ""},
	} {
		d := day(t, w.date)
		if got := c.On(d); got.Kind != w.kind || got.Why != w.why || got.Date != d || c.Open(d) != (w.kind == Open) {
			t.Errorf("%s: %+v, want kind %d, why %q", w.date, got, w.kind, w.why)
		}
	}
}

func TestNextAndPreviousOpenDay(t *testing.T) {
	c := fernhollow(t)
	for _, w := range []struct{ date, previous, next string }{
		{"2027-01-01", "", "2027-01-11"},
		{"2027-01-11", "", "2027-01-12"},
		{"2027-02-12", "2027-02-11", "2027-02-22"},
		{"2027-02-16", "2027-02-12", "2027-02-22"},
		{"2027-03-08", "2027-03-05", "2027-03-09"},
		{"2027-04-02", "2027-04-01", ""},
		{"2027-05-01", "2027-04-02", ""},
	} {
		got := func(d Date, found bool) string {
			if !found {
				return ""
			}
			return d.String()
		}
		d := day(t, w.date)
		if before, after := got(c.Previous(d)), got(c.Next(d)); before != w.previous || after != w.next {
			t.Errorf("%s: %q before and %q after, want %q and %q", w.date, before, after, w.previous, w.next)
		}
	}
	first, _ := c.First()
	last, _ := c.Last()
	if first != day(t, "2027-01-11") || last != day(t, "2027-04-02") {
		t.Errorf("open from %v to %v", first, last)
	}
}

// Twelve weeks of five days, less five of the break and the staff day.
func TestSchoolDaysAreCounted(t *testing.T) {
	c := fernhollow(t)
	if n := len(c.OpenDays(c.Terms()[0])); n != 12*5-6 {
		t.Errorf("%d school days", n)
	}
	if got := c.OpenDays(span(t, "2027-03-31", "2027-01-31")); got != nil {
		t.Errorf("a span that ends before it begins has %v", got)
	}
}

func TestWeeksOfTheTerm(t *testing.T) {
	weeks := fernhollow(t).Weeks(0)
	if len(weeks) != 12 {
		t.Fatalf("%d weeks", len(weeks))
	}
	for i, w := range weeks {
		if w.Number != i+1 || w.Monday != day(t, "2027-01-11").Add(7*i) || w.Shut() != (w.Number == 6) {
			t.Errorf("week %d: number %d from %v, closed %v", i+1, w.Number, w.Monday, w.Shut())
		}
	}
	midweek := New(Given{Terms: []Span{span(t, "2027-09-01", "2027-09-14")}})
	if got := midweek.Weeks(0); len(got) != 3 || got[0].Monday != day(t, "2027-08-30") || got[0].Days[1].Kind != Outside || got[0].Days[2].Kind != Open {
		t.Errorf("a term from a Wednesday: %+v", got)
	}
	if got := midweek.Weeks(1); got != nil {
		t.Errorf("a term that is not there has %v", got)
	}
}

// Eleven weekends lie between twelve weeks; the break joins two of them.
func TestStretchesOfTheTerm(t *testing.T) {
	dublin := zone(t, "Europe/Dublin")
	c := fernhollow(t)
	var long []string
	all := c.Stretches(c.Terms()[0], dublin)
	for _, s := range all {
		if s.Why != "weekend" || s.Hours() != 65 {
			long = append(long, fmt.Sprintf("%v to %v %s %v h", s.From, s.To, s.Why, s.Hours()))
		}
	}
	want := "2027-02-13 to 2027-02-21 break 233 h\n2027-03-06 to 2027-03-08 staff day 89 h\n2027-03-27 to 2027-03-28 weekend 64 h"
	if got := strings.Join(long, "\n"); got != want || len(all) != 10 {
		t.Errorf("%d stretches; those out of the ordinary:\n%s\nwant\n%s", len(all), got, want)
	}
	breakWeek, found := c.StretchAt(day(t, "2027-02-17"), dublin)
	if !found || breakWeek.Before() != day(t, "2027-02-12") || breakWeek.After() != day(t, "2027-02-22") {
		t.Errorf("the break: %+v, %v", breakWeek, found)
	}
	if got := breakWeek.Since.Format(time.RFC3339) + " " + breakWeek.Until.Format(time.RFC3339); got != "2027-02-12T15:30:00Z 2027-02-22T08:30:00Z" {
		t.Errorf("nobody from %s", got)
	}
	for _, open := range []string{"2027-02-10", "2027-04-03", "2027-01-10"} {
		if s, found := c.StretchAt(day(t, open), dublin); found {
			t.Errorf("%s lies in %+v", open, s)
		}
	}
}

func TestThreeTermsOfAYear(t *testing.T) {
	c := New(Given{
		Terms:     []Span{span(t, "2027-04-19", "2027-06-25"), span(t, "2026-09-01", "2026-12-18"), span(t, "2027-01-11", "2027-04-02")},
		ArriveMin: ArriveMin, LeaveMin: LeaveMin,
	})
	for _, w := range []struct {
		date    string
		in      int
		current int
	}{
		{"2026-08-01", -1, 0},
		{"2026-12-18", 0, 0},
		{"2026-12-19", -1, 1},
		{"2027-01-11", 1, 1},
		{"2027-06-25", 2, 2},
		{"2027-08-01", -1, 2},
	} {
		in, _ := c.TermAt(day(t, w.date))
		current, found := c.Current(day(t, w.date))
		if in != w.in || current != w.current || !found {
			t.Errorf("%s: in term %d, shows %d, want %d and %d", w.date, in, current, w.in, w.current)
		}
	}
	s, found := c.StretchAt(day(t, "2026-12-25"), nil)
	if !found || s.Why != "between terms" || s.Span != span(t, "2026-12-19", "2027-01-10") || s.Hours() != 23*24+17 {
		t.Errorf("between terms: %+v of %v h", s, s.Hours())
	}
}

// A club that meets on some days of the week has stretches between them.
func TestDaysBetweenLessons(t *testing.T) {
	c := New(Given{
		Terms:     []Span{span(t, "2027-01-11", "2027-04-02")},
		OpenDays:  []time.Weekday{time.Monday, time.Wednesday, time.Friday},
		ArriveMin: 15 * 60, LeaveMin: 17 * 60,
	})
	s := c.Stretches(span(t, "2027-01-11", "2027-01-17"), zone(t, "America/New_York"))
	if len(s) != 3 || s[0].Why != "no school day" || s[0].Hours() != 46 || s[2].Why != "weekend" || s[2].Hours() != 70 {
		t.Errorf("%+v", s)
	}
}

func TestWithoutTerms(t *testing.T) {
	c := New(Given{})
	if c.Known() || !c.Assumed() {
		t.Error("nothing was given")
	}
	saturday := day(t, "2027-02-13")
	if c.Open(saturday) || !c.Open(saturday.Add(-1)) {
		t.Error("weekends are closed and weekdays are open")
	}
	if next, found := c.Next(saturday); !found || next != saturday.Add(2) {
		t.Errorf("after a Saturday comes %v, %v", next, found)
	}
	if _, found := c.Current(saturday); found || c.Weeks(0) != nil {
		t.Error("there is no term to show")
	}
	if _, found := c.First(); found {
		t.Error("there is no first day")
	}
	if _, found := c.Last(); found {
		t.Error("there is no last day")
	}
}

// Terms in a wrong order of days, days of the week out of range and closures
// without end give answers, and no endless search.
func TestOddCalendars(t *testing.T) {
	forever := Closure{span(t, "2027-02-01", "9999-12-31"), "moved away"}
	c := New(Given{Closed: []Closure{forever}})
	if d, found := c.Next(day(t, "2027-01-31")); found {
		t.Errorf("after the end comes %v", d)
	}
	c = New(Given{Closed: []Closure{{span(t, "0001-01-01", "2027-01-31"), ""}}})
	if d, found := c.Previous(day(t, "2027-02-01")); found && d.Year > 0 {
		t.Errorf("before the beginning came %v", d)
	}
	if c := New(Given{Terms: []Span{span(t, "2027-03-01", "2027-02-01")}}); c.Known() {
		t.Error("a term that ends before it begins is none")
	}
	sundays := New(Given{Terms: []Span{span(t, "2027-02-08", "2027-02-12")}, OpenDays: []time.Weekday{time.Sunday}})
	if d, found := sundays.First(); found {
		t.Errorf("a term of weekdays for a Sunday school opens on %v", d)
	}
	long := New(Given{Terms: []Span{span(t, "0001-01-01", "9999-12-31")}})
	if n := long.WeekCount(0); n != 521_723 {
		t.Errorf("%d weeks", n)
	}
}

func TestAttended(t *testing.T) {
	dublin := zone(t, "Europe/Dublin")
	c := fernhollow(t)
	for text, want := range map[string]bool{
		"2027-02-10T08:29:59Z": false, "2027-02-10T08:30:00Z": true, "2027-02-10T15:29:59Z": true, "2027-02-10T15:30:00Z": false,
		"2027-02-13T10:00:00Z": false, "2027-02-16T10:00:00Z": false,
		"2027-03-29T07:30:00Z": true, "2027-03-29T14:30:00Z": false, // summer time
	} {
		moment, err := time.Parse(time.RFC3339, text)
		if err != nil {
			t.Fatal(err)
		}
		if got := c.Attended(moment, dublin); got != want {
			t.Errorf("%s: %v", text, got)
		}
	}
}

// anyCalendar draws a school year with up to three terms and closed days.
func anyCalendar(t *rapid.T) (*Calendar, Given) {
	start := Date{2026, time.August, 1}
	spanOf := func(name string, most int) Span {
		from := start.Add(rapid.IntRange(0, 300).Draw(t, name))
		return Span{from, from.Add(rapid.IntRange(0, most).Draw(t, name+" days"))}
	}
	g := Given{ArriveMin: rapid.IntRange(0, 720).Draw(t, "arrive"), LeaveMin: rapid.IntRange(720, 1440).Draw(t, "leave")}
	for i := range rapid.IntRange(0, 3).Draw(t, "terms") {
		g.Terms = append(g.Terms, spanOf(fmt.Sprint("term ", i), 120))
	}
	for i := range rapid.IntRange(0, 6).Draw(t, "closures") {
		g.Closed = append(g.Closed, Closure{spanOf(fmt.Sprint("closed ", i), 20), rapid.SampledFrom([]string{"", "break", "staff day"}).Draw(t, "why")})
	}
	for w := range 7 {
		if rapid.Bool().Draw(t, "open") {
			g.OpenDays = append(g.OpenDays, time.Weekday(w))
		}
	}
	return New(g), g
}

// openByHand says whether a day is open by looking at what was given alone.
func openByHand(g Given, d Date) bool {
	in := len(g.Terms) == 0
	for _, s := range g.Terms {
		in = in || s.Holds(d)
	}
	for _, s := range g.Closed {
		in = in && !s.Holds(d)
	}
	lessons := len(g.OpenDays) == 0 && zeller(d) != time.Saturday && zeller(d) != time.Sunday
	for _, w := range g.OpenDays {
		lessons = lessons || w == zeller(d)
	}
	return in && lessons
}

// The open days, the next and previous ones and the closed stretches tile the
// calendar as a walk over single days finds them.
func TestTheCalendarIsItsDays(t *testing.T) {
	dublin := zone(t, "Europe/Dublin")
	rapid.Check(t, func(t *rapid.T) {
		c, g := anyCalendar(t)
		from := Date{2026, time.July, 1}
		year := Span{from, from.Add(500)}
		var open []Date
		for d := year.From; !d.After(year.To); d = d.Add(1) {
			if c.Open(d) != openByHand(g, d) {
				t.Fatalf("%v: open %v", d, c.Open(d))
			}
			if c.Open(d) {
				open = append(open, d)
			}
		}
		if got := c.OpenDays(year); fmt.Sprint(got) != fmt.Sprint(open) {
			t.Fatalf("open days %v, want %v", got, open)
		}
		closed := map[Date]bool{}
		for _, s := range c.Stretches(year, dublin) {
			if !c.Open(s.Before()) || !c.Open(s.After()) || s.Days() < 1 || s.Why == "" {
				t.Fatalf("stretch %+v", s)
			}
			wall := float64(s.Days()*24) + float64(g.ArriveMin-g.LeaveMin)/60 + 24
			// A clock change moves a stretch by one hour; the sum of floats by nothing that counts.
			if off := math.Abs(s.Hours() - wall); off > 1e-9 && math.Abs(off-1) > 1e-9 {
				t.Fatalf("stretch %+v lasts %v h, by the wall clock %v", s, s.Hours(), wall)
			}
			for d := s.From; !d.After(s.To); d = d.Add(1) {
				if closed[d] || c.Open(d) {
					t.Fatalf("%v is twice in a stretch, or open", d)
				}
				closed[d] = true
				if at, found := c.StretchAt(d, dublin); !found || at.Span != s.Span || at.Why != s.Why {
					t.Fatalf("%v lies in %+v, want %+v", d, at, s)
				}
			}
		}
		for i := 1; i < len(open); i++ {
			if next, _ := c.Next(open[i-1]); next != open[i] {
				t.Fatalf("after %v comes %v, want %v", open[i-1], next, open[i])
			}
			if last, _ := c.Previous(open[i]); last != open[i-1] {
				t.Fatalf("before %v came %v, want %v", open[i], last, open[i-1])
			}
			for d := open[i-1].Add(1); d.Before(open[i]); d = d.Add(1) {
				if !closed[d] {
					t.Fatalf("%v is closed and in no stretch", d)
				}
			}
		}
	})
}

// Every day of a term stands in its weeks once, and a week is what ISO 8601
// calls one: it has the ISO week number of its Monday throughout.
func TestWeeksHoldTheTerm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, _ := anyCalendar(t)
		for i, term := range c.Terms() {
			seen := map[Date]int{}
			for n, w := range c.Weeks(i) {
				_, week := w.Monday.noon().ISOWeek()
				for at, d := range w.Days {
					_, iso := d.noon().ISOWeek()
					if iso != week || d.Date != w.Monday.Add(at) || d != c.On(d.Date) || c.WeekOf(i, d.Date) != w.Number || w.Number != n+1 {
						t.Fatalf("week %d of %v has %+v", w.Number, term, d)
					}
					seen[d.Date]++
				}
				if !w.Span().Meets(term) {
					t.Fatalf("week %v has no day of %v", w.Monday, term)
				}
			}
			for d := term.From; !d.After(term.To); d = d.Add(1) {
				if seen[d] != 1 {
					t.Fatalf("%v stands %d times in the weeks of %v", d, seen[d], term)
				}
			}
		}
	})
}
