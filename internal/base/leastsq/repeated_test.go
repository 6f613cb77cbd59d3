package leastsq

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Whatever matrix, right sides and weights: what is prepared once finds what the
// careful search finds each time. The matrix has three decimals, as contents do:
// of columns that only rounding tells apart either search may miss the best.
func TestRepeatedFindsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, _ := drawProblem(t)
		for i, v := range a.Values {
			a.Values[i] = math.Round(v*1000) / 1000
		}
		r, err := NewRepeated(a)
		if err != nil {
			t.Fatal(err)
		}
		x := make([]float64, a.Columns)
		for range 3 {
			b, w := make([]float64, a.Rows), make([]float64, a.Rows)
			for i := range b {
				b[i] = rapid.Float64Range(-3, 8).Draw(t, "b")
				w[i] = rapid.Float64Range(0.1, 3).Draw(t, "w")
			}
			if err := r.Fit(x, b, w); err != nil {
				t.Fatal(err)
			}
			want, err := Weighted(a, b, w)
			if err != nil {
				t.Fatal(err)
			}
			for j, v := range x {
				if v < 0 {
					t.Fatalf("x%d = %v", j, v)
				}
			}
			if got := Misfit(a, b, w, x); math.Abs(got-want.Residual) > 1e-9*(1+length(b)) {
				t.Fatalf("residual %v, carefully %v; x %v and %v", got, want.Residual, x, want.X)
			}
		}
	})
}
