package figure

import (
	"encoding/xml"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// element is one element of a figure as an XML reader that knows nothing of
// this package finds it.
type element struct {
	name  string
	attrs map[string]string
	text  string
}

func (e element) number(name string) float64 {
	v, err := strconv.ParseFloat(e.attrs[name], 64)
	if err != nil {
		return -1e9
	}
	return v
}

type complainer interface {
	Helper()
	Fatalf(format string, args ...any)
	Errorf(format string, args ...any)
}

// elements reads a figure. It must be whole XML without a style or a script.
func elements(t complainer, svg string) []element {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(svg))
	var out []element
	for {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("no XML: %v in %s", err, svg)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{name: token.Name.Local, attrs: map[string]string{}}
			for _, a := range token.Attr {
				e.attrs[a.Name.Local] = a.Value
				if a.Name.Local == "style" || strings.HasPrefix(a.Name.Local, "on") || e.name == "script" {
					t.Errorf("the content policy forbids %s in %s", a.Name.Local, e.name)
				}
			}
			out = append(out, e)
		case xml.CharData:
			if len(out) > 0 {
				out[len(out)-1].text += string(token)
			}
		}
	}
	root := out[0]
	if root.name != "svg" || root.attrs["role"] != "img" || root.attrs["aria-label"] == "" || root.attrs["viewBox"] != "0 0 "+root.attrs["width"]+" "+root.attrs["height"] {
		t.Errorf("the root is %+v", root)
	}
	return out
}

// written is a text of a figure with the room it takes, measured from its XML.
type written struct {
	words    string
	min, max scene.Point
}

func writtenIn(all []element) []written {
	var out []written
	for _, e := range all {
		if e.name != "text" {
			continue
		}
		class := " " + e.attrs["class"] + " "
		face, size := scene.Sans, 13.0
		if strings.Contains(class, " b ") {
			face = scene.SansBold
		}
		if strings.Contains(class, " sm ") {
			size = 12
		}
		long, x, y := face.Width(e.text, size), e.number("x"), e.number("y")
		switch {
		case strings.Contains(class, " mid "):
			x -= long / 2
		case strings.Contains(class, " end "):
			x -= long
		}
		out = append(out, written{e.text, scene.Point{X: x, Y: y - 0.74*size}, scene.Point{X: x + long, Y: y + 0.22*size}})
	}
	return out
}

// legible fails where two texts overlap, or one leaves the figure.
func legible(t complainer, all []element) {
	t.Helper()
	const rounding = 0.02 // places are written to a hundredth of a pixel
	texts := writtenIn(all)
	for i, a := range texts {
		if a.min.X < -rounding || a.min.Y < -rounding || a.max.X > all[0].number("width")+rounding || a.max.Y > all[0].number("height")+rounding {
			t.Errorf("%q leaves the figure of %s by %s: %v to %v", a.words, all[0].attrs["width"], all[0].attrs["height"], a.min, a.max)
		}
		for _, b := range texts[:i] {
			if a.min.X < b.max.X-rounding && b.min.X < a.max.X-rounding && a.min.Y < b.max.Y-rounding && b.min.Y < a.max.Y-rounding {
				t.Errorf("%q and %q overlap", a.words, b.words)
			}
		}
	}
}

func words(all []element) []string {
	var out []string
	for _, w := range writtenIn(all) {
		out = append(out, w.words)
	}
	return out
}

func date(text string) term.Date {
	d, _ := term.ParseDate(text)
	return d
}

// schooled is an assessment of which only the calendar is known.
func schooled(g term.Given, meal term.Date) *garden.Assessment {
	return &garden.Assessment{Term: term.New(g), Plan: &plan.Plan{School: plan.School{Meal: plan.Meal{Day: plan.Date(meal)}}}}
}

// spring is the term of the invented school.
func spring() *garden.Assessment {
	return schooled(term.Given{
		Terms: []term.Span{{From: date("2027-01-11"), To: date("2027-04-02")}},
		Closed: []term.Closure{
			{Span: term.Span{From: date("2027-02-15"), To: date("2027-02-19")}, Why: "break"},
			{Span: term.Span{From: date("2027-03-08"), To: date("2027-03-08")}, Why: "staff day"},
		},
	}, date("2027-03-24"))
}

