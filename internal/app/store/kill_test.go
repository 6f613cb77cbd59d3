package store_test

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"rootbell/internal/app/store"
)

// The variables that make the test's own program a child: what it does, and to
// which file.
const (
	childWork = "ROOTBELL_TEST_CHILD"
	childFile = "ROOTBELL_TEST_FILE"
)

// child saves one revision after the other and prints the number of each that
// was acknowledged, or stops in the middle of a change, until it is killed.
func child(work, file string) int {
	ctx := context.Background()
	if work == "restore" {
		return restoreForEver(ctx, file)
	}
	s, err := store.Open(ctx, file, dawn)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 3
	}
	gardens, err := s.Gardens(ctx)
	if err != nil || len(gardens) != 1 {
		fmt.Fprintln(os.Stderr, gardens, err)
		return 3
	}
	g := gardens[0]
	for n := g.Revision; ; n++ {
		if work == "halfway" {
			err := s.Ask(ctx, fmt.Sprintf("BEGIN IMMEDIATE; UPDATE garden SET name = 'half', revision = %d; DELETE FROM revision", n+1))
			fmt.Println(n, err)
			select {} // the parent ends it here
		}
		if _, err := s.Save(ctx, g.ID, n, "Heron", []byte(plan(n+1)), "", dawn); err != nil {
			fmt.Fprintln(os.Stderr, err)
			return 3
		}
		fmt.Println(n+1, error(nil))
	}
}

// plan is the text of revision n: long enough to need several pages.
func plan(n int) string { return fmt.Sprintf("revision: %d\n%s", n, strings.Repeat("# x\n", 3000)) }

// spawn starts a child on a file.
func spawn(t *testing.T, work, file string) (*exec.Cmd, *bufio.Scanner) {
	t.Helper()
	c := exec.Command(os.Args[0])
	c.Env = append(os.Environ(), childWork+"="+work, childFile+"="+file)
	c.Stderr = os.Stderr
	out, err := c.StdoutPipe()
	ok(t, err)
	ok(t, c.Start())
	return c, bufio.NewScanner(out)
}

// read gives the number that a child has acknowledged last.
func read(t *testing.T, lines *bufio.Scanner) (acknowledged int) {
	t.Helper()
	if !lines.Scan() {
		t.Fatal("the child has ended")
	}
	word, rest, _ := strings.Cut(lines.Text(), " ")
	acknowledged, err := strconv.Atoi(word)
	if err != nil || rest != "<nil>" {
		t.Fatalf("the child says %q", lines.Text())
	}
	return acknowledged
}

// What was acknowledged is there after a kill in the next instant.
func TestAKilledProgramLosesNothingAcknowledged(t *testing.T) {
	s := fresh(t)
	g := must(s.Create(t.Context(), "Heron", []byte(plan(1)), "", dawn))(t)
	shut(t, s)
	for kill := range 6 {
		c, lines := spawn(t, "save", s.Path())
		acknowledged := 0
		for range 3 + 5*kill {
			acknowledged = read(t, lines)
		}
		ok(t, c.Process.Kill())
		for lines.Scan() { // what it had still said before the kill
			if n, rest, _ := strings.Cut(lines.Text(), " "); rest == "<nil>" {
				acknowledged, _ = strconv.Atoi(n)
			}
		}
		_ = c.Wait() // it was killed

		s := reopen(t, s.Path())
		latest := must(s.Revision(t.Context(), g.ID, 0))(t)
		if latest.Number < acknowledged || latest.Number > acknowledged+1 {
			t.Errorf("revision %d was acknowledged, and %d is the latest", acknowledged, latest.Number)
		}
		all := must(s.Revisions(t.Context(), g.ID))(t)
		for _, r := range all {
			if r = must(s.Revision(t.Context(), g.ID, r.Number))(t); string(r.Text) != plan(r.Number) {
				t.Fatalf("revision %d is not what was saved", r.Number)
			}
		}
		if len(all) != latest.Number {
			t.Errorf("%d revisions, and the latest is %d", len(all), latest.Number)
		}
		sound(t, s)
		shut(t, s)
	}
}

