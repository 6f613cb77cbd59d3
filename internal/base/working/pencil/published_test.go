package pencil

import (
	"math"
	"testing"
)

func TestPublishedArithmetic(t *testing.T) {
	const school = "arithmetic, no source"
	for _, c := range []struct {
		sum    string
		want   float64
		source string
	}{
		{"1+2*3", 7, school},
		{"(1+2)*3", 9, school},
		{"7-2-1", 4, school},
		{"64/8/2", 4, school},
		{"2^3^2", 512, "right to left, as in Fortran, from memory"},
		{"-2^2", -4, "a sign binds weaker than a power: as in Fortran, from memory"},
		{"2^-2", 0.25, school},
		{"2^-3^2", 1.0 / 512, school},
		{"-3*-4", 12, school},
		{"5--3", 8, school},
		{"2*-3^2", -18, school},
		{"floor(-2.5)", -3, "floor and ceiling as Iverson defined them (A Programming Language, 1962), from memory"},
		{"ceil(-2.5)", -2, "as above"},
		{"floor(0.6/0.1)", 6, "decimal arithmetic; a float64 quotient is 5.999…"},
		{"0.1+0.2-0.3", 0, "decimal arithmetic; float64 leaves 5.6e-17"},
		{"min(3, 1, 2)", 1, school},
		{"max(3, 1, 2)", 3, school},
		{"max(7)", 7, school},
		{"sqrt(0.09)/0.1", 3, school},
		{"sqrt(2)", math.Sqrt2, "OEIS A002193"},
		{"exp(1)", math.E, "OEIS A001113"},
		{"ln(2)", math.Ln2, "OEIS A002162"},
		{"pi", math.Pi, "OEIS A000796"},
		{"355/113-pi", 2.667641890624e-7, "Zu Chongzhi's ratio, from memory: 355/113 is 2.6676e-7 too large"},
		{"1^3+12^3-9^3-10^3", 0, "taxicab number 1729, OEIS A001235"},
		{"3^3+4^3+5^3-6^3", 0, "a cube from three, known to Euler, from memory"},
		{"2^32-4294967296", 0, "OEIS A000079"},
		{"4/6*(2000+4*1344+816)", 16384.0 / 3, "civinnovate.com/?p=18730, exam solution, question 3: 5461.33 m³"},
	} {
		got, err := Eval(c.sum)
		if err != nil || math.Abs(got-c.want) > 1e-15*max(1, math.Abs(c.want)) {
			t.Errorf("%s = %v, %v; want %v (%s)", c.sum, got, err, c.want, c.source)
		}
	}
}
