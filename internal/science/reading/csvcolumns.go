package reading

import (
	"time"

	"rootbell/internal/base/quantity"
)

// columns are the columns of the table, in its order; never written again.
var columns = tableColumns()

func tableColumns() []column {
	words := func(head string, of func(*Row) *string) column {
		return column{
			head: head, text: true,
			give: func(r Row, _ *time.Location) string { return *of(&r) },
			take: func(c *cellIn) { *of(c.row) = c.text },
		}
	}
	return []column{
		words("id", func(r *Row) *string { return &r.ID }),
		words("tub", func(r *Row) *string { return &r.Tub }),
		{head: "moment", give: func(r Row, z *time.Location) string { return r.At.In(z).Format(momentLayout) }, take: takeMoment},
		words("by", func(r *Row) *string { return &r.By }),
		{
			head: "pH", give: func(r Row, _ *time.Location) string { return intervalCell(r.PH.Read) },
			take: func(c *cellIn) { takeInterval(c, &c.row.PH.Read) },
		},
		choice("pH read with", instruments[:], func(r *Row) *Instrument { return &r.PH.With }),
		{
			head: "pH step", give: func(r Row, _ *time.Location) string { return stepCell(float64(r.PH.Step)) },
			take: func(c *cellIn) { c.row.PH.Step = takeFigure[quantity.PH](c).Value },
		},
		dayColumn("pH calibrated", func(r *Row) *time.Time { return &r.PH.Calibrated }),
		{
			head: "EC", unit: "mS/cm", give: func(r Row, _ *time.Location) string { return intervalCell(r.EC.Read) },
			take: takeEC,
		},
		choice("EC read with", instruments[:], func(r *Row) *Instrument { return &r.EC.With }),
		choice("EC scale", scales[:], func(r *Row) *Scale { return &r.EC.Scale }),
		{
			head: "EC step", unit: "mS/cm", give: func(r Row, _ *time.Location) string { return stepCell(float64(r.EC.Step)) },
			take: func(c *cellIn) { c.row.EC.Step = takeFigure[quantity.MSPerCM](c).Value },
		},
		dayColumn("EC checked", func(r *Row) *time.Time { return &r.EC.Calibrated }),
		tickColumn("EC not at 25 °C", func(r *Row) *bool { return &r.EC.Raw }),
		figureColumn("water", "°C", func(r *Row) *quantity.Typed[quantity.DegC] { return &r.Water }),
		figureColumn("level", "L", func(r *Row) *quantity.Typed[quantity.L] { return &r.Level.Litres }),
		figureColumn("depth", "mm", func(r *Row) *quantity.Typed[quantity.MM] { return &r.Level.Depth }),
		figureColumn("filled to the line with", "L", func(r *Row) *quantity.Typed[quantity.L] { return &r.Level.Filled }),
		figureColumn("added", "L", func(r *Row) *quantity.Typed[quantity.L] { return &r.Added.Litres }),
		figureColumn("EC of what was added", "mS/cm", func(r *Row) *quantity.Typed[quantity.MSPerCM] { return &r.Added.EC }),
		figureColumn("height", "mm", func(r *Row) *quantity.Typed[quantity.MM] { return &r.Height }),
		words("leaves", func(r *Row) *string { return &r.Leaves }),
		choice("roots", colours[:], func(r *Row) *RootColour { return &r.Roots.Colour }),
		tickColumn("roots smell", func(r *Row) *bool { return &r.Roots.Smell }),
		words("seen", func(r *Row) *string { return &r.Seen }),
		listColumn("done", deeds[:], func(r *Row) *[]Deed { return &r.Done }),
		words("note", func(r *Row) *string { return &r.Note }),
		listColumn("doubtful", fields[:], func(r *Row) *[]Field { return &r.Doubtful }),
		{head: "as typed", text: true, give: func(r Row, _ *time.Location) string { return asTyped(r) }, take: takeTyped},
		words("corrects", func(r *Row) *string { return &r.Corrects }),
		tickColumn("withdrawn", func(r *Row) *bool { return &r.Withdrawn }),
		figureColumn(string(FieldLeaves), "", func(r *Row) *quantity.Typed[quantity.Number] { return &r.Counted }),
		figureColumn(string(FieldPicked), "", func(r *Row) *quantity.Typed[quantity.Number] { return &r.Picked.Plants }),
		figureColumn(string(FieldWeigh), "g", func(r *Row) *quantity.Typed[quantity.G] { return &r.Picked.Mass }),
	}
}

// firstColumns are how many columns the table had at first. The id that is made
// for a row without one comes from these and from the later ones that are filled,
// so that a table read in before the later ones came has the same ids today.
const firstColumns = 31

func figureColumn[Q quantity.Quantity](head, unit string, of func(*Row) *quantity.Typed[Q]) column {
	return column{
		head: head, unit: unit, give: func(r Row, _ *time.Location) string { return typedCell(*of(&r)) },
		take: func(c *cellIn) { *of(c.row) = takeFigure[Q](c) },
	}
}

func choice[T ~string](head string, words []T, of func(*Row) *T) column {
	return column{
		head: head, text: true, give: func(r Row, _ *time.Location) string { return string(*of(&r)) },
		take: func(c *cellIn) { *of(c.row) = takeWord(c, c.text, words) },
	}
}

func listColumn[T ~string](head string, words []T, of func(*Row) *[]T) column {
	return column{
		head: head, text: true, give: func(r Row, _ *time.Location) string { return joined(*of(&r)) },
		take: func(c *cellIn) { *of(c.row) = takeList(c, words) },
	}
}

func tickColumn(head string, of func(*Row) *bool) column {
	return column{
		head: head, give: func(r Row, _ *time.Location) string { return tick(*of(&r)) },
		take: func(c *cellIn) { *of(c.row) = takeTick(c) },
	}
}

func dayColumn(head string, of func(*Row) *time.Time) column {
	return column{
		head: head, give: func(r Row, _ *time.Location) string { return dayCell(*of(&r)) },
		take: func(c *cellIn) { *of(c.row) = takeDay(c) },
	}
}
