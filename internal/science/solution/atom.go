package solution

import "rootbell/internal/base/facts"

// atoms are the elements that a formula may name.
var atoms = map[string]facts.ID{
	"H": factAtomH, "Li": factAtomLi, "B": factAtomB, "C": factAtomC, "N": factAtomN, "O": factAtomO,
	"F": factAtomF, "Na": factAtomNa, "Mg": factAtomMg, "Al": factAtomAl, "Si": factAtomSi, "P": factAtomP,
	"S": factAtomS, "Cl": factAtomCl, "K": factAtomK, "Ca": factAtomCa, "Mn": factAtomMn, "Fe": factAtomFe,
	"Co": factAtomCo, "Ni": factAtomNi, "Cu": factAtomCu, "Zn": factAtomZn, "Se": factAtomSe, "Br": factAtomBr,
	"Mo": factAtomMo, "Ag": factAtomAg, "I": factAtomI, "Ba": factAtomBa, "Pb": factAtomPb,
}

// AtomicWeight is the standard atomic weight of an element in g/mol, from the
// IUPAC table of 2021, abridged where the table prints an interval. ok is false
// for an element that no garden salt holds.
func AtomicWeight(symbol string) (gramsPerMol float64, ok bool) {
	id, ok := atoms[symbol]
	if !ok {
		return 0, false
	}
	return value(id), true
}

// weight is AtomicWeight for the elements named in this package.
func weight(symbol string) float64 { return value(atoms[symbol]) }
