package store

import (
	"context"
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// Backup writes everything that is kept, as it stands at this moment, into one
// new file, while others go on reading and writing. The file is checked before
// it gets its name, and one that is there is never overwritten.
func (s *Store) Backup(ctx context.Context, path string) error {
	path, err := filepath.Abs(path)
	if err != nil {
		return err
	}
	taken := &Refused{Reason: Exists, What: path + " is there already, and was left as it is", Hint: "name another file"}
	if _, err := os.Lstat(path); err == nil {
		return taken
	}
	fresh, err := passing(path)
	if errors.Is(err, fs.ErrNotExist) {
		return &Refused{Reason: Absent, What: "there is no folder " + filepath.Dir(path), Hint: "make it first, or name another"}
	}
	if err != nil {
		return worded(err, path)
	}
	defer sweep(fresh)
	db, err := openToRead(ctx, s.path)
	if err != nil {
		return worded(err, s.path)
	}
	if err := errors.Join(copyInto(ctx, db, fresh), db.Close()); err != nil {
		return worded(err, path)
	}
	if err := isWhole(ctx, fresh); err != nil {
		return worded(err, path)
	}
	err = put(fresh, path)
	if errors.Is(err, fs.ErrExist) {
		return taken
	}
	return worded(err, path)
}

// isWhole reads one of our files from end to end.
func isWhole(ctx context.Context, path string) (err error) {
	db, err := openToRead(ctx, path)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	damaged := &Refused{Reason: Damaged, What: path + " is damaged", Hint: "use another backup"}
	var said string
	if err := db.QueryRowContext(ctx, "PRAGMA integrity_check(1)").Scan(&said); err != nil {
		return err
	}
	if said != "ok" {
		return damaged
	}
	err = db.QueryRowContext(ctx, "PRAGMA foreign_key_check").Scan(new(any), new(any), new(any), new(any))
	if errors.Is(err, sql.ErrNoRows) {
		return nil
	}
	return errors.Join(damaged, err)
}
