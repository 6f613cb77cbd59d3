package ode

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// hunt is two species that feed on one another's loss; a Pair and a System.
type hunt struct{ birth, catch, gain, death float64 }

func (h hunt) Rates(a, b float64) (float64, float64) {
	return a * (h.birth - h.catch*b), b * (h.gain*a - h.death)
}

func (h hunt) system(_ float64, y, rates []float64) { rates[0], rates[1] = h.Rates(y[0], y[1]) }

func drawHunt(t *rapid.T) hunt {
	draw := func(name string) float64 { return rapid.Float64Range(0.1, 2).Draw(t, name) }
	return hunt{draw("birth"), draw("catch"), draw("gain"), draw("death")}
}

// Half the step leaves a thirty-second of the error: the method is of order
// five. The steps are held by a tolerance that takes all.
func TestOrderIsFive(t *testing.T) {
	off := func(steps int) float64 {
		f := func(_ float64, y, r []float64) { r[0] = y[0] * (1 - y[0]) }
		s := New(1, Tolerance{Relative: 1e9, Absolute: 1e9, First: 2 / float64(steps)})
		y := []float64{0.1}
		for i := range steps {
			if _, err := s.Solve(f, 2*float64(i)/float64(steps), 2*float64(i+1)/float64(steps), y); err != nil {
				t.Fatal(err)
			}
		}
		return math.Abs(y[0] - 1/(1+9*math.Exp(-2)))
	}
	for _, steps := range []int{4, 8, 16} {
		if order := math.Log2(off(steps) / off(2*steps)); order < 4.7 || order > 6 {
			t.Errorf("%d to %d steps: order %.2f", steps, 2*steps, order)
		}
	}
}

// Written out for two or for any number, the steps are the same.
func TestPairIsTheSolverForTwo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := drawHunt(t)
		a, b := rapid.Float64Range(0.1, 3).Draw(t, "a"), rapid.Float64Range(0.1, 3).Draw(t, "b")
		span := rapid.Float64Range(0.01, 20).Draw(t, "span")
		tolerance := Tolerance{Relative: 1e-8, Absolute: 1e-10, First: span / 7}
		y := []float64{a, b}
		effort, err := New(2, tolerance).Solve(h.system, 0, span, y)
		if err != nil {
			t.Fatal(err)
		}
		endA, endB, pairEffort, err := SolvePair(h, span, a, b, tolerance)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(endA-y[0]) > 1e-12*(1+y[0]) || math.Abs(endB-y[1]) > 1e-12*(1+y[1]) || effort != pairEffort {
			t.Fatalf("%v %v with %+v, want %v with %+v", endA, endB, pairEffort, y, effort)
		}
	})
}

// There and back again, and in two parts as in one.
func TestWayAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := drawHunt(t)
		start := []float64{rapid.Float64Range(0.5, 2).Draw(t, "a"), rapid.Float64Range(0.5, 2).Draw(t, "b")}
		end, half := rapid.Float64Range(0.1, 5).Draw(t, "end"), rapid.Float64Range(0.1, 0.9).Draw(t, "half")
		// A species may shrink to a billionth and come back: it is followed by its
		// own size, however small.
		s := New(2, Tolerance{Relative: 1e-11, Absolute: 1e-25})
		whole := append([]float64(nil), start...)
		parts := append([]float64(nil), start...)
		for _, way := range []struct {
			y        []float64
			from, to float64
		}{{whole, 0, end}, {parts, 0, half * end}, {parts, half * end, end}} {
			if _, err := s.Solve(h.system, way.from, way.to, way.y); err != nil {
				t.Fatal(err)
			}
		}
		for i := range whole {
			if math.Abs(whole[i]/parts[i]-1) > 1e-7 {
				t.Fatalf("whole %v, parts %v", whole, parts)
			}
		}
		if _, err := s.Solve(h.system, end, 0, whole); err != nil {
			t.Fatal(err)
		}
		for i := range whole {
			if math.Abs(whole[i]/start[i]-1) > 1e-6 {
				t.Fatalf("back at %v, began at %v", whole, start)
			}
		}
	})
}

