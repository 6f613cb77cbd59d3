package mixing_test

import (
	"context"
	"fmt"
	"os"
	"strings"
	"testing"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/mixing"
	"rootbell/internal/paper/scene"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/solution"
)

// mixed works an example out with changes: a path and a value each.
func mixed(t *testing.T, example string, changes ...string) *garden.Assessment {
	t.Helper()
	text, err := os.ReadFile("../../../examples/" + example + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i < len(changes); i += 2 {
		if text, err = plan.Replace(text, changes[i], changes[i+1]); err != nil {
			t.Fatal(err)
		}
	}
	p, problems := plan.Parse(example, text)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1, Stages: garden.StageMix})
	if err != nil {
		t.Fatal(err)
	}
	if a.Tubs[0].Mix == nil {
		t.Fatalf("no mix: %v", a.Findings)
	}
	return a
}

func TestTheRuleForPupilsIsTheChemistrysOwn(t *testing.T) {
	if mixing.Pupils != solution.PupilRule() {
		t.Errorf("the card says %q, the chemistry %q", mixing.Pupils, solution.PupilRule())
	}
}

// The answer of a maker's dose is the dose times the litres, which a pencil can
// check: Tern holds 24.0 L (6.34 gal), and 6.34 × 2 g is 12.7 g.
func TestTheAnswerIsDoseTimesLitres(t *testing.T) {
	a := mixed(t, "saltbrook", "units", "metric")
	bold, rest := mixing.Answer(a, 0)
	litres := a.Tubs[0].Mix.SolutionL
	const litresPerGallon = 3.785411784 // US gallon, by definition (NIST Handbook 44)
	first, second := 2*litres/litresPerGallon, 2.4*litres/litresPerGallon
	if want := fmt.Sprintf("Weigh %.0f\u00a0g of calcium nitrate and %.0f\u00a0g of club mix", first, second); bold != want {
		t.Errorf("%q, want %q", bold, want)
	}
	if !strings.Contains(rest, "Tern") || !strings.Contains(rest, "Expect EC") {
		t.Errorf("the rest is %q", rest)
	}
}

func TestWaysOfMeasuring(t *testing.T) {
	for name, c := range map[string]struct {
		changes []string
		want    string
	}{
		"by the scale":   {nil, "Weigh "},
		"by stocks":      {[]string{"stocks", "{volume: 1 L, strength: 100}"}, "of stock A, then "},
		"by a small one": {[]string{"tools", "{scale_step: 1 g}"}, "of a small stock of "},
	} {
		t.Run(name, func(t *testing.T) {
			a := mixed(t, "fernhollow", c.changes...)
			if bold, _ := mixing.Answer(a, 0); !strings.Contains(bold, c.want) {
				t.Errorf("%q, want %q", bold, c.want)
			}
		})
	}
}

// sheets are what the papers of an assessment say, by name.
func sheets(a *garden.Assessment) map[string][]content.Sheet {
	out := map[string][]content.Sheet{}
	for _, c := range mixing.Cards(a, "1") {
		out[c.Name] = c.Sheets(scene.A4)
	}
	return out
}

// What an adult has in hand is said on the paper in hand.
func TestCautionsStandWhereTheHandIs(t *testing.T) {
	all := sheets(mixed(t, "fernhollow", "stocks", "{volume: 1 L, strength: 100}"))
	for name, words := range map[string][]string{
		"mixing-card.pdf":     {"never meet undiluted", "Acid goes into water, never water into acid", "goggles", "adult"},
		"acid-card.pdf":       {"For an adult alone", "Acid into water, never water into acid", "Never near bleach", "Compare with that number"},
		"bottle-labels.pdf":   {"Adults only", "Not for drinking", "Never together with stock B undiluted", "(H272)", "until ____"},
		"clean-down-card.pdf": {"For an adult alone", "never meets acid, fertiliser", "Rinse three times"},
	} {
		text := fmt.Sprint(all[name])
		for _, want := range words {
			if !strings.Contains(text, want) {
				t.Errorf("%s does not say %q", name, want)
			}
		}
	}
}

