package garden

import (
	"errors"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
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
	litres, strength := float64(typed.Volume.Or(usualStockLitres)), float64(typed.Strength.Or(usualStockStrength))
	s, err := solution.MakeStocks(shelf, b.Fit.GramsPerLitre, strength, litres, k.coldest(), quantity.Litre.From(k.litres.Base), "stocks")
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
	// A stock is weighed as the tub that all of it would fill: what is too little
	// for the scale comes from a small stock of its own there too.
	portions, _ := b.Target.Weigh(k.tools, shelf, b.Fit.GramsPerLitre, strength*litres, solution.Content{})
	out.A, out.B = k.tank(s.A, b, portions), k.tank(s.B, b, portions)
	k.out.Stocks = out
}

// tank enters what goes into one stock, as the class measures it.
func (k *tubMix) tank(t solution.Tank, b solution.Batch, portions []solution.Portion) MixTank {
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
			w := k.measured(s, portions[j])
			w.Key = n.Key
			out.Weigh = append(out.Weigh, w)
		}
	}
	return out
}

// measured is a portion as it stands in the JSON, without its numbers.
func (k *tubMix) measured(s shelved, p solution.Portion) Weigh {
	w := Weigh{Name: s.Name, Part: s.Part, Index: s.at, Hazards: hazardsOf(s.Fertiliser), Grams: *rounded(p.Grams, 5), RoundedGrams: *rounded(p.RoundedGrams, 5)}
	switch {
	case p.Stock != nil:
		w.Stock = &WeighPour{Grams: *rounded(p.Stock.Grams, 3), Litres: p.Stock.Litres, Thin: p.Stock.Thin, PourML: *rounded(p.Stock.PourML, 2)}
		w.Millilitres, w.ScaleStepG = rounded(p.Stock.PourML, 2), rounded(k.tools.ScaleStepG, 3)
	case s.Liquid():
		w.Millilitres = rounded(p.Millilitres, 2)
	case p.Spoons > 0:
		w.Spoons, w.Spoon = rounded(p.Spoons, 0), k.spoonFor(s).Name
	case k.tools.ScaleStepG > 0:
		w.ScaleStepG = rounded(k.tools.ScaleStepG, 3)
	}
	return w
}

// spoonFor is the class's spoon for a fertiliser; there is one where spoons are
// counted.
func (k *tubMix) spoonFor(s shelved) plan.Spoon {
	for _, spoon := range k.plan.Spoons {
		if spoon.Of == s.Name || spoon.Of == s.Salt {
			return spoon
		}
	}
	return plan.Spoon{}
}

func (k *tubMix) coldest() float64 {
	if c := k.plan.Place.Coldest; c.Set() {
		return float64(c.Value)
	}
	return solution.ColdestStore()
}