// A finer tolerance is kept: the error falls with it.
func TestToleranceIsKept(t *testing.T) {
	h := hunt{1, 0.5, 0.4, 0.8}
	exact := []float64{2, 1}
	if _, err := New(2, Tolerance{Relative: 1e-13, Absolute: 1e-14}).Solve(h.system, 0, 12, exact); err != nil {
		t.Fatal(err)
	}
	for _, relative := range []float64{1e-4, 1e-6, 1e-8, 1e-10} {
		a, _, effort, err := SolvePair(h, 12, 2, 1, Tolerance{Relative: relative, Absolute: relative / 10})
		if err != nil {
			t.Fatal(err)
		}
		// Errors of steps add up along the way; a hundredfold is plenty for one cycle.
		if off := math.Abs(a/exact[0] - 1); off > 100*relative {
			t.Errorf("allowed %g, off by %g in %d steps", relative, off, effort.Steps)
		}
	}
}

type rates func(a, b float64) (float64, float64)

func (r rates) Rates(a, b float64) (float64, float64) { return r(a, b) }

// What cannot be followed is refused, and what needs no way takes none.
func TestRefusals(t *testing.T) {
	nan := func(_ float64, _, r []float64) { r[0] = math.NaN() }
	blowUp := func(_ float64, y, r []float64) { r[0] = y[0] * y[0] }
	for _, c := range []struct {
		name string
		f    System
		want error
	}{{"no number", nan, ErrNotFinite}, {"y' = y² meets its pole at 1", blowUp, ErrSteps}} {
		if _, err := New(1, Tolerance{Relative: 1e-9, Absolute: 1e-9}).Solve(c.f, 0, 2, []float64{1}); !errors.Is(err, c.want) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	tolerance := Tolerance{Relative: 1e-9, Absolute: 1e-9}
	if _, _, _, err := SolvePair(rates(func(_, _ float64) (float64, float64) { return math.Inf(1), 0 }), 1, 1, 1, tolerance); !errors.Is(err, ErrNotFinite) {
		t.Errorf("no number: %v", err)
	}
	if _, _, _, err := SolvePair(rates(func(a, _ float64) (float64, float64) { return a * a, 0 }), 2, 1, 1, tolerance); !errors.Is(err, ErrSteps) {
		t.Errorf("a pole: %v", err)
	}
	for _, span := range []float64{0, -1, math.NaN()} {
		if a, b, effort, err := SolvePair(hunt{1, 1, 1, 1}, span, 2, 3, tolerance); a != 2 || b != 3 || effort != (Effort{}) || err != nil {
			t.Errorf("span %v: %v %v %v %v", span, a, b, effort, err)
		}
	}
	y := []float64{7}
	if effort, err := New(1, tolerance).Solve(nan, 3, 3, y); err != nil || effort != (Effort{}) || y[0] != 7 {
		t.Errorf("no way: %v %v", effort, err)
	}
}

// The root that steers the step is good to a thousandth anywhere.
func TestFifthRoot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := math.Exp(rapid.Float64Range(-700, 700).Draw(t, "ln"))
		if got := fifthRoot(x); math.Abs(got/math.Pow(x, 0.2)-1) > 5e-3 {
			t.Fatalf("%v: %v, want %v", x, got, math.Pow(x, 0.2))
		}
	})
}

func TestSolvingAllocatesNothing(t *testing.T) {
	h := hunt{1, 0.5, 0.4, 0.8}
	s, y, f := New(2, Tolerance{Relative: 1e-6, Absolute: 1e-9}), make([]float64, 2), System(h.system)
	if n := testing.AllocsPerRun(20, func() {
		y[0], y[1] = 2, 1
		if _, err := s.Solve(f, 0, 10, y); err != nil {
			t.Error(err)
		}
		if _, _, _, err := SolvePair(h, 10, 2, 1, Tolerance{Relative: 1e-6, Absolute: 1e-9}); err != nil {
			t.Error(err)
		}
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func BenchmarkSolver(b *testing.B) {
	h := hunt{1, 0.5, 0.4, 0.8}
	s, y := New(2, Tolerance{Relative: 1e-6, Absolute: 1e-9}), make([]float64, 2)
	b.ReportAllocs()
	for b.Loop() {
		y[0], y[1] = 2, 1
		if _, err := s.Solve(h.system, 0, 10, y); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPair(b *testing.B) {
	h := hunt{1, 0.5, 0.4, 0.8}
	b.ReportAllocs()
	for b.Loop() {
		if _, _, _, err := SolvePair(h, 10, 2, 1, Tolerance{Relative: 1e-6, Absolute: 1e-9}); err != nil {
			b.Fatal(err)
		}
	}
}
