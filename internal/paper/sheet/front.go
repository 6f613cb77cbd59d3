package sheet

import (
	"fmt"

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
	holes, pairs := l.holeRows(), l.pairRows()
	for n := 1; ; n++ {
		page := press.Page(paper)
		box := scene.BoxAt(scene.Point{X: 15, Y: marginMM + titleMM + 2}, paper.Width-30, paper.Height-2*marginMM-titleMM-2)
		column := scene.NewColumn(box)
		if n == 1 {
			l.frontHead(column, t)
		}
		both := scene.Columns(scene.Box{Min: box.Min, Max: scene.Point{X: box.Max.X, Y: box.Min.Y + column.Left()}}, 2, 10)
		left, right := scene.NewColumn(both[0]), scene.NewColumn(both[1])
		holes = tablePart(left, "Centres, "+UnitWord(l.System)+" from the lower left corner of the lid", l.holeTable(), holes)
		pairs = tablePart(right, "Between centres, "+UnitWord(l.System)+l.goodWithin(), pairTable(), pairs)
		for _, c := range []*scene.Column{column, left, right} {
			page.Draw(c.Elements...)
		}
		title := scene.BoxAt(scene.Point{X: 15, Y: marginMM}, paper.Width-30, titleMM-1)
		page.Draw(l.TitleBlock(title, "Lid of "+l.Tub+": what to do", paper)...)
		if l.Stop != "" {
			page.Draw(StopPlate(box, l.Stop)...)
		}
		if len(holes) == 0 && len(pairs) == 0 {
			return
		}
	}
}

func (l Lid) frontHead(c *scene.Column, t Tiling) {
	c.Text(scene.Style{Face: scene.Serif, SizeMM: headMM}, "Lid sheet of "+l.Tub+": what to do")
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
func tablePart(c *scene.Column, caption string, table scene.Table, rows [][]string) [][]string {
	if len(rows) == 0 {
		return nil
	}
	c.Text(scene.Style{Face: scene.SerifItalic, SizeMM: tableMM}, caption)
	n := min(len(rows), table.Fits(c.Left()))
	table.Rows = rows[:n]
	c.Table(table)
	return rows[n:]
}

func (l Lid) holeTable() scene.Table {
	return scene.Table{SizeMM: tableMM, Fields: []scene.Field{
		{Head: "hole", Share: 2.5, Face: scene.SansBold},
		{Head: "right", Share: 2.6, Anchor: scene.End},
		{Head: "up", Share: 2.6, Anchor: scene.End},
		{Head: "size", Share: 5.1, Anchor: scene.End},
	}}
}

func (l Lid) holeRows() [][]string {
	var out [][]string
	for _, h := range l.Holes {
		out = append(out, []string{itoa(h.N), l.mark(h.XMM), l.mark(h.YMM), ToolSize(h.SizeMM, l.System)})
	}
	if a := l.AirLine; a != nil {
		name := "air line"
		if a.OnWall {
			name = "air, wall"
		}
		out = append(out, []string{name, l.mark(a.XMM), l.mark(a.YMM), ToolSize(a.SizeMM, l.System)})
	}
	if s := l.Service; s != nil {
		out = append(out, []string{"service", l.mark(s.XMM), l.mark(s.YMM), ToolSize(s.SizeMM, l.System)})
	}
	return out
}

func pairTable() scene.Table {
	return scene.Table{SizeMM: tableMM, Fields: []scene.Field{
		{Head: "holes", Share: 2.2, Face: scene.SansBold},
		{Head: "plan", Share: 2, Anchor: scene.End},
		{Head: "marked", Share: 2.4, Anchor: scene.End},
		{Head: "drilled", Share: 2.4, Anchor: scene.End},
	}}
}

func (l Lid) pairRows() [][]string {
	var out [][]string
	for _, p := range l.MeasurePairs() {
		out = append(out, []string{fmt.Sprintf("%d to %d", p.A, p.B), l.mark(p.MM), scene.Blank, scene.Blank})
	}
	return out
}

func (l Lid) goodWithin() string {
	if l.ToleranceMM <= 0 {
		return ""
	}
	return "; good within " + l.mark(l.ToleranceMM)
}
