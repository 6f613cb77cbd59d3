package store_test

import (
	"fmt"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"rootbell/internal/app/store"
)

// smallDisk is a disk of its own for a test. Where the system lets nobody mount
// one, it is an ordinary folder and mounted is false.
func smallDisk(t *testing.T) (dir string, mounted bool) {
	t.Helper()
	dir = t.TempDir()
	if err := syscall.Mount("none", dir, "tmpfs", 0, "size=1m"); err != nil {
		t.Logf("no disk can be mounted here (%v): SQLite's own limits stand for it", err)
		return dir, false
	}
	t.Logf("on a tmpfs of 1 MiB")
	t.Cleanup(func() {
		if err := syscall.Unmount(dir, syscall.MNT_DETACH); err != nil {
			t.Error(err)
		}
	})
	return dir, true
}

// fillUp writes readings until one is refused, and gives those that were taken.
func fillUp(t *testing.T, s *store.Store, g string) (taken []string, err error) {
	t.Helper()
	for n := range 20_000 {
		r := row(t, fmt.Sprint("r", n), "Heron", n, "6")
		if _, err := s.AddReading(t.Context(), g, r, dawn); err != nil {
			return taken, err
		}
		taken = append(taken, r.ID)
	}
	return taken, nil
}

// haveAll asks for exactly the readings that were taken.
func haveAll(t *testing.T, s *store.Store, g string, taken []string) {
	t.Helper()
	got := must(s.ReadingIDs(t.Context(), g))(t)
	if fmt.Sprint(got) != fmt.Sprint(taken) {
		t.Errorf("%d readings, and %d were acknowledged", len(got), len(taken))
	}
	sound(t, s)
}

// A full disk refuses in words; what was acknowledged is there, and with room
// again one goes on.
func TestReadingsOnAFullDisk(t *testing.T) {
	dir, mounted := smallDisk(t)
	s := reopen(t, filepath.Join(dir, "rootbell.db"))
	g := garden(t, s)
	ballast := filepath.Join(dir, "ballast")
	if mounted {
		ok(t, os.WriteFile(ballast, make([]byte, 300<<10), 0o600))
	} else {
		ok(t, s.Ask(t.Context(), "PRAGMA max_page_count = 100"))
	}
	taken, err := fillUp(t, s, g)
	r := refused(t, err, store.Full)
	if len(taken) < 10 || r.Hint == "" {
		t.Errorf("%d taken, refused with %+v", len(taken), r)
	}
	t.Logf("%d readings were taken before: %s", len(taken), r.What)
	haveAll(t, s, g, taken)
	if mounted {
		ok(t, os.Remove(ballast))
	} else {
		ok(t, s.Ask(t.Context(), "PRAGMA max_page_count = 1000000"))
	}
	must(s.AddReading(t.Context(), g, row(t, "again", "Heron", 1, "6"), dawn))(t)
	haveAll(t, s, g, append(taken, "again"))
}

// A database that may suddenly only be read refuses in words, and what was
// acknowledged is there. The system lets nobody turn a disk under an open file,
// so SQLite's own switch stands for it.
func TestReadingsWhereNothingMayBeWritten(t *testing.T) {
	s := fresh(t)
	g := garden(t, s)
	must(s.AddReading(t.Context(), g, row(t, "before", "Heron", 1, "6"), dawn))(t)
	ok(t, s.Ask(t.Context(), "PRAGMA query_only = 1"))
	_, err := s.AddReading(t.Context(), g, row(t, "lost", "Heron", 2, "6"), dawn)
	if r := refused(t, err, store.ReadOnly); r.Hint == "" {
		t.Errorf("refused without a hint: %+v", r)
	}
	haveAll(t, s, g, []string{"before"})
	ok(t, s.Ask(t.Context(), "PRAGMA query_only = 0"))
	must(s.AddReading(t.Context(), g, row(t, "after", "Heron", 3, "6"), dawn))(t)
	haveAll(t, s, g, []string{"before", "after"})
}

// A disk that is mounted read-only, as a worn memory stick is, is refused when
// it is opened; with the switch back, all that was acknowledged is there.
func TestReadingsOnAReadOnlyDisk(t *testing.T) {
	dir, mounted := smallDisk(t)
	path := filepath.Join(dir, "rootbell.db")
	s := reopen(t, path)
	g := garden(t, s)
	must(s.AddReading(t.Context(), g, row(t, "before", "Heron", 1, "6"), dawn))(t)
	shut(t, s)
	turn(t, dir, mounted, true)
	_, err := store.Open(t.Context(), path, dawn)
	r := refused(t, err, store.ReadOnly)
	t.Logf("refused: %s; %s", r.What, r.Hint)
	turn(t, dir, mounted, false)
	s = reopen(t, path)
	must(s.AddReading(t.Context(), g, row(t, "after", "Heron", 3, "6"), dawn))(t)
	haveAll(t, s, g, []string{"before", "after"})
	shut(t, s)
}

// turn makes a disk read-only or writable again; of a folder that is no disk,
// what lies in it. Nobody but root may write in spite of that.
func turn(t *testing.T, dir string, mounted, readOnly bool) {
	t.Helper()
	if mounted {
		flags := uintptr(syscall.MS_REMOUNT)
		if readOnly {
			flags |= syscall.MS_RDONLY
		}
		ok(t, syscall.Mount("none", dir, "tmpfs", flags, ""))
		return
	}
	if os.Getuid() == 0 {
		t.Skip("root may write everywhere, and no disk can be mounted here")
	}
	mode, folder := os.FileMode(0o600), os.FileMode(0o700)
	if readOnly {
		mode, folder = 0o400, 0o500
	}
	ok(t, os.Chmod(filepath.Join(dir, "rootbell.db"), mode))
	ok(t, os.Chmod(dir, folder))
}
