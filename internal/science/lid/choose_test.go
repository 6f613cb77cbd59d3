package lid

import (
	"context"
	"math"
	"math/bits"
	"math/rand/v2"
	"slices"
	"testing"

	"rootbell/internal/base/plane"
)

// byTrial tries every subset.
func byTrial(holes []plane.Point, k int, fixed []int) float64 {
	best := -1.0
	for set := uint(0); set < 1<<len(holes); set++ {
		if bits.OnesCount(set) != k || slices.ContainsFunc(fixed, func(f int) bool { return set>>f&1 == 0 }) {
			continue
		}
		least := math.Inf(1)
		for i := range holes {
			for j := range i {
				if set>>i&1 == 1 && set>>j&1 == 1 {
					least = math.Min(least, math.Hypot(holes[i].X-holes[j].X, holes[i].Y-holes[j].Y))
				}
			}
		}
		best = math.Max(best, least)
	}
	return best
}

func TestChoiceIsTheBestOfAllSubsets(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	for trial := range 200 {
		holes := make([]plane.Point, 5+rng.IntN(7))
		for k := range holes {
			holes[k] = plane.Point{X: 500 * rng.Float64(), Y: 300 * rng.Float64()}
			if trial%3 == 0 { // many equal distances
				holes[k] = plane.Point{X: float64(60 * (k % 4)), Y: float64(50 * (k / 4))}
			}
		}
		k := 2 + rng.IntN(len(holes)-1)
		fixed := rng.Perm(len(holes))[:rng.IntN(min(k, 3)+1)]
		got, err := Choose(context.Background(), holes, k, fixed)
		if err != nil {
			t.Fatal(err)
		}
		want := byTrial(holes, k, fixed)
		if math.Abs(got.Spacing-want) > 1e-6 || !got.Proved || got.Bound != got.Spacing {
			t.Errorf("trial %d: %d of %d, fixed %v: %g (proved %v), all subsets give %g", trial, k, len(holes), fixed, got.Spacing, got.Proved, want)
		}
		for _, f := range fixed {
			if !slices.Contains(got.Holes, f) {
				t.Errorf("trial %d: fixed hole %d left out of %v", trial, f, got.Holes)
			}
		}
		least := math.Inf(1)
		for i, a := range got.Holes {
			for _, b := range got.Holes[:i] {
				least = math.Min(least, holes[a].To(holes[b]))
			}
		}
		if len(got.Holes) != k || math.Abs(least-got.Spacing) > 1e-6 {
			t.Errorf("trial %d: holes %v lie %g apart, not %g", trial, got.Holes, least, got.Spacing)
		}
	}
}

// jittered is a kit's lid: rows and columns that are not quite straight.
func jittered(seed uint64, columns, rows int, pitch, sigma float64) []plane.Point {
	rng := rand.New(rand.NewPCG(seed, 60))
	var out []plane.Point
	for j := range rows {
		for i := range columns {
			out = append(out, plane.Point{
				X: pitch * (float64(i) + sigma*rng.NormFloat64()),
				Y: pitch * (float64(j) + sigma*rng.NormFloat64()),
			})
		}
	}
	return out
}

func TestSixtyHolesAreChosenExactly(t *testing.T) {
	for _, k := range []int{15, 20, 30, 40} {
		for seed := range uint64(3) {
			c, err := Choose(context.Background(), jittered(seed, 10, 6, 50, 0.1), k, nil)
			if err != nil {
				t.Fatal(err)
			}
			if !c.Proved {
				t.Errorf("k=%d, seed %d: not proved after %d nodes", k, seed, c.Nodes)
			}
		}
	}
}

func TestChoiceRefusesNonsense(t *testing.T) {
	holes := jittered(1, 3, 3, 50, 0)
	for name, ask := range map[string]struct {
		k     int
		fixed []int
	}{
		"none":           {0, nil},
		"more than many": {10, nil},
		"fixed twice":    {3, []int{1, 1}},
		"fixed unknown":  {3, []int{9}},
		"fixed too many": {1, []int{1, 2}},
	} {
		if _, err := Choose(context.Background(), holes, ask.k, ask.fixed); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func BenchmarkChooseOfSixty(b *testing.B) {
	for k := 0; b.Loop(); k++ {
		size := []int{15, 20, 30, 40}[k%4]
		c, err := Choose(context.Background(), jittered(uint64(k), 10, 6, 50, 0.1), size, nil)
		if err != nil || !c.Proved {
			b.Fatal(c, err)
		}
	}
}
