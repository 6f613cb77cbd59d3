package store

import (
	"context"
	"io/fs"
	"time"
)

// For the tests outside: a program of another version has other steps.
var (
	Steps fs.FS = migrations()
	Parse       = func(text []byte) ([]byte, error) { l, err := parse(text); return l.format(), err }
)

func OpenWith(ctx context.Context, path string, at time.Time, files fs.FS) (*Store, error) {
	return open(ctx, path, at, steps{files})
}

func RestoreWith(ctx context.Context, from, to string, at time.Time, files fs.FS) (string, error) {
	return restore(ctx, from, to, at, steps{files})
}

// Ask runs a statement on the connection that writes.
func (s *Store) Ask(ctx context.Context, statement string) error {
	_, err := s.write.ExecContext(ctx, statement)
	return err
}

// Tell gives the first value that a statement answers on both kinds of
// connection.
func (s *Store) Tell(ctx context.Context, statement string) (write, read string, err error) {
	if err := s.write.QueryRowContext(ctx, statement).Scan(&write); err != nil {
		return "", "", err
	}
	err = s.hold.QueryRowContext(ctx, statement).Scan(&read)
	return write, read, err
}
