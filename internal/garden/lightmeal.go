package garden

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"rootbell/internal/base/ode"
	"rootbell/internal/base/plane"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/school/term"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/lamp"
)

// growDays are the days that a tub's plants have, as its light sees them: the
// middle of a forecast, in which every day goes by the clock.
type growDays struct {
	From, To            term.Date // the move into the tub, and the meal or the term's end
	Open                string    // of each day: o for open, c for closed
	ArriveMin, LeaveMin int
	OnMin, OffMin       int // of the lamp; Off is past midnight where it is over 1440
	Attended, Alone     crop.Air
}

// growDays are known where a meal or a term says until when.
func (t *tubState) growDays(light tubLight) (d growDays, ok bool) {
	school := t.plan.School
	c := calendar(school)
	if !c.Known() {
		return d, false
	}
	terms := c.Terms()
	d.To = t.due()
	from := terms[0].From
	for _, s := range terms {
		if !s.From.After(d.To) {
			from = s.From
		}
	}
	if d.From, ok = t.movedIn(c, from); !ok || !d.From.Before(d.To) || d.To.Since(d.From) > yearDays {
		return d, false
	}
	var days strings.Builder
	for day := d.From; day.Before(d.To); day = day.Add(1) {
		days.WriteString(map[bool]string{true: "o", false: "c"}[c.Open(day)])
	}
	d.Open = days.String()
	d.ArriveMin, d.LeaveMin = int(school.Arrive.Or(term.ArriveMin)), int(school.Leave.Or(term.LeaveMin))
	d.OnMin, d.OffMin = t.litFrom(light.hours)
	d.Attended, d.Alone = t.roomAir()
	return d, d.LeaveMin >= d.ArriveMin
}

// due is the day of the meal, else the last of the first term.
func (t *tubState) due() term.Date {
	day := term.Date(t.plan.School.Meal.Day)
	if terms := calendar(t.plan.School).Terms(); !day.Set() && len(terms) > 0 {
		return terms[0].To
	}
	return day
}

// movedIn is the day on which the plants move into the tub: as the plan says,
// else so many days after the sowing as its slowest crop stands in the nursery.
// Where the plan does not say when that is, it is the term's first open day.
func (t *tubState) movedIn(c *term.Calendar, termFrom term.Date) (term.Date, bool) {
	if day := term.Date(t.typed.Transplant); day.Set() {
		return day, true
	}
	sown := term.Date(t.typed.Sow)
	if !sown.Set() {
		first, open := c.OpenFrom(termFrom)
		if !open {
			return first, false
		}
		sown = first
	}
	nursery := 0.0
	for _, k := range t.kinds() {
		nursery = max(nursery, k.NurseryDays())
	}
	return c.OpenFrom(sown.Add(int(math.Ceil(nursery))))
}

// kinds are the tub's crops as they grow.
func (t *tubState) kinds() []crop.Crop {
	var out []crop.Crop
	for _, g := range t.growth.each {
		c := crop.Named(g.Name)
		out = append(out, c)
	}
	return out
}

// litFrom is when the light goes on and off, in minutes after midnight: that of
// the lamp that is lit longest; by a window the middle of the day.
func (t *tubState) litFrom(hours float64) (on, off int) {
	const morning, noon = 6 * 60, 12 * 60
	minutes := int(math.Round(60 * hours))
	if len(t.plan.Lamps) == 0 && hours <= lamp.WindowHours() {
		return noon - minutes/2, noon - minutes/2 + minutes
	}
	for _, l := range t.plan.Lamps {
		if l.Lit[0].Given && l.Lit[1].Given && hoursOf(l) == hours {
			return int(l.Lit[0].Value), int(l.Lit[0].Value) + minutes
		}
	}
	return morning, morning + minutes
}

// roomAir is the air in attended hours and when nobody is there, without light.
func (t *tubState) roomAir() (attended, alone crop.Air) {
	const fallK, openPPM, closedPPM = 5, 800, 420
	at := t.plan.Place
	attended = crop.Air{TempC: float64(at.AirTemperature.Or(roomC)), CO2PPM: openPPM}
	alone = crop.Air{TempC: float64(at.AirTemperatureClosed.Or(quantity.DegC(attended.TempC - fallK))), CO2PPM: closedPPM}
	if at.CO2.Set() {
		attended.CO2PPM = 1e6 * at.CO2.Value.Base()
	}
	if at.CO2Closed.Set() {
		alone.CO2PPM = 1e6 * at.CO2Closed.Value.Base()
	}
	return attended, alone
}

// growTolerance is enough for grams on a scale.
var growTolerance = ode.Tolerance{Relative: 1e-5, Absolute: 1e-6}

// grownG is what is picked of one plant of a crop at the end of the days, fresh
// in g, under a light of so many µmol/m²/s while it is lit.
func (d growDays) grownG(c crop.Crop, source lamp.Source, ppfd, perM2 float64) float64 {
	m := c.Growth()
	pace := func(air crop.Air, lit bool) *crop.Pace {
		if lit {
			air.WattsM2 = source.Watts(ppfd)
		}
		p := m.Under(air)
		return &p
	}
	paces := [2][2]*crop.Pace{{pace(d.Alone, false), pace(d.Alone, true)}, {pace(d.Attended, false), pace(d.Attended, true)}}
	kinds := map[rune][]crop.Span{'o': d.spans(paces, true), 'c': d.spans(paces, false)}
	s := m.Start(perM2)
	for _, day := range d.Open {
		for _, span := range kinds[day] {
			s = span.Pace.GrowWithin(s, span.Seconds, growTolerance)
		}
	}
	return m.HarvestG(s, perM2)
}

