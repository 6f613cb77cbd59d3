package garden

import (
	"errors"
	"fmt"
	"strings"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/solution"
)

// byRecipe fits the shelf to the recipe or the target, in this tub's water.
func (k *tubMix) byRecipe() bool {
	k.out.Way = ByRecipe
	want, ok := k.target()
	if !ok {
		return false
	}
	shelf := make([]solution.Fertiliser, len(k.shelf))
	for i, s := range k.shelf {
		shelf[i] = s.Fertiliser
	}
	order := solution.Order{
		Litres: quantity.Litre.From(k.litres.Base), Water: k.water, Shelf: shelf, MgL: want, EC: k.ec, PH: k.ph,
		Acid: k.acid, Base: k.base, Air: k.air, TemperatureC: k.tempC, Tools: k.tools, Field: "fertilisers",
	}
	batch, err := solution.Mix(order)
	if err != nil {
		k.refused(err)
		return false
	}
	k.out.Strength = rounded(batch.Strength, 4)
	k.out.TargetMgL = map[string]float64{}
	for _, n := range solution.Nutrients() {
		if v := batch.Aim.MgL[n]; v > 0 {
			k.out.TargetMgL[n.Symbol()] = quantity.Round(v, 3)
		}
	}
	for i, p := range batch.Portions {
		k.portion(k.shelf[i], p)
	}
	base := k.water.Content.Plus(batch.Acid.Adds)
	k.elements(shelf, batch.Portions, base, batch.Aim.MgL)
	feed := solution.Ions{}
	for i, p := range batch.Portions {
		feed = feed.Plus(shelf[i].Ions.Times(p.RoundedGrams / order.Litres))
	}
	k.band(feed, batch.Ions)
	k.ended(batch.Ions)
	k.out.chemistry = mixChemistry{water: batch.Ions.Plus(feed.Times(-1)), plain: k.water.Ions, tap: k.water.Content, feed: feed, air: k.air, tempC: k.tempC}
	k.acidOf(batch.Acid)
	k.baseOf(batch)
	k.missed(batch)
	k.about(k.placed(batch.Findings))
	k.remedies(shelf, batch, base)
	k.stocks(shelf, batch)
	return true
}

// refused says why the mix cannot be, at the field of the feed.
func (k *tubMix) refused(err error) {
	var f *solution.Fault
	if !errors.As(err, &f) {
		k.fault(finding.Stop, k.field, err)
		return
	}
	out := *f
	out.Field = strings.TrimPrefix(f.Field, "feed.")
	k.fault(finding.Stop, k.field, &out)
}

// target is what the tub should hold at full strength.
func (k *tubMix) target() (solution.Content, bool) {
	feed, _ := k.feed(k.index)
	if len(feed.Target) > 0 {
		var c solution.Content
		for symbol, v := range feed.Target {
			if n, ok := solution.NutrientNamed(symbol); ok {
				c[n] = float64(v.Value)
			}
		}
		k.untargeted(c)
		return c, true
	}
	k.out.Recipe = feed.Recipe
	if k.out.Recipe == "" {
		k.out.Recipe = solution.DefaultRecipe
	}
	r, err := solution.RecipeNamed(k.out.Recipe)
	if err != nil {
		k.refused(err)
		return solution.Content{}, false
	}
	return r.MgL, true
}

// untargeted notes which nutrients that plants need a target leaves out.
func (k *tubMix) untargeted(c solution.Content) {
	var out []string
	for _, n := range solution.Nutrients() {
		switch n {
		case solution.NitrateN, solution.AmmoniumN, solution.UreaN, solution.Sodium, solution.Chlorine:
			continue
		}
		if c[n] <= 0 {
			out = append(out, n.String())
		}
	}
	if len(out) > 0 && !k.dosed {
		k.about([]finding.Finding{{
			Level: finding.Note, Code: "target-leaves-out", Field: joinField(k.field, "target"),
			Text: "The target leaves out " + strings.Join(out, ", ") + ", and plants need all of them.",
			Hint: "Add them in mg/L; a recipe in print names them, or take a recipe known here.",
		}})
	}
}

