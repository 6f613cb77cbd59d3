package store_test

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"rootbell/internal/app/store"
)

// A backup made while others write is whole: each garden has exactly the
// revisions that it says, up to one moment.
func TestBackupWhileOthersWrite(t *testing.T) {
	s := fresh(t)
	g := must(s.Create(t.Context(), "Heron", []byte(plan(1)), "", dawn))(t)
	ctx, stop := context.WithCancel(t.Context())
	var writing sync.WaitGroup
	for w := range 2 {
		writing.Go(func() {
			for n := 0; ctx.Err() == nil; n++ {
				if err := addText(ctx, s, g.ID, fmt.Sprintf("%s%d by %d", plan(n), n, w)); err != nil && ctx.Err() == nil {
					t.Error(err)
				}
			}
		})
	}
	dir := t.TempDir()
	former := 0
	for n := range 4 {
		path := filepath.Join(dir, fmt.Sprintf("backup%d.db", n))
		least := must(s.Garden(t.Context(), g.ID))(t).Revision
		ok(t, s.Backup(t.Context(), path))
		if _, err := os.Stat(path + "-wal"); err == nil {
			t.Error("the backup is more than one file")
		}
		b := reopen(t, path)
		inside := must(b.Garden(t.Context(), g.ID))(t)
		if all := must(b.Revisions(t.Context(), g.ID))(t); len(all) != inside.Revision || inside.Revision < least || inside.Revision < former {
			t.Errorf("the backup says %d revisions and has %d; %d were there before, %d in the last", inside.Revision, len(all), least, former)
		}
		former = inside.Revision
		shut(t, b)
	}
	stop()
	writing.Wait()
	sound(t, s)
}

func TestBackupNeverOverwrites(t *testing.T) {
	s := fresh(t)
	path := filepath.Join(t.TempDir(), "mine.db")
	ok(t, os.WriteFile(path, []byte("mine"), 0o600))
	refused(t, s.Backup(t.Context(), path), store.Exists)
	refused(t, s.Backup(t.Context(), s.Path()), store.Exists)
	refused(t, s.Backup(t.Context(), filepath.Dir(path)), store.Exists)
	if text := must(os.ReadFile(path))(t); string(text) != "mine" {
		t.Errorf("it was overwritten: %q", text)
	}
	refused(t, s.Backup(t.Context(), filepath.Join(t.TempDir(), "nowhere", "backup.db")), store.Absent)
	sound(t, s)
}

func TestRestoreBringsBackAndKeepsWhatWasThere(t *testing.T) {
	s := fresh(t)
	g := must(s.Create(t.Context(), "Heron", []byte("one"), "", dawn))(t)
	backup := filepath.Join(t.TempDir(), "backup.db")
	ok(t, s.Backup(t.Context(), backup))
	must(s.Save(t.Context(), g.ID, 1, "Heron", []byte("two"), "", later(1)))(t)
	saved := must(os.ReadFile(backup))(t)

	// Not while somebody has it open, even somebody who is idle.
	_, err := store.Restore(t.Context(), backup, s.Path(), later(2))
	refused(t, err, store.Busy)
	must(s.Save(t.Context(), g.ID, 2, "Heron", []byte("three"), "", later(2)))(t)
	shut(t, s)

	kept := must(store.Restore(t.Context(), backup, s.Path(), later(30)))(t)
	if want := filepath.Join(filepath.Dir(s.Path()), "rootbell-replaced-20270111T090000Z.db"); kept != want {
		t.Errorf("kept as %s, want %s", kept, want)
	}
	restored := reopen(t, s.Path())
	if r := must(restored.Revision(t.Context(), g.ID, 0))(t); r.Number != 1 || string(r.Text) != "one" {
		t.Errorf("restored as %v", r)
	}
	must(restored.Save(t.Context(), g.ID, 1, "Heron", []byte("four"), "", later(31)))(t)
	sound(t, restored)
	before := reopen(t, kept)
	if r := must(before.Revision(t.Context(), g.ID, 0))(t); r.Number != 3 || string(r.Text) != "three" {
		t.Errorf("kept is %v", r)
	}
	if !bytes.Equal(must(os.ReadFile(backup))(t), saved) {
		t.Error("the backup was changed")
	}
}

func TestRestoreWhereNothingIs(t *testing.T) {
	s := fresh(t)
	g := must(s.Create(t.Context(), "Heron", []byte("one"), "", dawn))(t)
	backup := filepath.Join(t.TempDir(), "backup.db")
	ok(t, s.Backup(t.Context(), backup))
	to := filepath.Join(t.TempDir(), "new", "rootbell.db")
	if kept := must(store.Restore(t.Context(), backup, to, dawn))(t); kept != "" {
		t.Errorf("kept %s of nothing", kept)
	}
	if got := must(reopen(t, to).Garden(t.Context(), g.ID))(t); got != g {
		t.Errorf("restored as %v", got)
	}
}

