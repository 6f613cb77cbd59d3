package store

import (
	"context"
	"database/sql"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strconv"
	"strings"
	"time"

	"github.com/pressly/goose/v3"
)

//go:embed migrations/*.sql
var embedded embed.FS

// steps are the migrations, in files named by their number.
type steps struct{ fs.FS }

func migrations() steps {
	files, err := fs.Sub(embedded, "migrations")
	if err != nil {
		panic(err) // the folder is embedded above
	}
	return steps{files}
}

// newest is the number of the last step: the version of a file brought up to
// date.
func (s steps) newest() (int64, error) {
	names, err := fs.Glob(s, "*.sql")
	if err != nil || len(names) == 0 {
		return 0, fmt.Errorf("no migrations: %w", err)
	}
	number, _, _ := strings.Cut(names[len(names)-1], "_")
	return strconv.ParseInt(number, 10, 64)
}

// apply brings an open database up to date, each step whole or not at all.
func (s steps) apply(ctx context.Context, db *sql.DB) error {
	provider, err := goose.NewProvider(goose.DialectSQLite3, db, s, goose.WithDisableGlobalRegistry(true), goose.WithLogger(goose.NopLogger()))
	if err != nil {
		return err
	}
	_, err = provider.Up(ctx)
	return err
}

// upToDate makes sure that a database of the newest version is at path. kept is
// the copy of an older one.
func upToDate(ctx context.Context, path string, at time.Time, steps steps) (kept string, err error) {
	newest, err := steps.newest()
	if err != nil {
		return "", err
	}
	if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) {
		return "", create(ctx, path, steps)
	}
	version, err := versionOf(ctx, path)
	switch {
	case err != nil:
		return "", err
	case version > newest:
		return "", tooNew(path, version, newest)
	case version == newest:
		return "", nil
	}
	return migrate(ctx, path, version, at, steps)
}

func tooNew(path string, version, newest int64) error {
	return &Refused{
		Reason: Newer,
		What:   fmt.Sprintf("%s was written by a newer version of Rootbell (its format is %d, this version knows up to %d)", path, version, newest),
		Hint:   "use the newer version; the file was left as it is",
	}
}

// create makes a new database beside its place and puts it there whole. Where
// another program was faster, its file stays.
func create(ctx context.Context, path string, steps steps) error {
	if err := makeFolder(path); err != nil {
		return err
	}
	fresh, err := passing(path)
	if err != nil {
		return err
	}
	defer sweep(fresh)
	db, err := seize(ctx, fresh)
	if err != nil {
		return err
	}
	_, err = db.ExecContext(ctx, fmt.Sprintf("PRAGMA application_id = %d", mark))
	if err == nil {
		err = steps.apply(ctx, db)
	}
	if err := errors.Join(err, db.Close()); err != nil {
		return err
	}
	if err := put(fresh, path); !errors.Is(err, fs.ErrExist) {
		return err
	}
	return nil
}

// migrate brings an older file up to date, after a copy of it was kept.
func migrate(ctx context.Context, path string, version int64, at time.Time, steps steps) (kept string, err error) {
	db, err := seize(ctx, path)
	if err != nil {
		return "", err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	if kept, err = keep(ctx, db, path, fmt.Sprintf("version-%d", version), at); err != nil {
		return "", err
	}
	return kept, steps.apply(ctx, db)
}

// versionOf is the version of one of our databases. The file is only read.
func versionOf(ctx context.Context, path string) (version int64, err error) {
	if err := isOurs(ctx, path); err != nil {
		return 0, err
	}
	db, err := openToRead(ctx, path)
	if err != nil {
		return 0, err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	err = db.QueryRowContext(ctx, "SELECT max(version_id) FROM goose_db_version WHERE is_applied").Scan(&version)
	return version, err
}

// isOurs looks at the mark in a file's header. It goes through SQLite: where
// this program has the same file open, closing it any other way would give up
// its locks.
func isOurs(ctx context.Context, path string) (err error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return err
	case !info.Mode().IsRegular():
		return notOurs(path, nil)
	case info.Size() == 0:
		return notOurs(path, errNoDatabase)
	}
	db, err := connect(ctx, path, settled, 1, patient)
	if notDatabase(err) {
		return notOurs(path, errNoDatabase)
	}
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	var id int64
	err = db.QueryRowContext(ctx, "PRAGMA application_id").Scan(&id)
	switch {
	case notDatabase(err):
		return notOurs(path, errNoDatabase)
	case err == nil && id != mark:
		return notOurs(path, nil)
	}
	return err
}

// errNoDatabase is the cause where a file is no database of any program.
var errNoDatabase = errors.New("it is no database")

func notOurs(path string, cause error) error {
	return &Refused{Reason: Foreign, What: path + " is not a database of Rootbell", Hint: "name another file; this one was left as it is", Cause: cause}
}
