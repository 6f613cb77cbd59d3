package booklet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// tools is what must lie ready, in one sentence.
func (c card) tools() string {
	list := []string{fmt.Sprintf("lid sheet (%d drawn pages)", sheet.DrawnPages(c.Lid, c.paper)), "drill with a slow speed"}
	for _, size := range c.sizes() {
		list = append(list, "hole saw "+sheet.ToolSize(size, c.System))
	}
	if a := c.AirLine; a != nil {
		list = append(list, "bit "+sheet.ToolSize(a.SizeMM, c.System))
	}
	list = append(list, "flat backing board as large as the lid", "clamps", "awl or pencil", "eye protection with side shields",
		"deburring tool or file", "brush, pan and bag.")
	return strings.Join(list, ", ")
}

// sizes are the saws' diameters, each once.
func (c card) sizes() []float64 {
	var out []float64
	for _, h := range c.Holes {
		out = append(out, h.SizeMM)
	}
	if c.Service != nil {
		out = append(out, c.Service.SizeMM)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// part is a head with its steps.
type part struct {
	head  string
	steps []string
}

// instructions are the card's steps. The protection follows 29 CFR 1910.133
// (eyes and side protection) and 1910.138 (gloves by the task), and the
// guidance that gloves stay off at turning tools; running in reverse, trial
// holes and clamping are common practice without a source.
func (c card) instructions() []part {
	holes := "Drill forwards, slowly, pressing lightly. Lift often, so that chips clear and nothing melts."
	if c.LeastWebMM > 0 {
		holes += " The narrowest plastic left is " + sheet.MarkDown(c.LeastWebMM, c.System) + " " + sheet.UnitName(c.System) + "."
	}
	return []part{
		{"Before you drill", []string{
			"The site's rules, local codes and the tool's manual decide, before this card.",
			"Check the bars on each page of the lid sheet. Off by more than 0.5 mm: do not drill.",
			"Mark every centre through the sheet. Lift it and measure the pairs.",
			"Work away from water; the tub is still empty.",
			"Lid flat on the backing board. Clamp both to the bench. Nobody holds the lid by hand.",
		}},
		{"On you and around you", []string{
			"Eye protection with side shields on everyone near.",
			"Hair tied back, sleeves rolled up. Jewellery, scarf and lanyard off.",
			"Gloves off while the saw can turn. On only with the tool unplugged, for edges.",
			"Pupils stay out of the chip zone, behind a line on the floor.",
		}},
		{"Drill", []string{
			"One trial hole in scrap. The cup must drop in and its lip bear all round.",
			holes,
			"Reverse only for a brittle lid, with an arbor that cannot unscrew and where the manual allows it (common practice).",
			"Move the clamps close to each next hole." + c.airStep(),
		}},
		{"After", []string{
			"Unplug, or take the battery out. Then gloves on: deburr each edge until it is smooth.",
			"Collect every shaving. Brush, do not blow: in the water they block the air stone.",
			"Hang a cup in each hole. Measure the pairs and write them down.",
		}},
	}
}

func (c card) airStep() string {
	switch {
	case c.AirLine == nil:
		return ""
	case c.AirLine.OnWall:
		return " The air line's hole goes through the tub's wall, " + sheet.Mark(c.AirLine.HeightMM, c.System) + " " +
			sheet.UnitName(c.System) + " over the inside floor, with the small bit."
	}
	return " The air line's hole comes last, with the small bit."
}

func (c card) steps(column *scene.Column) {
	n := 0
	for i, p := range c.wording().parts {
		if i > 0 {
			column.Gap(1)
			column.Rule(scene.Thin, 1.2)
		}
		head := c.style(scene.SerifBold)
		head.SizeMM += scene.PointMM
		column.Text(head, p.head)
		column.Gap(0.6)
		for _, step := range p.steps {
			n++
			style := c.style(scene.Serif)
			style.Indent = 8
			column.Step(style, strconv.Itoa(n)+".", scene.SansBold, step)
			column.Gap(0.7)
		}
	}
}

// halt is the framed warning at the head of the right column.
func (c card) halt(column *scene.Column) {
	const bar, pad = 3, 2
	style := c.style(scene.Serif)
	inner := column.Box.Width() - bar - 2*pad
	lines := style.Face.Wrap(c.wording().halt(), style.SizeMM*1.02, inner)
	lead := style.SizeMM * style.Leading
	box, ok := column.Take(float64(len(lines))*lead + 2*pad)
	if !ok {
		return
	}
	column.Elements = append(
		column.Elements,
		scene.Shape{Path: scene.Rectangle(box), Class: scene.Part},
		scene.Shape{Path: scene.Rectangle(scene.BoxAt(box.Min, bar, box.Height())), Class: scene.Part, Fill: scene.Black},
	)
	for i, line := range lines {
		at := scene.Point{X: box.Min.X + bar + pad, Y: box.Max.Y - pad - float64(i)*lead - lead*0.76}
		if i == 0 {
			column.Elements = append(column.Elements, scene.Text{At: at, Text: haltWord, SizeMM: style.SizeMM, Face: scene.SansBold})
			at.X += scene.SansBold.Width(haltWord+" ", style.SizeMM)
			line = strings.TrimPrefix(line, haltWord+" ")
		}
		column.Elements = append(column.Elements, scene.Text{At: at, Text: line, SizeMM: style.SizeMM, Face: style.Face})
	}
}
