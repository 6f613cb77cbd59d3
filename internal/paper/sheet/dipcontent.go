package sheet

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// DipstickContent is what the dipstick's paper says. It fails where the strip
// cannot be drawn.
func DipstickContent(d Dipstick, paper scene.Size) (content.Sheet, error) {
	if err := d.check(); err != nil {
		return content.Sheet{}, err
	}
	return content.Sheet{
		Title: d.title(), Block: d.lid().Block(d.title(), paper),
		Sections: []content.Section{
			{Heading: "In order", Steps: content.Steps{First: 1, Items: d.steps()}},
			{Heading: "The marks", Tables: []content.Table{d.lineTable(), d.volumeTable()}},
			d.stripSection(paper),
		},
	}, nil
}

func (d Dipstick) title() string { return "Dipstick of " + d.Tub }

func (d Dipstick) lid() Lid {
	return Lid{Garden: d.Garden, Tub: d.Tub, Invented: d.Invented, System: d.System, On: d.On, Revision: d.Revision}
}

// steps say how the strip is made and used.
func (d Dipstick) steps() []string {
	unit := map[garden.System]string{garden.Metric: "cm on the left, litres on the right", garden.US: "inches on the left, US gallons on the right"}[d.System]
	return []string{
		"Print at 100 %. Measure the four bars below. Off by more than 0.5 mm: do not use the strip, print again.",
		"Cut the strip out. Laminate it, or copy its marks onto a stick with a waterproof pen.",
		"Stand it upright on the tub's floor, beside the air stone, through the service hole. Read where it is wet.",
		"The strip shows " + unit + ". The volumes are what the tub holds inside, cups and stones included.",
		"Touch nothing that is plugged in with wet hands. The air pump stands outside, above the water line.",
	}
}

// units are the heads of the strip's two scales.
func (d Dipstick) units() (length, volume string) {
	if d.System == garden.US {
		return "in", "gal"
	}
	return "cm", "litres"
}

// lineTable are the named lines, from the top down as they are given.
func (d Dipstick) lineTable() content.Table {
	length, _ := d.units()
	t := content.Table{
		Caption: "Lines across the strip, " + UnitWord(d.System) + " from the tub's floor",
		Columns: []content.Column{{Head: "line"}, {Head: length, Number: true}},
	}
	for _, l := range d.Lines {
		t.Rows = append(t.Rows, []string{l.Words, Mark(l.DepthMM, d.System)})
	}
	return t
}

// volumeTable are the numbered volumes, from the floor up.
func (d Dipstick) volumeTable() content.Table {
	length, volume := d.units()
	t := content.Table{
		Caption: "What the tub holds up to a depth, " + UnitWord(d.System) + " from its floor",
		Columns: []content.Column{{Head: volume}, {Head: length, Number: true}},
	}
	for _, v := range d.Volumes {
		if v.Words != "" && d.shows(v.DepthMM) {
			t.Rows = append(t.Rows, []string{v.Words, Mark(v.DepthMM, d.System)})
		}
	}
	return t
}

// shows says whether a depth lies on the strip.
func (d Dipstick) shows(depthMM float64) bool { return depthMM >= 0 && depthMM <= d.TopMM }

// stripSection is the strip in one piece as a picture, and how its pieces go
// together on paper.
func (d Dipstick) stripSection(paper scene.Size) content.Section {
	pieces := d.pieces(paper)
	whole := scene.BoxAt(scene.Point{}, stripMM, d.TopMM)
	elements := append(d.strip(pieces[:1]), scene.Shape{Path: scene.Rectangle(whole), Class: scene.Part})
	desc := d.title() + ": a strip with " + UnitWord(d.System) + " up its left edge, volumes up its right edge and the lines of the table across it."
	s := content.Section{
		Heading: "The strip", Paragraphs: []string{"Beside the strip on paper lie two bars across and two up: one of " + barWords + ", one of " + barInWords + "."},
		Figures: []content.Figure{content.FigureOf(
			d.title(), "The strip. "+content.NotToScale+" To use it, print dipstick-"+garden.Slug(d.Tub)+".pdf at 100 %.", desc, whole.Grown(2), elements,
		)},
	}
	for i, p := range pieces {
		s.List = append(s.List, p.words(i, len(pieces)))
	}
	return s
}