func stripElements(t complainer, a *garden.Assessment, today term.Date, w Width) []element {
	t.Helper()
	svg, ok := Strip(a, today, w)
	if !ok {
		t.Fatalf("no strip")
	}
	return withCells(t, elements(t, svg))
}

func TestTheStripOfTheTerm(t *testing.T) {
	all := stripElements(t, spring(), date("2027-02-10"), Desk)
	legible(t, all)
	got := strings.Join(words(all), "|")
	for _, want := range []string{"1|11 Jan", "5|8 Feb", "12|29 Mar", "break", "today, Wed 10 Feb", "eat, Wed 24 Mar"} {
		if !strings.Contains("|"+got+"|", "|"+want+"|") {
			t.Errorf("no %q in %s", want, got)
		}
	}
	want := "Term from Mon 11 Jan to Fri 2 Apr 2027, 12 weeks. Hatched days are closed: every Sat and Sun; Mon 15 Feb to Fri 19 Feb: break; Mon 8 Mar: staff day. Today is Wed 10 Feb, in week 5. The meal is on Wed 24 Mar."
	if label := all[0].attrs["aria-label"]; label != want {
		t.Errorf("the label is %q", label)
	}
}

func TestTheStripForAHand(t *testing.T) {
	for _, c := range []struct {
		today string
		days  string   // the first day shown
		words []string // each in the drawing
		not   string
	}{
		{"2027-02-10", "2027-02-08", []string{"5", "8 Feb", "today, Wed 10 Feb", "open again on Mon 22 Feb", "break"}, "eat"},
		{"2027-02-17", "2027-02-15", []string{"6", "7", "8", "open again on Mon 22 Feb"}, "break"},
		{"2027-03-23", "2027-03-22", []string{"today, Tue 23 Mar", "eat, Wed 24 Mar", "open again on Mon 29 Mar"}, "13"},
		{"2027-03-24", "2027-03-22", []string{"today, Wed 24 Mar: eat"}, "eat, Wed 24 Mar"},
		{"2027-01-08", "2027-01-04", []string{"1", "11 Jan", "opens on Mon 11 Jan"}, "0"},
		{"2027-04-12", "2027-04-12", []string{"12 Apr", "last open day: Fri 2 Apr"}, "14"},
	} {
		all := stripElements(t, spring(), date(c.today), Hand)
		legible(t, all)
		got := words(all)
		for _, want := range c.words {
			if !slices.Contains(got, want) {
				t.Errorf("%s: no %q in %q", c.today, want, got)
			}
		}
		if slices.Contains(got, c.not) {
			t.Errorf("%s: %q in %q", c.today, c.not, got)
		}
		cells := daysIn(all)
		if len(cells) != 21 || cells[0].attrs["data-day"] != c.days {
			t.Errorf("%s: %d days from %s", c.today, len(cells), cells[0].attrs["data-day"])
		}
	}
}

func daysIn(all []element) []element {
	var out []element
	for _, e := range all {
		if e.attrs["data-day"] != "" {
			out = append(out, e)
		}
	}
	return out
}

// Weeks too narrow for number and Monday keep their numbers, and a year is
// shown by the half round today.
func TestLongTerms(t *testing.T) {
	long := func(weeks int) *garden.Assessment {
		return schooled(term.Given{Terms: []term.Span{{From: date("2027-01-11"), To: date("2027-01-11").Add(7*weeks - 3)}}}, term.Date{})
	}
	for _, weeks := range []int{1, 2, 12, 16, 20, 26} {
		all := stripElements(t, long(weeks), date("2027-01-13"), Desk)
		legible(t, all)
		if n := len(daysIn(all)); n != 7*weeks {
			t.Errorf("%d weeks have %d days", weeks, n)
		}
		for n := 1; n <= weeks; n++ {
			if !slices.Contains(words(all), strconv.Itoa(n)) {
				t.Errorf("of %d weeks the number %d is missing", weeks, n)
			}
		}
	}
	for today, want := range map[string]string{
		"2027-01-13": "Weeks 1 to 26 are shown.", "2027-06-10": "Weeks 16 to 41 are shown.", "2027-12-30": "Weeks 26 to 51 are shown.",
	} {
		all := stripElements(t, long(51), date(today), Desk)
		legible(t, all)
		if label := all[0].attrs["aria-label"]; !strings.Contains(label, want) || !strings.Contains(label, "51 weeks") {
			t.Errorf("%s: %s", today, label)
		}
	}
}

