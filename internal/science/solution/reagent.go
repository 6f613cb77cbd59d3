package solution

import (
	"fmt"
	"strings"
)

// reagentRow is an acid or a base that is sold to gardeners.
type reagentRow struct {
	name, formula string
	ions          Ions // of one formula unit
	base          bool
	burnsPercent  func() float64 // from here on it burns skin; nil where it does not
	oxidises      bool
}

var reagentRows = []reagentRow{
	{"sulfuric", "H2SO4", Ions{SO4: 1}, false, func() float64 { return value(factAcidBurnsSulfuric) }, false},
	{"phosphoric", "H3PO4", Ions{PO4: 1}, false, func() float64 { return value(factAcidBurnsPhosphoric) }, false},
	{"nitric", "HNO3", Ions{NO3: 1}, false, func() float64 { return value(factAcidBurnsNitric) }, true},
	{"citric", "C6H8O7", Ions{Citrate: 1}, false, nil, false},
	{"citric monohydrate", "C6H8O7.H2O", Ions{Citrate: 1}, false, nil, false},
	{"potassium hydroxide", "KOH", Ions{K: 1}, true, func() float64 { return value(factAcidBurnsHydroxide) }, false},
	{"sodium hydroxide", "NaOH", Ions{Na: 1}, true, func() float64 { return value(factAcidBurnsHydroxide) }, false},
	{"potassium bicarbonate", "KHCO3", Ions{K: 1, CO3: 1}, true, nil, false},
}

// ReagentNames are the acids and bases known, acids first.
func ReagentNames() []string {
	out := make([]string, len(reagentRows))
	for i, r := range reagentRows {
		out[i] = r.name
	}
	return out
}

// Reagent is an acid or a base as its bottle or bag stands there.
type Reagent struct {
	Name       string
	ByMass     float64 // share of the pure substance in the mass, 0 to 1
	DensityKgL float64 // 0 for a solid
	row        reagentRow
	molarMass  float64
	example    bool // strength and density are the facts' and nobody's bottle
}

// ExampleAcid is the phosphoric acid that worked examples are made with where no
// acid is told of. It is no advice to pour anything.
func ExampleAcid() Reagent {
	r, err := NewReagent("phosphoric", value(factAcidExampleMass), value(factAcidExampleDensity), false)
	if err != nil {
		panic("solution: " + err.Error()) // both are part of the program
	}
	r.example = true
	return r
}

// NewReagent is an acid or a base by its name, its percent by mass and the
// density of the liquid in kg/L, 0 for a solid. Neither is ever assumed: what
// is missing or cannot be is a *Fault.
func NewReagent(name string, percentByMass, densityKgL float64, solid bool) (Reagent, error) {
	r := Reagent{Name: name, ByMass: percentByMass / 100, DensityKgL: densityKgL}
	found := false
	for _, row := range reagentRows {
		if row.name == name {
			r.row, found = row, true
		}
	}
	if !found {
		return r, &Fault{"acid-name", "acid", fmt.Sprintf("%q is no acid or base known here", name), "known are " + strings.Join(ReagentNames(), ", ")}
	}
	f, err := ParseFormula(r.row.formula)
	if err != nil {
		return r, err
	}
	r.molarMass = f.MolarMass()
	if !(percentByMass > 0 && percentByMass <= 100) {
		return r, &Fault{"acid-strength", "by_mass", name + " needs its strength in percent by mass", "copy it from the label or the safety data sheet"}
	}
	if solid {
		r.DensityKgL = 0
		return r, nil
	}
	if !(densityKgL >= lightestKgL && densityKgL <= densestKgL) {
		return r, &Fault{"acid-density", "density", name + " needs its density", "copy it from the label or the safety data sheet, or have an adult weigh 100 mL"}
	}
	return r, nil
}

// Base tells whether it raises the pH.
func (r Reagent) Base() bool { return r.row.base }

// Citric tells whether it is citric acid, which microbes eat within days.
func (r Reagent) Citric() bool { return r.row.ions[Citrate] > 0 }

// MolarMass of the pure substance in g/mol.
func (r Reagent) MolarMass() float64 { return r.molarMass }

// Grams of the bottle's content that hold so many mol.
func (r Reagent) Grams(mol float64) float64 { return mol * r.molarMass / r.ByMass }

// Millilitres of the bottle's content that hold so many mol; 0 for a solid.
func (r Reagent) Millilitres(mol float64) float64 {
	if r.DensityKgL == 0 {
		return 0
	}
	return r.Grams(mol) / r.DensityKgL
}

// Mol is what so many millilitres of it hold; for a solid, so many grams.
func (r Reagent) Mol(amount float64) float64 {
	if r.DensityKgL > 0 {
		amount *= r.DensityKgL
	}
	return amount * r.ByMass / r.molarMass
}

// Adds is what so many mol/L of it bring to the water.
func (r Reagent) Adds(molL float64) (Ions, Content) {
	w := r.row.ions.Times(molL)
	var c Content
	c[NitrateN] = w[NO3] * weight("N") * 1000
	c[Nitrogen] = c[NitrateN]
	c[Phosphorus] = w[PO4] * weight("P") * 1000
	c[Sulfur] = w[SO4] * weight("S") * 1000
	c[Potassium] = w[K] * weight("K") * 1000
	c[Sodium] = w[Na] * weight("Na") * 1000
	return w, c
}

// Amount is what to measure for so many mol: millilitres of a liquid, grams of
// a solid.
func (r Reagent) Amount(mol float64) float64 {
	if r.DensityKgL == 0 {
		return r.Grams(mol)
	}
	return r.Millilitres(mol)
}
