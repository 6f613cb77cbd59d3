package garden_test

import (
	"context"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/science/lid"
)

// The report sums up what was picked and what was weighed, as the rows say; a
// row that names a number is a harvest also where nobody ticked it. By hand: 3
// and 4 plants, 240 and 310.5 g.
func TestTheReportTellsTheHarvest(t *testing.T) {
	p := parsed(t, "class", schoolText(fiveWeeks+"pupils: 20"))
	in := garden.Inputs{Plan: p, Zone: dublin, Effort: lid.Quick, Seed: 1, Stages: garden.StageClass}
	for _, c := range []struct {
		lines  []string
		picked int
		massG  float64
		days   int
	}{
		{[]string{"Heron 2027-02-08 09:00 picked=3 weigh=240", "Heron 2027-02-11 09:00 done=harvested picked=4 weigh=310.5"}, 7, 550.5, 2},
		{[]string{"Heron 2027-02-08 09:00 done=harvested"}, 0, 0, 1},
		{[]string{"Heron 2027-02-08 09:00 done=harvested weigh=95"}, 0, 95, 1},
		{[]string{"Heron 2027-02-08 09:00 leaves=12"}, 0, 0, 0},
	} {
		in.Readings = wrote(t, dublin, c.lines...)
		a, err := garden.Assess(context.Background(), in)
		if err != nil || a.Class == nil {
			t.Fatal(err)
		}
		r := a.Class.Report.Tubs[0]
		if r.Picked != c.picked || r.PickedG != c.massG || len(r.Harvested) != c.days {
			t.Errorf("%v: %d plants, %v g on %v", c.lines, r.Picked, r.PickedG, r.Harvested)
		}
	}
}
