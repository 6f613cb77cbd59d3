package garden_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/reading"
)

// heads are the short names that a test writes a reading with.
var heads = map[string]string{
	"level": "level", "depth": "depth (mm)", "filled": "filled to the line with", "added": "added", "of": "EC of what was added (mS/cm)",
	"EC": "EC (mS/cm)", "EC-with": "EC read with", "checked": "EC checked", "pH": "pH", "pH-with": "pH read with", "calibrated": "pH calibrated",
	"done": "done", "corrects": "corrects", "tall": "height (mm)", "picked": "plants picked", "weigh": "mass picked (g)", "leaves": "leaves on one plant",
}

// wrote is a logbook: each line is a tub, a day, a time and what was read, such
// as 'Heron 2027-02-09 09:10 level=22 EC=2.4'. An underscore stands for a space.
// An EC is read with a meter that was checked on 1 February, unless said else.
func wrote(t testing.TB, zone *time.Location, lines ...string) []reading.Row {
	t.Helper()
	var out []reading.Row
	for i, line := range lines {
		words := strings.Fields(line)
		entered := []reading.Entered{{Head: "id", Text: fmt.Sprintf("row-%04d-aaaa", i)}, {Head: "tub", Text: words[0]}, {Head: "moment", Text: words[1] + " " + words[2]}}
		if strings.Contains(line, " EC=") && !strings.Contains(line, "EC-with") {
			entered = append(entered, reading.Entered{Head: "EC read with", Text: "meter"})
			if !strings.Contains(line, "checked=") {
				entered = append(entered, reading.Entered{Head: "EC checked", Text: "2027-02-01"})
			}
		}
		for _, word := range words[3:] {
			name, text, _ := strings.Cut(word, "=")
			entered = append(entered, reading.Entered{Head: heads[name], Text: strings.ReplaceAll(text, "_", " ")})
		}
		row, problems := reading.FromForm(entered, reading.Import{Zone: zone})
		if len(problems) > 0 {
			t.Fatalf("%s: %+v", line, problems)
		}
		out = append(out, row)
	}
	return out
}

// dublin is a zone as a test needs it: its offset in winter.
var dublin = time.FixedZone("GMT", 0)

// morningOf is an example on a day, with a logbook.
func morningOf(t testing.TB, a *garden.Assessment, on string, lines ...string) *garden.Assessment {
	t.Helper()
	day, err := time.Parse(time.DateOnly, on)
	if err != nil {
		t.Fatal(err)
	}
	return a.Asked(garden.Morning{On: plan.Date{Year: day.Year(), Month: day.Month(), Day: day.Day()}, Zone: dublin, Readings: wrote(t, dublin, lines...)})
}

// told is all that a morning says in words.
func told(a *garden.Assessment) string {
	var b strings.Builder
	bold, rest := a.Today.Answer()
	fmt.Fprintln(&b, bold, rest, a.Today.AheadWords())
	for _, s := range append(append([]garden.Step{}, a.Today.Steps...), a.Today.More...) {
		fmt.Fprintln(&b, s.Kind, s.Do, s.Code, s.Head)
		for _, l := range s.Lines {
			fmt.Fprintln(&b, "  ", l.Tub, l.Act, "|", l.Why, "|", l.How)
		}
	}
	return strings.ReplaceAll(b.String(), "\u00a0", " ")
}
