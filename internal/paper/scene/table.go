package scene

// Field is one column of a table.
type Field struct {
	Head   string
	Share  float64 // of the table's width, against the other shares
	Anchor Anchor
	Face   Face
}

// Table is rows of short cells under a head. A cell that is Blank is drawn as a
// line to write on; a cell that is too wide is cut with an ellipsis.
type Table struct {
	Fields []Field
	Rows   [][]string
	SizeMM float64 // type size
	RowMM  float64 // height of a row; 0 for 1.6 of the size
}

// Blank is a cell to be filled in by hand.
const Blank = "\x00"

func (t Table) rowMM() float64 {
	if t.RowMM == 0 {
		return t.SizeMM * 1.6
	}
	return t.RowMM
}

// HeightMM is the height the table takes in a column.
func (t Table) HeightMM() float64 { return t.rowMM() * float64(len(t.Rows)+1) }

// Fits is the number of rows that would fit into mm of height.
func (t Table) Fits(mm float64) int {
	return max(0, int((mm+roundingMM)/t.rowMM())-1)
}

// Table lays a table.
func (c *Column) Table(t Table) {
	block, ok := c.Take(t.HeightMM())
	if !ok {
		return
	}
	heads := make([]string, len(t.Fields))
	for i, f := range t.Fields {
		heads[i] = f.Head
	}
	c.row(t, block, 0, heads, Part)
	for i, cells := range t.Rows {
		c.row(t, block, i+1, cells, Thin)
	}
}

// cellPadMM keeps a cell off its neighbours.
const cellPadMM = 1

func (c *Column) row(t Table, block Box, n int, cells []string, under Class) {
	bottom := block.Max.Y - t.rowMM()*float64(n+1)
	style := Style{SizeMM: t.SizeMM, Leading: t.rowMM() / t.SizeMM}
	shares := 0.0
	for _, f := range t.Fields {
		shares += f.Share
	}
	left := block.Min.X
	for i, f := range t.Fields {
		width := block.Width() * f.Share / shares
		face := f.Face
		if n == 0 {
			face = Sans
		}
		if i < len(cells) {
			cell := Box{Point{left, bottom}, Point{left + width, bottom + t.rowMM()}}
			c.cell(cell, cells[i], Style{Face: face, SizeMM: style.SizeMM, Leading: style.Leading}, f.Anchor)
		}
		left += width
	}
	c.Elements = append(c.Elements, Line{From: Point{block.Min.X, bottom}, To: Point{block.Max.X, bottom}, Class: under})
}

func (c *Column) cell(cell Box, text string, style Style, anchor Anchor) {
	from, to := cell.Min.X+cellPadMM, cell.Max.X-cellPadMM
	if text == Blank {
		y := cell.Min.Y + cell.Height()*0.2
		c.Elements = append(c.Elements, Line{From: Point{from + (to-from)*0.2, y}, To: Point{to, y}, Class: Thin})
		return
	}
	x := [...]float64{from, (from + to) / 2, to}[anchor]
	// A number is never cut while smaller type can show it whole.
	size := style.SizeMM
	if width := style.Face.Width(text, size); width > to-from {
		size = max(size*leastShrink, size*(to-from)/width)
	}
	c.Elements = append(c.Elements, Text{
		At: Point{x, cell.Max.Y - style.baseline()}, Text: style.Face.Fitted(text, size, to-from+roundingMM),
		SizeMM: size, Face: style.Face, Anchor: anchor,
	})
}

// leastShrink is the smallest share of the type size that a cell is set in.
const leastShrink = 0.7

// Cell is one entry of a title block.
type Cell struct {
	Label, Value string
	Share        float64
}

// TitleBlock is a framed row of labelled entries (after ISO 7200, from memory).
// A value takes two lines at most and is then cut.
func TitleBlock(box Box, cells []Cell, sizeMM float64) []Element {
	out := []Element{Shape{Path: Rectangle(box), Class: Part}}
	shares := 0.0
	for _, cell := range cells {
		shares += cell.Share
	}
	const pad = 1.2
	left := box.Min.X
	for i, cell := range cells {
		width := box.Width() * cell.Share / shares
		if i > 0 {
			out = append(out, Line{From: Point{left, box.Min.Y}, To: Point{left, box.Max.Y}})
		}
		inner := width - 2*pad
		label := sizeMM * 0.75
		y := box.Max.Y - label*1.15
		out = append(out, Text{At: Point{left + pad, y}, Text: Sans.Fitted(cell.Label, label, inner), SizeMM: label})
		for _, line := range twoLines(cell.Value, sizeMM, inner) {
			y -= sizeMM * 1.2
			out = append(out, Text{At: Point{left + pad, y}, Text: line, SizeMM: sizeMM})
		}
		left += width
	}
	return out
}

func twoLines(text string, sizeMM, width float64) []string {
	lines := Sans.Wrap(text, sizeMM, width)
	if len(lines) <= 2 {
		return lines
	}
	return []string{lines[0], Sans.Fitted(lines[1]+" "+lines[2], sizeMM, width)}
}
