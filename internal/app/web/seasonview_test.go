package web

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"rootbell/examples"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/term"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/reading"
)

// madeUp is an invented season with round numbers, so that a test can tell what
// the page makes of it: moved on 1 Feb, eaten on 24 Mar, filled each Friday.
func madeUp(p *plan.Plan) *garden.Season {
	zone, _ := time.LoadLocation(p.Place.TimeZone)
	at := func(day, hour int) time.Time { return time.Date(2027, time.February, day, hour, 30, 0, 0, zone) }
	dry := at(20, 23)
	s := &garden.Season{
		SowOn: "2027-01-12", SowFrom: "2027-01-11", SowLatest: "2027-01-18", TransplantOn: "2027-02-01", HarvestFrom: "2027-03-22", HarvestTo: "2027-03-24",
		ReadyChance: 0.88, WantedChance: 0.8, Seeds: 12, NeededG: 520, Runs: 1000, Key: "tubs.Heron.season",
		Guess: "the model's guess until three water readings are there; read the level on the next school day",
		Closed: []garden.LeaveIt{
			{From: at(5, 15), To: at(8, 8), Hours: 65, Why: "weekend", Take: -1},
			{From: at(12, 15), To: at(22, 8), Hours: 233, Why: "break", Risk: 0.229, RiskHigh: 0.61, RunsDryP95: &dry, Take: 1, Options: []garden.LeaveDo{
				{Kind: "fill", Do: "fill to 12.8 cm", Risk: 0.1}, {Kind: "lamp", Do: "lamp for 12 hours a day", Risk: 0.03},
			}, PowerCut: &garden.LeaveCase{Hours: 4, Says: "over four hours the oxygen falls to 4 mg/L after 2 hours"}},
		},
		Tasks:  []garden.SeasonTask{{Kind: "sow", On: "2027-01-12", Do: "sow 12 seeds of leaf lettuce"}, {Kind: "transplant", On: "2027-02-01", Do: "move eight seedlings into Heron", Why: "they have four leaves"}},
		Ready:  []garden.CropReady{{Crop: "leaf lettuce", Plants: 8, PickG: 65, MassG: garden.Range{P5: 50, P50: 80, P95: 110}, ReadyChance: 0.88, Seeds: 12, SowOn: "2027-01-12", Transplant: "2027-02-01"}},
		Score:  []garden.SeasonScore{{Of: "level", Count: 12, InWide: 11, InHalf: 6, MeanOff: 3, Says: "eleven of twelve lay in the band of nine in ten"}},
		Learnt: []garden.Learnt{{Of: "thirst", Says: "the class's tub drinks a tenth more than the model says"}},
		Moves:  []string{"sow two days earlier"},
	}
	from := term.Date{Year: 2027, Month: time.February, Day: 1}
	for i := range 52 {
		d := from.Add(i)
		x := float64(i)
		since := float64((i + 3) % 7)
		drop := (1 + x/12) * since
		level := 120 - drop
		open := d.Weekday() != time.Saturday && d.Weekday() != time.Sunday
		s.Days = append(s.Days, garden.SeasonDay{
			Date: d.String(), Open: open, Filled: d.Weekday() == time.Friday && i > 0,
			LevelMM: garden.Range{P5: level - 1.5 - drop/3, P25: level - 0.5 - drop/8, P50: level, P75: level + 0.5 + drop/9, P95: level + 1 + drop/4},
			Litres:  0.1 + x/40, EC: 1.5 - x/100, ECBand: garden.Range{P5: 1.4 - x/100, P25: 1.46 - x/100, P50: 1.5 - x/100, P75: 1.53 - x/100, P95: 1.6 - x/100},
			MassG: garden.Range{P5: 8 + x*x/6, P25: 10 + x*x/5.2, P50: 12 + x*x/4.6, P75: 14 + x*x/4.1, P95: 16 + x*x/3.6},
			DOMgL: 8.4 - x/60, DOBand: garden.Range{P5: 8 - x/50, P25: 8.3 - x/60, P50: 8.4 - x/60, P75: 8.5 - x/70, P95: 8.7 - x/80},
		})
	}
	for _, day := range []int{2, 3, 4} {
		s.Readings = append(s.Readings, garden.SeenMark{At: at(day, 9), Of: "level", Value: 118 - float64(day)})
	}
	return s
}

