package seasonal_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/paper/card"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// wall is the calendar's drawn page.
func wall(t *testing.T, a *garden.Assessment, size scene.Size) card.Page {
	t.Helper()
	pages := named(t, a, "wall-calendar.pdf").Drawn(size)
	if len(pages) != 1 || len(pages[0]) != 1 {
		t.Fatalf("the calendar is drawn on %d pages", len(pages))
	}
	return pages[0][0]
}

// texts are the words of a page in mm, those in the type of the cells.
func texts(p card.Page, points float64) []scene.Text {
	var out []scene.Text
	for _, e := range p.Elements {
		if text, ok := e.(scene.Text); ok && text.SizeMM > (points-0.01)*scene.PointMM {
			out = append(out, text)
		}
	}
	return out
}

// leastWall is the type that each example has at least, in points: 14 for a wall
// (the project's own rule), a little less where Letter is too narrow for it.
var leastWall = map[scene.Size]float64{scene.A4: 14, scene.Letter: 13}

// The term of both examples hangs on one page across, in type for a wall, and no
// word overlaps another.
func TestTheTermIsOnOnePageAcross(t *testing.T) {
	for _, a := range ways(t) {
		for _, size := range sizes {
			p := wall(t, a, size)
			if p.Size != size.Across() {
				t.Errorf("the page is %v", p.Size)
			}
			numbers := 0
			for _, text := range texts(p, leastWall[size]) {
				if text.Face == scene.SansBold {
					numbers++
				}
			}
			// Twelve weeks of seven days with their numbers; the term ends on a Friday.
			if want := 12 + 12*7 - 2; numbers != want {
				t.Errorf("%s: %d bold numbers in %v points or more, want %d", a.Garden, numbers, leastWall[size], want)
			}
			all := texts(p, 11)
			for i, one := range all {
				for _, other := range all[:i] {
					if b := one.Bounds().Grown(-0.35); b.Overlaps(other.Bounds().Grown(-0.35)) {
						t.Errorf("%s: %q and %q overlap", a.Garden, one.Text, other.Text)
					}
				}
			}
		}
	}
}

// Days on which nobody comes are hatched, and no other.
func TestClosedDaysAreHatched(t *testing.T) {
	for _, a := range ways(t) {
		p := wall(t, a, scene.A4)
		numbers := texts(p, 14)
		for _, month := range []struct {
			first string
			days  int
		}{{"2027-01-11", 21}, {"2027-02-01", 28}, {"2027-03-01", 28}} {
			from, err := term.ParseDate(month.first)
			if err != nil {
				t.Fatal(err)
			}
			for k := range month.days {
				d := from.Add(k)
				at, ok := cellOf(numbers, d)
				if !ok {
					t.Fatalf("%s: no cell of %s", a.Garden, d)
				}
				if got, want := hatched(p, at), !a.Term.Open(d); got != want {
					t.Errorf("%s: %s hatched %v, want %v", a.Garden, d.Long(), got, want)
				}
			}
		}
	}
}

// cellOf is where a day's number stands: the rows go by weeks from 11 January.
func cellOf(numbers []scene.Text, d term.Date) (scene.Point, bool) {
	words := []string{fmt.Sprint(d.Day), d.Short()}
	monday := term.Date{Year: 2027, Month: 1, Day: 11}
	week := d.Since(monday)/7 + 1
	row := slices.IndexFunc(numbers, func(x scene.Text) bool {
		return x.Face == scene.SansBold && x.At.X < 15 && x.Text == fmt.Sprint(week)
	})
	if row < 0 {
		return scene.Point{}, false
	}
	for _, x := range numbers {
		if x.At.X > 20 && x.Face == scene.SansBold && slices.Contains(words, x.Text) && x.At.Y < numbers[row].At.Y+3 && x.At.Y > numbers[row].At.Y-3 {
			return x.At, true
		}
	}
	return scene.Point{}, false
}

// hatched tells whether slanted thin lines lie just right of and under a point.
func hatched(p card.Page, at scene.Point) bool {
	near := scene.BoxAt(scene.Point{X: at.X, Y: at.Y - 2}, 8, 6)
	for _, e := range p.Elements {
		l, ok := e.(scene.Line)
		if ok && l.From.X != l.To.X && l.From.Y != l.To.Y && l.Bounds().Overlaps(near) {
			return true
		}
	}
	return false
}

