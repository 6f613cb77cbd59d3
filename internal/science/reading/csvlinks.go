package reading

import (
	"fmt"
	"hash/fnv"
	"slices"
	"strings"
	"time"
)

// links looks at the rows together: an id stands for one row, and a correction
// names a row before it or one that the logbook has. The same row twice is one.
func (r *reader) links() {
	known := map[string]bool{}
	for _, id := range r.in.Known {
		known[id] = true
	}
	first := make(map[string]int, len(r.out))
	out := r.out[:0:0]
	for i, row := range r.out {
		before, twice := first[row.ID]
		switch {
		case twice && slices.Equal(cells(r.out[before]), cells(row)):
			continue
		case twice:
			r.reject("id", r.places[i].id, fmt.Sprintf("the id '%s' stands for another reading in line %d", shortened(row.ID), r.places[before].id.line),
				"give each row its own id, or leave the id empty")
		case row.Corrects != "" && !known[row.Corrects]:
			r.reject("corrects", r.places[i].corrects, "the row corrects '"+shortened(row.Corrects)+"', which is neither above it nor in the logbook",
				"put the corrected row above it, or leave the cell empty")
		}
		first[row.ID], known[row.ID] = i, true
		out = append(out, row)
	}
	r.out = out
}

// cells are a row as the table writes it.
func cells(row Row) []string {
	out := make([]string, len(columns))
	for i, c := range columns {
		out[i] = c.give(row, time.UTC)
	}
	return out
}

// madeID is the id of a row whose table has none. It comes from all that the
// row holds, so that reading a table twice stores its rows once.
func madeID(row Row) string {
	h := fnv.New64a()
	all := cells(row)
	text := strings.Join(all[:firstColumns], "\x1f")
	for i, cell := range all[firstColumns:] {
		if cell != "" {
			text += "\x1f" + columns[firstColumns+i].head + "\x1f" + cell
		}
	}
	_, _ = h.Write([]byte(text)) // a hash never fails to write
	return fmt.Sprintf("row-%016x", h.Sum64())
}
