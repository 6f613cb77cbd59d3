package store_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"rootbell/internal/app/store"
)

// withoutTeams takes a line of teams out of a text; broken ones are refused.
func withoutTeams(text []byte) ([]byte, error) {
	if bytes.Contains(text, []byte("broken")) {
		return nil, errors.New("a broken text")
	}
	var out []string
	for _, line := range strings.Split(string(text), "\n") {
		if !strings.HasPrefix(line, "teams:") {
			out = append(out, line)
		}
	}
	return []byte(strings.Join(out, "\n")), nil
}

// ofAClass is a garden with three plans that name teams and a logbook in which
// they wrote.
func ofAClass(t *testing.T, s *store.Store) string {
	t.Helper()
	g := must(s.Create(t.Context(), "Heron", []byte("garden: Heron\nteams: [Zircon]\ntub: 1\n"), "", dawn))(t).ID
	must(s.Save(t.Context(), g, 1, "Heron", []byte("garden: Heron\nbroken\nteams: [Zircon]\n"), "", dawn))(t)
	must(s.Save(t.Context(), g, 2, "Heron", []byte("garden: Heron\nteams: [Zircon, Beryl]\ntub: 3\n"), "", dawn))(t)
	for n := range 40 {
		r := row(t, fmt.Sprint("r", n), "Heron", n, "6.1")
		r.By = "Zircon"
		if n%4 == 0 {
			r.By = ""
		}
		must(s.AddReading(t.Context(), g, r, dawn))(t)
	}
	c := row(t, "c0", "Heron", 0, "6.2").Correction("r1")
	c.ID, c.By = "c0", "Zircon"
	must(s.AddReading(t.Context(), g, c, dawn))(t)
	return g
}

// all is everything that a garden holds, in one text.
func all(t *testing.T, s *store.Store, g string) string {
	t.Helper()
	var b bytes.Buffer
	if err := s.Export(t.Context(), g, &b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestAWipeTakesTheClassOutAndKeepsTheTub(t *testing.T) {
	s := reopen(t, t.TempDir()+"/rootbell.db")
	g := ofAClass(t, s)
	if n := must(s.Tagged(t.Context(), g))(t); n != 31 {
		t.Fatalf("%d rows say who wrote them", n)
	}
	before := must(s.Readings(t.Context(), g, store.Span{}))(t)
	w := must(s.WipeClass(t.Context(), g, 3, withoutTeams, "the class was wiped", dawn))(t)
	if w != (store.Wiped{Readings: 31, Plans: 3, Unread: 1}) {
		t.Errorf("%+v", w)
	}
	if text := all(t, s, g); strings.Contains(text, "Zircon") || strings.Contains(text, "Beryl") || !strings.Contains(text, "tub: 3") {
		t.Errorf("the class is still there, or the tub is not:\n%s", text)
	}
	after := must(s.Readings(t.Context(), g, store.Span{}))(t)
	if len(after) != len(before) {
		t.Fatalf("%d readings of %d", len(after), len(before))
	}
	for i := range after {
		was, is := before[i].Row, after[i].Row
		was.By = ""
		if fmt.Sprint(was) != fmt.Sprint(is) || !before[i].Recorded.Equal(after[i].Recorded) {
			t.Errorf("row %d was %+v and is %+v", i, was, is)
		}
	}
	latest := must(s.Revision(t.Context(), g, 0))(t)
	if latest.Number != 4 || latest.Why != "the class was wiped" {
		t.Errorf("the latest plan is %+v", latest)
	}
	sound(t, s)
	// Nothing of it is left in the bytes of the file, nor beside it.
	for _, end := range []string{"", "-wal"} {
		if text, err := os.ReadFile(s.Path() + end); err == nil && (bytes.Contains(text, []byte("Zircon")) || bytes.Contains(text, []byte("Beryl"))) {
			t.Errorf("the name of a team still stands in the file%s", end)
		}
	}
	// A second wipe finds nothing more.
	if w := must(s.WipeClass(t.Context(), g, 4, withoutTeams, "", dawn))(t); w.Readings+w.Plans+w.Unread != 0 {
		t.Errorf("a second wipe took out %+v", w)
	}
}

// A wipe that ends early has done nothing: here it is given up at each of its
// plans in turn.
func TestAWipeIsDoneWholeOrNotAtAll(t *testing.T) {
	for end := 1; end <= 4; end++ {
		s := reopen(t, t.TempDir()+"/rootbell.db")
		g := ofAClass(t, s)
		before := all(t, s, g)
		ctx, stop := context.WithCancel(t.Context())
		calls := 0
		_, err := s.WipeClass(ctx, g, 3, func(text []byte) ([]byte, error) {
			if calls++; calls == end {
				stop()
			}
			return withoutTeams(text)
		}, "", dawn)
		stop()
		if err == nil {
			t.Errorf("given up at plan %d, and no error", end)
		}
		if after := all(t, s, g); after != before {
			t.Errorf("given up at plan %d, and half done:\n%s", end, after)
		}
		sound(t, s)
	}
}

func TestAWipeOfWhatIsNotThere(t *testing.T) {
	s := reopen(t, t.TempDir()+"/rootbell.db")
	g := ofAClass(t, s)
	before := all(t, s, g)
	var conflict *store.Conflict
	if _, err := s.WipeClass(t.Context(), g, 2, withoutTeams, "", dawn); !errors.As(err, &conflict) || conflict.Latest.Number != 3 {
		t.Errorf("the plan changed meanwhile: %v", err)
	}
	var missing *store.NotFound
	if _, err := s.WipeClass(t.Context(), "nowhere", 1, withoutTeams, "", dawn); !errors.As(err, &missing) {
		t.Errorf("no such garden: %v", err)
	}
	var refused *store.Refused
	if _, err := s.WipeClass(t.Context(), g, 3, func([]byte) ([]byte, error) { return nil, errors.New("line 3") }, "", dawn); !errors.As(err, &refused) || refused.Hint == "" {
		t.Errorf("a latest plan that cannot be read: %v", err)
	}
	if all(t, s, g) != before {
		t.Error("something was changed")
	}
}
