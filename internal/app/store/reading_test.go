package store_test

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"rootbell/internal/app/store"
	"rootbell/internal/base/quantity"
	"rootbell/internal/science/reading"
)

// row is a reading of a tub, so many minutes after the tests begin.
func row(t testing.TB, id, tub string, minutes int, ph string) reading.Row {
	t.Helper()
	r := reading.Row{ID: id, Tub: tub, At: later(minutes), By: "Jade", Seen: "one yellow leaf, hole 4"}
	var err error
	if r.PH.Read, err = reading.ParseInterval[quantity.PH](ph, ""); err != nil {
		t.Fatal(err)
	}
	return r
}

func garden(t *testing.T, s *store.Store) string {
	t.Helper()
	return must(s.Create(t.Context(), "Heron", []byte("garden: Heron\n"), "", dawn))(t).ID
}

// ids are the readings that stand, by moment, with what they took the place of.
func ids(all []store.Written) string {
	rows := make([]reading.Row, len(all))
	for i, w := range all {
		rows[i] = w.Row
	}
	var out []string
	for _, e := range reading.Standing(rows) {
		word := e.ID
		for _, was := range e.Earlier {
			word += "<" + was.ID
		}
		out = append(out, word)
	}
	return strings.Join(out, " ")
}

func init() {
	conform["a reading sent twice is kept once"] = sentTwice
	conform["a correction is a new row"] = corrected
	conform["readings are found by tub and moment"] = foundByMoment
	conform["many readings are kept all or none"] = allOrNone
	conform["figures are those of the rows that stand"] = figuresAlone
}

func sentTwice(t *testing.T, s *store.Store) {
	g := garden(t, s)
	one := row(t, "a", "Heron", 10, "6.1")
	if fresh := must(s.AddReading(t.Context(), g, one, later(11)))(t); !fresh {
		t.Error("the first was not stored")
	}
	for range 3 {
		if fresh := must(s.AddReading(t.Context(), g, one, later(40)))(t); fresh {
			t.Error("it was stored twice")
		}
	}
	all := must(s.Readings(t.Context(), g, store.Span{}))(t)
	if len(all) != 1 || !all[0].Recorded.Equal(later(11)) || all[0].Number != 1 || !all[0].At.Equal(one.At) || all[0].Seen != one.Seen {
		t.Errorf("kept: %v", all)
	}
	other := one
	other.Seen = "nothing"
	var taken *store.Taken
	if _, err := s.AddReading(t.Context(), g, other, later(41)); !errors.As(err, &taken) || taken.There.Seen != one.Seen {
		t.Errorf("another reading under the id: %v", err)
	}
	if fresh := must(s.AddReading(t.Context(), garden(t, s), other, dawn))(t); !fresh {
		t.Error("an id of one garden is taken in another")
	}
	var none *store.NotFound
	if _, err := s.AddReading(t.Context(), "nobody", one, dawn); !errors.As(err, &none) {
		t.Error(err)
	}
	ok(t, s.Discard(t.Context(), g, later(60)))
	_, err := s.AddReading(t.Context(), g, row(t, "b", "Heron", 70, "6"), later(70))
	refused(t, err, store.InBin)
}

func corrected(t *testing.T, s *store.Store) {
	g := garden(t, s)
	add := func(r reading.Row) { must(s.AddReading(t.Context(), g, r, later(99)))(t) }
	first := row(t, "a", "Heron", 10, "6.9")
	add(first)
	add(row(t, "b", "Heron", 20, "6.0"))
	second := first.Correction("a2")
	second.At = later(30) // and moved behind b
	add(second)
	third := second.Correction("a3")
	third.Tub = "Otter"
	add(third)
	add(must(s.Reading(t.Context(), g, "b"))(t).Withdrawal("b2"))
	add(row(t, "c", "Heron", 5, "6.2").Correction("c2")) // corrects what is not there
	for _, c := range []struct {
		span store.Span
		want string
	}{
		{store.Span{}, "c2 a3<a<a2"},
		{store.Span{Tub: "HERON"}, "c2"},
		{store.Span{Tub: "otter"}, "a3<a<a2"},
		{store.Span{Most: 1}, "a3<a<a2"},
		{store.Span{Until: later(30)}, "c2"},
		{store.Span{From: later(30)}, "a3<a<a2"},
	} {
		if got := ids(must(s.Readings(t.Context(), g, c.span))(t)); got != c.want {
			t.Errorf("%+v: %q, want %q", c.span, got, c.want)
		}
	}
	if at := must(s.LastReading(t.Context(), g))(t); !at.Equal(later(30)) {
		t.Errorf("the last is at %s", at)
	}
}