// Without an alkalinity, or without an acid in the plan, no dose stands on a
// paper.
func TestNoAcidOnAGuess(t *testing.T) {
	for name, a := range map[string]*garden.Assessment{
		"water unknown": mixed(t, "fernhollow", "tap", "unknown"),
		"no acid":       mixed(t, "fernhollow", "acids", "[]"),
	} {
		t.Run(name, func(t *testing.T) {
			all := sheets(a)
			if _, there := all["acid-card.pdf"]; there {
				t.Error("there is an acid card")
			}
			if text := fmt.Sprint(all["mixing-card.pdf"]); strings.Contains(text, "pH down") || strings.Contains(text, "phosphoric") {
				t.Errorf("the mixing card names an acid: %s", text)
			}
			if said := mixing.Acid(a.Tubs[0].Mix, a.Plan.Units); len(said) != 1 || !strings.HasPrefix(said[0], "No acid is given") {
				t.Errorf("said is %q", said)
			}
		})
	}
}

// The columns of the dose table are parts of what the tub takes, and what the
// scale cannot weigh is a dash.
func TestTheDoseTable(t *testing.T) {
	a := mixed(t, "saltbrook", "units", "metric")
	table := sheets(a)["dose-table.pdf"][0].Sections[0].Tables[0]
	// 2 g and 2.4 g in a US gallon are 0.528 g/L and 0.634 g/L: on a scale of 1 g
	// nothing for 1 L or 2 L, and 5.28 g and 6.34 g for 10 L.
	for i, want := range [][]string{{"calcium nitrate", "–", "–", "3\u00a0g", "5\u00a0g", "13\u00a0g"}, {"club mix", "–", "–", "3\u00a0g", "6\u00a0g", "15\u00a0g"}} {
		if got := table.Rows[i]; fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("row %q, want %q", got, want)
		}
	}
	meter := sheets(a)["dose-table.pdf"][0].Sections[1].Tables[0]
	if len(meter.Rows) != len(mixing.Parts(a.Tubs[0].Mix)) || len(meter.Columns) != 5 {
		t.Errorf("the meter's table is %q", meter.Rows)
	}
}

// Half of a dose brings more than half of the EC that the dose adds: the curve
// is bent (Kohlrausch: conductivity for each ion falls with strength).
func TestHalfTheDoseIsMoreThanHalfTheEC(t *testing.T) {
	parts := mixing.Parts(mixed(t, "fernhollow").Tubs[0].Mix)
	water, half, whole := parts[0].EC, parts[2].EC, parts[4].EC
	if straight := (water + whole) / 2; half <= straight {
		t.Errorf("half is %.3f, a straight line would give %.3f", half, straight)
	}
}

// A stop about the mix stands on its papers; one about the lid does not.
func TestAStopStandsAcross(t *testing.T) {
	a := mixed(t, "fernhollow")
	for field, want := range map[string]string{"tap.softened": "do not mix: It must not be.", "tubs[0].feed.ec": "do not mix: It must not be.", "tubs[0].hole": "", "tubs[1].feed": ""} {
		stopped := *a
		stopped.Findings = []finding.Finding{{Level: finding.Stop, Field: field, Text: "It must not be."}}
		for _, name := range []string{"mixing-card.pdf", "dose-table.pdf", "bottle-labels.pdf", "acid-card.pdf"} {
			if got := sheets(&stopped)[name][0].Stop; got != want {
				t.Errorf("%s, a stop at %s: %q, want %q", name, field, got, want)
			}
		}
	}
}

