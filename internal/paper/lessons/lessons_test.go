package lessons_test

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"rootbell/internal/base/working/pencil"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/lessons"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
	"rootbell/internal/school/lesson"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/reading"
)

// wrote is an invented logbook of the plan's first tub, with one slip.
func wrote(t testing.TB, tub string) []reading.Row {
	t.Helper()
	var b strings.Builder
	b.WriteString("id,tub,moment,level (L),EC (mS/cm),EC read with,EC checked,pH,pH read with,water (°C),height (cm),added (L)\n")
	first := time.Date(2027, 1, 25, 9, 0, 0, 0, time.UTC)
	for i := range 22 {
		height := 4 + 1.1*float64(i) + 0.2*float64(i%3)
		if i == 9 {
			height *= 10
		}
		fmt.Fprintf(&b, "row-%04d-aaaa,%s,%s,%.1f,%.2f,meter,2027-02-01,%.1f,meter,%.1f,%.1f,%.1f\n", i, tub, first.AddDate(0, 0, 2*i).Format("2006-01-02 15:04"),
			20-0.7*float64(i%4), 1.5+0.02*float64(i%6), 5.8+0.1*float64(i%5), 20+0.3*float64(i%6), height, 0.5+0.1*float64(i%3))
	}
	table, problems := reading.ReadCSV([]byte(b.String()), reading.Import{Zone: time.UTC})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return table.Rows
}

// worked keeps the assessments, which are the same each time.
var worked = map[string]*garden.Assessment{}

// gardens are the examples and some tubs of other shapes, in both unit systems,
// with a logbook and without.
func gardens(t *testing.T, check func(t *testing.T, a *garden.Assessment)) {
	t.Helper()
	for _, name := range []string{"../../../examples/fernhollow.yaml", "../../../examples/saltbrook.yaml", "../../garden/testdata/round-still.yaml"} {
		for _, units := range []string{"metric", "us"} {
			for _, logged := range []bool{false, true} {
				title := fmt.Sprintf("%s/%s/logbook=%v", name[strings.LastIndexByte(name, '/')+1:], units, logged)
				t.Run(title, func(t *testing.T) {
					if worked[title] != nil {
						check(t, worked[title])
						return
					}
					text, err := os.ReadFile(name)
					if err != nil {
						t.Fatal(err)
					}
					if text, err = plan.Edit(text, "units", units); err != nil {
						t.Fatal(err)
					}
					p, problems := plan.Parse(name, text)
					if len(problems) > 0 {
						t.Fatal(problems)
					}
					in := garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1, Stages: garden.StageClass}
					if logged {
						in.Readings = wrote(t, p.Tubs[0].Name)
					}
					a, err := garden.Assess(context.Background(), in)
					if err != nil {
						t.Fatal(err)
					}
					worked[title] = a
					check(t, a)
				})
			}
		}
	}
}

// every is every sheet of a garden, in each of its bands.
func every(a *garden.Assessment) []lesson.Sheet {
	var out []lesson.Sheet
	for _, p := range lesson.Templates() {
		for _, b := range p.Bands {
			if s, ok := a.Lesson(0, lesson.Choice{Template: p.ID, Band: b, Seed: 1}); ok && s.Why == "" {
				out = append(out, s)
			}
		}
	}
	return out
}

var cover = sheet.Lid{Garden: "Fernhollow", On: "2027-02-20"}

// grammar turns the signs of a schoolbook back into those of the pencil.
var grammar = strings.NewReplacer(" × ", "*", " ÷ ", "/", " + ", "+", " − ", "-", "−", "-", "²", "^2", "³", "^3", " ^ ", "^", "\u00a0", "")

// answer is a line of the key: name, letter, formula, sum, value and unit.
var answer = regexp.MustCompile(`^.*: \w+ = .* = (.*) = (−?[0-9.]+)( \S+)?(, rounded)?\.$`)

// Each sum that the printed key shows comes, with a pencil, to the value that it
// prints.
func TestEveryPrintedSumComesOut(t *testing.T) {
	gardens(t, func(t *testing.T, a *garden.Assessment) {
		for _, s := range every(a) {
			sums := 0
			for _, section := range lessons.Key(s, cover, scene.A4).Sections {
				for _, line := range section.List {
					m := answer.FindStringSubmatch(line)
					if m == nil {
						continue
					}
					sums++
					value, err := strconv.ParseFloat(grammar.Replace(m[2]), 64)
					if err != nil {
						t.Fatal(err)
					}
					decimals := 0
					if _, after, ok := strings.Cut(m[2], "."); ok {
						decimals = len(after)
					}
					if got, err := pencil.Round(grammar.Replace(m[1]), decimals); err != nil || math.Abs(got-value) > 1e-9 {
						t.Errorf("%s: %v %v", line, got, err)
					}
				}
			}
			if want := len(s.Numbers()); sums != want || want == 0 {
				t.Errorf("%s: %d sums in the key, %d numbers", s.Template.ID, sums, want)
			}
		}
	})
}

