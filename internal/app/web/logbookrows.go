package web

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"rootbell/internal/app/store"
	"rootbell/internal/base/quantity"
	"rootbell/internal/science/reading"
)

// logHeadsView are the units in the heads of a table of readings.
type logHeadsView struct{ Volume, Temperature string }

func (l *logbook) heads() logHeadsView {
	return logHeadsView{quantity.Volume.Unit(l.Plan.Units).Symbol, quantity.Temperature.Unit(l.Plan.Units).Symbol}
}

// logRow is one reading of a table, with what it took the place of.
type logRow struct {
	ID, When, By string
	Tub          string
	Cells        []logCell // level, pH, EC, water
	Note         string
	Taken        bool // out of the book
	Corrected    string

	at     time.Time
	number int
}

// logCell is one figure: as it was, struck through, and as it is.
type logCell struct {
	Name     string
	Was      []string
	Is       string
	Doubtful bool
}

// rowsShown are the readings as a table shows them, the latest first. The
// withdrawn ones are there too, struck through.
func (l *logbook) rowsShown(kept []store.Written) []logRow {
	groups := map[string][]store.Written{}
	root := map[string]string{}
	var order []string
	for _, w := range kept {
		of, known := root[w.Corrects]
		if w.Corrects == "" || !known {
			of = w.ID
			order = append(order, of)
		}
		root[w.ID] = of
		groups[of] = append(groups[of], w)
	}
	out := make([]logRow, 0, len(order))
	for _, id := range byMoment(order, groups) {
		out = append(out, l.rowShown(groups[id]))
	}
	return out
}

// rowShown is one reading: the rows of it in the order written down.
func (l *logbook) rowShown(rows []store.Written) logRow {
	last := rows[len(rows)-1]
	out := logRow{
		ID: last.ID, Tub: last.Tub, By: last.By, Taken: last.Withdrawn,
		When: last.At.In(l.Now.Location()).Format("Mon 2 Jan 15:04"), Note: l.noteOf(last.Row),
		at: last.At, number: last.Number,
	}
	for _, f := range []reading.Field{reading.FieldLevel, reading.FieldPH, reading.FieldEC, reading.FieldWater} {
		c := logCell{Name: string(f), Is: l.cellWords(last.Row, f), Doubtful: last.Doubts(f)}
		for _, was := range rows[:len(rows)-1] {
			text := l.cellWords(was.Row, f)
			if text != c.Is && text != "" && (len(c.Was) == 0 || c.Was[len(c.Was)-1] != text) {
				c.Was = append(c.Was, text)
			}
		}
		out.Cells = append(out.Cells, c)
	}
	if len(rows) > 1 {
		at := last.Recorded.In(l.Now.Location()).Format("Mon 2 Jan 15:04")
		out.Corrected = "corrected " + at
		if last.Withdrawn {
			out.Corrected = "taken out " + at
		}
		if last.By != "" {
			out.Corrected += " by " + last.By
		}
	}
	return out
}

// cellWords is a figure in a column whose unit stands in its head.
func (l *logbook) cellWords(r reading.Row, f reading.Field) string {
	system := l.Plan.Units
	switch {
	case f == reading.FieldLevel && r.Level.Litres.Set():
		return plainFigure(r.Level.Litres, quantity.Volume, system)
	case f == reading.FieldEC && r.EC.Read.Set():
		return ecFigure(r.EC)
	case f == reading.FieldWater && r.Water.Set():
		return plainFigure(r.Water, quantity.Temperature, system)
	}
	return l.fieldWords(r, f)
}

// fieldWords is a figure with its unit, as a sentence has it.
func (l *logbook) fieldWords(r reading.Row, f reading.Field) string {
	system := l.Plan.Units
	switch f {
	case reading.FieldLevel:
		switch v := r.Level; {
		case v.Litres.Set():
			return withUnit(v.Litres, quantity.Volume, system)
		case v.Depth.Set():
			return withUnit(v.Depth, quantity.Length, system) + " deep"
		case v.Filled.Set():
			return "full, with " + withUnit(v.Filled, quantity.Volume, system)
		}
	case reading.FieldPH:
		return phFigure(r.PH)
	case reading.FieldEC:
		if r.EC.Read.Set() {
			return ecFigure(r.EC) + "\u00a0mS/cm"
		}
	case reading.FieldWater:
		return withUnit(r.Water, quantity.Temperature, system)
	case reading.FieldHeight:
		return withUnit(r.Height, quantity.Length, system)
	case reading.FieldAdded:
		return withUnit(r.Added.Litres, quantity.Volume, system)
	case reading.FieldLeaves:
		return plainFigure(r.Counted, quantity.Count, system)
	case reading.FieldPicked:
		return plainFigure(r.Picked.Plants, quantity.Count, system)
	case reading.FieldWeigh:
		return withUnit(r.Picked.Mass, quantity.SmallMass, system)
	}
	return ""
}

