package reading

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
)

// What is written comes back to the last bit and letter, in any zone.
func TestTableComesBack(t *testing.T) {
	zones := []*time.Location{time.UTC, zone(t, "Europe/Dublin"), zone(t, "America/Los_Angeles"), zone(t, "Asia/Kathmandu")}
	rapid.Check(t, func(t *rapid.T) {
		want := rows.Draw(t, "rows")
		for _, r := range want {
			if p := r.Check(teams); len(p) > 0 {
				t.Fatalf("the row drawn is none: %v", p)
			}
		}
		text, err := CSV(want, rapid.SampledFrom(zones).Draw(t, "zone"))
		if err != nil {
			t.Fatal(err)
		}
		table, problems := ReadCSV(text, Import{By: teams, Zone: time.UTC})
		if len(problems) > 0 {
			t.Fatalf("%v\n%s", problems, text)
		}
		if len(table.Left) > 0 {
			t.Errorf("left out: %q", table.Left)
		}
		if diff := cmp.Diff(want, table.Rows, cmp.Comparer(time.Time.Equal)); diff != "" && len(want) > 0 {
			t.Errorf("%s\n%s", diff, text)
		}
	})
}

// The form of the file: a mark, CR LF, units in the heads, an offset in each
// moment, and no cell of words that a spreadsheet would run.
func TestFormOfTheTable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, err := CSV(rows.Draw(t, "rows"), time.UTC)
		if err != nil {
			t.Fatal(err)
		}
		body, marked := bytes.CutPrefix(text, []byte("\xef\xbb\xbf"))
		if !marked {
			t.Fatal("no mark for UTF-8")
		}
		if n := bytes.Count(body, []byte("\n")) - bytes.Count(body, []byte("\r\n")); n != 0 {
			t.Errorf("%d lines end without CR", n)
		}
		records, err := csv.NewReader(bytes.NewReader(body)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		for _, rec := range records[1:] {
			for i, c := range rec {
				number := strings.Trim(c, "0123456789.-") == "" || columns[i].head == "pH" || columns[i].head == "EC"
				if c != "" && strings.ContainsAny(c[:1], "=+-@\t\r") && !number {
					t.Errorf("%s holds %q, which a spreadsheet runs", columns[i].head, c)
				}
			}
		}
	})
	text, _ := CSV(nil, nil)
	for _, head := range []string{"EC (mS/cm)", "water (°C)", "level (L)", "depth (mm)", "filled to the line with (L)", "height (mm)"} {
		if !strings.Contains(string(text), head) {
			t.Errorf("no column %q in %s", head, text)
		}
	}
}

func TestFormulaGuard(t *testing.T) {
	for _, c := range []struct{ text, written string }{
		{"=1+1", "'=1+1"},
		{"+353", "'+353"},
		{"-2", "'-2"},
		{"@SUM(A1)", "'@SUM(A1)"},
		{"＝1", "'＝1"},
		{"\tx", "'\tx"},
		{"'=1", "''=1"},
		{"'tis dry", "'tis dry"},
		{"a=1", "a=1"},
		{"", ""},
		{"'", "'"},
	} {
		if got := guarded(c.text); got != c.written {
			t.Errorf("%q is written %q, want %q", c.text, got, c.written)
		}
		if got := unguarded(c.written); got != c.text {
			t.Errorf("%q is read %q, want %q", c.written, got, c.text)
		}
	}
}

func TestTableOfATeacher(t *testing.T) {
	text := "Moment;Tub;pH;EC (ppm 500);water (°F);level (gal);weather\n" +
		"2027-01-11 08:40;Heron;6,1;700;70;5;rain\n" +
		";;;;;;\n" +
		"2027-01-12T08:40Z;Heron;6.0 to 6.5;1.5 mS/cm;21 °C;19 L;\n"
	table, problems := ReadCSV([]byte(text), Import{Zone: zone(t, "Europe/Dublin")})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if len(table.Rows) != 2 || len(table.Left) != 1 || table.Left[0] != "weather" {
		t.Fatalf("%d rows, left %q", len(table.Rows), table.Left)
	}
	r, second := table.Rows[0], table.Rows[1]
	if r.EC.Read.Low != 1.4 || r.EC.Scale != PPM500 || r.PH.Read.Low != 6.1 {
		t.Errorf("EC %v on %s, pH %v", r.EC.Read, r.EC.Scale, r.PH.Read)
	}
	if got := float64(r.Water.Value); got < 21.11 || got > 21.12 {
		t.Errorf("70 °F read as %v °C", got)
	}
	if got := float64(r.Level.Litres.Value); got < 18.927 || got > 18.928 {
		t.Errorf("5 gal read as %v L", got)
	}
	if second.PH.Read.Low != 6 || second.PH.Read.High != 6.5 || second.EC.Read.Low != 1.5 || second.Water.Value != 21 {
		t.Errorf("second row: %+v", second)
	}
	again, _ := ReadCSV([]byte(text), Import{Zone: zone(t, "Europe/Dublin")})
	if r.ID == second.ID || r.ID != again.Rows[0].ID {
		t.Errorf("ids %q, %q, and %q when read again", r.ID, second.ID, again.Rows[0].ID)
	}
}

