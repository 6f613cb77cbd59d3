package seasonal_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"rootbell/internal/base/finding"
	"rootbell/internal/garden"
	"rootbell/internal/paper/card"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/seasonal"
)

// named is the paper of a name; the test fails without it.
func named(t *testing.T, a *garden.Assessment, name string) card.Card {
	t.Helper()
	for _, c := range seasonal.Cards(a, "3") {
		if c.Name == name {
			return c
		}
	}
	t.Fatalf("there is no %s", name)
	return card.Card{}
}

// What each paper may not lack. The rules for dust, puddles and plugs are common
// practice, without a source; the figures are the fixture's.
func TestWhatAPaperMayNotLack(t *testing.T) {
	a := example(t, "fernhollow", garden.Metric)
	for name, want := range map[string][]string{
		"sowing-Otter.pdf": {
			"Dry rockwool and dry perlite give off dust", "An adult opens the bag beside an open window and wets it all before it is handled",
			"Sow on Tue 12 Jan", "basil | 9 | 4 | 2 or 3 | 2 mm | __", "Cut the others off with scissors", "19.9 cm", "Thu 21 Jan", "The latest day is Tue 19 Jan",
		},
		"move-day-Heron.pdf": {
			"dust", "weighs 27.3 kg: nobody lifts or drags it", "Move in on Mon 25 Jan", "16.7 cm", "the water stands over the cup's bottom",
			"The lamp hangs 30.0 cm over the lid", "nobody looks into it", "1 | leaf lettuce | __ | __", "8 | leaf lettuce | __ | __", "Plants stand 15.6 cm apart or more",
		},
		"leave-it-Heron.pdf": {
			"Nobody comes from Fri 12 Feb, 15:30 to Mon 22 Feb, 08:30 (break): 233 hours", "in about 2 in 5 cases", "below the lowest line, 8.0 cm,",
			"Thu 11 Feb | Stand plain tap water in open cans", "3.1 L", "14:30 | Read level, pH and EC", "14:55 | Fill up", "up to 14.0 cm, about 3.1 L", "Never over 16.7 cm",
			"15:10 | An adult with dry hands sets the lamp's timer to fewer hours a day: 06:00 to 14:00. | 8 h a day | __", "sets the lamp's timer back to its usual hours.", "15:20 | Look and listen: bubbles", "15:30 | Hang the puddle card", "Mon 22 Feb | At 08:30, the return card in hand: before anything is poured in, read the level.",
			"4 mg/L in about 3 h, to 3 mg/L in about 5 h, to 2 mg/L in about 8 h", "power cut", "Nobody touches plug or switch", "2 in 100 | Fill up to 14.0 cm and harvest 3 plants before.",
			"Nobody comes from Fri 5 Mar, 15:30 to Tue 9 Mar, 08:30 (staff day): 89 hours", "Fri 29 Jan, 15:30 | Mon 1 Feb, 08:30, 65 hours, risk under 1 in 100 | 16.7 cm | __",
		},
		"visitor-card.pdf": {
			"Come once, between Tue 16 Feb, 09:00 and Thu 18 Feb, 17:00, by the clock of Europe/Dublin", "Before going in, look from the door", "An adult who need not step in the water cuts the circuit at the board",
			"Heron | 6.0 L | ", "Otter | 6.0 L | ", "Never straight from the tap", "no plant food", "Teacher, phone ______", "stays plugged in", "a litre weighs a kilogram",
		},
		"seed-labels.pdf":   {"Heron, cell 1 of 9, leaf lettuce | sow Mon 11 Jan | into the tub Mon 25 Jan | __", "Otter, cell 4 of 4, pak choi | sow Tue 12 Jan | into the tub Tue 26 Jan | __"},
		"wall-calendar.pdf": {"1, 11 Jan | 11; sow: Heron; order | 12; sow: Otter", "6, 15 Feb | 15; break", "24; meal", "Before 15:30: the leave-it sheets of Heron and Otter, then nobody comes until Mon 22 Feb, 08:30, 233 hours."},
	} {
		text := said(named(t, a, name))
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%s does not say %q:\n%s", name, w, text)
			}
		}
	}
}