// portion enters how one fertiliser is measured out, and lists it where any of
// it is taken.
func (k *tubMix) portion(s shelved, p solution.Portion) {
	if p.RoundedGrams <= 0 {
		return
	}
	key := solution.KeyOf(s.Name)
	w := k.measured(s, p)
	const how = "non-negative least squares, then whole steps of the tool"
	poured := func(what string) working.Number {
		n := k.b.Found("poured_"+key, s.Name+what, "v", quantity.SmallVolume.WithDecimals(1, 2), quantity.Millilitre.Base(p.Millilitres), how)
		w.Key = n.Key
		return n
	}
	switch {
	case p.Stock != nil:
		k.b.Work(stockMassLaw, "grams_"+key, s.Name+", in what is poured", poured(", poured of its small stock"),
			k.b.Found("small_stock_"+key, s.Name+", for its small stock", "g", weighed, quantity.Gram.Base(p.Stock.Grams), "the least that the scale weighs well and the syringe still pours"),
			k.b.Found("small_stock_volume_"+key, "small stock of "+s.Name, "L", quantity.Volume, quantity.Litre.Base(p.Stock.Litres), "one bottle"),
			k.b.Found("small_stock_thinned_"+key, "times that stock is thinned", "k", quantity.Count, p.Stock.Thin, "ten where a syringe would pour too little"))
	case s.Liquid():
		k.b.Work(bottleMassLaw, "grams_"+key, s.Name+", what is poured weighs", poured(", poured"),
			k.b.Typed("density_"+key, "density of "+s.Name, "d", quantity.Density, quantity.KilogramPerLitre.Base(s.DensityKgL), 0))
	case p.Spoons > 0:
		n := k.b.Found("spoons_"+key, "level spoons of "+s.Name, "n", quantity.Count, p.Spoons, "non-negative least squares, then whole spoons")
		w.Key = n.Key
		k.b.Work(spoonMassLaw, "grams_"+key, s.Name+", in those spoons", n,
			k.b.Typed("spoon_"+key, "one level "+w.Spoon+" of "+s.Name, "g", weighed, k.spoonFor(s).Mass.Value.Base(), 0))
	default:
		n := k.b.Found("grams_"+key, s.Name+", weighed", "m", weighed, quantity.Gram.Base(p.RoundedGrams), how)
		w.Key = n.Key
		k.coarse(w, k.tools.ScaleStepG)
	}
	k.out.Weigh = append(k.out.Weigh, w)
}

// missed lists what the shelf does not bring to its target.
func (k *tubMix) missed(b solution.Batch) {
	for _, miss := range b.Misses {
		decimals := 1
		if miss.Of.Micro() {
			decimals = 3
		}
		k.out.Misses = append(k.out.Misses, MixMiss{
			Element: miss.Of.Symbol(), HaveMgL: quantity.Round(miss.Have, decimals), WantMgL: quantity.Round(miss.Want, decimals),
			Level: miss.Level.String(), InTheWay: miss.InTheWay, Buy: miss.Buy,
		})
	}
}

// placed gives findings of the chemistry their fields in the plan.
func (k *tubMix) placed(all []finding.Finding) []finding.Finding {
	out := make([]finding.Finding, 0, len(all))
	for _, f := range all {
		switch {
		case f.Field == "acids" && len(k.plan.Acids) > 0:
			f.Field = fmt.Sprintf("acids[%d]", k.acidAt)
		case strings.HasPrefix(f.Field, "fertilisers["):
			f.Field = k.fertiliserField(f.Field)
		}
		out = append(out, f)
	}
	return out
}

// fertiliserField is the field of a fertiliser counted on the shelf: some of the
// plan's may not stand there.
func (k *tubMix) fertiliserField(field string) string {
	var j int
	if _, err := fmt.Sscanf(field, "fertilisers[%d]", &j); err != nil || j >= len(k.shelf) {
		return field
	}
	_, rest, _ := strings.Cut(field, "]")
	return fmt.Sprintf("fertilisers[%d]%s", k.shelf[j].at, rest)
}
