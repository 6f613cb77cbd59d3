package booklet

import (
	"fmt"
	"strconv"
	"strings"

	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// CardContent is what the card of one lid says: the helper card, or the foam
// card of a board of foam. It fails where the lid cannot be drawn.
func CardContent(l sheet.Lid, paper scene.Size) (content.Sheet, error) {
	c := card{Lid: l, paper: paper}
	if err := l.Check(paper); err != nil {
		return content.Sheet{}, fmt.Errorf("%s: %w", c.title(), err)
	}
	w := c.wording()
	s := content.Sheet{
		Title: c.title(), Block: c.Block(c.drawing(), paper), Stop: sheet.StopWords(c.Stop),
		Sections: []content.Section{{Heading: "First", Cautions: []string{w.plate, w.halt()}, Paragraphs: []string{w.ready()}}},
	}
	first := 1
	for _, p := range w.parts {
		s.Sections = append(s.Sections, content.Section{Heading: p.head, Steps: content.Steps{First: first, Items: p.steps}})
		first += len(p.steps)
	}
	s.Sections = append(s.Sections,
		content.Section{Heading: "The pictures", Figures: c.figures()},
		content.Section{Heading: "Centres and distances", Tables: c.tables()},
	)
	return s, nil
}

// figureMM is how wide a figure of the card is drawn for a page.
const figureMM = 92

// figures are the set-up and the lid from above.
func (c card) figures() []content.Figure {
	w := c.wording()
	caption := strings.TrimSpace(w.caption + ". " + w.note)
	frame, elements := w.setUp(figureMM)
	return []content.Figure{
		content.FigureOf(w.caption, caption+" "+content.NotToScale, w.shows, frame, elements),
		c.Picture(fromAbove, fromAbove+", "+c.numbersIn()+" "+content.NotToScale),
	}
}

const fromAbove = "Lid from above"

// numbersIn says what unit the small lid's numbers are in, and what its letters
// and the crossing stand for.
func (c card) numbersIn() string {
	var words []string
	if c.AirLine != nil {
		words = append(words, "A air line")
	}
	if c.Service != nil {
		words = append(words, "S service hole")
	}
	if len(c.KeepClear) > 0 {
		words = append(words, "crossed: keep clear")
	}
	text := "numbers in " + sheet.UnitWord(c.System) + ". "
	if len(words) > 0 {
		text += strings.Join(words, ", ") + "."
	}
	return text
}

// tables are the centres, and what to measure between them where there is more
// than one hole.
func (c card) tables() []content.Table {
	out := []content.Table{c.centreTable()}
	if pairs := c.distanceTable(); len(pairs.Rows) > 0 {
		out = append(out, pairs)
	}
	return out
}

func (c card) centreTable() content.Table {
	t := content.Table{
		Caption: "Centres from the lower left corner, " + sheet.UnitWord(c.System),
		Columns: []content.Column{{Head: "hole"}, {Head: "right", Number: true}, {Head: "up", Number: true}},
	}
	add := func(name string, x, y float64) {
		t.Rows = append(t.Rows, []string{name, sheet.Mark(x, c.System), sheet.Mark(y, c.System)})
	}
	for _, h := range c.Holes {
		add(strconv.Itoa(h.N), h.XMM, h.YMM)
	}
	if c.AirLine != nil {
		add("A", c.AirLine.XMM, c.AirLine.YMM)
	}
	if c.Service != nil {
		add("S", c.Service.XMM, c.Service.YMM)
	}
	return t
}

func (c card) distanceTable() content.Table {
	done := "drilled"
	if c.Foam != nil {
		done = "cut"
	}
	t := content.Table{
		Caption: "Between centres, " + sheet.UnitWord(c.System),
		Columns: []content.Column{{Head: "holes"}, {Head: "plan", Number: true}, {Head: done, Number: true}},
	}
	if c.ToleranceMM > 0 {
		t.Caption += "; good within " + sheet.Mark(c.ToleranceMM, c.System)
	}
	for _, p := range c.MeasurePairs() {
		t.Rows = append(t.Rows, []string{fmt.Sprintf("%d to %d", p.A, p.B), sheet.Mark(p.MM, c.System), content.Blank})
	}
	return t
}
