package garden

import (
	"errors"
	"fmt"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/science/solution"
)

// byDose is the path without chemistry: the maker's dose times the litres. What
// it brings, and the EC, are told where the labels tell enough.
func (k *tubMix) byDose() bool {
	k.out.Way = ByDose
	var feeds []solution.Dosed
	var shelf []solution.Fertiliser
	var at []shelved
	whole := true
	for _, s := range k.shelf {
		if s.dose == 0 {
			k.undosed(s)
			continue
		}
		feeds = append(feeds, solution.Dosed{Fertiliser: s.Fertiliser, PerLitre: s.dose})
		shelf, at = append(shelf, s.Fertiliser), append(at, s)
		whole = whole && !s.noDensity
	}
	l := quantity.Litre.From(k.litres.Base)
	portions := make([]solution.Portion, len(feeds))
	ions := solution.Ions{}
	for i, d := range feeds {
		portions[i] = k.dose(d, at[i], l)
		ions = ions.Plus(d.Fertiliser.Ions.Times(portions[i].RoundedGrams / l))
	}
	k.acidOf(solution.AcidPart{Why: k.noAcid()})
	if !whole {
		return true
	}
	m, err := solution.Simple(l, feeds, k.water)
	var f *solution.Fault
	if errors.As(err, &f) {
		k.fault(finding.Stop, f.Field, &solution.Fault{Code: f.Code, Text: f.Text, Hint: f.Hint})
		return false
	}
	k.about(m.Findings)
	all := k.water.Ions.Plus(ions)
	k.band(ions, all)
	k.elements(shelf, portions, k.water.Content, k.beside())
	k.ended(all)
	k.cloudy(all)
	k.out.chemistry = mixChemistry{water: k.water.Ions, plain: k.water.Ions, tap: k.water.Content, feed: ions, air: k.air, tempC: k.tempC}
	k.wanted()
	return true
}

// beside is the recipe at the EC of the maker's dose, to compare with; nothing
// is asked of the dose.
func (k *tubMix) beside() solution.Content {
	want, ok := k.target()
	if !ok || k.out.EC == nil {
		return solution.Content{}
	}
	c, err := solution.WholeAt(want, *k.out.EC, k.water, k.air)
	if err != nil {
		return solution.Content{}
	}
	return c
}

// cloudy warns where calcium phosphate falls out, in water that is known.
func (k *tubMix) cloudy(all solution.Ions) {
	if !k.water.Known {
		return
	}
	c, _ := solution.At(k.tempC)
	if rest := c.Equilibrium(all, k.air); rest.Brushite() > 0 {
		k.about([]finding.Finding{{
			Level: finding.Warn, Code: "mix-cloudy", Field: "fertilisers",
			Text: fmt.Sprintf("At pH %.1f calcium phosphate falls out: the tub turns cloudy.", rest.PH),
			Hint: "Blend the tap with rain or deionised water, or leave the doses out of the plan and have the acid worked out.",
		}})
	}
}

// noAcid is why the maker's dose takes no acid.
func (k *tubMix) noAcid() string {
	if !k.water.Known {
		return "The alkalinity is not known, and no acid is dosed on a guess."
	}
	return "The maker's dose is mixed as it is. Leave the doses out of the plan, and amounts and acid are worked out for a recipe."
}

// undosed says that a fertiliser without a dose stays on the shelf.
func (k *tubMix) undosed(s shelved) {
	k.about([]finding.Finding{{
		Level: finding.Note, Code: "dose-missing", Field: fmt.Sprintf("fertilisers[%d]", s.at),
		Text: s.Name + " has no dose and is not used: the others are mixed by their makers' doses.",
		Hint: "Copy its dose from the label; or leave all doses out, and the amounts are worked out for a recipe.",
	}})
}

// dose is what of one bottle or bag goes into the tub, to the nearest step of
// the syringe or the scale.
func (k *tubMix) dose(d solution.Dosed, s shelved, litres float64) solution.Portion {
	w := Weigh{Name: s.Name, Part: s.Part, Index: s.at, Hazards: hazardsOf(s.Fertiliser)}
	key := solution.KeyOf(s.Name)
	if s.liquid {
		return k.pouredDose(d, s, w, key, litres)
	}
	n := d.ShowDose(k.b, k.litres)
	grams := quantity.Gram.From(n.Base)
	step := k.tools.ScaleStepG
	p := solution.Portion{Name: s.Name, Grams: grams, RoundedGrams: grams}
	how := "the dose as it is: no scale is told of"
	if step > 0 {
		p.RoundedGrams, how = step*working0(grams/step), "the dose, to the nearest step of the scale"
		w.ScaleStepG = rounded(step, 3)
	}
	shown := k.b.Found("grams_"+key, s.Name+", weighed", "m", weighed, quantity.Gram.Base(p.RoundedGrams), how)
	w.Grams, w.RoundedGrams, w.Key = *rounded(grams, 3), *rounded(p.RoundedGrams, 3), shown.Key
	k.coarse(w, step)
	k.out.Weigh = append(k.out.Weigh, w)
	return p
}

