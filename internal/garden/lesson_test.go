package garden_test

import (
	"context"
	"encoding/json"
	"strings"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/science/lid"
)

// The class of both examples has at least the 25 sheets, in either unit system,
// and what their keys work out can be looked up among the numbers.
func TestSheetsOfAClass(t *testing.T) {
	for _, example := range []string{"fernhollow", "saltbrook"} {
		for _, units := range []string{"metric", "us"} {
			p := parsed(t, example, text(t, "../../examples/"+example+".yaml", edit{"units", units}))
			a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1, Stages: garden.StageClass})
			if err != nil {
				t.Fatal(err)
			}
			if len(a.Class.Sheets) < 25 {
				t.Errorf("%s, %s: %d sheets", example, units, len(a.Class.Sheets))
			}
			known := map[string]bool{}
			for _, n := range a.Numbers {
				known[n.Key] = true
			}
			for _, s := range a.Class.Sheets {
				if s.ID == "" || s.Title == "" || s.Concept == "" || s.Tub == "" || len(s.Touches) == 0 || !strings.Contains(s.About, "ages") {
					t.Errorf("%s: %+v", example, s)
				}
				for _, n := range s.Lesson.Numbers() {
					if !strings.HasPrefix(n.Key, "class.sheets."+s.ID+".") || !known[n.Key] {
						t.Errorf("%s: %s cannot be looked up", s.ID, n.Key)
					}
				}
			}
			text, err := json.Marshal(a.Class.Sheets[0])
			if err != nil || !strings.Contains(string(text), `"touches":["1.OA.1"]`) || strings.Contains(string(text), "Lesson") {
				t.Errorf("JSON: %s %v", text, err)
			}
		}
	}
}

// Sheets are about the tub that was read most, where nobody chose.
func TestSheetsAreAboutTheTubThatWasReadMost(t *testing.T) {
	p := parsed(t, "fernhollow", text(t, "../../examples/fernhollow.yaml"))
	a, err := garden.Assess(context.Background(), garden.Inputs{
		Plan: p, Effort: lid.Quick, Seed: 1, Stages: garden.StageClass, Zone: dublin,
		Readings: wrote(t, dublin, "Otter 2027-02-09 09:00 level=24.9 pH=6.0", "Otter 2027-02-10 09:00 level=24.0 pH=6.0", "Heron 2027-02-10 09:00 level=24.8 pH=6.0"),
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range a.Class.Sheets {
		if s.Tub != "Otter" {
			t.Errorf("%s is about %s", s.ID, s.Tub)
		}
		if s.ID == "rate" && !strings.Contains(s.About, "From the class's logbook, 9 February to 10 February.") {
			t.Errorf("the rate rests on %q", s.About)
		}
	}
}
