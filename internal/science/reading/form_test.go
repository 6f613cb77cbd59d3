package reading

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestFormToRow(t *testing.T) {
	in := Import{Zone: zone(t, "Europe/Dublin"), By: teams}
	row, problems := FromForm([]Entered{
		{"id", "a-1"},
		{"tub", "Heron"},
		{"moment", "2027-01-11T08:40"},
		{"by", "jade"},
		{"pH", "61"},
		{"pH read with", "meter"},
		{"pH calibrated", "2027-01-11"},
		{"EC", "700"},
		{"EC scale", "ppm 500"},
		{"EC read with", "meter"},
		{"water (°F)", "70"},
		{"filled to the line with (gal)", "1/2"},
		{"roots", "tan"},
		{"roots smell", ""},
		{"seen", " two lines\r\nof words "},
		{"done", "topped up; fed"},
	}, in)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if row.PH.Read.Low != 61 || row.PH.Read.Text != "61" || row.EC.Read.Low != 1.4 || row.EC.Read.Text != "700" || row.EC.Scale != PPM500 {
		t.Errorf("pH %+v, EC %+v", row.PH, row.EC)
	}
	if row.Water.Text != "70" || row.Water.Value < 21.1 || row.Water.Value > 21.2 || row.Level.Filled.Value < 1.89 || row.Level.Filled.Value > 1.9 {
		t.Errorf("water %+v, filled with %+v", row.Water, row.Level.Filled)
	}
	if row.Seen != "two lines\nof words" || !row.Did(ToppedUp) || !row.Did(Fed) || row.Roots.Colour != Tan || row.By != "Jade" {
		t.Errorf("%+v", row)
	}
	_, problems = FromForm([]Entered{
		{"id", "a"},
		{"tub", "Heron"},
		{"moment", "soon"},
		{"pH", "six"},
		{"EC", "700 ppm"},
		{"water (L)", "3"},
		{"colour", "x"},
	}, in)
	var at []string
	for _, p := range problems {
		at = append(at, string(p.Field))
		if p.What == "" || p.Line != 0 {
			t.Errorf("%+v", p)
		}
	}
	if got := strings.Join(at, ", "); got != "water, colour, moment, pH, EC" {
		t.Errorf("problems at %s: %+v", got, problems)
	}
}

// A row kept as JSON comes back to the last bit, and is the same bytes again.
func TestRowAsJSON(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, want := range rows.Draw(t, "rows") {
			text, err := json.Marshal(want)
			if err != nil {
				t.Fatal(err)
			}
			var got Row
			if err := json.Unmarshal(text, &got); err != nil {
				t.Fatalf("%v in %s", err, text)
			}
			if diff := cmp.Diff(want, got, cmp.Comparer(time.Time.Equal)); diff != "" {
				t.Errorf("%s\n%s", diff, text)
			}
			again, _ := json.Marshal(got)
			if string(again) != string(text) {
				t.Errorf("%s became %s", text, again)
			}
		}
	})
	for _, bad := range []string{`[]`, `{"id":1}`, `{"name":"x"}`, `{"pH":"six"}`, `{"moment":"x"}`} {
		if err := json.Unmarshal([]byte(bad), new(Row)); err == nil {
			t.Errorf("%s is a row", bad)
		}
	}
}

func TestCorrectionsAreRowsOfTheirOwn(t *testing.T) {
	first := today(func(r *Row) { r.PH = ph(61); r.Done = []Deed{Fed} })
	second := first.Correction("second")
	second.PH = ph(6.1)
	second.Done[0] = ToppedUp
	third := second.Withdrawal("third")
	if first.Done[0] != Fed || second.Corrects != "new" || third.Corrects != "second" || !third.Withdrawn || second.Withdrawn {
		t.Errorf("%+v\n%+v\n%+v", first, second, third)
	}
	if got := Standing([]Row{first, second}); len(got) != 1 || got[0].PH.Read.Low != 6.1 || got[0].Earlier[0].PH.Read.Low != 61 {
		t.Errorf("%+v", got)
	}
	if got := Standing([]Row{first, second, third}); len(got) != 0 {
		t.Errorf("withdrawn, and still %+v", got)
	}
}
