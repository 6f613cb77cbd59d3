package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// passing makes an empty file of a passing name beside path, for this user
// alone.
func passing(path string) (string, error) {
	f, err := os.CreateTemp(filepath.Dir(path), ".rootbell-*")
	if err != nil {
		return "", err
	}
	return f.Name(), f.Close()
}

// besides are the endings of the files that SQLite keeps beside a database.
var besides = []string{"-journal", "-wal", "-shm"}

// sweep takes a passing file away, and what SQLite may have left beside it.
func sweep(passing string) {
	_ = os.Remove(passing)
	for _, end := range besides {
		_ = os.Remove(passing + end)
	}
}

// put gives a whole file its name, on the disk, and never overwrites: where the
// name is taken the error is fs.ErrExist.
func put(fresh, path string) error {
	if err := flush(fresh); err != nil {
		return err
	}
	err := os.Link(fresh, path)
	switch {
	case errors.Is(err, fs.ErrExist):
		return err
	case err != nil: // a disk that gives a file one name only, such as a memory stick
		if _, err := os.Lstat(path); err == nil {
			return &fs.PathError{Op: "put", Path: path, Err: fs.ErrExist}
		}
		if err := os.Rename(fresh, path); err != nil {
			return err
		}
	}
	flushFolder(filepath.Dir(path))
	return nil
}

func flush(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return err
	}
	return errors.Join(f.Sync(), f.Close())
}

// flushFolder makes a new name outlive a power cut, on systems that can.
func flushFolder(dir string) {
	if d, err := os.Open(dir); err == nil {
		_ = d.Sync()
		_ = d.Close()
	}
}

// mostAlike is how many copies of one second are kept apart by a number.
const mostAlike = 100

// keptName is the n-th name for a copy of the file at path: its own name, why
// it was kept and when.
func keptName(path, why string, at time.Time, n int) string {
	end := filepath.Ext(path)
	name := fmt.Sprintf("%s-%s-%s", strings.TrimSuffix(path, end), why, at.UTC().Format("20060102T150405Z"))
	if n > 1 {
		name += fmt.Sprintf("-%d", n)
	}
	return name + end
}

// keep keeps a copy of an open database beside it.
func keep(ctx context.Context, db *sql.DB, path, why string, at time.Time) (string, error) {
	fresh, err := passing(path)
	if err != nil {
		return "", err
	}
	defer sweep(fresh)
	if err := copyInto(ctx, db, fresh); err != nil {
		return "", err
	}
	for n := 1; n <= mostAlike; n++ {
		name := keptName(path, why, at, n)
		if err := put(fresh, name); !errors.Is(err, fs.ErrExist) {
			return name, err
		}
	}
	return "", tooManyKept(path)
}

func tooManyKept(path string) error {
	return &Refused{Reason: Exists, What: "there are too many copies of this second beside " + path, Hint: "move some of them away"}
}

// copyInto writes the whole database, as it stands at this moment, into an
// empty file, while others go on.
func copyInto(ctx context.Context, db *sql.DB, path string) error {
	_, err := db.ExecContext(ctx, "VACUUM INTO $1", path)
	return err
}
