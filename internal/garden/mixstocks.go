package garden

import (
	"errors"
	"fmt"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/science/solution"
)

// Stocks as a class makes them where the plan leaves it out.
const (
	usualStockLitres   = 1
	usualStockStrength = 100
)

// stocks works out the two stock solutions that the tub is mixed from, where the
// plan asks for them.
func (k *tubMix) stocks(shelf []solution.Fertiliser, b solution.Batch) {
	typed := k.plan.Stocks
	if typed == nil {
		return
	}
	coldest := solution.ColdestStore()
	if c := k.plan.Place.Coldest; c.Set() {
		coldest = float64(c.Value)
	}
	litres, strength := float64(typed.Volume.Or(usualStockLitres)), float64(typed.Strength.Or(usualStockStrength))
	s, err := solution.MakeStocks(shelf, b.Fit.GramsPerLitre, strength, litres, coldest, quantity.Litre.From(k.litres.Base), "stocks")
	var f *solution.Fault
	if errors.As(err, &f) {
		k.fault(finding.Stop, "stocks", f)
		return
	}
	k.about(s.Findings)
	dose, fills := s.Show(k.b, k.litres)
	pour := k.b.Work(stockPourLaw, "stock_pour", "of each stock, for the tub", k.litres, dose)
	out := &MixStocks{
		Strength: s.Strength, LitresEach: s.LitresEach, DoseMLPerL: *in(dose, quantity.Millilitre, 3), PourML: *in(pour, quantity.Millilitre, 1),
		Fills: quantity.Round(fills.Base, 1), LifeDays: s.LifeDays, Apart: s.Apart,
	}
	out.DoseMLPerL = quantity.Round(s.DoseMLPerL, 3)
	out.A, out.B = k.tank(s.A, b), k.tank(s.B, b)
	k.out.Stocks = out
}

// tank enters what goes into one stock, to the step of the scale.
func (k *tubMix) tank(t solution.Tank, b solution.Batch) MixTank {
	out := MixTank{Load: *rounded(t.Load, 3), Gypsum: *rounded(t.Gypsum, 2), Brushite: *rounded(t.Brushite, 2), Weigh: []Weigh{}}
	strength, _ := k.book.Find(k.b.Key("stock_strength"))
	volume, _ := k.book.Find(k.b.Key("stock_volume"))
	for _, p := range t.Portions {
		for j, s := range k.shelf {
			if s.Name != p.Name {
				continue
			}
			key := solution.KeyOf(s.Name)
			n := k.b.Work(tankMassLaw, "stock_grams_"+key, s.Name+", for stock "+t.Letter,
				k.b.Found("per_litre_"+key, s.Name+", in a litre of the tub", "c", solution.StockContent.WithDecimals(4, 4), b.Fit.GramsPerLitre[j]*1e-9, "non-negative least squares"), strength, volume)
			s.ShowSolubility(k.b, k.coldest())
			w := Weigh{Name: s.Name, Part: s.Part, Index: s.at, Hazards: hazardsOf(s.Fertiliser), Grams: *rounded(p.Grams, 4), RoundedGrams: *rounded(p.Grams, 4), Key: n.Key}
			if step := k.tools.ScaleStepG; s.Liquid() {
				w.Millilitres = rounded(s.Millilitres(p.Grams), 1)
			} else if step > 0 {
				w.RoundedGrams, w.ScaleStepG = *rounded(step*working0(p.Grams/step), 4), rounded(step, 3)
				k.tooLittle(w, step)
			}
			out.Weigh = append(out.Weigh, w)
		}
	}
	return out
}

func (k *tubMix) coldest() float64 {
	if c := k.plan.Place.Coldest; c.Set() {
		return float64(c.Value)
	}
	return solution.ColdestStore()
}

// tooLittle warns where the scale cannot weigh what a stock needs.
func (k *tubMix) tooLittle(w Weigh, step float64) {
	if w.Grams >= solution.LeastSteps()*step {
		return
	}
	k.about([]finding.Finding{{
		Level: finding.Warn, Code: "stock-too-little", Field: "stocks",
		Text: fmt.Sprintf("%s of %s for a stock is few steps for a scale of %s.", k.gramWords(w.Grams, step/10), w.Name, k.gramWords(step, step)),
		Hint: "Make the stock larger or stronger, take a finer scale, or a label mix that brings the micronutrients together.",
	}})
}