func foundByMoment(t *testing.T, s *store.Store) {
	g := garden(t, s)
	for i := range 20 {
		tub := []string{"Heron", "Otter"}[i%2]
		must(s.AddReading(t.Context(), g, row(t, fmt.Sprint("r", i), tub, i/4, "6"), later(i)))(t)
	}
	page := must(s.Readings(t.Context(), g, store.Span{Tub: "Otter", Most: 3}))(t)
	if got := ids(page); got != "r15 r17 r19" {
		t.Errorf("the last three: %s", got)
	}
	page = must(s.Readings(t.Context(), g, store.Span{Tub: "Otter", Most: 3, Until: page[0].At, Number: page[0].Number}))(t)
	if got := ids(page); got != "r9 r11 r13" {
		t.Errorf("the three before: %s", got)
	}
	var none *store.NotFound
	if _, err := s.Readings(t.Context(), "nobody", store.Span{}); !errors.As(err, &none) {
		t.Error(err)
	}
	if _, err := s.Reading(t.Context(), g, "nothing"); !errors.As(err, &none) {
		t.Error(err)
	}
}

func allOrNone(t *testing.T, s *store.Store) {
	g := garden(t, s)
	must(s.AddReading(t.Context(), g, row(t, "there", "Heron", 1, "6"), dawn))(t)
	other := row(t, "there", "Heron", 1, "7")
	var taken *store.Taken
	if _, err := s.AddReadings(t.Context(), g, []reading.Row{row(t, "x", "Heron", 2, "6"), other}, dawn); !errors.As(err, &taken) {
		t.Error(err)
	}
	if got := ids(must(s.Readings(t.Context(), g, store.Span{}))(t)); got != "there" {
		t.Errorf("half was kept: %s", got)
	}
	rows := []reading.Row{row(t, "there", "Heron", 1, "6"), row(t, "x", "Heron", 2, "6"), row(t, "y", "Heron", 3, "6")}
	for _, want := range []int{2, 0} {
		if n := must(s.AddReadings(t.Context(), g, rows, dawn))(t); n != want {
			t.Errorf("%d were new, want %d", n, want)
		}
	}
}

func figuresAlone(t *testing.T, s *store.Store) {
	g := garden(t, s)
	in := reading.Import{By: []string{"Jade"}}
	var entered []reading.Entered
	for _, e := range [][2]string{
		{"id", "a"},
		{"tub", "Heron"},
		{"moment", "2027-01-11T10:00:00Z"},
		{"pH", "6.0 to 6.4"},
		{"EC", "1480"},
		{"EC scale", "µS/cm"},
		{"EC not at 25 °C", "yes"},
		{"water (°F)", "70"},
		{"depth (in)", "4"},
		{"added", "2.5"},
		{"height (cm)", "9.5"},
		{"doubtful", "pH; height"},
	} {
		entered = append(entered, reading.Entered{Head: e[0], Text: e[1]})
	}
	full, problems := reading.FromForm(entered, in)
	if problems != nil {
		t.Fatal(problems)
	}
	must(s.AddReading(t.Context(), g, full, dawn))(t)
	must(s.AddReading(t.Context(), g, row(t, "gone", "Heron", 1, "6"), dawn))(t)
	must(s.AddReading(t.Context(), g, row(t, "gone", "Heron", 1, "6").Withdrawal("gone2"), dawn))(t)
	got := must(s.Figures(t.Context(), g, store.Span{}))(t)
	if len(got) != 1 {
		t.Fatalf("%d entries", len(got))
	}
	v := reading.Vessel{LitresAtDepth: func(mm quantity.MM) quantity.L { return quantity.L(mm / 4) }}
	kept := []reading.Entry{{Row: full}}
	for _, f := range reading.Fields() {
		if fmt.Sprint(reading.Points(got, f, v)) != fmt.Sprint(reading.Points(kept, f, v)) {
			t.Errorf("%s: %v, want %v", f, reading.Points(got, f, v), reading.Points(kept, f, v))
		}
	}
	if ec, same := got[0].AtTwentyFive(); !same || ec.Read.Low == full.EC.Read.Low {
		t.Error("the EC is not brought to 25 °C as the row's is")
	}
}

// No statement of this package changes or drops a row of the logbook, but the
// one of the wipe that takes out who wrote it.
func TestReadingsAreOnlyAdded(t *testing.T) {
	wrong := regexp.MustCompile(`(?is)\b(UPDATE|DELETE\s+FROM|REPLACE\s+INTO|DROP\s+TABLE(\s+IF\s+EXISTS)?)\s+reading\b|INTO\s+reading\b[^;]*?\bDO\s+UPDATE`)
	for _, bad := range []string{"UPDATE reading SET", "delete from  reading", "DROP TABLE reading", "INSERT INTO reading (x) VALUES (1)\nON CONFLICT DO UPDATE SET x = 1"} {
		if !wrong.MatchString(bad) {
			t.Fatalf("%q would not be found", bad)
		}
	}
	files := append(must(filepath.Glob("*.go"))(t), must(filepath.Glob("migrations/*.sql"))(t)...)
	looked := 0
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		looked++
		text := string(must(os.ReadFile(name))(t))
		if name == "wipe.go" {
			const wipe = `"UPDATE reading SET cells = $1 WHERE garden = $2 AND number = $3", row.cells, id, r.Number`
			if !strings.Contains(text, wipe) {
				t.Errorf("%s: the statement of the wipe is another one", name)
			}
			text = strings.Replace(text, wipe, "", 1)
		}
		if found := wrong.FindString(text); found != "" {
			t.Errorf("%s: %q", name, found)
		}
	}
	if looked < 20 {
		t.Errorf("only %d files", looked)
	}
}

