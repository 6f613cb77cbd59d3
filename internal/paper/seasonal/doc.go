// Package seasonal sets the papers of a crop's season: the wall calendar, what
// to do before nobody comes, the cards for a visitor, for sowing and for the day
// of the move, labels for the seedlings, and the same days for a calendar
// program.
package seasonal

import (
	"slices"

	"rootbell/internal/garden"
	"rootbell/internal/paper/card"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// Cards are the papers of an assessment that was asked for its season, in the
// order in which they are told; none where no tub's season could be worked out.
// The revision stands in the title blocks.
func Cards(a *garden.Assessment, revision string) []card.Card {
	p := papersOf(a, revision)
	if len(p.tubs) == 0 {
		return nil
	}
	out := []card.Card{
		{Name: "wall-calendar.pdf", Title: "Wall calendar", About: "The term on one page: what is done on which day, and when nobody comes.", Points: 14, Sheets: p.calendar, Drawn: p.drawnCalendar},
		{Name: "visitor-card.pdf", Title: "Visitor card", About: "For whoever looks in once while nobody else comes: how much plain water, up to which line, and when.", Points: 14, Sheets: p.visitor},
		{Name: "seed-labels.pdf", Title: "Seed labels", About: "To cut out and put beside each seedling: what it is, when it was sown, when it moves.", Points: 11, Sheets: p.labels, Drawn: p.drawnLabels},
	}
	if len(p.visits()) == 0 {
		out = slices.Delete(out, 1, 2)
	}
	for _, i := range p.tubs {
		name, slug := a.Tubs[i].Name, garden.Slug(a.Tubs[i].Name)
		out = append(
			out,
			card.Card{Name: "sowing-" + slug + ".pdf", Title: "Sowing sheet: " + name, About: "How many seeds, how deep, on which day, and when they are thinned.", Points: 13, Sheets: p.of(p.sowing, i)},
			card.Card{Name: "move-day-" + slug + ".pdf", Title: "Move-day sheet: " + name, About: "For the day on which the seedlings move into the tub.", Points: 13, Sheets: p.of(p.moveDay, i)},
		)
		if len(p.a.Tubs[i].Season.Closed) > 0 {
			out = append(out, card.Card{Name: "leave-it-" + slug + ".pdf", Title: "Leave-it sheets: " + name, About: "What to do before nobody comes, to tick off in order, a page for each closed stretch.", Points: 13, Sheets: p.of(p.leaveIt, i)})
		}
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
	tubs  []int // whose season is worked out
}

func papersOf(a *garden.Assessment, revision string) papers {
	p := papers{a: a, cover: sheet.CoverOf(a, revision)}
	for i := range a.Tubs {
		if a.Tubs[i].Season != nil {
			p.tubs = append(p.tubs, i)
		}
	}
	return p
}

func (p papers) block(drawing string, paper scene.Size) content.Block {
	return p.cover.Block(drawing, paper)
}

// of is a paper of one tub.
func (p papers) of(sheets func(int, scene.Size) []content.Sheet, tub int) func(scene.Size) []content.Sheet {
	return func(size scene.Size) []content.Sheet { return sheets(tub, size) }
}
