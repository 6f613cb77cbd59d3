package booklet

import (
	"rootbell/internal/paper/scene"
)

// MeasuringSheet is one page to take into the store room with a tape and a
// pencil: drawings with ringed letters, and a blank for each letter.
func MeasuringSheet(c Cover, paper scene.Size) ([]byte, error) {
	press := scene.NewPress("Measuring sheet", c.On)
	press.Page(paper).Draw(layMeasuring(c, paper).elements...)
	return press.Bytes()
}

func layMeasuring(c Cover, paper scene.Size) laid {
	page := laid{fits: true, elements: c.titleBlock("Measuring sheet", paper)}
	head := scene.NewColumn(body(paper))
	headOf(head, measuringTitle)
	reading := scene.Style{Face: scene.Serif, SizeMM: 10.5 * scene.PointMM, Leading: 1.25}
	head.Text(reading, measureWords)
	head.Gap(2)
	head.Text(scene.Style{Face: scene.Sans, SizeMM: 3.2, Leading: 1.5}, string(tubLine))
	head.Gap(1.5)
	head.Text(reading, heldWords)
	head.Gap(2.5)
	head.Rule(scene.Edge, 3)
	rest := body(paper)
	rest.Max.Y = rest.Min.Y + head.Left()
	halves := scene.Columns(rest, 2, gutterMM)
	left, right := scene.NewColumn(halves[0]), scene.NewColumn(halves[1])
	f := c.measured()
	f.tub.set(left)
	f.cup.set(left)
	f.lid.set(right)
	f.shelf.set(right)
	page.add(head, left, right)
	return page
}

func sectionHead(column *scene.Column, text string) {
	column.Text(scene.Style{Face: scene.SerifBold, SizeMM: 12 * scene.PointMM, Leading: 1.25}, text)
	column.Gap(1)
}

// Heights of the drawings on the measuring sheet, as shares of the column's.
const (
	largeFigure = 0.19
	smallFigure = 0.125
)

func figure(column *scene.Column, share float64, draw func(box scene.Box) []scene.Element) {
	if box, ok := column.Take(column.Box.Height() * share); ok {
		column.Elements = append(column.Elements, draw(box)...)
	}
}

// set lays a form: its head, its drawing, what to fill in.
func (f form) set(column *scene.Column) {
	sectionHead(column, f.head)
	figure(column, f.share, f.draw)
	if len(f.asks) > 0 {
		column.Gap(1)
		asks(column, f.asks)
	}
	if len(f.table.Rows) > 0 {
		column.Table(f.table.Set(3, 6.2, 1.5, 2, 2, 2))
	}
	column.Gap(1)
	style := scene.Style{Face: scene.Sans, SizeMM: 2.9, Leading: f.leading}
	for _, line := range f.lines {
		column.Text(style, string(line))
	}
	for _, words := range f.words {
		column.Text(style, words)
	}
	column.Gap(3)
}

func drawTub(box scene.Box) []scene.Element {
	at := within(box)
	out := []scene.Element{
		scene.Shape{Path: scene.Polyline(at(0.06, 0.86), at(0.12, 0.86), at(0.22, 0.12), at(0.78, 0.12), at(0.88, 0.86), at(0.94, 0.86)), Class: scene.Cut},
		scene.Line{From: at(0.05, 0.02), To: at(0.95, 0.02), Class: scene.Part},
	}
	out = append(out, measured(at(0.12, 0.86), at(0.88, 0.86), 3, "a", "b")...)
	out = append(out, measured(at(0.22, 0.12), at(0.78, 0.12), 4, "c", "d")...)
	out = append(out, measured(at(0.7, 0.12), at(0.7, 0.86), 0, "e")...)
	out = append(out, scene.Line{From: at(0.24, 0.16), To: at(0.32, 0.44)})
	return append(out, ring(at(0.33, 0.5), "f")...)
}

