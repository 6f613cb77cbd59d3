package reading

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"
	"time"

	"rootbell/internal/base/quantity"
)

// column is one column of the table: its head without the unit, the unit, how
// a row fills it and how a cell fills a row.
type column struct {
	head string
	unit string
	give func(r Row, zone *time.Location) string
	take func(c *cellIn)
	text bool // words, which a spreadsheet could take for a formula
}

// Head is the head of the column as written, with its unit.
func (c column) Head() string {
	if c.unit == "" {
		return c.head
	}
	return c.head + " (" + c.unit + ")"
}

// mark tells a spreadsheet that the text is UTF-8.
const mark = "\ufeff"

// CSV writes rows as a table for a spreadsheet, in their order: UTF-8 with its
// mark, lines ended by CR LF (RFC 4180), units in the heads, moments in a zone
// with their offset (ISO 8601), and words that a spreadsheet would take for a
// formula guarded by an apostrophe. All rows are there, the corrected ones
// too. ReadCSV gives them back as they were.
func CSV(rows []Row, zone *time.Location) ([]byte, error) {
	if zone == nil {
		zone = time.UTC
	}
	var b bytes.Buffer
	b.WriteString(mark)
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	record := make([]string, len(columns))
	for i, c := range columns {
		record[i] = c.Head()
	}
	if err := w.Write(record); err != nil {
		return nil, err
	}
	for _, r := range rows {
		for i, c := range columns {
			record[i] = c.give(r, zone)
			if c.text {
				record[i] = guarded(record[i])
			}
		}
		if err := w.Write(record); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return b.Bytes(), w.Error()
}

// The first characters that make a spreadsheet run a cell (OWASP, CSV
// Injection, from memory), with their wide forms.
const formulaStarts = "=+-@\t\r\n＝＋－＠"

// guarded keeps a spreadsheet from running a cell. A cell that already begins
// with apostrophes and would run without them gets one more, so that taking
// one off always gives the text back.
func guarded(text string) string {
	if startsFormula(strings.TrimLeft(text, "'")) {
		return "'" + text
	}
	return text
}

// unguarded takes the guard off again.
func unguarded(text string) string {
	if strings.HasPrefix(text, "'") && startsFormula(strings.TrimLeft(text, "'")) {
		return text[1:]
	}
	return text
}

func startsFormula(text string) bool {
	for _, r := range text {
		return strings.ContainsRune(formulaStarts, r)
	}
	return false
}

// exact writes a figure so that reading it gives the same bits.
func exact(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func typedCell[Q quantity.Quantity](t quantity.Typed[Q]) string {
	if !t.Set() {
		return ""
	}
	return exact(float64(t.Value))
}

func intervalCell[Q quantity.Quantity](i quantity.Interval[Q]) string {
	switch {
	case !i.Set():
		return ""
	case i.Low == i.High:
		return exact(float64(i.Low))
	}
	return exact(float64(i.Low)) + " to " + exact(float64(i.High))
}

func stepCell(v float64) string {
	if v == 0 {
		return ""
	}
	return exact(v)
}

func dayCell(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format(time.DateOnly)
}

// momentLayout is ISO 8601 with seconds, a fraction where there is one, and
// the offset in numbers, as RFC 3339 writes it.
const momentLayout = "2006-01-02T15:04:05.999-07:00"

func tick(yes bool) string {
	if yes {
		return "yes"
	}
	return ""
}

func joined[T ~string](words []T) string {
	all := make([]string, len(words))
	for i, w := range words {
		all[i] = string(w)
	}
	return strings.Join(all, "; ")
}

// asTyped lists the figures that were typed otherwise than the table writes
// them: 'pH: 61' where 6.1 was meant and taken.
func asTyped(r Row) string {
	var out []string
	for _, f := range typedFields {
		text, plain := f.texts(r)
		if text != "" && text != plain {
			out = append(out, string(f.name)+": "+escaped.Replace(text))
		}
	}
	return strings.Join(out, "; ")
}

// In the list of what was typed ';' parts the figures, so that one within a
// text is written '\;'.
var escaped = strings.NewReplacer(`\`, `\\`, `;`, `\;`)

// typedField is a figure of which the text typed is kept.
type typedField struct {
	name  Field
	texts func(Row) (typed, plain string)
	set   func(*Row, string)
}

const (
	typedLitres  Field = "level"
	typedDepth   Field = "depth"
	typedFilled  Field = "filled"
	typedAddedEC Field = "added EC"
)

var typedFields = []typedField{
	{FieldPH, func(r Row) (string, string) { return r.PH.Read.Text, intervalCell(r.PH.Read) }, func(r *Row, s string) { r.PH.Read.Text = s }},
	{FieldEC, func(r Row) (string, string) { return r.EC.Read.Text, intervalCell(r.EC.Read) }, func(r *Row, s string) { r.EC.Read.Text = s }},
	{FieldWater, func(r Row) (string, string) { return r.Water.Text, typedCell(r.Water) }, func(r *Row, s string) { r.Water.Text = s }},
	{typedLitres, func(r Row) (string, string) { return r.Level.Litres.Text, typedCell(r.Level.Litres) }, func(r *Row, s string) { r.Level.Litres.Text = s }},
	{typedDepth, func(r Row) (string, string) { return r.Level.Depth.Text, typedCell(r.Level.Depth) }, func(r *Row, s string) { r.Level.Depth.Text = s }},
	{typedFilled, func(r Row) (string, string) { return r.Level.Filled.Text, typedCell(r.Level.Filled) }, func(r *Row, s string) { r.Level.Filled.Text = s }},
	{FieldAdded, func(r Row) (string, string) { return r.Added.Litres.Text, typedCell(r.Added.Litres) }, func(r *Row, s string) { r.Added.Litres.Text = s }},
	{typedAddedEC, func(r Row) (string, string) { return r.Added.EC.Text, typedCell(r.Added.EC) }, func(r *Row, s string) { r.Added.EC.Text = s }},
	{FieldHeight, func(r Row) (string, string) { return r.Height.Text, typedCell(r.Height) }, func(r *Row, s string) { r.Height.Text = s }},
	{FieldLeaves, func(r Row) (string, string) { return r.Counted.Text, typedCell(r.Counted) }, func(r *Row, s string) { r.Counted.Text = s }},
	{FieldPicked, func(r Row) (string, string) { return r.Picked.Plants.Text, typedCell(r.Picked.Plants) }, func(r *Row, s string) { r.Picked.Plants.Text = s }},
	{FieldWeigh, func(r Row) (string, string) { return r.Picked.Mass.Text, typedCell(r.Picked.Mass) }, func(r *Row, s string) { r.Picked.Mass.Text = s }},
}
