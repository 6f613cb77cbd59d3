package solution

// Ion is a component of a solution that neither comes nor goes when the pH
// changes: total ammonium counts ammonia too, CO3 all dissolved carbonate and
// carbon dioxide, PO4 all orthophosphate, Borate all boron, Citrate all citrate.
// Protons follow from the balance of charges.
type Ion int

// The components. Metal are the ions of Mn, Zn and Cu; Other are chelates,
// molybdate and what else carries one negative charge.
const (
	NH4 Ion = iota
	K
	Na
	Ca
	Mg
	Metal
	NO3
	Cl
	Other
	SO4
	CO3
	PO4
	Borate
	Citrate
	ionCount
)

var ionSymbols = [ionCount]string{"NH4", "K", "Na", "Ca", "Mg", "Mn+Zn+Cu", "NO3", "Cl", "other", "SO4", "CO3", "PO4", "B", "citrate"}

// Symbol is the ion as a chemist writes it, without its charge.
func (i Ion) Symbol() string {
	if i < 0 || i >= ionCount {
		return "?"
	}
	return ionSymbols[i]
}

// charges of the component itself, as the balance counts it: Borate is B(OH)3.
var charges = [ionCount]float64{1, 1, 1, 2, 2, 2, -1, -1, -1, -2, -2, -3, 0, -3}

// Ions are the components of a solution in mol/L, or of a fertiliser in mol/g.
// The zero value is pure water.
type Ions [ionCount]float64

// Plus is the sum of both.
func (w Ions) Plus(v Ions) Ions {
	for i := range w {
		w[i] += v[i]
	}
	return w
}

// Times is every component taken so many times.
func (w Ions) Times(f float64) Ions {
	for i := range w {
		w[i] *= f
	}
	return w
}

// strongCharge is the charge in eq/L that the pH does not move: cations less
// the anions of strong acids. What is left over is the alkalinity.
func (w Ions) strongCharge() float64 {
	sum := 0.0
	for _, i := range []Ion{NH4, K, Na, Ca, Mg, Metal, NO3, Cl, Other, SO4} {
		sum += w[i] * charges[i]
	}
	return sum
}
