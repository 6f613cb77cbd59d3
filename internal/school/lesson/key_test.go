package lesson

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/base/working/pencil"
	"rootbell/internal/school/plainwords"
)

// A pencil, which shares no code with the formulas, comes to the key's answer by
// its formula with the numbers told, and by its sum as printed.
func TestAPencilComesToEveryAnswer(t *testing.T) {
	each(t, func(t *testing.T, s Sheet) {
		for _, n := range s.Numbers() {
			shown := n.Show(s.System)
			if shown.None || n.Law == nil {
				t.Fatalf("%s is not worked out", n.Name)
			}
			sum, err := pencil.Round(shown.PutIn, shown.Decimals)
			if err != nil || math.Abs(sum-shown.Value) > 1e-9 {
				t.Errorf("%s: %s is %v with a pencil (%v), the key has %v", n.Name, shown.PutIn, sum, err, shown.Value)
			}
			values := map[string]float64{}
			for i, w := range n.Law.Where {
				values[w.Name] = n.Inputs[i].Show(s.System).Value
			}
			again, err := pencil.With(shown.Formula, values)
			// A sum on the very edge of two roundings may go either way.
			if err != nil || math.Abs(again-shown.Value) > 0.5000001*math.Pow(10, -float64(shown.Decimals)) {
				t.Errorf("%s: %s with the numbers told is %v (%v), the key has %v", n.Name, shown.Formula, again, err, shown.Value)
			}
		}
	})
}

// What a pupil needs stands on the pupil's copy: each number of a sum is told,
// stands in the table, in the question, or is an answer from before.
func TestEveryNumberOfASumIsTold(t *testing.T) {
	each(t, func(t *testing.T, s Sheet) {
		told := strings.Join(s.Told, " ") + " "
		if s.Table != nil {
			for _, row := range s.Table.Rows {
				for _, c := range row {
					told += c.Text + " "
				}
			}
		}
		if s.Graph != nil && s.Graph.Scale > 0 {
			return // measured on the drawing
		}
		for _, q := range s.Questions {
			told += q.Text + " "
			for _, n := range q.Steps {
				for _, in := range n.Inputs {
					v := in.Show(s.System)
					word := quantity.FormatNumber(v.Value, v.Decimals)
					if !strings.Contains(told, word) && !derived(in, s, told) {
						t.Errorf("%s: %s = %s is told nowhere in %q", n.Name, in.Name, word, told)
					}
				}
				v := n.Show(s.System)
				told += quantity.FormatNumber(v.Value, v.Decimals) + " "
			}
		}
	})
}

// derived is a number that a pupil sees without it being written: the hours and
// minutes of a clock time, how many there are in a table, the month's days.
func derived(n working.Number, s Sheet, told string) bool {
	switch {
	case strings.Contains(n.Name, "minutes after") || strings.Contains(n.Name, "hour it"):
		return strings.Contains(told, fmt.Sprintf("%02.0f", n.Base))
	case n.Source == "the calendar" && n.Base == 0, n.Source == "an example":
		return true
	case n.Name == "days in the months between":
		return true // the sum of those told
	case n.Name == "how many points":
		return s.Table != nil && len(s.Table.Rows) == int(n.Base)
	}
	return false
}

// figures are what a sum is about: a number with its unit, or a date. For the
// reading level each counts as one short word: they are there to be worked with,
// and 3.785411784 L read aloud is no measure of the words around it.
var figures = regexp.MustCompile(`[−-]?[0-9][0-9.]*(\x{a0}(cm³|cm²|in³|in²|mS/cm|mL/L|L/d|gal/d|kWh|EUR|gal|cups|cm|mm|in|mL|qt|min|°C|°F|W|L|h|d|%))?( (January|February|March|April|May|June|July|August|September|October|November|December))?|cm³|in³|L/d|mm\b|cm/d|in/d|L/cm|gal/in`)

