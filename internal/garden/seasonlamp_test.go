package garden_test

import (
	"context"
	"slices"
	"strings"
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

// twoHeights is a low crop beside a tall one under one lamp. The low one never
// asks for the lamp to be raised.
const twoHeights = `
rootbell: 1
garden: Wrenfield lab
place: {time_zone: Australia/Sydney}
school:
  terms: [{from: 2027-01-28, to: 2027-06-25}]
  meal: {day: 2027-05-14}
lamps: [{flux: 180 µmol/s, length: 90 cm, width: 20 cm, above_lid: 30 cm, lit: ["06:00", "22:00"]}]
tubs:
  - {name: Teal, crop: rocket, plants: 3, inside: {top: [50 cm, 36 cm], base: [46 cm, 32 cm], height: 22 cm}, lid: {size: [51 cm, 37 cm]}, cup: {body: 50 mm, rim: 58 mm, depth: 55 mm}}
  - {name: Snipe, crop: Swiss chard, plants: 3, inside: {top: [50 cm, 36 cm], base: [46 cm, 32 cm], height: 22 cm}, lid: {size: [51 cm, 37 cm]}, cup: {body: 50 mm, rim: 58 mm, depth: 55 mm}}
`

// A tub that asks for nothing is told too that the lamp hangs far over it.
func TestALampFarOverTheLowTub(t *testing.T) {
	a := seasonOf(t, parsed(t, "two heights", []byte(twoHeights)), nil)
	f, said := found(a, "season-one-lamp")
	if !said || !strings.Contains(f.Text, "Those of Teal are smaller") {
		t.Errorf("%+v among %v", f, codes(a))
	}
	if !slices.ContainsFunc(a.Tubs[1].Season.Tasks, func(k garden.SeasonTask) bool { return k.Kind == "sow" && strings.Contains(k.Do, "Sow Swiss chard") }) {
		t.Errorf("%+v", a.Tubs[1].Season.Tasks)
	}
}
