package store_test

import (
	"context"
	"path/filepath"
	"testing"
	"time"

	"rootbell/internal/app/store"
)

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
	s, err := store.Open(context.Background(), path, dawn)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	})
	return s
}

func TestSmoke(t *testing.T) {
	ctx := context.Background()
	s := fresh(t)
	g, err := s.Create(ctx, "Heron bay", []byte("rootbell: 1\n"), "begun", dawn)
	if err != nil {
		t.Fatal(err)
	}
	r, err := s.Save(ctx, g.ID, 1, "Heron bay", []byte("rootbell: 1\ngarden: Heron bay\n"), "named", later(1))
	if err != nil || r.Number != 2 {
		t.Fatal(r, err)
	}
	all, err := s.Revisions(ctx, g.ID)
	if err != nil || len(all) != 2 {
		t.Fatal(all, err)
	}
	again := reopen(t, s.Path())
	list, err := again.Gardens(ctx)
	if err != nil || len(list) != 1 || list[0].Revision != 2 {
		t.Fatal(list, err)
	}
	t.Log(list)
}