// plainFigure is a figure with the decimals with which it was typed in the
// unit shown, else with the kind's own.
func plainFigure[Q quantity.Quantity](t quantity.Typed[Q], kind quantity.Kind, system quantity.System) string {
	if !t.Set() {
		return ""
	}
	unit := kind.Unit(system)
	if again, err := reading.ParseTyped[Q](t.Text, unit.Symbol); err == nil && again.Value == t.Value && !hasUnit(t.Text) {
		return t.Text
	}
	at := kind.Decimals[system]
	return quantity.FormatNumber(quantity.Round((t.Value.Base()-unit.Offset)/unit.Scale, at), at)
}

func withUnit[Q quantity.Quantity](t quantity.Typed[Q], kind quantity.Kind, system quantity.System) string {
	if !t.Set() {
		return ""
	}
	return plainFigure(t, kind, system) + "\u00a0" + kind.Unit(system).Symbol
}

// phFigure is a pH as the instrument shows it.
func phFigure(p reading.PH) string { return rangeWords(phText(p.Read)) }

// ecFigure is an EC in mS/cm, whatever its meter shows.
func ecFigure(e reading.EC) string {
	if e.Scale.PerMS() == 1 {
		if text := ecText(e); !hasUnit(strings.Replace(text, " to ", "", 1)) {
			return rangeWords(text)
		}
	}
	at := quantity.Conductivity.Decimals[quantity.Metric]
	low, high := quantity.FormatNumber(float64(e.Read.Low), at), quantity.FormatNumber(float64(e.Read.High), at)
	if low == high {
		return low
	}
	return low + " to " + high
}

// rangeWords keeps an interval on one line of a narrow column.
func rangeWords(text string) string { return strings.ReplaceAll(text, " to ", "\u00a0to\u00a0") }

// noteOf is all else that a reading says.
func (l *logbook) noteOf(r reading.Row) string {
	var parts []string
	add := func(part string) {
		if part != "" {
			parts = append(parts, part)
		}
	}
	for _, d := range r.Done {
		if d != reading.Nothing {
			add(string(d))
		}
	}
	if r.Added.Litres.Set() {
		add("poured in " + l.fieldWords(r, reading.FieldAdded))
	}
	if r.Height.Set() {
		add("plants " + l.fieldWords(r, reading.FieldHeight))
	}
	add(l.pickedWords(r))
	if r.Counted.Set() {
		add(l.fieldWords(r, reading.FieldLeaves) + " leaves on one plant")
	}
	roots := string(r.Roots.Colour)
	if r.Roots.Smell {
		roots = strings.TrimSpace(roots + " and smell")
	}
	if roots != "" {
		add("roots " + roots)
	}
	if r.Leaves != "" {
		add("leaves " + r.Leaves)
	}
	add(r.Seen)
	add(r.Note)
	for _, f := range r.Doubtful {
		add(string(f) + " is doubtful")
	}
	return strings.Join(parts, "; ")
}

// pickedWords is a harvest as a note has it.
func (l *logbook) pickedWords(r reading.Row) string {
	plants, mass := l.fieldWords(r, reading.FieldPicked), l.fieldWords(r, reading.FieldWeigh)
	switch {
	case plants == "" && mass == "":
		return ""
	case plants == "":
		return "picked " + mass
	case mass == "":
		return "plants picked: " + plants
	}
	return "plants picked: " + plants + ", together " + mass
}

// byMoment orders readings by the moment of the row that stands, the latest
// first.
func byMoment(order []string, groups map[string][]store.Written) []string {
	last := func(id string) store.Written { return groups[id][len(groups[id])-1] }
	slices.SortStableFunc(order, func(a, b string) int {
		x, y := last(a), last(b)
		return cmp.Or(y.At.Compare(x.At), cmp.Compare(y.Number, x.Number))
	})
	return order
}
