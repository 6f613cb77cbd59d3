package booklet

import (
	"strconv"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// Cover is what every paper of a garden says of itself in its title block.
type Cover struct {
	Garden   string
	Invented bool
	System   garden.System
	On       string // YYYY-MM-DD
	Revision string
}

func (c Cover) lid() sheet.Lid {
	return sheet.Lid{Garden: c.Garden, Invented: c.Invented, System: c.System, On: c.On, Revision: c.Revision}
}

func (c Cover) block(drawing string, paper scene.Size) content.Block {
	return c.lid().Block(drawing, paper)
}

func (c Cover) titleBlock(drawing string, paper scene.Size) []scene.Element {
	box := scene.BoxAt(scene.Point{X: sideMM, Y: sideMM}, paper.Width-2*sideMM, footMM)
	return c.lid().TitleBlock(box, drawing, paper)
}

// body is the page between the margins, over the title block.
func body(paper scene.Size) scene.Box {
	return scene.Box{
		Min: scene.Point{X: sideMM, Y: sideMM + footMM + 3},
		Max: scene.Point{X: paper.Width - sideMM, Y: paper.Height - sideMM},
	}
}

func headOf(column *scene.Column, title string) {
	size := 20 * scene.PointMM
	if box, ok := column.Take(10); ok {
		column.Elements = append(column.Elements, scene.Text{
			At: box.Min.Plus(scene.Point{Y: 2.5}), Text: scene.Serif.Fitted(title, size, box.Width()), SizeMM: size, Face: scene.Serif,
		})
	}
	column.Rule(scene.Part, 0.6)
	column.Rule(scene.Part, 3)
}

// stepsIn lays numbered steps in the reading face.
func stepsIn(column *scene.Column, points float64, from int, steps []string) {
	style := scene.Style{Face: scene.Serif, SizeMM: points * scene.PointMM, Leading: 1.25, Indent: 8}
	for i, step := range steps {
		column.Step(style, strconv.Itoa(from+i)+".", scene.SansBold, step)
		column.Gap(0.9)
	}
}

// askMM is the height of a blank with its line to write on.
const askMM = 7.6

// asks lays blanks under one another: the letter that is on the drawing, what
// to measure, and a box for the number with its unit.
func asks(column *scene.Column, list []content.Ask) {
	const boxMM = 22
	for _, a := range list {
		block, ok := column.Take(askMM)
		if !ok {
			return
		}
		at := func(x, y float64) scene.Point { return block.Min.Plus(scene.Point{X: x, Y: y}) }
		blank := scene.BoxAt(scene.Point{X: block.Max.X - boxMM - 8, Y: block.Min.Y + 0.8}, boxMM, askMM-1.4)
		words := scene.Sans.Fitted(a.Words, 3.2, blank.Min.X-block.Min.X-8)
		column.Elements = append(column.Elements, ring(at(2.6, askMM/2), a.Letter)...)
		column.Elements = append(
			column.Elements,
			scene.Text{At: at(7, askMM/2-1.1), Text: words, SizeMM: 3.2},
			scene.Shape{Path: scene.Rectangle(blank), Class: scene.Thin},
			scene.Line{From: blank.Min, To: scene.Point{X: blank.Max.X, Y: blank.Min.Y}, Class: scene.Edge},
			scene.Text{At: scene.Point{X: blank.Max.X + 1.2, Y: blank.Min.Y + 1.4}, Text: a.Unit, SizeMM: 3.2},
		)
	}
}

// ring is a letter in a circle: what to measure, on the drawing and in the list.
func ring(at scene.Point, letter string) []scene.Element {
	return []scene.Element{
		scene.Circle{Centre: at, RadiusMM: 2.3, Class: scene.Thin, Fill: scene.White},
		scene.Text{At: at.Minus(scene.Point{Y: 1.05}), Text: letter, SizeMM: 2.9, Face: scene.SansBold, Anchor: scene.Middle},
	}
}
