package reading

import (
	"encoding/json"
	"fmt"
	"hash/fnv"
	"math"
	"strings"
	"testing"
	"time"
)

// A harvest is read in grams or in any usual unit of mass: one ounce is
// 28.349523125 g (international avoirdupois pound of 0.45359237 kg, NIST Handbook
// 44, Appendix C).
func TestAHarvestIsRead(t *testing.T) {
	for _, c := range []struct {
		plants, mass, head string
		each               float64
	}{
		{"8", "840", "mass picked (g)", 105},
		{"8", "0.84 kg", "mass picked (g)", 105},
		{"2", "7", "mass picked (oz)", 3.5 * 28.349523125},
		{"3", "0,3 kg", "mass picked", 100},
		{"", "840", "mass picked (g)", 0},
		{"8", "", "mass picked (g)", 0},
	} {
		row, problems := FromForm([]Entered{
			{"id", "e1"}, {"tub", "Heron"}, {"moment", "2027-03-08T08:40Z"}, {"plants picked", c.plants}, {c.head, c.mass}, {"leaves on one plant", "19"},
		}, Import{Zone: time.UTC})
		if len(problems) > 0 {
			t.Errorf("%+v: %v", c, problems)
			continue
		}
		each, ok := row.EachG()
		if ok != (c.each > 0) || math.Abs(each-c.each) > 1e-9 {
			t.Errorf("%+v: each weighs %v, %v", c, each, ok)
		}
		if row.Counted.Value != 19 || row.CountsPicked() != (c.plants != "") {
			t.Errorf("%+v: %v leaves, picked %v", c, row.Counted, row.Picked)
		}
		again := Row{}
		text, err := json.Marshal(row)
		if err == nil {
			err = json.Unmarshal(text, &again)
		}
		if err != nil || again.Picked != row.Picked || again.Counted != row.Counted {
			t.Errorf("%s comes back as %+v: %v", text, again, err)
		}
	}
}

// What was counted is a whole number, and what was picked weighs something.
func TestNoHarvest(t *testing.T) {
	for _, c := range []struct {
		head, text, says string
		field            Field
	}{
		{"plants picked", "2.5", "no number of plants", FieldPicked},
		{"plants picked", "0", "no number of plants", FieldPicked},
		{"plants picked", "-3", "no number of plants", FieldPicked},
		{"plants picked", "some", "", FieldPicked},
		{"leaves on one plant", "1/2", "no number of leaves", FieldLeaves},
		{"mass picked (g)", "0", "weighs something", FieldWeigh},
		{"mass picked (g)", "-4", "", FieldWeigh},
		{"mass picked (g)", "3 L", "", FieldWeigh},
		{"mass picked (L)", "3", "no unit", FieldWeigh},
		{"plants picked (g)", "3", "has no unit", FieldPicked},
	} {
		_, problems := FromForm([]Entered{{"id", "e1"}, {"tub", "Heron"}, {"moment", "2027-03-08T08:40Z"}, {c.head, c.text}}, Import{Zone: time.UTC})
		if len(problems) == 0 || problems[0].Field != c.field || !strings.Contains(problems[0].What, c.says) || problems[0].Hint == "" {
			t.Errorf("%s %q: %+v", c.head, c.text, problems)
		}
	}
}

// A number or a mass that is kept as doubtful says nothing of one plant.
func TestADoubtfulHarvest(t *testing.T) {
	r := today(func(r *Row) { r.Picked = picked(8, 840) })
	for _, f := range []Field{FieldPicked, FieldWeigh} {
		doubted := Question{Field: f}.Keep(r)
		if _, ok := doubted.EachG(); ok {
			t.Errorf("%s in doubt, and one plant has a mass", f)
		}
	}
	if (Question{Field: FieldPicked}).Keep(r).CountsPicked() {
		t.Error("a number in doubt counts")
	}
}

// A table that was written before there were harvests is read, and its rows have
// the ids that they had then: the hash (FNV-1a, 64 bits, draft-eastlake-fnv) of
// the 31 columns that there were.
func TestATableOfBefore(t *testing.T) {
	heads := "tub,moment,height (mm),note"
	table, problems := ReadCSV([]byte(heads+"\nHeron,2027-03-08T08:40:00+00:00,95,roots seen\n"), Import{Zone: time.UTC})
	if len(problems) > 0 || len(table.Rows) != 1 {
		t.Fatal(problems)
	}
	before := make([]string, 31)
	before[1], before[2], before[20], before[26] = "Heron", "2027-03-08T08:40:00+00:00", "95", "roots seen"
	h := fnv.New64a()
	h.Write([]byte(strings.Join(before, "\x1f")))
	if want := fmt.Sprintf("row-%016x", h.Sum64()); table.Rows[0].ID != want {
		t.Errorf("the row is %s now, and was %s", table.Rows[0].ID, want)
	}
	more, problems := ReadCSV([]byte(heads+",plants picked\nHeron,2027-03-08T08:40:00+00:00,95,roots seen,3\n"), Import{Zone: time.UTC})
	if len(problems) > 0 || more.Rows[0].ID == table.Rows[0].ID {
		t.Errorf("with a harvest it is the same row: %v", problems)
	}
	if r := table.Rows[0]; r.Has(FieldPicked) || r.Has(FieldWeigh) || r.Has(FieldLeaves) || !more.Rows[0].Has(FieldPicked) {
		t.Errorf("%+v", r)
	}
}
