package chart_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"rootbell/internal/paper/chart"
	"rootbell/internal/paper/figure"
)

func at(day, clock string) time.Time {
	t, err := time.ParseInLocation("2006-01-02 15:04", day+" "+clock, dublin)
	if err != nil {
		panic(err)
	}
	return t
}

func sure(day, clock string, v float64) chart.Point {
	return chart.Point{At: at(day, clock), Low: v, High: v}
}

// levels are the depths that a class read, with a filling.
func levels() chart.Chart {
	return chart.Chart{
		Key: "level", Name: "Level", Unit: "L", Says: "It falls.", Decimals: 1, Tint: "water",
		Points: []chart.Point{
			sure("2027-01-25", "10:30", 20), sure("2027-01-26", "10:30", 19.4), sure("2027-01-29", "10:30", 17.5),
			sure("2027-02-01", "10:30", 15), sure("2027-02-01", "10:30", 20), sure("2027-02-05", "10:30", 17.2), sure("2027-02-09", "10:30", 14.1),
		},
		Of:       6,
		Lines:    []chart.Line{{Value: 8.2, Words: "lowest line, 8.2", Kind: chart.Lowest}, {Value: 20, Words: "fill line, 20.0"}},
		Marks:    []chart.Mark{{At: at("2027-02-01", "10:30"), Words: "filled"}},
		Possible: chart.Range{Low: 0, High: 30}, Shown: chart.Range{Low: 10, High: 20},
	}
}

// Values lie where the numbers at the axis say, and moments where the days are:
// measured on the drawing with nothing but its own numbers.
func TestReadingsLieWhereTheNumbersSay(t *testing.T) {
	c, d := levels(), february()
	for _, w := range bothWidths {
		root := parsed(t, chart.Draw(c, d, w, true))
		a := axisOf(t, root)
		rings := root.all("circle", "rd")
		if len(rings) != len(c.Points) {
			t.Fatalf("%s: %d rings for %d readings", w, len(rings), len(c.Points))
		}
		// The days' ticks are as far apart as the row of days is long.
		wide := root.num("width") - 46
		for i, r := range rings {
			p := c.Points[i]
			if got := a.value(r.num("cy")); math.Abs(got-p.Low) > a.perPX() {
				t.Errorf("%s: %v is drawn at %.2f", w, p.Low, got)
			}
			days := p.At.Sub(at("2027-01-25", "00:00")).Hours() / 24
			if want := 44 + days*wide/35; math.Abs(r.num("cx")-want) > 0.06 {
				t.Errorf("%s: %v is drawn at %v px, want %.2f", w, p.At, r.num("cx"), want)
			}
		}
	}
}

// A day of 23 hours and one of 25 are as wide as any other: the charts of a
// wall calendar. Clocks change in Dublin on 28 March and 31 October 2027, at
// 1:00 UTC (Directive 2000/84/EC).
func TestDaysOnWhichClocksChange(t *testing.T) {
	for _, c := range []struct {
		from, to, day, clock string
		want                 float64 // days from the left
	}{
		{"2027-03-22", "2027-04-04", "2027-03-28", "00:00", 6},
		{"2027-03-22", "2027-04-04", "2027-03-28", "12:30", 6 + 11.5/23},
		{"2027-03-22", "2027-04-04", "2027-03-29", "00:00", 7},
		{"2027-10-25", "2027-11-07", "2027-10-31", "11:30", 6 + 12.5/25},
		{"2027-10-25", "2027-11-07", "2027-11-01", "00:00", 7},
	} {
		d := february()
		d.From, d.To = date(c.from), date(c.to)
		root := parsed(t, chart.Draw(chart.Chart{Key: "ph", Name: "pH", Points: []chart.Point{sure(c.day, c.clock, 6)}}, d, figure.Desk, true))
		rings := root.all("circle", "rd")
		if len(rings) != 1 {
			t.Fatalf("%s: %d rings", c.day, len(rings))
		}
		if got, want := rings[0].num("cx"), 44+c.want*682/14; math.Abs(got-want) > 0.06 {
			t.Errorf("%s %s: at %v px, want %.1f", c.day, c.clock, got, want)
		}
	}
}

