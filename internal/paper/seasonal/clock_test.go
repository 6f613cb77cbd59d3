package seasonal

import (
	"testing"
	"time"
)

// The days on which clocks change; from memory of the rules, not opened here: in
// the European Union the last Sundays of March and October (directive
// 2000/84/EC), in most of the United States the second Sunday of March and the
// first of November (Energy Policy Act of 2005).
func TestClockChanges(t *testing.T) {
	for _, c := range []struct {
		zone, from, to string
		want           string
		forward        bool
	}{
		{"Europe/Dublin", "2027-03-26T15:30", "2027-03-29T08:30", "2027-03-28", true},
		{"Europe/Dublin", "2027-10-29T15:30", "2027-11-01T08:30", "2027-10-31", false},
		{"America/New_York", "2027-03-12T17:00", "2027-03-15T15:00", "2027-03-14", true},
		{"America/New_York", "2027-11-05T17:00", "2027-11-08T15:00", "2027-11-07", false},
		{"Europe/Dublin", "2027-02-12T15:30", "2027-02-22T08:30", "", false},
		{"UTC", "2027-03-26T15:30", "2027-03-29T08:30", "", false},
	} {
		zone, err := time.LoadLocation(c.zone)
		if err != nil {
			t.Fatal(err)
		}
		at := func(text string) time.Time {
			moment, err := time.ParseInLocation("2006-01-02T15:04", text, zone)
			if err != nil {
				t.Fatal(err)
			}
			return moment
		}
		d, forward, ok := clockChange(at(c.from), at(c.to))
		if ok != (c.want != "") || ok && (d.String() != c.want || forward != c.forward) {
			t.Errorf("%s from %s: %s, forward %v, %v; want %s", c.zone, c.from, d, forward, ok, c.want)
		}
	}
}