// The pupil's copy has a blank for each answer, no narrower than what goes in,
// never the answer itself, and no line for a name; each line fits on the paper
// in the smallest type that it may be set in, with room for each letter.
func TestThePupilsCopy(t *testing.T) {
	const sizeMM, sidesMM, leastLetterMM = 13 * scene.PointMM, 24, 3.5
	gardens(t, func(t *testing.T, a *garden.Assessment) {
		for _, s := range every(a) {
			c := lessons.Pupil(s, cover, scene.Letter)
			text, blanks := "", 0
			for _, section := range c.Sections {
				text += section.Heading + " " + strings.Join(section.Paragraphs, " ") + " "
				for _, l := range section.Lines {
					text += string(l) + " "
					wide, letters := 0.0, 0
					for _, span := range l.Spans() {
						wide, letters = wide+scene.Serif.Width(span.Text, sizeMM), letters+span.Width
						if span.Width > 0 {
							blanks++
						}
					}
					ruled := strings.Trim(string(l), "_") == "" || strings.HasPrefix(string(l), "My sum")
					if room := scene.Letter.Width - sidesMM - wide; !ruled && room < leastLetterMM*float64(letters) {
						t.Errorf("%s: no room for a hand in %q: %.1f mm a letter", s.Template.ID, l, room/float64(letters))
					}
					if strings.Contains(string(l), "= ") && !strings.Contains(string(l), "= _") {
						t.Errorf("%s: an answer stands on the pupil's copy: %q", s.Template.ID, l)
					}
				}
			}
			if blanks < len(s.Numbers()) {
				t.Errorf("%s: %d blanks for %d answers", s.Template.ID, blanks, len(s.Numbers()))
			}
			if !strings.Contains(text, "team or number __") || regexp.MustCompile(`(?i)\b(name|pupil's name)\b *_`).MatchString(text) {
				t.Errorf("%s: whose sheet is it? %q", s.Template.ID, text)
			}
			if s.Template.Log && s.FromPlan() != strings.Contains(text, "Our logbook is too short") {
				t.Errorf("%s does not say on what it rests", s.Template.ID)
			}
			for _, o := range s.Odd {
				if !strings.Contains(text, o.On) || !strings.Contains(text, "looks odd") {
					t.Errorf("%s does not name the odd reading", s.Template.ID)
				}
			}
		}
	})
}

// Every sheet and key is drawn on both sizes of paper, the same each time.
func TestAllAreDrawn(t *testing.T) {
	gardens(t, func(t *testing.T, a *garden.Assessment) {
		cards := lessons.Cards(a, "3")
		if len(cards) != 2 || len(a.Class.Sheets) < 25 {
			t.Fatalf("%d papers of %d sheets", len(cards), len(a.Class.Sheets))
		}
		for _, c := range cards {
			for _, size := range []scene.Size{scene.A4, scene.Letter} {
				first, err := c.PDF(size)
				if err != nil {
					t.Fatal(err)
				}
				if a.Plan.Units == garden.US || size != scene.A4 {
					continue
				}
				if again, err := c.PDF(size); err != nil || !bytes.Equal(first, again) {
					t.Errorf("%s differs from itself: %v", c.Name, err)
				}
			}
		}
		if cards[0].Least < 13 {
			t.Errorf("the pupils' type is %v pt", cards[0].Least)
		}
	})
}

// A graph to fill in is empty, and filled when asked for; its paper is the same.
func TestGraphsAreFilledOrToFill(t *testing.T) {
	gardens(t, func(t *testing.T, a *garden.Assessment) {
		found := 0
		for _, p := range lesson.Templates() {
			if !p.Graph {
				continue
			}
			var drawn [2]content.Figure
			for i := range drawn {
				s, ok := a.Lesson(0, lesson.Choice{Template: p.ID, Seed: 1, Filled: i == 1})
				if !ok || s.Why != "" {
					t.Skipf("%s: %s", p.ID, s.Why)
				}
				for _, section := range lessons.Pupil(s, cover, scene.A4).Sections {
					for _, f := range section.Figures {
						drawn[i] = f
					}
				}
			}
			found++
			if len(drawn[0].Print.Elements) >= len(drawn[1].Print.Elements) || drawn[0].Print.Frame != drawn[1].Print.Frame {
				t.Errorf("%s: %d and %d elements", p.ID, len(drawn[0].Print.Elements), len(drawn[1].Print.Elements))
			}
			if w := drawn[0].Print.Frame.Width(); w > scene.A4.Width-24 {
				t.Errorf("%s: the graph is %.0f mm wide", p.ID, w)
			}
			if !strings.Contains(drawn[0].Desc, "empty") || drawn[1].Caption == "" {
				t.Errorf("%s: %q", p.ID, drawn[0].Desc)
			}
		}
		if found < 4 {
			t.Errorf("%d templates with a graph", found)
		}
	})
}

// Written and back again is the same sum.
func TestSignsOfASchoolbook(t *testing.T) {
	for _, sum := range []string{"3*(4-1)/2", "(-0.5)+1.5*3", "2^3+10^(a-b)", "sqrt((a-b)^2)", "max(a-b, b-a)", "3-(-2)"} {
		if back := strings.ReplaceAll(grammar.Replace(lessons.Written(sum)), " ", ""); back != strings.ReplaceAll(sum, " ", "") {
			t.Errorf("%s is written %s, and read %s", sum, lessons.Written(sum), back)
		}
	}
}
