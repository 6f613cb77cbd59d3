package store

import (
	"context"
	"database/sql"
	"errors"
	"slices"
	"strings"
	"time"
)

// Garden is what is kept about a garden, apart from its text.
type Garden struct {
	ID        string
	Name      string    // as its latest plan says
	Revision  int       // the latest, from 1
	Created   time.Time // in UTC, as the other moments
	Changed   time.Time
	Discarded time.Time // when it was put in the bin; zero while in use
}

const gardenColumns = "id, name, revision, created_ms, changed_ms, discarded_ms"

// scanner is a row, or rows at one of them.
type scanner interface{ Scan(into ...any) error }

func scanGarden(row scanner) (Garden, error) {
	var g Garden
	var created, changed int64
	var discarded sql.NullInt64
	if err := row.Scan(&g.ID, &g.Name, &g.Revision, &created, &changed, &discarded); err != nil {
		return Garden{}, err
	}
	g.Created, g.Changed = moment(created), moment(changed)
	if discarded.Valid {
		g.Discarded = moment(discarded.Int64)
	}
	return g, nil
}

// Gardens are the gardens in use, latest changed first.
func (s *Store) Gardens(ctx context.Context) ([]Garden, error) {
	return s.gardens(ctx, "SELECT "+gardenColumns+" FROM garden WHERE discarded_ms IS NULL ORDER BY changed_ms DESC, id")
}

// Bin is the gardens put away, latest put away first.
func (s *Store) Bin(ctx context.Context) ([]Garden, error) {
	return s.gardens(ctx, "SELECT "+gardenColumns+" FROM garden WHERE discarded_ms IS NOT NULL ORDER BY discarded_ms DESC, id")
}

func (s *Store) gardens(ctx context.Context, query string) ([]Garden, error) {
	var all []Garden
	err := s.look(ctx, func(tx *sql.Tx) error {
		rows, err := tx.QueryContext(ctx, query)
		if err != nil {
			return err
		}
		defer func() { _ = rows.Close() }() // rows.Err tells what matters
		for rows.Next() {
			g, err := scanGarden(rows)
			if err != nil {
				return err
			}
			all = append(all, g)
		}
		return rows.Err()
	})
	return all, err
}

// Garden is one garden, also while it is in the bin; *NotFound where there is
// none.
func (s *Store) Garden(ctx context.Context, id string) (g Garden, err error) {
	err = s.look(ctx, func(tx *sql.Tx) error {
		g, err = gardenIn(ctx, tx, id)
		return err
	})
	return g, err
}

func gardenIn(ctx context.Context, tx *sql.Tx, id string) (Garden, error) {
	g, err := scanGarden(tx.QueryRowContext(ctx, "SELECT "+gardenColumns+" FROM garden WHERE id = $1", id))
	if errors.Is(err, sql.ErrNoRows) {
		return Garden{}, &NotFound{"garden " + id}
	}
	return g, err
}

// Create keeps a new garden with its first revision.
func (s *Store) Create(ctx context.Context, name string, text []byte, why string, at time.Time) (Garden, error) {
	first := Revision{Number: 1, Text: text, Why: strings.TrimSpace(why), At: at}
	return s.add(ctx, strings.TrimSpace(name), at, at, []Revision{first}, nil)
}

// add keeps a new garden with revisions numbered from 1, and its logbook.
func (s *Store) add(ctx context.Context, name string, created, changed time.Time, revisions []Revision, readings []Written) (g Garden, err error) {
	for _, r := range revisions {
		if err := checkRevision(name, r.Text, r.Why); err != nil {
			return Garden{}, err
		}
	}
	err = s.change(ctx, func(tx *sql.Tx) error {
		row := tx.QueryRowContext(ctx,
			"INSERT INTO garden (id, name, revision, created_ms, changed_ms) VALUES ($1, $2, $3, $4, $5) RETURNING "+gardenColumns,
			newID(), name, len(revisions), milliseconds(created), milliseconds(changed))
		if g, err = scanGarden(row); err != nil {
			return err
		}
		for _, r := range revisions {
			if err := addRevision(ctx, tx, g.ID, r); err != nil {
				return err
			}
		}
		return addWritten(ctx, tx, g.ID, readings)
	})
	return g, err
}

// Discard puts a garden in the bin: it is listed no more and takes no changes,
// and nothing of it is lost. One that is in the bin stays as it is.
func (s *Store) Discard(ctx context.Context, id string, at time.Time) error {
	return s.change(ctx, func(tx *sql.Tx) error {
		if _, err := gardenIn(ctx, tx, id); err != nil {
			return err
		}
		_, err := tx.ExecContext(ctx, "UPDATE garden SET discarded_ms = $1 WHERE id = $2 AND discarded_ms IS NULL", milliseconds(at), id)
		return err
	})
}

// BringBack takes a garden out of the bin; it counts as changed at that moment.
// One that is in use stays as it is.
func (s *Store) BringBack(ctx context.Context, id string, at time.Time) error {
	return s.change(ctx, func(tx *sql.Tx) error {
		if _, err := gardenIn(ctx, tx, id); err != nil {
			return err
		}
		_, err := tx.ExecContext(ctx, "UPDATE garden SET discarded_ms = NULL, changed_ms = $1 WHERE id = $2 AND discarded_ms IS NOT NULL", milliseconds(at), id)
		return err
	})
}

// Latest is a garden with its latest revision, as nearly every page asks for
// it; *NotFound where there is none.
func (s *Store) Latest(ctx context.Context, id string) (g Garden, r Revision, err error) {
	const query = "SELECT g.id, g.name, g.revision, g.created_ms, g.changed_ms, g.discarded_ms, r.text, r.why, r.at_ms FROM garden g CROSS JOIN revision r WHERE g.id = $1 AND r.garden = g.id AND r.number = g.revision"
	n, err := s.each(ctx, query, []any{id}, func(rows *sql.Rows) error {
		var at int64
		g, err = scanGarden(alsoInto{rows, []any{&r.Text, &r.Why, &at}})
		r.Garden, r.Number, r.At = g.ID, g.Revision, moment(at)
		return err
	})
	if err == nil && n == 0 {
		err = &NotFound{"garden " + id}
	}
	return g, r, worded(err, s.path)
}

// alsoInto scans the columns behind those that it is asked for too.
type alsoInto struct {
	scanner
	more []any
}

// Scan is of the scanner, into more.
// Scan reads a row with the columns asked for besides.
func (a alsoInto) Scan(into ...any) error { return a.scanner.Scan(slices.Concat(into, a.more)...) }
