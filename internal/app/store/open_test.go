package store_test

import (
	"bytes"
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"rootbell/internal/app/store"
)

// nextVersion are the steps of a program one version on.
func nextVersion() fs.FS {
	next := fstest.MapFS{}
	last := ""
	names, _ := fs.Glob(store.Steps, "*.sql")
	for _, last = range names {
		text, _ := fs.ReadFile(store.Steps, last)
		next[last] = &fstest.MapFile{Data: text}
	}
	next[strings.ReplaceAll(last[:4], last[3:4], string(last[3]+1))+"_note.sql"] = &fstest.MapFile{
		Data: []byte("-- +goose Up\nCREATE TABLE note (garden TEXT NOT NULL REFERENCES garden (id), text TEXT NOT NULL);\nINSERT INTO note SELECT id, name FROM garden;\n"),
	}
	return next
}

func TestOpenMakesFolderAndFileForOneUser(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a", "b", "rootbell.db")
	s := reopen(t, path)
	if s.Path() != path || s.Kept() != "" {
		t.Error(s.Path(), s.Kept())
	}
	if runtime.GOOS == "windows" {
		return
	}
	for name, want := range map[string]fs.FileMode{filepath.Dir(path): 0o700, path: 0o600} {
		if info := must(os.Stat(name))(t); info.Mode().Perm() != want {
			t.Errorf("%s has the mode %v", name, info.Mode())
		}
	}
}

func TestConnectionsAreSetAsTheyShould(t *testing.T) {
	s := fresh(t)
	const full = "2" // https://www.sqlite.org/pragma.html#pragma_synchronous
	cases := []struct{ pragma, write, read string }{
		{"journal_mode", "wal", "wal"},
		{"synchronous", full, full},
		{"foreign_keys", "1", "1"},
		{"busy_timeout", "5000", "5000"},
		{"query_only", "0", "1"},
		{"trusted_schema", "0", "0"},
	}
	for _, c := range cases {
		write, read, err := s.Tell(t.Context(), "PRAGMA "+c.pragma)
		if err != nil || write != c.write || read != c.read {
			t.Errorf("%s is %s and %s, want %s and %s (%v)", c.pragma, write, read, c.write, c.read, err)
		}
	}
}

// The name of a file may hold what means something in an address.
func TestAnyFileName(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"a b.db", "50%.db", "what?.db", "no#1.db", "ä;ö&ü=.db", "file:x.db", "no ending", "quote'\".db"} {
		if runtime.GOOS == "windows" && strings.ContainsAny(name, `?:"`) {
			continue
		}
		path := filepath.Join(dir, name)
		s := reopen(t, path)
		must(s.Create(t.Context(), "Heron", nil, "", dawn))(t)
		ok(t, s.Backup(t.Context(), path+" backup"))
		shut(t, s)
		if _, err := os.Stat(path); err != nil {
			t.Error(err)
		}
	}
	left := must(os.ReadDir(dir))(t)
	for _, f := range left {
		t.Log(f.Name())
	}
}

// Two programs begin with nothing at the same moment: both have one database.
func TestTwoBeginAtOnce(t *testing.T) {
	path := filepath.Join(t.TempDir(), "data", "rootbell.db")
	var both sync.WaitGroup
	for range 4 {
		both.Go(func() {
			s, err := store.Open(t.Context(), path, dawn)
			if err != nil {
				t.Error(err)
				return
			}
			defer shut(t, s)
			if _, err := s.Create(t.Context(), "Heron", nil, "", dawn); err != nil {
				t.Error(err)
			}
		})
	}
	both.Wait()
	s := reopen(t, path)
	if all := must(s.Gardens(t.Context()))(t); len(all) != 4 {
		t.Errorf("%d gardens of 4", len(all))
	}
	sound(t, s)
}

func TestAnOlderFileIsCopiedAndBroughtUpToDate(t *testing.T) {
	s := fresh(t)
	g := must(s.Create(t.Context(), "Heron", []byte("one"), "begun", dawn))(t)
	shut(t, s)
	newer, err := store.OpenWith(t.Context(), s.Path(), later(90), nextVersion())
	ok(t, err)
	defer shut(t, newer)
	if got := must(newer.Garden(t.Context(), g.ID))(t); got != g {
		t.Errorf("the garden is %v", got)
	}
	if _, note, err := newer.Tell(t.Context(), "SELECT text FROM note"); err != nil || note != "Heron" {
		t.Errorf("the step was not taken: %q, %v", note, err)
	}
	if want := filepath.Join(filepath.Dir(s.Path()), "rootbell-version-2-20270111T100000Z.db"); newer.Kept() != want {
		t.Fatalf("the copy is %q, want %q", newer.Kept(), want)
	}
	copied := reopen(t, newer.Kept())
	if got := must(copied.Garden(t.Context(), g.ID))(t); got != g {
		t.Errorf("in the copy the garden is %v", got)
	}
	sound(t, newer)
}