// The pupil's words are held to the band by the Flesch-Kincaid grade (Kincaid
// and others 1975): on the whole sheet no more than
// its hardest text.
func TestPupilsCanReadTheirSheet(t *testing.T) {
	worst := map[Band]float64{}
	each(t, func(t *testing.T, s Sheet) {
		text := append([]string(nil), s.Told...)
		for _, o := range s.Odd {
			text = append(text, o.Short())
		}
		for _, q := range s.Questions {
			text = append(text, q.Text)
		}
		text = append(text, s.Talk)
		grade := plainwords.Grade(figures.ReplaceAllString(strings.Join(text, "\n"), "ten"))
		worst[s.Band] = max(worst[s.Band], grade)
		if grade > mostGrade(s.Band) {
			t.Errorf("reads like grade %.1f, for %s: %s", grade, s.Band, strings.Join(text, " "))
		}
	})
	t.Logf("hardest sheets: %v (%s)", worst, plainwords.Source)
}

// mostGrade is the hardest text for a band.
func mostGrade(b Band) float64 {
	for _, band := range plainwords.Bands() {
		if band.Name == string(b) {
			return band.MostGrade
		}
	}
	return 0
}

// Each template names its concept, touches a code whose source is told, and asks
// at least one number by a formula of its own.
func TestWhatEachTemplateHas(t *testing.T) {
	all := Templates()
	if len(all) < 25 {
		t.Fatalf("%d templates", len(all))
	}
	seen := map[string]bool{}
	tub := box(quantity.Metric, nil)
	for i, p := range all {
		if p.Number != i+1 || p.ID == "" || seen[p.ID] || seen[p.Title] || p.Concept == "" || len(p.Bands) == 0 {
			t.Errorf("template %d: %+v", i+1, p)
		}
		seen[p.ID], seen[p.Title] = true, true
		if len(p.Standards()) == 0 {
			t.Errorf("%s touches nothing", p.ID)
		}
		for _, s := range p.Standards() {
			if s.Code == "" || s.Says == "" || s.Fact.Source == "" || s.Fact.Status == "" {
				t.Errorf("%s: %+v", p.ID, s)
			}
		}
		s := made(t, Choice{Template: p.ID, Seed: 1}, tub)
		if len(s.Numbers()) == 0 || s.Talk == "" || s.TalkKey == "" || (p.Graph && s.Graph == nil) {
			t.Errorf("%s lacks a question, a graph or something to talk about", p.ID)
		}
	}
}

// The same number of a variant gives the same sheet, and other numbers give
// others.
func TestVariantsComeFromTheSeedAlone(t *testing.T) {
	tub := box(quantity.Metric, wrote(t, 24, false))
	for _, p := range Templates() {
		texts := map[string]bool{}
		for seed := uint64(1); seed <= 12; seed++ {
			a, b := made(t, Choice{Template: p.ID, Seed: seed}, tub), made(t, Choice{Template: p.ID, Seed: seed}, tub)
			if said(a) != said(b) {
				t.Fatalf("%s, variant %d differs from itself", p.ID, seed)
			}
			texts[said(a)] = true
		}
		if len(texts) < 2 {
			t.Errorf("%s: twelve variants are all the same", p.ID)
		}
	}
}

// said is all that a sheet says, for comparing.
func said(s Sheet) string {
	var b strings.Builder
	fmt.Fprintln(&b, s.From, s.Told, s.Odd, s.Talk, s.TalkKey, s.Table)
	if g := s.Graph; g != nil {
		fmt.Fprintln(&b, g.Title, g.X, g.Y, g.Points, g.Scale)
		if g.Line != nil {
			fmt.Fprintln(&b, *g.Line)
		}
	}
	for _, q := range s.Questions {
		fmt.Fprintln(&b, q.Text, q.Says)
		for _, n := range q.Steps {
			fmt.Fprintln(&b, n.Show(s.System))
		}
	}
	return b.String()
}
