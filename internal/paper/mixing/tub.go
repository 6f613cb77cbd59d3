package mixing

import (
	"fmt"
	"slices"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// Cautions stand before anything is opened.
const (
	careBags  = "Bags, stocks and acid are an adult's: goggles on, gloves on, window open. Nothing is tasted, and nothing goes into a drinking bottle."
	careApart = "Stock A and stock B never meet undiluted, and no two bottles do. Acid goes into water, never water into acid. Acid and bleach never on one day, and never on one shelf."
)

// Cautions are what is said before a tub is mixed for.
func Cautions() []string { return []string{careBags, careApart} }

// mixing is a sheet for each tub.
func (p papers) mixing(paper scene.Size) []content.Sheet {
	var out []content.Sheet
	for _, i := range p.tubs {
		t := &p.a.Tubs[i]
		title := "Mixing card: " + t.Name
		bold, rest := Answer(p.a, i)
		s := content.Sheet{Title: title, Stop: Stop(p.a, i), Block: p.block(title, paper), Sections: []content.Section{
			{Heading: "First", Cautions: Cautions()},
			{Heading: "In order", Paragraphs: []string{bold + " " + rest}, Steps: content.Steps{First: 1, Items: Steps(t.Mix)}},
			p.makeStocks(t.Mix),
			{Heading: "Tick off", Tables: []content.Table{p.ticks(t.Mix)}},
			{Heading: "Then measure", Lines: p.readings(t.Mix)},
			{Heading: "Pupils", Paragraphs: []string{"Pupils fill, stir, measure and write down. " + Pupils}},
		}}
		s.Sections = slices.DeleteFunc(s.Sections, func(x content.Section) bool { return x.Heading == "" })
		if table, ok := Hazards(t.Mix.Weigh); ok {
			s.Sections = append(s.Sections, content.Section{Heading: "The bags", Tables: []content.Table{table}})
		}
		out = append(out, s)
	}
	return out
}

// makeStocks is how stocks A and B are made; without a heading where the tub is
// mixed without.
func (p papers) makeStocks(m *garden.Mix) content.Section {
	k := m.Stocks
	if k == nil {
		return content.Section{}
	}
	volume := Litres(k.LitresEach, p.a.Plan.Units)
	step := func(letter string, tank garden.MixTank) string {
		var what []string
		for _, w := range tank.Weigh {
			what = append(what, Amount(w, p.a.Plan.Units))
		}
		return fmt.Sprintf("Stock %s: a bottle for %s, half full of warm water. Into it %s, one after the other, each dissolved before the next. Fill up to %s, close, shake, label.", letter, volume, List(what), volume)
	}
	return content.Section{Heading: "When a stock is empty, an adult makes a new one", Steps: content.Steps{First: 1, Items: []string{
		step("A", k.A), "Rinse bucket, spoon and funnel.", step("B", k.B),
		"Cloudy or with something white at the bottom: it is not used. Lock both up, apart from acid and bleach.",
	}}}
}

// ticks is what is measured out, with blanks for who weighed and who looked.
func (p papers) ticks(m *garden.Mix) content.Table {
	t := content.Table{Caption: "Two look at each number: the one who measures and the one who checks. Teams, never names", Columns: []content.Column{
		{Head: "what"}, {Head: "how much", Number: true}, {Head: "measured"}, {Head: "checked"},
	}}
	add := func(what, amount string) {
		t.Rows = append(t.Rows, []string{what, amount, content.Blank, content.Blank})
	}
	if AcidDose(m) {
		add(m.Acid.Name+", the day before", AcidToday(m, p.a.Plan.Units))
	}
	apart := map[string]bool{}
	if s := m.Stocks; s != nil {
		add("stock A", garden.PourWords(s.PourML, p.a.Plan.Units))
		add("stock B", garden.PourWords(s.PourML, p.a.Plan.Units))
		for _, name := range s.Apart {
			apart[name] = true
		}
	}
	for _, w := range m.Weigh {
		if m.Stocks == nil || apart[w.Name] {
			add(p.row(w))
		}
	}
	return t
}

// row is one fertiliser and how much of it, apart.
func (p papers) row(w garden.Weigh) (what, amount string) {
	switch {
	case w.Stock != nil:
		return "small stock of " + w.Name, garden.PourWords(w.Stock.PourML, p.a.Plan.Units)
	case w.Spoons != nil:
		return w.Name, fmt.Sprintf("%.0f level %s", *w.Spoons, w.Spoon)
	case w.Millilitres != nil:
		return w.Name, garden.PourWords(*w.Millilitres, p.a.Plan.Units)
	}
	return w.Name, Mass(w, p.a.Plan.Units)
}

// readings are the lines for what the meter and the strip then show.
func (p papers) readings(m *garden.Mix) []content.Line {
	var out []content.Line
	if m.Band != nil && p.a.Plan.Tools.EC != "none" {
		out = append(out, content.Line("EC should be "+m.ECRange()+". It was ____________ team ____________"))
	}
	ph := "pH after a night ____________ team ____________"
	if m.PHAfterSalts != nil {
		ph = fmt.Sprintf("pH after a night should be about %.1f. It was ____________ team ____________", *m.PHAfterSalts)
	}
	water := "litres"
	if p.a.Plan.Units == quantity.US {
		water = "gallons"
	}
	return append(out, content.Line(ph), content.Line("Mixed on ____________ for how many "+water+" ____________"))
}
