package mixing

import (
	"fmt"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// parts are the strengths of which the table tells the EC.
var parts = []struct {
	Words string
	Of    float64
}{{"the water alone", 0}, {"1/4", 0.25}, {"1/2", 0.5}, {"3/4", 0.75}, {"the whole dose", 1}, {"1 1/4", 1.25}}

// Part is one line of the EC against the strength.
type Part struct {
	Words string
	EC    float64 // mS/cm
}

// Parts are the EC at parts of the dose, from the curve and not from a straight
// line; none where the EC is not known.
func Parts(m *garden.Mix) []Part {
	if m.EC == nil {
		return nil
	}
	curve := m.Curve()
	var out []Part
	for _, x := range parts {
		out = append(out, Part{x.Words, curve.EC(x.Of)})
	}
	return out
}

// Scales are the scales of EC meters that show ppm, by their ppm for 1 mS/cm.
var Scales = []garden.MeterScale{500, 640, 700}

// doses is a sheet for each tub: for so many litres, and what the meter shows.
func (p papers) doses(paper scene.Size) []content.Sheet {
	var out []content.Sheet
	for _, i := range p.tubs {
		t := &p.a.Tubs[i]
		title := "Dose table: " + t.Name
		s := content.Sheet{Title: title, Stop: Stop(p.a, i), Block: p.block(title, paper), Sections: []content.Section{
			{
				Heading: "For so much water", Tables: []content.Table{p.amounts(t.Mix)},
				Paragraphs: []string{"For new water of this plan, never on top of what is in the tub. An adult measures it out. A dash is too little for the scale: make more water, or a small stock."},
			},
		}}
		if table, ok := meterTable(t.Mix); ok {
			s.Sections = append(s.Sections, content.Section{
				Heading: "What the meter shows", Tables: []content.Table{table},
				Paragraphs: []string{"At 25 °C, and 5 % to either side is as it should be. The ppm of a meter is a scale of its own and no weight of nutrients: look at the back of yours for 500, 640 or 700."},
			})
		}
		if says := t.Mix.TooMuchWords(p.a.Plan.Units); len(says) > 0 {
			s.Sections = append(s.Sections, content.Section{Heading: "If too much went in", Paragraphs: says})
		}
		if AcidDose(t.Mix) {
			s.Sections = append(s.Sections, content.Section{Heading: "Acid", Paragraphs: []string{"The acid is not in this table: it goes into the water the day before, by the acid card."}})
		}
		out = append(out, s)
	}
	return out
}

// amounts has a row for each fertiliser, or for each stock, and a column for
// each volume.
func (p papers) amounts(m *garden.Mix) content.Table {
	system := p.a.Plan.Units
	volumes := []float64{1, 2, 5, 10}
	unit := quantity.Volume.Unit(system)
	t := content.Table{Caption: "Measured out for so much water", Columns: []content.Column{{Head: "what"}}}
	var litres []float64
	for _, v := range volumes {
		t.Columns = append(t.Columns, content.Column{Head: quantity.FormatNumber(v, 0) + "\u00a0" + unit.Symbol, Number: true})
		litres = append(litres, quantity.Litre.From(v*unit.Scale))
	}
	t.Columns = append(t.Columns, content.Column{Head: "tub, " + Litres(m.SolutionL, system), Number: true})
	litres = append(litres, m.SolutionL)
	row := func(what string, amount func(part float64) string) {
		cells := []string{what}
		for _, l := range litres {
			cells = append(cells, amount(l/m.SolutionL))
		}
		t.Rows = append(t.Rows, cells)
	}
	apart := map[string]bool{}
	if s := m.Stocks; s != nil {
		pour := func(part float64) string { return poured(s.PourML * part) }
		row("stock A", pour)
		row("stock B", pour)
		for _, name := range s.Apart {
			apart[name] = true
		}
	}
	for _, w := range m.Weigh {
		if m.Stocks == nil || apart[w.Name] {
			what, _ := p.row(w)
			row(what, func(part float64) string { return scaled(w, part) })
		}
	}
	return t
}

// wholeFrom is from how many millilitres on they are told whole.
const wholeFrom = 100

// poured is a part of what is poured, to the half millilitre, and from 100 mL on
// to the whole one: rounded twice, the tub's column would not be the card's.
func poured(ml float64) string {
	switch {
	case ml < 0.5:
		return "–"
	case ml >= wholeFrom:
		return garden.PourWords(ml, quantity.Metric)
	}
	return garden.PourWords(quantity.Round(2*ml, 0)/2, quantity.Metric)
}

// scaled is a part of one fertiliser, where the tool can measure it.
func scaled(w garden.Weigh, part float64) string {
	switch {
	case w.Stock != nil:
		return poured(w.Stock.PourML * part)
	case w.Spoons != nil:
		n := *w.Spoons * part
		if n < 0.5 {
			return "–"
		}
		return fmt.Sprintf("%.0f spoons", quantity.Round(n, 0))
	case w.Millilitres != nil:
		return poured(*w.Millilitres * part)
	}
	step := gramStep
	if w.ScaleStepG != nil {
		step = *w.ScaleStepG
	}
	grams := step * quantity.Round(w.Grams*part/step, 0)
	const leastSteps = 3 // fewer are off by more than a sixth
	if grams < leastSteps*step {
		return "–"
	}
	return garden.MassWords(grams, step, quantity.Metric)
}

// meterTable is the EC at parts of the dose, on every scale.
func meterTable(m *garden.Mix) (content.Table, bool) {
	t := content.Table{Caption: "EC of the tub at parts of the dose", Columns: []content.Column{{Head: "of the dose"}, {Head: "mS/cm", Number: true}}}
	for _, s := range Scales {
		head := fmt.Sprintf("ppm %d", s)
		if s == m.Scale {
			head += ", yours"
		}
		t.Columns = append(t.Columns, content.Column{Head: head, Number: true})
	}
	for _, x := range Parts(m) {
		cells := []string{x.Words, quantity.FormatNumber(x.EC, 2)}
		for _, s := range Scales {
			cells = append(cells, quantity.FormatNumber(s.PPM(x.EC), 0))
		}
		t.Rows = append(t.Rows, cells)
	}
	return t, len(t.Rows) > 0
}
