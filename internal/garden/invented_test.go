package garden

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/forecast"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/season"
	"rootbell/internal/school/term"
	"rootbell/internal/science/reading"
)

// inventor makes up the logbook of a tub: what a class would have read there, if
// its tub went like one member of the program's own forecast. What stands in
// the book is done to that member, so that it and the book tell one story.
type inventor struct {
	s      *tubSeason
	random *rand.Rand
	truth  forecast.Factors // in which this tub differs from the model
	ph     float64          // of the water; no forecast has it, so it wanders
	move   term.Date
	rows   []reading.Row // as written down
	turn   int           // which team comes next
}

// What the invented class does, beside what the plan and the calendar say.
const (
	inventedSeed = 20270111
	dipstickL    = 0.5  // marks of the stick
	jugL         = 0.1  // marks of the jug
	meterMS      = 0.01 // last figure of the EC meter
	rulerMM      = 5.0
	thermometerK = 0.5
	stripStep    = 0.5
	freshPH      = 5.8 // of new solution
	stripTooHigh = 6.6 // from which the adult brings the pH down
	phDay        = 0.04
	phLitre      = 0.03 // of what is poured in: half of it is tap water
	phWander     = 0.04
)

// lastInvented is the day of the last readings: some days before the meal.
var lastInvented = term.Date{Year: 2027, Month: time.March, Day: 19}

// inventedRows are the rows of an example's logbook, in the order in which they
// were written down.
func inventedRows(t testing.TB, p *plan.Plan, zone *time.Location) []reading.Row {
	t.Helper()
	var out []reading.Row
	for i, s := range seasonsOf(t, p, zone, nil) {
		random := rand.New(rand.NewPCG(inventedSeed, uint64(i)))
		v := &inventor{s: s, random: random, move: dayOfText(t, s.planner.out.Tubs[i].Season.TransplantOn), turn: i, ph: freshPH}
		for k := range forecast.Leafing { // nobody counts leaves there
			v.truth[k] = random.NormFloat64()
		}
		for d := v.move; !d.After(lastInvented); d = d.Add(1) {
			if v.comes(d) {
				v.visit(t, d, i)
			}
		}
		out = append(out, v.rows...)
	}
	slices.SortStableFunc(out, func(a, b reading.Row) int { return a.At.Compare(b.At) })
	return out
}

