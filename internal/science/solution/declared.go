package solution

import (
	"fmt"
	"strconv"
	"strings"
)

// Declared is one line of a label: what it names, in percent by mass.
type Declared struct {
	Name    string // N, P2O5, K2O, CaO, Mg, NO3-N …
	Percent float64
}

// declares is what a name on a label stands for: the nutrient, and the formula
// it is counted as.
type declares struct {
	nutrient Nutrient
	element  string
	as       string
}

var labelNames = map[string]declares{
	"N": {Nitrogen, "N", "N"}, "NO3-N": {NitrateN, "N", "N"}, "NH4-N": {AmmoniumN, "N", "N"}, "urea-N": {UreaN, "N", "N"},
	"P2O5": {Phosphorus, "P", "P2O5"}, "P": {Phosphorus, "P", "P"},
	"K2O": {Potassium, "K", "K2O"}, "K": {Potassium, "K", "K"},
	"CaO": {Calcium, "Ca", "CaO"}, "Ca": {Calcium, "Ca", "Ca"},
	"MgO": {Magnesium, "Mg", "MgO"}, "Mg": {Magnesium, "Mg", "Mg"},
	"SO3": {Sulfur, "S", "SO3"}, "SO4": {Sulfur, "S", "SO4"}, "S": {Sulfur, "S", "S"},
	"Na2O": {Sodium, "Na", "Na2O"}, "Na": {Sodium, "Na", "Na"}, "Cl": {Chlorine, "Cl", "Cl"},
	"Fe": {Iron, "Fe", "Fe"}, "Mn": {Manganese, "Mn", "Mn"}, "B": {Boron, "B", "B"},
	"Zn": {Zinc, "Zn", "Zn"}, "Cu": {Copper, "Cu", "Cu"}, "Mo": {Molybdenum, "Mo", "Mo"},
}

// LabelNames are the names a label may use.
func LabelNames() []string {
	return []string{
		"N", "NO3-N", "NH4-N", "urea-N", "P2O5", "P", "K2O", "K", "CaO", "Ca", "MgO", "Mg", "SO3", "SO4", "S",
		"Na2O", "Na", "Cl", "Fe", "Mn", "B", "Zn", "Cu", "Mo",
	}
}

// ElementShare is the factor from what a label counts to the element: 0.436
// for P2O5. ok is false for a name that is not in LabelNames.
func ElementShare(name string) (factor float64, ok bool) {
	d, ok := labelNames[name]
	if !ok {
		return 0, false
	}
	f, err := ParseFormula(d.as)
	if err != nil {
		return 0, false
	}
	return f.Content(d.element), true
}

// Way is how a label counts phosphorus and potassium in its three figures.
type Way int

// The two ways. Oxides is usual in the US and the EU; some countries print
// Elements.
const (
	Oxides Way = iota
	Elements
)

// ParseGrade reads the three figures of a bag, such as 15.5-0-0 or 0-52-34:
// N, P2O5 and K2O, or N, P and K where the way is Elements.
func ParseGrade(text string, way Way) ([]Declared, error) {
	fault := &Fault{Code: "label-grade", Text: fmt.Sprintf("%q are not three figures such as 15-5-20", text), Hint: "copy N-P-K from the bag, with '-' between"}
	words := strings.Split(strings.NewReplacer("–", "-", "−", "-", ",", ".").Replace(text), "-")
	if len(words) != 3 {
		return nil, fault
	}
	names := []string{"N", "P2O5", "K2O"}
	if way == Elements {
		names = []string{"N", "P", "K"}
	}
	out := make([]Declared, 3)
	for i, w := range words {
		w = strings.TrimSpace(w)
		if w == "" || strings.Trim(w, "0123456789.") != "" {
			return nil, fault
		}
		v, err := strconv.ParseFloat(w, 64)
		if err != nil || v > 100 {
			return nil, fault
		}
		out[i] = Declared{names[i], v}
	}
	return out, nil
}
