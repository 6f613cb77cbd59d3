package chart

import (
	"strings"

	"rootbell/internal/school/term"
)

// Row is a day of the table beside a chart.
type Row struct {
	Day    term.Date
	Struck string // what was corrected; empty mostly
	Read   string // '6.1'; '5.9 to 6.2' where several were read; '15.0, then 20.0' where it was filled up
	Doubt  string // what was kept as doubtful
	Shut   bool   // nobody comes on the day
}

// Table is the readings day by day, those of days without one left out. Points
// are all readings by moment, whether or not the drawing has room for them.
func Table(points []Point, decimals int, d Days) []Row {
	r := rowOf(d, 0, 1)
	var out []Row
	for i := 0; i < len(points); {
		day := term.DateOf(points[i].At.In(r.Zone))
		end := i + 1
		for end < len(points) && points[end].At.Before(day.Add(1).At(0, r.Zone)) {
			end++
		}
		if !day.Before(r.From) && !day.After(r.To) {
			out = append(out, Row{
				Day: day, Shut: r.shut(day),
				Read: span(points[i:end], Sure, decimals), Doubt: span(points[i:end], Doubtful, decimals), Struck: span(points[i:end], Struck, decimals),
			})
		}
		i = end
	}
	return out
}

// span is the lowest to the highest of the readings of a kind; empty without
// any. Two of one moment are before and after.
func span(points []Point, kind Kind, decimals int) string {
	all, some := Point{}, false
	if two := before(points, kind); len(two) == 2 {
		return Figure(two[0], decimals) + ",\u00a0then\u00a0" + Figure(two[1], decimals)
	}
	for _, p := range points {
		if p.Kind != kind || !finite(p.Low) || !finite(p.High) {
			continue
		}
		if !some {
			all = p
		}
		all.Low, all.High, some = min(all.Low, p.Low), max(all.High, p.High), true
	}
	if !some {
		return ""
	}
	return Figure(all, decimals)
}

// before gives the two readings of a kind that there are, where they are of one
// moment.
func before(points []Point, kind Kind) []Point {
	var two []Point
	for _, p := range points {
		if p.Kind == kind {
			two = append(two, p)
		}
	}
	if len(two) == 2 && two[0].At.Equal(two[1].At) && finite(two[0].mid()) && finite(two[1].mid()) {
		return two
	}
	return nil
}

// Figure is a reading as a number, or as two where it lies between them.
func Figure(p Point, decimals int) string {
	low, high := number(p.Low, decimals), number(p.High, decimals)
	if low == high {
		return low
	}
	return low + "\u00a0to\u00a0" + high
}

// Words is a row as a sentence has it: 'Wed 10 Feb: 6.1'.
func (r Row) Words() string {
	parts := []string{}
	if r.Read != "" {
		parts = append(parts, r.Read)
	}
	if r.Doubt != "" {
		parts = append(parts, r.Doubt+" doubtful")
	}
	return r.Day.Words() + ": " + strings.Join(parts, ", ")
}
