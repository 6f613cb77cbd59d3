package sheet

import (
	"fmt"

	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// Type sizes of the front page, mm.
const (
	headMM  = 20 * scene.PointMM
	textMM  = 11 * scene.PointMM
	tableMM = 10 * scene.PointMM
)

// steps say how the sheet is used, in order.
func (l Lid) steps(t Tiling) []string {
	last := "An adult drills, by the helper card. Pupils stay outside the chip zone."
	if l.Foam != nil {
		last = "An adult cuts the foam, by the foam card; no saw. Pupils stay away from blade, hot wire and fumes."
	}
	return []string{
		"Print all pages at 100 %, not 'fit to page'. On each page measure the two 100 mm bars and the two 4 in bars. Each may be off by 0.5 mm. Do not " + l.deed() + " if they are off: print again.",
		fmt.Sprintf("Lay out the %d drawn pages as on the map. Lay cross on cross where the letters match, and tape them.", t.Pages()),
		"Put the lid on the tub. Tape the sheet on top of the lid, drawing up, outline on the edge of the lid's flat part.",
		"Look at the crossed parts: no hole there. If they do not lie on what they name, stop and measure the lid again.",
		"Press a mark through each cross with a pointed tool. Lift the sheet and measure the marks with the tables below.",
		last,
	}
}

// deed is what is done to the lid where a hole comes.
func (l Lid) deed() string {
	if l.Foam != nil {
		return "cut"
	}
	return "drill"
}

// front prints the page before the tiles: what to do, and the tables. What does
// not fit on one page goes on to the next.
func (l Lid) front(press *scene.Press, paper scene.Size, t Tiling) {
	holes, pairs := l.centres(), l.distances()
	for n := 1; ; n++ {
		page := press.Page(paper)
		box := scene.BoxAt(scene.Point{X: 15, Y: marginMM + titleMM + 2}, paper.Width-30, paper.Height-2*marginMM-titleMM-2)
		column := scene.NewColumn(box)
		if n == 1 {
			l.frontHead(column, t)
		}
		both := scene.Columns(scene.Box{Min: box.Min, Max: scene.Point{X: box.Max.X, Y: box.Min.Y + column.Left()}}, 2, 10)
		left, right := scene.NewColumn(both[0]), scene.NewColumn(both[1])
		holes.Rows = tablePart(left, holes, 2.5, 2.6, 2.6, 5.1)
		pairs.Rows = tablePart(right, pairs, 2.2, 2, 2.4, 2.4)
		for _, c := range []*scene.Column{column, left, right} {
			page.Draw(c.Elements...)
		}
		title := scene.BoxAt(scene.Point{X: 15, Y: marginMM}, paper.Width-30, titleMM-1)
		page.Draw(l.TitleBlock(title, "Lid of "+l.Tub+": what to do", paper)...)
		if l.Stop != "" {
			page.Draw(StopPlate(box, l.Stop)...)
		}
		if len(holes.Rows) == 0 && len(pairs.Rows) == 0 {
			return
		}
	}
}

func (l Lid) frontHead(c *scene.Column, t Tiling) {
	c.Text(scene.Style{Face: scene.Serif, SizeMM: headMM}, l.sheetTitle())
	c.Rule(scene.Part, 3)
	for i, step := range l.steps(t) {
		c.Step(scene.Style{Face: scene.Serif, SizeMM: textMM, Indent: 8}, itoa(i+1)+".", scene.SansBold, step)
		c.Gap(1.2)
	}
	c.Gap(2)
	c.Text(scene.Style{Face: scene.Sans, SizeMM: tableMM}, "Map of the drawn pages, as they lie on the lid:")
	if box, ok := c.Take(26); ok {
		tiles := t.pageMap(scene.Box{Min: box.Min, Max: scene.Point{X: box.Min.X + 50, Y: box.Max.Y - 1}}, place{-1, -1})
		c.Elements = append(c.Elements, tiles...)
	}
	c.Gap(3)
}

// tablePart lays as many rows as fit and returns the rest.
func tablePart(c *scene.Column, t content.Table, shares ...float64) [][]string {
	if len(t.Rows) == 0 {
		return nil
	}
	c.Text(scene.Style{Face: scene.SerifItalic, SizeMM: tableMM}, t.Caption)
	set := t.Set(tableMM, 0, shares...)
	n := min(len(t.Rows), set.Fits(c.Left()))
	set.Rows = t.Rows[:n]
	c.Table(set)
	return t.Rows[n:]
}
