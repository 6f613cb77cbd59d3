package garden_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"
	"time"

	"rootbell/internal/garden"
)

// How fast the oxygen falls is told from where it stands: what it is under
// already takes no hours.
func TestHowFastTheOxygenFalls(t *testing.T) {
	for _, c := range []struct {
		to4, to3, to2 float64
		want          string
	}{
		{3.2, 5.1, 8.4, "the oxygen falls to 4 mg/L in about 3 h, to 3 mg/L in about 5 h, to 2 mg/L in about 8 h."},
		{0.4, 1.6, 96, "the oxygen falls to 4 mg/L in less than an hour, to 3 mg/L in about 2 h, to 2 mg/L in about 4 days."},
		{0, 0.6, 2, "the oxygen is under 4 mg/L already before, and falls to 3 mg/L in less than an hour, to 2 mg/L in about 2 h."},
		{0, 0, 0, "the oxygen is under 2 mg/L already before."},
	} {
		if got := (garden.LeaveCase{To4: c.to4, To3: c.to3, To2: c.to2}).Breath(); got != c.want {
			t.Errorf("%v h, %v h, %v h: %q", c.to4, c.to3, c.to2, got)
		}
	}
}

// What is said of a stretch: both thirsts, both moments, and what to do. Where
// only a thirsty class runs low nothing is said to have failed.
func TestWhatIsSaidOfAStretch(t *testing.T) {
	half, first := time.Date(2027, 3, 28, 17, 50, 0, 0, time.UTC), time.Date(2027, 3, 25, 13, 47, 0, 0, time.UTC)
	fill := []garden.LeaveDo{{Kind: "fill", Do: "Fill up to 16.0 cm.", Risk: 0.01}}
	for _, c := range []struct {
		name      string
		of        garden.LeaveIt
		says, not []string
	}{
		{
			"dry",
			garden.LeaveIt{Risk: 0.6, RiskHigh: 1, RunsDryP50: &half, RunsDryP95: &first, Options: fill},
			[]string{"600 of 1,000 runs fell below the lowest line; where the class's plants drink much, more than 99 in 100.", "dry on Thu 25 Mar, 13:47, half of them by Sun 28 Mar, 17:50.", "To do: Fill up to 16.0 cm."},
			nil,
		},
		{
			"thirsty only",
			garden.LeaveIt{Risk: 0.03, RiskHigh: 0.2, Options: fill, Take: -1},
			[]string{"30 of 1,000 runs", "about 1 in 5", "filling up to the line is enough"},
			[]string{"Nothing that was tried", "To do"},
		},
		{"beyond help", garden.LeaveIt{Risk: 0.6, RiskHigh: 0.6, Options: fill, Take: -1}, []string{"Nothing that was tried brings it under 1 in 20."}, []string{"drink much"}},
		{"quiet", garden.LeaveIt{Take: -1}, []string{"Nothing needs doing but filling up to the line."}, []string{"drink much", "runs dry"}},
	} {
		got := c.of.Answer(1000)
		for _, want := range c.says {
			if !strings.Contains(got, want) {
				t.Errorf("%s: %q lacks %q", c.name, got, want)
			}
		}
		for _, not := range c.not {
			if strings.Contains(got, not) {
				t.Errorf("%s: %q says %q", c.name, got, not)
			}
		}
	}
}

// A plan without a meal has none among its tasks, and no finding speaks of one.
func TestAPlanWithoutAMeal(t *testing.T) {
	a := seasonOf(t, parsed(t, "no meal", text(t, fernhollowPlan, edit{"school.meal.day", ""}, edit{"school.meal.eaters", ""}, edit{"school.meal.portion", ""}, edit{"school.meal.chance", ""})), nil)
	for _, tub := range a.Tubs {
		if !slices.ContainsFunc(tub.Season.Tasks, func(k garden.SeasonTask) bool { return k.Kind == "harvest" }) {
			t.Errorf("%s has no harvest", tub.Name)
		}
		for _, k := range tub.Season.Tasks {
			if k.Kind == "meal" {
				t.Errorf("%s: %+v", tub.Name, k)
			}
		}
	}
	for _, f := range a.Findings {
		if garden.OfSeason(f) && strings.Contains(f.Text, "the meal") {
			t.Errorf("%+v", f)
		}
	}
}

// The line that comes down once roots hang is a task of the season.
func TestTheLoweredLineIsATask(t *testing.T) {
	a := seasonOf(t, parsed(t, "lowered", text(t, fernhollowPlan)), nil)
	for _, tub := range a.Tubs {
		i := slices.IndexFunc(tub.Season.Tasks, func(k garden.SeasonTask) bool { return k.Kind == "lower" })
		if i < 0 {
			t.Errorf("%s has none: %+v", tub.Name, tub.Season.Tasks)
			continue
		}
		for _, d := range tub.Season.Days {
			if lower := d.LineMM < tub.Season.Days[0].LineMM; lower != (d.Date >= tub.Season.Tasks[i].On) && d.Open {
				t.Errorf("%s: line %v on %s, lowered on %s", tub.Name, d.LineMM, d.Date, tub.Season.Tasks[i].On)
			}
		}
	}
}

