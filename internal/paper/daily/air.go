package daily

import (
	"fmt"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/paper/card"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// LightAndAir is the card that hangs at the shelf: how high the lamp goes, what
// light each hole gets, and how long the pump may be off, a page for each tub.
// ok is false where neither light nor air is known.
func LightAndAir(a *garden.Assessment, revision string) (c card.Card, ok bool) {
	p := papers{a: a, cover: sheet.CoverOf(a, revision)}
	for i := range a.Tubs {
		ok = ok || a.Tubs[i].Light != nil || a.Tubs[i].Oxygen != nil
	}
	return card.Card{
		Name: "light-and-air.pdf", Title: "Light and air", About: "For the shelf: how high the lamp goes, what light each hole gets, and how long the pump may be off.",
		Points: 13, Sheets: p.lightAndAir, Cover: p.cover,
	}, ok
}

func (p papers) lightAndAir(paper scene.Size) []content.Sheet {
	var out []content.Sheet
	for i := range p.a.Tubs {
		t := &p.a.Tubs[i]
		if t.Light == nil && t.Oxygen == nil {
			continue
		}
		title := "Light and air: " + t.Name
		s := content.Sheet{Title: title, Block: p.block(title, paper)}
		if t.Light != nil {
			s.Sections = append(s.Sections, p.lamp(i)...)
		}
		if t.Oxygen != nil {
			const off = "Pump off from __________ to __________ team __________"
			s.Sections = append(s.Sections, content.Section{Heading: "The air", Paragraphs: []string{strings.Join(p.a.AirWords(i), " ")}},
				content.Section{Heading: "Quiet lessons", Lines: []content.Line{off, off, off}})
		}
		out = append(out, s)
	}
	return out
}

// lamp is how high it goes and what each hole gets.
func (p papers) lamp(tub int) []content.Section {
	l := p.a.Tubs[tub].Light
	hung := content.Section{Heading: "The lamp", Cautions: garden.LampCautions(), Paragraphs: []string{strings.Join(p.a.LightWords(tub), " ")}}
	if heights := p.a.LampHeights(tub); len(heights) > 0 {
		t := content.Table{Caption: "Measure from the lid, every week", Columns: []content.Column{{Head: "leaves up to", Number: true}, {Head: "lamp at, or higher", Number: true}, {Head: "done on"}}}
		for _, h := range heights {
			t.Rows = append(t.Rows, []string{p.length(h.LeavesMM), p.length(h.LampMM), content.Blank})
		}
		hung.Tables = append(hung.Tables, t)
	}
	holes := content.Table{Caption: "Does more light make a taller plant? Measure and see", Columns: []content.Column{
		{Head: "hole"}, {Head: "µmol/m²/s", Number: true}, {Head: "mol/m² a day", Number: true}, {Head: "height on"}, {Head: "height on"},
	}}
	for _, h := range l.PPFD {
		holes.Rows = append(holes.Rows, []string{fmt.Sprint(h.N), fmt.Sprintf("%.0f", h.PPFD), strings.TrimSuffix(fmt.Sprintf("%.1f", h.DLI), ".0"), content.Blank, content.Blank})
	}
	return []content.Section{hung, {Heading: "Light at every hole", Tables: []content.Table{holes}}}
}

func (p papers) length(mm float64) string { return garden.Mark(mm, p.a.Plan.Units) }
