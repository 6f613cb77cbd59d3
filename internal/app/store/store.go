package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"time"
)

// readers is how many may read at the same time; writers stand in line for one
// connection, so that they wait for each other and not for a lock.
const readers = 4

// Store is an open database. Its methods may be called at the same time.
type Store struct {
	path  string
	kept  string
	reads *sql.DB
	write *sql.DB
	// hold is never used: while it stands, others see that the file is open.
	hold *sql.Conn
	line line // of readings on their way to the disk

	asked, written questions // of reads and of write
	known          knownRows

	closing sync.Once
}

// DefaultPath is where gardens are kept unless another file is named: in the
// user's own folder for settings.
func DefaultPath() (string, error) {
	dir, err := os.UserConfigDir()
	if err != nil {
		return "", &Refused{Reason: Absent, What: "this computer does not say where your own folder is", Hint: "name the file: --data FILE", Cause: err}
	}
	return filepath.Join(dir, "rootbell", "rootbell.db"), nil
}

// Open opens the database at path, at the given moment. Where nothing is, the
// folder (for this user alone) and the file are made. An older file is brought
// up to date, with a copy of it kept beside (see Kept). A newer file, one that
// is no database and one of another program are refused and left as they are.
func Open(ctx context.Context, path string, at time.Time) (*Store, error) {
	return open(ctx, path, at, migrations())
}

func open(ctx context.Context, path string, at time.Time, steps steps) (*Store, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return nil, fmt.Errorf("where %s is: %w", path, err)
	}
	s := &Store{path: path}
	if s.kept, err = upToDate(ctx, path, at, steps); err != nil {
		return nil, worded(err, path)
	}
	if err := s.connect(ctx); err != nil {
		return nil, worded(errors.Join(err, s.Close()), path)
	}
	return s, nil
}

func (s *Store) connect(ctx context.Context) (err error) {
	if s.write, err = connect(ctx, s.path, readWrite, 1, serving...); err != nil {
		return err
	}
	// A file that may only be read shows itself at the first write.
	if err = s.change(ctx, func(*sql.Tx) error { return nil }); err != nil {
		return err
	}
	if s.reads, err = connect(ctx, s.path, readWrite, readers+1, looking...); err != nil {
		return err
	}
	if s.hold, err = s.reads.Conn(ctx); err != nil {
		return err
	}
	return s.hold.QueryRowContext(ctx, "SELECT count(*) FROM garden").Scan(new(int))
}

// Path is the file, with its whole path.
func (s *Store) Path() string { return s.path }

// Kept is the copy of an older file that Open brought up to date; empty where
// there was none.
func (s *Store) Kept() string { return s.kept }

// Close closes the database; a second time it does nothing. Nothing is lost
// where it is not called.
func (s *Store) Close() error {
	var errs []error
	s.closing.Do(func() {
		if s.hold != nil {
			errs = append(errs, s.hold.Close())
		}
		for _, db := range []*sql.DB{s.reads, s.write} {
			if db != nil {
				errs = append(errs, db.Close())
			}
		}
	})
	return errors.Join(errs...)
}

// change does some work that writes, whole or not at all. What it has done is
// on the disk when it returns nil.
func (s *Store) change(ctx context.Context, work func(*sql.Tx) error) error {
	tx, err := s.write.BeginTx(ctx, nil)
	if err != nil {
		return worded(err, s.path)
	}
	if err := work(tx); err != nil {
		_ = tx.Rollback() // the first error is the one to tell
		return worded(err, s.path)
	}
	return worded(tx.Commit(), s.path)
}

// look does some work that only reads, all of it at one state of the database.
func (s *Store) look(ctx context.Context, work func(*sql.Tx) error) error {
	tx, err := s.reads.BeginTx(ctx, &sql.TxOptions{ReadOnly: true})
	if err != nil {
		return worded(err, s.path)
	}
	defer func() { _ = tx.Rollback() }() // nothing was written
	return worded(work(tx), s.path)
}

// milliseconds and moment turn a time into what is kept, and back.
func milliseconds(at time.Time) int64 { return at.UnixMilli() }
func moment(ms int64) time.Time       { return time.UnixMilli(ms).UTC() }
