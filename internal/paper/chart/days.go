package chart

import (
	"sort"
	"time"

	"rootbell/internal/school/term"
)

// row is the days of a chart along its width: each day is as wide as the next,
// also one of 23 or 25 hours.
type row struct {
	Days
	left, day float64 // px
	begins    []time.Time
}

func rowOf(d Days, left, wide float64) row {
	if d.Zone == nil {
		d.Zone = time.UTC
	}
	if !d.From.Set() {
		d.From = term.DateOf(d.Now.In(d.Zone))
	}
	if d.To.Before(d.From) {
		d.To = d.From
	}
	if d.To.Since(d.From) >= MostDays {
		d.From = d.To.Add(1 - MostDays)
	}
	n := d.To.Since(d.From) + 1
	r := row{Days: d, left: left, day: wide / float64(n), begins: make([]time.Time, n+1)}
	for i := range r.begins {
		r.begins[i] = d.From.Add(i).At(0, d.Zone)
	}
	return r
}

// count is how many days are shown.
func (r *row) count() int { return len(r.begins) - 1 }

// at is where a moment lies; shown is false outside the days.
func (r *row) at(t time.Time) (x float64, shown bool) {
	n := r.count()
	if t.Before(r.begins[0]) || !t.Before(r.begins[n]) {
		return 0, false
	}
	i := sort.Search(n, func(i int) bool { return t.Before(r.begins[i+1]) })
	within := t.Sub(r.begins[i]).Seconds() / r.begins[i+1].Sub(r.begins[i]).Seconds()
	return r.left + (float64(i)+within)*r.day, true
}

// start is the left edge of a day.
func (r *row) start(d term.Date) float64 { return r.left + float64(d.Since(r.From))*r.day }

func (r *row) right() float64 { return r.left + float64(r.count())*r.day }

func (r *row) today() term.Date {
	if r.Now.IsZero() {
		return term.Date{}
	}
	return term.DateOf(r.Now.In(r.Zone))
}

func (r *row) shut(d term.Date) bool { return r.Calendar != nil && !r.Calendar.Open(d) }

// closed are the days in a row on which nobody comes.
func (r *row) closed() []term.Span {
	var out []term.Span
	for i := range r.count() {
		d := r.From.Add(i)
		switch {
		case !r.shut(d):
		case len(out) > 0 && out[len(out)-1].To == d.Add(-1):
			out[len(out)-1].To = d
		default:
			out = append(out, term.Span{From: d, To: d})
		}
	}
	return out
}

// dated is a day that bears its date at the foot.
type dated struct {
	day   term.Date
	words string
}

// rhythms are the ways to date the foot, from the closest to the widest.
var rhythms = []func(d term.Date) (words string, is bool){
	everyMonday(1), everyMonday(2), everyMonth(1), everyMonth(3), everyMonth(6), everyYear(1), everyYear(5), everyYear(20),
}

func everyMonday(n int) func(term.Date) (string, bool) {
	week := term.Date{Year: 2024, Month: time.January, Day: 1} // a Monday to count from
	return func(d term.Date) (string, bool) {
		days := d.Since(week)
		return d.Short(), ((days%(7*n))+7*n)%(7*n) == 0
	}
}

func everyMonth(n int) func(term.Date) (string, bool) {
	return func(d term.Date) (string, bool) {
		words := d.Month.String()[:3]
		if d.Month == time.January || n > 1 {
			words = d.At(0, time.UTC).Format("Jan 2006")
		}
		return words, d.Day == 1 && (int(d.Month)-1)%n == 0
	}
}

func everyYear(n int) func(term.Date) (string, bool) {
	return func(d term.Date) (string, bool) {
		return d.At(0, time.UTC).Format("2006"), d.Day == 1 && d.Month == time.January && d.Year%n == 0
	}
}

// dates are the days that bear a date: as many as have room, the first day
// where none would be.
func (r *row) dates(wide func(string) float64) []dated {
	const air = 10
	for _, rhythm := range rhythms {
		var out []dated
		fits := true
		free := r.left - 1e6
		for i := range r.count() {
			d := r.From.Add(i)
			words, is := rhythm(d)
			if !is {
				continue
			}
			x := r.start(d)
			fits = fits && x >= free
			free = x + wide(words) + air
			out = append(out, dated{d, words})
		}
		if fits && (len(out) > 1 || r.count() < 32 && len(out) == 1) {
			return out
		}
	}
	return []dated{{r.From, r.From.Long()}}
}