// The visitor handles no chemistry and nothing that can hurt: no word of it but
// in what is not to be done.
func TestTheVisitorHandlesNoChemistry(t *testing.T) {
	for _, a := range ways(t) {
		c := named(t, a, "visitor-card.pdf")
		for _, s := range c.Sheets(scene.A4) {
			for _, x := range s.Sections {
				text := strings.Join(append(append(append([]string{x.Heading}, x.Cautions...), x.Paragraphs...), x.Steps.Items...), " ")
				for _, word := range []string{"pH", "EC", "acid", "nutrient", "solution", "fertiliser", "stock"} {
					if regexp.MustCompile(`\b` + word + `\b`).MatchString(text) {
						t.Errorf("%s: %q in %q", a.Garden, word, text)
					}
				}
			}
		}
	}
}

// In US units no metric word stands on a paper, and the other way round.
func TestOneSystemOfUnits(t *testing.T) {
	metric, us := regexp.MustCompile(`\d (cm|mm|L|kg)\b`), regexp.MustCompile(`\d (in|gal|lb|oz)\b`)
	for _, name := range []string{"fernhollow", "saltbrook"} {
		for units, other := range map[garden.System]*regexp.Regexp{garden.Metric: us, garden.US: metric} {
			a := example(t, name, units)
			for _, c := range seasonal.Cards(a, "3") {
				// What the season says in words of its own is the fixture's here.
				text := said(c)
				for _, i := range a.Tubs {
					for _, l := range i.Season.Closed {
						for _, o := range l.Options {
							text = strings.ReplaceAll(text, o.Do, "")
						}
					}
					for _, task := range i.Season.Tasks {
						text = strings.ReplaceAll(text, task.Do, "")
					}
				}
				// Chances are no lengths.
				text = regexp.MustCompile(`\d+ in \d+`).ReplaceAllString(text, "")
				if found := other.FindString(text); found != "" {
					t.Errorf("%s in %v, %s: %q", name, units, c.Name, found)
				}
			}
		}
	}
}

// A tub without a pump is not filled up, and its line never rises by more than
// 20 mm (3/4 in as a ruler has it, rounded down: 20 mm are 0.787 in).
func TestAStillTubIsNotFilledUp(t *testing.T) {
	a := example(t, "saltbrook", garden.US)
	text := said(named(t, a, "leave-it-Plover.pdf"))
	if !strings.Contains(text, "Do not fill it up") || strings.Contains(text, "bubbles") {
		t.Errorf("the sheet of a still tub says:\n%s", text)
	}
	for i := range a.Tubs {
		for k := range a.Tubs[i].Season.Closed {
			if l := &a.Tubs[i].Season.Closed[k]; len(l.Options) > 0 {
				l.Take = 0
			}
		}
	}
	if text := said(named(t, a, "leave-it-Plover.pdf")); !strings.Contains(text, "never rises by more than 3/4 in") {
		t.Errorf("the bound of a rise is not said:\n%s", text)
	}
	if text := said(named(t, a, "visitor-card.pdf")); !strings.Contains(text, "Plover | 1.59 gal | 3/4 in over what is found") || !strings.Contains(text, "no pump") {
		t.Errorf("the visitor's card says:\n%s", text)
	}
}

// Where nothing is enough the sheet says so, and takes the best there is.
func TestNothingIsEnough(t *testing.T) {
	a := example(t, "fernhollow", garden.Metric)
	for k := range a.Tubs[0].Season.Closed {
		l := &a.Tubs[0].Season.Closed[k]
		if len(l.Options) > 0 {
			l.Take, l.Options = -1, []garden.LeaveDo{{Kind: "lamp", Do: "Fewer hours of lamp.", Risk: 0.4, Hours: 12}, {Kind: "fill", Do: "Fill higher.", Risk: 0.2, LineMM: 150}}
		}
	}
	text := said(named(t, a, "leave-it-Heron.pdf"))
	for _, want := range []string{"Nothing that was tried brings it under 1 in 20. The best of it leaves about 1 in 5: Fill higher. Safer: harvest", "up to 15.0 cm", "40 in 100 | Fewer hours of lamp."} {
		if !strings.Contains(text, want) {
			t.Errorf("the sheet does not say %q:\n%s", want, text)
		}
	}
	for k := range a.Tubs[0].Season.Closed {
		a.Tubs[0].Season.Closed[k].Options = nil
	}
	if text := said(named(t, a, "leave-it-Heron.pdf")); !strings.Contains(text, "Harvest before, or ask the school") {
		t.Errorf("without a way the sheet says:\n%s", text)
	}
}

