// Package classroom sets the papers of the class: the rota for the wall, cards
// for jobs and stations in pupils' words, slips for who adopts which hole, and
// what is handed on: the report, the next teacher's pack, the cards for the end
// and the start of a year.
package classroom

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/card"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
	"rootbell/internal/school/plainwords"
)

// Cards are the papers of an assessment that was asked for its class, in the
// order in which they are told; none where it was not. The revision stands in
// the title blocks.
func Cards(a *garden.Assessment, revision string) []card.Card {
	if a.Class == nil {
		return nil
	}
	p := papers{
		a: a, c: a.Class, band: plainwords.BandAt(a.Class.Youngest),
		cover: sheet.CoverOf(a, revision),
	}
	var out []card.Card
	add := func(c card.Card) {
		c.Cover = p.cover
		out = append(out, c)
	}
	if len(p.c.Rota) > 0 {
		add(card.Card{Name: "rota.pdf", Title: "Rota", About: "For the wall: who has which job in which week of the term.", Points: 14, Sheets: p.rota})
	}
	if len(p.c.Jobs) > 0 {
		add(card.Card{Name: "job-cards.pdf", Title: "Job cards", About: "To cut out, one for each job, in pupils' words.", Points: 13, Sheets: p.jobCards})
	}
	if p.c.Lesson != nil {
		add(card.Card{Name: "station-cards.pdf", Title: "Station cards", About: "A whole class at the tubs for ten minutes: a plan for you, a card for each station.", Points: 13, Sheets: p.stations})
		add(card.Card{Name: "adopt-a-hole.pdf", Title: "Adopt a hole", About: "Slips to cut out: each pair looks after one hole, or a jar beside the tub.", Points: 12, Sheets: p.slips})
	}
	add(card.Card{Name: "report.pdf", Title: "Report", About: "One page for who paid for it: grown, spent, learned.", Points: 12, Sheets: p.report})
	add(card.Card{Name: "hand-over.pdf", Title: "Hand-over pack", About: "For the next teacher: the plan in short, where things stand, what comes next.", Points: 12, Sheets: p.handOver})
	add(card.Card{Name: "lay-up-card.pdf", Title: "Lay-up card", About: "End of the year: emptied, cleaned, dry, and put away.", Points: 13, Sheets: p.layUp})
	add(card.Card{Name: "start-up-card.pdf", Title: "Start-up card", About: "Start of the year: what is looked at before water goes in.", Points: 13, Sheets: p.startUp})
	return out
}

// papers writes the papers of one assessment.
type papers struct {
	a     *garden.Assessment
	c     *garden.Class
	band  plainwords.Band
	cover sheet.Lid
}

func (p papers) block(drawing string, paper scene.Size) content.Block {
	return p.cover.Block(drawing, paper)
}

// young tells whether the words are for the youngest readers.
func (p papers) young() bool { return p.band.Name == "K-2" }

// aerated tells whether a pump bubbles in any tub.
func (p papers) aerated() bool {
	for _, t := range p.a.Plan.Tubs {
		if t.Method != "still" {
			return true
		}
	}
	return false
}