// Each task of the season stands in a cell of the calendar, and in words in the
// list after it.
func TestEachTaskIsOnTheCalendar(t *testing.T) {
	for _, a := range ways(t) {
		text := said(named(t, a, "wall-calendar.pdf"))
		drawn := ""
		for _, x := range texts(wall(t, a, scene.A4), 14) {
			drawn += x.Text + " "
		}
		for _, tub := range a.Tubs {
			for _, task := range tub.Season.Tasks {
				d, err := term.ParseDate(task.On)
				if err != nil {
					t.Fatal(err)
				}
				if !strings.Contains(text, d.Words()+" | ") || !strings.Contains(text, strings.ReplaceAll(task.Do, "\u00a0", " ")) {
					t.Errorf("%s: %s on %s is not in the list", a.Garden, task.Do, task.On)
				}
			}
			for _, word := range []string{"sow:", "thin:", "move in:", "new water:", "lower line:", "lamp up:", "harvest:", "leave sheet:", "pH, EC"} {
				if !strings.Contains(drawn, word) || strings.Count(drawn, tub.Name) < 8 {
					t.Errorf("%s: %s of %s is not on the calendar: %s", a.Garden, word, tub.Name, drawn)
				}
			}
		}
		if !strings.Contains(drawn, "meal") || strings.Count(drawn, "meal") != 1 {
			t.Errorf("%s: the meal stands on the calendar %d times", a.Garden, strings.Count(drawn, "meal"))
		}
	}
}

// A very long term runs over pages of 20 weeks, and a term full of jobs is set
// smaller, but never under 11 points.
func TestAFullTerm(t *testing.T) {
	a := example(t, "fernhollow", garden.Metric)
	season := a.Tubs[0].Season
	for d := range 60 {
		for _, kind := range []string{"sow", "thin", "transplant", "lamp", "change-out", "lower", "order", "harvest"} {
			on := term.Date{Year: 2027, Month: 1, Day: 11}.Add(d)
			season.Tasks = append(season.Tasks, garden.SeasonTask{Kind: kind, On: on.String(), Do: "Do it."})
		}
	}
	p := wall(t, a, scene.Letter)
	for _, e := range p.Elements {
		if x, ok := e.(scene.Text); ok && x.At.Y > 24 && x.SizeMM < 11*scene.PointMM-1e-9 {
			t.Errorf("%q in %.1f points", x.Text, x.SizeMM/scene.PointMM)
		}
	}
	if box := scene.Bounds(p.Elements); box.Min.X < 12-0.5 || box.Min.Y < 12-0.5 || box.Max.X > p.Size.Width-12+0.5 || box.Max.Y > p.Size.Height-12+0.5 {
		t.Errorf("the page is drawn over %v", box)
	}
	season.Tasks = append(season.Tasks, garden.SeasonTask{Kind: "order", On: "2026-08-03", Do: "Order early."})
	if pages := named(t, a, "wall-calendar.pdf").Drawn(scene.A4); len(pages[0]) != 2 {
		t.Errorf("a calendar of 35 weeks has %d pages", len(pages[0]))
	}
}

// A term of twenty weeks stands upright where that has the larger type, and
// nothing of it is cut.
func TestALongTermStandsUpright(t *testing.T) {
	a := example(t, "fernhollow", garden.Metric)
	day := func(text string) term.Date {
		d, err := term.ParseDate(text)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	a.Term = term.New(term.Given{Terms: []term.Span{{From: day("2027-01-11"), To: day("2027-05-28")}}, ArriveMin: term.ArriveMin, LeaveMin: term.LeaveMin})
	for _, size := range sizes {
		p := wall(t, a, size)
		if p.Size != size {
			t.Errorf("the page is %v", p.Size)
		}
		numbers := 0
		for _, x := range texts(p, 11) {
			if strings.Contains(x.Text, "more") || strings.Contains(x.Text, "…") {
				t.Errorf("%q is cut", x.Text)
			}
			if x.Face == scene.SansBold {
				numbers++
			}
		}
		// Twenty weeks of seven days with their numbers, up to the last Friday.
		if want := 20 + 20*7 - 2; numbers != want {
			t.Errorf("%d bold numbers, want %d", numbers, want)
		}
	}
}