// What was done is written over the day, also where the water then stands at the
// top of the axis.
func TestWhatWasDoneIsWrittenOnTheChart(t *testing.T) {
	for _, w := range bothWidths {
		if words := parsed(t, chart.Draw(levels(), february(), w, true)).words(); !slices.Contains(words, "filled") || !slices.Contains(words, "lowest line, 8.2") {
			t.Errorf("%s: %q", w, words)
		}
	}
}

// Bands are drawn where the numbers say, begin anew at each filling, and are
// named on the chart.
func TestBandsOfAForecast(t *testing.T) {
	c := levels()
	for _, from := range []string{"2027-02-01", "2027-02-10"} {
		var run []chart.Band
		for h := range 20 {
			mid, wide := 20-0.2*float64(h), 0.1*float64(h)
			run = append(run, chart.Band{At: at(from, "10:30").Add(time.Duration(h) * 6 * time.Hour), Low90: mid - 2*wide, Low50: mid - wide, Mid: mid, High50: mid + wide, High90: mid + 2*wide})
		}
		c.Bands = append(c.Bands, run)
	}
	for _, w := range bothWidths {
		root := parsed(t, chart.Draw(c, february(), w, true))
		a := axisOf(t, root)
		if n := len(root.all("path", "b9")); n != 2 {
			t.Fatalf("%d bands", n)
		}
		for i, run := range c.Bands {
			for j, p := range points(root.all("path", "mm")[i]) {
				if got := a.value(p.Y); math.Abs(got-run[j].Mid) > a.perPX() {
					t.Errorf("%s: the middle %.2f is drawn at %.2f", w, run[j].Mid, got)
				}
			}
			// Both edges lie in one path, the lower first.
			edges := points(root.all("path", "be")[i])
			for j, b := range run {
				low, high := a.value(edges[j].Y), a.value(edges[j+len(run)].Y)
				if math.Abs(low-b.Low90) > a.perPX() || math.Abs(high-min(b.High90, max(a.v0, a.v1))) > a.perPX() {
					t.Errorf("%s: %.2f to %.2f is drawn from %.2f to %.2f", w, b.Low90, b.High90, low, high)
				}
			}
		}
		said := strings.Join(root.words(), "|") + root.attr["aria-label"]
		for _, words := range []string{"9 in 10 cases", "5 in 10", "middle"} {
			if !strings.Contains(said, words) {
				t.Errorf("%s: %q is said nowhere", w, words)
			}
		}
	}
}

// Closed days are hatched from top to bottom: the weekends and the break, which
// lie in one piece where no open day is between.
func TestClosedDaysAreHatched(t *testing.T) {
	root := parsed(t, chart.Draw(levels(), february(), figure.Desk, false))
	const dayPX = 682.0 / 35
	var got []string
	for _, r := range root.all("path", "off") {
		if r.attr["fill"] != "url(#hatch)" {
			t.Errorf("hatched by %q", r.attr["fill"])
		}
		for one := range strings.SplitSeq(strings.TrimSuffix(r.attr["d"], "Z"), "Z") {
			var from, top, to, foot, back float64
			if _, err := fmt.Sscanf(one, "M%f %fH%fV%fH%f", &from, &top, &to, &foot, &back); err != nil || from != back || foot-top != 150 {
				t.Fatalf("hatched along %q: %v", one, err)
			}
			got = append(got, fmt.Sprintf("%.0f+%.0f", (from-44)/dayPX, (to-from)/dayPX))
		}
	}
	if want := []string{"5+2", "12+2", "19+9", "33+2"}; !slices.Equal(got, want) {
		t.Errorf("hatched from+days: %v, want %v", got, want)
	}
}

