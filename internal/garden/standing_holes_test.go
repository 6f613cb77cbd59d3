package garden_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"rootbell/internal/garden"
)

// withHoles is the plain tub with holes that are there already, in cm.
func withHoles(t *testing.T, holes [][2]float64) *garden.Assessment {
	t.Helper()
	body, err := os.ReadFile("../../examples/fernhollow.yaml")
	if err != nil {
		t.Fatal(err)
	}
	list := make([]string, len(holes))
	for i, h := range holes {
		list[i] = fmt.Sprintf("{at: [%g cm, %g cm]}", h[0], h[1])
	}
	const none = "holes: []"
	changed := strings.Replace(string(body), none, "holes: ["+strings.Join(list, ", ")+"]", 1)
	if changed == string(body) {
		t.Fatal("the example has no place for holes")
	}
	return assessed(t, parsed(t, "fernhollow.yaml", []byte(changed)))
}

// Three rows of five, 10 cm by 11 cm: at 14.5 cm only the diagonals count, so
// every other hole as on a chequered board, which are eight (by hand).
func TestOfHolesThatAreThereOnlyThoseFarEnoughApartCount(t *testing.T) {
	var holes [][2]float64
	for row := range 3 {
		for column := range 5 {
			holes = append(holes, [2]float64{8 + 10*float64(column), 8 + 11*float64(row)})
		}
	}
	p := withHoles(t, holes).Tubs[0].Plants
	if got := p.Limits[garden.ByLid]; got != 8 {
		t.Errorf("the lid limit of the fifteen holes is %d, want 8", got)
	}
}

func TestTwoHolesTooCloseDoNotCloseTheLid(t *testing.T) {
	free := withHoles(t, [][2]float64{{12, 9}}).Tubs[0].Plants.Limits[garden.ByLid]
	near := withHoles(t, [][2]float64{{12, 9}, {24, 9}}).Tubs[0].Plants.Limits[garden.ByLid]
	if near < 2 || near > free {
		t.Errorf("with a second hole 12 cm beside the first the lid takes %d, without it %d", near, free)
	}
}