// Two tubs whose windows do not meet need two visits.
func TestWindowsThatDoNotMeet(t *testing.T) {
	a := example(t, "fernhollow", garden.Metric)
	for k := range a.Tubs[0].Season.Closed {
		for j := range a.Tubs[0].Season.Closed[k].Options {
			if o := &a.Tubs[0].Season.Closed[k].Options[j]; o.VisitA != nil {
				early, late := o.VisitA.Add(-48*time.Hour), o.VisitB.Add(-64*time.Hour)
				o.VisitA, o.VisitB = &early, &late
			}
		}
	}
	if text := said(named(t, a, "visitor-card.pdf")); !strings.Contains(text, "Come twice: the tubs' windows do not meet. First by Tue 16 Feb, 01:00, again after Tue 16 Feb, 09:00") {
		t.Errorf("the card says:\n%s", text)
	}
}

// The rows of a list to tick off come in the order of the clock.
func TestTheTickListIsInOrder(t *testing.T) {
	at := regexp.MustCompile(`^\d\d:\d\d$`)
	for _, a := range ways(t) {
		for i := range a.Tubs {
			for _, s := range named(t, a, "leave-it-"+a.Tubs[i].Name+".pdf").Sheets(scene.A4) {
				last, rows := "", 0
				for _, row := range ticked(s) {
					if at.MatchString(row[0]) {
						if row[0] < last {
							t.Errorf("%s: %s comes after %s", s.Title, row[0], last)
						}
						last = row[0]
						rows++
					}
				}
				if !strings.Contains(s.Title, "short") && rows < 4 {
					t.Errorf("%s has %d rows with an hour", s.Title, rows)
				}
			}
		}
	}
}

func ticked(s content.Sheet) [][]string {
	var out [][]string
	for _, x := range s.Sections {
		for _, table := range x.Tables {
			if table.Ticked() {
				out = append(out, table.Rows...)
			}
		}
	}
	return out
}

// Where the lamp was raised for one tub before another has its plants, no height
// of the first day is said.
func TestALampThatWasRaised(t *testing.T) {
	a := example(t, "fernhollow", garden.Metric)
	a.Tubs[1].Season.Tasks = append(a.Tubs[1].Season.Tasks, garden.SeasonTask{Kind: "lamp", On: "2027-01-20", Do: "Raise the lamp."})
	if text := said(named(t, a, "move-day-Heron.pdf")); strings.Contains(text, "30.0 cm over the lid") || !strings.Contains(text, "as high as the wall calendar has it") {
		t.Errorf("the sheet says:\n%s", text)
	}
}

// What stops the drilling of a lid stands across the sheet of its move.
func TestAStopStandsAcrossTheMove(t *testing.T) {
	a := example(t, "fernhollow", garden.Metric)
	a.Findings = append(slices.Clone(a.Findings), finding.Finding{Level: finding.Stop, Field: "tubs[0].hole", Text: "It falls through."})
	for tub, want := range map[string]string{"Heron": "do not drill: It falls through.", "Otter": ""} {
		if got := named(t, a, "move-day-"+tub+".pdf").Sheets(scene.A4)[0].Stop; got != want {
			t.Errorf("%s: the stop is %q, want %q", tub, got, want)
		}
	}
}

// Where the plan has no lamp, nobody looks for its timer.
func TestNoTimerWithoutALamp(t *testing.T) {
	a := example(t, "fernhollow", garden.Metric)
	p := *a.Plan
	p.Lamps, a.Plan = nil, &p
	for i := range a.Tubs {
		for k := range a.Tubs[i].Season.Closed {
			a.Tubs[i].Season.Closed[k].Options, a.Tubs[i].Season.Closed[k].Take = nil, -1
		}
	}
	text := said(named(t, a, "leave-it-Heron.pdf"))
	for _, not := range []string{"timer", "the lamp"} {
		if strings.Contains(text, not) {
			t.Errorf("the sheet speaks of %q:\n%s", not, text)
		}
	}
	if !strings.Contains(text, "the pump stops as above. The water") || !strings.Contains(text, "heating stays as usual.") {
		t.Errorf("%s", text)
	}
}