// Whatever is about a person is refused before a row is looked at.
func TestPersonalColumnsAreRefused(t *testing.T) {
	for _, head := range []string{
		"name", "Name", "First name", "first_name", "firstName", "surname", "pupil", "Student ID", "child's age", "DOB", "date of birth", "Birthday",
		"e-mail", "E-Mail address", "email", "phone", "health", "Allergies", "medical notes", "photo", "Photo link", "picture_url", "attendance", "gender",
	} {
		table, problems := ReadCSV([]byte("tub,moment,"+head+"\nHeron,rubbish,Ann\n"), Import{})
		if len(table.Rows) != 0 || len(problems) != 1 {
			t.Errorf("%s: %d rows, problems %v; want one problem and no look at the rows", head, len(table.Rows), problems)
			continue
		}
		if p := problems[0]; p.Line != 1 || p.Column != 12 || !strings.Contains(p.What, head) || !strings.Contains(p.What, "nothing was stored") || p.Hint == "" {
			t.Errorf("%s: %+v", head, p)
		}
	}
	for _, head := range []string{"weather", "filename", "lamp", "cups", "manager", "stage", "lamp hours", "room"} {
		if what, found := columnOfPerson(head); found {
			t.Errorf("%s is refused as %s", head, what)
		}
	}
}

// What a cell holds about a person is refused too, as far as its form tells.
func TestPersonalCellsAreRefused(t *testing.T) {
	for cell, want := range map[string]string{
		"ask ann@fernhollow.example": "e-mail", "see https://a.example/x": "link", "roots.JPG": "photo", "www.a.example": "link",
		"5 mL @ 10 L": "", "pH went up. jpg": "", "hole 3: tan": "",
	} {
		_, problems := ReadCSV([]byte("tub,moment,seen\nHeron,2027-01-11T08:40:00Z,"+cell+"\n"), Import{})
		switch {
		case want == "" && len(problems) > 0:
			t.Errorf("%q: %v", cell, problems)
		case want != "" && (len(problems) != 1 || !strings.Contains(problems[0].What, want) || problems[0].Line != 2 || problems[0].Column != 28):
			t.Errorf("%q: %v, want one about a %s at 2:28", cell, problems, want)
		}
	}
	_, problems := ReadCSV([]byte("tub,moment,by\nHeron,2027-01-11T08:40:00Z,Ann\n"), Import{By: teams})
	if len(problems) != 1 || problems[0].Column != 28 || !strings.Contains(problems[0].Hint, "Slate, Jade or level job") {
		t.Errorf("a name under by: %v", problems)
	}
}

