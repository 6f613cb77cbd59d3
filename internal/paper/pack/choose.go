package pack

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/deciding"
)

// Choose lists the papers of the decision, for an assessment that was asked for
// garden.StageChoose.
func Choose(a *garden.Assessment) []Paper { return ChooseOf(a, "") }

// ChooseOf is Choose for a revision of the plan.
func ChooseOf(a *garden.Assessment, revision string) []Paper {
	b := builder{a: a}
	for _, c := range deciding.Cards(a, revision) {
		b.card(c, "")
		if c.Name != "budget.pdf" {
			continue
		}
		b.add(Paper{
			Name: "budget.csv", Title: "Budget as a table", About: "Every line of every option, to paste in a form.",
			Draw: unsized(func() ([]byte, error) { return deciding.BudgetCSV(a) }), read: readOf(c),
		})
		b.add(Paper{
			Name: "budget.xlsx", Title: "Budget as a workbook", About: "The same for a spreadsheet: fill in a price, and the sums follow.",
			Draw: unsized(func() ([]byte, error) { return deciding.BudgetXLSX(a) }), read: readOf(c),
		})
	}
	return b.papers
}