func TestOfSeveralTermsOneIsShown(t *testing.T) {
	a := schooled(term.Given{Terms: []term.Span{
		{From: date("2026-09-01"), To: date("2026-12-18")}, {From: date("2027-01-11"), To: date("2027-04-02")}, {From: date("2027-04-19"), To: date("2027-06-25")},
	}}, term.Date{})
	for today, want := range map[string][2]string{
		"2026-08-20": {"Tue 1 Sep", "today, Thu 20 Aug: the term begins on Tue 1 Sep"},
		"2026-12-24": {"Mon 11 Jan", "today, Thu 24 Dec: the term begins on Mon 11 Jan"},
		"2027-05-07": {"Mon 19 Apr", "today, Fri 7 May"},
		"2027-07-01": {"Mon 19 Apr", "today, Thu 1 Jul: the term ended on Fri 25 Jun"},
	} {
		all := stripElements(t, a, date(today), Desk)
		legible(t, all)
		if label := all[0].attrs["aria-label"]; !strings.HasPrefix(label, "Term from "+want[0]) || !slices.Contains(words(all), want[1]) {
			t.Errorf("%s: %s, %q", today, label, words(all))
		}
	}
}

func TestNoStripWithoutATerm(t *testing.T) {
	for _, a := range []*garden.Assessment{nil, {}, schooled(term.Given{}, term.Date{}), schooled(term.Given{Terms: []term.Span{{From: date("2027-04-02"), To: date("2027-01-11")}}}, term.Date{})} {
		if svg, ok := Strip(a, date("2027-02-10"), Desk); ok || svg != "" || StripText(a, term.Date{}) != nil {
			t.Errorf("%+v has a strip", a)
		}
	}
}

func TestTheStripInSentences(t *testing.T) {
	got := StripText(spring(), date("2027-02-10"))
	for n, want := range map[int]string{
		1:  "Week 1, from Mon 11 Jan: open Mon to Fri. The term begins on Mon 11 Jan.",
		5:  "Week 5, from Mon 8 Feb: open Mon to Fri. Today is Wed 10 Feb.",
		6:  "Week 6, from Mon 15 Feb: closed. Mon 15 Feb to Fri 19 Feb: break.",
		9:  "Week 9, from Mon 8 Mar: open Tue to Fri. Mon 8 Mar: staff day.",
		11: "Week 11, from Mon 22 Mar: open Mon to Fri. Eat on Wed 24 Mar.",
	} {
		if len(got) != 12 || got[n-1] != want {
			t.Errorf("of %d sentences: %q, want %q", len(got), got[n-1], want)
		}
	}
	club := schooled(term.Given{Terms: []term.Span{{From: date("2027-01-11"), To: date("2027-01-15")}}, OpenDays: []time.Weekday{time.Monday, time.Wednesday, time.Friday}}, term.Date{})
	if got := StripText(club, term.Date{}); got[0] != "Week 1, from Mon 11 Jan: open Mon, Wed and Fri. The term begins on Mon 11 Jan. The term ends on Fri 15 Jan." {
		t.Errorf("%q", got)
	}
	if label := stripElements(t, club, term.Date{}, Desk)[0].attrs["aria-label"]; !strings.Contains(label, "every Tue, Thu, Sat and Sun.") {
		t.Errorf("%q", label)
	}
}

// anySchool draws a school year, a meal and a day.
func anySchool(t *rapid.T) (*garden.Assessment, term.Date) {
	start := date("2026-08-01")
	from := start.Add(rapid.IntRange(0, 200).Draw(t, "from"))
	g := term.Given{Terms: []term.Span{{From: from, To: from.Add(rapid.IntRange(0, 400).Draw(t, "days"))}}}
	if rapid.Bool().Draw(t, "second") {
		next := g.Terms[0].To.Add(rapid.IntRange(1, 40).Draw(t, "gap"))
		g.Terms = append(g.Terms, term.Span{From: next, To: next.Add(rapid.IntRange(0, 100).Draw(t, "days"))})
	}
	for range rapid.IntRange(0, 5).Draw(t, "closures") {
		day := start.Add(rapid.IntRange(0, 600).Draw(t, "closed"))
		why := rapid.SampledFrom([]string{"", "break", "a <day> & a \"night\"", "staff training for all of the county's schools"}).Draw(t, "why")
		g.Closed = append(g.Closed, term.Closure{Span: term.Span{From: day, To: day.Add(rapid.IntRange(0, 20).Draw(t, "long"))}, Why: why})
	}
	for w := range 7 {
		if rapid.Bool().Draw(t, "open") {
			g.OpenDays = append(g.OpenDays, time.Weekday(w))
		}
	}
	meal := term.Date{}
	if rapid.Bool().Draw(t, "meal") {
		meal = start.Add(rapid.IntRange(0, 600).Draw(t, "meal"))
	}
	today := term.Date{}
	if rapid.Bool().Draw(t, "today") {
		today = start.Add(rapid.IntRange(-60, 700).Draw(t, "today"))
		if meal.Set() && rapid.Bool().Draw(t, "near") {
			today = meal.Add(rapid.IntRange(-8, 8).Draw(t, "before"))
		}
	}
	return schooled(g, meal), today
}