func drawLid(box scene.Box) []scene.Element {
	at := within(box)
	flat := scene.Box{Min: at(0.06, 0.34), Max: at(0.8, 0.98)}
	out := []scene.Element{
		scene.Shape{Path: scene.RoundedRectangle(flat, 5), Class: scene.Cut},
		scene.Shape{Path: scene.Polyline(at(0.02, 0.1), at(0.05, 0.1), at(0.07, 0.16), at(0.79, 0.16), at(0.81, 0.1), at(0.84, 0.1)), Class: scene.Cut},
		scene.Line{From: at(0.02, 0.05), To: at(0.84, 0.05), Class: scene.Hidden},
		scene.Text{At: at(0.3, -0.03), Text: rimLabel, SizeMM: 2.6},
	}
	out = append(out, measured(at(0.06, 0.62), at(0.8, 0.62), 0, "g")...)
	out = append(out, measured(at(0.5, 0.34), at(0.5, 0.98), 0, "h")...)
	out = append(out, ring(at(0.11, 0.88), "i")...)
	out = append(out, ring(at(0.56, 0.24), "j")...)
	out = append(out, measured(at(0.9, 0.05), at(0.9, 0.16), 0)...)
	return append(out, ring(at(0.96, 0.12), "k")...)
}

func drawCup(box scene.Box) []scene.Element {
	at := within(box)
	out := []scene.Element{
		scene.Shape{Path: scene.Polyline(at(0.3, 0.86), at(0.36, 0.86), at(0.4, 0.12), at(0.6, 0.12), at(0.64, 0.86), at(0.7, 0.86)), Class: scene.Cut},
		scene.Text{At: at(0.02, 0.55), Text: bodyLabel[0], SizeMM: 2.6},
		scene.Text{At: at(0.02, 0.41), Text: bodyLabel[1], SizeMM: 2.6},
	}
	out = append(out, measured(at(0.365, 0.66), at(0.635, 0.66), 0, "m")...)
	out = append(out, measured(at(0.3, 0.86), at(0.7, 0.86), 2, "n")...)
	return append(out, measured(at(0.76, 0.12), at(0.76, 0.86), 0, "o")...)
}

func drawShelf(box scene.Box) []scene.Element {
	at := within(box)
	out := []scene.Element{}
	for _, y := range []float64{0.1, 0.86} {
		board := scene.Rectangle(scene.Box{Min: at(0.12, y), Max: at(0.88, y+0.07)})
		out = append(out, scene.Hatch(board, 1.4, 45, scene.Thin)...)
		out = append(out, scene.Shape{Path: board, Class: scene.Edge})
	}
	for _, x := range []float64{0.12, 0.88} {
		out = append(out, scene.Line{From: at(x, 0), To: at(x, 1), Class: scene.Edge})
	}
	out = append(out, measured(at(0.12, 0.4), at(0.88, 0.4), 0, "p", "q")...)
	return append(out, measured(at(0.74, 0.17), at(0.74, 0.86), 0, "r")...)
}

// within gives places in a box by shares of its width and height.
func within(box scene.Box) func(x, y float64) scene.Point {
	return func(x, y float64) scene.Point {
		return box.Min.Plus(scene.Point{X: x * box.Width(), Y: y * box.Height()})
	}
}

// measured is a dimension line with ringed letters on it.
func measured(a, b scene.Point, off float64, letters ...string) []scene.Element {
	step := b.Minus(a)
	along := step.Times(1 / max(a.Distance(b), 1e-9))
	out := scene.Point{X: -along.Y, Y: along.X}.Times(off)
	from, to := a.Plus(out), b.Plus(out)
	stroke := along.Turned(45).Times(1.3)
	elements := []scene.Element{
		scene.Line{From: from, To: to},
		scene.Line{From: from.Minus(stroke), To: from.Plus(stroke), Class: scene.Part},
		scene.Line{From: to.Minus(stroke), To: to.Plus(stroke), Class: scene.Part},
	}
	for i, letter := range letters {
		share := 0.36 + 0.12*float64(i)
		elements = append(elements, ring(from.Plus(to.Minus(from).Times(share)), letter)...)
	}
	return elements
}
