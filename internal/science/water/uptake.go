package water

import "rootbell/internal/base/facts"

// Element is what plants take of one element with each litre they drink.
type Element struct {
	Symbol string
	MmolL  float64
	gMol   float64
}

// MgL is that in mg for each litre.
func (e Element) MgL() float64 { return e.MmolL * e.gMol }

// elements with their atomic masses in g/mol: CIAAW, abridged standard atomic
// weights 2021.
var elements = []struct {
	symbol string
	id     facts.ID
	gMol   float64
}{
	{"N", factUptakeNitrogen, 14.007},
	{"P", factUptakePhosphorus, 30.974},
	{"K", factUptakePotassium, 39.098},
	{"Ca", factUptakeCalcium, 40.078},
	{"Mg", factUptakeMagnesium, 24.305},
	{"Fe", factUptakeIron, 55.845},
	{"Mn", factUptakeManganese, 54.938},
	{"Zn", factUptakeZinc, 65.38},
	{"Cu", factUptakeCopper, 63.546},
}

// Uptake is what lettuce takes with each litre it drinks, nitrogen first. The
// water drunk is what leaves breathe out; what stays in the plant is a
// twentieth of it and left aside.
func Uptake() []Element {
	out := make([]Element, len(elements))
	for i, e := range elements {
		out[i] = Element{e.symbol, value(e.id), e.gMol}
	}
	return out
}

// UptakeEC is the strength, in mS/cm at 25 °C, of the salts that plants take
// with a litre.
func UptakeEC() float64 { return value(factUptakeEc) }

// Solution is a tub's water and its EC in mS/cm at 25 °C. Salts are counted as
// EC times litres, which holds within some percent between 0.5 and 2.5.
type Solution struct{ Litres, ECmS float64 }

// Drink is the solution after plants drank some litres with salts of a
// strength, and some more went off as vapour. The EC rises where they take
// less than they leave, and falls where they take more; it never falls under
// 0, and the last drop keeps its EC.
func (s Solution) Drink(litres, uptakeEC, vapourL float64) Solution {
	salts := max(0, s.ECmS*s.Litres-uptakeEC*litres)
	left := s.Litres - litres - vapourL
	if !(left > 0) {
		return Solution{0, s.ECmS}
	}
	return Solution{left, salts / left}
}

// TopUp is the solution after some litres of an EC are poured in.
func (s Solution) TopUp(litres, ecMS float64) Solution {
	if !(s.Litres+litres > 0) {
		return s
	}
	return Solution{s.Litres + litres, (s.ECmS*s.Litres + ecMS*litres) / (s.Litres + litres)}
}
