// Package care sets the sheet for when something is wrong at a tub, and the
// card of the day on which the class eats.
package care

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/card"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
	"rootbell/internal/school/meal"
	"rootbell/internal/school/trouble"
)

// Cards are the two papers. The revision stands in the title blocks.
func Cards(a *garden.Assessment, revision string) []card.Card {
	p := papers{a: a, cover: sheet.CoverOf(a, revision)}
	return []card.Card{
		{Name: "trouble-sheet.pdf", Title: "Something is wrong", About: "What is seen, what it may be, and the first safe step.", Points: 12, Cover: p.cover, Sheets: p.trouble},
		{Name: "meal-card.pdf", Title: "Meal card", About: "What is asked before anybody eats, who decides, and what is done in which order.", Points: 13, Cover: p.cover, Sheets: p.meal},
	}
}

type papers struct {
	a     *garden.Assessment
	cover sheet.Lid
}

// trouble is a table for the wall: without a screen the surest sign leads to a
// cause.
func (p papers) trouble(paper scene.Size) []content.Sheet {
	const title = "Something is wrong"
	s := content.Sheet{Title: title, Block: p.cover.Block(title, paper)}
	var dangers []string
	for _, sign := range trouble.Signs() {
		if sign.Place != trouble.Danger {
			continue
		}
		for _, d := range trouble.Diagnose(trouble.Ask{Seen: []string{sign.ID}}).Danger {
			dangers = append(dangers, sign.Words+". "+d.Do+" Call: "+d.Call+".")
		}
	}
	s.Sections = append(s.Sections, content.Section{Heading: "Before everything else", Cautions: dangers})
	for _, place := range trouble.Places()[1:] {
		t := content.Table{Caption: "What you see, what it may be, and the first safe step", Wordy: true, Columns: []content.Column{{Head: "what you see"}, {Head: "what it may be, and the first step"}}}
		for _, sign := range trouble.Signs() {
			if sign.Place == place {
				t.Rows = append(t.Rows, row(sign))
			}
		}
		s.Sections = append(s.Sections, content.Section{Heading: heading(place), Tables: []content.Table{t}})
	}
	s.Sections = append(s.Sections, content.Section{Heading: "Always", Paragraphs: []string{
		"Nothing is poured in, sprayed or added on a guess. Where two signs point to two causes, write it down, measure, and look again tomorrow.",
	}})
	return []content.Sheet{s}
}

func heading(p trouble.Place) string {
	words := string(p)
	return string(words[0]&^0x20) + words[1:]
}

func lower(words string) string { return string(words[0]|0x20) + words[1:] }

// row is a sign with the cause that it speaks for most.
func row(sign trouble.Sign) []string {
	a := trouble.Diagnose(trouble.Ask{Seen: []string{sign.ID}})
	if len(a.Causes) == 0 {
		return []string{sign.Words, "Not enough to say. " + a.First}
	}
	name := a.Causes[0].Name
	if !a.Enough {
		name = "One sign is not enough. Often: " + name
	}
	return []string{sign.Words, name + " First: " + lower(a.Causes[0].First)}
}

// meal is the card of the day on which the class eats.
func (p papers) meal(paper scene.Size) []content.Sheet {
	const title, before = "Meal card", "Meal card: before"
	gates := content.Table{Caption: "No line without its answer: nobody eats before", Wordy: true, Columns: []content.Column{{Head: "asked"}, {Head: "what follows"}}}
	for _, g := range meal.Gates() {
		gates.Rows = append(gates.Rows, []string{g.Asks, "It has to be " + string(g.Good) + ". Else: " + lower(g.Closed) + " Decides: " + g.Who + "."})
	}
	var steps []string
	for _, s := range meal.Steps(p.a.ColdWords()) {
		words := s.Do
		if s.Why != "" {
			words += " " + s.Why
		}
		steps = append(steps, words)
	}
	return []content.Sheet{{Title: before, Block: p.cover.Block(before, paper), Sections: []content.Section{
		{Heading: "Asked of somebody who knows", Tables: []content.Table{gates}, Paragraphs: []string{"No name and no illness is written on this card. Nothing here approves food: the people named decide, by the rules of the place."}},
	}}, {Title: title, Block: p.cover.Block(title, paper), Sections: []content.Section{
		{Heading: "On the day, in order", Steps: content.Steps{First: 1, Items: steps}},
		{Heading: "Written down", Lines: []content.Line{"Weighed ____________ eaten ____________ not eaten ____________"}, Paragraphs: []string{meal.Counts}},
	}}}
}
