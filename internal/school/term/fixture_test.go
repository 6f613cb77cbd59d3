package term

import (
	"testing"
	"time"
	_ "time/tzdata"
)

func day(t testing.TB, text string) Date {
	t.Helper()
	d, err := ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func span(t testing.TB, from, to string) Span { return Span{day(t, from), day(t, to)} }

func zone(t testing.TB, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

// fernhollow is the invented school's spring term.
func fernhollow(t testing.TB) *Calendar {
	t.Helper()
	return New(Given{
		Terms:    []Span{span(t, "2027-01-11", "2027-04-02")},
		OpenDays: weekdays[:],
		Closed: []Closure{
			{span(t, "2027-02-15", "2027-02-19"), "break"},
			{span(t, "2027-03-08", "2027-03-08"), "staff day"},
		},
		ArriveMin: ArriveMin, LeaveMin: LeaveMin,
	})
}
