package pack

import (
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/booklet"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/shopping"
)

func (b *builder) shopping() {
	rows, total := buys(b.a)
	if len(rows) == 0 {
		return
	}
	read := sure(func(size scene.Size) content.Sheet { return booklet.ShoppingContent(b.cover, rows, total, size) })
	b.add(Paper{
		Name: "shopping.pdf", Title: "Shopping list", About: "What to buy, what to measure first, and what it costs where you gave prices.",
		Draw: func(size scene.Size) ([]byte, error) { return booklet.ShoppingList(b.cover, rows, total, size) },
		read: read,
	})
	b.add(Paper{
		Name: "shopping.csv", Title: "Shopping list as a table", About: "The same list for a spreadsheet.",
		Draw: unsized(func() ([]byte, error) { return shopping.CSV(b.a.Shopping, b.a.Plan.Currency) }),
		read: read,
	})
}

// buys are the lines of the shopping list as they are shown, and what is known
// of their sum; total is empty where no price is known.
func buys(a *garden.Assessment) (rows []booklet.Buy, total string) {
	sum, known := 0.0, false
	for _, i := range a.Shopping {
		row := booklet.Buy{
			Count: strings.TrimSpace(quantity.FormatNumber(i.Count, countDecimals(i)) + " " + i.Unit),
			What:  i.What, Size: i.Size, Measure: i.Measure,
		}
		if cost, ok := i.Total(); ok {
			row.Price = a.Money(cost)
			sum, known = sum+cost, true
		}
		rows = append(rows, row)
	}
	if known {
		total = a.Money(sum)
	}
	return rows, total
}

// countDecimals is none for pieces, one for what is measured out.
func countDecimals(i shopping.Item) int {
	if i.Count == float64(int(i.Count)) {
		return 0
	}
	return 1
}
