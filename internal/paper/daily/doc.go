// Package daily sets the papers that hang or lie at the tub: what is due today,
// and the cards for the days on which something is different.
package daily

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/card"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// Cards are the papers of an assessment at the tub, in the order in which they
// are told. The revision stands in the title blocks.
func Cards(a *garden.Assessment, revision string) []card.Card {
	if a.Today == nil {
		return nil
	}
	p := papers{a: a, cover: sheet.CoverOf(a, revision)}
	out := []card.Card{
		{Name: "today.pdf", Title: "Today, " + a.Today.Day(a), About: "What is due, for whoever takes the class.", Points: 14, Sheets: p.today},
		{Name: "return-card.pdf", Title: "Return card", About: "For the first day after a break, or after a power cut.", Points: 13, Sheets: p.back},
		{Name: "puddle-card.pdf", Title: "Puddle card", About: "What to do when there is water on the floor.", Points: 19, Sheets: p.puddle},
		{Name: "change-out-card.pdf", Title: "Change-out card", About: "How the water of a tub is changed, with how heavy it is and how often one walks.", Points: 13, Sheets: p.changeOut},
		{Name: "meter-passport.pdf", Title: "Meter passport", About: "When each meter was calibrated, and how old its bottles are.", Points: 12, Sheets: p.passport},
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
