package garden_test

import (
	"context"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/science/lid"
)

// One lamp hangs over both of Fernhollow's tubs: no day has it lowered again,
// and where one tub's plants are far below, that is said.
func TestOneLampIsRaisedOnce(t *testing.T) {
	p := parsed(t, "fernhollow", text(t, "../../examples/fernhollow.yaml"))
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1, Members: 40, Stages: garden.StageSeason})
	if err != nil {
		t.Fatal(err)
	}
	days := map[string]string{}
	raised := 0
	for _, tub := range a.Tubs {
		if tub.Season == nil {
			t.Fatalf("%s has no season", tub.Name)
		}
		for _, task := range tub.Season.Tasks {
			if task.Kind != "lamp" {
				continue
			}
			raised++
			if task.On == "" || days[task.On] != "" {
				t.Errorf("%s is raised twice on %q: %q and %q", tub.Name, task.On, task.Do, days[task.On])
			}
			days[task.On] = task.Do
		}
	}
	if raised == 0 {
		t.Error("the lamp is never raised: nothing is tested")
	}
	if _, said := found(a, "season-one-lamp"); !said {
		t.Error("nobody says that one lamp serves plants of two heights")
	}
}
