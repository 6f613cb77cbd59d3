package seasonal

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/school/term"
)

// litres is a volume in the plan's units, with a decimal as a jug shows it.
func (p papers) litres(l float64) string {
	return quantity.Format(quantity.Volume, quantity.Litre.Base(l), p.a.Plan.Units)
}

// mark is a height over the tub's inside floor, as the dipstick shows it.
func (p papers) mark(mm float64) string { return quantity.FormatMark(mm, p.a.Plan.Units) }

// date is a day as the assessment writes it; ok is false for none.
func date(text string) (d term.Date, ok bool) {
	d, err := term.ParseDate(text)
	return d, err == nil
}

// day says a day of the season; a blank to write on where it is not known.
func day(text string) string {
	if d, ok := date(text); ok {
		return d.Words()
	}
	return "____________"
}

// moment says a day and an hour by the school's clock.
func moment(t time.Time) string { return t.Format("Mon 2 Jan, 15:04") }

// clock is the hour of a moment.
func clock(t time.Time) string { return t.Format("15:04") }

// noBreak keeps a number and what it counts on one line.
const noBreak = "\u00a0"

// whole keeps a day's words on one line.
func whole(words string) string { return strings.ReplaceAll(words, " ", noBreak) }

// hours are whole hours, as one counts the time in which nobody comes.
func hours(h float64) string { return count(int(math.Round(h)), "hour", "hours") }

// count is so many things.
func count(n int, one, many string) string {
	if n == 1 {
		return "1" + noBreak + one
	}
	return strconv.Itoa(n) + noBreak + many
}

// chance is a risk within a sentence: 'about 1 in 7'.
func chance(p float64) string { return quantity.Chance(p) }

// listed joins words: 'a, b and c'.
func listed(all []string) string {
	if len(all) < 2 {
		return strings.Join(all, "")
	}
	return strings.Join(all[:len(all)-1], ", ") + " and " + all[len(all)-1]
}

// sentence begins with a capital letter and ends with a stop; empty stays so.
func sentence(text string) string {
	text = strings.TrimSpace(text)
	if text == "" {
		return ""
	}
	text = strings.ToUpper(text[:1]) + text[1:]
	if !strings.HasSuffix(text, ".") && !strings.HasSuffix(text, "?") {
		text += "."
	}
	return text
}

// span says days in a row: 'Sat 13 to Sun 21 Feb'.
func span(from, to term.Date) string {
	switch {
	case from == to:
		return from.Words()
	case from.Year == to.Year && from.Month == to.Month:
		return fmt.Sprintf("%s %d to %s", from.Weekday().String()[:3], from.Day, to.Words())
	}
	return from.Words() + " to " + to.Words()
}

// clockChange is the day between two moments on which the school's clock is set
// on (forward) or back; ok is false where it is not, or where the moments do not
// tell by which zone they are said.
func clockChange(from, to time.Time) (d term.Date, forward, ok bool) {
	zone := from.Location()
	_, was := from.Zone()
	for d = term.DateOf(from).Add(1); !d.At(0, zone).After(to); d = d.Add(1) {
		if _, now := d.At(0, zone).Zone(); now != was {
			return d.Add(-1), now > was, true
		}
	}
	_, last := to.In(zone).Zone()
	return term.DateOf(to), last > was, last != was
}
