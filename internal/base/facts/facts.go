// Package facts holds sourced rows: a value with its unit, where it comes from
// and how far it can be trusted, kept as CSV beside the package that uses it.
package facts

import (
	"encoding/csv"
	"fmt"
	"math"
	"sort"
	"strconv"
	"strings"
)

// ID names a row, such as water.freeboard.min. The ids of a package are
// constants generated from its facts.csv.
type ID string

// Fact is one row. Value is NaN-free and zero when the row holds a word.
type Fact struct {
	ID        ID
	Value     float64 // the number, in Unit; 0 when Word holds it
	Word      string  // the value as written
	Unit      string
	AppliesTo string
	Status    string // read, memory, common practice or computed
	Source    string
	Note      string
}

// Statuses are the words a row's status may be.
var Statuses = []string{"read", "memory", "common practice", "computed"}

// Table is the facts of one package, in the order of their file.
type Table struct {
	Name string
	rows []Fact
	byID map[ID]int
}

// columns of every facts.csv.
const columns = "id,value,unit,applies_to,status,source,note"

// Parse reads a facts.csv. The error names the row.
func Parse(name, text string) (Table, error) {
	r := csv.NewReader(strings.NewReader(text))
	records, err := r.ReadAll()
	if err != nil {
		return Table{}, fmt.Errorf("%s: %w", name, err)
	}
	if len(records) == 0 || strings.Join(records[0], ",") != columns {
		return Table{}, fmt.Errorf("%s: the first line must be %s", name, columns)
	}
	t := Table{Name: name, byID: map[ID]int{}}
	for _, rec := range records[1:] {
		f := Fact{ID: ID(rec[0]), Word: rec[1], Unit: rec[2], AppliesTo: rec[3], Status: rec[4], Source: rec[5], Note: rec[6]}
		// ParseFloat reads "nan" and "inf" too, which are words here.
		if v, err := strconv.ParseFloat(f.Word, 64); err == nil && !math.IsNaN(v) && !math.IsInf(v, 0) {
			f.Value = v
		}
		if err := t.add(f); err != nil {
			return Table{}, fmt.Errorf("%s: %s: %w", name, f.ID, err)
		}
	}
	return t, nil
}

func (t *Table) add(f Fact) error {
	if _, twice := t.byID[f.ID]; twice {
		return fmt.Errorf("the id stands twice")
	}
	known := false
	for _, s := range Statuses {
		known = known || s == f.Status
	}
	if !known {
		return fmt.Errorf("the status %q is none of %s", f.Status, strings.Join(Statuses, ", "))
	}
	if f.Source == "" {
		return fmt.Errorf("the source is missing; write 'common practice, no source' where there is none")
	}
	t.byID[f.ID] = len(t.rows)
	t.rows = append(t.rows, f)
	return nil
}

// Must is Parse for an embedded file, whose mistakes are the program's own.
func Must(name, text string) Table {
	t, err := Parse(name, text)
	if err != nil {
		panic(err)
	}
	return t
}

// Get is the row of a generated id. A table and its ids are generated from one
// file, so a missing row is a mistake of the program.
func (t Table) Get(id ID) Fact {
	i, ok := t.byID[id]
	if !ok {
		panic(fmt.Sprintf("facts: %s has no row %s", t.Name, id))
	}
	return t.rows[i]
}

// Find is the row of any id, for ids made from a crop's name.
func (t Table) Find(id ID) (Fact, bool) {
	i, ok := t.byID[id]
	if !ok {
		return Fact{}, false
	}
	return t.rows[i], true
}

// Rows are all rows, in the order of the file.
func (t Table) Rows() []Fact { return append([]Fact(nil), t.rows...) }

// Says is the status and source as one phrase: "read: Kratky 2009 …".
func (f Fact) Says() string {
	if strings.HasPrefix(f.Source, f.Status) {
		return f.Source
	}
	return f.Status + ": " + f.Source
}

// Join puts tables together, sorted by id, for lists of all facts.
func Join(tables ...Table) []Fact {
	var all []Fact
	for _, t := range tables {
		all = append(all, t.rows...)
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].ID < all[j].ID })
	return all
}
