package garden

import (
	"bytes"
	"flag"
	"os"
	"slices"
	"testing"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/term"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/reading"
)

var invent = flag.Bool("invent", false, "write the invented logbook of the example anew")

// inventedLogbook is where the example's logbook lies.
const inventedLogbook = "../../examples/fernhollow.csv"

func fernhollow(t testing.TB) (*plan.Plan, *time.Location) {
	t.Helper()
	text, err := os.ReadFile("../../examples/fernhollow.yaml")
	if err != nil {
		t.Fatal(err)
	}
	p, problems := plan.Parse("fernhollow.yaml", text)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return p, time.FixedZone("GMT", 0) // Dublin until 28 March 2027
}

// The example's logbook is what the program's own forecast makes of the example,
// read with the errors of a class's instruments.
func TestInventedLogbook(t *testing.T) {
	p, zone := fernhollow(t)
	table, err := reading.CSV(inventedRows(t, p, zone), zone)
	if err != nil {
		t.Fatal(err)
	}
	if *invent {
		if err := os.WriteFile(inventedLogbook, table, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	kept, err := os.ReadFile(inventedLogbook)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(kept, table) {
		t.Error("examples/fernhollow.csv is not what the forecast makes of examples/fernhollow.yaml now: write it anew with 'go generate ./examples' and look at what changed")
	}
}

// The kept table is read as the program reads any, and each of its rows is one
// that a class would write down without being asked back. Only the slip that was
// put in on purpose is asked about, and what corrects it is what is offered.
func TestInventedRowsArePlausible(t *testing.T) {
	p, zone := fernhollow(t)
	rows := inventedKept(t, p, zone)
	a, err := Assess(t.Context(), Inputs{Plan: p, Seed: 1, Zone: zone, Effort: lid.Quick})
	if err != nil {
		t.Fatal(err)
	}
	said := map[string]string{}
	var slips []string
	for i, row := range rows {
		if row.Corrects != "" {
			continue
		}
		if problems := row.Check(p.School.By()); len(problems) > 0 {
			t.Errorf("%s: %+v", row.ID, problems)
		}
		for _, q := range reading.Ask(row, besideInvented(a, rows[:i], row)) {
			slips = append(slips, row.ID+" "+q.Code)
			if len(q.Likely) > 0 {
				said[row.ID] = quantity.FormatNumber(float64(q.Likely[0].Take(row).EC.Read.Low), 2)
			}
		}
	}
	if len(slips) != 1 || slips[0] != "invented-Otter-2027-03-01 ec-range" {
		t.Fatalf("asked back about %q", slips)
	}
	for _, row := range rows {
		if likely, asked := said[row.Corrects]; asked && likely != quantity.FormatNumber(float64(row.EC.Read.Low), 2) {
			t.Errorf("%s was corrected to %v, and %s was offered", row.Corrects, row.EC.Read.Low, likely)
		}
	}
}

// besideInvented is what a new row is held against, as on the page.
func besideInvented(a *Assessment, before []reading.Row, row reading.Row) reading.Beside {
	p := a.Plan
	standing := reading.Standing(before)
	b := reading.Beside{Now: row.At, Last: reading.Of(standing, row.Tub), Others: map[string]reading.Row{}, Target: p.Feed.EC.Value, System: p.Units}
	for i, t := range a.Tubs {
		if t.Name == row.Tub {
			b.Tub = a.Vessel(i, b.Last, row.At.Location())
		}
		if others := reading.Of(standing, t.Name); len(others) > 0 && t.Name != row.Tub {
			b.Others[t.Name] = others[len(others)-1].Row
		}
	}
	return b
}

func inventedKept(t testing.TB, p *plan.Plan, zone *time.Location) []reading.Row {
	t.Helper()
	text, err := os.ReadFile(inventedLogbook)
	if err != nil {
		t.Fatal(err)
	}
	table, problems := reading.ReadCSV(text, reading.Import{Zone: zone, By: p.School.By()})
	if len(problems) > 0 {
		t.Fatalf("%+v", problems)
	}
	return table.Rows
}

// The book shows what a logbook can: three readings and more of the level of each
// tub, top-ups with their litres, a change of water, a correction, a doubt, and
// a filling before the long weekend of the staff day; and its water is where
// the forecast holds it possible, with nothing poured in that is not written.
func TestInventedLogbookShowsItsParts(t *testing.T) {
	p, zone := fernhollow(t)
	rows := inventedKept(t, p, zone)
	standing := reading.Standing(rows)
	for _, tub := range p.Tubs {
		levels := 0
		for _, e := range reading.Of(standing, tub.Name) {
			if e.Level.Set() {
				levels++
			}
		}
		if levels < 9 {
			t.Errorf("%s: %d readings of the level", tub.Name, levels)
		}
	}
	for what, is := range map[string]func(reading.Row) bool{
		"a filling on the eve of the staff day": func(r reading.Row) bool {
			return r.Level.Filled.Set() && term.DateOf(r.At.In(zone)) == term.Date{Year: 2027, Month: time.March, Day: 5}
		},
		"a change of water":                  func(r reading.Row) bool { return r.Did(reading.ChangedOut) },
		"the day of planting":                func(r reading.Row) bool { return r.Did(reading.Planted) },
		"a correction":                       func(r reading.Row) bool { return r.Corrects != "" },
		"a doubtful figure":                  func(r reading.Row) bool { return len(r.Doubtful) > 0 },
		"a height":                           func(r reading.Row) bool { return r.Height.Set() },
		"a pH between colours":               func(r reading.Row) bool { return r.PH.Read.Low < r.PH.Read.High },
		"an EC by a meter":                   func(r reading.Row) bool { return r.EC.With == reading.Meter },
		"readings five days before the meal": func(r reading.Row) bool { return term.DateOf(r.At.In(zone)) == lastInvented },
	} {
		if !slices.ContainsFunc(rows, is) {
			t.Errorf("the book has not %s", what)
		}
	}
	a, err := Assess(t.Context(), Inputs{Plan: p, Seed: 1, Zone: zone, Readings: rows, Stages: StageMix | StageSeason, Members: 200})
	if err != nil {
		t.Fatal(err)
	}
	if a.On != lastInvented.String() {
		t.Errorf("the example's day is %s", a.On)
	}
	for _, f := range a.Findings {
		if slices.Contains([]string{"reading-impossible", "reading-far", "reading-risen"}, f.Code) {
			t.Errorf("%s: %s", f.Code, f.Text)
		}
	}
	for _, tub := range a.Tubs {
		if s := tub.Season; s == nil || s.Guess != "" || len(s.Score) < 3 || len(s.Learnt) == 0 || len(s.Readings) < 20 {
			t.Errorf("%s: what was read does not show in its season: %+v", tub.Name, tub.Season)
		}
	}
}
