package store

import (
	"cmp"
	"context"
	"database/sql"
	"slices"
	"strconv"
	"strings"
	"time"

	"rootbell/internal/science/reading"
)

// Span asks for the readings of a garden by the moment of those that stand. A
// reading comes with the rows that it took the place of, wherever those lie.
type Span struct {
	Tub   string    // empty: of all tubs
	From  time.Time // this moment included; zero: from the first
	Until time.Time // this moment not included; zero: to the last
	// Number parts readings of one moment: with it, those of the moment Until
	// that were written down before this number are included.
	Number int
	// Most is how many readings, the latest; 0 is all.
	Most int
}

// Readings are the rows of a span, in the order in which they were written
// down, as reading.Standing takes them. The withdrawn ones are among them.
func (s *Store) Readings(ctx context.Context, garden string, span Span) (all []Written, err error) {
	where, values := span.where(garden)
	// A cross join goes through the readings and then to the rows of each; what
	// is not said so, or is to be in order, may go through the whole logbook.
	query := "SELECT " + readingColumns + " FROM (SELECT h.root FROM reading h" + where + span.limit() + ") head CROSS JOIN reading r WHERE r.garden = $1 AND r.root = head.root"
	err = s.list(ctx, garden, query, values, func(rows *sql.Rows) error {
		w, err := s.known.scan(garden, rows)
		all = append(all, w)
		return err
	})
	slices.SortFunc(all, func(a, b Written) int { return cmp.Compare(a.Number, b.Number) })
	return all, err
}

// Figures are the readings of a span that stand, by moment, with their figures
// alone: enough to draw them, and many times quicker to get. Tubs are in small
// letters.
func (s *Store) Figures(ctx context.Context, garden string, span Span) (all []reading.Entry, err error) {
	where, values := span.where(garden)
	query := "SELECT " + figureColumns + " FROM reading h" + where + " AND NOT h.withdrawn ORDER BY h.at_ms DESC, h.number DESC"
	if span.Most > 0 {
		query += " LIMIT " + strconv.Itoa(span.Most)
	}
	err = s.list(ctx, garden, query, values, func(rows *sql.Rows) error {
		r, err := scanFigures(rows)
		all = append(all, reading.Entry{Row: r})
		return err
	})
	slices.Reverse(all)
	return all, err
}

// LastReading is the moment of the latest reading that stands; zero where there
// is none.
func (s *Store) LastReading(ctx context.Context, garden string) (at time.Time, err error) {
	all, err := s.Figures(ctx, garden, Span{Most: 1})
	if err != nil || len(all) == 0 {
		return time.Time{}, err
	}
	return all[0].At, nil
}

// list goes through the rows of one query about a garden, which must be there.
func (s *Store) list(ctx context.Context, garden, query string, values []any, each func(*sql.Rows) error) error {
	n, err := s.each(ctx, query, values, each)
	if err == nil && n == 0 && !s.known.has(garden) {
		if _, err = s.Garden(ctx, garden); err == nil {
			s.known.add(garden)
		}
	}
	return worded(err, s.path)
}

// each goes through the rows of a query that is asked often: it is prepared
// once, and one statement needs no transaction to see one state.
func (s *Store) each(ctx context.Context, query string, values []any, each func(*sql.Rows) error) (n int, err error) {
	asked, err := s.asked.of(ctx, s.reads, query)
	if err != nil {
		return 0, err
	}
	rows, err := asked.QueryContext(ctx, values...)
	if err != nil {
		return 0, err
	}
	defer func() { _ = rows.Close() }() // rows.Err tells what matters
	for rows.Next() {
		if err := each(rows); err != nil {
			return n, err
		}
		n++
	}
	return n, rows.Err()
}

// where chooses the last row of each reading in the span, called h.
func (s Span) where(garden string) (clause string, values []any) {
	var b strings.Builder
	b.WriteString(" WHERE h.garden = $1")
	values = []any{garden}
	add := func(condition string, v ...any) {
		for _, value := range v {
			values = append(values, value)
			condition = strings.Replace(condition, "?", "$"+strconv.Itoa(len(values)), 1)
		}
		b.WriteString(" AND " + condition)
	}
	if s.Tub != "" {
		add("h.tub = ?", folded(s.Tub))
	}
	if !s.From.IsZero() {
		add("h.at_ms >= ?", milliseconds(s.From))
	}
	switch {
	case s.Until.IsZero():
	case s.Number > 0:
		add("(h.at_ms < ? OR h.at_ms = ? AND h.number < ?)", milliseconds(s.Until), milliseconds(s.Until), s.Number)
	default:
		add("h.at_ms < ?", milliseconds(s.Until))
	}
	b.WriteString(" AND NOT EXISTS (SELECT 1 FROM reading l WHERE l.garden = h.garden AND l.root = h.root AND l.number > h.number)")
	return b.String(), values
}

func (s Span) limit() string {
	if s.Most <= 0 {
		return ""
	}
	return " ORDER BY h.at_ms DESC, h.number DESC LIMIT " + strconv.Itoa(s.Most)
}

// ReadingIDs are the ids of all rows of a garden, in the order in which they
// were written down.
func (s *Store) ReadingIDs(ctx context.Context, garden string) (all []string, err error) {
	err = s.list(ctx, garden, "SELECT id FROM reading WHERE garden = $1 ORDER BY number", []any{garden}, func(rows *sql.Rows) error {
		var id string
		err := rows.Scan(&id)
		all = append(all, id)
		return err
	})
	return all, err
}
