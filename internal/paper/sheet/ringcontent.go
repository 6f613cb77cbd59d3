package sheet

import (
	"fmt"

	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// RingsContent is what the paper of a lid's numbered rings says. It fails when
// the lid cannot be drawn.
func RingsContent(l Lid, paper scene.Size) (content.Sheet, error) {
	if err := l.Check(paper); err != nil {
		return content.Sheet{}, err
	}
	s := content.Sheet{Title: l.ringTitle(), Block: l.Block(l.ringTitle(), paper), Stop: StopWords(l.Stop)}
	r, none := RingsOf(l, paper)
	if none != nil {
		s.Sections = []content.Section{{Heading: "Why there are none", Paragraphs: []string{noRings(none)}}}
		return s, nil
	}
	s.Sections = []content.Section{
		{Heading: "In order", Paragraphs: []string{"The bars on the sheet are " + barWords + ", and " + barInWords + "."}, Steps: content.Steps{First: 1, Items: l.ringSteps()}},
		{Heading: "One ring", Figures: []content.Figure{l.ringFigure(r)}},
		{Heading: "Which ring goes where", Tables: []content.Table{l.ringTable()}},
	}
	return s, nil
}

func (l Lid) ringTitle() string { return "Numbered rings for " + l.Tub }

func noRings(why error) string { return "No rings: " + why.Error() + "." }

// ringFigure is the first ring, as the others are but for its number.
func (l Lid) ringFigure(r Rings) content.Figure {
	first := l.Holes[0].N
	unit := " " + UnitName(l.System)
	desc := fmt.Sprintf("A ring %s wide inside and %s outside, with the number %d and the name %s on it.",
		l.mark(r.InnerMM)+unit, l.mark(r.OuterMM)+unit, first, l.Tub)
	elements := l.ring(r, scene.Point{}, first)
	return content.FigureOf("Ring "+itoa(first), desc+" "+content.NotToScale, desc, scene.Bounds(elements).Grown(2), elements)
}

// ringTable is each ring with its tub and the place of its hole.
func (l Lid) ringTable() content.Table {
	t := content.Table{
		Caption: "Rings by their holes, " + UnitWord(l.System) + " from the lower left corner of the lid",
		Columns: []content.Column{{Head: "ring"}, {Head: "tub"}, {Head: "right", Number: true}, {Head: "up", Number: true}},
	}
	for _, h := range l.Holes {
		t.Rows = append(t.Rows, []string{itoa(h.N), l.Tub, l.mark(h.XMM), l.mark(h.YMM)})
	}
	return t
}
