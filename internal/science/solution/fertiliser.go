package solution

// Fertiliser is what stands on the shelf, by the gram: the share of each
// nutrient in its mass, and the ions in mol/g. A liquid has a density; of a dry
// one it is zero. Part is the bottle of a set (A, B, C), if it is one. Assumed
// says what had to be taken for granted about it.
type Fertiliser struct {
	Name       string
	Salt       string // its name among the salts, empty for a label
	Share      Content
	Ions       Ions
	DensityKgL float64
	Part       string
	Assumed    []string
	dissolves  solubility
}

// Liquid tells whether it is poured by millilitres.
func (f Fertiliser) Liquid() bool { return f.DensityKgL > 0 }

// Millilitres are so many grams of a liquid; zero for a dry one.
func (f Fertiliser) Millilitres(grams float64) float64 {
	if !f.Liquid() {
		return 0
	}
	return grams / f.DensityKgL
}

// Grams are so many millilitres of a liquid; zero for a dry one.
func (f Fertiliser) Grams(millilitres float64) float64 { return millilitres * f.DensityKgL }

// MgL is what so many grams in each litre bring, in mg/L.
func (f Fertiliser) MgL(gramsPerLitre float64) Content { return f.Share.Times(1000 * gramsPerLitre) }

// Sum is what the fertilisers bring together, the amounts in g/L.
func Sum(shelf []Fertiliser, gramsPerLitre []float64) (mgL Content, molL Ions) {
	for i, f := range shelf {
		if i >= len(gramsPerLitre) {
			break
		}
		mgL = mgL.Plus(f.MgL(gramsPerLitre[i]))
		molL = molL.Plus(f.Ions.Times(gramsPerLitre[i]))
	}
	return mgL, molL
}
