package seasonal

import (
	"rootbell/internal/paper/card"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// label is what is cut out for one cell of the tray.
type label struct {
	tub, crop string
	nth, of   int // cell of the crop
	sow, move string
}

// mostLabels bounds the labels of one crop, so that an odd plan prints no book.
const mostLabels = 96

// all are the labels of every tub.
func (p papers) allLabels() []label {
	var out []label
	for _, i := range p.tubs {
		for _, c := range p.crops(i) {
			n := max(c.Cells, c.Plants)
			for k := range min(n, mostLabels) {
				out = append(out, label{tub: p.a.Tubs[i].Name, crop: c.Crop, nth: k + 1, of: n, sow: c.SowOn, move: c.Transplant})
			}
		}
	}
	return out
}

// labels say what stands on the labels.
func (p papers) labels(paper scene.Size) []content.Sheet {
	const title = "Seed labels"
	t := content.Table{Caption: "A label for each cell, to cut out; by team, never by name", Columns: []content.Column{
		{Head: "label"}, {Head: "sow"}, {Head: "into the tub"}, {Head: "team"},
	}}
	for _, l := range p.allLabels() {
		t.Rows = append(t.Rows, []string{l.head() + ", " + l.crop, "sow " + short(l.sow), "into the tub " + short(l.move), content.Blank})
	}
	return []content.Sheet{{Title: title, Block: p.block(title, paper), Sections: []content.Section{{Heading: "Cut along the broken lines", Tables: []content.Table{t}}}}}
}

func (l label) head() string { return l.tub + ", cell " + itoa(l.nth) + " of " + itoa(l.of) }

// Of a label in mm, and how many stand beside one another.
const (
	labelMM   = 29.0
	labelsRow = 3
)

// drawnLabels draws them in a grid with lines to cut along.
func (p papers) drawnLabels(paper scene.Size) [][]card.Page {
	inner := scene.Box{Min: scene.Point{X: sideMM, Y: sideMM}, Max: scene.Point{X: paper.Width - sideMM, Y: paper.Height - sideMM}}
	foot := scene.BoxAt(inner.Min, inner.Width(), footMM)
	top := inner.Max.Y - titleMM
	rows := int((top - foot.Max.Y - 3) / labelMM)
	all := p.allLabels()
	var pages []card.Page
	for begin := 0; begin < len(all) || begin == 0; begin += rows * labelsRow {
		out := append(p.cover.TitleBlock(foot, "Seed labels", paper), scene.Text{
			At: scene.Point{X: inner.Min.X, Y: inner.Max.Y - 8}, Text: "Cut along the broken lines", SizeMM: 16 * scene.PointMM, Face: scene.Serif,
		})
		for k, l := range all[begin:min(begin+rows*labelsRow, len(all))] {
			wide := inner.Width() / labelsRow
			corner := scene.Point{X: inner.Min.X + float64(k%labelsRow)*wide, Y: top - float64(k/labelsRow+1)*labelMM}
			out = append(out, l.draw(scene.BoxAt(corner, wide, labelMM), k%labelsRow == 0, k < labelsRow)...)
		}
		pages = append(pages, card.Page{Size: paper, Elements: out})
	}
	return [][]card.Page{pages}
}

// draw is one label; first of its row it has a cut at its left, in the top row
// one over it.
func (l label) draw(box scene.Box, first, top bool) []scene.Element {
	const size, pad = leastPoints * scene.PointMM, 3.0
	// Each broken line is drawn once: two on one another would look whole.
	cut := func(from, to scene.Point) scene.Element { return scene.Line{From: from, To: to, Class: scene.Hidden} }
	out := []scene.Element{cut(box.Min, scene.Point{X: box.Max.X, Y: box.Min.Y}), cut(scene.Point{X: box.Max.X, Y: box.Min.Y}, box.Max)}
	if first {
		out = append(out, cut(box.Min, scene.Point{X: box.Min.X, Y: box.Max.Y}))
	}
	if top {
		out = append(out, cut(scene.Point{X: box.Min.X, Y: box.Max.Y}, box.Max))
	}
	write := func(line int, text string, face scene.Face) {
		out = append(out, scene.Text{
			At:   scene.Point{X: box.Min.X + pad, Y: box.Max.Y - pad/2 - float64(line+1)*size*1.25},
			Text: face.Fitted(text, size, box.Width()-2*pad), SizeMM: size, Face: face,
		})
	}
	write(0, l.head(), scene.SansBold)
	write(1, l.crop, scene.Sans)
	write(2, "sow "+day(l.sow), scene.Sans)
	write(3, "into the tub "+day(l.move), scene.Sans)
	write(4, "team", scene.Sans)
	y := box.Max.Y - pad/2 - 5*size*1.25
	return append(out, scene.Line{From: scene.Point{X: box.Min.X + pad + 10, Y: y}, To: scene.Point{X: box.Max.X - pad, Y: y}, Class: scene.Thin})
}