// Each kind of mark has a shape of its own, without any tint.
func TestKindsOfMarksDifferByShape(t *testing.T) {
	c := chart.Chart{Key: "ph", Name: "pH", Decimals: 1, Possible: chart.Range{Low: 0, High: 14}, Shown: chart.Range{Low: 5, High: 7}, Points: []chart.Point{
		sure("2027-01-26", "10:30", 6.1),
		{At: at("2027-01-27", "10:30"), Low: 5.5, High: 6.5},
		{At: at("2027-01-28", "10:30"), Low: 6.4, High: 6.4, Kind: chart.Doubtful},
		{At: at("2027-01-29", "10:30"), Low: 6.9, High: 6.9, Kind: chart.Struck},
		sure("2027-01-29", "10:30", 6.1),
		{At: at("2027-02-02", "10:30"), Low: 61, High: 61, Kind: chart.Doubtful},
	}}
	for _, w := range bothWidths {
		root := parsed(t, chart.Draw(c, february(), w, true))
		a := axisOf(t, root)
		if rings, bars, rest := len(root.all("circle", "rd")), root.all("rect", "rd"), root.all("path", "rd"); rings != 3 || len(bars) != 1 || len(rest) != 2 {
			t.Fatalf("%s: %d rings, %d bars, %d triangles", w, rings, len(bars), len(rest))
		}
		bar := root.all("rect", "rd")[0]
		if low, high := a.value(bar.num("y")+bar.num("height")), a.value(bar.num("y")); math.Abs(low-5.5) > a.perPX() || math.Abs(high-6.5) > a.perPX() {
			t.Errorf("%s: the bar runs from %.2f to %.2f", w, low, high)
		}
		if strokes := root.all("path", "tick"); len(strokes) != 1 {
			t.Errorf("%s: %d strokes for one corrected reading", w, len(strokes))
		}
		said := strings.Join(root.words(), "|") + root.attr["aria-label"]
		for _, words := range []string{"corrected", "doubtful", "61.0", "between two colours"} {
			if !strings.Contains(said, words) {
				t.Errorf("%s: %q is said nowhere: %s", w, words, said)
			}
		}
	}
}

// What is not there yet is an axis with its days and no mark.
func TestNothingReadYet(t *testing.T) {
	c := levels()
	c.Points, c.Marks, c.Of = nil, nil, 0
	for _, w := range bothWidths {
		root := parsed(t, chart.Draw(c, february(), w, true))
		axisOf(t, root)
		if n := len(root.all("circle", "")); n != 0 {
			t.Errorf("%d rings without a reading", n)
		}
		if !slices.Contains(root.words(), "today") {
			t.Error("today is not written on it")
		}
	}
	var none chart.Chart
	axisOf(t, parsed(t, chart.Draw(none, chart.Days{}, figure.Hand, true)))
}

func TestOneReading(t *testing.T) {
	c := levels()
	c.Points = c.Points[:1]
	root := parsed(t, chart.Draw(c, february(), figure.Desk, true))
	if rings := root.all("circle", "rd"); len(rings) != 1 {
		t.Fatalf("%d rings", len(rings))
	}
}

func TestWhatAThinnedChartSays(t *testing.T) {
	c := levels()
	if got := chart.Note(c); got != "" {
		t.Errorf("nothing was thinned: %q", got)
	}
	c.Of = 1312
	if got, want := chart.Note(c), "1,312 readings, thinned for the drawing; highest and lowest are kept."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestTheTableHasTheSameValues(t *testing.T) {
	c := levels()
	c.Points = append(c.Points, chart.Point{At: at("2027-02-13", "11:00"), Low: 3, High: 3.5, Kind: chart.Doubtful})
	var got []string
	for _, r := range chart.Table(c.Points, c.Decimals, february()) {
		line := r.Words()
		if r.Shut {
			line += " (closed)"
		}
		got = append(got, line)
	}
	want := []string{
		"Mon 25 Jan: 20.0", "Tue 26 Jan: 19.4", "Fri 29 Jan: 17.5", "Mon 1 Feb: 15.0,\u00a0then\u00a020.0", "Fri 5 Feb: 17.2", "Tue 9 Feb: 14.1",
		"Sat 13 Feb: 3.0\u00a0to\u00a03.5 doubtful (closed)",
	}
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}
