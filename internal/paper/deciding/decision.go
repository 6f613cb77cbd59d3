package deciding

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// decision is one sheet: the answer, the options side by side, then each with
// its holes and its reasons.
func (p papers) decision(paper scene.Size) []content.Sheet {
	c := p.a.Choose
	bold, rest := c.Answer(p.a)
	s := content.Sheet{Title: "Buy or build", Block: p.block("Decision page", paper), Sections: []content.Section{
		{Heading: "In short", Paragraphs: []string{bold + " " + rest}, Tables: []content.Table{p.side()}},
	}}
	for i := range c.Offers {
		s.Sections = append(s.Sections, p.option(&c.Offers[i]))
	}
	if needs, same := CommonNeeds(c); same {
		each := content.Section{Heading: "Whatever is chosen, it needs"}
		for _, words := range needs {
			each.List = append(each.List, Upper(words)+".")
		}
		s.Sections = append(s.Sections, each)
	}
	if t, ok := p.sizes(); ok {
		s.Sections = append(s.Sections, content.Section{Heading: "One big tub or several small ones", Tables: []content.Table{t}, Paragraphs: []string{
			"More tubs are lighter, and one that fails costs fewer plants. Each wants its own pump, and its own minutes each week.",
		}})
	}
	if len(c.Senses) > 0 {
		more := content.Section{Heading: "What would change the order"}
		for _, one := range c.Senses {
			more.List = append(more.List, one.Says)
		}
		s.Sections = append(s.Sections, more)
	}
	s.Sections = append(s.Sections, content.Section{Heading: "Decided", Lines: []content.Line{"We take ____________________ because ________________________________", "Decided on ____________ Paid from ____________________"}})
	return []content.Sheet{s}
}

// side sets the options side by side.
func (p papers) side() content.Table {
	n := p.a.Choose.Crops
	t := content.Table{Caption: p.moneyHead(AmountNote), Columns: []content.Column{
		{Head: "option"}, {Head: "plants", Number: true}, {Head: "first crop", Number: true}, {Head: strconv.Itoa(n) + " crops", Number: true}, {Head: "a plant", Number: true}, {Head: "harvested", Number: true}, {Head: "a serving", Number: true},
	}}
	for i := range p.a.Choose.Offers {
		o := &p.a.Choose.Offers[i]
		t.Rows = append(t.Rows, []string{o.Name, Plants(o), Amount(o, o.FirstCrop), Amount(o, o.Total), Amount(o, o.PerPlanted), Amount(o, o.PerHarvested), Amount(o, o.PerServing)})
	}
	return t
}

func (p papers) moneyHead(words string) string {
	if p.a.Plan.Currency == "" {
		return words
	}
	return "In " + p.a.Plan.Currency + ". " + words
}

// Plants is how many plants an option takes; '–' where that is not known.
func Plants(o *garden.ChooseOffer) string {
	if !o.Counted() {
		return "–"
	}
	return strconv.Itoa(o.PlantSites)
}

// AmountNote says what the signs beside amounts mean.
const AmountNote = "A + behind an amount: not all of it has a price, so it is more. A dash: too few prices are told"

// Amount is one of an option's amounts, with a + where it is more; '–' where
// too few prices are told for it to say anything.
func Amount(o *garden.ChooseOffer, v *float64) string {
	if v == nil || !o.Tells() {
		return "–"
	}
	text := quantity.FormatNumber(*v, 2)
	if !o.Priced {
		text += "+"
	}
	return text
}

// option is one option with its reasons.
func (p papers) option(o *garden.ChooseOffer) content.Section {
	s := content.Section{Heading: Upper(o.Name)}
	if !o.Possible {
		s.Cautions = append(s.Cautions, "Not possible yet: "+strings.Join(o.NotYet, "; ")+".")
	}
	if !o.ForFood {
		s.Cautions = append(s.Cautions, "Not for food: "+o.NotFood+".")
	}
	s.Paragraphs = append(s.Paragraphs, o.Feeds(p.a))
	if which := o.Which(p.a); which != "" {
		s.Paragraphs = append(s.Paragraphs, which)
	}
	if f, ok := HolesFigure(p.a, o); ok {
		s.Figures = append(s.Figures, f)
	}
	for _, words := range For(o) {
		s.List = append(s.List, "For: "+words)
	}
	for _, words := range Against(o) {
		s.List = append(s.List, "Against: "+words)
	}
	if _, same := CommonNeeds(p.a.Choose); !same {
		for _, words := range o.Needs {
			s.List = append(s.List, "Needs "+words+".")
		}
	}
	if n := len(o.Unknown); n > 0 && n <= mostNamed {
		s.List = append(s.List, "Without a price: "+strings.Join(o.Unknown, "; ")+".")
	} else if n > 0 {
		s.List = append(s.List, fmt.Sprintf("The %d lines without a price stand in the budget, each with a blank.", n))
	}
	return s
}

// mostNamed is how many things without a price a page names; more stand in the
// budget alone.
const mostNamed = 8

// CommonNeeds are what every option needs at its place, where they all need the
// same.
func CommonNeeds(c *garden.Choose) (needs []string, same bool) {
	for i := range c.Offers {
		if i > 0 && !slices.Equal(c.Offers[i].Needs, needs) {
			return nil, false
		}
		needs = c.Offers[i].Needs
	}
	return needs, len(needs) > 0
}

// For and Against are an option's reasons, without what stands above them
// already.
func For(o *garden.ChooseOffer) []string { return o.For }

// Against leaves out what is a caution of its own.
func Against(o *garden.ChooseOffer) []string {
	var out []string
	for _, words := range o.Against {
		if !strings.HasPrefix(words, "Not possible yet: ") && !strings.HasPrefix(words, "Not for food: ") {
			out = append(out, words)
		}
	}
	return out
}

// Upper begins with a capital letter.
func Upper(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

func (p papers) sizes() (content.Table, bool) {
	t := content.Table{Caption: "The plan's water in so many tubs", Columns: []content.Column{
		{Head: "how"}, {Head: "tubs", Number: true}, {Head: "in one", Number: true}, {Head: "its mass", Number: true}, {Head: "pumps", Number: true}, {Head: "a failure costs", Number: true},
	}}
	for _, s := range p.a.Choose.Sizes {
		t.Rows = append(t.Rows, []string{s.Words, strconv.Itoa(s.Tubs), s.Litres, s.Mass, strconv.Itoa(s.Pumps), fmt.Sprintf("%d plants", s.Lost)})
	}
	return t, len(t.Rows) > 1
}
