package store

import (
	"context"
	"database/sql"
	"errors"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"modernc.org/sqlite" // also registers the driver
	codes "modernc.org/sqlite/lib"
)

// mark is the application id in the header of our databases: 'rtbl' in ASCII.
const mark = 0x7274626c

// How a connection opens the file.
const (
	readWrite = "rw" // and never creates it
	readOnly  = "ro"
	settled   = "ro&immutable=1" // nobody changes it: without locks, with no file beside
)

// Settings of SQLite hold for one connection, so they are in its name. A
// schema that came in a restored file is not trusted to call functions.
var (
	always  = []string{"foreign_keys(1)", "trusted_schema(0)", "synchronous(FULL)"}
	patient = "busy_timeout(5000)"
	serving = []string{patient, "journal_mode(WAL)"}
	looking = []string{patient, "query_only(1)"}
	// alone: no other connection may have the file open, and none can open it.
	alone = []string{"busy_timeout(500)", "locking_mode(EXCLUSIVE)", "journal_mode(DELETE)"}
)

// address is the data source name of a file given by its whole path.
func address(path, mode string, pragmas ...string) string {
	slashed := filepath.ToSlash(path)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // a drive's letter
	}
	query := url.Values{"_txlock": {"immediate"}, "_pragma": slices.Concat(pragmas, always)}
	return "file://" + (&url.URL{Path: slashed}).EscapedPath() + "?mode=" + mode + "&" + query.Encode()
}

// connect opens a file with at most so many connections, and makes sure that
// the first of them stands.
func connect(ctx context.Context, path, mode string, most int, pragmas ...string) (*sql.DB, error) {
	db, err := sql.Open("sqlite", address(path, mode, pragmas...))
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(most)
	db.SetMaxIdleConns(most)
	if err := db.PingContext(ctx); err != nil {
		return nil, errors.Join(err, db.Close())
	}
	return db, nil
}

// openToRead opens one of our files and makes sure that it can be read. It is
// opened so that it cannot be written, with two exceptions: what a program that
// was killed had begun must be undone first; and in a folder that cannot be
// written, SQLite reads only what is known to be at rest.
func openToRead(ctx context.Context, path string) (*sql.DB, error) {
	db, err := openAs(ctx, path, readOnly)
	if code(err) != codes.SQLITE_READONLY && code(err) != codes.SQLITE_CANTOPEN {
		return db, err
	}
	if db, err := openAs(ctx, path, readWrite); err == nil {
		return db, nil
	}
	if atRest(path) {
		return openAs(ctx, path, settled)
	}
	return nil, err
}

// atRest tells whether everything about a database stands in its own file.
func atRest(path string) bool {
	for _, end := range []string{"-journal", "-wal"} {
		if info, err := os.Lstat(path + end); err == nil && info.Size() > 0 {
			return false
		}
	}
	return true
}

func openAs(ctx context.Context, path, mode string) (*sql.DB, error) {
	db, err := connect(ctx, path, mode, 1, patient)
	if err != nil {
		return nil, err
	}
	if err := db.QueryRowContext(ctx, "SELECT count(*) FROM sqlite_schema").Scan(new(int)); err != nil {
		return nil, errors.Join(err, db.Close())
	}
	return db, nil
}

// seize opens a file so that no other program has it open meanwhile: the
// journal cannot leave the mode that several may share unless one is alone
// with the file, and the lock is then kept.
func seize(ctx context.Context, path string) (*sql.DB, error) {
	db, err := connect(ctx, path, readWrite, 1, alone...)
	if err != nil {
		return nil, err
	}
	if _, err := db.ExecContext(ctx, "BEGIN EXCLUSIVE; COMMIT"); err != nil {
		return nil, errors.Join(err, db.Close())
	}
	return db, nil
}

// code is SQLite's primary result code of an error, 0 where it is none.
func code(err error) int {
	var failed *sqlite.Error
	if !errors.As(err, &failed) {
		return codes.SQLITE_OK
	}
	return failed.Code() & 0xff
}

func wordedSQLite(err error, path string) error {
	var failed *sqlite.Error
	if !errors.As(err, &failed) {
		return err
	}
	switch code(err) {
	case codes.SQLITE_FULL:
		return &Refused{Reason: Full, What: "there is no room left for " + path, Hint: hintRoom, Cause: failed}
	case codes.SQLITE_READONLY, codes.SQLITE_CANTOPEN, codes.SQLITE_PERM, codes.SQLITE_AUTH:
		return &Refused{Reason: ReadOnly, What: path + " cannot be written", Hint: hintFolder, Cause: failed}
	case codes.SQLITE_BUSY, codes.SQLITE_LOCKED:
		return &Refused{Reason: Busy, What: "another program has " + path + " open", Hint: hintBusy, Cause: failed}
	case codes.SQLITE_CORRUPT, codes.SQLITE_NOTADB:
		return &Refused{Reason: Damaged, What: path + " is damaged", Hint: hintBackup, Cause: failed}
	case codes.SQLITE_IOERR:
		return &Refused{Reason: Full, What: "the disk failed while " + path + " was read or written", Hint: "check that the disk is there and has room, then do it again", Cause: failed}
	case codes.SQLITE_INTERRUPT:
		return context.Canceled
	}
	return err
}

// notDatabase tells whether SQLite says that a file is no database.
func notDatabase(err error) bool { return code(err) == codes.SQLITE_NOTADB }

// isDamaged tells whether SQLite says that a file is no database, or not a
// whole one.
func isDamaged(err error) bool { return notDatabase(err) || code(err) == codes.SQLITE_CORRUPT }

// scrub writes the file anew, so that nothing that was taken out is left in
// pages that are free, or in the file of what was written last.
func (s *Store) scrub(ctx context.Context) error {
	if _, err := s.write.ExecContext(ctx, "VACUUM"); err != nil {
		return err
	}
	_, err := s.write.ExecContext(ctx, "PRAGMA wal_checkpoint(TRUNCATE)")
	return err
}
