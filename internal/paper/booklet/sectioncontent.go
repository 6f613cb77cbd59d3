package booklet

import (
	"fmt"
	"strings"

	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// What the section's drawing is lettered with.
const (
	airStone    = "air stone"
	checkValve  = "check valve"
	socketWord  = "socket"
	dripLoop    = "drip loop"
	lampWords   = "lamp, as it hangs on transplant day"
	rootSpace   = "roots"
	toTheLid    = "to the lid"
	lidToLamp   = "lid to lamp"
	clearHeight = "clear height"
	atHarvest   = "at harvest"
)

var airPump = []string{"air pump, above the", "water line, tied up"}

// SectionContent is what the section of a tub says. It fails where a length is
// missing that the drawing rests on.
func SectionContent(s Section) (content.Sheet, error) {
	if err := s.check(); err != nil {
		return content.Sheet{}, err
	}
	d := sectionDraft{Section: s, scale: s.pick()}
	d.Notes = nil // they stand beside the picture
	d.draw()
	frame := scene.Bounds(d.elements).Grown(4)
	if s.Stop != "" {
		d.elements = append(d.elements, sheet.StopAcross(frame)...)
	}
	caption := s.title() + ". " + content.NotToScale
	return content.Sheet{
		Title: s.title(), Block: s.block(s.title(), scene.Size{}), Stop: sheet.StopWords(s.Stop),
		Sections: []content.Section{
			{Heading: "Cut through", Figures: []content.Figure{content.FigureOf(s.title(), caption, s.words(""), frame, d.elements)}, List: s.Notes},
			{Heading: "Heights and widths", Tables: []content.Table{s.lineTable(), s.measureTable()}},
			{Heading: "What stands where", List: s.things()},
		},
	}, nil
}

func (s Section) title() string { return "Section of " + s.Tub }

// lineTable are the lines of the water.
func (s Section) lineTable() content.Table {
	t := content.Table{
		Caption: "Lines of the water, " + sheet.UnitWord(s.System) + " over the inside floor",
		Columns: []content.Column{{Head: "line"}, {Head: sheet.UnitName(s.System), Number: true}},
	}
	for _, l := range s.lines() {
		t.Rows = append(t.Rows, []string{l.words, sheet.Mark(l.height, s.System)})
	}
	return t
}

// measureTable are the lengths that stand on the drawing's dimension lines.
func (s Section) measureTable() content.Table {
	t := content.Table{
		Caption: "Lengths, " + sheet.UnitWord(s.System),
		Columns: []content.Column{{Head: "length"}, {Head: sheet.UnitName(s.System), Number: true}},
	}
	add := func(words string, mm float64, known bool) {
		if known && mm > 0 {
			t.Rows = append(t.Rows, []string{words, sheet.Mark(mm, s.System)})
		}
	}
	cups := len(s.CupsAtMM) > 0
	add("from the shelf "+toTheLid, s.FloorMM+s.LidFaceMM, true)
	add(lidToLamp, s.LampMM, true)
	add(clearHeight, s.ClearMM, true)
	add("the plants "+atHarvest, s.PlantMM, cups)
	add("room for "+rootSpace+" under a cup", s.LidFaceMM-s.Cup.DepthMM, cups && s.Cup.DepthMM > 0)
	add(s.Tub+" outside", s.OutsideWidthMM, true)
	return t
}

// things are the parts that the drawing names.
func (s Section) things() []string {
	var out []string
	if s.Aerated {
		if s.StoneMM > 0 {
			out = append(out, airStone+", on the tub's floor")
		}
		out = append(out, strings.Join(airPump, " "), checkValve+", in the air line", dripLoop+", lower than the "+socketWord)
	}
	if s.LampMM > 0 {
		out = append(out, lampWords)
	}
	return out
}

// words say what the drawing shows, for who cannot see it. scale is how its
// scale is named, with a comma before it, or empty.
func (s Section) words(scale string) string {
	unit := sheet.UnitName(s.System)
	mark := func(mm float64) string { return sheet.Mark(mm, s.System) }
	text := fmt.Sprintf("%s cut through%s. Filled to %s %s over the inside floor on transplant day; lowest safe line at %s %s.",
		s.Tub, scale, mark(s.FillMM), unit, mark(s.LowestMM), unit)
	if s.LaterFillMM > 0 {
		text += fmt.Sprintf(" Once roots hang, filled to %s %s.", mark(s.LaterFillMM), unit)
	}
	if s.Aerated {
		text += " The air pump stands outside, above the water line, tied so that it cannot fall in, with a check valve in its line and a drip loop in its lead."
	}
	for _, note := range s.Notes {
		text += " " + note
	}
	return text
}
