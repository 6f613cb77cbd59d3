package booklet

import (
	"fmt"
	"strconv"
	"strings"

	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

func (c card) pictures(column *scene.Column) {
	w := c.wording()
	c.stop(column, w.stop)
	column.Gap(2.5)
	frame, elements := w.setUp(column.Box.Width())
	column.Figure(frame, elements)
	column.Gap(1)
	column.Text(c.small(scene.Sans), w.caption)
	column.Gap(2.5)
	lid := overviewOf(c.Lid, column.Box.Width(), column.Box.Height()*0.27)
	column.Figure(lid.frame, lid.elements)
	column.Gap(1)
	column.Text(c.small(scene.Sans), "Lid from above, 1 : "+lid.scale+", numbers in "+sheet.UnitWord(c.System)+". "+c.legend())
	if c.fit.centres {
		c.centres(column)
	}
}

// legend names what the letters and the crossing on the small lid stand for.
func (c card) legend() string {
	var words []string
	if c.AirLine != nil {
		words = append(words, "A air line")
	}
	if c.Service != nil {
		words = append(words, "S service hole")
	}
	if len(c.KeepClear) > 0 {
		words = append(words, "crossed: keep clear")
	}
	if len(words) == 0 {
		return ""
	}
	return strings.Join(words, ", ") + "."
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
	column.Gap(2)
	column.Text(c.small(scene.SerifItalic), "Centres from the lower left corner, "+sheet.UnitWord(c.System))
	table := scene.Table{SizeMM: c.fit.table * scene.PointMM, RowMM: c.fit.table * scene.PointMM * 1.45, Fields: []scene.Field{
		{Head: "hole", Share: 1.3, Face: scene.SansBold}, {Head: "right", Share: 1.8, Anchor: scene.End}, {Head: "up", Share: 1.8, Anchor: scene.End},
	}}
	var rows [][]string
	add := func(name string, x, y float64) {
		rows = append(rows, []string{name, sheet.Mark(x, c.System), sheet.Mark(y, c.System)})
	}
	for _, h := range c.Holes {
		add(strconv.Itoa(h.N), h.XMM, h.YMM)
	}
	if c.AirLine != nil {
		add("A", c.AirLine.XMM, c.AirLine.YMM)
	}
	if c.Service != nil {
		add("S", c.Service.XMM, c.Service.YMM)
	}
	sideBySide(column, table, rows)
}

// done is what the holes are, once they are there.
func (c card) done() string {
	if c.Foam != nil {
		return "cut"
	}
	return "drilled"
}

func (c card) pairs(column *scene.Column) {
	pairs := c.MeasurePairs()
	if c.fit.pairs == 0 || len(pairs) == 0 {
		return
	}
	caption := "Between centres, " + sheet.UnitWord(c.System)
	if c.ToleranceMM > 0 {
		caption += "; good within " + sheet.Mark(c.ToleranceMM, c.System)
	}
	if len(pairs) > c.fit.pairs {
		caption += "; more on the lid sheet"
		pairs = pairs[:c.fit.pairs]
	}
	column.Gap(2)
	column.Text(c.small(scene.SerifItalic), caption)
	table := scene.Table{SizeMM: c.fit.table * scene.PointMM, RowMM: c.fit.table * scene.PointMM * 1.5, Fields: []scene.Field{
		{Head: "holes", Share: 1.7, Face: scene.SansBold}, {Head: "plan", Share: 1.7, Anchor: scene.End}, {Head: c.done(), Share: 1.6, Anchor: scene.End},
	}}
	var rows [][]string
	for _, p := range pairs {
		rows = append(rows, []string{fmt.Sprintf("%d to %d", p.A, p.B), sheet.Mark(p.MM, c.System), scene.Blank})
	}
	sideBySide(column, table, rows)
}
