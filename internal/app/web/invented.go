package web

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"time"

	"rootbell/examples"
	"rootbell/internal/app/store"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/reading"
)

// inventedBooks are the logbooks of the examples that have one, by the
// example's name. Nothing is ever written into them.
type inventedBooks map[string][]store.Written

// correctedAfter is how long after a reading its correction was written down,
// in an invented book.
const correctedAfter = 25 * time.Minute

// readInvented reads the examples' logbooks. An error is a mistake in the
// program's own files.
func readInvented() (inventedBooks, error) {
	names, err := fs.Glob(examples.Logbooks, "*.csv")
	if err != nil {
		return nil, err
	}
	out := inventedBooks{}
	for _, file := range names {
		name := strings.TrimSuffix(file, ".csv")
		if out[name], err = readInventedOne(name); err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
	}
	return out, nil
}

func readInventedOne(name string) ([]store.Written, error) {
	table, err := examples.Logbooks.ReadFile(name + ".csv")
	if err != nil {
		return nil, err
	}
	text, err := examples.Plans.ReadFile(name + ".yaml")
	if err != nil {
		return nil, err
	}
	p, problems := plan.Parse(name, text)
	if len(problems) > 0 {
		return nil, errors.New(problems[0].What)
	}
	zone, err := time.LoadLocation(p.Place.TimeZone)
	if err != nil {
		return nil, err
	}
	read, wrong := reading.ReadCSV(table, reading.Import{Zone: zone, By: p.School.By()})
	if len(wrong) > 0 {
		return nil, fmt.Errorf("line %d: %s", wrong[0].Line, wrong[0].What)
	}
	out := make([]store.Written, len(read.Rows))
	for i, row := range read.Rows {
		out[i] = store.Written{Row: row, Number: i + 1, Recorded: row.At.Add(time.Minute)}
		if row.Corrects != "" {
			out[i].Recorded = row.At.Add(correctedAfter)
		}
	}
	return out, nil
}

// bound tells whether a garden has a logbook: an example may have an invented
// one, or none.
func (o *opened) bound() bool { return !o.Example || len(o.invented) > 0 }

// isDayOfBook makes the day of the last reading the day of an example that has
// an invented logbook.
func (o *opened) isDayOfBook() {
	if len(o.invented) == 0 {
		return
	}
	last := slices.MaxFunc(o.invented, func(a, b store.Written) int { return a.At.Compare(b.At) })
	o.Now = last.At.In(o.Now.Location())
}

// readings are rows of a garden's logbook as store.Readings gives them; for an
// example those of its invented one.
func (s *Server) readings(ctx context.Context, o *opened, span store.Span) ([]store.Written, error) {
	if !o.Example {
		return s.Store.Readings(ctx, o.ID, span)
	}
	return spanOf(o.invented, span), nil
}

// figures are the readings that stand, as store.Figures gives them.
func (s *Server) figures(ctx context.Context, o *opened, span store.Span) ([]reading.Entry, error) {
	if !o.Example {
		return s.Store.Figures(ctx, o.ID, span)
	}
	return reading.Standing(rowsOf(spanOf(o.invented, span))), nil
}

// spanOf are the rows of a span, each reading with all that it took the place
// of, in the order in which they were written down.
func spanOf(book []store.Written, span store.Span) []store.Written {
	groups := map[string][]store.Written{} // by the id of the first
	root := map[string]string{}
	for _, w := range book {
		of := w.ID
		if first, known := root[w.Corrects]; known {
			of = first
		}
		root[w.ID] = of
		groups[of] = append(groups[of], w)
	}
	var all [][]store.Written
	for _, g := range groups {
		if within(g[len(g)-1], span) {
			all = append(all, g)
		}
	}
	slices.SortFunc(all, func(a, b []store.Written) int {
		x, y := a[len(a)-1], b[len(b)-1]
		return cmp.Or(y.At.Compare(x.At), cmp.Compare(y.Number, x.Number))
	})
	if span.Most > 0 && len(all) > span.Most {
		all = all[:span.Most]
	}
	out := slices.Concat(all...)
	slices.SortFunc(out, func(a, b store.Written) int { return cmp.Compare(a.Number, b.Number) })
	return out
}

// within tells whether the row of a reading that stands lies in a span.
func within(w store.Written, span store.Span) bool {
	switch {
	case span.Tub != "" && !reading.SameTub(w.Tub, span.Tub), !span.From.IsZero() && w.At.Before(span.From):
		return false
	case span.Until.IsZero(), w.At.Before(span.Until):
		return true
	}
	return span.Number > 0 && w.At.Equal(span.Until) && w.Number < span.Number
}
