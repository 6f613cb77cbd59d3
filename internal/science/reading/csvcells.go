package reading

import (
	"errors"
	"slices"
	"strconv"
	"strings"
	"time"

	"rootbell/internal/base/quantity"
)

// cellIn is a cell being read: its text without guard and outer blanks, never
// empty, the unit of its column, and the row that it fills.
type cellIn struct {
	row    *Row
	text   string
	unit   string
	own    bool // the unit is the one that the row keeps
	zone   *time.Location
	reject func(what, hint string)
	typed  map[Field]string // what the cell 'as typed' says, applied last
}

// filling is a cell on its way into a row, and which of the record it is.
type filling struct {
	heading
	text string
	at   int
}

// fill makes a row of cells. What cannot be read is rejected and left out.
func fill(cells []filling, zone *time.Location, reject func(f filling, what, hint string)) Row {
	var row Row
	typed := map[Field]string{}
	for _, f := range cells {
		f.column.take(&cellIn{
			row: &row, text: f.text, unit: f.unit, own: f.unit == f.column.unit, zone: zone, typed: typed,
			reject: func(what, hint string) { reject(f, what, hint) },
		})
	}
	for _, f := range typedFields {
		if now, _ := f.texts(row); typed[f.name] != "" && now != "" {
			f.set(&row, typed[f.name])
		}
	}
	return row
}

// unitOr is the unit asked for where it suits the column, else the column's
// own; what is wrong with it, if anything.
func (c column) unitOr(unit string) (suits, what, hint string) {
	switch {
	case unit == "" || c.unit == unit:
		return c.unit, "", ""
	case c.unit == "":
		return "", "'" + c.head + "' has no unit", "leave out '" + shortened(unit) + "'"
	}
	if _, scale := ParseScale(unit); scale && c.head == string(FieldEC) {
		return unit, "", ""
	}
	kinds := map[string]quantity.Kind{"mS/cm": quantity.Conductivity, "°C": quantity.Temperature, "L": quantity.Volume, "mm": quantity.Length, "g": quantity.SmallMass}
	if _, err := quantity.Parse(kinds[c.unit], "1 "+unit); err != nil {
		var q *quantity.Error
		errors.As(err, &q)
		return c.unit, "'" + shortened(unit) + "' is no unit for '" + c.head + "': " + q.What, q.Hint
	}
	return unit, "", ""
}

func (c *cellIn) wrong(err error) {
	var q *quantity.Error
	if errors.As(err, &q) {
		c.reject(q.What, q.Hint)
		return
	}
	c.reject(err.Error(), "")
}

// plain reads a cell that is nothing but a decimal number in the unit that the
// row keeps, as nearly all are: to the same bits as the parser of quantities,
// without its search for a unit.
func (c *cellIn) plain() (float64, bool) {
	if !c.own || len(c.text) > 15 || strings.Trim(c.text, "0123456789.") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(c.text, 64)
	return v, err == nil
}

func takeFigure[Q quantity.Quantity](c *cellIn) quantity.Typed[Q] {
	if v, plain := c.plain(); plain {
		return quantity.Typed[Q]{Value: Q(v), Text: c.text}
	}
	t, err := ParseTyped[Q](c.text, c.unit)
	if err != nil {
		c.wrong(err)
	}
	return t
}

func takeInterval[Q quantity.Quantity](c *cellIn, into *quantity.Interval[Q]) {
	if v, plain := c.plain(); plain {
		*into = quantity.Interval[Q]{Low: Q(v), High: Q(v), Text: c.text}
		return
	}
	read, err := ParseInterval[Q](c.text, c.unit)
	if err != nil {
		c.wrong(err)
		return
	}
	*into = read
}

func takeEC(c *cellIn) {
	scale, known := ParseScale(c.unit)
	if c.own || !known {
		takeInterval(c, &c.row.EC.Read)
		return
	}
	read, err := ParseEC(c.text, scale)
	if err != nil {
		c.wrong(err)
		return
	}
	c.row.EC.Read = read
	if scale.PPM() && c.row.EC.Scale == "" {
		c.row.EC.Scale = scale
	}
}

func takeWord[T ~string](c *cellIn, text string, words []T) T {
	all := make([]string, len(words))
	for i, w := range words {
		if strings.EqualFold(string(w), text) {
			return w
		}
		all[i] = string(w)
	}
	if scale, known := ParseScale(text); known && slices.Contains(words, T(scale)) {
		return T(scale)
	}
	c.reject("'"+shortened(text)+"' is not known here", "write "+listed(all))
	return ""
}