// Of a change that was not yet acknowledged, nothing is there.
func TestAKillInTheMiddleLeavesNothingHalf(t *testing.T) {
	s := fresh(t)
	g := must(s.Create(t.Context(), "Heron", []byte(plan(1)), "", dawn))(t)
	shut(t, s)
	c, lines := spawn(t, "halfway", s.Path())
	read(t, lines)
	ok(t, c.Process.Kill())
	_ = c.Wait() // it was killed

	s = reopen(t, s.Path())
	if got := must(s.Garden(t.Context(), g.ID))(t); got != g {
		t.Errorf("the garden is %v, and was %v", got, g)
	}
	if r := must(s.Revision(t.Context(), g.ID, 0))(t); string(r.Text) != plan(1) {
		t.Error("its revision is not what was saved")
	}
	sound(t, s)
}

// While a program is in the middle of a change, others still read; and a
// database that a program has open cannot be replaced or moved to a newer
// version under it.
func TestOthersWhileAProgramServes(t *testing.T) {
	s := fresh(t)
	must(s.Create(t.Context(), "Heron", []byte(plan(1)), "", dawn))(t)
	backup := filepath.Join(t.TempDir(), "backup.db")
	ok(t, s.Backup(t.Context(), backup))
	shut(t, s)
	c, lines := spawn(t, "save", s.Path())
	defer func() {
		_ = c.Process.Kill()
		_ = c.Wait() // it was killed
	}()
	read(t, lines)
	_, err := store.Restore(t.Context(), backup, s.Path(), dawn)
	refused(t, err, store.Busy)
	_, err = store.OpenWith(t.Context(), s.Path(), dawn, nextVersion())
	refused(t, err, store.Busy)
	before := read(t, lines)
	again := reopen(t, s.Path())
	if all := must(again.Gardens(t.Context()))(t); len(all) != 1 || all[0].Revision < before {
		t.Errorf("read while it serves: %v, and %d was acknowledged", all, before)
	}
}

// restoreForEver brings back one of two backups after the other.
func restoreForEver(ctx context.Context, file string) int {
	for n := 0; ; n++ {
		if _, err := store.Restore(ctx, file+[]string{".a", ".b"}[n%2], file, later(n)); err != nil {
			fmt.Fprintln(os.Stderr, err)
			return 3
		}
		fmt.Println(n, error(nil))
	}
}

// A program killed while it restores leaves the one or the other, whole.
func TestAKilledRestoreLeavesOneOfTheTwo(t *testing.T) {
	file := filepath.Join(t.TempDir(), "rootbell.db")
	for name, revisions := range map[string]int{"a": 2, "b": 40} {
		s := fresh(t)
		g := must(s.Create(t.Context(), name, []byte(plan(1)), "", dawn))(t)
		for n := 1; n < revisions; n++ {
			must(s.Save(t.Context(), g.ID, n, name, []byte(plan(n+1)), "", dawn))(t)
		}
		ok(t, s.Backup(t.Context(), file+"."+name))
	}
	journals := 0
	for kill := range 25 {
		c, lines := spawn(t, "restore", file)
		read(t, lines)
		read(t, lines)
		time.Sleep(time.Duration(kill) * time.Millisecond) // somewhere within the next
		ok(t, c.Process.Kill())
		_ = c.Wait() // it was killed
		if info, err := os.Stat(file + "-journal"); err == nil && info.Size() > 0 {
			journals++
		}
		s, err := store.Open(t.Context(), file, dawn)
		if err != nil {
			t.Fatalf("kill %d: %v", kill, err)
		}
		all := must(s.Gardens(t.Context()))(t)
		want := map[string]int{"a": 2, "b": 40}[all[0].Name]
		if revisions := must(s.Revisions(t.Context(), all[0].ID))(t); len(all) != 1 || len(revisions) != want {
			t.Errorf("kill %d: %v with %d revisions", kill, all, len(revisions))
		}
		_, said, err := s.Tell(t.Context(), "PRAGMA integrity_check")
		if err != nil || said != "ok" {
			t.Error(said, err)
		}
		shut(t, s)
	}
	t.Logf("%d of the kills left a journal", journals)
}