// The reason to restore at all: what is there cannot be read any more. It is
// kept all the same, byte for byte.
func TestRestoreOverADamagedDatabase(t *testing.T) {
	backup := filepath.Join(t.TempDir(), "backup.db")
	s := fresh(t)
	g := must(s.Create(t.Context(), "Heron", []byte(plan(1)), "", dawn))(t)
	ok(t, s.Backup(t.Context(), backup))
	shut(t, s)
	whole := must(os.ReadFile(s.Path()))(t)
	hole := bytes.Clone(whole)
	copy(hole[4096:], bytes.Repeat([]byte{0xaa}, len(hole)-4096))
	for name, text := range map[string][]byte{"zeros": make([]byte, len(whole)), "empty": {}, "half": whole[:4096], "a hole": hole} {
		t.Run(name, func(t *testing.T) {
			to := filepath.Join(t.TempDir(), "rootbell.db")
			ok(t, os.WriteFile(to, text, 0o600))
			kept := must(store.Restore(t.Context(), backup, to, dawn))(t)
			if left := must(os.ReadFile(kept))(t); len(left) != len(text) {
				t.Errorf("%d bytes of %d are kept", len(left), len(text))
			}
			restored := reopen(t, to)
			if got := must(restored.Garden(t.Context(), g.ID))(t); got != g {
				t.Errorf("restored as %v", got)
			}
			sound(t, restored)
		})
	}
}

func TestRestoreOfAnOlderBackup(t *testing.T) {
	s := fresh(t)
	g := must(s.Create(t.Context(), "Heron", []byte("one"), "", dawn))(t)
	backup := filepath.Join(t.TempDir(), "backup.db")
	ok(t, s.Backup(t.Context(), backup))
	to := filepath.Join(t.TempDir(), "rootbell.db")
	must(store.RestoreWith(t.Context(), backup, to, dawn, nextVersion()))(t)
	newer, err := store.OpenWith(t.Context(), to, dawn, nextVersion())
	ok(t, err)
	defer shut(t, newer)
	if got := must(newer.Garden(t.Context(), g.ID))(t); got != g || newer.Kept() != "" {
		t.Errorf("restored as %v, kept %q", got, newer.Kept())
	}
	// And the way back is refused.
	next := filepath.Join(t.TempDir(), "newer.db")
	ok(t, newer.Backup(t.Context(), next))
	shut(t, s)
	_, err = store.Restore(t.Context(), next, s.Path(), dawn)
	refused(t, err, store.Newer)
	if got := must(reopen(t, s.Path()).Garden(t.Context(), g.ID))(t); got != g {
		t.Errorf("what was there is %v", got)
	}
}

func TestRestoreOnlyOfAWholeBackupOfOurs(t *testing.T) {
	s := fresh(t)
	g := must(s.Create(t.Context(), "Heron", []byte(plan(1)), "", dawn))(t)
	dir := t.TempDir()
	backup := filepath.Join(dir, "backup.db")
	ok(t, s.Backup(t.Context(), backup))
	shut(t, s)
	whole := must(os.ReadFile(backup))(t)
	spoilt := func(change func(text []byte) []byte) func(string) {
		return func(path string) { ok(t, os.WriteFile(path, change(bytes.Clone(whole)), 0o600)) }
	}
	// A trigger would act by itself whenever a row is written.
	trigger := func(path string) {
		spoilt(func(text []byte) []byte { return text })(path)
		b := reopen(t, path)
		ok(t, b.Ask(t.Context(), "CREATE TRIGGER gone AFTER INSERT ON revision BEGIN DELETE FROM garden; END"))
		shut(t, b)
	}
	orphan := func(path string) {
		spoilt(func(text []byte) []byte { return text })(path)
		b := reopen(t, path)
		ok(t, b.Ask(t.Context(), "PRAGMA foreign_keys = 0; DELETE FROM garden"))
		shut(t, b)
	}
	cases := []struct {
		name   string
		make   func(path string)
		reason store.Reason
	}{
		{"there is none", func(string) {}, store.Absent},
		{"an empty file", spoilt(func([]byte) []byte { return nil }), store.Foreign},
		{"a plan", spoilt(func([]byte) []byte { return []byte("rootbell: 1\n") }), store.Foreign},
		{"another program's", spoilt(func(text []byte) []byte { text[68] ^= 1; return text }), store.Foreign},
		{"cut off", spoilt(func(text []byte) []byte { return text[:len(text)/2] }), store.Damaged},
		{"a page overwritten", spoilt(func(text []byte) []byte {
			copy(text[len(text)-4096:], bytes.Repeat([]byte{0xaa}, 4096))
			return text
		}), store.Damaged},
		{"with a trigger", trigger, store.Foreign},
		{"revisions of no garden", orphan, store.Damaged},
		{"the database itself", func(path string) { ok(t, os.Symlink(s.Path(), path)) }, store.Unfit},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "backup.db")
			c.make(path)
			_, err := store.Restore(t.Context(), path, s.Path(), dawn)
			t.Log(refused(t, err, c.reason))
			again := reopen(t, s.Path())
			defer shut(t, again)
			if got := must(again.Garden(t.Context(), g.ID))(t); got != g {
				t.Errorf("what was there is %v", got)
			}
			sound(t, again)
		})
	}
}

// What another program keeps is not replaced, whatever the name.
func TestRestoreNeverReplacesAnothersDatabase(t *testing.T) {
	s := fresh(t)
	backup := filepath.Join(t.TempDir(), "backup.db")
	ok(t, s.Backup(t.Context(), backup))
	text := must(os.ReadFile(backup))(t)
	text[68] ^= 1 // the application id: https://www.sqlite.org/fileformat.html, section 1.3
	to := filepath.Join(t.TempDir(), "another.db")
	ok(t, os.WriteFile(to, text, 0o600))
	_, err := store.Restore(t.Context(), backup, to, dawn)
	refused(t, err, store.Foreign)
	if !bytes.Equal(must(os.ReadFile(to))(t), text) {
		t.Error("it was changed")
	}
}