// workedOut is an example whose first tub has the made-up season.
func workedOut(t *testing.T, name string) (*opened, *garden.Assessment) {
	t.Helper()
	text, err := examples.Plans.ReadFile(name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	p, problems := plan.Parse(name, text)
	if p == nil {
		t.Fatal(problems)
	}
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	a.Tubs[0].Season = madeUp(p)
	zone, err := time.LoadLocation(p.Place.TimeZone)
	if err != nil {
		t.Fatal(err)
	}
	return &opened{ID: examplePrefix + name, Example: true, Text: text, Plan: p, Now: time.Date(2027, 1, 11, 9, 0, 0, 0, zone)}, a
}

// The first sentence says what to do next and how sure it is.
func TestTheAnswerOfASeason(t *testing.T) {
	for _, c := range []struct {
		name, today string
		change      func(*garden.Season)
		says        string
	}{
		{"before the sowing", "2027-01-11", nil, "Sow Heron on Tue 12 Jan; ready by the meal on Wed 24 Mar in about 9 in 10 cases. Between Fri 12 Feb, 15:30 and Mon 22 Feb, 08:30 its water falls below the lowest line in about 1 in 4 cases. One choice below brings that to 1 in 30."},
		{"in the nursery", "2027-01-20", nil, "Move Heron into its tub on Mon 1 Feb; ready by"},
		{"before a break that is too long", "2027-02-10", nil, "Heron may run low from Fri 12 Feb, 15:30."},
		{"after it", "2027-03-01", nil, "Harvest Heron from Mon 22 Mar; ready by the meal"},
		{"past the meal", "2027-03-25", nil, "Heron is past its harvest."},
		{"too late", "2027-02-10", func(s *garden.Season) { s.ReadyChance = 0.3 }, "Heron will hardly be ready by the meal on Wed 24 Mar: it is in about 1 in 3 cases, and 4 in 5 is wanted. What could be done stands below."},
		{"nearly", "2027-01-11", func(s *garden.Season) { s.ReadyChance = 0.7 }, "Heron may not be ready by the meal"},
		{"no day left", "2027-03-20", func(s *garden.Season) { s.TransplantOn, s.Days = "", nil }, "No day is left on which to sow Heron so that it is ready by the meal on Wed 24 Mar."},
		{"nothing to fear", "2027-02-10", func(s *garden.Season) { s.Closed[1].Risk = 0.01 }, "Harvest Heron from"},
	} {
		t.Run(c.name, func(t *testing.T) {
			o, a := workedOut(t, "fernhollow")
			a.On = c.today
			if c.change != nil {
				c.change(a.Tubs[0].Season)
			}
			w := seasonWorkOf(o, a, &form{text: o.Text, units: a.Plan.Units}, 0)
			if got := w.Bold + " " + w.Rest; !strings.HasPrefix(got, c.says) {
				t.Errorf("it answers %q, want %q", got, c.says)
			}
		})
	}
}

func TestAClosedStretchIsToldWithWhatCanBeDone(t *testing.T) {
	o, a := workedOut(t, "fernhollow")
	w := seasonWorkOf(o, a, &form{text: o.Text, units: a.Plan.Units}, 0)
	if len(w.Closed) != 1 || w.Quiet != "A short one, of 65 hours: it runs low in under 1 of 100 cases. Nothing is needed." {
		t.Fatalf("%d told, the quiet ones as %q", len(w.Closed), w.Quiet)
	}
	got := fmt.Sprintf("%+v", w.Closed[0])
	for _, want := range []string{"Fri 12 Feb to Mon 22 Feb: break", "Hours:233", "Risk:23", "High:61", "Sat 20 Feb, 23:30 in the thirstiest 1 in 20", "Do:Fill to 12.8 cm. Risk:10", "Do:Lamp for 12 hours a day. Risk:3 When: Take:true", "If the power fails Says:Over four hours"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in %s", want, got)
		}
	}
	a.Tubs[0].Season.Closed[1].Take = -1
	if w := seasonWorkOf(o, a, &form{text: o.Text, units: a.Plan.Units}, 0); !w.Closed[0].None {
		t.Error("where no choice is enough, that is not said")
	}
}

// What is written beside a chart is what is in the season, in either system:
// 1 in is 25.4 mm (exact by definition), 1 oz 28.35 g. By hand, on the second
// day 120 − 4·13/12 = 115.67 mm in the middle, 2.94 mm less in 1 of 20.
func TestASeasonsTablesInBothSystems(t *testing.T) {
	for _, c := range []struct {
		example, level, mass string
	}{
		{"fernhollow", "{Read:11.6 Middle:11.6 Band:11.3\u00a0to\u00a011.8}", "{Read: Middle:577 Band:442\u00a0to\u00a0739}"},
		{"saltbrook", "{Read:4.57 Middle:4.55 Band:4.44\u00a0to\u00a04.64}", "{Read: Middle:20.4 Band:15.6\u00a0to\u00a026.0}"},
	} {
		o, a := workedOut(t, c.example)
		w := seasonWorkOf(o, a, &form{text: o.Text, units: a.Plan.Units}, 0)
		if len(w.Charts) != 4 || len(w.Days) != 52 {
			t.Fatalf("%d charts over %d days", len(w.Charts), len(w.Days))
		}
		for i, want := range []string{c.level, c.mass} {
			if got := fmt.Sprintf("%+v", w.Days[i*(len(w.Days)-1)+1-i].Cells); !strings.Contains(got, want) {
				t.Errorf("%s, %s: %s, want %s", c.example, w.Charts[i].Name, got, want)
			}
		}
		for _, chart := range w.Charts {
			if n := len(chart.Rows); n != mostRows || chart.Rows[n-1].Day != "Wed 24 Mar" {
				t.Errorf("%s has %d rows beside it", chart.Name, n)
			}
		}
	}
}

