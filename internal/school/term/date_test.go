package term

import (
	"testing"
	"time"

	"pgregory.net/rapid"
)

// anyDate draws a day of the years that a date is written in.
func anyDate() *rapid.Generator[Date] {
	return rapid.Custom(func(t *rapid.T) Date {
		return Date{1, time.January, 1}.Add(rapid.IntRange(0, 3_652_058).Draw(t, "day"))
	})
}

// Weekdays, sums of days and the order of days agree with two published
// formulas, over all years from 1 to 9999.
func TestDaysAgreeWithPublishedFormulas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyDate().Draw(t, "a"), anyDate().Draw(t, "b")
		if a.Weekday() != zeller(a) {
			t.Fatalf("%v is a %v, by Zeller a %v", a, a.Weekday(), zeller(a))
		}
		apart := julianDay(a) - julianDay(b)
		if a.Since(b) != apart || b.Add(apart) != a {
			t.Fatalf("%v is %d days after %v, want %d; and %v that many days later is %v", a, a.Since(b), b, apart, b, b.Add(apart))
		}
		if a.Before(b) != (apart < 0) || a.After(b) != (apart > 0) || a.Compare(b) == 0 != (a == b) {
			t.Fatalf("%v and %v, %d days apart, are in no order", a, b, apart)
		}
		monday := a.Monday()
		if zeller(monday) != time.Monday || a.Since(monday) < 0 || a.Since(monday) > 6 {
			t.Fatalf("the Monday of %v is %v", a, monday)
		}
		if back, err := ParseDate(a.String()); err != nil || back != a {
			t.Fatalf("%v reads back as %v, %v", a, back, err)
		}
	})
}

func TestDatesAreWrittenInWords(t *testing.T) {
	d := day(t, "2027-02-10")
	for got, want := range map[string]string{
		d.Words(): "Wed 10 Feb", d.Short(): "10 Feb", d.Long(): "Wed 10 Feb 2027", d.String(): "2027-02-10",
		Date{3, time.March, 4}.String(): "0003-03-04",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestOnlyDaysOfTheCalendarAreRead(t *testing.T) {
	for _, text := range []string{"", "2027-2-10", "2027-02-29", "10.02.2027", "2027-02-10T08:30", "0227-13-01", "2027-02-10 "} {
		if d, err := ParseDate(text); err == nil {
			t.Errorf("%q is read as %v", text, d)
		}
	}
	if (Date{}).Set() || !day(t, "2024-02-29").Set() {
		t.Error("a leap day is a day, the zero value is none")
	}
}

func FuzzParseDate(f *testing.F) {
	for _, seed := range []string{"2027-02-10", "2024-02-29", "9999-12-31", "", "27-1-1", "２０２７-01-01"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if d, err := ParseDate(text); err == nil && d.String() != text {
			t.Fatalf("%q is read as %v", text, d)
		}
	})
}