func takeList[T ~string](c *cellIn, words []T) []T {
	var out []T
	for part := range strings.SplitSeq(c.text, ";") {
		if part = strings.TrimSpace(part); part == "" {
			continue
		}
		if w := takeWord(c, part, words); w != "" && !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}

func takeTick(c *cellIn) bool {
	switch strings.ToLower(c.text) {
	case "yes", "true", "1", "x":
		return true
	case "no", "false", "0":
		return false
	}
	c.reject("'"+shortened(c.text)+"' is neither yes nor no", "write yes, or leave it empty")
	return false
}

func takeDay(c *cellIn) time.Time {
	t, err := time.Parse(time.DateOnly, c.text)
	if err != nil {
		c.reject("'"+shortened(c.text)+"' is no day", "write it as 2027-01-11: year, month, day")
		return time.Time{}
	}
	return t
}

// Layouts of a moment with its offset, and of one that leaves it to the zone.
var (
	withOffset    = []string{time.RFC3339Nano, "2006-01-02 15:04:05Z07:00", "2006-01-02T15:04Z07:00", "2006-01-02 15:04Z07:00"}
	withoutOffset = []string{"2006-01-02T15:04:05", "2006-01-02 15:04:05", "2006-01-02T15:04", "2006-01-02 15:04"}
)

func takeMoment(c *cellIn) {
	t, err := ParseMoment(c.text, c.zone)
	if err != nil {
		c.wrong(err)
		return
	}
	c.row.At = t
}

// ParseMoment reads a moment as ISO 8601 writes it, with its offset, or without
// one in the zone passed in, to the thousandth of a second. An hour that the
// zone skips or has twice when clocks change needs its offset. The error is a
// *quantity.Error.
func ParseMoment(text string, zone *time.Location) (time.Time, error) {
	if zone == nil {
		zone = time.UTC
	}
	text = strings.TrimSpace(text)
	for _, layout := range withOffset {
		if t, err := time.Parse(layout, text); err == nil {
			return t.In(zone).Truncate(time.Millisecond), nil
		}
	}
	for _, layout := range withoutOffset {
		wall, err := time.Parse(layout, text)
		if err != nil {
			continue
		}
		return inZone(wall, text, zone)
	}
	return time.Time{}, &quantity.Error{
		What: "'" + shortened(text) + "' is no moment",
		Hint: "write day, hour and offset as in 2027-01-11T08:40:00+00:00",
	}
}

// inZone finds the moments at which the clocks of a zone show a reading, among
// all offsets the zone has around that day.
func inZone(wall time.Time, text string, zone *time.Location) (time.Time, error) {
	var found []time.Time
	for hours := -26; hours <= 26; hours++ {
		_, offset := wall.Add(time.Duration(hours) * time.Hour).In(zone).Zone()
		t := wall.Add(-time.Duration(offset) * time.Second).In(zone)
		shown := t.Format("2006-01-02T15:04:05.999") == wall.Format("2006-01-02T15:04:05.999")
		if shown && !slices.ContainsFunc(found, t.Equal) {
			found = append(found, t)
		}
	}
	hint := "write the offset too, as in 2027-01-11T08:40:00+00:00"
	switch len(found) {
	case 0:
		return time.Time{}, &quantity.Error{What: "the clocks skip '" + shortened(text) + "'", Hint: hint}
	case 1:
		return found[0].Truncate(time.Millisecond), nil
	}
	return time.Time{}, &quantity.Error{What: "the clocks show '" + shortened(text) + "' twice", Hint: hint}
}

// takeTyped reads the list of figures as they were typed.
func takeTyped(c *cellIn) {
	for _, part := range unescape(c.text) {
		name, text, ok := strings.Cut(part, ": ")
		known := slices.ContainsFunc(typedFields, func(f typedField) bool { return string(f.name) == name })
		if !ok || !known || strings.TrimSpace(text) == "" {
			c.reject("'"+shortened(part)+"' names no figure of the row", "write it as 'pH: 61', or leave the cell empty")
			continue
		}
		c.typed[Field(name)] = strings.TrimSpace(text)
	}
}

// unescape parts the list at each ';' that no '\' guards.
func unescape(text string) []string {
	var out []string
	var b strings.Builder
	guard := false
	for _, r := range text {
		switch {
		case guard:
			b.WriteRune(r)
			guard = false
		case r == '\\':
			guard = true
		case r == ';':
			out = append(out, strings.TrimSpace(b.String()))
			b.Reset()
		default:
			b.WriteRune(r)
		}
	}
	return append(out, strings.TrimSpace(b.String()))
}
