package solution

// Nutrient is what labels, reports and targets name. Nitrogen is all of it;
// its three forms stand beside it and are part of it.
type Nutrient int

// The nutrients, and what tap water brings beside them.
const (
	Nitrogen Nutrient = iota
	NitrateN
	AmmoniumN
	UreaN
	Phosphorus
	Potassium
	Calcium
	Magnesium
	Sulfur
	Iron
	Manganese
	Boron
	Zinc
	Copper
	Molybdenum
	Sodium
	Chlorine
	nutrientCount
)

var nutrientSymbols = [nutrientCount]string{"N", "NO3-N", "NH4-N", "urea-N", "P", "K", "Ca", "Mg", "S", "Fe", "Mn", "B", "Zn", "Cu", "Mo", "Na", "Cl"}

var nutrientWords = [nutrientCount]string{
	"nitrogen", "nitrate nitrogen", "ammonium nitrogen", "urea nitrogen", "phosphorus", "potassium", "calcium", "magnesium", "sulfur",
	"iron", "manganese", "boron", "zinc", "copper", "molybdenum", "sodium", "chloride",
}

// Symbol is how a report writes it: N, NO3-N, P, Fe …
func (n Nutrient) Symbol() string {
	if n < 0 || n >= nutrientCount {
		return "?"
	}
	return nutrientSymbols[n]
}

// String is the word for it.
func (n Nutrient) String() string {
	if n < 0 || n >= nutrientCount {
		return "?"
	}
	return nutrientWords[n]
}

// Micro tells whether it is counted in parts of a milligram per litre.
func (n Nutrient) Micro() bool { return n >= Iron && n <= Molybdenum }

// Nutrients are all of them, in the order in which they are shown.
func Nutrients() []Nutrient {
	out := make([]Nutrient, nutrientCount)
	for i := range out {
		out[i] = Nutrient(i)
	}
	return out
}

// NutrientNamed finds one by its symbol.
func NutrientNamed(symbol string) (Nutrient, bool) {
	for n, s := range nutrientSymbols {
		if s == symbol {
			return Nutrient(n), true
		}
	}
	return 0, false
}

// Content is an amount of each nutrient: mg/L of a solution, or the share of a
// fertiliser's mass. The zero value holds nothing.
type Content [nutrientCount]float64

// Plus is the sum of both.
func (c Content) Plus(d Content) Content {
	for i := range c {
		c[i] += d[i]
	}
	return c
}

// Times is the content taken so many times.
func (c Content) Times(f float64) Content {
	for i := range c {
		c[i] *= f
	}
	return c
}
