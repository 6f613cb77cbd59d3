package figure_test

import (
	"strings"
	"testing"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/figure"
	"rootbell/internal/science/reading"
)

// The drawing says where the line is and what was last read, in both unit
// systems; without a reading it has no water in it.
func TestTodayIsDrawnFromWhatWasRead(t *testing.T) {
	depth, err := reading.ParseTyped[quantity.MM]("120", "mm")
	if err != nil {
		t.Fatal(err)
	}
	at := time.Date(2027, 2, 9, 9, 10, 0, 0, time.UTC)
	rows := []reading.Row{{ID: "row-1", Tub: "Heron", At: at, Level: reading.Level{Depth: depth}}}
	example := func(units string) *garden.Assessment {
		return assess(t, "fernhollow", strings.Replace(read(t, "../../../examples/fernhollow.yaml"), "units: metric", "units: "+units, 1))
	}
	for units, want := range map[string][2]string{"metric": {">16.7<", "12.0 cm on Tue 9 Feb"}, "us": {">6 9/16<", "4 3/4 in on Tue 9 Feb"}} {
		a := example(units)
		empty, ok := figure.Today(a, 0)
		if !ok || strings.Contains(empty, `class="wat"`) || !strings.Contains(empty, "not measured yet") {
			t.Errorf("%s: drawn without a reading: %v %s", units, ok, empty)
		}
		full, ok := figure.Today(a.Asked(garden.Morning{On: plan.Date{Year: 2027, Month: 2, Day: 10}, Readings: rows}), 0)
		if !ok || !strings.Contains(full, `class="wat"`) {
			t.Errorf("%s: no water is drawn", units)
		}
		for _, words := range want {
			if !strings.Contains(strings.ReplaceAll(full, "\u00a0", " "), words) {
				t.Errorf("%s: %q is not on it: %s", units, words, full)
			}
		}
		if strings.Contains(full, "NaN") || strings.Contains(full, "style=") {
			t.Errorf("%s: %s", units, full)
		}
	}
	if _, ok := figure.Today(example("metric"), 7); ok {
		t.Error("a tub that is not there is drawn")
	}
}
