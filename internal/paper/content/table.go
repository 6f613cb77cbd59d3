package content

import "rootbell/internal/paper/scene"

// Table is rows under heads; the first cell of a row names it.
type Table struct {
	Caption string
	Columns []Column
	Rows    [][]string // a cell that is Blank is written on by hand
	Wordy   bool       // a row is named by a phrase, not by a short name
}

// Column is a column's head.
type Column struct {
	Head   string
	Number bool // numbers, set flush right
	Tick   bool // a box to tick when it is done; its cells are Blank
}

// Ticked tells whether the table is a list to tick off.
func (t Table) Ticked() bool { return len(t.Columns) > 0 && t.Columns[len(t.Columns)-1].Tick }

// Blank is a cell to be filled in by hand.
const Blank = scene.Blank

// Cell is one cell of a row, with what a page must know of it.
type Cell struct {
	Head   string // of its column
	Text   string
	Blank  bool
	Number bool
}

// Cells are the cells of row i.
func (t Table) Cells(i int) []Cell {
	cells := make([]Cell, 0, len(t.Columns))
	for k, text := range t.Rows[i] {
		cell := Cell{Text: text}
		if k < len(t.Columns) {
			cell.Head, cell.Number = t.Columns[k].Head, t.Columns[k].Number
		}
		if text == Blank {
			cell.Text, cell.Blank = "", true
		}
		cells = append(cells, cell)
	}
	return cells
}

// Set is the table for a printed sheet: shares are of the width, one for each
// column, and the first column stands out.
func (t Table) Set(sizeMM, rowMM float64, shares ...float64) scene.Table {
	out := scene.Table{SizeMM: sizeMM, RowMM: rowMM, Rows: t.Rows}
	for i, c := range t.Columns {
		field := scene.Field{Head: c.Head, Share: 1}
		if i < len(shares) {
			field.Share = shares[i]
		}
		if i == 0 {
			field.Face = scene.SansBold
		}
		if c.Number {
			field.Anchor = scene.End
		}
		out.Fields = append(out.Fields, field)
	}
	return out
}
