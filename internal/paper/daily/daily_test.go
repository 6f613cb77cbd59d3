package daily_test

import (
	"bytes"
	"context"
	"strings"
	"testing"
	"time"

	"rootbell/examples"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/daily"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
	"rootbell/internal/science/lid"
)

// example is the assessment of an example on a day.
func example(t *testing.T, name, on string) *garden.Assessment {
	t.Helper()
	text, err := examples.Plans.ReadFile(name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	p, problems := plan.Parse(name, text)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	day, err := term.ParseDate(on)
	if err != nil {
		t.Fatal(err)
	}
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, On: plan.Date(day), Zone: time.UTC, Effort: lid.Quick, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

var sizes = []scene.Size{scene.A4, scene.Letter}

// words is all that a card says.
func words(sheets []content.Sheet) string {
	var b strings.Builder
	for _, s := range sheets {
		for _, x := range s.Sections {
			for _, part := range [][]string{{s.Title, x.Heading}, x.Cautions, x.Paragraphs, x.Steps.Items, x.List} {
				b.WriteString(strings.Join(part, "\n") + "\n")
			}
			for _, l := range x.Lines {
				b.WriteString(string(l) + "\n")
			}
			for _, table := range x.Tables {
				b.WriteString(table.Caption + "\n")
				for _, row := range table.Rows {
					b.WriteString(strings.Join(row, " ") + "\n")
				}
			}
		}
	}
	return strings.ReplaceAll(b.String(), "\u00a0", " ")
}

// What each card may not lack, and where it is from: the project's own rules for
// the card, or common practice without a source.
func TestWhatACardMayNotLack(t *testing.T) {
	a := example(t, "fernhollow", "2027-02-22")
	for name, want := range map[string][]string{
		"today.pdf":       {"First day after nobody came for 9 days", "Read the level of both tubs.", "not lift a tub: Heron weighs 27.3 kg", "Office, phone ______ Caretaker ______"},
		"return-card.pdf": {"Nobody touches plug or switch", "before anything is poured in", "look for a leak first", "Power was off from", "6.4 L"},
		"puddle-card.pdf": {"Keep everyone away.", "Nobody touches plug or switch", "An adult who need not step in the water cuts the circuit at the board.", "Then call the caretaker.", "The board is ____", "2 towels"},
		"change-out-card.pdf": {
			"Filled it weighs 27.3 kg", "never started by mouth", "never on the floor", "20 minutes at most", "where the site's rule says",
			"a pupil of 5 to 7 with a jug 1.0 L 26", "a pupil of 8 to 10 with a jug 2.0 L 13", "a pupil of 11 and up with a jug 4.0 L 7", "an adult with a bucket 8.0 L 4",
		},
		"meter-passport.pdf": {"Calibrated every 7 days", "Checked against its standard every 30 days", "good for 6 months", "By team, never by name"},
	} {
		found := false
		for _, c := range daily.Cards(a, "") {
			if c.Name != name {
				continue
			}
			found = true
			said := words(c.Sheets(scene.A4))
			for _, w := range want {
				if !strings.Contains(said, w) {
					t.Errorf("%s does not say %q:\n%s", name, w, said)
				}
			}
		}
		if !found {
			t.Errorf("there is no %s", name)
		}
	}
}

// A card is a page for each sheet, on either paper, and the same each time; no
// type is under 11 points.
func TestACardIsAPage(t *testing.T) {
	for _, x := range []struct{ plan, on string }{{"fernhollow", "2027-02-10"}, {"fernhollow", "2027-02-12"}, {"fernhollow", "2027-02-22"}, {"saltbrook", "2027-01-15"}, {"saltbrook", "2027-01-17"}} {
		a := example(t, x.plan, x.on)
		for _, c := range daily.Cards(a, "3") {
			if c.Points < 11 {
				t.Errorf("%s is set in %v points", c.Name, c.Points)
			}
			for _, size := range sizes {
				pdf, err := c.PDF(size)
				if err != nil {
					t.Fatal(err)
				}
				if got, want := bytes.Count(pdf, []byte("/Type /Page\n")), len(c.Sheets(size)); got != want {
					t.Errorf("%s on %s, %s, %.0f mm wide: %d pages for %d sheets", x.plan, x.on, c.Name, size.Width, got, want)
				}
				again, err := c.PDF(size)
				if err != nil || !bytes.Equal(pdf, again) {
					t.Errorf("%s: other bytes the second time, %v", c.Name, err)
				}
			}
		}
	}
}

// Nothing is stored or printed of a person: phones and places are blanks.
func TestPhonesAreBlanks(t *testing.T) {
	for _, c := range daily.Cards(example(t, "fernhollow", "2027-02-10"), "") {
		for _, s := range c.Sheets(scene.A4) {
			for _, section := range s.Sections {
				for _, l := range section.Lines {
					if !strings.Contains(string(l), "____") {
						t.Errorf("%s: a line without a blank: %s", c.Name, l)
					}
				}
			}
		}
	}
}
