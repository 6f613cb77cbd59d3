package ode

import (
	"math"
	"testing"
)

// Where the values below come from.
const (
	hairer    = "Hairer, Nørsett & Wanner, Solving Ordinary Differential Equations I, section II.0: from memory, not opened"
	byHand    = "closed form"
	condition = "order conditions of a Runge-Kutta method, Hairer, Nørsett & Wanner I, section II.1"
)

// arenstorf is the restricted problem of three bodies with the moon's mass.
func arenstorf(_ float64, y, rates []float64) {
	const mu, nu = 0.012277471, 1 - 0.012277471
	d1 := math.Pow((y[0]+mu)*(y[0]+mu)+y[1]*y[1], 1.5)
	d2 := math.Pow((y[0]-nu)*(y[0]-nu)+y[1]*y[1], 1.5)
	rates[0], rates[1] = y[2], y[3]
	rates[2] = y[0] + 2*y[3] - nu*(y[0]+mu)/d1 - mu*(y[0]-nu)/d2
	rates[3] = y[1] - 2*y[2] - nu*y[1]/d1 - mu*y[1]/d2
}

// Problems whose end is known.
func TestPublishedEnds(t *testing.T) {
	for _, row := range []struct {
		name     string
		f        System
		from, to float64
		start    []float64
		end      []float64
		within   float64
		source   string
	}{
		{"Arenstorf's orbit closes", arenstorf, 0, 17.0652165601579625588917206249, []float64{0.994, 0, 0, -2.00158510637908252240537862224}, []float64{0.994, 0, 0, -2.00158510637908252240537862224}, 1e-5, hairer},
		{"decay", func(_ float64, y, r []float64) { r[0] = -y[0] }, 0, 5, []float64{1}, []float64{math.Exp(-5)}, 1e-10, byHand},
		{"decay, backwards in time", func(_ float64, y, r []float64) { r[0] = -y[0] }, 5, 0, []float64{math.Exp(-5)}, []float64{1}, 1e-9, byHand},
		{"a pendulum of small swing", func(_ float64, y, r []float64) { r[0], r[1] = y[1], -y[0] }, 0, 10 * math.Pi, []float64{1, 0}, []float64{1, 0}, 1e-8, byHand},
		{"logistic growth", func(_ float64, y, r []float64) { r[0] = 0.3 * y[0] * (1 - y[0]/20) }, 0, 40, []float64{0.1}, []float64{20 / (1 + 199*math.Exp(-12))}, 1e-8, byHand},
		{"rates that depend on the time alone", func(x float64, _, r []float64) { r[0] = math.Cos(x) }, 0, 2, []float64{0}, []float64{math.Sin(2)}, 1e-10, byHand},
	} {
		y := append([]float64(nil), row.start...)
		s := New(len(y), Tolerance{Relative: 1e-11, Absolute: 1e-12})
		effort, err := s.Solve(row.f, row.from, row.to, y)
		if err != nil {
			t.Errorf("%s: %v", row.name, err)
		}
		worst := 0.0
		for i := range y {
			worst = max(worst, math.Abs(y[i]-row.end[i]))
		}
		t.Logf("%s: off by %.1e with %d steps", row.name, worst, effort.Steps)
		if !(worst <= row.within) {
			t.Errorf("%s: ends at %v, want %v (%s)", row.name, y, row.end, row.source)
		}
	}
}

// The tableau meets the conditions of its order: each stage's row sums to its
// time, and the weights integrate the powers up to the fourth, those of the
// embedded pair up to the third.
func TestPublishedOrderConditions(t *testing.T) {
	const within = 1e-14
	a := [7][6]float64{
		{},
		{a21},
		{a31, a32},
		{a41, a42, a43},
		{a51, a52, a53, a54},
		{a61, a62, a63, a64, a65},
		{b1, 0, b3, b4, b5, b6},
	}
	c := [7]float64{0, c2, c3, c4, c5, 1, 1}
	b := [7]float64{b1, 0, b3, b4, b5, b6, 0}
	e := [7]float64{e1, 0, e3, e4, e5, e6, e7}
	for i, row := range a {
		sum := 0.0
		for _, x := range row {
			sum += x
		}
		if math.Abs(sum-c[i]) > within {
			t.Errorf("row %d sums to %v, want %v (%s)", i+1, sum, c[i], condition)
		}
	}
	for power := range 5 {
		sum, apart := 0.0, 0.0
		for i := range b {
			sum += b[i] * math.Pow(c[i], float64(power))
			apart += e[i] * math.Pow(c[i], float64(power))
		}
		if want := 1 / float64(power+1); math.Abs(sum-want) > within {
			t.Errorf("Σ b c^%d = %v, want %v (%s)", power, sum, want, condition)
		}
		if fourth := math.Abs(apart) < within; fourth != (power < 4) {
			t.Errorf("the pair differs at power %d by %v (%s)", power, apart, condition)
		}
	}
}

// Σ b_i a_ij c_j and its like, which couple the stages.
func TestPublishedCoupledConditions(t *testing.T) {
	a := [7][7]float64{
		{}, {a21}, {a31, a32}, {a41, a42, a43}, {a51, a52, a53, a54}, {a61, a62, a63, a64, a65}, {b1, 0, b3, b4, b5, b6},
	}
	c := [7]float64{0, c2, c3, c4, c5, 1, 1}
	b := [7]float64{b1, 0, b3, b4, b5, b6}
	for _, row := range []struct {
		name string
		term func(i, j int) float64
		want float64
	}{
		{"Σ b a c", func(_, j int) float64 { return c[j] }, 1. / 6},
		{"Σ b c a c", func(i, j int) float64 { return c[i] * c[j] }, 1. / 8},
		{"Σ b a c²", func(_, j int) float64 { return c[j] * c[j] }, 1. / 12},
		{"Σ b c² a c", func(i, j int) float64 { return c[i] * c[i] * c[j] }, 1. / 10},
		{"Σ b c a c²", func(i, j int) float64 { return c[i] * c[j] * c[j] }, 1. / 15},
		{"Σ b a c³", func(_, j int) float64 { return c[j] * c[j] * c[j] }, 1. / 20},
	} {
		sum := 0.0
		for i := range a {
			for j := range a[i] {
				sum += b[i] * a[i][j] * row.term(i, j)
			}
		}
		if math.Abs(sum-row.want) > 1e-14 {
			t.Errorf("%s = %v, want %v (%s)", row.name, sum, row.want, condition)
		}
	}
}