// The label on a small stock says the bottle that the card says, in litres that
// a jug has marks for; the dose of a stock is for what the tub is counted in.
func TestLabelsSayWhatTheCardSays(t *testing.T) {
	for units, dose := range map[string]string{"metric": "for each litre", "us": "for each gallon"} {
		a := mixed(t, "fernhollow", "units", units, "tools", "{scale_step: 1 g}")
		labels, bottles := said(sheets(a)["bottle-labels.pdf"]), 0
		for _, w := range a.Tubs[0].Mix.Weigh {
			if w.Stock == nil {
				continue
			}
			bottles++
			bottle := garden.BottleWords(w.Stock.Litres, a.Plan.Units)
			if !strings.Contains(labels, "made up to "+bottle) || !strings.Contains(garden.MeasureWords(w, a.Plan.Units), "make it up to "+bottle) {
				t.Errorf("%s: card and label of %s differ over %s: %s", units, w.Name, bottle, labels)
			}
		}
		if bottles == 0 {
			t.Error("no small stock to look at")
		}
		a = mixed(t, "fernhollow", "units", units, "stocks", "{volume: 1 L, strength: 100}")
		if labels := said(sheets(a)["bottle-labels.pdf"]); !strings.Contains(labels, dose) {
			t.Errorf("%s: %q is not said: %s", units, dose, labels)
		}
	}
}

// said is every paragraph of some sheets.
func said(all []content.Sheet) string {
	var out strings.Builder
	for _, s := range all {
		for _, part := range s.Sections {
			out.WriteString(strings.Join(part.Paragraphs, " ") + "\n")
		}
	}
	return out.String()
}

// The wall's column for the whole tub is what the card says, whatever is left
// over of a millilitre.
func TestTheTableOfTheTubIsTheCards(t *testing.T) {
	for _, strength := range []int{50, 60, 70, 80, 90, 100} {
		a := mixed(t, "fernhollow", "stocks", fmt.Sprintf("{volume: 1 L, strength: %d}", strength))
		for i, s := range sheets(a)["dose-table.pdf"] {
			row := s.Sections[0].Tables[0].Rows[0]
			if want := garden.PourWords(a.Tubs[i].Mix.Stocks.PourML, quantity.Metric); row[0] != "stock A" || row[len(row)-1] != want {
				t.Errorf("strength %d: the table says %q, the card %s", strength, row, want)
			}
		}
	}
}

// Chloramine is not seen by a strip for free chlorine: where there is some, or
// nobody knows, the step asks for a strip for the total (from memory).
func TestTheStripSeesWhatThereIs(t *testing.T) {
	for tap, total := range map[string]bool{"unknown": true, "{alkalinity: 80 mg/L, chlorine: 0.4 mg/L}": false, "{alkalinity: 80 mg/L, chlorine: 0 mg/L, chloramine: 2 mg/L}": true} {
		strip := ""
		for _, s := range mixed(t, "saltbrook", "tap", tap).Tubs[0].Mix.Steps {
			if strings.HasPrefix(s.Do, "Dip ") {
				strip = s.Do
			}
		}
		if strip == "" || strings.Contains(strip, "total") != total {
			t.Errorf("%s: %q", tap, strip)
		}
	}
}

// Calcium that nobody measured is not told as measured.
func TestCalciumFromTheAlkalinityIsSaidToBe(t *testing.T) {
	for tap, taken := range map[string]bool{"{alkalinity: 80 mg/L}": true, "{alkalinity: 80 mg/L, calcium: 20 mg/L}": false} {
		a := mixed(t, "saltbrook", "tap", tap, "fertilisers", "[{name: one bottle, label: {N: 3 %, P2O5: 2 %, K2O: 4 %}, form: liquid, density: 1.1 kg/L, dose: 5 mL/L}]")
		told := ""
		for _, f := range a.Findings {
			if f.Code == "feed-calcium" {
				told = f.Text
			}
		}
		if told == "" || strings.Contains(told, "Nobody measured") != taken {
			t.Errorf("%s: %q", tap, told)
		}
	}
}
