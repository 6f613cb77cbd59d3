package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"time"

	"rootbell/internal/science/reading"
)

// Written is a row of a garden's logbook as it is kept.
type Written struct {
	reading.Row
	Number   int       // from 1, in the order in which the rows were written down
	Recorded time.Time // when it was written down, by this computer's clock

	cells []byte // the row as JSON
}

// Taken is the answer where the id of a reading stands for another one already.
// Nothing was stored.
type Taken struct{ There Written }

func (t *Taken) Error() string { return "the id " + t.There.ID + " stands for another reading" }

// AddReading writes one row down, at the given moment. The same row sent twice
// is kept once: stored is then false, and the answer is the same otherwise. It
// may be called by many at the same time; their rows then go to the disk
// together.
func (s *Store) AddReading(ctx context.Context, garden string, r reading.Row, at time.Time) (stored bool, err error) {
	row, err := rowOf(r, at)
	if err != nil {
		return false, err
	}
	a := &adding{garden: garden, row: row, lead: make(chan struct{}, 1), done: make(chan struct{})}
	if err := s.stand(ctx, a); err != nil {
		return false, err
	}
	return a.stored, a.err
}

// AddReadings writes rows down in their order, all of them or none, and tells
// how many were not there yet.
func (s *Store) AddReadings(ctx context.Context, garden string, rows []reading.Row, at time.Time) (stored int, err error) {
	ready := make([]rowIn, len(rows))
	for i, r := range rows {
		if ready[i], err = rowOf(r, at); err != nil {
			return 0, err
		}
	}
	err = s.inserting(ctx, func(tx *sql.Tx, insert *sql.Stmt) error {
		for _, row := range ready {
			fresh, err := addRow(ctx, tx, insert, garden, row)
			if err != nil {
				return err
			}
			if fresh {
				stored++
			}
		}
		return nil
	})
	if err != nil {
		return 0, err
	}
	return stored, nil
}

// addWritten keeps a logbook that came from elsewhere, with the moments at which
// its rows were written down there.
func addWritten(ctx context.Context, tx *sql.Tx, garden string, all []Written) error {
	if len(all) == 0 {
		return nil
	}
	insert, err := tx.PrepareContext(ctx, insertReading)
	if err != nil {
		return err
	}
	defer func() { _ = insert.Close() }() // it ends with the transaction
	for _, w := range all {
		row, err := rowOf(w.Row, w.Recorded)
		if err != nil {
			return err
		}
		if _, err := addRow(ctx, tx, insert, garden, row); err != nil {
			return err
		}
	}
	return nil
}

// rowIn is a row ready to be kept.
type rowIn struct {
	reading.Row
	cells string
	at    time.Time
}

// rowOf makes a row ready. What the logbook's own rules refuse is for its
// caller; here a row must only be one that comes back as it was. Moments are
// kept in UTC, so that the same row has the same bytes wherever it came from.
func rowOf(r reading.Row, at time.Time) (rowIn, error) {
	r.At = r.At.UTC()
	cells, err := json.Marshal(r)
	if err != nil || len(cells) > MostReading {
		return rowIn{}, unfit("a reading is longer than %d KiB", "shorten its notes", MostReading>>10)
	}
	if r.ID == "" || len(r.ID) > MostID || strings.TrimSpace(r.Tub) == "" || r.At.IsZero() {
		return rowIn{}, unfit("a reading has no id, no tub or no moment", "write it again on the page Logbook")
	}
	return rowIn{r, string(cells), at}, nil
}

// folded is a tub's name as it is looked for: the same in any case.
func folded(tub string) string { return strings.ToLower(strings.TrimSpace(tub)) }

// insertReading adds one row to a garden in use, under the next number. It
// answers with nothing where the garden is not in use, or has the id already.
const insertReading = `INSERT INTO reading (garden, number, id, root, tub, at_ms, recorded_ms, withdrawn, cells,
	ph_low, ph_high, ec_low, ec_high, ec_raw, water_c, litres, depth_mm, filled_l, added_l, height_mm, doubtful)
SELECT g.id, (SELECT coalesce(max(number), 0) + 1 FROM reading WHERE garden = g.id), $2,
	coalesce((SELECT c.root FROM reading c WHERE c.garden = g.id AND c.id = $3), $2),
	$4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16, $17, $18, $19, $20
FROM garden g WHERE g.id = $1 AND g.discarded_ms IS NULL
ON CONFLICT (garden, id) DO NOTHING RETURNING number`

// addRow adds one row in a transaction. An error other than one of the database
// has changed nothing.
func addRow(ctx context.Context, tx *sql.Tx, insert *sql.Stmt, garden string, r rowIn) (fresh bool, err error) {
	values := append([]any{garden, r.ID, r.Corrects, folded(r.Tub), milliseconds(r.At), milliseconds(r.at), r.Withdrawn, r.cells}, figuresOf(r.Row)...)
	err = insert.QueryRowContext(ctx, values...).Scan(new(int64))
	if !errors.Is(err, sql.ErrNoRows) {
		return err == nil, err
	}
	g, err := gardenIn(ctx, tx, garden)
	if err != nil {
		return false, err
	}
	if !g.Discarded.IsZero() {
		return false, &Refused{Reason: InBin, What: g.Name + " is in the bin", Hint: "bring it back first"}
	}
	there, err := readingIn(ctx, tx, garden, r.ID)
	if err != nil {
		return false, err
	}
	if string(there.cells) != r.cells {
		return false, &Taken{there}
	}
	return false, nil
}

// Reading is one row of a garden's logbook; *NotFound where there is none.
func (s *Store) Reading(ctx context.Context, garden, id string) (w Written, err error) {
	n, err := s.each(ctx, oneReading, []any{garden, id}, func(rows *sql.Rows) error {
		w, err = s.known.scan(garden, rows)
		return err
	})
	if err == nil && n == 0 {
		err = &NotFound{"reading " + id}
	}
	return w, worded(err, s.path)
}

const (
	readingColumns = "r.number, r.recorded_ms, r.cells"
	oneReading     = "SELECT " + readingColumns + " FROM reading r WHERE r.garden = $1 AND r.id = $2"
)

func readingIn(ctx context.Context, tx *sql.Tx, garden, id string) (Written, error) {
	w, err := scanReading(tx.QueryRowContext(ctx, oneReading, garden, id))
	if errors.Is(err, sql.ErrNoRows) {
		return Written{}, &NotFound{"reading " + id}
	}
	return w, err
}

func scanReading(row scanner) (Written, error) {
	w, err := scanCells(row)
	if err != nil {
		return Written{}, err
	}
	return w, w.decode()
}

// scanCells reads a row as it is kept.
func scanCells(row scanner) (w Written, err error) {
	var recorded int64
	if err := row.Scan(&w.Number, &recorded, &w.cells); err != nil {
		return Written{}, err
	}
	w.Recorded = moment(recorded)
	return w, nil
}

// decode makes a row of its cells.
func (w *Written) decode() error {
	if err := json.Unmarshal(w.cells, &w.Row); err != nil {
		return fmt.Errorf("row %d of the logbook: %w", w.Number, err)
	}
	return nil
}
