package pack

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/deciding"
	"rootbell/internal/paper/scene"
)

// Choose lists the papers of the decision, for an assessment that was asked for
// garden.StageChoose.
func Choose(a *garden.Assessment) []Paper { return ChooseOf(a, "") }

// ChooseOf is Choose for a revision of the plan.
func ChooseOf(a *garden.Assessment, revision string) []Paper {
	b := builder{a: a}
	for _, c := range deciding.Cards(a, revision) {
		read := func(size scene.Size) ([]content.Sheet, error) { return c.Sheets(size), nil }
		b.add(Paper{Name: c.Name, Title: c.Title, About: c.About, Draw: c.PDF, read: read})
		if c.Name != "budget.pdf" {
			continue
		}
		b.add(Paper{
			Name: "budget.csv", Title: "Budget as a table", About: "Every line of every option, to paste in a form.",
			Draw: unsized(func() ([]byte, error) { return deciding.BudgetCSV(a) }), read: read,
		})
		b.add(Paper{
			Name: "budget.xlsx", Title: "Budget as a workbook", About: "The same for a spreadsheet: fill in a price, and the sums follow.",
			Draw: unsized(func() ([]byte, error) { return deciding.BudgetXLSX(a) }), read: read,
		})
	}
	return b.papers
}
