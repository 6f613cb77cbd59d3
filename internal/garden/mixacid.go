package garden

import (
	"fmt"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/solution"
)

// acidOf enters the acid of the tub's water: what lasts, what does not, and what
// may go into a planted tub at one time. Of an acid that is only an example
// nothing is a dose.
func (k *tubMix) acidOf(a solution.AcidPart) {
	out := &MixAcid{Name: a.Name, Why: a.Why, Missing: a.Missing}
	k.out.Acid = out
	if a.Why != "" {
		out.Name = ""
		return
	}
	if a.Missing != "" && k.missing != "" {
		out.Missing = k.missing
	}
	r := a.Reagent()
	out.Citric = r.Citric()
	out.Solid, out.Burns = r.DensityKgL == 0, r.Burns() && a.Missing == ""
	open, closed := a.OpenMmolL/1000, a.ClosedMmolL/1000
	out.MmolLOpen, out.MmolLClosed = rounded(a.OpenMmolL, 4), rounded(a.ClosedMmolL, 4)
	key := "acid"
	if a.Missing != "" {
		key = "acid_example"
	}
	a.ShowLasting(k.b, k.water.AlkalinityMgL)
	k.amount(r.Show(k.b, key+"_open", k.litres, open), &out.MLOpen, &out.GOpen)
	k.amount(r.Show(k.b, key+"_closed", k.litres, closed), &out.MLClosed, &out.GClosed)
	out.PHRebound = rounded(a.PHRebound, 2)
	if a.Missing != "" {
		k.about([]finding.Finding{{
			Level: finding.Note, Code: "acid-missing", Field: "acids",
			Text: fmt.Sprintf("This water wants %.2f mmol/L of acid that lasts, and the plan names none that can be counted with: %s.", a.OpenMmolL, out.Missing),
			Hint: "Ask an adult to copy strength and density from the bottle or its safety data sheet: acids. Until then no acid is dosed.",
		}})
		return
	}
	today := r.Mol(a.DoseTodayML) / quantity.Litre.From(k.litres.Base)
	n := r.Show(k.b, "acid_today", k.litres, today)
	out.Key = n.Key
	k.amount(n, &out.DoseTodayML, &out.DoseTodayG)
	out.PHAtOnce, out.PHAfterAir = rounded(a.PHAtOnce, 2), rounded(a.PHAfterAir, 2)
	k.plantedDose(r, open)
	k.out.chemistry.acid, k.out.chemistry.lasting = &r, open
}

// amount writes millilitres of a liquid or grams of a solid.
func (k *tubMix) amount(n working.Number, ml, g **float64) {
	if n.Kind.Dim == quantity.MassDim {
		*g = in(n, quantity.Gram, 2)
		return
	}
	*ml = in(n, quantity.Millilitre, 2)
}

// plantedDose enters the most of the lasting dose that a tub with plants and
// salts in it bears at one time.
func (k *tubMix) plantedDose(r solution.Reagent, lasting float64) {
	if r.Citric() {
		return
	}
	c, _ := solution.At(k.tempC)
	ions := k.out.chemistry.plain.Plus(k.out.chemistry.feed)
	mol, ph := c.Planted(ions, r, lasting)
	out := k.out.Acid
	k.amount(r.Show(k.b, "acid_planted", k.litres, mol), &out.PlantedML, &out.PlantedG)
	wait := solution.StepHours()
	out.PlantedPH, out.PlantedWait = rounded(ph, 2), &wait
}

// baseOf enters a little base for water that the salts turn sour.
func (k *tubMix) baseOf(b solution.Batch) {
	if k.base == nil || b.BaseMmolL <= 0 {
		return
	}
	n := k.base.Show(k.b, "base", k.litres, b.BaseMmolL/1000)
	out := &MixBase{Name: k.base.Name, MmolL: quantity.Round(b.BaseMmolL, 4), Burns: k.base.Burns(), Key: n.Key}
	k.amount(n, &out.ML, &out.G)
	k.out.Base = out
	for _, f := range k.base.Findings(fmt.Sprintf("bases[%d]", k.baseAt), b.BaseMmolL/1000) {
		k.about([]finding.Finding{f})
	}
}
