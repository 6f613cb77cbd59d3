// Package deciding sets the papers of the decision whether to buy or to build:
// the decision page, the budget, what to ask permission for, the caretaker's
// tags and the letter to parents.
package deciding

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/card"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// Cards are the papers of an assessment that was asked for garden.StageChoose;
// none without. The revision stands in the title blocks.
func Cards(a *garden.Assessment, revision string) []card.Card {
	if a.Choose == nil {
		return nil
	}
	p := papers{a: a, cover: sheet.CoverOf(a, revision)}
	out := []card.Card{
		{Name: "decision.pdf", Title: "Decision page", About: "Every offer beside building: what it feeds, lacks and costs, and the reasons.", Points: 12, Sheets: p.decision},
		{Name: "budget.pdf", Title: "Budget", About: "Line by line, with blanks where a price is missing.", Points: 12, Sheets: p.budget},
		{Name: "permission.pdf", Title: "Permission pack", About: "What to ask before anything is bought, and who decides.", Points: 12, Sheets: p.permission},
		{Name: "caretaker-tag.pdf", Title: "Caretaker's tags", About: "To cut out and hang on plug and tub: what it is, what not to do, whom to call.", Points: 13, Sheets: p.tags},
		{Name: "parents-letter.pdf", Title: "Letter to parents", About: "What the class grows and eats, with blanks for your own words and a slip to send back.", Points: 12, Sheets: p.letter},
	}
	for i := range out {
		out[i].Cover = p.cover
	}
	return out
}

// papers writes the papers of one assessment.
type papers struct {
	a     *garden.Assessment
	cover sheet.Lid
}

func (p papers) block(drawing string, paper scene.Size) content.Block {
	return p.cover.Block(drawing, paper)
}
