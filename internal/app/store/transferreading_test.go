package store_test

import (
	"strings"
	"testing"

	"rootbell/internal/app/store"
)

// exportedLogbook is a garden with readings on its way, written by hand.
const exportedLogbook = `rootbell garden 2
name: Heron bay
created: 2027-01-11T08:30:00.000Z
revisions: 1
readings: 3

revision: 1
at: 2027-01-11T08:30:00.000Z
why: begun
lines: 1
|garden: Heron bay

reading: 2027-01-11T08:41:00.000Z {"id":"a","tub":"Heron","moment":"2027-01-11T08:40:00+00:00","by":"Jade","pH":"6.9","seen":"one yellow leaf, hole 4"}
reading: 2027-01-11T08:45:00.000Z {"id":"a2","tub":"Heron","moment":"2027-01-11T08:40:00+00:00","by":"Jade","pH":"6.1","seen":"one yellow leaf, hole 4","corrects":"a"}
reading: 2027-01-11T08:42:00.000Z {"id":"b","tub":"Otter","moment":"2027-01-11T08:42:00+00:00","EC":"1.48","EC read with":"meter","as typed":"EC: 1480"}

`

func TestALogbookTravelsWithItsGarden(t *testing.T) {
	s := fresh(t)
	text := summed(exportedLogbook)
	g := must(s.Import(t.Context(), strings.NewReader(text), later(90)))(t)
	all := must(s.Readings(t.Context(), g.ID, store.Span{}))(t)
	if got := ids(all); got != "a2<a b" {
		t.Errorf("they stand as %s", got)
	}
	if !all[1].Recorded.Equal(later(15)) || all[2].Number != 3 || all[2].EC.Read.Text != "1480" {
		t.Errorf("they came as %+v", all)
	}
	var out strings.Builder
	ok(t, s.Export(t.Context(), g.ID, &out))
	if out.String() != text {
		t.Errorf("they went out as\n%s", out.String())
	}
	// What is sent again after a garden has moved is still there once.
	if fresh := must(s.AddReading(t.Context(), g.ID, all[0].Row, later(99)))(t); fresh {
		t.Error("a reading that came with the garden was stored again")
	}
}

func TestDamagedLogbooksOnTheirWay(t *testing.T) {
	s := fresh(t)
	for _, c := range []struct {
		name, old, new string
		line           int
	}{
		{"no count", "readings: 3\n", "", 5},
		{"none", "readings: 3", "readings: 0", 5},
		{"more than there are", "readings: 3", "readings: 4", 16},
		{"fewer than there are", "readings: 3", "readings: 2", 15},
		{"of the first version", "rootbell garden 2", "rootbell garden 1", 5},
		{"no empty line", "Heron bay\n\nreading", "Heron bay\nreading", 12},
		{"no moment", "2027-01-11T08:41:00.000Z {", "yesterday {", 13},
		{"no row", `{"id":"a",`, `"id":"a",`, 13},
		{"an unknown cell", `"by":"Jade","pH":"6.9"`, `"by":"Jade","wind":"6.9"`, 13},
		{"cells in another order", `"id":"a","tub":"Heron"`, `"tub":"Heron","id":"a"`, 13},
		{"the same id twice", `"id":"b"`, `"id":"a"`, 15},
		{"no tub", `"tub":"Otter",`, ``, 15},
		{"an e-mail address", "one yellow leaf, hole 4", "ask nora@example.org", 13},
	} {
		t.Run(c.name, func(t *testing.T) {
			if !strings.Contains(exportedLogbook, c.old) {
				t.Fatalf("%q is not there", c.old)
			}
			_, err := s.Import(t.Context(), strings.NewReader(summed(strings.Replace(exportedLogbook, c.old, c.new, 1))), dawn)
			if r := refused(t, err, store.Damaged); r.Line != c.line {
				t.Errorf("line %d: %v, want line %d", r.Line, r, c.line)
			}
		})
	}
	if all := must(s.Gardens(t.Context()))(t); len(all) > 0 {
		t.Errorf("kept all the same: %v", all)
	}
}

// A backup holds the logbook too.
func TestABackupHoldsTheLogbook(t *testing.T) {
	s := fresh(t)
	g := garden(t, s)
	must(s.AddReading(t.Context(), g, row(t, "a", "Heron", 1, "6"), dawn))(t)
	path := t.TempDir() + "/backup.db"
	ok(t, s.Backup(t.Context(), path))
	if all := must(reopen(t, path).Readings(t.Context(), g, store.Span{}))(t); len(all) != 1 {
		t.Errorf("%d readings in the backup", len(all))
	}
}
