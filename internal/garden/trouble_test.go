package garden_test

import (
	"slices"
	"strings"
	"testing"

	"rootbell/internal/school/meal"
)

// What is seen at Heron, held against what its readings and the plan tell.
func TestWhatIsSeenIsHeldAgainstTheReadings(t *testing.T) {
	a := edited(t, "../../examples/fernhollow.yaml")
	for _, c := range []struct {
		name  string
		wrote []string
		seen  []string
		cause string
		says  string
	}{
		{"burnt edges and a high EC", []string{"Heron 2027-02-10 09:00 level=20 EC=2.9 pH=6.0"}, []string{"edges-old"}, "strong", "2.90"},
		{"pale leaves and a low EC", []string{"Heron 2027-02-10 09:00 level=24 EC=0.6 pH=6.0"}, []string{"pale-all"}, "weak", "0.60"},
		{"pale new leaves and a high pH", []string{"Heron 2027-02-10 09:00 level=24 EC=1.5 pH=7.6"}, []string{"pale-new"}, "iron", "7.6"},
		{"hardly any growth right after the move", []string{"Heron 2027-02-08 09:00 level=25 done=planted", "Heron 2027-02-10 09:00 level=24 EC=1.5 pH=6.0"}, []string{"after-move"}, "move", "2 days ago"},
	} {
		got := morningOf(t, a, "2027-02-10", append(slices.Clone(well), c.wrote...)...)
		found := got.Trouble(0, c.seen)
		if !found.Enough || found.Causes[0].ID != c.cause {
			t.Errorf("%s: %s", c.name, found.Says)
			continue
		}
		if reasons := strings.Join(found.Causes[0].For, "; "); !strings.Contains(reasons, c.says) {
			t.Errorf("%s: %q does not say %q", c.name, reasons, c.says)
		}
	}
	if got := a.Trouble(7, nil); got.Enough {
		t.Error("a tub that is not there has a cause")
	}
}

// The plan's own answers stand before the meal.
func TestThePlanAnswersBeforeAMeal(t *testing.T) {
	a := edited(t, "../../examples/fernhollow.yaml", edit{"tubs[0].past", "unknown"}, edit{"school.site.kitchen", "yes"})
	heron := a.Meal(0, nil)
	if !heron.Never || !strings.HasPrefix(heron.Says, "Nobody eats from this tub") {
		t.Errorf("%s", heron.Says)
	}
	otter := a.Meal(1, map[string]meal.Reply{})
	if otter.Never || otter.Asked || !otter.Gates[0].Open {
		t.Errorf("%+v", otter)
	}
	if a.ColdWords() != "5 °C" && a.ColdWords() != "5\u00a0°C" {
		t.Errorf("%q", a.ColdWords())
	}
}
