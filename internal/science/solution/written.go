package solution

import (
	"fmt"
	"math"
	"strings"
)

// SaltWritten is a salt by its name or its formula, with as much crystal water
// as is written: MgSO4.7H2O, MgSO4.H2O and MgSO4 are three salts of one kind.
// What is no formula, or a salt that is not known here, is a *Fault.
func SaltWritten(text string) (Fertiliser, error) {
	if f, ok := SaltNamed(text); ok {
		return f, nil
	}
	formula, err := ParseFormula(text)
	if err != nil {
		return Fertiliser{}, &Fault{"salt-unknown", "salt", fmt.Sprintf("%q is no salt known here: %v", text, err), "known are " + strings.Join(SaltNames(), ", ") + "; or write its formula, as MgSO4.7H2O"}
	}
	if formula.Charge != 0 {
		return Fertiliser{}, &Fault{"salt-charge", "salt", fmt.Sprintf("%q is an ion, and ions are not sold by themselves", text), "write the whole salt, as KNO3"}
	}
	dry := withoutWater(formula)
	for _, r := range saltRows {
		known := formulaOf(Facts.Get(r.formula))
		if !sameAtoms(dry, withoutWater(known)) {
			continue
		}
		f := r.of(formula)
		f.Name = strings.TrimSpace(text)
		return f, nil
	}
	return Fertiliser{}, &Fault{"salt-unknown", "salt", fmt.Sprintf("%q is a formula, but no salt that feeds plants here", text), "known are " + strings.Join(SaltNames(), ", ") + "; or copy the label of the bag"}
}

// withoutWater are the atoms of a formula less the water written apart.
func withoutWater(f Formula) map[string]float64 {
	water := 0.0
	for _, n := range hydrateWater(plain(f.Text)) {
		water += n
	}
	out := map[string]float64{}
	for _, p := range f.Parts {
		out[p.Element] = p.Count
	}
	out["H"] -= 2 * water
	out["O"] -= water
	return out
}

func sameAtoms(a, b map[string]float64) bool {
	for e := range atoms {
		if math.Abs(a[e]-b[e]) > 1e-9 {
			return false
		}
	}
	return true
}
