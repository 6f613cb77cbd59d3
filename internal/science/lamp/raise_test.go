package lamp

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestRaises(t *testing.T) {
	leaves := []float64{0, 100, 160, 170, 230, 240}
	for _, row := range []struct {
		name            string
		lamp, top, step float64
		want            []Raise
		fits            bool
	}{
		{"high enough from the start", 400, 700, 50, nil, true},
		{"by links of 5 cm", 300, 700, 50, []Raise{{2, 50, 350}, {4, 50, 400}}, true},
		{"by what is needed", 300, 700, 0, []Raise{{2, 10, 310}, {3, 10, 320}, {4, 60, 380}, {5, 10, 390}}, true},
		{"a low shelf", 300, 360, 50, []Raise{{2, 50, 350}, {4, 10, 360}}, false},
		{"nowhere to go", 300, 250, 50, nil, false},
	} {
		if got, fits := Raises(row.lamp, row.top, row.step, leaves); !slices.Equal(got, row.want) || fits != row.fits {
			t.Errorf("%s: %v, %v", row.name, got, fits)
		}
	}
}

// After each raise the leaves of that day are clear, or the lamp is at the top.
func TestRaisesKeepLeavesClear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lamp, top := rapid.Float64Range(150, 500).Draw(t, "lamp"), rapid.Float64Range(500, 900).Draw(t, "top")
		step := rapid.Float64Range(0, 100).Draw(t, "step")
		leaves := rapid.SliceOfN(rapid.Float64Range(0, 800), 0, 30).Draw(t, "leaves")
		raises, fits := Raises(lamp, top, step, leaves)
		at, next := lamp, 0
		for day, y := range leaves {
			if next < len(raises) && raises[next].Day == day {
				at = raises[next].ToMM
				next++
			}
			if free := RaiseMM(at, y) < 1e-6; !free && (fits || at < top) {
				t.Fatalf("day %d: leaves of %v under a lamp at %v, fits %v", day, y, at, fits)
			}
		}
	})
}
