package reading

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"
)

// Import is what a table is read against.
type Import struct {
	Zone  *time.Location // for moments without an offset
	By    []string       // the teams and jobs of the plan
	Known []string       // ids that the logbook has already, which a row may correct
}

// Table is what was read from a table.
type Table struct {
	Rows []Row
	Left []string // heads of columns that are none of the logbook's and were left out
}

// ReadCSV reads a table of readings: CSV's own, or a teacher's with the same
// heads in any order, parted by commas, semicolons or tabs. A head's unit in
// brackets may be any usual one: 'water (°F)', 'EC (ppm 500)'. All problems
// are given at once; where there is one, no row is. A table with a column about
// people is refused before its rows are looked at.
func ReadCSV(text []byte, in Import) (Table, []Problem) {
	r := &reader{in: in, lines: lines(text)}
	if in.Zone == nil {
		r.in.Zone = time.UTC
	}
	if !r.head(text) {
		return Table{}, r.problems
	}
	r.rows()
	r.links()
	if len(r.problems) > 0 {
		slices.SortStableFunc(r.problems, func(a, b Problem) int {
			return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
		})
		return Table{}, r.problems
	}
	return Table{Rows: r.out, Left: r.left}, nil
}

type reader struct {
	in       Import
	csv      *csv.Reader
	lines    [][]byte
	at       []heading
	left     []string
	out      []Row
	places   []rowPlaces
	width    int // cells of the record read last
	problems []Problem
}

// heading is what a column of the table read is; column is nil where it is
// left out.
type heading struct {
	column *column
	unit   string
}

type place struct{ line, column int }

func (r *reader) reject(f Field, p place, what, hint string) {
	r.problems = append(r.problems, Problem{Field: f, Line: p.line, Column: p.column, What: what, Hint: hint})
}

// place is where a field of the record read last stands, in characters.
func (r *reader) place(field int) place {
	line, column := r.csv.FieldPos(field)
	return r.characters(line, column)
}

func (r *reader) characters(line, column int) place {
	if line < 1 || line > len(r.lines) {
		return place{max(line, 1), max(column, 1)}
	}
	before := r.lines[line-1]
	return place{line, utf8.RuneCount(before[:min(max(column-1, 0), len(before))]) + 1}
}

func lines(text []byte) [][]byte {
	return bytes.Split(bytes.TrimPrefix(text, []byte(mark)), []byte("\n"))
}

// head reads the first line. False where the table cannot be read further.
func (r *reader) head(text []byte) bool {
	first := place{1, 1}
	switch {
	case bytes.HasPrefix(text, []byte{0xff, 0xfe}), bytes.HasPrefix(text, []byte{0xfe, 0xff}):
		r.reject("", first, "the table is not written in UTF-8", "save it again as 'CSV UTF-8'")
		return false
	case len(bytes.TrimSpace(bytes.TrimPrefix(text, []byte(mark)))) == 0:
		r.reject("", first, "the table is empty", "the first line holds the heads of the columns: tub, moment, pH and so on")
		return false
	case !utf8.Valid(text):
		at := invalidAt(r.lines)
		r.reject("", at, "the table is not written in UTF-8", "save it again as 'CSV UTF-8'")
		return false
	}
	body := bytes.TrimPrefix(text, []byte(mark))
	r.csv = csv.NewReader(bytes.NewReader(body))
	r.csv.FieldsPerRecord = -1
	r.csv.Comma = parting(body)
	heads, err := r.csv.Read()
	if err != nil {
		r.broken(err)
		return false
	}
	for i, h := range heads {
		r.heading(i, unguarded(strings.TrimSpace(h)))
	}
	for _, needed := range []string{"tub", "moment"} {
		if !slices.ContainsFunc(r.at, func(h heading) bool { return h.column != nil && h.column.head == needed }) {
			r.reject(Field(needed), first, "the table has no column '"+needed+"'", "its first line names the columns; "+needed+" has to be one of them")
		}
	}
	return len(r.problems) == 0
}

func invalidAt(all [][]byte) place {
	for n, l := range all {
		for i, c := 0, 1; i < len(l); c++ {
			r, size := utf8.DecodeRune(l[i:])
			if r == utf8.RuneError && size == 1 {
				return place{n + 1, c}
			}
			i += size
		}
	}
	return place{1, 1}
}

