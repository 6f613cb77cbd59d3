package garden_test

import (
	"bytes"
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"rootbell/internal/base/finding"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/term"
	"rootbell/internal/science/lid"
)

// zoneOf is the plan's zone, as the program takes it.
func zoneOf(t testing.TB, p *plan.Plan) *time.Location {
	t.Helper()
	zone, err := time.LoadLocation(p.Place.TimeZone)
	if err != nil {
		t.Fatal(err)
	}
	return zone
}

// fewRuns is enough where only the sense of an answer is looked at.
const fewRuns = 60

// seasonOf is a plan's season, with a logbook.
func seasonOf(t testing.TB, p *plan.Plan, with func(*garden.Inputs), lines ...string) *garden.Assessment {
	t.Helper()
	in := garden.Inputs{Plan: p, Zone: zoneOf(t, p), Effort: lid.Quick, Seed: 1, Stages: garden.StageMix | garden.StageSeason, Members: fewRuns}
	in.Readings = wrote(t, in.Zone, lines...)
	if with != nil {
		with(&in)
	}
	a, err := garden.Assess(context.Background(), in)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

const (
	fernhollowPlan = "../../examples/fernhollow.yaml"
	saltbrookPlan  = "../../examples/saltbrook.yaml"
)

// thirdPlan is a garden of a school year with clocks that change, of US units,
// romaine and one still tub.
const thirdPlan = "testdata/season.yaml"

func seasonPlans() []string { return []string{fernhollowPlan, saltbrookPlan, thirdPlan} }

func TestASeasonHoldsTogether(t *testing.T) {
	for _, name := range seasonPlans() {
		p := parsed(t, name, text(t, name))
		a := seasonOf(t, p, nil)
		for i, tub := range a.Tubs {
			s := tub.Season
			if s == nil {
				t.Fatalf("%s, %s: no season: %v", name, tub.Name, codes(a))
			}
			if s.Runs != fewRuns || s.ReadyChance < 0 || s.ReadyChance > 1 || s.Seeds <= 0 {
				t.Errorf("%s, %s: %d runs, ready %v, %d seeds", name, tub.Name, s.Runs, s.ReadyChance, s.Seeds)
			}
			inOrder(t, s.SowFrom, s.SowOn, s.TransplantOn, s.HarvestTo)
			daysHold(t, &a.Tubs[i], *tub.FillDepthMM)
			stretchesHold(t, a, s)
			for _, task := range s.Tasks {
				if task.Do == "" || task.On == "" {
					t.Errorf("%s, %s: a task without words or a day: %+v", name, tub.Name, task)
				}
			}
		}
	}
}

// inOrder wants days that do not fall back; an empty one is not known.
func inOrder(t teller, days ...string) {
	t.Helper()
	last := ""
	for _, d := range days {
		if d != "" && d < last {
			t.Errorf("%v are out of order", days)
		}
		if d != "" {
			last = d
		}
	}
}

func ordered(r garden.Range) bool {
	return r.P5 <= r.P25 && r.P25 <= r.P50 && r.P50 <= r.P75 && r.P75 <= r.P95
}

// overPourMM is by how much a hand may miss the line: four and a half standard
// deviations of 2 mm (internal/forecast/facts.csv, spread.fill), which of a
// hundred thousand pours one passes.
const overPourMM = 9

// daysHold wants days in a row, bands in order and no water over the line
// up to which it is filled.
func daysHold(t teller, tub *garden.Tub, lineMM float64) {
	t.Helper()
	last := term.Date{}
	for _, d := range tub.Season.Days {
		on, err := term.ParseDate(d.Date)
		if err != nil || last.Set() && on.Since(last) != 1 {
			t.Errorf("%s: %s does not follow %s", tub.Name, d.Date, last)
		}
		last = on
		for _, r := range []garden.Range{d.LevelMM, d.ECBand, d.MassG, d.DOBand} {
			if !ordered(r) {
				t.Errorf("%s, %s: %+v is no band", tub.Name, d.Date, r)
			}
		}
		if d.LevelMM.P95 > lineMM+overPourMM {
			t.Errorf("%s, %s: the water stands %v mm, the line is at %v", tub.Name, d.Date, d.LevelMM.P95, lineMM)
		}
		if d.Litres < 0 || d.DOMgL < 0 || math.IsNaN(d.EC) {
			t.Errorf("%s, %s: %+v", tub.Name, d.Date, d)
		}
	}
	if len(tub.Season.Days) > 0 && tub.Season.Days[0].Date != tub.Season.TransplantOn {
		t.Errorf("%s: the days begin on %s, the plants move on %s", tub.Name, tub.Season.Days[0].Date, tub.Season.TransplantOn)
	}
}

// stretchesHold wants the calendar's closed stretches, by the school's clock.
func stretchesHold(t teller, a *garden.Assessment, s *garden.Season) {
	t.Helper()
	if len(s.Days) == 0 {
		return
	}
	for _, c := range s.Closed {
		if !c.To.After(c.From) || c.Risk < 0 || c.Risk > 1 || math.Abs(c.To.Sub(c.From).Hours()-c.Hours) > 0.01 || c.Take >= len(c.Options) {
			t.Errorf("%+v", c)
		}
		if c.RunsDryP95 != nil && (c.RunsDryP95.Before(c.From) || c.RunsDryP95.After(c.To)) {
			t.Errorf("dry on %s, outside %s to %s", c.RunsDryP95, c.From, c.To)
		}
		if c.RunsDryP50 != nil && c.RunsDryP95 != nil && c.RunsDryP50.Before(*c.RunsDryP95) {
			t.Errorf("half run dry on %s, before one in twenty on %s", c.RunsDryP50, c.RunsDryP95)
		}
		for _, end := range []time.Time{c.From, c.To} {
			if d := term.DateOf(end); !a.Term.Open(d) {
				t.Errorf("the stretch from %s to %s ends on a closed day", c.From, c.To)
			}
		}
	}
}

// Clear words for what cannot be worked out, at the field that would change it.
func TestWhatASeasonCannotBe(t *testing.T) {
	warn, note := finding.Warn, finding.Note
	cases := []struct {
		name  string
		edits []edit
		level finding.Level
		code  string
		field string
		says  []string
		none  bool // no tub has a season then
	}{
		{"no term", nil, note, "season-no-term", "garden", []string{"no season"}, true},
		{"no open day", []edit{{"school.closed[0].from", "2027-01-01"}, {"school.closed[0].to", "2027-12-31"}, {"school.meal.day", ""}}, warn, "season-no-open-day", "school.open_days", []string{"No day"}, true},
		{"a meal outside the terms", []edit{{"school.meal.day", "2027-04-12"}}, warn, "meal-closed", "school.meal.day", []string{"outside every term"}, false},
		{"a meal before it is sown", []edit{{"tubs[0].sow", "2027-03-24"}}, warn, "meal-before-sowing", "school.meal.day", []string{"Heron", "Wed 24 Mar"}, false},
		{"moved before it is sown", []edit{{"tubs[0].sow", "2027-02-24"}, {"tubs[0].transplant", "2027-02-20"}}, warn, "sow-after-transplant", "tubs[0].sow", []string{"Heron"}, false},
		{"a lamp that is never on", []edit{{"lamps[0].lit[1]", "06:00"}}, warn, "season-dark", "lamps", []string{"no light", "nothing grows"}, true},
		{"no lamp", []edit{{"lamps[0].flux", ""}}, note, "season-dark", "tubs[0]", []string{"without a lamp"}, true},
		{"too few cells", []edit{{"tubs[0].nursery.cells", "4"}}, warn, "nursery-cells", "tubs[0].nursery.cells", []string{"Heron", "the nursery has 4"}, false},
		{"a dim nursery", []edit{{"tubs[0].nursery.ppfd", "40 µmol/m²/s"}}, note, "nursery-dark", "tubs[0].nursery.ppfd", []string{"Heron", "long and thin"}, false},
		{"a nursery on a radiator", []edit{{"tubs[0].nursery.temperature", "28 °C"}}, warn, "nursery-poor", "tubs[0].nursery.temperature", []string{"Heron"}, false},
		{"full air", []edit{{"place.humidity", "100 %"}}, warn, "humidity-full", "place.humidity", []string{"100 %"}, false},
		{"a frozen room", []edit{{"place.air_temperature_closed", "4 °C"}}, warn, "air-outside", "place.air_temperature_closed", []string{"not valid there"}, false},
		{"a furnace", []edit{{"place.air_temperature", "42 °C"}}, warn, "air-outside", "place.air_temperature", []string{"not valid there"}, false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			p := parsed(t, c.name, text(t, fernhollowPlan, c.edits...))
			switch c.name {
			case "no term":
				p.School.Terms = nil
			case "no lamp":
				p.Lamps = nil
			}
			a := seasonOf(t, p, nil)
			f, ok := found(a, c.code)
			if !ok || f.Level != c.level || f.Field != c.field {
				t.Fatalf("%+v among %v", f, codes(a))
			}
			for _, want := range c.says {
				if !strings.Contains(f.Text, want) {
					t.Errorf("%q does not say %q", f.Text, want)
				}
			}
			if f.Hint == "" || !garden.OfSeason(f) {
				t.Errorf("%+v has no hint, or is not of the season", f)
			}
			if c.none && a.Tubs[0].Season != nil {
				t.Error("a season all the same")
			}
		})
	}
}

