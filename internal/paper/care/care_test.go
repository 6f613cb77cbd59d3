package care_test

import (
	"context"
	"strings"
	"testing"

	"rootbell/examples"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/care"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/meal"
	"rootbell/internal/school/trouble"
)

func assessed(t *testing.T, name string) *garden.Assessment {
	t.Helper()
	text, err := examples.Plans.ReadFile(name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	p, problems := plan.Parse(name, text)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: 1, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// Every sign and every question stands on its paper, on both sizes; the cold is
// told in the plan's units.
func TestEverySignAndQuestionIsPrinted(t *testing.T) {
	for name, cold := range map[string]string{"fernhollow": "5\u00a0°C", "saltbrook": "41\u00a0°F"} {
		a := assessed(t, name)
		for _, size := range []scene.Size{scene.A4, scene.Letter} {
			said := ""
			for _, c := range care.Cards(a, "1") {
				if pdf, err := c.PDF(size); err != nil || len(pdf) < 2000 {
					t.Errorf("%s: %d bytes, %v", c.Name, len(pdf), err)
				}
				for _, s := range c.Sheets(size) {
					for _, x := range s.Sections {
						said += strings.Join(x.Cautions, " ") + strings.Join(x.Steps.Items, " ") + strings.Join(x.Paragraphs, " ")
						for _, table := range x.Tables {
							for _, row := range table.Rows {
								said += strings.Join(row, " ")
							}
						}
					}
				}
			}
			for _, s := range trouble.Signs() {
				if !strings.Contains(said, s.Words) {
					t.Errorf("%s is not printed", s.ID)
				}
			}
			for _, g := range meal.Gates() {
				if !strings.Contains(said, g.Asks) {
					t.Errorf("%s is not printed", g.ID)
				}
			}
			if !strings.Contains(said, cold) || strings.Contains(said, "approved") {
				t.Errorf("%s: %s is not said, or something is approved", name, cold)
			}
		}
	}
}