func dayOfText(t testing.TB, text string) term.Date {
	t.Helper()
	d, err := term.ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// seasonsOf are the seasons of a plan's tubs, ready to be followed.
func seasonsOf(t testing.TB, p *plan.Plan, zone *time.Location, rows []reading.Row) (all []*tubSeason) {
	t.Helper()
	ctx := context.Background()
	in := Inputs{Plan: p, Seed: 1, Zone: zone, Readings: rows, Stages: StageMix | StageSeason}
	out, err := Assess(ctx, in)
	if err != nil {
		t.Fatal(err)
	}
	planning := &planner{assessor: &assessor{ctx: ctx, in: in, plan: p, book: working.NewBook()}, ctx: ctx, out: out, zone: zone}
	planning.moment()
	planning.lastDay()
	planning.place = planning.surroundings()
	for _, one := range out.states {
		s := &tubSeason{planner: planning, t: one, field: one.field, b: planning.book.In("tubs." + Slug(one.name) + ".season"), out: &Season{}}
		if !s.tubReady() || !s.dates() {
			t.Fatalf("%s has no season: %+v", one.name, planning.findings)
		}
		all = append(all, s)
	}
	return all
}

// comes tells whether somebody reads the tub on a day: three times a week, and
// where the water moves in, is changed, or is left alone for long.
func (v *inventor) comes(d term.Date) bool {
	c := v.s.place.Calendar
	if !c.Open(d) {
		return false
	}
	return slices.Contains([]time.Weekday{time.Monday, time.Wednesday, time.Friday}, d.Weekday()) ||
		d == v.move || v.changes(d) || !c.Open(d.Add(1)) || !c.Open(d.Add(-1))
}

// changes tells whether the water is changed on a day, as the forecast has it.
func (v *inventor) changes(d term.Date) bool {
	c := v.course(v.s.end)
	f, err := season.Follow(context.Background(), c, v.effort())
	return err == nil && slices.Contains(f.Changes, d) && d != lastInvented
}

func (v *inventor) effort() season.Effort {
	return season.Effort{Members: 1, Seed: 1, Known: []forecast.Factors{v.truth}}
}

// course is the tub with what was done so far and nothing else.
func (v *inventor) course(to term.Date) season.Course {
	c := v.s.course(written{entries: reading.Of(reading.Standing(v.rows), v.s.t.name), moved: v.move}, v.move, to)
	c.CareFrom, c.Readings = math.Inf(1), nil
	return c
}

// stands is how the tub truly is at a moment.
func (v *inventor) stands(t testing.TB, at time.Time) (mm, ec, heightMM float64) {
	t.Helper()
	c := v.course(term.DateOf(at))
	hour := c.Clock().Hour(at)
	for _, of := range []forecast.Quantity{forecast.Level, forecast.Strength, forecast.Height} {
		c.Readings = append(c.Readings, forecast.Reading{AtHour: hour, Of: of, Stand: v.s.tallest(), SD: 1})
	}
	f, err := season.Follow(context.Background(), c, v.effort())
	if err != nil || len(f.Expected) != len(c.Readings) {
		t.Fatalf("%s on %s: %v, %d of the readings", v.s.t.name, at, err, len(f.Expected))
	}
	var is [3]float64
	for _, x := range f.Expected {
		is[x.Reading] = x.Band.P50
	}
	return is[0], is[1], is[2]
}

// noisy is a figure as an instrument shows it: off by its error, and rounded to
// its last mark.
func (v *inventor) noisy(is, sd, step float64) float64 {
	return quantity.Round(math.Round(max(0, is+sd*v.random.NormFloat64())/step)*step, 3)
}

// visit is one reading and what is done after it.
func (v *inventor) visit(t testing.TB, d term.Date, place int) {
	t.Helper()
	at := d.At(8*60+40+10*place+v.random.IntN(8), v.s.zone)
	mm, ec, height := v.stands(t, at)
	levelSD := float64(reading.LevelErrorMM()) / nineteenInTwenty
	row := reading.Row{ID: "invented-" + v.s.t.name + "-" + d.String(), Tub: v.s.t.name, At: at, By: v.team()}
	row.Level.Litres = figureAs[quantity.L](v.noisy(float64(v.s.t.shape.Volume(v.noisy(mm, levelSD, 0.1))), 0, dipstickL))
	row.Water = figureAs[quantity.DegC](v.noisy(float64(v.s.place.Open.WaterC)-1.5, 0.4, thermometerK))
	if d.Weekday() == time.Wednesday {
		row.Height = figureAs[quantity.MM](v.noisy(height, forecast.HeightSDMM(), rulerMM))
		row.Roots.Colour = reading.White
	} else {
		v.chemistry(&row, d, ec)
	}
	v.deeds(&row, d, mm)
	v.slip(row, d)
}

// chemistry reads the EC and the pH.
func (v *inventor) chemistry(row *reading.Row, d term.Date, ec float64) {
	e := reading.EC{With: reading.Meter, Scale: reading.MilliSiemens, Calibrated: time.Date(d.Year, d.Month, 1, 0, 0, 0, 0, time.UTC)}
	e.Read = intervalAs[quantity.MSPerCM](ec, ec)
	sure, _ := e.Sure()
	shown := v.noisy(ec, float64(sure.High-sure.Low)/2/nineteenInTwenty, meterMS)
	e.Read = intervalAs[quantity.MSPerCM](shown, shown)
	row.EC = e
	low := math.Floor(v.ph/stripStep) * stripStep
	row.PH = reading.PH{Read: intervalAs[quantity.PH](low, low+stripStep), With: reading.Strip, Step: stripStep}
}

// deeds are what the class does then: the water is changed when it is due,
// filled up to the line before closed days and where it has fallen far.
func (v *inventor) deeds(row *reading.Row, d term.Date, mm float64) {
	c := v.s.place.Calendar
	line := v.course(d).Line(d)
	missing := v.s.bed.Tub.LitresAt(line) - v.s.bed.Tub.LitresAt(mm)
	read, _ := v.s.levelRead(reading.Entry{Row: *row}, line)
	poured := 0.0
	switch {
	case d == v.move:
		row.Done, row.Note = []reading.Deed{reading.Planted}, "Filled up to the line before."
	case d == lastInvented: // just read: what to do is asked of the program
	case v.changes(d):
		row.Done = []reading.Deed{reading.ChangedOut}
		v.ph = freshPH
	case !c.Open(d.Add(1)) && line-read >= rulerMM:
		poured = v.noisy(missing, jugL, jugL)
		row.Level = reading.Level{Filled: figureAs[quantity.L](poured)}
	case line-read >= v.s.bed.Care.TopUpDropMM:
		poured = v.noisy(v.s.bed.Tub.LitresAt(line)-v.s.bed.Tub.LitresAt(read), 0, dipstickL)
		row.Added.Litres = figureAs[quantity.L](poured)
	}
	if poured > 0 {
		row.Done = []reading.Deed{reading.ToppedUp}
		row.Added.EC = figureAs[quantity.MSPerCM](v.noisy(v.s.halfEC(), 0, meterMS))
	}
	if v.ph >= stripTooHigh && row.PH.Read.Set() {
		row.Done, row.Note = append(row.Done, reading.Corrected), "An adult poured in the acid."
		v.ph = 5.9
	}
	next, _ := c.Next(d)
	v.ph += phDay*float64(next.Since(d)) + phLitre*poured + phWander*v.random.NormFloat64()
}

// slip writes a row down; two of all are not as they should be.
func (v *inventor) slip(row reading.Row, d term.Date) {
	switch {
	case v.s.t.name == "Otter" && d == term.Date{Year: 2027, Month: time.March, Day: 1}:
		right := row.Correction(row.ID + "-b")
		right.Note = "The point was forgotten."
		row.EC.Read = intervalAs[quantity.MSPerCM](quantity.Round(100*float64(row.EC.Read.Low), 0), quantity.Round(100*float64(row.EC.Read.Low), 0))
		v.rows = append(v.rows, row, right)
		return
	case v.s.t.name == "Heron" && d == term.Date{Year: 2027, Month: time.March, Day: 12}:
		row.PH.Read = intervalAs[quantity.PH](8, 8.5)
		row.Doubtful, row.Seen = []reading.Field{reading.FieldPH}, "The strip had lain in the wet."
	}
	v.rows = append(v.rows, row)
}

func (v *inventor) team() string {
	teams := v.s.plan.School.Teams
	v.turn++
	return teams[(v.turn-1)%len(teams)]
}

func figureAs[Q quantity.Quantity](v float64) quantity.Typed[Q] {
	return quantity.Typed[Q]{Value: Q(v), Text: strconv.FormatFloat(v, 'f', -1, 64)}
}

func intervalAs[Q quantity.Quantity](low, high float64) quantity.Interval[Q] {
	text := strconv.FormatFloat(low, 'f', -1, 64)
	if high != low {
		text += " to " + strconv.FormatFloat(high, 'f', -1, 64)
	}
	return quantity.Interval[Q]{Low: Q(low), High: Q(high), Text: text}
}
