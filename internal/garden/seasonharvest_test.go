package garden_test

import (
	"math"
	"strings"
	"testing"

	"rootbell/internal/garden"
)

func marksOf(s *garden.Season, of string) (out []garden.SeenMark) {
	for _, m := range s.Readings {
		if m.Of == of {
			out = append(out, m)
		}
	}
	return out
}

// What a harvest says, and what the season makes of it. Heron has 8 lettuces in
// two halves by their light; Otter has two crops. The mass of one plant is what
// was weighed by what was counted.
func TestAHarvestIsFollowed(t *testing.T) {
	p := planted(t)
	const at = "Heron 2027-02-24 09:00 done=harvested "
	for _, c := range []struct {
		name, line, code, says string
		masses                 []float64 // that are learned from
		drinks                 float64   // of what all would, in the last days: less than
	}{
		{"three of eight", at + "picked=3 weigh=240", "reading-picked", "3; standing since: 5", []float64{80}, 0.85},
		{"a number without a mass", at + "picked=3", "reading-picked", "3; standing since: 5", nil, 0.85},
		{"a number without the deed", "Heron 2027-02-24 09:00 picked=3 weigh=240", "reading-picked", "3; standing since: 5", []float64{80}, 0.85},
		{"more than stand there", at + "picked=9 weigh=720", "reading-picked-many", "8 stood there", nil, 0.5},
		{"nobody counted", at + "weigh=700", "reading-harvested", "how many", nil, 1.01},
		{"the morning of the meal", "Heron 2027-03-24 09:00 done=harvested picked=4 weigh=400", "", "", []float64{100}, 1.5},
	} {
		t.Run(c.name, func(t *testing.T) {
			all := seasonOf(t, p, nil, "Heron 2027-01-25 09:00 done=planted").Tubs[0].Season
			a := seasonOf(t, p, nil, "Heron 2027-01-25 09:00 done=planted", c.line)
			s := a.Tubs[0].Season
			if f, ok := found(a, c.code); c.code != "" && (!ok || !strings.Contains(f.Text, c.says) || f.Hint == "") {
				t.Errorf("%+v among %v", f, codes(a))
			}
			marks := marksOf(s, "harvest")
			if len(marks) != len(c.masses) {
				t.Fatalf("learned from %+v, want %v", marks, c.masses)
			}
			for i, m := range marks {
				if math.Abs(m.Value-c.masses[i]) > 1e-9 || !m.Learned {
					t.Errorf("%+v, want %v g", m, c.masses[i])
				}
			}
			if got, was := gone(s, 45), gone(all, 45); got > c.drinks*was {
				t.Errorf("%v L go in the last days, and %v where nothing was picked", got, was)
			}
			if c.name == "the morning of the meal" && s.ReadyChance < 0.5 {
				t.Errorf("picked for the meal, the chance is %v", s.ReadyChance)
			}
		})
	}
}

// Both halves of a tub weighed together are told apart by their light, and what
// they weigh together stays.
func TestAllWeighedTogether(t *testing.T) {
	a := seasonOf(t, planted(t), nil, "Heron 2027-01-25 09:00 done=planted", "Heron 2027-02-24 09:00 done=harvested picked=8 weigh=640")
	s := a.Tubs[0].Season
	marks := marksOf(s, "harvest")
	if len(marks) != 2 || math.Abs(4*marks[0].Value+4*marks[1].Value-640) > 0.5 || marks[0].Value == marks[1].Value {
		t.Errorf("%+v", marks)
	}
	if last := s.Days[len(s.Days)-1]; last.MassG.P95 < 0 || s.ReadyChance != 0 {
		t.Errorf("nothing stands, and the chance is %v (%+v)", s.ReadyChance, last)
	}
}

// In a tub of two crops nobody knows which was picked, unless all were.
func TestAHarvestOfTwoCrops(t *testing.T) {
	p := planted(t)
	for line, code := range map[string]string{
		"Otter 2027-03-20 09:00 picked=2 weigh=90": "reading-picked-which",
		"Otter 2027-03-20 09:00 leaves=9":          "leaves-not-learned",
	} {
		a := seasonOf(t, p, nil, "Otter 2027-02-09 09:00 done=planted", line)
		if f, ok := found(a, code); !ok || !strings.Contains(f.Text, "Otter") || f.Hint == "" {
			t.Errorf("%s: %+v among %v", line, f, codes(a))
		}
		if marks := a.Tubs[1].Season.Readings; len(marks) != 0 {
			t.Errorf("%s: learned from %+v", line, marks)
		}
	}
}

// Leaves of a lettuce are learned from; a count that is far off is asked about.
func TestLeavesOfALettuce(t *testing.T) {
	p := planted(t)
	a := seasonOf(t, p, nil, "Heron 2027-01-25 09:00 done=planted", "Heron 2027-02-15 09:00 leaves=17")
	marks := marksOf(a.Tubs[0].Season, "leaves")
	if len(marks) != 1 || marks[0].Value != 17 || !marks[0].Learned {
		t.Fatalf("%+v", marks)
	}
	// 21 days at the plan's 20 °C and seven or so in plugs are 560 °C·d and more:
	// 0.03 leaves for each, and twice as many or half at the most.
	if b := marks[0].Was; b.P50 < 12 || b.P50 > 26 || b.P5 > 17 || b.P95 < 17 {
		t.Errorf("17 leaves were expected as %+v", b)
	}
	far := seasonOf(t, p, nil, "Heron 2027-01-25 09:00 done=planted", "Heron 2027-02-15 09:00 leaves=95")
	if f, ok := found(far, "reading-far"); !ok || !strings.Contains(f.Text, "the leaves on one plant") || !strings.Contains(f.Text, "read as 95;") {
		t.Errorf("%+v among %v", f, codes(far))
	}
	if s := far.Tubs[0].Season.Score; len(s) != 1 || s[0].Of != "leaves" || !strings.Contains(s[0].Says, "leaves on average") {
		t.Errorf("%+v", s)
	}
}
