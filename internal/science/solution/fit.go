package solution

import (
	"fmt"

	"rootbell/internal/base/finding"
)

// Limit is a hard ceiling of one nutrient in the tub, in mg/L, all sources
// together.
type Limit struct {
	Of      Nutrient
	MostMgL float64
	Why     string
}

// Target is what a tub should hold, in mg/L; a nutrient at zero is not aimed
// at. Limits are kept whatever the target says.
type Target struct {
	MgL    Content
	Limits []Limit
}

// aims are the nutrients that a target may name; nitrogen as a whole.
var aims = []Nutrient{Nitrogen, Phosphorus, Potassium, Calcium, Magnesium, Sulfur, Iron, Manganese, Boron, Zinc, Copper, Molybdenum}

// NewTarget is a target with the usual limits: sodium and chloride as in tap
// water, ammonium as a share of the nitrogen, micronutrients a few times what
// is aimed at, because too much of them is poison. A target that cannot be is
// a *Fault.
func NewTarget(mgL Content) (Target, error) {
	t := Target{MgL: mgL}
	aimed := false
	for _, n := range Nutrients() {
		v := mgL[n]
		if !(v >= 0 && v <= mostOfAnIon) {
			return t, &Fault{"target-absurd", "target." + n.Symbol(), fmt.Sprintf("%g mg/L of %s is no target", v, n), fmt.Sprintf("a target lies between 0 and %d mg/L", mostOfAnIon)}
		}
	}
	for _, n := range aims {
		aimed = aimed || mgL[n] > 0
		if n.Micro() {
			t.Limits = append(t.Limits, Limit{n, value(factFeedLimitMicro) * usual(mgL, n), "too much of a micronutrient is poison"})
		}
	}
	if !aimed {
		return t, &Fault{"target-empty", "target", "the target names no nutrient", "give at least N, P, K, Ca and Mg in mg/L, or a recipe"}
	}
	t.Limits = append(t.Limits,
		Limit{Sodium, value(factTapSodiumMax), "sodium gathers in a tub"},
		Limit{Chlorine, value(factTapChlorideMax), "chloride gathers in a tub"},
		Limit{AmmoniumN, max(percent(factFeedAmmoniumShare)*mgL[Nitrogen], mgL[AmmoniumN]), "more ammonium takes the pH down"},
	)
	return t, nil
}

// usual is what is aimed at of a micronutrient; where nobody aims at it, what the
// default recipe holds, so that a salt taken for something else does not poison.
func usual(mgL Content, n Nutrient) float64 {
	if mgL[n] > 0 {
		return mgL[n]
	}
	r, err := RecipeNamed(DefaultRecipe)
	if err != nil {
		return 0
	}
	return r.MgL[n]
}

// At is the target at another strength; 0.5 is half of everything. Ammonium is
// limited along with it. Micronutrients poison by what there is of them, so in
// a weaker tub their limits stay.
func (t Target) At(strength float64) Target {
	out := Target{MgL: t.MgL.Times(strength), Limits: append([]Limit(nil), t.Limits...)}
	for i := range out.Limits {
		switch l := &out.Limits[i]; {
		case l.Of == AmmoniumN:
			l.MostMgL *= strength
		case l.Of.Micro():
			l.MostMgL *= max(1, strength)
		}
	}
	return out
}

// weightOf is how much a relative miss of a nutrient counts: of a micronutrient
// as much less as plants bear more of it.
func weightOf(n Nutrient) float64 {
	switch {
	case n == Sulfur:
		return value(factFeedWeightSulfur)
	case n.Micro():
		return 1 / value(factFeedMissMicro)
	}
	return 1
}

// Fit is the best that a shelf can do for a target.
type Fit struct {
	GramsPerLitre []float64 // by the shelf
	MgL           Content   // with what water and acid bring
	Ions          Ions      // of the fertilisers alone, mol/L
	Residual      float64   // root of the summed squares of the relative misses, weighted
}

// FitTo finds how much of each fertiliser brings the water nearest to the
// target: the relative misses, squared and added, are as small as can be, no
// amount is negative and every limit holds. base is what water and acid bring
// already, in mg/L. Where that alone passes what is aimed at, nobody can take it
// out again, and only what the shelf adds counts as a miss; where it passes a
// limit (see PassedBy), the shelf adds nothing to it.
func (t Target) FitTo(shelf []Fertiliser, base Content) (Fit, error) {
	p, err := t.prepare(shelf)
	if err != nil {
		return Fit{}, err
	}
	return p.fit(t, base)
}

// useful are the fertilisers that bring something aimed at, and their places on
// the shelf; of any other no amount would be wrong to the fit.
func (t Target) useful(shelf []Fertiliser) (out []Fertiliser, at []int) {
	for j, f := range shelf {
		for _, n := range aims {
			if t.MgL[n] > 0 && f.Share[n] > 0 {
				out, at = append(out, f), append(at, j)
				break
			}
		}
	}
	return out, at
}

// PassedBy are the limits that water and acid pass by themselves.
func (t Target) PassedBy(base Content) []Limit {
	var out []Limit
	for _, l := range t.Limits {
		if base[l.Of] > l.MostMgL {
			out = append(out, l)
		}
	}
	return out
}

// finding is a limit that water and acid pass: a stop where that poisons.
func (l Limit) finding(field string, base Content) finding.Finding {
	f := finding.Finding{
		Level: finding.Warn, Code: "limit-by-water", Field: field,
		Text: fmt.Sprintf("Water and acid alone bring %.3g mg/L of %s, more than %.3g: %s.", base[l.Of], l.Of, l.MostMgL, l.Why),
		Hint: "Blend with rain or deionised water: " + quarters(BlendFor(base[l.Of], l.MostMgL)) + ".",
	}
	if l.Of.Micro() {
		f.Level = finding.Stop
	}
	return f
}
