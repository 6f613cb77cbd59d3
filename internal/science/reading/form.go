package reading

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"
)

// Entered is one field of the form as it was filled in: the head of its column,
// with another unit in brackets where the form shows one ('water (°F)'), and
// what was typed. Ticked deeds are one text, parted by semicolons.
type Entered struct{ Head, Text string }

// FromForm makes a row of a form. Unlike a table, whose EC is in mS/cm, a form
// holds the figure on the meter, which 'EC scale' explains. All problems are
// given at once, each with its field; in.Known is not looked at.
func FromForm(entered []Entered, in Import) (Row, []Problem) {
	var problems []Problem
	reject := func(f Field, what, hint string) {
		problems = append(problems, Problem{Field: f, What: what, Hint: hint})
	}
	scale := ""
	for _, e := range entered {
		if s, known := ParseScale(e.Text); known && e.Head == "EC scale" {
			scale = string(s)
		}
	}
	var cells []filling
	for _, e := range entered {
		name, unit := splitHead(e.Head)
		c := columnOf(name)
		text := strings.TrimSpace(e.Text)
		switch {
		case c == nil:
			reject(Field(e.Head), "'"+shortened(e.Head)+"' is no field of the logbook", "leave it out")
			continue
		case text == "":
			continue
		case c.head == string(FieldEC) && unit == "":
			unit = scale
		}
		suits, what, hint := c.unitOr(unit)
		if what != "" {
			reject(Field(c.head), what, hint)
		}
		cells = append(cells, filling{heading{c, suits}, strings.ReplaceAll(text, "\r\n", "\n"), 0})
	}
	row := fill(cells, in.Zone, func(f filling, what, hint string) { reject(Field(f.column.head), what, hint) })
	if len(problems) > 0 {
		return row, problems
	}
	for _, b := range in.By {
		if strings.EqualFold(b, row.By) {
			row.By = b // as the plan spells it
		}
	}
	return row, row.Check(in.By)
}

// columnOf is the column of a head, in any case.
func columnOf(head string) *column {
	i := slices.IndexFunc(columns, func(c column) bool { return strings.EqualFold(c.head, head) })
	if i < 0 {
		return nil
	}
	return &columns[i]
}

// MarshalJSON writes the row as the cells of its table by their heads, without
// the empty ones, in the table's order: the same row gives the same bytes.
func (r Row) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for _, c := range columns {
		cell := c.give(r, r.At.Location())
		if cell == "" {
			continue
		}
		if b.Len() > 1 {
			b.WriteByte(',')
		}
		for i, text := range []string{c.head, cell} {
			quoted, err := json.Marshal(text)
			if err != nil {
				return nil, err
			}
			if i == 1 {
				b.WriteByte(':')
			}
			b.Write(quoted)
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// UnmarshalJSON reads what MarshalJSON wrote, to the last bit. The moment comes
// back with its offset.
func (r *Row) UnmarshalJSON(text []byte) error {
	var cells map[string]string
	if err := json.Unmarshal(text, &cells); err != nil {
		return fmt.Errorf("a reading is an object of texts: %w", err)
	}
	var bad error
	var filled []filling
	for i := range columns {
		if cell, given := cells[columns[i].head]; given && cell != "" {
			filled = append(filled, filling{heading{&columns[i], columns[i].unit}, cell, i})
		}
		delete(cells, columns[i].head)
	}
	if unknown := slices.Sorted(maps.Keys(cells)); len(unknown) > 0 {
		return fmt.Errorf("a reading has no field %q", unknown[0])
	}
	row := fill(filled, time.UTC, func(f filling, what, _ string) {
		if bad == nil {
			bad = fmt.Errorf("%s: %s", f.column.head, what)
		}
	})
	if bad != nil {
		return bad
	}
	*r = row
	return nil
}