// A file from before there was a logbook is brought up to date with all it has.
func TestAFileWithoutLogbookGetsOne(t *testing.T) {
	path := filepath.Join(t.TempDir(), "rootbell.db")
	first := fstest.MapFS{"0001_garden.sql": &fstest.MapFile{Data: must(fs.ReadFile(store.Steps, "0001_garden.sql"))(t)}}
	old, err := store.OpenWith(t.Context(), path, dawn, first)
	ok(t, err)
	g := garden(t, old)
	shut(t, old)
	s := reopen(t, path)
	must(s.AddReading(t.Context(), g, row(t, "a", "Heron", 1, "6"), dawn))(t)
	if all := must(s.Readings(t.Context(), g, store.Span{}))(t); len(all) != 1 || !strings.Contains(s.Kept(), "version-1") {
		t.Errorf("%v, kept %q", all, s.Kept())
	}
	sound(t, s)
}

// Many write at once, some of them the same row: each is there once, and the
// numbers have no gap.
func TestManyWriteReadingsAtOnce(t *testing.T) {
	const writers, each = 16, 25
	s := fresh(t)
	g := garden(t, s)
	var all sync.WaitGroup
	var mu sync.Mutex
	fresh := 0
	for w := range writers {
		all.Go(func() {
			for n := range each {
				r := row(t, fmt.Sprintf("%d-%d", w/2, n), "Heron", n, "6") // each twice
				stored, err := s.AddReading(t.Context(), g, r, later(w))
				if err != nil {
					t.Error(err)
				}
				if stored {
					mu.Lock()
					fresh++
					mu.Unlock()
				}
			}
		})
	}
	all.Wait()
	kept := must(s.Readings(t.Context(), g, store.Span{}))(t)
	if len(kept) != writers/2*each || fresh != len(kept) {
		t.Errorf("%d kept, %d told as new, want %d", len(kept), fresh, writers/2*each)
	}
	for i, w := range kept {
		if w.Number != i+1 {
			t.Fatalf("row %d has the number %d", i+1, w.Number)
		}
	}
	sound(t, s)
}

// One that is wrong spoils nothing for those that go to the disk with it.
func TestAWrongReadingSpoilsNothingForOthers(t *testing.T) {
	s := fresh(t)
	g := garden(t, s)
	var all sync.WaitGroup
	for w := range 12 {
		all.Go(func() {
			for n := range 20 {
				to, good := g, w%3 > 0
				if !good {
					to = "nobody"
				}
				if _, err := s.AddReading(t.Context(), to, row(t, fmt.Sprintf("%d-%d", w, n), "Heron", n, "6"), dawn); (err == nil) != good {
					t.Errorf("%v for a good one: %v", err, good)
				}
			}
		})
	}
	all.Wait()
	if kept := must(s.Readings(t.Context(), g, store.Span{}))(t); len(kept) != 8*20 {
		t.Errorf("%d kept", len(kept))
	}
}

// The clock of the computer may jump back: what was written later still counts
// as later, and nothing is lost.
func TestAClockThatJumpsBack(t *testing.T) {
	s := fresh(t)
	g := garden(t, s)
	must(s.AddReading(t.Context(), g, row(t, "a", "Heron", 60, "6.9"), later(60)))(t)
	fix := row(t, "a", "Heron", 60, "6.1").Correction("a2")
	must(s.AddReading(t.Context(), g, fix, later(-600)))(t)
	must(s.AddReading(t.Context(), g, row(t, "b", "Heron", -600, "6.0"), later(-600)))(t)
	all := must(s.Readings(t.Context(), g, store.Span{}))(t)
	if got := ids(all); got != "b a2<a" {
		t.Errorf("they stand as %s", got)
	}
	if !all[1].Recorded.Equal(later(-600)) || all[1].Number != 2 {
		t.Errorf("the correction is %v", all[1])
	}
}

// When clocks change an hour comes twice: the two readings stay apart and in
// order.
func TestTheHourThatComesTwice(t *testing.T) {
	s := fresh(t)
	g := garden(t, s)
	dublin := must(time.LoadLocation("Europe/Dublin"))(t)
	for id, text := range map[string]string{"summer": "2027-10-31T01:30:00+01:00", "winter": "2027-10-31T01:30:00+00:00"} {
		r := row(t, id, "Heron", 0, "6")
		var err error
		r.At, err = reading.ParseMoment(text, dublin)
		ok(t, err)
		must(s.AddReading(t.Context(), g, r, dawn))(t)
	}
	all := must(s.Readings(t.Context(), g, store.Span{}))(t)
	if got := ids(all); got != "summer winter" {
		t.Errorf("they stand as %s", got)
	}
}
