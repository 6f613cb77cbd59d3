package seasonal_test

import (
	"context"
	"fmt"
	"slices"
	"testing"
	"time"

	"rootbell/examples"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
	"rootbell/internal/science/lid"
)

var sizes = []scene.Size{scene.A4, scene.Letter}

// example is an example's assessment with a season that is made up here: what
// the papers say of it is tested, not how it is worked out.
func example(t *testing.T, name string, units garden.System) *garden.Assessment {
	t.Helper()
	key := fmt.Sprint(name, units)
	if worked[key] == nil {
		worked[key] = work(t, name, units)
	}
	out := *worked[key]
	out.Tubs = slices.Clone(out.Tubs)
	for i := range out.Tubs {
		zone, err := time.LoadLocation(out.Plan.Place.TimeZone)
		if err != nil {
			t.Fatal(err)
		}
		out.Tubs[i].Season = madeUp(&out, i, zone)
	}
	return &out
}

// worked keeps the assessments, which are the same each time.
var worked = map[string]*garden.Assessment{}

func work(t *testing.T, name string, units garden.System) *garden.Assessment {
	t.Helper()
	text, err := examples.Plans.ReadFile(name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	word := map[garden.System]string{garden.Metric: "metric", garden.US: "us"}[units]
	if text, err = plan.Edit(text, "units", word); err != nil {
		t.Fatal(err)
	}
	p, problems := plan.Parse(name, text)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	zone, err := time.LoadLocation(p.Place.TimeZone)
	if err != nil {
		t.Fatal(err)
	}
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Zone: zone, Effort: lid.Quick, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// madeUp is a season of a tub, with a day later for each further tub.
func madeUp(a *garden.Assessment, tub int, zone *time.Location) *garden.Season {
	open := func(d string, more int) term.Date {
		out, err := term.ParseDate(d)
		if err != nil {
			panic(err)
		}
		out, _ = a.Term.OpenFrom(out.Add(more))
		return out
	}
	sow, thin, move, lower, up := open("2027-01-11", tub), open("2027-01-20", tub), open("2027-01-25", tub), open("2027-02-03", tub), open("2027-02-08", tub)
	water, pick := open("2027-02-24", tub), open("2027-03-15", tub)
	meal := term.Date(a.Plan.School.Meal.Day)
	s := &garden.Season{
		SowOn: sow.String(), SowFrom: sow.String(), SowLatest: open("2027-01-18", tub).String(), TransplantOn: move.String(),
		HarvestFrom: pick.String(), HarvestTo: meal.String(), ReadyChance: 0.93, WantedChance: 0.8, Seeds: 24, Runs: 1000,
	}
	for _, c := range a.Tubs[tub].Crops {
		s.Ready = append(s.Ready, garden.CropReady{
			Crop: c.Name, Plants: c.Plants, SowOn: sow.String(), Transplant: move.String(), UpOn: sow.Add(4).String(), ThinOn: thin.String(),
			Seeds: 2*c.Plants + 3, Cells: c.Plants + 1, CoverMM: 2,
		})
	}
	s.Tasks = append(
		s.Tasks, []garden.SeasonTask{
			{Kind: "order", On: "2027-01-11", Do: "Order seed and cubes, so that they are there by Mon 18 Jan."},
			{Kind: "sow", On: sow.String(), Do: "Sow 19 seeds of leaf lettuce in 9 cells."},
			{Kind: "thin", On: thin.String(), Do: "Leave the strongest seedling in each cell; cut the others.", Why: "Two in a cell shade each other."},
			{Kind: "transplant", On: move.String(), Do: "Move the seedlings into the tub."},
			{Kind: "lower", On: lower.String(), Do: "Lower the line once roots hang in the water.", Why: "Roots want air too."},
			{Kind: "lamp", On: up.String(), Do: "Raise the lamp to 32 cm over the lid."},
			{Kind: "change-out", On: water.String(), Do: "Change the water."},
			{Kind: "harvest", On: pick.String(), Do: "Pick the largest plants."},
			{Kind: "meal", On: meal.String(), Do: "The meal: harvest in the morning."},
		}...)
	for d := move; !d.After(meal); d = d.Add(1) {
		s.Days = append(s.Days, garden.SeasonDay{Date: d.String(), Open: a.Term.Open(d), LevelMM: garden.Range{P50: 130}, Litres: 0.9})
	}
	for _, x := range a.Term.Stretches(term.Span{From: move, To: meal}, zone) {
		s.Closed = append(s.Closed, leaveIt(x, tub, a.Plan.Tubs[tub].Method == "still"))
	}
	return s
}

func leaveIt(x term.Stretch, tub int, still bool) garden.LeaveIt {
	l := garden.LeaveIt{From: x.Since, To: x.Until, Hours: x.Hours(), Why: x.Why, Risk: 0.002, RiskHigh: 0.004, Take: -1}
	l.PowerCut = &garden.LeaveCase{Hours: 12, To4: 3.2, To3: 5.1, To2: 8.4, Says: "Lamp and pump stop. For 12 hours the roots live on what oxygen is in the water."}
	l.PumpFailure = &garden.LeaveCase{Hours: x.Hours(), To4: 3.2, To3: 5.1, To2: 8.4, Says: "The water level falls as before; the roots run out of oxygen."}
	if still {
		l.PowerCut, l.PumpFailure = nil, nil
	}
	if x.Days() < 5 {
		return l
	}
	l.Risk, l.RiskHigh = 0.42, 0.71
	half, first := x.Since.Add(200*time.Hour), x.Since.Add(150*time.Hour)
	l.RunsDryP50, l.RunsDryP95 = &half, &first
	from, to := x.From.Add(3).At(9*60, x.Since.Location()), x.From.Add(5).At(17*60, x.Since.Location())
	l.Options = []garden.LeaveDo{
		{Kind: "fill", Do: "Fill up to 14.0 cm on the last day.", Risk: 0.22, LineMM: 140, PourL: 3.1},
		{Kind: "fill+lamp", Do: "Fill up to 14.0 cm and set the lamp to 8 hours a day.", Risk: 0.04, LineMM: 140, PourL: 3.1, Hours: 8, Timer: "06:00 to 14:00"},
		{Kind: "fill+harvest", Do: "Fill up to 14.0 cm and harvest 3 plants before.", Risk: 0.02, LineMM: 140, PourL: 3.1, Plants: 3},
		{Kind: "visit", Do: "One visit pours in 6 L of plain water.", Risk: 0.004, Litres: 6, VisitA: &from, VisitB: &to},
	}
	l.Take = 1
	if tub == 1 {
		l.Take = 3
	}
	return l
}
