package garden

import (
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/lesson"
	"rootbell/internal/school/term"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/reading"
	"rootbell/internal/science/tub"
)

// Lesson is a lesson sheet about one tub, as a teacher asks for it; ok is false
// where there is no such sheet, or the assessment was not asked for StageClass.
func (a *Assessment) Lesson(i int, c lesson.Choice) (lesson.Sheet, bool) {
	if a.Class == nil || i < 0 || i >= len(a.Class.lessons) {
		return lesson.Sheet{}, false
	}
	return lesson.Make(c, a.Class.lessons[i], working.NewBook())
}

// LessonTub is the place of the tub that sheets are about where nobody chose:
// the one with the most readings, the first of those.
func (c *Class) LessonTub() int {
	best := 0
	for i, t := range c.lessons {
		if len(t.Entries) > len(c.lessons[best].Entries) {
			best = i
		}
	}
	return best
}

// sheetSeed is the variant that the papers of a class have.
const sheetSeed = 1

// sheets are the lesson sheets that the garden and its logbook give.
func (d *desk) sheets() ([]Sheet, []*lesson.Tub) {
	c := &Class{}
	for i := range d.Tubs {
		c.lessons = append(c.lessons, d.lessonTub(i))
	}
	out := []Sheet{}
	if len(c.lessons) == 0 {
		return out, nil
	}
	first := c.LessonTub()
	for _, t := range lesson.Templates() {
		ask := lesson.Choice{Template: t.ID, Seed: sheetSeed}
		s, ok := lesson.Make(ask, c.lessons[first], d.book)
		for i := 0; i < len(c.lessons) && s.Why != ""; i++ {
			s, ok = lesson.Make(ask, c.lessons[i], d.book)
		}
		if ok && s.Why == "" {
			out = append(out, sheetOf(s))
		}
	}
	return out, c.lessons
}

func sheetOf(s lesson.Sheet) Sheet {
	out := Sheet{
		Name: "lesson-sheets.pdf", Title: s.Template.Title, Concept: s.Template.Concept,
		About: "For " + s.Band.Ages() + ". " + s.From, ID: s.Template.ID, Number: s.Template.Number, Tub: s.Tub, Band: string(s.Band), Lesson: s,
		Odd: []string{}, Touches: []string{},
	}
	for _, o := range s.Odd {
		out.Odd = append(out.Odd, o.Says())
	}
	for _, std := range s.Template.Standards() {
		out.Touches = append(out.Touches, std.Code)
	}
	return out
}

// lessonTub is a tub as lesson sheets ask about it.
func (d *desk) lessonTub(i int) *lesson.Tub {
	p, out := &d.Plan.Tubs[i], &d.Tubs[i]
	t := &lesson.Tub{Name: out.Name, System: d.Plan.Units, Zone: d.today.At.Location(), On: midnight(d.today.On), Currency: d.Plan.Currency}
	if len(out.Crops) > 0 {
		t.Crop = out.Crops[0].Name
	}
	if c, known := crop.Find(t.Crop); known {
		t.Germinate = c.Germination()
	}
	if p.Seed.Germination.Set() {
		t.Germinate = float64(p.Seed.Germination.Value)
	}
	if out.Plants != nil {
		t.Plants = out.Plants.Count
	}
	d.lessonLid(i, t)
	d.lessonShape(i, t)
	d.lessonPlan(p, t)
	t.Entries = reading.Of(d.entries, out.Name)
	return t
}

func (d *desk) lessonLid(i int, t *lesson.Tub) {
	if shape, _, ok := d.LidShape(i); ok {
		b := shape.Bounds()
		t.Lid = lesson.Plate{Long: b.Max.X - b.Min.X, Wide: b.Max.Y - b.Min.Y, Round: d.Plan.Tubs[i].Lid.Diameter.Set()}
	}
	l := d.Tubs[i].Lid
	if l == nil {
		return
	}
	t.Hole = l.HoleMM
	if chosen, ok := l.Layout(l.Chosen); ok {
		for _, h := range chosen.Holes {
			t.Holes = append(t.Holes, lesson.Hole{N: h.N, X: h.XMM, Y: h.YMM})
		}
	}
}

func (d *desk) lessonShape(i int, t *lesson.Tub) {
	p, out, s := &d.Plan.Tubs[i], &d.Tubs[i], d.states[i]
	t.Tape = s.setup.TapeErrorMM
	if !s.wet || len(out.Levels) == 0 {
		return
	}
	if p.Round == nil && len(p.Poured) == 0 {
		t.Straight, t.Top, t.Base = true, size(p.Inside.Top), size(p.Inside.Base)
	}
	t.Height, t.Fill = s.shape.HeightMM(), s.lines.Fill.Base
	t.LitresAt = func(mm float64) quantity.L { return s.shape.Volume(mm) }
	if s.solution.Symbol != "" {
		t.SolutionL = quantity.FromBase[quantity.L](s.solution.Base)
	} else {
		t.SolutionL = s.shape.Volume(t.Fill)
	}
	t.Vessel = reading.Vessel{
		Name: t.Name, FillL: s.shape.Volume(t.Fill), RimL: s.shape.Volume(t.Height), InsideHeight: quantity.MM(t.Height),
		LitresAtDepth: func(mm quantity.MM) quantity.L { return s.shape.Volume(float64(mm)) },
	}
	if low := s.lines.Lowest.Base; low > 0 && low < t.Fill {
		t.ReserveL = s.shape.Volume(t.Fill) - s.shape.Volume(low)
	}
}

// lessonPlan takes from the plan what is not the tub's own shape.
func (d *desk) lessonPlan(p *plan.Tub, t *lesson.Tub) {
	school := d.Plan.School
	t.School = [2]int{int(school.Arrive.Or(term.ArriveMin)), int(school.Leave.Or(term.LeaveMin))}
	t.Sown, t.Meal = midnight(term.Date(p.Sow)), midnight(term.Date(school.Meal.Day))
	if n := len(d.Term.Terms()); n > 0 {
		if i, ok := d.Term.Current(d.today.On); ok {
			span := d.Term.Terms()[i]
			t.TermFrom, t.TermTill = midnight(span.From), midnight(span.To)
			for _, s := range d.Term.Stretches(span, t.Zone) {
				t.Away = append(t.Away, lesson.Stretch{Words: s.Why, Hours: s.Hours()})
			}
		}
	}
	for _, l := range d.Plan.Lamps {
		if l.Lit[0].Given && l.Lit[1].Given {
			t.Lamp = &lesson.Lamp{On: int(l.Lit[0].Value), Off: int(l.Lit[1].Value), Watts: float64(l.Power.Value)}
			break
		}
	}
	for _, f := range d.Plan.Fertilisers {
		if f.Dose.MLPerL > 0 {
			t.Dose = &lesson.Dose{Name: f.Name, MLPerL: f.Dose.MLPerL}
			break
		}
	}
	if tap := d.Plan.Tap; tap.EC.Set() && !tap.Unknown {
		t.TapEC = tap.EC.Mid()
	}
	t.WantEC = d.Plan.Feed.EC.Value
	if p.Feed != nil && p.Feed.EC.Set() {
		t.WantEC = p.Feed.EC.Value
	}
	if price, ok := d.Plan.Prices["electricity"]; ok {
		t.Price = float64(price.Value)
	}
	if t.Tape == 0 {
		t.Tape = tub.TapeErrorMM()
	}
}

// midnight is a day as a moment, UTC; no day is the zero moment.
func midnight(d term.Date) time.Time {
	if !d.Set() {
		return time.Time{}
	}
	return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC)
}