// For any school year and day: each day of the term once, in order and to
// scale, hatched where nobody comes, filled on today; words that can be read;
// the same bytes again.
func TestStripsOfAnyYear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, today := anySchool(t)
		for _, w := range []Width{Desk, Hand} {
			all := stripElements(t, a, today, w)
			legible(t, all)
			cells := daysIn(all)
			d := date(cells[0].attrs["data-day"])
			if d.Weekday() != time.Monday || len(cells)%7 != 0 {
				t.Fatalf("%d days from %v", len(cells), d)
			}
			wide := cells[0].number("width")
			for i, e := range cells {
				if e.attrs["data-day"] != d.Add(i).String() {
					t.Fatalf("day %d is %s, want %v", i, e.attrs["data-day"], d.Add(i))
				}
				if off := e.number("x") - cells[0].number("x") - wide*float64(i); off > 0.01*float64(i+2) || off < -0.01*float64(i+2) {
					t.Fatalf("%s stands %.2f px off", e.attrs["data-day"], off)
				}
				class := "day"
				switch day := d.Add(i); {
				case day == today:
					class = "day now"
				case !a.Term.Open(day):
					class = "day shut"
				}
				if e.attrs["class"] != class || (e.attrs["fill"] == "url(#hatch)") != (class == "day shut") {
					t.Fatalf("%s is %q filled %q, want %q", e.attrs["data-day"], e.attrs["class"], e.attrs["fill"], class)
				}
			}
			covers(t, a, today, w, term.Span{From: d, To: d.Add(len(cells) - 1)})
			if again, _ := Strip(a, today, w); fmt.Sprint(withCells(t, elements(t, again))) != fmt.Sprint(all) {
				t.Fatalf("drawn twice, it differs")
			}
		}
	})
}

// covers fails where a strip shows less than it has to.
func covers(t *rapid.T, a *garden.Assessment, today term.Date, w Width, shown term.Span) {
	if w == Hand {
		if shown.Days() != 21 || today.Set() && today.Monday() != shown.From {
			t.Fatalf("a hand on %v shows %v", today, shown)
		}
		return
	}
	day := today
	if !day.Set() {
		day = a.Term.Terms()[0].From
	}
	i, _ := a.Term.Current(day)
	s := a.Term.Terms()[i]
	weeks := a.Term.WeekCount(i)
	if weeks <= 26 && (shown.From != s.From.Monday() || shown.To != s.To.Monday().Add(6)) {
		t.Fatalf("of the term %v a desk shows %v", s, shown)
	}
	if weeks > 26 && (shown.Days() != 7*26 || s.Holds(today) && !shown.Holds(today) || shown.From.Before(s.From.Monday()) || shown.To.After(s.To.Monday().Add(6))) {
		t.Fatalf("of the long term %v a desk shows %v on %v", s, shown, today)
	}
}

// A calendar of thousands of years is drawn as fast as any.
func TestAStripWithoutEnd(t *testing.T) {
	a := schooled(term.Given{Terms: []term.Span{{From: date("0001-01-01"), To: date("9999-12-31")}}, OpenDays: []time.Weekday{0, 1, 2, 3, 4, 5, 6}}, date("9999-12-31"))
	for _, today := range []string{"0001-01-01", "2027-02-10", "9999-12-31", ""} {
		for _, w := range []Width{Desk, Hand} {
			legible(t, stripElements(t, a, date(today), w))
		}
	}
}
