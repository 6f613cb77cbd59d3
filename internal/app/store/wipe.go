package store

import (
	"context"
	"database/sql"
	"time"
)

// Wiped is what the wipe of a class took out.
type Wiped struct {
	Readings int // rows that said which team or job wrote them
	Plans    int // revisions that named the class
	Unread   int // of them, those that could not be read and became the latest plan
	// Left tells that the file could not be written anew at once, so that bytes of
	// what was taken out may still lie in parts of it that are free.
	Left bool
}

// WipeClass takes the class out of a garden: from every row of its logbook the
// team or job, and from every revision what without takes out of a plan's text.
// What was measured and done at the tubs stays, and so do the numbers, dates and
// ids. All of it is done or nothing; base is the revision that was looked at,
// and where it is not the latest any more, nothing is done and the error is a
// *Conflict. A new revision says that it was done.
//
// A revision that without cannot read is given the latest plan's text: nobody
// can tell what is in it.
func (s *Store) WipeClass(ctx context.Context, id string, base int, without func(text []byte) ([]byte, error), why string, at time.Time) (w Wiped, err error) {
	err = s.change(ctx, func(tx *sql.Tx) error {
		w = Wiped{}
		g, err := gardenIn(ctx, tx, id)
		if err != nil {
			return err
		}
		latest, err := revisionIn(ctx, tx, id, g.Revision)
		switch {
		case err != nil:
			return err
		case !g.Discarded.IsZero():
			return &Refused{Reason: InBin, What: g.Name + " is in the bin", Hint: "bring it back first"}
		case base != g.Revision:
			return &Conflict{latest}
		}
		clean, err := without(latest.Text)
		if err != nil {
			return unfit("the latest plan cannot be read: %s", "mend it on the page 'plan as text' first", err)
		}
		if err := wipeRevisions(ctx, tx, g, clean, without, &w); err != nil {
			return err
		}
		if err := wipeReadings(ctx, tx, id, &w); err != nil {
			return err
		}
		if err := addRevision(ctx, tx, id, Revision{Garden: id, Number: g.Revision + 1, Text: clean, Why: why, At: at}); err != nil {
			return err
		}
		_, err = tx.ExecContext(ctx, "UPDATE garden SET revision = $1, changed_ms = $2 WHERE id = $3", g.Revision+1, milliseconds(at), id)
		return err
	})
	if err != nil {
		return Wiped{}, err
	}
	w.Left = s.scrub(ctx) != nil
	return w, nil
}

// wipeRevisions takes the class out of each plan there ever was.
func wipeRevisions(ctx context.Context, tx *sql.Tx, g Garden, clean []byte, without func([]byte) ([]byte, error), w *Wiped) error {
	for n := 1; n <= g.Revision; n++ {
		r, err := revisionIn(ctx, tx, g.ID, n)
		if err != nil {
			return err
		}
		text, err := without(r.Text)
		if err != nil {
			text = clean
			w.Unread++
		}
		if string(text) == string(r.Text) {
			continue
		}
		w.Plans++
		if _, err := tx.ExecContext(ctx, "UPDATE revision SET text = $1 WHERE garden = $2 AND number = $3", string(text), g.ID, n); err != nil {
			return err
		}
	}
	return nil
}

// wipeReadings takes the team or job out of each row.
func wipeReadings(ctx context.Context, tx *sql.Tx, id string, w *Wiped) error {
	tagged, err := taggedRows(ctx, tx, id)
	if err != nil {
		return err
	}
	for _, r := range tagged {
		r.By = ""
		row, err := rowOf(r.Row, r.Recorded)
		if err != nil {
			return err
		}
		if _, err := tx.ExecContext(ctx, "UPDATE reading SET cells = $1 WHERE garden = $2 AND number = $3", row.cells, id, r.Number); err != nil {
			return err
		}
		w.Readings++
	}
	return nil
}

// taggedRows are the rows of a garden that say who wrote them.
func taggedRows(ctx context.Context, tx *sql.Tx, id string) (tagged []Written, err error) {
	rows, err := tx.QueryContext(ctx, "SELECT "+readingColumns+" FROM reading r WHERE r.garden = $1 ORDER BY r.number", id)
	if err != nil {
		return nil, err
	}
	defer func() { _ = rows.Close() }() // rows.Err tells what matters
	for rows.Next() {
		r, err := scanReading(rows)
		if err != nil {
			return nil, err
		}
		if r.By != "" {
			tagged = append(tagged, r)
		}
	}
	return tagged, rows.Err()
}

// Tagged is how many rows of a garden's logbook say which team or job wrote
// them.
func (s *Store) Tagged(ctx context.Context, id string) (n int, err error) {
	err = s.look(ctx, func(tx *sql.Tx) error {
		all, err := taggedRows(ctx, tx, id)
		n = len(all)
		return err
	})
	return n, err
}