func TestAZoneThatIsNotKnown(t *testing.T) {
	p := parsed(t, "zone", text(t, fernhollowPlan))
	a := seasonOf(t, p, func(in *garden.Inputs) { in.Zone = time.UTC })
	if f, ok := found(a, "zone-unknown"); !ok || f.Field != "place.time_zone" || !strings.Contains(f.Text, "Europe/Dublin") {
		t.Errorf("%+v, %v", f, codes(a))
	}
	a = seasonOf(t, p, func(in *garden.Inputs) { in.Plan.Place.TimeZone = "" })
	if _, ok := found(a, "zone-missing"); !ok {
		t.Errorf("no word about a zone that is not given: %v", codes(a))
	}
}

// A season's bytes do not rest on how many members are followed at once.
func TestASeasonIsTheSameForAnyNumberOfWorkers(t *testing.T) {
	p := parsed(t, "fernhollow", text(t, fernhollowPlan))
	var want []byte
	for _, workers := range []int{1, 2, 8} {
		got := document(t, seasonOf(t, p, func(in *garden.Inputs) { in.Workers = workers }))
		if want == nil {
			want = got
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%d workers give other bytes", workers)
		}
	}
	if other := document(t, seasonOf(t, p, func(in *garden.Inputs) { in.Seed = 2 })); bytes.Equal(other, want) {
		t.Error("another seed changes nothing")
	}
}

func TestASeasonEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	p := parsed(t, "fernhollow", text(t, fernhollowPlan))
	cancel()
	if a, err := garden.Assess(ctx, garden.Inputs{Plan: p, Effort: lid.Quick, Stages: garden.StageSeason}); err == nil {
		t.Errorf("no error, %v", a.Garden)
	}
}

// Fewer members are asked for by a page that waits; the answer is near.
func TestFewerMembersAnswerNearlyTheSame(t *testing.T) {
	p := parsed(t, "fernhollow", text(t, fernhollowPlan, edit{"tubs[0].transplant", "2027-01-25"}, edit{"tubs[1].transplant", "2027-01-25"}))
	few, many := seasonOf(t, p, nil), seasonOf(t, p, func(in *garden.Inputs) { in.Members = 600 })
	for i := range few.Tubs {
		a, b := few.Tubs[i].Season, many.Tubs[i].Season
		day := len(a.Days) / 2
		// The median of 60 runs has a standard error of about 1.25 sd/√60, and
		// nine in ten lie within 3.3 sd: four standard errors are a fifth of that.
		if band := b.Days[day].MassG; math.Abs(a.Days[day].MassG.P50-band.P50) > 0.2*(band.P95-band.P5) {
			t.Errorf("%s: %v g, and %v of many runs", few.Tubs[i].Name, a.Days[day].MassG, band)
		}
	}
}

func TestTheNumbersOfASeasonAreInTheBook(t *testing.T) {
	for _, name := range seasonPlans() {
		a := seasonOf(t, parsed(t, name, text(t, name)), nil)
		keys := map[string]bool{}
		for _, n := range a.Numbers {
			keys[n.Key] = true
			walked(t, n)
		}
		for _, tub := range a.Tubs {
			for _, what := range []string{"ready_chance", "ready_chance_runs", "expected", "thirst", "hour.growth.gain", "hour.leaves.breathed"} {
				if key := tub.Season.Key + "." + what; !keys[key] {
					t.Errorf("%s has no %s", name, key)
				}
			}
			for _, c := range tub.Season.Closed {
				if !keys[c.Key] {
					t.Errorf("%s has no %s", name, c.Key)
				}
			}
			if n := number(t, a, tub.Season.Key+".ready_chance_runs"); n.Value != math.Round(tub.Season.ReadyChance*fewRuns) {
				t.Errorf("%v runs are ready, and the chance is %v of %d", n.Value, tub.Season.ReadyChance, fewRuns)
			}
		}
	}
}

func TestTheAnswerComesFirst(t *testing.T) {
	a := seasonOf(t, parsed(t, "fernhollow", text(t, fernhollowPlan)), nil)
	s := a.Tubs[0].Season
	got := s.Answer(a)
	for _, want := range []string{"Sow on ", "the meal on Wed 24 Mar", fmt.Sprintf("of %d runs", fewRuns), "needs 396"} {
		if !strings.Contains(strings.ReplaceAll(got, "\u00a0", " "), want) {
			t.Errorf("%q does not say %q", got, want)
		}
	}
	a = seasonOf(t, planted(t), nil, "Heron 2027-01-25 09:00 done=planted", "Heron 2027-01-27 09:00 depth=164")
	if got := a.Tubs[0].Season.Answer(a); !strings.Contains(got, "in the tub since Mon 25 Jan") || strings.Contains(got, "Sow on") {
		t.Errorf("after the move: %q", got)
	}
	empty := garden.Season{}
	if got := empty.Answer(a); !strings.Contains(got, "No day was found") {
		t.Error(got)
	}
	if garden.Runs(0.812, 1000) != "812 of 1,000 runs" {
		t.Error(garden.Runs(0.812, 1000))
	}
}
