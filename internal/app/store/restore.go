package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"time"

	"modernc.org/sqlite"
)

// Restore makes the database at to hold what the backup at from holds. Before
// anything is touched the backup is read from end to end: it must be whole, of
// this program and of no newer version; one of an older version is brought up
// to date on the way. What was there before is kept beside under the name in
// kept, which is empty where nothing was there.
//
// It is refused while another program has the database open. That shows in
// SQLite's own locks: a program that serves a database holds a shared lock on
// it from its first reading until it ends, however it ends, and the exclusive
// lock that Restore works under cannot be had meanwhile.
func Restore(ctx context.Context, from, to string, at time.Time) (kept string, err error) {
	return restore(ctx, from, to, at, migrations())
}

func restore(ctx context.Context, from, to string, at time.Time, steps steps) (kept string, err error) {
	from, err = filepath.Abs(from)
	if err != nil {
		return "", err
	}
	if to, err = filepath.Abs(to); err != nil {
		return "", err
	}
	readable, err := mayReplace(ctx, from, to)
	if err != nil {
		return "", err
	}
	if err := checkBackup(ctx, from, steps); err != nil {
		return "", worded(err, from)
	}
	if err := makeFolder(to); err != nil {
		return "", err
	}
	fresh, err := passing(to)
	if err != nil {
		return "", worded(err, to)
	}
	defer sweep(fresh)
	if err := prepare(ctx, from, fresh, steps); err != nil {
		return "", worded(err, to)
	}
	if _, err := os.Lstat(to); errors.Is(err, fs.ErrNotExist) {
		return "", worded(put(fresh, to), to)
	}
	if readable {
		kept, err = replace(ctx, fresh, to, at)
	} else {
		kept, err = moveAside(fresh, to, at)
	}
	return kept, worded(err, to)
}

// mayReplace refuses to put a backup over itself, over a folder and over the
// database of another program. readable tells whether a database of ours is
// there.
func mayReplace(ctx context.Context, from, to string) (readable bool, err error) {
	backup, err := os.Stat(from)
	if err != nil {
		return false, worded(err, from)
	}
	there, err := os.Stat(to)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return false, nil
	case err != nil:
		return false, worded(err, to)
	case os.SameFile(backup, there):
		return false, unfit("%s is the database itself", "name a backup of it", from)
	}
	err = isOurs(ctx, to)
	if errors.Is(err, errNoDatabase) || isDamaged(err) {
		return false, nil
	}
	return err == nil, worded(err, to)
}

// checkBackup reads a backup from end to end and changes nothing of it.
func checkBackup(ctx context.Context, from string, steps steps) error {
	newest, err := steps.newest()
	if err != nil {
		return err
	}
	version, err := versionOf(ctx, from)
	if err != nil {
		return err
	}
	if version > newest {
		return tooNew(from, version, newest)
	}
	return isWhole(ctx, from)
}

// prepare copies a checked backup into the empty file fresh and brings it up to
// date there. What then has other tables than ours, or acts by itself when a
// row is written, is none of ours.
func prepare(ctx context.Context, from, fresh string, steps steps) (err error) {
	backup, err := openToRead(ctx, from)
	if err != nil {
		return err
	}
	if err := errors.Join(copyInto(ctx, backup, fresh), backup.Close()); err != nil {
		return err
	}
	db, err := seize(ctx, fresh)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	if err := steps.apply(ctx, db); err != nil {
		return err
	}
	blank, err := sql.Open("sqlite", ":memory:")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, blank.Close()) }()
	blank.SetMaxOpenConns(1) // each connection would be a database of its own
	if err := steps.apply(ctx, blank); err != nil {
		return err
	}
	ours, err := tables(ctx, blank)
	if err != nil {
		return err
	}
	theirs, err := tables(ctx, db)
	if err != nil {
		return err
	}
	if !slices.Equal(ours, theirs) {
		return notOurs(from, nil)
	}
	return nil
}

// tables is how each table, index, view and trigger was made.
func tables(ctx context.Context, db *sql.DB) (all []string, err error) {
	rows, err := db.QueryContext(ctx, "SELECT type || ' ' || name || ' ' || coalesce(sql, '') FROM sqlite_schema ORDER BY 1")
	if err != nil {
		return nil, err
	}
	defer func() { _ = rows.Close() }() // rows.Err tells what matters
	for rows.Next() {
		var made string
		if err := rows.Scan(&made); err != nil {
			return nil, err
		}
		all = append(all, made)
	}
	return all, rows.Err()
}

// replace puts the content of fresh in the place of what is at path, and keeps
// that. A database is filled in one transaction, so that a kill in the middle
// leaves the old one; what is too damaged for that is renamed.
func replace(ctx context.Context, fresh, path string, at time.Time) (kept string, err error) {
	db, err := seize(ctx, path)
	if err == nil {
		kept, err = keep(ctx, db, path, "replaced", at)
		if err == nil {
			err = fill(ctx, db, fresh)
		}
		err = errors.Join(err, db.Close())
	}
	if isDamaged(err) {
		return moveAside(fresh, path, at)
	}
	return kept, err
}

// fill makes an open database a copy of the file at from, whole or not at all.
func fill(ctx context.Context, db *sql.DB, from string) (err error) {
	conn, err := db.Conn(ctx)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, conn.Close()) }()
	return conn.Raw(func(driver any) error {
		c, ok := driver.(interface {
			NewRestore(from string) (*sqlite.Backup, error)
		})
		if !ok {
			return errors.New("the database cannot be filled from a file")
		}
		b, err := c.NewRestore(address(from, readOnly, patient))
		if err != nil {
			return err
		}
		const allPages = -1
		_, err = b.Step(allPages)
		return errors.Join(err, b.Finish())
	})
}

// moveAside renames what is at path, with the files that SQLite keeps beside
// it, and puts fresh in its place.
func moveAside(fresh, path string, at time.Time) (kept string, err error) {
	for n := 1; n <= mostAlike; n++ {
		kept = keptName(path, "damaged", at, n)
		if _, err := os.Lstat(kept); err == nil {
			continue
		}
		if err := os.Rename(path, kept); err != nil {
			return "", err
		}
		for _, end := range besides {
			if err := os.Rename(path+end, kept+end); err != nil && !errors.Is(err, fs.ErrNotExist) {
				return kept, err
			}
		}
		return kept, put(fresh, path)
	}
	return "", tooManyKept(path)
}

func makeFolder(path string) error {
	dir := filepath.Dir(path)
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return &Refused{Reason: ReadOnly, What: fmt.Sprintf("the folder %s cannot be made", dir), Hint: hintFolder, Cause: bare(err)}
	}
	return nil
}