// A band begins again at each filling, and no day is a band by itself.
func TestABandBeginsAnewAtEachFilling(t *testing.T) {
	o, a := workedOut(t, "fernhollow")
	v := &seasonOf{seasonWork: &seasonWork{}, a: a, t: &a.Tubs[0], s: a.Tubs[0].Season, zone: o.Now.Location(), units: a.Plan.Units}
	v.takeDays()
	level := v.forecasts()[0]
	for _, w := range widths {
		runs := v.bands(&level, w)
		if len(runs) != 8 {
			t.Errorf("%d runs between seven fillings", len(runs))
		}
		for _, run := range runs {
			if len(run) < 2 {
				t.Error("a run of one day, which draws nothing")
			}
		}
	}
	for i := range a.Tubs[0].Season.Days {
		a.Tubs[0].Season.Days[i].Filled = true
	}
	for _, run := range v.bands(&level, widths[0]) {
		if len(run) < 2 && len(run) > 0 && run[0].At != v.leaves(dayIn("2027-03-24")) {
			t.Error("filled each day, a band has one day")
		}
	}
}

// Of a long season the page shows nine weeks, from two before today.
func TestOfALongSeasonNineWeeksAreShown(t *testing.T) {
	for _, c := range []struct{ today, first, last string }{
		{"2027-01-11", "2027-02-01", "2027-04-04"},
		{"2027-03-01", "2027-02-15", "2027-04-18"},
		{"2027-06-01", "2027-03-30", "2027-05-31"},
	} {
		o, a := workedOut(t, "fernhollow")
		s := a.Tubs[0].Season
		for from := dayIn("2027-03-25"); len(s.Days) < 120; from = from.Add(1) {
			day := s.Days[0]
			day.Date = from.String()
			s.Days = append(s.Days, day)
		}
		s.HarvestTo, a.On = "2027-06-04", c.today
		w := seasonWorkOf(o, a, &form{text: o.Text, units: a.Plan.Units}, 0)
		if len(w.Days) != 63 || w.Days[0].Day != wordsOf(c.first) && w.Days[0].Day != wordsOf(c.first)+", today" || w.Days[62].Day != wordsOf(c.last) {
			t.Errorf("on %s: %d days from %s to %s", c.today, len(w.Days), w.Days[0].Day, w.Days[len(w.Days)-1].Day)
		}
		if !strings.HasPrefix(w.Part, "63 of 120 days are shown, from ") {
			t.Errorf("it says %q", w.Part)
		}
	}
}

// The page Today tells of a stretch that may run low, in the two weeks before
// it, and only where a season was worked out with the readings of now.
func TestTodayWarnsOfAStretchThatIsTooLong(t *testing.T) {
	o, a := workedOut(t, "fernhollow")
	s := &Server{work: newAssessments()}
	if got := s.runsLow(o); got != nil {
		t.Fatalf("told without a season: %v", got)
	}
	for _, c := range []struct{ today, says string }{
		{"2027-01-20", ""},
		{"2027-02-10", "Heron may run low while nobody comes, from Fri 12 Feb, 15:30 to Mon 22 Feb, 08:30: in about 1 in 4 cases."},
		{"2027-02-23", ""},
	} {
		o.Example, o.Today = false, plan.Date(dayIn(c.today))
		o.Now = dayIn(c.today).At(10*60, o.Now.Location())
		s.work.last.keep(seasonKey(o.Text, garden.Morning{Zone: o.Now.Location(), On: o.Today}, lid.Full), a)
		got := ""
		for _, one := range s.runsLow(o) {
			got += one.Says
		}
		if got != c.says {
			t.Errorf("on %s it says %q, want %q", c.today, got, c.says)
		}
		o.rows = []reading.Row{{ID: "new"}}
		if s.runsLow(o) != nil {
			t.Error("a reading later it is told as before")
		}
		o.rows = nil
	}
}
