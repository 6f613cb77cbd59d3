package forecast

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

const linear = "numpy.quantile of numpy 1.24.2, method 'linear'"

func TestPublishedQuantiles(t *testing.T) {
	values := []float64{1.5, 2, 2, 7, 11, 30}
	for _, c := range []struct {
		share, want float64
		source      string
	}{
		{0.05, 1.625, linear}, {0.25, 2.0, linear}, {0.5, 4.5, linear}, {0.75, 10.0, linear}, {0.95, 25.25, linear},
	} {
		if got := quantile(values, c.share); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%v: %v, want %v (%s)", c.share, got, c.want, c.source)
		}
	}
}

// Half of what a band is of lies in its half, and nine in ten in it.
func TestBandHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		values := rapid.SliceOfNDistinct(rapid.Float64Range(-1e3, 1e3), 101, 400, rapid.ID).Draw(t, "values")
		slices.Sort(values)
		b, wide, half := bandOf(values), 0, 0
		for _, v := range values {
			if b.Wide(v) {
				wide++
			}
			if b.Half(v) {
				half++
			}
		}
		n := float64(len(values))
		if math.Abs(float64(wide)-0.9*n) > 2 || math.Abs(float64(half)-0.5*n) > 2 {
			t.Fatalf("%d and %d of %v", wide, half, n)
		}
	})
}

// What never comes is later than any hour, not a hole in the sums.
func TestNeverIsLate(t *testing.T) {
	never := math.Inf(1)
	b := bandOf([]float64{1, 2, never, never, never})
	if b.P25 != 2 || !math.IsInf(b.P50, 1) || !math.IsInf(b.P95, 1) || math.IsNaN(b.P5) {
		t.Errorf("%+v", b)
	}
	if !math.IsNaN(quantile(nil, 0.5)) {
		t.Error("none has a middle")
	}
}
