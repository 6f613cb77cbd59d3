package booklet

import (
	"rootbell/internal/paper/scene"
)

// Buy is one line of the shopping list, in words as they are shown.
type Buy struct {
	Count   string // '9', '0.6 L'
	What    string
	Size    string
	Measure string // what to measure before buying; may be empty
	Price   string // of all of it; empty where the teacher gave none
}

// ShoppingList is the list of what the design needs, to take to the shop:
// boxes to tick, sizes, and what to measure before buying. total is what is
// known of the cost, empty where no price is.
func ShoppingList(c Cover, list []Buy, total string, paper scene.Size) ([]byte, error) {
	press := scene.NewPress("Shopping list: "+c.Garden, c.On)
	for _, page := range layShopping(c, list, total, paper) {
		press.Page(paper).Draw(page.elements...)
	}
	return press.Bytes()
}

func layShopping(c Cover, list []Buy, total string, paper scene.Size) []laid {
	var pages []laid
	for first := true; first || len(list) > 0; first = false {
		page := laid{fits: true, elements: c.titleBlock(shoppingTitle, paper)}
		column := scene.NewColumn(body(paper))
		headOf(column, shoppingTitle)
		if first {
			style := scene.Style{Face: scene.Serif, SizeMM: 11 * scene.PointMM, Leading: 1.25}
			column.Text(style, buyWords)
			column.Gap(2)
		}
		for len(list) > 0 && column.Left() > buyMM(list[0], column)+shoppingFootMM {
			buyLine(column, list[0])
			list = list[1:]
		}
		if len(list) == 0 && total != "" {
			column.Gap(2)
			column.Text(scene.Style{Face: scene.SansBold, SizeMM: 11 * scene.PointMM}, togetherWords(total))
		}
		page.add(column)
		pages = append(pages, page)
		if len(pages) > 20 {
			break // a line that no page holds is left out rather than looped on
		}
	}
	return pages
}

// shoppingFootMM keeps room for the sum under the last line.
const shoppingFootMM = 9

const (
	buyPoints  = 10.5
	notePoints = 9
	tickMM     = 3.6
	countMM    = 19
	priceMM    = 26
)

func buyStyles() (what, note scene.Style) {
	what = scene.Style{Face: scene.Sans, SizeMM: buyPoints * scene.PointMM, Indent: tickMM + countMM}
	note = scene.Style{Face: scene.Sans, SizeMM: notePoints * scene.PointMM, Indent: tickMM + countMM}
	return what, note
}

func buyMM(b Buy, column *scene.Column) float64 {
	trial := scene.NewColumn(scene.Box{Min: scene.Point{X: column.Box.Min.X}, Max: scene.Point{X: column.Box.Max.X, Y: 400}})
	buyLine(trial, b)
	return 400 - trial.Left()
}

// buyLine lays one item: a box to tick, how many, what, and its price.
func buyLine(column *scene.Column, b Buy) {
	what, note := buyStyles()
	top := column.Box.Min.Y + column.Left()
	full := column.Box
	column.Box.Max.X -= priceMM
	column.Text(what, b.What)
	if text := b.notes(); text != "" {
		column.Text(note, text)
	}
	column.Box.Max.X = full.Max.X
	base := top - what.SizeMM*1.05
	column.Elements = append(
		column.Elements,
		scene.Shape{Path: scene.Rectangle(scene.BoxAt(scene.Point{X: full.Min.X, Y: top - tickMM - 0.4}, tickMM, tickMM)), Class: scene.Part},
		scene.Text{At: scene.Point{X: full.Min.X + tickMM + countMM - 3, Y: base}, Text: scene.SansBold.Fitted(b.Count, what.SizeMM, countMM-4), SizeMM: what.SizeMM, Face: scene.SansBold, Anchor: scene.End},
	)
	if b.Price != "" {
		column.Elements = append(column.Elements, scene.Text{At: scene.Point{X: full.Max.X, Y: base}, Text: b.Price, SizeMM: what.SizeMM, Anchor: scene.End})
	}
	column.Gap(0.6)
	column.Rule(scene.Thin, 0.8)
}
