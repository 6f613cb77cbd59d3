package jobs

import "testing"

func TestWhatIsCarriedByAge(t *testing.T) {
	for age, want := range map[int]struct {
		litres float64
		ages   string
	}{5: {1, "5 to 7"}, 7: {1, "5 to 7"}, 8: {2, "8 to 10"}, 10: {2, "8 to 10"}, 11: {4, "11 and up"}, 17: {4, "11 and up"}} {
		if got, ok := CarryAt(age); !ok || got.Litres != want.litres || got.Ages != want.ages || got.Fact.Status != "common practice" {
			t.Errorf("at %d: %+v", age, got)
		}
	}
	if got, ok := CarryAt(4); ok {
		t.Errorf("at 4: %+v", got)
	}
}

func TestWhichJobsAreForAdults(t *testing.T) {
	for name, want := range map[string]string{
		"Mix concentrates":   "chemicals that are not yet diluted",
		"Bleach the tub":     "chemicals that are not yet diluted",
		"Weigh salts":        "chemicals that are not yet diluted",
		"Dose pH down":       "chemicals that are not yet diluted",
		"pour pH-down":       "chemicals that are not yet diluted",
		"Pour plant food":    "chemicals that are not yet diluted",
		"mix the feed":       "chemicals that are not yet diluted",
		"weigh the plants":   "",
		"measure pH":         "",
		"food day":           "",
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
