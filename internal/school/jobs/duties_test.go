package jobs

import (
	"testing"

	"rootbell/internal/school/steering"
)

func TestWhatIsCarriedByAge(t *testing.T) {
	for age, want := range map[int]float64{5: 1, 7: 1, 8: 2, 10: 2, 11: 4, 17: 4} {
		if got, ok := CarryAt(age); !ok || got.Litres != want || got.Fact.Status != "common practice" {
			t.Errorf("at %d: %+v", age, got)
		}
	}
	if got, ok := CarryAt(4); ok {
		t.Errorf("at 4: %+v", got)
	}
}

// What is said at the jug and what is said on the job's card are one.
func TestTheCardSaysWhatTheJugSays(t *testing.T) {
	jugs := steering.Carriers()
	for i, c := range Carries() {
		if len(jugs) != 3 || float64(jugs[i].Litres) != c.Litres {
			t.Errorf("%+v beside %+v", c, jugs)
		}
	}
}

func TestWhichJobsAreForAdults(t *testing.T) {
	for name, want := range map[string]string{
		"Mix concentrates":   "chemicals that are not yet diluted",
		"Bleach the tub":     "chemicals that are not yet diluted",
		"Unplug the pump":    "mains electricity near water",
		"check the plug":     "mains electricity near water",
		"DRILL holes":        "saws and drills",
		"cut with a knife":   "knives and blades",
		"carry the full tub": "lifting a full tub",
		"move tub":           "lifting a full tub",
		"lift our tub":       "lifting a full tub",
		"lift the lid":       "",
		"look at the tub":    "",
		"soak seed plugs":    "",
		"carry water":        "",
		"top up":             "",
		"look and draw":      "",
		"measure plants":     "",
		"read the dipstick":  "",
		"":                   "",
	} {
		got, adult := ForAdults(name)
		if got.What != want || adult != (want != "") {
			t.Errorf("%q: %q", name, got.What)
		}
	}
	for _, d := range AdultDuties() {
		if len(d.words) == 0 || d.Fact.Source == "" {
			t.Errorf("%+v", d)
		}
	}
}
