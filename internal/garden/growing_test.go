package garden_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// Crops share the plants as their numbers in the plan do, the largest remainder
// first; what one plant wants is the mean over the plants.
func TestCropsShareATub(t *testing.T) {
	const name = "testdata/several.yaml"
	shares := []edit{{"shelf.clear_height", "3 m"}}
	a := edited(t, name, shares...)
	for i, want := range []string{"basil 2, Swiss chard 1, parsley 2", "mint 3, cilantro 4"} {
		var said []string
		for _, g := range a.Tubs[i].Crops {
			said = append(said, fmt.Sprint(g.Name, " ", g.Plants))
		}
		if got := strings.Join(said, ", "); got != want {
			t.Errorf("%s grows %s, want %s", a.Tubs[i].Name, got, want)
		}
	}
	for key, want := range map[string]float64{
		// litres: (2·3.8 + 1·3.8 + 2·2.84)/5; mint and cilantro (3·3.8 + 4·1.9)/7
		"tubs.Three-crops.litres_with_3": 3.42, "tubs.Other-one.litres_with_2": 2.71,
		// spacing: (3·200 + 4·170)/7 = 182.9 mm; height: the taller, 35 cm
		"tubs.Other-one.spacing_with_2": 18.3, "tubs.Other-one.height_with_2": 35,
		// mass: (3·55 + 4·25)/7 = 37.9 g
		"tubs.Other-one.mass_with_2": 38,
	} {
		if got := number(t, a, key); got.Value != want {
			t.Errorf("%s is %v %s, by hand %v", key, got.Value, got.Unit, want)
		}
	}
}

// 'best' with shares: eight plants of three to one are six and two.
func TestBestKeepsTheShares(t *testing.T) {
	a := edited(t, "testdata/several.yaml", edit{"shelf.clear_height", "3 m"}, edit{"tubs[1].plants", "9"})
	crops := a.Tubs[1].Crops
	if got := fmt.Sprint(crops[0].Plants, crops[1].Plants); got != "4 5" { // 9·3/7 = 3.86, 9·4/7 = 5.14
		t.Errorf("nine plants of three to four are %s", got)
	}
}

// Days until the lowest line: the reserve once roots hang over what is added on
// a day, 8.29 L over 0.8 L/d; still, the reserve from the fill line.
func TestLeaveItByPlainDivision(t *testing.T) {
	top := edit{"tubs[0].daily_topup", "0.8 L/d"}
	if got := number(t, edited(t, "testdata/clean.yaml", top), "tubs.Plain.days_to_lowest"); got.Value != 10.4 || got.Unit != "d" {
		t.Errorf("%v %s", got.Value, got.Unit)
	}
	// Still, the line is at 177 mm: 27.567 L, which is 15.961 L over the 11.606 L
	// at 80 mm: 19.95 days.
	still := edited(t, "testdata/clean.yaml", top, edit{"tubs[0].method", "still"})
	if got := number(t, still, "tubs.Plain.days_to_lowest"); got.Value != 20 {
		t.Errorf("still: %v", got.Value)
	}
}

// The shelf by hand: 120 kg, 80 %, a tub of 560 mm on 1200 mm bears
// 96/(2 − 560/1200) = 62.6 kg; the tub without cups weighs 27.6 kg, a cup with
// pebbles 0.15 kg and a lettuce 0.1 kg: 139 plants.
func TestShelfByHand(t *testing.T) {
	a := edited(t, "testdata/clean.yaml")
	if got := number(t, a, "shelf.allowed"); got.Value != 62.6 {
		t.Errorf("the shelf bears %v %s", got.Value, got.Unit)
	}
	if got := a.Tubs[0].Plants.Limits["shelf"]; got != 139 {
		t.Errorf("the shelf bears %d plants", got)
	}
	if got := number(t, a, "shelf.abreast"); got.Value != 2 {
		t.Errorf("%v tubs side by side", got.Value)
	}
	// room: 85 − 24 cm up to the board, as no lamp hangs
	if got := number(t, a, "tubs.Plain.room_for_plants"); got.Value != 61 {
		t.Errorf("room for %v %s", got.Value, got.Unit)
	}
}

// A stone as high as the plan says pushes as much aside wherever it is asked.
func TestOneStoneIsOneStone(t *testing.T) {
	a := edited(t, "testdata/clean.yaml", edit{"tubs[0].air.stone_height", "150 mm"}, edit{"tubs[0].air.stones", "3"})
	want := number(t, a, "tubs.Plain.displaced_stones").Value
	if got := number(t, a, "tubs.Plain.brim.displaced").Value; got != want || want != 0.9 { // 3·π/4·25 cm²·15 cm
		t.Errorf("the stones push %v L aside, and %v L on the shelf", want, got)
	}
}

// Left out, the ruler's step is 5 mm, and a quarter of an inch in US units.
func TestRulerLeftOut(t *testing.T) {
	for units, step := range map[string]float64{"metric": 5, "us": 6.35} {
		a := edited(t, "testdata/clean.yaml", edit{"tools.ruler_step", ""}, edit{"units", units})
		for _, l := range a.Tubs[0].Lid.Layouts[1:] {
			for _, h := range l.Holes {
				for _, v := range []float64{h.XMM, h.YMM} {
					if math.Abs(v-math.Round(v/step)*step) > 0.0051 {
						t.Errorf("%s: %s: %v mm is no mark of %v mm", units, l.Name, v, step)
					}
				}
			}
		}
	}
}