// A step that fails leaves the file as it was, and the copy beside.
func TestAStepThatFailsChangesNothing(t *testing.T) {
	s := fresh(t)
	must(s.Create(t.Context(), "Heron", nil, "", dawn))(t)
	shut(t, s)
	wrong := fstest.MapFS{}
	for name, file := range nextVersion().(fstest.MapFS) {
		wrong[name] = file
		if strings.HasSuffix(name, "_note.sql") {
			wrong[name] = &fstest.MapFile{Data: append(bytes.Clone(file.Data), "INSERT INTO nowhere VALUES (1);\n"...)}
		}
	}
	if _, err := store.OpenWith(t.Context(), s.Path(), later(1), wrong); err == nil {
		t.Fatal("no error")
	}
	again := reopen(t, s.Path())
	if _, n, err := again.Tell(t.Context(), "SELECT count(*) FROM sqlite_schema WHERE name = 'note'"); err != nil || n != "0" {
		t.Errorf("half a step was taken: %s, %v", n, err)
	}
	sound(t, again)
}

func TestANewerFileIsRefusedAndLeft(t *testing.T) {
	path := filepath.Join(t.TempDir(), "rootbell.db")
	newer, err := store.OpenWith(t.Context(), path, dawn, nextVersion())
	ok(t, err)
	shut(t, newer)
	untouched(t, path, store.Newer)
}

func TestWhatIsNoneOfOursIsRefusedAndLeft(t *testing.T) {
	dir := t.TempDir()
	foreign := filepath.Join(dir, "foreign.db")
	db := must(sql.Open("sqlite", foreign))(t)
	_, err := db.Exec("CREATE TABLE garden (id TEXT)")
	ok(t, errors.Join(err, db.Close()))
	for name, text := range map[string]string{"plan.yaml": "rootbell: 1\n", "empty.db": "", "long.txt": strings.Repeat("no database\n", 1000), "half.db": "SQLite format 3\x00"} {
		path := filepath.Join(dir, name)
		ok(t, os.WriteFile(path, []byte(text), 0o600))
		untouched(t, path, store.Foreign)
	}
	untouched(t, foreign, store.Foreign)
	if left := must(os.ReadDir(dir))(t); len(left) != 5 {
		t.Errorf("files were left: %v", left)
	}
	_, err = store.Open(t.Context(), dir, dawn)
	refused(t, err, store.Foreign)
	_, err = store.Open(t.Context(), filepath.Join(foreign, "rootbell.db"), dawn)
	refused(t, err, store.ReadOnly)
}

func untouched(t *testing.T, path string, reason store.Reason) {
	t.Helper()
	before := must(os.ReadFile(path))(t)
	_, err := store.Open(t.Context(), path, dawn)
	r := refused(t, err, reason)
	if !strings.Contains(r.What, path) || r.Hint == "" {
		t.Errorf("%s: said as %q, %q", path, r.What, r.Hint)
	}
	if after := must(os.ReadFile(path))(t); !bytes.Equal(after, before) {
		t.Errorf("%s was changed", path)
	}
}

// A database cut in half, as by a full memory stick, is said to be damaged.
func TestADamagedFileIsRefused(t *testing.T) {
	s := fresh(t)
	must(s.Create(t.Context(), "Heron", []byte(plan(1)), "", dawn))(t)
	shut(t, s)
	ok(t, os.Truncate(s.Path(), 4096))
	_, err := store.Open(t.Context(), s.Path(), dawn)
	refused(t, err, store.Damaged)
}

// A file that a kill left in the middle of a change, with the journal to undo
// it beside, is put right when it is opened next, and a backup of it likewise.
func TestWhatAKillLeftIsUndone(t *testing.T) {
	s := fresh(t)
	g := must(s.Create(t.Context(), "Heron", []byte(plan(1)), "", dawn))(t)
	for n := 1; n < 20; n++ {
		must(s.Save(t.Context(), g.ID, n, "Heron", []byte(plan(n+1)), "", dawn))(t)
	}
	g = must(s.Garden(t.Context(), g.ID))(t)
	shut(t, s)
	left := filepath.Join(t.TempDir(), "rootbell.db")
	interrupted(t, s.Path(), left)

	to := filepath.Join(t.TempDir(), "rootbell.db")
	for _, end := range []string{"", "-journal"} {
		ok(t, os.WriteFile(to+end, must(os.ReadFile(left+end))(t), 0o600))
	}
	copied := filepath.Join(t.TempDir(), "rootbell.db")
	must(store.Restore(t.Context(), to, copied, dawn))(t)
	for _, path := range []string{left, copied} {
		again := reopen(t, path)
		if got := must(again.Garden(t.Context(), g.ID))(t); got != g {
			t.Errorf("the garden is %v, and was %v", got, g)
		}
		if r := must(again.Revision(t.Context(), g.ID, 20))(t); string(r.Text) != plan(20) {
			t.Error("the last revision is not what was saved")
		}
		sound(t, again)
	}
}

// interrupted writes what a kill in the middle of a large change leaves.
func interrupted(t *testing.T, from, left string) {
	t.Helper()
	db := must(sql.Open("sqlite", from+"?_pragma=journal_mode(DELETE)&_pragma=cache_size(1)"))(t)
	defer func() { ok(t, db.Close()) }()
	tx := must(db.Begin())(t)
	_, err := tx.Exec("UPDATE revision SET text = upper(text); UPDATE garden SET name = 'half'")
	ok(t, err)
	journal := must(os.ReadFile(from + "-journal"))(t)
	changed := must(os.ReadFile(from))(t)
	if len(journal) < 8192 || !bytes.Contains(changed, []byte("# X")) {
		t.Fatal("the change has not reached the disk: the test tries nothing")
	}
	ok(t, errors.Join(os.WriteFile(left, changed, 0o600), os.WriteFile(left+"-journal", journal, 0o600)))
	ok(t, tx.Rollback())
}
