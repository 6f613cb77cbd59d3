package mixing

import (
	"fmt"
	"slices"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// labels is a sheet of labels for each tub: of what is kept in a bottle.
func (p papers) labels(paper scene.Size) []content.Sheet {
	var out []content.Sheet
	for _, i := range p.tubs {
		t := &p.a.Tubs[i]
		title := "Bottle labels: " + t.Name
		s := content.Sheet{Title: title, Stop: Stop(p.a, i), Block: p.block(title, paper)}
		if k := t.Mix.Stocks; k != nil {
			s.Sections = append(s.Sections, p.stock("A", k.A, t.Name, *k), p.stock("B", k.B, t.Name, *k))
		}
		for _, w := range measuredOut(t.Mix) {
			if w.Stock != nil {
				s.Sections = append(s.Sections, p.smallStock(w))
			}
		}
		jug := label("Nutrient solution of "+t.Name, "Not for drinking. Plants only.",
			"Ready mixed, for topping up. Pupils may pour it."+ecWords(t.Mix), t.Mix.LifeDays)
		s.Sections = append(s.Sections, jug)
		out = append(out, s)
	}
	return out
}

// measuredOut is all that is measured out of a bag or bottle for a tub: for its
// stocks, where it is mixed from those.
func measuredOut(m *garden.Mix) []garden.Weigh {
	if m.Stocks == nil {
		return m.Weigh
	}
	out := slices.Concat(m.Stocks.A.Weigh, m.Stocks.B.Weigh)
	for _, w := range m.Weigh {
		if slices.Contains(m.Stocks.Apart, w.Name) {
			out = append(out, w)
		}
	}
	return out
}

func ecWords(m *garden.Mix) string {
	if m.EC == nil {
		return ""
	}
	return " EC about " + m.ECWords(*m.EC) + "."
}

// label is what stands on one bottle.
func label(head, caution, what string, days float64) content.Section {
	return content.Section{Heading: head, Whole: true, Cautions: []string{caution}, Paragraphs: []string{what}, Lines: []content.Line{
		content.Line(fmt.Sprintf("Made on ____________ by team ____________ good for %s, until ____________", lifeWords(days))),
	}}
}

// lifeWords is how long something keeps.
func lifeWords(days float64) string {
	if days == 1 {
		return "1 day"
	}
	return fmt.Sprintf("%.0f days", days)
}

// stock is the label of stock A or B.
func (p papers) stock(letter string, t garden.MixTank, tub string, k garden.MixStocks) content.Section {
	var what []string
	for _, w := range t.Weigh {
		what = append(what, Amount(w, p.a.Plan.Units))
	}
	other := map[string]string{"A": "B", "B": "A"}[letter]
	s := label("Stock "+letter+", "+quantity.FormatNumber(k.Strength, 0)+" times the feed of "+tub,
		"Adults only. Goggles and gloves. Not for drinking. Never together with stock "+other+" undiluted.",
		fmt.Sprintf("%s, made up to %s. Dose: %s. Keep it closed, dark, locked up and not in the cold.", List(what), Litres(k.LitresEach, p.a.Plan.Units), doseWords(k.DoseMLPerL, p.a.Plan.Units)),
		k.LifeDays)
	if table, ok := Hazards(t.Weigh); ok {
		s.Tables = []content.Table{table}
	}
	return s
}

// doseWords is a dose for what the tub is counted in: litres or gallons.
func doseWords(mlPerL float64, s quantity.System) string {
	if s == quantity.US {
		return garden.PourWords(mlPerL*quantity.Litre.From(quantity.USGallon.Base(1)), s) + " for each gallon"
	}
	return garden.PourWords(mlPerL, s) + " for each litre"
}

// smallStock is the label of what the scale could not weigh by itself.
func (p papers) smallStock(w garden.Weigh) content.Section {
	step := gramStep
	if w.ScaleStepG != nil {
		step = *w.ScaleStepG
	}
	what := fmt.Sprintf("%s made up to %s", garden.MassWords(w.Stock.Grams, step, p.a.Plan.Units), garden.BottleWords(w.Stock.Litres, p.a.Plan.Units))
	if w.Stock.Thin > 1 {
		what += fmt.Sprintf(", thinned %.0f times before it is poured", w.Stock.Thin)
	}
	s := label("Small stock of "+w.Name, "Adults only. Goggles and gloves. Not for drinking.",
		fmt.Sprintf("%s. Of it: %s. Nothing else goes into this bottle.", what, garden.PourWords(w.Stock.PourML, p.a.Plan.Units)), smallStockDays)
	if table, ok := Hazards([]garden.Weigh{w}); ok {
		s.Tables = []content.Table{table}
	}
	return s
}

// smallStockDays is how long a small stock is kept: as long as mixed solution,
// which is the more careful of the two (common practice).
const smallStockDays = 7
