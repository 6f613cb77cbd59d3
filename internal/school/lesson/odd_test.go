package lesson

import (
	"strings"
	"testing"

	"rootbell/internal/base/quantity"
)

// An empty logbook gives sheets from the plan alone, and each that would take
// readings says so.
func TestAnEmptyLogbookIsSaid(t *testing.T) {
	empty, full := box(quantity.Metric, nil), box(quantity.Metric, wrote(t, 24, false))
	for _, p := range Templates() {
		if !p.Log {
			continue
		}
		if s := made(t, Choice{Template: p.ID, Seed: 1}, empty); !s.FromPlan() || !strings.Contains(s.From, "plan alone") {
			t.Errorf("%s: %q", p.ID, s.From)
		}
		if s := made(t, Choice{Template: p.ID, Seed: 1}, full); !s.FromLog() && p.ID != "level-drop" {
			t.Errorf("%s, with a logbook: %q", p.ID, s.From)
		}
	}
}

// The slip of 6 February is named with its date and the rule; what the teacher
// decides is done, and said.
func TestAnOddReadingIsNamedAndDecided(t *testing.T) {
	tub := box(quantity.Metric, wrote(t, 9, true))
	ask := Choice{Template: "fit-line", Band: Senior, Seed: 1}
	slope := func(c Choice) (float64, Sheet) {
		s := made(t, c, tub)
		for _, n := range s.Numbers() {
			if n.Name == "slope of the fitted line" {
				return n.Base, s
			}
		}
		t.Fatal("no slope")
		return 0, s
	}
	kept, s := slope(ask)
	if len(s.Odd) != 1 || s.Odd[0].On != "4 February" || !strings.Contains(s.Odd[0].Why, "fences") {
		t.Fatalf("odd: %+v", s.Odd)
	}
	id := s.Odd[0].ID
	cases := []struct {
		do    Deed
		value float64
		says  string
		close bool // the slope is near the 0.55 cm a day that the plants were given
	}{
		{"", 0, "Nobody has decided yet: it is kept.", false},
		{Keep, 0, "The teacher keeps it.", false},
		{LeaveOut, 0, "The teacher leaves it out.", true},
		{Correct, 9.7, "The teacher writes 9.7 cm in its place.", true},
	}
	for _, c := range cases {
		ask.Odd = []Decision{{ID: id, Do: c.do, Value: c.value}}
		b, s := slope(ask)
		if !strings.Contains(strings.ReplaceAll(s.Odd[0].Says(), "\u00a0", " "), c.says) || !strings.Contains(s.Odd[0].Says(), "4 February") {
			t.Errorf("%q: says %q", c.do, s.Odd[0].Says())
		}
		if near := b > 0.5 && b < 0.6; near != c.close {
			t.Errorf("%q: slope %v", c.do, b)
		}
		if c.do == Keep && b != kept {
			t.Errorf("kept: %v, then %v", kept, b)
		}
	}
}

// Readings that differ by no more than their last digit are not odd, nor is any
// one of a few.
func TestSteadyReadingsAreNotOdd(t *testing.T) {
	show := func(float64) string { return "" }
	for name, values := range map[string][]float64{
		"all alike":      {6, 6, 6, 6, 6, 6, 6},
		"the last digit": {6, 6, 6, 6, 6, 6.1, 6},
		"five of them":   {6, 6, 6, 6, 9},
	} {
		var data []datum
		for i, v := range values {
			data = append(data, datum{day: float64(i), value: v})
		}
		for _, grows := range []bool{false, true} {
			judge(data, grows, 0.1, show)
		}
		for _, d := range data {
			if d.odd != "" {
				t.Errorf("%s: %v stands out", name, d.value)
			}
		}
	}
}

// What was written down as doubtful is named too.
func TestADoubtfulReadingIsNamed(t *testing.T) {
	data := []datum{{value: 6, doubtful: true}, {value: 6}}
	judge(data, false, 0.1, func(float64) string { return "" })
	if data[0].odd == "" || data[1].odd != "" {
		t.Errorf("%+v", data)
	}
}

// What hardly differs is told as that: a spread under the last digit is no
// spread from nought to nought.
func TestFencesAreToldByWhatMadeThem(t *testing.T) {
	show := func(v float64) string { return quantity.FormatNumber(v, 1) }
	steady, spread := []float64{6, 6, 6.01, 6, 6, 6, 9}, []float64{1, 2, 3, 4, 5, 6, 40}
	for _, c := range []struct {
		values      []float64
		grows       bool
		says, never string
	}{
		{[]float64{1, 2, 3, 4, 5, 6, 17}, true, "within the last digit of the steady line. It lies past the fences, -0.2 and 0.2 off the steady line: one and a half times the last digit that is read, 0.1, further out.", "between"},
		{steady, false, "within the last digit of 6.0. It lies past the fences, 5.9 and 6.2: one and a half times the last digit that is read, 0.1, further out.", "between"},
		{spread, false, "lie between 2.0 and 6.0. It lies past the fences, -4.0 and 12.0: one and a half times that spread further out.", "last digit"},
	} {
		var data []datum
		for i, v := range c.values {
			data = append(data, datum{day: float64(i), value: v})
		}
		judge(data, c.grows, 0.1, show)
		why := strings.ReplaceAll(data[len(data)-1].odd, "\u2212", "-")
		if !strings.Contains(why, c.says) || strings.Contains(why, c.never) {
			t.Errorf("%q", why)
		}
	}
}

// The closest holes are those that a ruler finds, for every age: of these three
// 1 and 2 are 7.65 apart, 1 and 3 are 7.75, though the grid makes it 9.0 and 7.75.
// By Pythagoras.
func TestTheClosestHolesAreTheClosest(t *testing.T) {
	tub := box(quantity.Metric, nil)
	tub.Holes = []Hole{{1, 28, 28}, {2, 103, 43}, {3, 28, 105.5}}
	for _, band := range []Band{Junior, Middle} {
		s := made(t, Choice{Template: "coordinates", Band: band, Seed: 1}, tub)
		if said := s.Questions[1].Says; !strings.HasPrefix(said, "Holes 1 and 2;") {
			t.Errorf("%s: %s", band, said)
		}
	}
}