// spans are the hours of a day, cut where the lamp or the room changes.
func (d growDays) spans(paces [2][2]*crop.Pace, open bool) []crop.Span {
	const day = 24 * 60
	cuts := []int{0, d.ArriveMin, d.LeaveMin, d.OnMin, min(d.OffMin, day), max(d.OffMin-day, 0), day}
	slices.Sort(cuts)
	var out []crop.Span
	for i, from := range cuts[:len(cuts)-1] {
		if cuts[i+1] == from {
			continue
		}
		attended, lit := 0, 0
		if open && from >= d.ArriveMin && from < d.LeaveMin {
			attended = 1
		}
		if from >= d.OnMin && from < d.OffMin || from < d.OffMin-day {
			lit = 1
		}
		out = append(out, crop.Span{Pace: paces[attended][lit], Seconds: 60 * float64(cuts[i+1]-from)})
	}
	return out
}

// pickG is the mass at which a plant of a crop is picked, in g.
func (t *tubState) pickG(c crop.Crop) float64 {
	if m := t.typed.HarvestMass; m.Set() {
		return 1000 * float64(m.Value)
	}
	return quantity.Gram.From(c.Mass(working.NewBook()).Base)
}

// grownAt is the crop that comes least near to its harvest mass, among so many
// plants of which this one has a light.
func (t *tubState) grownAt(d growDays, source lamp.Source, ppfd float64, plants int) (of crop.Crop, grams, pick float64) {
	least := math.Inf(1)
	for _, c := range t.kinds() {
		g, want := d.grownG(c, source, ppfd, max(t.perM2(plants), c.LeastPerM2())), t.pickG(c)
		if g/want < least {
			least, of, grams, pick = g/want, c, g, want
		}
	}
	return of, grams, pick
}

// mostByLight bounds the search for plants that the light brings on.
const mostByLight = 200

// ripening is how many plants the light brings to their harvest mass.
type ripening struct {
	plants      int
	grams, more float64 // of the plant in the darkest place among so many, and among one more
	pick        float64
}

// lampLimit is how many plants the light brings to their harvest mass by the
// meal. A light that brings none is no limit: the lamp's findings say it.
func (t *tubState) lampLimit(r *lidRegion, limits map[string]int, words map[string]string) {
	light := t.lightOf(t.index)
	if !light.known() || !(t.perM2(1) > 0) {
		return
	}
	d, ok := t.growDays(light)
	places := light.steady(r.places())
	if !ok || len(places) == 0 {
		return
	}
	slices.Sort(places)
	ripe, _ := remembered(t.in.Memory, fmt.Sprintf("ripe %v %v %v %v %s", d, light, t.growth.each, t.typed.HarvestMass, r.key), func() (ripening, error) {
		return t.ripening(d, light.source, places), nil
	})
	words[ByLamp] = "longer hours, a lower or a stronger lamp, or more days in the tub"
	if ripe.plants == 0 {
		return
	}
	limits[ByLamp] = ripe.plants
	how := fmt.Sprintf("search: the middle of the growth forecast to %s, day by day, for the plant in the darkest place: with %d plants %s, wanted %s",
		d.To.Long(), ripe.plants, t.grams(ripe.grams), t.grams(ripe.pick))
	if ripe.plants < mostByLight {
		how += fmt.Sprintf("; with %d it is %s", ripe.plants+1, t.grams(ripe.more))
	}
	t.book.Found("limit_lamp", "plants the light brings to their harvest mass", "n", quantity.Count, float64(ripe.plants), how)
}

// ripening halves its way to the most plants that all are ripe. More of them
// stand closer and reach into darker places, so each has less.
func (t *tubState) ripening(d growDays, source lamp.Source, sorted []float64) (out ripening) {
	grown := func(n int) (grams, pick float64) {
		darkest := sorted[min(len(sorted)/(2*n), len(sorted)-1)]
		_, grams, pick = t.grownAt(d, source, darkest, n)
		return grams, pick
	}
	most := mostByLight + 1
	for least := 1; least < most; {
		n := (least + most) / 2
		if grams, pick := grown(n); grams >= pick {
			out.plants, out.grams, out.pick, least = n, grams, pick, n+1
		} else {
			out.more, most = grams, n
		}
	}
	return out
}

// places are a grid of the places where a cup may stand.
func (r *lidRegion) places() []lamp.Point {
	const steps = 16
	box := r.outline.Bounds()
	var out []lamp.Point
	for i := range steps {
		for k := range steps {
			p := plane.Point{X: box.Min.X + box.Width()*(float64(i)+0.5)/steps, Y: box.Min.Y + box.Height()*(float64(k)+0.5)/steps}
			if r.allows(p) {
				out = append(out, lamp.Point{XMM: p.X, YMM: p.Y})
			}
		}
	}
	return out
}

// allows tells whether the middle of a cup may stand at a place.
func (r *lidRegion) allows(p plane.Point) bool {
	if r.outline.Distance(p) < r.margins.Edge.Base || r.wall != nil && r.wall.Distance(p) < r.margins.Wall.Base {
		return false
	}
	for _, c := range r.clear {
		if -c.Shape.Distance(p) < r.margins.Clear.Base {
			return false
		}
	}
	return true
}

// grams writes a mass of a plant.
func (t *tubState) grams(g float64) string {
	return quantity.Format(quantity.SmallMass, quantity.Gram.Base(g), t.plan.Units)
}