func TestADateThatIsMissedIsSaid(t *testing.T) {
	a := seasonOf(t, parsed(t, "missed", text(t, fernhollowPlan, edit{"school.meal.eaters", "300"})), nil)
	for _, tub := range a.Tubs {
		s := tub.Season
		if s.ReadyChance >= s.WantedChance || !strings.Contains(s.Answer(a), "That is not as sure as you want it.") || len(s.Moves) == 0 {
			t.Errorf("%s: %q, %v", tub.Name, s.Answer(a), s.Moves)
		}
	}
}

// A list of open days without a day in it is not taken in silence.
func TestNoOpenDayIsNamed(t *testing.T) {
	named := text(t, fernhollowPlan)
	a := seasonOf(t, parsed(t, "open days", bytes.Replace(named, []byte("[mon, tue, wed, thu, fri]"), []byte("[]"), 1)), nil)
	if f, ok := found(a, "open-days-none"); !ok || f.Field != "school.open_days" || !garden.OfSeason(f) {
		t.Errorf("%+v, %v", f, codes(a))
	}
	a = seasonOf(t, parsed(t, "open days", bytes.Replace(named, []byte("  open_days: [mon, tue, wed, thu, fri]\n"), nil, 1)), nil)
	if _, ok := found(a, "open-days-none"); ok {
		t.Error("what is left out has its default")
	}
}

// A pump that brings too little is told by the day from which it does, and one
// that brings enough is not.
func TestTooLittleAirForTheSeason(t *testing.T) {
	a := seasonOf(t, parsed(t, "air", text(t, fernhollowPlan, edit{"tubs[0].plants", "8"}, edit{"tubs[0].air.flow", "0.15 L/min"})), nil)
	f, ok := found(a, "season-oxygen")
	if !ok || f.Field != "tubs[0]" || !strings.Contains(f.Text, "under 4.0 mg/L") {
		t.Fatalf("%+v among %v", f, codes(a))
	}
	low := slices.IndexFunc(a.Tubs[0].Season.Days, func(d garden.SeasonDay) bool { return d.DOMgL < 4 })
	if low < 0 || !strings.Contains(f.Text, "from "+shortDay(t, a.Tubs[0].Season.Days[low].Date)+" on") {
		t.Errorf("first low on day %d: %q", low, f.Text)
	}
	if f, ok := found(seasonOf(t, parsed(t, "air", text(t, fernhollowPlan)), nil), "season-oxygen"); ok {
		t.Errorf("%+v", f)
	}
}

func shortDay(t *testing.T, day string) string {
	t.Helper()
	on, err := time.Parse(time.DateOnly, day)
	if err != nil {
		t.Fatal(err)
	}
	return on.Format("Mon 2 Jan")
}

// Light that was read lights the season where the plan has no lamp: as long as a
// lamp would, or the hours of a window round noon. Nobody is told to switch it.
func TestReadLightWithoutALamp(t *testing.T) {
	for _, c := range []struct {
		lux, from, to string // lit between, by the clock of the cut days
		dli           float64
	}{
		{"lux: [{value: 10000 lx}]\n", "06:00", "22:00", 10000 * 0.015 * 16 * 3600e-6},
		{"lux: [{value: 20000 lx, source: daylight}]\n", "08:00", "16:00", 20000.0 / 54 * 8 * 3600e-6},
	} {
		p := parsed(t, "read light", append(text(t, fernhollowPlan, edit{"tubs[0].plants", "8"}), c.lux...))
		lamps := p.Lamps
		p.Lamps = nil
		a := seasonOf(t, p, nil)
		if f, ok := found(a, "season-dark"); ok || a.Tubs[0].Season == nil {
			t.Fatalf("%s: %+v", c.lux, f)
		}
		if got := a.Tubs[0].Light.DLI; got < 0.99*c.dli || got > 1.01*c.dli {
			t.Errorf("%s: %v mol/m²/d, by hand %v", c.lux, got, c.dli)
		}
		// A lamp that is lit in those hours, under the same reading, is the same.
		p = parsed(t, "read light", append(text(t, fernhollowPlan, edit{"tubs[0].plants", "8"}, edit{"lamps[0].lit[0]", c.from}, edit{"lamps[0].lit[1]", c.to}), c.lux...))
		if len(lamps) == 0 || len(p.Lamps) == 0 {
			t.Fatal("no lamp to compare with")
		}
		b := seasonOf(t, p, nil)
		if got, want := a.Tubs[0].Season.ExpectedG, b.Tubs[0].Season.ExpectedG; got != want {
			t.Errorf("%s: %+v, with a lamp from %s to %s %+v", c.lux, got, c.from, c.to, want)
		}
		for _, tub := range a.Tubs {
			for _, m := range tub.Season.Moves {
				if strings.Contains(m, "Light the lamp") {
					t.Errorf("%q without a lamp", m)
				}
			}
			for _, s := range tub.Season.Closed {
				if slices.ContainsFunc(s.Options, func(o garden.LeaveDo) bool { return strings.Contains(o.Kind, "lamp") }) {
					t.Errorf("%+v without a lamp", s.Options)
				}
			}
		}
	}
}
