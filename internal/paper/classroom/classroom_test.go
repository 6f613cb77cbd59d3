package classroom_test

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"strings"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/card"
	"rootbell/internal/paper/classroom"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/plainwords"
	"rootbell/internal/science/lid"
)

func assessed(t testing.TB, name string, change func(string) string) *garden.Assessment {
	t.Helper()
	return assessedFor(t, parsed(t, name, change), garden.StageMix|garden.StageClass)
}

func parsed(t testing.TB, name string, change func(string) string) *plan.Plan {
	t.Helper()
	body, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	p, problems := plan.Parse(name, []byte(change(string(body))))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return p
}

func assessedFor(t testing.TB, p *plan.Plan, stages garden.Stages) *garden.Assessment {
	t.Helper()
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1, Stages: stages})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

const (
	fern = "../../../examples/fernhollow.yaml"
	salt = "../../../examples/saltbrook.yaml"
)

func same(s string) string { return s }

// school types lines into the plan's school.
func school(lines string) func(string) string {
	return func(s string) string {
		return strings.Replace(s, "school:\n", "school:\n  "+lines+"\n", 1)
	}
}

func named(t testing.TB, a *garden.Assessment, name string) card.Card {
	t.Helper()
	for _, c := range classroom.Cards(a, "3") {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("no %s", name)
	return card.Card{}
}

func words(sheets []content.Sheet) string {
	var b strings.Builder
	for _, s := range sheets {
		for _, x := range s.Sections {
			all := append([]string{x.Heading}, x.Cautions...)
			all = append(append(append(all, x.Paragraphs...), x.Steps.Items...), x.List...)
			for _, l := range x.Lines {
				all = append(all, string(l))
			}
			for _, table := range x.Tables {
				for _, row := range table.Rows {
					all = append(all, strings.Join(row, " | "))
				}
			}
			b.WriteString(strings.Join(all, "\n") + "\n")
		}
	}
	return b.String()
}

// Every paper prints on both sizes, in both unit systems, and the same plan
// gives the same bytes.
func TestEveryPaperPrints(t *testing.T) {
	for _, name := range []string{fern, salt} {
		a := assessed(t, name, same)
		for _, c := range classroom.Cards(a, "3") {
			for _, size := range []scene.Size{scene.A4, scene.Letter} {
				first, err := c.PDF(size)
				if err != nil || !bytes.HasPrefix(first, []byte("%PDF")) {
					t.Fatalf("%s: %v", c.Name, err)
				}
				if again, _ := c.PDF(size); !bytes.Equal(first, again) {
					t.Errorf("%s differs when printed again", c.Name)
				}
			}
		}
	}
}

// What pupils read is no harder than their school years. source of the formula:
// plainwords.Source; of the limits: plainwords.Bands, common practice.
func TestPupilsWordsSuitTheirAge(t *testing.T) {
	for age, most := range map[int]float64{5: 3, 7: 3, 8: 5, 10: 5, 11: 8, 15: 12} {
		for _, tools := range []string{"strips", "drops", "meter"} {
			a := assessedFor(t, parsed(t, fern, func(s string) string {
				return strings.Replace(school(fmt.Sprintf("ages: [%d]\n  jobs: [{name: look at the plants}, {name: level and top up}, {name: EC}, {name: pH}]", age))(s), "ph: strips", "ph: "+tools, 1)
			}), garden.StageClass)
			for _, paper := range []string{"job-cards.pdf", "station-cards.pdf"} {
				sheets := named(t, a, paper).Sheets(scene.A4)
				if paper == "station-cards.pdf" {
					sheets = sheets[1:] // the first is the teacher's
				}
				for _, s := range sheets {
					for _, x := range s.Sections {
						text := strings.Join(x.Steps.Items, "\n")
						if grade := plainwords.Grade(text); grade > most {
							t.Errorf("age %d, %s, '%s': grade %.1f, at most %.0f:\n%s", age, paper, x.Heading, grade, most, text)
						}
					}
				}
			}
		}
	}
}

// The litres on the card are those of the youngest: 1, 2 and 4 L. source: common
// practice, no source (facts carry.jug.*).
func TestLitresByAge(t *testing.T) {
	for ages, want := range map[string]string{"[6, 7]": "1\u00a0L", "[8, 10]": "2\u00a0L", "[11, 13]": "4\u00a0L"} {
		text := words(named(t, assessed(t, fern, school("ages: "+ages)), "job-cards.pdf").Sheets(scene.A4))
		if !strings.Contains(text, "Fill it with "+want+" and no more") {
			t.Errorf("ages %s: no %q in\n%s", ages, want, text)
		}
	}
	// A jug with US marks never holds more: 1 qt is 0.95 L, 1 gal 3.79 L (NIST
	// Handbook 44, appendix C).
	for ages, want := range map[string]string{"[6, 7]": "1\u00a0qt", "[8, 10]": "2\u00a0qt", "[11, 13]": "1\u00a0gal"} {
		text := words(named(t, assessed(t, salt, school("ages: "+ages)), "job-cards.pdf").Sheets(scene.Letter))
		if !strings.Contains(text, "Fill it with "+want+" and no more") {
			t.Errorf("ages %s in US units: no %q", ages, want)
		}
	}
	if text := words(named(t, assessed(t, fern, school("ages: [4]")), "job-cards.pdf").Sheets(scene.A4)); !strings.Contains(text, "An adult carries the water") {
		t.Errorf("at four nothing is carried:\n%s", text)
	}
	if text := words(named(t, assessed(t, fern, same), "job-cards.pdf").Sheets(scene.A4)); !strings.Contains(text, "from age 5: 1\u00a0L, from age 8: 2\u00a0L, from age 11: 4\u00a0L") {
		t.Errorf("no ages told:\n%s", text)
	}
}

// Every card says what is not for pupils.
func TestEveryJobCardSaysWhatIsForAdults(t *testing.T) {
	for _, s := range named(t, assessed(t, fern, school("jobs: [{name: log}, {name: sweep}]")), "job-cards.pdf").Sheets(scene.A4) {
		for _, x := range s.Sections {
			text := strings.Join(x.List, " ")
			for _, word := range []string{"plugs", "knives", "saws", "acid", "full tub", "adults"} {
				if !strings.Contains(text, word) {
					t.Errorf("%s: no word of %s", x.Heading, word)
				}
			}
		}
	}
}

// The rota on the wall is the assessment's, week by week.
func TestTheWallHasTheRota(t *testing.T) {
	a := assessed(t, fern, same)
	table := named(t, a, "rota.pdf").Sheets(scene.A4)[0].Sections[0].Tables[0]
	if len(table.Rows) != len(a.Class.Rota) || len(table.Columns) != len(a.Class.Jobs)+1 {
		t.Fatalf("%d rows of %d columns", len(table.Rows), len(table.Columns))
	}
	for i, w := range a.Class.Rota {
		for k, turn := range w.Turns {
			if table.Rows[i][k+1] != turn.Who || table.Columns[k+1].Head != turn.Job {
				t.Errorf("week %d: %q under %q, the rota says %+v", w.Week, table.Rows[i][k+1], table.Columns[k+1].Head, turn)
			}
		}
	}
	if table.Rows[5][1] != "closed" {
		t.Errorf("the break: %v", table.Rows[5])
	}
}

// The lay-up card has the bleach of the mix, and none without one.
func TestTheLayUpCardHasTheBleachOfTheMix(t *testing.T) {
	a := assessed(t, fern, same)
	text := words(named(t, a, "lay-up-card.pdf").Sheets(scene.A4))
	for _, tub := range a.Tubs {
		if want := garden.PourWords(tub.Mix.Clean.BleachML, a.Plan.Units); !strings.Contains(text, want+" of the plain bleach") {
			t.Errorf("%s: no %s in\n%s", tub.Name, want, text)
		}
	}
	if !strings.Contains(text, "an adult alone") || !strings.Contains(text, "Bleach never meets acid") {
		t.Errorf("no caution in\n%s", text)
	}
	none := assessed(t, fern, func(s string) string { return strings.Replace(s, "bleach: {chlorine: 4.5 %}", "", 1) })
	if text := words(named(t, none, "lay-up-card.pdf").Sheets(scene.A4)); strings.Contains(text, "mL") || !strings.Contains(text, "does not say how strong") {
		t.Errorf("bleach on a guess:\n%s", text)
	}
}

// Learners are a number, the report holds on one page, and says what it rests on.
func TestTheReportIsOnePage(t *testing.T) {
	for _, name := range []string{fern, salt} {
		a := assessed(t, name, same)
		c := named(t, a, "report.pdf")
		for _, size := range []scene.Size{scene.A4, scene.Letter} {
			pdf, err := c.PDF(size)
			if err != nil || bytes.Count(pdf, []byte("/Type /Page\n")) != 1 {
				t.Errorf("%s: %d pages, %v", name, bytes.Count(pdf, []byte("/Type /Page\n")), err)
			}
		}
		if text := words(c.Sheets(scene.A4)); !strings.Contains(text, "The logbook is empty so far") {
			t.Errorf("%s:\n%s", name, text)
		}
	}
}

// What was picked stands beside its days, in the plan's units: 840 g are 29.6 oz
// of 28.349523125 g (NIST Handbook 44, Appendix C).
func TestTheReportTellsTheHarvest(t *testing.T) {
	for name, says := range map[string]string{fern: ": 8 plants, 840\u00a0g", salt: ": 8 plants, 29.6\u00a0oz"} {
		a := assessed(t, name, same)
		tub := &a.Class.Report.Tubs[0]
		tub.Harvested, tub.Picked, tub.PickedG = []string{"2027-02-24"}, 8, 840
		if text := words(named(t, a, "report.pdf").Sheets(scene.A4)); !strings.Contains(text, says) {
			t.Errorf("%s: no %q in\n%s", name, says, text)
		}
	}
}

// Each pair has a slip with a picture, and no slip asks for a name.
func TestEveryPairHasASlip(t *testing.T) {
	a := assessed(t, fern, school("ages: [9]"))
	sections := named(t, a, "adopt-a-hole.pdf").Sheets(scene.A4)[0].Sections
	if len(sections) != len(a.Class.Lesson.Adopted) {
		t.Fatalf("%d slips for %d pairs", len(sections), len(a.Class.Lesson.Adopted))
	}
	for _, s := range sections {
		if len(s.Figures) != 1 || s.Figures[0].Print == nil || strings.Contains(strings.ToLower(s.Figures[0].SVG), "name") {
			t.Errorf("%s: %+v", s.Heading, s.Figures)
		}
	}
}

// Without pupils, teams or a term there is still the teacher's part.
func TestWithoutAClassThereIsTheTeachersPart(t *testing.T) {
	a := assessed(t, fern, func(s string) string {
		s = strings.Replace(s, "  pupils: 26\n", "", 1)
		return strings.Replace(s, "  teams: [Slate, Jade, Amber, Opal]\n", "", 1)
	})
	var names []string
	for _, c := range classroom.Cards(a, "1") {
		names = append(names, c.Name)
		if _, err := c.PDF(scene.A4); err != nil {
			t.Error(err)
		}
	}
	if got := strings.Join(names, " "); strings.Contains(got, "rota") || !strings.Contains(got, "report.pdf hand-over.pdf lay-up-card.pdf start-up-card.pdf") {
		t.Error(got)
	}
}
