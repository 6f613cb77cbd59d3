// Package mixing sets the papers of the day on which a tub is filled with
// nutrient solution: what to weigh and pour, labels for what is kept, the dose
// table for the wall, and the cards for acid and bleach.
package mixing

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/card"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// Cards are the papers of an assessment that was asked for its mix, in the order
// in which they are told; none where no tub could be mixed for. The revision
// stands in the title blocks.
func Cards(a *garden.Assessment, revision string) []card.Card {
	p := papers{a: a, cover: sheet.CoverOf(a, revision)}
	for i := range a.Tubs {
		if a.Tubs[i].Mix != nil {
			p.tubs = append(p.tubs, i)
		}
	}
	var out []card.Card
	add := func(c card.Card) {
		c.Cover = p.cover
		out = append(out, c)
	}
	if len(p.tubs) > 0 {
		add(card.Card{Name: "mixing-card.pdf", Title: "Mixing card", About: "What to weigh, what to pour and in which order, a page for each tub.", Points: 13, Sheets: p.mixing})
		add(card.Card{Name: "dose-table.pdf", Title: "Dose table", About: "For the wall: how much for so many litres, and what the meter then shows.", Points: 14, Sheets: p.doses})
		add(card.Card{Name: "bottle-labels.pdf", Title: "Bottle labels", About: "To cut out: what is in it, how strong, since when, and how long it keeps.", Points: 12, Sheets: p.labels})
	}
	if p.acid() {
		add(card.Card{Name: "acid-card.pdf", Title: "Acid card", About: "For the adult who brings the acid into the water, the day before.", Points: 13, Sheets: p.acids})
	}
	if p.cleans() {
		add(card.Card{Name: "clean-down-card.pdf", Title: "Clean-down card", About: "For the adult who cleans an empty tub with bleach, between two crops.", Points: 13, Sheets: p.clean})
	}
	add(card.Card{Name: "water-letter.pdf", Title: "Letter to the water company", About: "What to ask for, with blanks for the answers.", Points: 12, Sheets: p.letter})
	return out
}

// papers writes the papers of one assessment.
type papers struct {
	a     *garden.Assessment
	cover sheet.Lid
	tubs  []int // that are mixed for
}

func (p papers) block(drawing string, paper scene.Size) content.Block {
	return p.cover.Block(drawing, paper)
}

func (p papers) acid() bool {
	for _, i := range p.tubs {
		if AcidDose(p.a.Tubs[i].Mix) {
			return true
		}
	}
	return false
}

func (p papers) cleans() bool {
	for _, i := range p.tubs {
		if p.a.Tubs[i].Mix.Clean != nil {
			return true
		}
	}
	return false
}
