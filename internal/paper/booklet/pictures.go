package booklet

import (
	"strconv"
	"strings"

	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

func (c card) pictures(column *scene.Column) {
	w := c.wording()
	c.halt(column)
	column.Gap(2.5)
	frame, elements := w.setUp(column.Box.Width())
	column.Figure(frame, elements)
	column.Gap(1)
	column.Text(c.small(scene.Sans), strings.TrimSpace(w.caption+", 1 : "+strconv.Itoa(w.scale)+". "+w.note))
	column.Gap(2.5)
	lid := sheet.OverviewOf(c.Lid, column.Box.Width(), column.Box.Height()*0.27)
	column.Figure(lid.Frame, lid.Elements)
	column.Gap(1)
	column.Text(c.small(scene.Sans), fromAbove+", 1 : "+lid.Scale+", "+c.numbersIn())
	if c.fit.centres {
		c.centres(column)
	}
}

// sideBySide lays rows of a table in two halves next to each other.
func sideBySide(column *scene.Column, table scene.Table, rows [][]string) {
	half := (len(rows) + 1) / 2
	if len(rows) < 3 {
		table.Rows = rows
		column.Table(table)
		return
	}
	table.Rows = make([][]string, half)
	fields := append([]scene.Field{}, table.Fields...)
	fields = append(fields, scene.Field{Share: 0.3})
	fields = append(fields, table.Fields...)
	for i := range half {
		row := append(append([]string{}, rows[i]...), "")
		if i+half < len(rows) {
			row = append(row, rows[i+half]...)
		}
		table.Rows[i] = row
	}
	table.Fields = fields
	column.Table(table)
}

func (c card) centres(column *scene.Column) {
	t := c.centreTable()
	column.Gap(2)
	column.Text(c.small(scene.SerifItalic), t.Caption)
	size := c.fit.table * scene.PointMM
	sideBySide(column, t.Set(size, size*1.45, 1.3, 1.8, 1.8), t.Rows)
}

func (c card) pairs(column *scene.Column) {
	t := c.distanceTable()
	if c.fit.pairs == 0 || len(t.Rows) == 0 {
		return
	}
	if len(t.Rows) > c.fit.pairs {
		t.Caption += "; more on the lid sheet"
		t.Rows = t.Rows[:c.fit.pairs]
	}
	column.Gap(2)
	column.Text(c.small(scene.SerifItalic), t.Caption)
	size := c.fit.table * scene.PointMM
	sideBySide(column, t.Set(size, size*1.5, 1.7, 1.7, 1.6), t.Rows)
}
