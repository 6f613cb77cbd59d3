package deciding

import (
	"fmt"
	"strconv"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/choose"
)

// partWords are the parts of a budget as they are headed.
var partWords = []struct{ Part, Words string }{
	{choose.Once, "Once"},
	{choose.EachCrop, "For each crop"},
	{choose.Replaced, "What wears out in that time"},
}

// rowsATable is how many lines stand in one table, so that it fits a page.
const rowsATable = 14

// budget is a sheet for each option.
func (p papers) budget(paper scene.Size) []content.Sheet {
	var out []content.Sheet
	for i := range p.a.Choose.Offers {
		o := &p.a.Choose.Offers[i]
		s := content.Sheet{Title: "Budget: " + o.Name, Block: p.block("Budget", paper), Sections: p.together(o)}
		for _, part := range partWords {
			section := content.Section{Heading: part.Words, Tables: p.tables(o, part.Part)}
			if len(section.Tables) > 0 {
				s.Sections = append(s.Sections, section)
			}
		}
		out = append(out, s)
	}
	return out
}

// tables are the lines of one part.
func (p papers) tables(o *garden.ChooseOffer, part string) []content.Table {
	var out []content.Table
	for _, l := range o.Budget {
		if l.Part != part {
			continue
		}
		if len(out) == 0 || len(out[len(out)-1].Rows) == rowsATable {
			caption := p.moneyHead("A blank is a price that nobody has told yet")
			if len(out) > 0 {
				caption = "Continued"
			}
			out = append(out, content.Table{Caption: caption, Columns: []content.Column{{Head: "what"}, {Head: "how many", Number: true}, {Head: "price of one", Number: true}, {Head: "comes to", Number: true}}})
		}
		last := &out[len(out)-1]
		last.Rows = append(last.Rows, []string{LineName(l), countWords(l), priceCell(l.Price), priceCell(l.Cost)})
	}
	return out
}

// LineName is what a line of a budget is called, with its size.
func LineName(l garden.BudgetLine) string {
	name := choose.Short(l.What)
	if l.Size != "" && len(name)+len(l.Size) < 34 {
		name += ", " + l.Size
	}
	return name
}

func countWords(l garden.BudgetLine) string {
	decimals := 0
	if l.Count != float64(int(l.Count)) {
		decimals = 1
	}
	return strings.TrimSpace(quantity.FormatNumber(l.Count, decimals) + " " + l.Unit)
}

func priceCell(v *float64) string {
	if v == nil {
		return content.Blank
	}
	return quantity.FormatNumber(*v, 2)
}

// together are the sums.
func (p papers) together(o *garden.ChooseOffer) []content.Section {
	n := p.a.Choose.Crops
	s := content.Section{Heading: "Together"}
	t := content.Table{Caption: p.moneyHead("As far as priced"), Columns: []content.Column{{Head: "what"}, {Head: "amount", Number: true}}}
	add := func(what string, v *float64) {
		text := "–"
		if v != nil {
			text = quantity.FormatNumber(*v, 2)
		}
		if v != nil && !o.Priced {
			text += "+"
		}
		t.Rows = append(t.Rows, []string{what, text})
	}
	add("first outlay", o.FirstOutlay)
	add("each crop", o.EachCrop)
	add("replacements in "+strconv.Itoa(n)+" crops", o.Replacements)
	add("first outlay with the first crop", o.FirstCrop)
	add("all "+strconv.Itoa(n)+" crops", o.Total)
	add(fmt.Sprintf("each of %d plants moved in", o.Planted), o.PerPlanted)
	add(fmt.Sprintf("each of %s plants harvested", quantity.FormatNumber(o.Harvested, 1)), o.PerHarvested)
	if o.PerServing != nil {
		add("each serving", o.PerServing)
	}
	s.Tables = []content.Table{t}
	notes := content.Section{Heading: "How it is counted"}
	if k := len(o.Unknown); k > 0 {
		notes.Paragraphs = append(notes.Paragraphs, fmt.Sprintf("%s without a price, which the sums leave out. They are never guessed.", counted(k, "line is", "lines are")))
	}
	if o.KWhACrop != nil {
		notes.Paragraphs = append(notes.Paragraphs, fmt.Sprintf("Electricity: about %s kWh for a crop.", quantity.FormatNumber(*o.KWhACrop, 1)))
	}
	notes.Paragraphs = append(notes.Paragraphs, "Of the plants moved in, "+quantity.Format(quantity.Share, p.a.Choose.Harvested, quantity.Metric)+" are taken to reach the harvest (common practice, no source). Count your own.")
	return []content.Section{s, notes}
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}
