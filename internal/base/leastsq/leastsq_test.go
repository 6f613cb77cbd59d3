package leastsq

import (
	"errors"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func rowsOf(rows ...[]float64) Matrix {
	a := NewMatrix(len(rows), len(rows[0]))
	for i, r := range rows {
		for j, v := range r {
			a.Set(i, j, v)
		}
	}
	return a
}

// Small problems whose answer is seen on paper.
func TestByHand(t *testing.T) {
	for _, c := range []struct {
		name     string
		a        Matrix
		b, want  []float64
		residual float64
	}{
		{"one of each", rowsOf([]float64{1, 0}, []float64{0, 1}), []float64{2, 3}, []float64{2, 3}, 0},
		{"less than nothing is nothing", rowsOf([]float64{1, 0}, []float64{0, 1}), []float64{2, -3}, []float64{2, 0}, 3},
		{"the mean", rowsOf([]float64{1}, []float64{1}), []float64{1, 3}, []float64{2}, math.Sqrt2},
		{"nothing helps", rowsOf([]float64{1}, []float64{1}), []float64{-1, -1}, []float64{0}, math.Sqrt2},
		{"the same column twice is taken once", rowsOf([]float64{1, 1}, []float64{1, 1}), []float64{2, 2}, []float64{2, 0}, 0},
		// Without the bound the first is −1: it must leave again.
		{"one leaves", rowsOf([]float64{1, 1}, []float64{1, 2}), []float64{1, 3}, []float64{0, 1.4}, math.Sqrt(0.2)},
	} {
		r, err := NonNegative(c.a, c.b)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		if !near(r.X, c.want, 1e-12) || math.Abs(r.Residual-c.residual) > 1e-12 {
			t.Errorf("%s: %v with residual %v; by hand %v, %v", c.name, r.X, r.Residual, c.want, c.residual)
		}
	}
}

func near(a, b []float64, tolerance float64) bool {
	return slices.EqualFunc(a, b, func(x, y float64) bool { return math.Abs(x-y) <= tolerance*(1+math.Abs(y)) })
}

// A sum that would be 5 is held at 3, and the weights say who gives way.
func TestCeilingsHold(t *testing.T) {
	a := rowsOf([]float64{1, 0}, []float64{0, 1})
	for _, c := range []struct {
		name    string
		weights []float64
		most    float64
		want    []float64
	}{
		{"loose", []float64{1, 1}, 9, []float64{2, 3}},
		{"shared", []float64{1, 1}, 3, []float64{1, 2}},
		{"the heavier wish keeps more", []float64{2, 1}, 3, []float64{1.6, 1.4}},
		{"nothing allowed", []float64{1, 1}, 0, []float64{0, 0}},
	} {
		r, err := UnderCeilings(a, []float64{2, 3}, c.weights, []Ceiling{{Of: []float64{1, 1}, Most: c.most}})
		if err != nil || !near(r.X, c.want, 1e-9) {
			t.Errorf("%s: %v, %v; by hand %v", c.name, r.X, err, c.want)
		}
	}
}

// A ceiling of nothing over one leaves the other alone.
func TestACeilingOfNothing(t *testing.T) {
	a := rowsOf([]float64{1, 0.5}, []float64{0, 1})
	r, err := UnderCeilings(a, []float64{2, 3}, []float64{1, 1}, []Ceiling{{Of: []float64{0.1, 0}, Most: 0}})
	if want := []float64{0, 3.2}; err != nil || !near(r.X, want, 1e-12) {
		t.Errorf("%v, %v; by hand %v", r.X, err, want)
	}
}

func TestWhatIsNoProblem(t *testing.T) {
	one := rowsOf([]float64{1})
	for _, c := range []struct {
		name string
		call func() error
		want error
	}{
		{"too short a right side", func() error { _, err := NonNegative(one, nil); return err }, ErrShape},
		{"a matrix that lacks values", func() error { _, err := NonNegative(Matrix{Rows: 2, Columns: 1}, []float64{1, 1}); return err }, ErrShape},
		{"not a number", func() error { _, err := NonNegative(rowsOf([]float64{math.NaN()}), []float64{1}); return err }, ErrNotFinite},
		{"without end", func() error { _, err := NonNegative(one, []float64{math.Inf(1)}); return err }, ErrNotFinite},
		{"a weight too few", func() error { _, err := Weighted(one, []float64{1}, nil); return err }, ErrShape},
		{"a ceiling over other columns", func() error {
			_, err := UnderCeilings(one, []float64{1}, []float64{1}, []Ceiling{{Most: 1}})
			return err
		}, ErrShape},
		{"a ceiling under nothing", func() error {
			_, err := UnderCeilings(one, []float64{1}, []float64{1}, []Ceiling{{Of: []float64{1}, Most: -1}})
			return err
		}, ErrCeiling},
	} {
		if err := c.call(); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
	}
	if r, err := NonNegative(NewMatrix(0, 0), nil); err != nil || len(r.X) != 0 {
		t.Errorf("nothing at all: %v, %v", r, err)
	}
}

func drawProblem(t *rapid.T) (Matrix, []float64) {
	m, n := rapid.IntRange(1, 12).Draw(t, "rows"), rapid.IntRange(1, 10).Draw(t, "columns")
	a, b := NewMatrix(m, n), make([]float64, m)
	// Coarse numbers make ties and columns that are mixtures of others.
	value := rapid.OneOf(rapid.Float64Range(-2, 5), rapid.Map(rapid.IntRange(-2, 5), func(k int) float64 { return float64(k) }))
	for i := range a.Values {
		a.Values[i] = value.Draw(t, "a")
	}
	for i := range b {
		b[i] = value.Draw(t, "b")
	}
	return a, b
}

// The conditions of Karush, Kuhn and Tucker are what makes a point the best:
// nothing below nought, no column that would still help, and those in use
// balanced.
func TestConditionsOfTheBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawProblem(t)
		r, err := NonNegative(a, b)
		if err != nil {
			t.Fatal(err)
		}
		left := slices.Clone(b)
		for j, x := range r.X {
			if x < 0 {
				t.Fatalf("x%d = %v", j, x)
			}
			for i, v := range a.column(j) {
				left[i] -= v * x
			}
		}
		if math.Abs(length(left)-r.Residual) > 1e-9*(1+length(b)) {
			t.Fatalf("the residual is %v, told %v", length(left), r.Residual)
		}
		for j, x := range r.X {
			pull, scale := dot(a.column(j), left), 1e-9*(1+length(a.column(j)))*(1+length(b))*(1+length(r.X))
			if pull > scale || (x > 0 && pull < -scale) {
				t.Fatalf("column %d, x %v, is pulled by %v", j, x, pull)
			}
		}
	})
}

// Ceilings are kept to the last digit, whatever is asked for.
func TestCeilingsAreNeverPassed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawProblem(t)
		w := make([]float64, a.Rows)
		for i := range w {
			w[i] = rapid.Float64Range(0, 3).Draw(t, "w")
		}
		c := Ceiling{Of: make([]float64, a.Columns), Most: rapid.Float64Range(0, 4).Draw(t, "most")}
		for j := range c.Of {
			c.Of[j] = rapid.Float64Range(0, 3).Draw(t, "of")
		}
		r, err := UnderCeilings(a, b, w, []Ceiling{c})
		if err != nil {
			t.Fatal(err)
		}
		if used := dot(c.Of, r.X); used > c.Most*(1+1e-14) {
			t.Fatalf("%v of at most %v", used, c.Most)
		}
	})
}
