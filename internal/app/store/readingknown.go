package store

import (
	"bytes"
	"context"
	"database/sql"
	"sync"

	"rootbell/internal/science/reading"
)

// questions are the statements that are asked so often that each is prepared
// once for a database.
type questions struct {
	mu   sync.Mutex
	kept map[string]*sql.Stmt
}

func (q *questions) of(ctx context.Context, db *sql.DB, text string) (*sql.Stmt, error) {
	q.mu.Lock()
	defer q.mu.Unlock()
	if s := q.kept[text]; s != nil {
		return s, nil
	}
	s, err := db.PrepareContext(ctx, text)
	if err != nil {
		return nil, err
	}
	if q.kept == nil {
		q.kept = map[string]*sql.Stmt{}
	}
	q.kept[text] = s
	return s, nil
}

// inserting does some work that adds readings, whole or not at all. The
// statement is prepared before there is a transaction, which takes the only
// connection.
func (s *Store) inserting(ctx context.Context, work func(tx *sql.Tx, insert *sql.Stmt) error) error {
	prepared, err := s.written.of(ctx, s.write, insertReading)
	if err != nil {
		return worded(err, s.path)
	}
	return s.change(ctx, func(tx *sql.Tx) error { return work(tx, tx.StmtContext(ctx, prepared)) })
}

// mostKnown is how many rows are known by heart: those of the last weeks of a
// school's tubs, which nearly every page asks for.
const mostKnown = 4096

// knownRows are rows that were read out before, and gardens that are there. A
// row never changes, so what it says need not be read out of its cells again;
// and no garden ever goes.
type knownRows struct {
	mu      sync.Mutex
	rows    map[rowKey]knownRow
	gardens map[string]bool
}

func (k *knownRows) has(garden string) bool {
	k.mu.Lock()
	defer k.mu.Unlock()
	return k.gardens[garden]
}

func (k *knownRows) add(garden string) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.gardens == nil {
		k.gardens = map[string]bool{}
	}
	k.gardens[garden] = true
}

type rowKey struct {
	garden string
	number int
}

type knownRow struct {
	cells []byte
	row   reading.Row
}

// scan reads a row of a garden.
func (k *knownRows) scan(garden string, from scanner) (Written, error) {
	w, err := scanCells(from)
	if err != nil {
		return Written{}, err
	}
	key := rowKey{garden, w.Number}
	k.mu.Lock()
	known, ok := k.rows[key]
	k.mu.Unlock()
	if ok && bytes.Equal(known.cells, w.cells) {
		w.Row = known.row
		return w, nil
	}
	if err := w.decode(); err != nil {
		return Written{}, err
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.rows == nil || len(k.rows) >= mostKnown {
		k.rows = map[rowKey]knownRow{}
	}
	k.rows[key] = knownRow{w.cells, w.Row}
	return w, nil
}
