package ode

import "math"

// Pair is a system of two states whose rates do not depend on the time, such as
// a plant under a steady lamp.
type Pair interface {
	Rates(a, b float64) (da, db float64)
}

// SolvePair carries two states over a span of time that is not negative. It is
// Solver.Solve written out for two: the same steps, without slices. The first
// step tried is the tolerance's, or the whole span, for which a system of two
// slow states is often smooth enough.
func SolvePair[P Pair](p P, span, a, b float64, tolerance Tolerance) (endA, endB float64, effort Effort, err error) {
	if !(span > 0) {
		return a, b, effort, nil
	}
	da, db := p.Rates(a, b)
	effort.Rates = 1
	if !(math.Abs(da)+math.Abs(db) <= math.MaxFloat64) {
		return a, b, effort, ErrNotFinite
	}
	h := span
	if tolerance.First > 0 {
		h = min(h, tolerance.First)
	}
	for t := 0.0; t < span; {
		if effort.Steps+effort.Rejected == mostSteps || t+h == t {
			return a, b, effort, ErrSteps
		}
		end := t + h
		if (span-t)/h < 1.0001 { // no sliver is left over
			h, end = span-t, span
		}
		s := stepPair(p, h, a, b, da, db)
		effort.Rates += 6
		off := s.off(a, b, tolerance)
		if !(off <= 1) {
			effort.Rejected++
			h *= min(next(off), 1)
			continue
		}
		effort.Steps++
		a, b, da, db = s.a, s.b, s.da, s.db
		if t = end; t < span {
			h *= next(off)
		}
	}
	return a, b, effort, nil
}

// stepped is where one step ends: states, rates there, and the error of each.
type stepped struct{ a, b, da, db, ea, eb float64 }

// off is the error beside the one allowed.
func (s *stepped) off(a, b float64, tolerance Tolerance) float64 {
	ra := s.ea / (tolerance.Absolute + tolerance.Relative*max(math.Abs(a), math.Abs(s.a)))
	rb := s.eb / (tolerance.Absolute + tolerance.Relative*max(math.Abs(b), math.Abs(s.b)))
	return math.Sqrt((ra*ra + rb*rb) / 2)
}

func stepPair[P Pair](p P, h, a, b, k1, l1 float64) stepped {
	k2, l2 := p.Rates(a+h*(a21*k1), b+h*(a21*l1))
	k3, l3 := p.Rates(a+h*(a31*k1+a32*k2), b+h*(a31*l1+a32*l2))
	k4, l4 := p.Rates(a+h*(a41*k1+a42*k2+a43*k3), b+h*(a41*l1+a42*l2+a43*l3))
	k5, l5 := p.Rates(a+h*(a51*k1+a52*k2+a53*k3+a54*k4), b+h*(a51*l1+a52*l2+a53*l3+a54*l4))
	k6, l6 := p.Rates(a+h*(a61*k1+a62*k2+a63*k3+a64*k4+a65*k5), b+h*(a61*l1+a62*l2+a63*l3+a64*l4+a65*l5))
	s := stepped{a: a + h*(b1*k1+b3*k3+b4*k4+b5*k5+b6*k6), b: b + h*(b1*l1+b3*l3+b4*l4+b5*l5+b6*l6)}
	s.da, s.db = p.Rates(s.a, s.b)
	s.ea = h * (e1*k1 + e3*k3 + e4*k4 + e5*k5 + e6*k6 + e7*s.da)
	s.eb = h * (e1*l1 + e3*l3 + e4*l4 + e5*l5 + e6*l6 + e7*s.db)
	return s
}