// parting is the character that parts the columns: the one that the first line
// has most of.
func parting(body []byte) rune {
	first, _, _ := bytes.Cut(body, []byte("\n"))
	best, most := ',', bytes.Count(first, []byte(","))
	for _, r := range ";\t" {
		if n := bytes.Count(first, []byte(string(r))); n > most {
			best, most = r, n
		}
	}
	return best
}

// heading finds the column that a head names, and refuses one about people.
func (r *reader) heading(i int, head string) {
	name, unit := splitHead(head)
	for c := range columns {
		if !strings.EqualFold(columns[c].head, name) {
			continue
		}
		if slices.ContainsFunc(r.at, func(h heading) bool { return h.column == &columns[c] }) {
			r.reject(Field(columns[c].head), r.place(i), "the column '"+shortened(name)+"' stands twice", "leave one of them")
		}
		r.at = append(r.at, heading{&columns[c], r.unit(i, columns[c], unit)})
		return
	}
	r.at = append(r.at, heading{})
	if what, found := columnOfPerson(head); found {
		r.reject("", r.place(i), "the column '"+shortened(head)+"' holds "+what+"; the logbook keeps nothing about a person, and nothing was stored",
			"take the column out of the table and read it in again")
		return
	}
	if head != "" {
		r.left = append(r.left, head)
	}
}

func splitHead(head string) (name, unit string) {
	open := strings.LastIndex(head, "(")
	if open < 0 || !strings.HasSuffix(head, ")") {
		return head, ""
	}
	return strings.TrimSpace(head[:open]), strings.TrimSpace(head[open+1 : len(head)-1])
}

// unit is the unit of a column read: the one in its head, or the table's own.
func (r *reader) unit(i int, c column, unit string) string {
	unit, what, hint := c.unitOr(unit)
	if what != "" {
		r.reject(Field(c.head), r.place(i), what, hint)
	}
	return unit
}

// broken says where the table stops being one.
func (r *reader) broken(err error) {
	var p *csv.ParseError
	if !errors.As(err, &p) {
		r.reject("", place{1, 1}, "the table cannot be read: "+err.Error(), "save it again as 'CSV UTF-8'")
		return
	}
	hint := "a quotation mark within a cell is written twice, and the cell in quotation marks"
	r.reject("", r.characters(p.Line, p.Column), "the quotation marks do not match", hint)
}

func (r *reader) rows() {
	for {
		record, err := r.csv.Read()
		if err == io.EOF {
			return
		}
		if err != nil {
			r.broken(err)
			return
		}
		r.row(record)
	}
}

// row reads one line; a line of empty cells is none.
func (r *reader) row(record []string) {
	if !slices.ContainsFunc(record, func(c string) bool { return strings.TrimSpace(c) != "" }) {
		return
	}
	r.width = len(record)
	found := len(r.problems)
	var filled []filling
	for i, text := range record {
		text = unguarded(strings.TrimSpace(text))
		if i >= len(r.at) {
			if text != "" {
				r.reject("", r.place(i), "the line has more cells than there are heads", "give the column a head, or take the cell out")
			}
			continue
		}
		if h := r.at[i]; h.column != nil && text != "" {
			filled = append(filled, filling{h, text, i})
		}
	}
	row := fill(filled, r.in.Zone, func(f filling, what, hint string) {
		r.reject(Field(f.column.head), r.place(f.at), what, hint)
	})
	if len(r.problems) == found {
		r.checked(row)
	}
}

// checked enters a row, with what it lacks at the place of its column.
func (r *reader) checked(row Row) {
	if row.ID == "" {
		row.ID = madeID(row)
	}
	for _, p := range row.Check(r.in.By) {
		r.reject(p.Field, r.under(p.Field), p.What, p.Hint)
	}
	r.out = append(r.out, row)
	r.places = append(r.places, rowPlaces{id: r.under("id"), corrects: r.under("corrects")})
}

// rowPlaces are where a row's id and the id that it corrects stand.
type rowPlaces struct{ id, corrects place }

// under is where the record read last has its cell of a column, or its start
// where the table has no such column.
func (r *reader) under(f Field) place {
	for i, h := range r.at {
		if h.column != nil && strings.EqualFold(h.column.head, string(f)) {
			return r.place(min(i, r.width-1))
		}
	}
	return place{r.place(0).line, 1}
}

// String is the place as it is written before a message: 2:14.
func (p place) String() string { return strconv.Itoa(p.line) + ":" + strconv.Itoa(p.column) }
