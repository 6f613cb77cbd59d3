package booklet

import (
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

const (
	shoppingTitle = "Shopping list"
	buyWords      = "Measure before you buy: printed sizes are names, not measures. Take the ruler along. Prices are your own; where a line has none, none was given."
)

// ShoppingContent is what the shopping list says.
func ShoppingContent(c Cover, list []Buy, total string, paper scene.Size) content.Sheet {
	t := content.Table{Caption: "What to buy", Wordy: true, Columns: []content.Column{
		{Head: "what"}, {Head: "how many", Number: true}, {Head: "size, and what to measure"}, {Head: "price", Number: true},
	}}
	for _, b := range list {
		t.Rows = append(t.Rows, []string{b.What, b.Count, b.notes(), b.Price})
	}
	s := content.Sheet{Title: shoppingTitle, Block: c.block(shoppingTitle, paper), Sections: []content.Section{
		{Heading: "To the shop", Paragraphs: []string{buyWords}, Tables: []content.Table{t}},
	}}
	if total != "" {
		s.Sections[0].List = []string{togetherWords(total)}
	}
	return s
}

func togetherWords(total string) string { return "Together, where prices are known: " + total }

// notes are the second line of an item: its size, and what to measure.
func (b Buy) notes() string {
	text := b.Size
	if b.Measure != "" {
		if text != "" {
			text += ". "
		}
		text += "Measure: " + b.Measure
	}
	return text
}
