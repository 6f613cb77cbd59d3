package figure

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/garden"
	"rootbell/internal/school/term"
)

// seasons gives a school's assessment tubs with their days.
func seasons(a *garden.Assessment, days ...[4]string) *garden.Assessment {
	for i, d := range days {
		a.Tubs = append(a.Tubs, garden.Tub{Name: []string{"Heron", "Otter", "Tern"}[i], Crops: []garden.Growing{{Name: "leaf lettuce"}}, Season: &garden.Season{SowOn: d[0], TransplantOn: d[1], HarvestFrom: d[2], HarvestTo: d[3]}})
	}
	return a
}

// withCells adds a cell for each day to what was drawn: the cells lie between
// the upright lines of one path, are shut where another lies over them, and now
// where the one that is filled stands.
func withCells(t complainer, all []element) []element {
	t.Helper()
	var edges []float64
	var shut [][2]float64
	now := -1e9
	for _, e := range all {
		if class := e.attrs["class"]; class == "day now" {
			now = e.number("x")
		} else if e.name == "path" && (class == "day" || class == "shut") {
			for one := range strings.SplitSeq(strings.ReplaceAll(e.attrs["d"], "Z", "")[1:], "M") {
				var from, top, to, foot float64
				if n, _ := fmt.Sscanf(one, "%f %fH%fV%f", &from, &top, &to, &foot); n == 4 {
					if class == "shut" {
						shut = append(shut, [2]float64{from, to})
					} else {
						edges = append(edges, from, to)
					}
				} else if n, _ := fmt.Sscanf(one, "%f %fV%f", &from, &top, &foot); n == 3 {
					edges = append(edges, from)
				} else {
					t.Errorf("a cell along %q", one)
				}
			}
		}
	}
	slices.Sort(edges)
	first := date(all[0].attrs["data-from"])
	for i := range len(edges) - 1 {
		cell := element{name: "rect", attrs: map[string]string{"class": "day", "data-day": first.Add(i).String(), "x": fmt.Sprint(edges[i]), "width": fmt.Sprint(edges[i+1] - edges[i])}}
		middle := (edges[i] + edges[i+1]) / 2
		if slices.ContainsFunc(shut, func(s [2]float64) bool { return s[0] < middle && middle < s[1] }) {
			cell.attrs["class"], cell.attrs["fill"] = "day shut", "url(#hatch)"
		}
		if now == edges[i] {
			cell.attrs["class"] = "day now"
		}
		all = append(all, cell)
	}
	return all
}

// middleOf is where the middle of a day's cell lies.
func middleOf(all []element, day string) float64 {
	for _, e := range all {
		if e.name == "rect" && e.attrs["data-day"] == day {
			return e.number("x") + e.number("width")/2
		}
	}
	return math.NaN()
}

// A tub is a ring on the day of sowing, dashes up to the move, an upright stroke
// there, a thick line up to the harvest, and a block over its days.
func TestATubHasItsLineOnTheStrip(t *testing.T) {
	all := stripElements(t, seasons(spring(), [4]string{"2027-01-12", "2027-02-01", "2027-03-22", "2027-03-24"}), date("2027-02-10"), Desk)
	legible(t, all)
	said := strings.Join(words(all), "|")
	for _, want := range []string{"Heron: sow", "into the tub", "harvest", "leaf lettuce"} {
		if !strings.Contains(said, want) {
			t.Errorf("no %q in %s", want, said)
		}
	}
	near := func(what string, got, want float64) {
		if math.Abs(got-want) > 0.02 {
			t.Errorf("%s lies at %.2f, want %.2f", what, got, want)
		}
	}
	for _, e := range all {
		switch {
		case e.name == "circle" && e.attrs["class"] == "ring":
			near("the ring", e.number("cx"), middleOf(all, "2027-01-12"))
		case e.attrs["class"] == "hid":
			near("the nursery's end", e.number("x2"), middleOf(all, "2027-02-01"))
		case e.attrs["class"] == "k" && e.number("y1") == e.number("y2"):
			near("the tub's time", e.number("x1"), middleOf(all, "2027-02-01"))
			near("its end", e.number("x2"), middleOf(all, "2027-03-22"))
		case e.attrs["class"] == "solid":
			near("the harvest's width", e.number("width"), 3*2*(middleOf(all, "2027-03-22")-e.number("x")))
		}
	}
	if label := all[0].attrs["aria-label"]; !strings.HasSuffix(label, "Heron: sow on Tue 12 Jan, into the tub on Mon 1 Feb, harvest from Mon 22 Mar to Wed 24 Mar.") {
		t.Errorf("the label says %q", label)
	}
	if text := strings.Join(StripText(seasons(spring(), [4]string{"2027-01-12", "2027-02-01", "2027-03-22", "2027-03-24"}), term.Date{}), "|"); !strings.Contains(text, "Sow Heron on Tue 12 Jan.") || !strings.Contains(text, "Move Heron into its tub on Mon 1 Feb.") || !strings.Contains(text, "Harvest Heron from Mon 22 Mar.") {
		t.Errorf("as sentences: %q", text)
	}
}

// On a phone three weeks are shown, and what a tub does in them.
func TestATubOnAHand(t *testing.T) {
	for _, c := range []struct{ today, says string }{
		{"2027-01-12", "Heron: sow"},
		{"2027-01-27", "into the tub"},
		{"2027-02-24", "Heron: in the tub"},
		{"2027-03-24", "harvest"},
		{"2027-04-01", "Heron: harvested by Wed 24 Mar"},
	} {
		all := stripElements(t, seasons(spring(), [4]string{"2027-01-12", "2027-02-01", "2027-03-22", "2027-03-24"}), date(c.today), Hand)
		legible(t, all)
		if said := strings.Join(words(all), "|"); !strings.Contains(said, c.says) {
			t.Errorf("on %s it says %s, want %q", c.today, said, c.says)
		}
	}
}

// Without a season a strip is as it was.
func TestAStripWithoutSeasons(t *testing.T) {
	plain, _ := Strip(spring(), date("2027-02-10"), Desk)
	a := spring()
	a.Tubs = []garden.Tub{{Name: "Heron"}, {Name: "Otter", Season: &garden.Season{}}}
	if with, _ := Strip(a, date("2027-02-10"), Desk); with != plain {
		t.Error("tubs without days change the strip")
	}
}

// For any school and any days of up to three tubs the words can be read, and
// the same is drawn again.
func TestTubsOfAnyYear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, today := anySchool(t)
		from := a.Term.Terms()[0].From
		var days [][4]string
		for range rapid.IntRange(0, 3).Draw(t, "tubs") {
			var d [4]string
			at := from.Add(rapid.IntRange(-30, 120).Draw(t, "sow"))
			for i := range d {
				if rapid.IntRange(0, 9).Draw(t, "known") > 0 {
					d[i] = at.String()
				}
				at = at.Add(rapid.IntRange(0, 50).Draw(t, "days"))
			}
			days = append(days, d)
		}
		seasons(a, days...)
		for _, w := range []Width{Desk, Hand} {
			all := stripElements(t, a, today, w)
			legible(t, all)
			if again, _ := Strip(a, today, w); fmt.Sprint(withCells(t, elements(t, again))) != fmt.Sprint(all) {
				t.Fatalf("drawn twice, it differs")
			}
		}
	})
}
