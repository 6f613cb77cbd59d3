package netcup

import (
	"fmt"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// A hole is right when body < hole < rim − 6 mm: the lip bears 3 mm all round.
func TestWhichHolesAreRight(t *testing.T) {
	cup := Cup{BodyMM: 72, RimMM: 83, DepthMM: 65}
	for _, row := range []struct {
		hole float64
		want bool
	}{
		{71.9, false}, {72, false}, {72.1, true}, {73, true}, {76, true}, {76.9, true}, {77, false}, {79, false},
	} {
		if got := cup.Fits(row.hole); got != row.want {
			t.Errorf("a hole of %v mm: %v", row.hole, got)
		}
	}
	if got := cup.SawsFor(); !slices.Equal(got, []float64{73, 76}) {
		t.Errorf("saws %v", got)
	}
}

func TestTheHoleTakenForACup(t *testing.T) {
	for _, row := range []struct {
		name string
		cup  Cup
		want float64
		ok   bool
	}{
		{"two saws: nearest the middle of 72 and 77 is 74.5, the smaller of two", Cup{72, 83, 65}, 73, true},
		{"one saw between 51 and 55", Cup{51, 61, 50}, 54, true},
		{"no saw between 61 and 63.5: the middle", Cup{61, 69.5, 50}, 62.5, true},
		{"a quarter of a millimetre", Cup{61, 67.25, 50}, 61.125, true},
		{"a lip too narrow", Cup{72, 78, 65}, 0, false},
		{"a rim under the body", Cup{72, 60, 65}, 0, false},
	} {
		got, ok := row.cup.Hole()
		if got != row.want || ok != row.ok {
			t.Errorf("%s: %v, %v; want %v, %v", row.name, got, ok, row.want, row.ok)
		}
	}
}

// Whatever the cup, the hole taken is right, and where a saw is right it is one.
func TestTheHoleTakenIsRight(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		body := rapid.Float64Range(10, 250).Draw(t, "body")
		cup := Cup{BodyMM: body, RimMM: body + rapid.Float64Range(0, 30).Draw(t, "lip")}
		hole, ok := cup.Hole()
		if ok != (cup.RimMM-6 > cup.BodyMM) {
			t.Fatalf("%v: %v, %v", cup, hole, ok)
		}
		if ok && !cup.Fits(hole) {
			t.Fatalf("%v: %v is not right", cup, hole)
		}
		if saws := cup.SawsFor(); len(saws) > 0 && !slices.Contains(saws, hole) {
			t.Fatalf("%v: %v is no saw, %v would do", cup, hole, saws)
		}
	})
}

func TestSawsOfShops(t *testing.T) {
	saws := Saws()
	if !slices.IsSorted(saws) || len(saws) < 20 {
		t.Fatalf("%v", saws)
	}
	// Inch sizes: 2 in, 2 1/8 in, 3 in, 3 1/4 in, 4 in.
	for _, inches := range []float64{2, 2.125, 3, 3.25, 4} {
		if mm := inches * 25.4; !Common(mm) {
			t.Errorf("%v in (%v mm) is told to be rare", inches, mm)
		}
	}
	for _, rare := range []float64{74.5, 62, 200} {
		if Common(rare) {
			t.Errorf("%v mm is told to be common", rare)
		}
	}
}

func mm(v float64) *float64 { return &v }

// The distances by hand, plastic and foam: e is the sum of both errors, 12 mm of
// plastic or 40 of foam stay, 50 of foam at its edge.
func TestMarginsByHand(t *testing.T) {
	for _, row := range []struct {
		name                          string
		cup                           Cup
		wish                          Wish
		err, edge, clear, wall, apart float64
	}{
		{"all left out", Cup{72, 83, 65}, Wish{HoleMM: 76}, 3.5, 60, 58, 46, 95},
		{"the least edge", Cup{72, 83, 65}, Wish{HoleMM: 76, EdgeMM: mm(10), ClearMM: mm(0)}, 3.5, 53.5, 53.5, 46, 95},
		{"no errors", Cup{72, 83, 65}, Wish{HoleMM: 76, EdgeMM: mm(0), ClearMM: mm(0), MarkingErrorMM: mm(0), DrillingMM: mm(0)}, 0, 50, 50, 46, 88},
		{"a wide lip", Cup{72, 110, 65}, Wish{HoleMM: 76}, 3.5, 60, 58, 46, 112},
		{"foam", Cup{45, 56, 75}, Wish{HoleMM: 48, Foam: true}, 3.5, 24 + 50 + 3.5, 24 + 40 + 3.5, 32.5, 48 + 40 + 7},
	} {
		t.Run(row.name, func(t *testing.T) {
			m := row.cup.Margins(working.NewBook(), row.wish)
			got := []float64{m.Error.Base, m.Edge.Base, m.Clear.Base, m.Wall.Base, m.Apart.Base}
			want := []float64{row.err, row.edge, row.clear, row.wall, row.apart}
			if fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("error, edge, clear, wall, apart: %v, by hand %v", got, want)
			}
		})
	}
}

// Left out, the measures are those of the table, in millimetres.
func TestDefaults(t *testing.T) {
	for what, row := range map[string][2]float64{
		"lid over the rim": {DeckOffsetMM(), 0}, "ruler": {RulerStepMM(), 5}, "service hole": {ServiceHoleMM(), 32},
		"air line": {AirHoleMM(), 6.5}, "warn under": {WebWarnMM(), 15}, "plastic": {ThicknessMM(false), 2},
		"foam": {ThicknessMM(true), 30}, "errors": {ErrorMM(), 3.5},
	} {
		if row[0] != row[1] {
			t.Errorf("%s: %v mm, want %v", what, row[0], row[1])
		}
	}
	if got := WetMass(working.NewBook()); got.Base != 0.15 || got.Kind != quantity.Mass {
		t.Errorf("a wet cup weighs %v", got.Base)
	}
}
