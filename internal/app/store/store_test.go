package store_test

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"go.uber.org/goleak"

	"rootbell/internal/app/store"
)

func TestMain(m *testing.M) {
	if work := os.Getenv(childWork); work != "" {
		os.Exit(child(work, os.Getenv(childFile)))
	}
	goleak.VerifyTestMain(m)
}

// dawn is the moment that the tests begin at.
var dawn = time.Date(2027, time.January, 11, 8, 30, 0, 0, time.UTC)

func later(minutes int) time.Time { return dawn.Add(time.Duration(minutes) * time.Minute) }

// fresh opens a new database in a folder of its own.
func fresh(t testing.TB) *store.Store {
	t.Helper()
	return reopen(t, filepath.Join(t.TempDir(), "data", "rootbell.db"))
}

func reopen(t testing.TB, path string) *store.Store {
	t.Helper()
	s, err := store.Open(t.Context(), path, dawn)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { shut(t, s) })
	return s
}

// shut closes a database; twice is once.
func shut(t testing.TB, s *store.Store) {
	t.Helper()
	if err := s.Close(); err != nil {
		t.Error(err)
	}
}

func must[T any](v T, err error) func(testing.TB) T {
	return func(t testing.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func ok(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// refused asks for a refusal for a reason, with words for the teacher.
func refused(t testing.TB, err error, want store.Reason) store.Refused {
	t.Helper()
	var r *store.Refused
	if !errors.As(err, &r) {
		t.Fatalf("not refused but %v", err)
	}
	if r.Reason != want || r.What == "" || strings.HasSuffix(r.What, ".") {
		t.Fatalf("refused as %s (%v), want %s", r.Reason, r, want)
	}
	return *r
}

// sound reads the whole file, and asks for nothing left beside it.
func sound(t testing.TB, s *store.Store) {
	t.Helper()
	_, said, err := s.Tell(context.Background(), "PRAGMA integrity_check")
	if err != nil || said != "ok" {
		t.Fatal(said, err)
	}
	left, _ := filepath.Glob(filepath.Join(filepath.Dir(s.Path()), ".rootbell-*"))
	if len(left) > 0 {
		t.Errorf("left beside: %v", left)
	}
}