// Every mistake of a table is told at once, each at its place.
func TestMistakesAtTheirPlace(t *testing.T) {
	head := "id,tub,moment,pH,EC (mS/cm),level (L),depth (mm),roots,done,corrects\n"
	for _, c := range []struct {
		name, text string
		places     []string // line:column and a word of what is said
	}{
		{"empty", "", []string{"1:1 empty"}},
		{"no such column", "pH,EC\n6,1\n", []string{"1:1 'tub'", "1:1 'moment'"}},
		{"column twice", "tub,moment,pH,PH\n", []string{"1:15 twice"}},
		{"unit", "tub,moment,water (L)\n", []string{"1:12 no unit for 'water'"}},
		{"unit where there is none", "tub,moment,pH (L)\n", []string{"1:12 has no unit"}},
		{"UTF-16", "\xff\xfet\x00", []string{"1:1 UTF-8"}},
		{"not UTF-8", "tub,moment,seen\nHeron,2027-01-11T08:40Z,\xe9t\xe9\n", []string{"2:25 UTF-8"}},
		{"quotes", head + "a,\"Her\"on\",2027\n", []string{"2:7 quotation"}},
		{
			"all at once", head + "a,Heron,yesterday,six,1.4 L,20,16,green,danced,\n\nb,,2027-01-11T08:40Z,6,1.4,20,160,white,fed,zzz\n",
			[]string{"2:9 no moment", "2:19 number", "2:23 L is not", "2:35 'green'", "2:41 'danced'", "4:3 no tub", "4:28 more than one way", "4:45 neither above"},
		},
		{"too many cells", "tub,moment\nHeron,2027-01-11T08:40Z,9\n", []string{"2:25 more cells"}},
		{
			"one id, two readings", head + "a,Heron,2027-01-11T08:40Z,6\na,Heron,2027-01-11T08:40Z,7\n",
			[]string{"3:1 line 2"},
		},
		{"not yet", "id,tub,moment,corrects\na,Heron,2027-01-11T08:40Z,b\nb,Heron,2027-01-11T08:40Z,\n", []string{"2:27 neither above"}},
		{"column after é", "tub,moment,seen,pH\nHeron,2027-01-11T08:40Z,é,x\n", []string{"2:27 number"}},
	} {
		table, problems := ReadCSV([]byte(c.text), Import{By: teams})
		if len(table.Rows) > 0 {
			t.Errorf("%s: %d rows were read beside a mistake", c.name, len(table.Rows))
		}
		if len(problems) != len(c.places) {
			t.Errorf("%s: %+v, want %q", c.name, problems, c.places)
			continue
		}
		for _, want := range c.places {
			at, words, _ := strings.Cut(want, " ")
			found := false
			for _, p := range problems {
				found = found || place{p.Line, p.Column}.String() == at && strings.Contains(p.What, words)
			}
			if !found {
				t.Errorf("%s: no %q among %+v", c.name, want, problems)
			}
		}
	}
}

func TestTheSameRowTwiceIsOne(t *testing.T) {
	text := "id,tub,moment,pH\na,Heron,2027-01-11T08:40Z,6\na,Heron,2027-01-11T08:40Z,6\n"
	table, problems := ReadCSV([]byte(text), Import{})
	if len(problems) > 0 || len(table.Rows) != 1 {
		t.Errorf("%d rows, %v", len(table.Rows), problems)
	}
}

func TestMoments(t *testing.T) {
	dublin := zone(t, "Europe/Dublin")
	for _, c := range []struct{ text, want string }{
		{"2027-01-11T08:40:00+00:00", "2027-01-11T08:40:00Z"},
		{"2027-07-11T08:40:00", "2027-07-11T07:40:00Z"},
		{"2027-07-11 08:40", "2027-07-11T07:40:00Z"},
		{"2027-07-11T08:40:00.250+05:45", "2027-07-11T02:55:00.25Z"},
		{"2027-03-28T01:30", "skip"},
		{"2027-10-31T01:30", "twice"},
		{"2027-10-31T01:30+01:00", "2027-10-31T00:30:00Z"},
		{"11/01/2027 08:40", "no moment"},
		{"2027-02-30T08:40Z", "no moment"},
	} {
		at, err := ParseMoment(c.text, dublin)
		switch {
		case err != nil && !strings.Contains(err.Error(), c.want):
			t.Errorf("%s: %v, want %s", c.text, err, c.want)
		case err == nil && at.UTC().Format(time.RFC3339Nano) != c.want:
			t.Errorf("%s is %s, want %s", c.text, at.UTC().Format(time.RFC3339Nano), c.want)
		}
	}
}

// The short way to read a figure and the long one give the same bits.
func TestPlainFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[0-9]{0,9}\.?[0-9]{0,9}|[0-9. ,-]{0,6}`).Draw(t, "figure")
		c := &cellIn{text: text, unit: "L", own: true}
		v, plain := c.plain()
		long, err := ParseTyped[quantity.L](text, "L")
		if plain && (err != nil || float64(long.Value) != v) {
			t.Errorf("%q is %v by the short way, %v, %v by the long one", text, v, long.Value, err)
		}
	})
}
