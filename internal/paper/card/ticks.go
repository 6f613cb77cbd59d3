package card

import (
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// Of a list to tick off: how wide the box's column is in mm, and the most of the
// width that a narrow column takes.
const (
	boxMM     = 5.0
	boxWideMM = boxMM + 4
	narrow    = 0.23
)

// tick is a row of a list to tick off: its words over as many lines as they
// take, a box at the end. Over the first row stand the heads.
func (c Card) tick(column *scene.Column, t content.Table, row int) {
	size := max(c.Points-1, leastPoints) * scene.PointMM
	lefts := tickColumns(t, size, column.Box.Width())
	if row == 0 {
		column.Gap(0.6)
		c.tickRow(column, lefts, heads(t), scene.Sans, scene.Sans, leastPoints*scene.PointMM, false)
		column.Rule(scene.Part, 1)
	}
	c.tickRow(column, lefts, t.Rows[row], scene.SansBold, scene.Serif, size, true)
	column.Gap(0.5)
	column.Rule(scene.Thin, 0.8)
}

func heads(t content.Table) []string {
	var out []string
	for _, col := range t.Columns {
		out = append(out, col.Head)
	}
	return out
}

// tickColumns are where each column begins, and at last where the table ends:
// the first and those after the second as narrow as their words allow, the
// second what is left.
func tickColumns(t content.Table, size, width float64) []float64 {
	const gap = 4
	n := len(t.Columns)
	wide := make([]float64, n)
	rest := width
	for k, col := range t.Columns {
		switch {
		case col.Tick:
			wide[k] = max(boxWideMM, scene.Sans.Width(col.Head, leastPoints*scene.PointMM))
		case k == 1:
			continue
		default:
			longest := scene.Sans.Width(col.Head, leastPoints*scene.PointMM)
			for _, row := range t.Rows {
				longest = max(longest, scene.SansBold.Width(row[k], size))
			}
			wide[k] = min(longest+gap, width*narrow)
		}
		rest -= wide[k]
	}
	if n > 2 {
		wide[1] = rest
	}
	lefts := make([]float64, n+1)
	for k := range wide {
		lefts[k+1] = lefts[k] + wide[k]
	}
	return lefts
}

func (c Card) tickRow(column *scene.Column, lefts []float64, cells []string, first, rest scene.Face, size float64, boxed bool) {
	const gap, leading = 3, 1.26
	lead := size * leading
	lines := make([][]string, len(cells))
	most := 1
	for k, text := range cells {
		if text == content.Blank {
			continue
		}
		face := rest
		if k == 0 {
			face = first
		}
		room := lefts[k+1] - lefts[k]
		if k+1 < len(cells) {
			room -= gap
		}
		lines[k] = face.Wrap(text, size, room)
		most = max(most, len(lines[k]))
	}
	high := float64(most) * lead
	if boxed {
		high = max(high, boxMM+1)
	}
	box, ok := column.Take(high)
	if !ok {
		return
	}
	for k := range cells {
		if cells[k] == content.Blank {
			corner := scene.Point{X: box.Min.X + lefts[k+1] - boxMM - 0.5, Y: box.Max.Y - boxMM - 0.5}
			column.Elements = append(column.Elements, scene.Shape{Path: scene.Rectangle(scene.BoxAt(corner, boxMM, boxMM)), Class: scene.Part})
			continue
		}
		face := rest
		if k == 0 {
			face = first
		}
		for i, line := range lines[k] {
			at := scene.Point{X: box.Min.X + lefts[k], Y: box.Max.Y - float64(i)*lead - lead*0.76}
			column.Elements = append(column.Elements, scene.Text{At: at, Text: line, SizeMM: size, Face: face})
		}
	}
}
