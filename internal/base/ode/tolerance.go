package ode

import (
	"errors"
	"math"
)

// Tolerance is how far one step may be off: each state within Absolute plus
// Relative times its size. First is the length of the first step tried; zero
// lets the solver choose.
type Tolerance struct {
	Relative, Absolute float64
	First              float64
}

// Effort is how much was counted on the way: it is the same on any machine.
type Effort struct {
	Steps    int // taken
	Rejected int // tried and found too long
	Rates    int // evaluations of the right-hand side
}

// Why a solution is not given.
var (
	// ErrSteps: the equations are too stiff for this method, or the tolerance
	// is finer than the arithmetic.
	ErrSteps = errors.New("ode: more than 100,000 steps; the equations are stiff or the tolerance is too fine")
	// ErrNotFinite: the rates are no numbers where the way begins.
	ErrNotFinite = errors.New("ode: the rates are not finite")
)

const mostSteps = 100_000

// The step control of Hairer, Nørsett & Wanner, section II.4: aim a tenth below
// what the error would allow, and change the step neither suddenly nor never.
const (
	safety         = 0.9
	least, largest = 0.2, 5.0
)

// next is the factor to the length of a step whose error is err times what is
// allowed. An error that is no number, from rates beyond their range, asks for
// a much shorter step.
func next(err float64) float64 {
	if err == 0 {
		return largest
	}
	f := safety / fifthRoot(err)
	if !(f > least) { // not a number too
		return least
	}
	return min(f, largest)
}

// fifthRoot is good to a few parts in a thousand, which is far finer than any
// step control, and costs a third of math.Pow: the exponent is divided in the
// bits of the number and one step of Newton's method mends it.
func fifthRoot(x float64) float64 {
	const one = 0x3ff0000000000000
	if !(x > 1e-300) || x > 1e300 {
		return math.Pow(x, 0.2)
	}
	y := math.Float64frombits(one/5*4 + math.Float64bits(x)/5)
	y2 := y * y
	y = (4*y + x/(y2*y2)) / 5
	y2 = y * y
	return (4*y + x/(y2*y2)) / 5
}
