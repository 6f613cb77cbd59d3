package sheet

import (
	"fmt"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// LidContent is what the lid sheet says on a paper. It fails where the sheet
// cannot be drawn.
func LidContent(l Lid, paper scene.Size) (content.Sheet, error) {
	if err := l.Check(paper); err != nil {
		return content.Sheet{}, err
	}
	t := l.tiling(paper)
	return content.Sheet{
		Title: l.sheetTitle(), Block: l.Block("Lid of "+l.Tub, paper), Stop: StopWords(l.Stop),
		Sections: []content.Section{
			{Heading: "In order", Cautions: []string{l.printWords()}, Steps: content.Steps{First: 1, Items: l.steps(t)}},
			l.PictureSection(),
			{Heading: "Distances", Paragraphs: []string{markWords}, Tables: []content.Table{l.centres(), l.distances()}},
			{Heading: "The drawn pages", Paragraphs: []string{barsWords()}, List: t.words()},
		},
	}, nil
}

// PictureSection is the lid as a picture, and what is written on the sheet
// beside its holes.
func (l Lid) PictureSection() content.Section {
	caption := fmt.Sprintf("Lid of %s, %s, in %s. %s", l.Tub, seenFrom, UnitWord(l.System), content.NotToScale)
	if l.Stop == "" {
		caption += fmt.Sprintf(" To %s, print lid-%s.pdf at 100 %%.", l.deed(), garden.Slug(l.Tub))
	}
	return content.Section{Heading: "The lid", Figures: []content.Figure{l.Picture("Lid of "+l.Tub, caption)}, List: l.labels()}
}

// pictureMM is how wide a lid is drawn for a page: so that its letters can
// still be read on a phone.
const pictureMM = 92

// Picture is the lid drawn small for a page, with a stop across it where there
// is one.
func (l Lid) Picture(name, caption string) content.Figure {
	o := OverviewOf(l, pictureMM, pictureMM)
	elements, frame := o.Elements, scene.Bounds(o.Elements).Grown(2)
	if l.Stop != "" {
		elements = append(elements, StopAcross(frame)...)
	}
	return content.FigureOf(name, caption, l.description(""), frame, elements)
}

const (
	markWords = "In the file each hole bears its number and its distances: so much from left, so much from bottom."
	seenFrom  = "lid on the tub, seen from above"
)

func (l Lid) sheetTitle() string { return "Lid sheet of " + l.Tub + ": what to do" }

// printWords stand on each drawn page.
func (l Lid) printWords() string {
	return "Print at 100 %. Measure the four bars. Do not " + l.deed() + " if they are off."
}

// barsWords say how long the check bars are.
func barsWords() string {
	return "Each drawn page has two bars along it and two up it: one of " + barWords + ", one of " + barInWords + "."
}

// words place every drawn page.
func (t Tiling) words() []string {
	var out []string
	for _, p := range t.places() {
		out = append(out, pageWords(t, p))
	}
	return out
}

// labels are the words on the drawing beside the holes.
func (l Lid) labels() []string {
	var out []string
	for _, k := range l.KeepClear {
		out = append(out, k.words())
	}
	if l.AirLine != nil {
		out = append(out, l.airWords(*l.AirLine))
	}
	if l.Service != nil {
		out = append(out, l.serviceWords(*l.Service))
	}
	if right, up := l.cornerArms(); right > cornerMM || up > cornerMM {
		out = append(out, cornerWords)
	}
	return out
}

func (k KeepClear) words() string {
	if k.Why == "" {
		return "keep clear"
	}
	return "keep clear: " + k.Why
}

func (l Lid) serviceWords(s Opening) string {
	return "service hole ⌀ " + ToolSize(s.SizeMM, l.System)
}

func (l Lid) airWords(a AirLine) string {
	words := "air line ⌀ " + ToolSize(a.SizeMM, l.System)
	if a.OnWall {
		words += " in the wall, " + l.mark(a.HeightMM) + " up"
	}
	return words
}

// centres are where the holes are.
func (l Lid) centres() content.Table {
	t := content.Table{
		Caption: "Centres, " + UnitWord(l.System) + " from the lower left corner of the lid",
		Columns: []content.Column{{Head: "hole"}, {Head: "right", Number: true}, {Head: "up", Number: true}, {Head: "size", Number: true}},
	}
	add := func(name string, x, y, size float64) {
		t.Rows = append(t.Rows, []string{name, l.mark(x), l.mark(y), ToolSize(size, l.System)})
	}
	for _, h := range l.Holes {
		add(itoa(h.N), h.XMM, h.YMM, h.SizeMM)
	}
	if a := l.AirLine; a != nil {
		name := "air line"
		if a.OnWall {
			name = "air, wall"
		}
		add(name, a.XMM, a.YMM, a.SizeMM)
	}
	if s := l.Service; s != nil {
		add("service", s.XMM, s.YMM, s.SizeMM)
	}
	return t
}

// distances are what to measure between the centres.
func (l Lid) distances() content.Table {
	t := content.Table{
		Caption: "Between centres, " + UnitWord(l.System) + l.goodWithin(),
		Columns: []content.Column{{Head: "holes"}, {Head: "plan", Number: true}, {Head: "marked", Number: true}, {Head: "drilled", Number: true}},
	}
	for _, p := range l.MeasurePairs() {
		t.Rows = append(t.Rows, []string{fmt.Sprintf("%d to %d", p.A, p.B), l.mark(p.MM), content.Blank, content.Blank})
	}
	return t
}

func (l Lid) goodWithin() string {
	if l.ToleranceMM <= 0 {
		return ""
	}
	return "; good within " + l.mark(l.ToleranceMM)
}
