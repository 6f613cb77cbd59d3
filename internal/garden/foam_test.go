package garden_test

import (
	"bytes"
	"math"
	"testing"

	"rootbell/internal/garden"
)

// holed is a plan of testdata with holes typed into its lid: what stands at
// the marker is replaced.
func holed(t *testing.T, name, marker, holes string) *garden.Assessment {
	t.Helper()
	body := text(t, name)
	if !bytes.Contains(body, []byte(marker)) {
		t.Fatalf("%s has no %q", name, marker)
	}
	return assessed(t, parsed(t, name, bytes.Replace(body, []byte(marker), []byte(holes), 1)))
}

const (
	foam      = "testdata/foam.yaml"
	foamLid   = "above_rim: -10 mm}"
	foamHoles = "above_rim: -10 mm, holes: "
)

// A foam board tears where plastic bends: 40 mm stay between holes, 50 mm at
// the board's edge, and a cup hangs 30 mm below the board (common practice, no
// source). The numbers are worked out here by hand for the board of
// testdata/foam.yaml: 1080 by 470 mm, 25 mm thick, holes of 48 mm, an error of
// 2 + 2 mm.
func TestFoamBoard(t *testing.T) {
	for _, c := range []struct {
		name string
		a    *garden.Assessment
		stop string // empty where none is due
		at   string
	}{
		{"as it is", edited(t, foam), "", ""},
		{"a cup of the board and 29 mm", edited(t, foam, edit{"tubs[0].cup.depth", "54 mm"}), "foam-cup-short", "tubs[0].cup.depth"},
		{"a cup of the board and 30 mm", edited(t, foam, edit{"tubs[0].cup.depth", "55 mm"}), "", ""},
		{"a thicker board", edited(t, foam, edit{"tubs[0].lid.thickness", "46 mm"}), "foam-cup-short", "tubs[0].cup.depth"},
		{"the usual board of 30 mm and 29 mm", edited(t, foam, edit{"tubs[0].lid.thickness", ""}, edit{"tubs[0].cup.depth", "59 mm"}), "foam-cup-short", "tubs[0].cup.depth"},
		{"plastic has no rule for its cup", edited(t, foam, edit{"tubs[0].lid.material", "plastic"}, edit{"tubs[0].cup.depth", "54 mm"}), "", ""},
		{"holes 95 mm apart: 95 - 48 - 8 = 39 mm", holed(t, foam, foamLid, foamHoles+"[{at: [30 cm, 20 cm]}, {at: [39.5 cm, 20 cm]}]}"), "web-thin", "tubs[0].lid.holes"},
		{"holes 96 mm apart leave 40 mm", holed(t, foam, foamLid, foamHoles+"[{at: [30 cm, 20 cm]}, {at: [39.6 cm, 20 cm]}]}"), "", ""},
		{"a hole 77 mm from the edge: 77 - 24 - 4 = 49 mm", holed(t, foam, foamLid, foamHoles+"[{at: [30 cm, 7.7 cm]}]}"), "foam-edge", "tubs[0].lid.holes"},
		{"a hole 78 mm from the edge leaves 50 mm", holed(t, foam, foamLid, foamHoles+"[{at: [30 cm, 7.8 cm]}]}"), "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, code := range []string{"foam-cup-short", "web-thin", "foam-edge"} {
				f, said := found(c.a, code)
				if said != (code == c.stop) || said && (f.Level != stop || f.Field != c.at) {
					t.Errorf("%s: said %v, %s at %q; all: %v", code, said, f.Level, f.Field, codes(c.a))
				}
			}
		})
	}
}

// The cut's widths by hand: a straight wall is linear in the height, a round
// one cut beside its middle is a chord by Pythagoras.
func TestSectionByHand(t *testing.T) {
	const slack = 0.01 // the chord is found by halving
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > slack {
			t.Errorf("%s: %v mm, by hand %v", what, got, want)
		}
	}
	s := edited(t, "testdata/clean.yaml").Tubs[0].Lid.Section
	near("inside at the floor", s.Wall[0].MM, 460)
	near("inside at half the height", s.Wall[4].MM, 490)
	near("inside at the rim", s.Wall[8].MM, 520)
	near("upper face", s.LidFaceMM, 222)
	near("under the floor", s.FloorMM, 240-222)
	for _, x := range s.CupsMM {
		if x < s.LidFromMM || x > s.LidToMM {
			t.Errorf("a cup at %v hangs off the lid, %v to %v", x, s.LidFromMM, s.LidToMM)
		}
	}

	a := edited(t, "testdata/round-still.yaml")
	s, tub := a.Tubs[0].Lid.Section, a.Plan.Tubs[0]
	if s.Aerated || s.StoneMM != 0 {
		t.Error("a still tub has a stone")
	}
	aside := s.YMM - float64(tub.Lid.Diameter.Value)/2
	radius := float64(tub.Round.Top.Value) / 2
	near("chord at the rim", s.Wall[8].MM, 2*math.Sqrt(radius*radius-aside*aside))
	if wall := edited(t, "testdata/poured.yaml").Tubs[0].Lid.Section.Wall; wall != nil {
		t.Errorf("a poured tub has a wall: %v", wall)
	}
}
