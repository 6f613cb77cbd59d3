package garden

import (
	"context"
	"slices"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/season"
	"rootbell/internal/school/term"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/reading"
	"rootbell/internal/science/water"
)

// planner works out the season of every tub.
type planner struct {
	*assessor
	ctx     context.Context
	out     *Assessment
	zone    *time.Location
	now     time.Time // the moment it is asked for
	entries []reading.Entry
	place   season.Place
	meal    term.Date // not set without one, or where nobody is there
	end     term.Date // the last day that a crop can be ready on
}

// season works out each tub's days. The error is that the context ended.
func (a *assessor) season(out *Assessment) error {
	p := &planner{assessor: a, ctx: a.ctx, out: out, zone: a.in.Zone}
	if p.zone == nil {
		p.zone = time.UTC
	}
	if !p.told() {
		return nil // a plan for the lid alone wants no season yet
	}
	p.moment()
	p.zoneKnown()
	if s := a.plan.School; s.Arrive.Or(term.ArriveMin) >= s.Leave.Or(term.LeaveMin) || !p.lastDay() {
		return nil // hours that run backwards are a stop of the calendar's
	}
	p.place = p.surroundings()
	for i := range out.Tubs {
		if err := p.tub(i); err != nil {
			return err
		}
	}
	p.oneLamp()
	return nil
}

// told tells whether the plan says anything of when the garden is to grow.
func (p *planner) told() bool {
	if len(p.plan.School.Terms) > 0 || p.plan.School.Meal.Day.Set() {
		return true
	}
	return slices.ContainsFunc(p.plan.Tubs, func(t plan.Tub) bool { return t.Sow.Set() || t.Transplant.Set() })
}

// moment is the one asked for, and what had been read by then.
func (p *planner) moment() {
	d := &desk{Assessment: p.out, entries: reading.Standing(p.in.Readings), today: &Today{}}
	d.moment(Morning{On: p.in.On, At: p.in.At, Zone: p.zone})
	p.now, p.entries = d.today.At, d.entries
}

// zoneKnown says what counts where the school's zone does not.
func (p *planner) zoneKnown() {
	const hint = "Write its name as the time zone database has it, such as Europe/Dublin: place.time_zone."
	switch name := p.plan.Place.TimeZone; {
	case name == "":
		p.note("zone-missing", "garden", "No time zone is given, so no clock change is counted.", hint)
	case p.zone == time.UTC && name != "UTC" && name != "Etc/UTC":
		p.warn("zone-unknown", "place.time_zone", "The time zone "+name+" is not known here, so no clock change is counted.", hint)
	}
}

// lastDay settles the last day that a crop can be ready on: that of the meal,
// else the last open one of the term. False where the calendar leaves none.
func (p *planner) lastDay() bool {
	c := p.out.Term
	if !c.Known() {
		p.note("season-no-term", "garden", "Without a term there is no season: when to sow and what each day brings is not worked out.", "Write the first and the last day of the term: school.terms.")
		return false
	}
	if day := term.Date(p.plan.School.Meal.Day); day.Set() && c.Open(day) {
		p.meal, p.end = day, day
		return true
	}
	at, _ := c.Current(term.DateOf(p.now))
	last, open := c.OpenUntil(c.Terms()[at].To)
	if !open {
		p.warn("season-no-open-day", "school.open_days", "No day is there on which somebody comes, so there is no season to work out.", "Look at school.open_days, school.closed and the years of school.terms.")
	}
	p.end = last
	return open
}

// What is taken of a room of which the plan says nothing (common practice, no
// source): a heated room falls by so much at night, its air is half damp, and a
// class breathes its CO2 up beside that of the air outside.
const (
	closedFallK  = 5
	usualDamp    = 0.5
	openCO2PPM   = 800
	closedCO2PPM = 420
)

// surroundings takes the room and the lamp over from the plan, and says where
// they lie outside what the equations hold for.
func (p *planner) surroundings() season.Place {
	at := p.plan.Place
	warm := float64(at.AirTemperature.Or(roomC))
	cool := float64(at.AirTemperatureClosed.Or(quantity.DegC(warm - closedFallK)))
	damp := usualDamp
	if at.Humidity.Set() {
		damp = float64(at.Humidity.Value)
	}
	air := func(tempC float64, waterC plan.Temperature, co2 plan.MoleShare, usual float64) season.Air {
		out := season.Air{Room: water.Room{TempC: min(max(tempC, 0), 45), Humidity: min(max(damp, 0), 1)}, CO2PPM: usual}
		out.WaterC = float64(waterC.Or(quantity.DegC(tempC)))
		if co2.Set() {
			out.CO2PPM = 1e6 * co2.Value.Base()
		}
		return out
	}
	p.checkAir(warm, "place.air_temperature")
	if cool != warm {
		p.checkAir(cool, "place.air_temperature_closed")
	}
	if damp >= 1 {
		p.warn("humidity-full", "place.humidity", "At a humidity of 100 % leaves breathe out next to nothing, so the forecast has plants that hardly drink. No room stays like that.", "Read a hygrometer at the shelf at noon: place.humidity.")
	}
	return season.Place{
		Calendar: p.out.Term, Zone: p.zone, Lamp: p.timer(),
		Open:   air(warm, at.WaterTemperature, at.CO2, openCO2PPM),
		Closed: air(cool, at.WaterTemperatureClosed, at.CO2Closed, closedCO2PPM),
	}
}

// checkAir says where growth is not known.
func (p *planner) checkAir(tempC float64, field string) {
	c, _ := crop.Find(crop.Default)
	for _, f := range c.CheckAir(field, tempC) {
		if f.Code == "air-outside" {
			p.findings = append(p.findings, f)
		}
	}
}

// usualOnMin is when a lamp goes on of which the plan says nothing, in minutes
// after midnight.
const usualOnMin = 6 * 60

// timer is when the lamp is on that is on longest: it stands for all.
func (p *planner) timer() season.Lamp {
	out := season.Lamp{}
	for _, l := range p.plan.Lamps {
		on := season.Lamp{FromMin: usualOnMin, ToMin: usualOnMin + int(60*hoursOf(l))}
		if l.Lit[0].Given && l.Lit[1].Given {
			on = season.Lamp{FromMin: int(l.Lit[0].Value), ToMin: int(l.Lit[1].Value)}
		}
		if on.Hours() > out.Hours() {
			out = on
		}
	}
	return out
}
