package classroom

import (
	"fmt"
	"strconv"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// Lengths of a slip in mm: the drawing left, words and lines to write on right.
const (
	slipMM     = 38.0
	lidMM      = 76.0
	slipTextMM = 4.2
)

// slips are one for each pair, to be cut out.
func (p papers) slips(paper scene.Size) []content.Sheet {
	s := content.Sheet{Title: "Adopt a hole", Block: p.block("Adopt a hole", paper)}
	width := paper.Width - 40
	for _, a := range p.c.Lesson.Adopted {
		heading := fmt.Sprintf("%s: jar %d", pairWords(a), a.Jar)
		if a.Hole > 0 {
			heading = fmt.Sprintf("%s: %s, hole %d", pairWords(a), a.Tub, a.Hole)
		}
		elements := p.slipWords(width)
		if a.Hole > 0 {
			elements = append(elements, p.lidWith(a)...)
		} else {
			elements = append(elements, jarDrawing()...)
		}
		frame := scene.BoxAt(scene.Point{}, width, slipMM)
		s.Sections = append(s.Sections, content.Section{Heading: heading, Whole: true, Figures: []content.Figure{
			content.PrintedOf(heading, "", heading+". Lines to write on: the day, leaves, how tall, what is new.", frame, elements),
		}})
	}
	return []content.Sheet{s}
}

// slipWords are the lines to write on.
func (p papers) slipWords(width float64) []scene.Element {
	var out []scene.Element
	y := slipMM - 6
	for _, words := range []string{"Day", "Leaves", "How tall", "What is new"} {
		x := lidMM + 6
		out = append(out, scene.Text{At: scene.Point{X: x, Y: y}, Text: words, SizeMM: slipTextMM, Face: scene.Sans},
			scene.Line{From: scene.Point{X: x + 27, Y: y - 0.8}, To: scene.Point{X: width - 2, Y: y - 0.8}, Class: scene.Thin})
		y -= 9.2
	}
	return out
}

// lidWith is the lid small, with the adopted hole filled.
func (p papers) lidWith(a garden.ClassAdoption) []scene.Element {
	for i := range p.a.Tubs {
		if p.a.Tubs[i].Name != a.Tub {
			continue
		}
		lid, ok := sheet.Of(p.a, i, p.cover.Revision)
		if !ok {
			return nil
		}
		o := sheet.OverviewOf(lid, lidMM, slipMM-1)
		scale, err := strconv.ParseFloat(o.Scale, 64)
		if err != nil {
			return nil
		}
		out := o.Elements
		for _, h := range lid.Holes {
			if h.N == a.Hole {
				at := h.At().Minus(lid.Outline.Bounds().Min).Times(1 / scale)
				radius := h.SizeMM / 2 / scale
				// A thick ring, with the number in it still to be read.
				out = append(out, scene.Circle{Centre: at, RadiusMM: radius + 1.2, Class: scene.Cut}, scene.Circle{Centre: at, RadiusMM: radius + 0.5, Class: scene.Cut})
			}
		}
		return out
	}
	return nil
}

// jarDrawing is a jar with a net cup and a plant, seen from the side.
func jarDrawing() []scene.Element {
	line := func(x0, y0, x1, y1 float64, class scene.Class) scene.Element {
		return scene.Line{From: scene.Point{X: x0, Y: y0}, To: scene.Point{X: x1, Y: y1}, Class: class}
	}
	out := []scene.Element{
		scene.Shape{Path: scene.Rectangle(scene.BoxAt(scene.Point{X: 26, Y: 2}, 22, 24)), Class: scene.Edge},
		scene.Shape{Path: scene.Rectangle(scene.BoxAt(scene.Point{X: 31, Y: 19}, 12, 8)), Class: scene.Part},
		line(26, 18, 48, 18, scene.Thin), line(28, 26, 46, 26, scene.Edge),
	}
	for _, x := range []float64{33, 36, 38, 41} {
		out = append(out, line(x, 19, x+(x-37)*0.5, 6, scene.Thin))
	}
	for _, leaf := range [][2]float64{{30, 36}, {37, 40}, {44, 36}} {
		out = append(out, line(37, 27, leaf[0], leaf[1], scene.Part), scene.Circle{Centre: scene.Point{X: leaf[0], Y: leaf[1]}, RadiusMM: 1.9, Class: scene.Part})
	}
	return out
}