// pouredDose is the same of a liquid.
func (k *tubMix) pouredDose(d solution.Dosed, s shelved, w Weigh, key string, litres float64) solution.Portion {
	step := solution.SyringeStep()
	if s.noDensity {
		d.Fertiliser.DensityKgL = 1 // for the millilitres alone; its mass is not told
	}
	n := d.ShowDose(k.b, k.litres)
	ml := step * working0(quantity.Millilitre.From(n.Base)/step)
	poured := k.b.Found("poured_"+key, s.Name+", poured", "v", quantity.SmallVolume.WithDecimals(1, 2), quantity.Millilitre.Base(ml), "the dose, to the nearest step of the syringe")
	w.Millilitres, w.Key = rounded(ml, 2), poured.Key
	p := solution.Portion{Name: s.Name, Millilitres: ml}
	if !s.noDensity {
		m := k.b.Work(bottleMassLaw, "grams_"+key, s.Name+", what is poured weighs", poured,
			k.b.Typed("density_"+key, "density of "+s.Name, "d", quantity.Density, quantity.KilogramPerLitre.Base(s.DensityKgL), 0))
		p.RoundedGrams = quantity.Gram.From(m.Base)
		p.Grams = d.PerLitre * litres * s.DensityKgL
		w.Grams, w.RoundedGrams = *rounded(p.Grams, 3), *rounded(p.RoundedGrams, 3)
	}
	k.out.Weigh = append(k.out.Weigh, w)
	return p
}

// working0 rounds to a whole number, and never to nought.
func working0(v float64) float64 { return max(1, quantity.Round(v, 0)) }

// coarse warns of a mass that the scale cannot weigh well.
func (k *tubMix) coarse(w Weigh, step float64) {
	least := solution.LeastSteps()
	switch {
	case step <= 0:
		k.about([]finding.Finding{{
			Level: finding.Warn, Code: "scale-missing", Field: "tools.scale_step",
			Text: fmt.Sprintf("%s has to be weighed, and the plan has no scale.", w.Name),
			Hint: "Borrow a kitchen scale, and write its step: tools.scale_step.",
		}})
	case w.Grams < least*step:
		level := finding.Note
		if w.Grams < least*step/4 {
			level = finding.Warn
		}
		k.about([]finding.Finding{{
			Level: level, Code: "scale-coarse", Field: "tools.scale_step",
			Text: fmt.Sprintf("%s of %s is few steps for a scale of %s: the error may be %.0f %%.", k.gramWords(w.Grams, step/10), w.Name, k.gramWords(step, step), 50*step/w.Grams),
			Hint: "Take a finer scale, such as a pocket scale of 0.1 g; or weigh a larger amount, dissolve it in a litre, and pour its share.",
		}})
	}
}

// wanted compares the EC of the maker's dose with the one that is aimed at.
func (k *tubMix) wanted() {
	if k.out.Band == nil || k.ec <= 0 {
		return
	}
	low, high := k.out.Band[0], k.out.Band[1]
	if low <= k.ec && k.ec <= high {
		return
	}
	text := fmt.Sprintf("The maker's dose gives EC %.2f to %.2f mS/cm, and %.2f is aimed at.", low, high, k.ec)
	hint := "Measure it before you change the dose."
	if share, ok := k.out.Curve().Strength(k.ec); ok && share > 0 {
		hint = fmt.Sprintf("About %.0f %% of the dose would give it. Change it only by what your own meter shows.", 100*share)
	}
	k.about([]finding.Finding{{Level: finding.Note, Code: "dose-ec", Field: joinField(k.field, "ec"), Text: text, Hint: hint}})
}

func hazardsOf(f solution.Fertiliser) []Hazard {
	var out []Hazard
	for _, h := range f.Hazards() {
		out = append(out, Hazard{h.Code, h.Says})
	}
	return out
}
