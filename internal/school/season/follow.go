package season

import (
	"context"
	"fmt"
	"time"

	"rootbell/internal/forecast"
	"rootbell/internal/school/term"
)

// leg is a course between the first hours of two closed stretches.
type leg struct {
	from, to time.Time
	days     []term.Date // each ends when the last person leaves
	stretch  *term.Stretch
}

// legs cut a course at the first hour of each closed stretch, where its
// members are kept.
func (c Course) legs() []leg {
	clock := c.Clock()
	at := leg{from: clock.Start}
	stretches := c.Calendar.Stretches(term.Span{From: c.MoveOn, To: c.To}, c.zone())
	var out []leg
	for d := c.MoveOn; !d.After(c.To); d = d.Add(1) {
		end := c.leaves(d)
		if !end.After(at.from) {
			continue
		}
		at.days, at.to = append(at.days, d), end
		for len(stretches) > 0 && stretches[0].Since.Before(end) {
			stretches = stretches[1:]
		}
		if len(stretches) > 0 && stretches[0].Since.Equal(end) {
			out = append(out, at)
			at = leg{from: end, stretch: &stretches[0]}
			stretches = stretches[1:]
		}
	}
	if len(at.days) > 0 {
		out = append(out, at)
	}
	return out
}

// season is a leg as a forecast follows it; its hours count from the leg's
// beginning.
func (c Course) season(l leg) forecast.Season {
	clock := Clock{Start: l.from, Zone: c.zone()}
	s := forecast.Season{Tub: c.Tub, NeedG: c.NeedG}
	from := l.from
	for _, d := range l.days {
		to := c.leaves(d)
		s.Days = append(s.Days, c.Spans(from, to))
		from = to
	}
	s.Events = c.routine(l, clock)
	shift := c.Clock().Hour(l.from)
	for _, e := range c.Deeds {
		if e.AtHour -= shift; e.AtHour >= 0 && e.AtHour < clock.Hour(l.to) {
			s.Events = append(s.Events, e)
		}
	}
	if l.stretch != nil {
		s.Events = append(c.opening(nil, 0), s.Events...)
		s.Watches = []forecast.Watch{{FromHour: 0, ToHour: clock.Hour(l.stretch.Until)}}
	}
	return s
}

// opening is what is done at the first hour of a stretch: plants taken out of
// each stand, and water up to a line. It is there also where nothing is done, so
// that a member's chances are the same with and without.
func (c Course) opening(out []int, lineMM float64) []forecast.Event {
	var all []forecast.Event
	for j := range c.Tub.Stands {
		e := forecast.Event{Kind: forecast.Harvest, Stand: j}
		if j < len(out) {
			e.Plants = out[j]
		}
		all = append(all, e)
	}
	if lineMM > 0 {
		return append(all, forecast.Event{Kind: forecast.FillTo, LineMM: lineMM, ECmS: c.Care.TopUpECmS})
	}
	return append(all, forecast.Event{Kind: forecast.TopUp})
}

// routine is what the class does as a matter of course: up to the line late on
// open days, always before closed ones, and the changes of water.
func (c Course) routine(l leg, clock Clock) []forecast.Event {
	var out []forecast.Event
	changes := c.changes()
	for _, d := range l.days {
		at := clock.Hour(c.leaves(d)) - careHours
		switch {
		case at < 0 || !d.After(c.MoveOn) || c.Clock().Hour(c.leaves(d))-careHours < c.CareFrom:
			continue
		case c.Held && (c.Tub.Still || !c.Calendar.Open(d)):
			out = append(out, forecast.Event{AtHour: at, Kind: forecast.FillTo, LineMM: c.Line(d), ECmS: c.Care.TopUpECmS})
			continue
		case !c.Calendar.Open(d):
			continue
		case c.Tub.Still: // raised only from under the lowest line, as far as roots in the gap bear
			line := min(c.Tub.LineMM, c.Tub.LowestMM+value(factStillRaise))
			out = append(out, forecast.Event{AtHour: at, Kind: forecast.FillTo, LineMM: line, DropMM: line - c.Tub.LowestMM, ECmS: c.Care.TopUpECmS})
			continue
		}
		if holds(changes, d) {
			out = append(out, forecast.Event{AtHour: at, Kind: forecast.ChangeOut, LineMM: c.Line(d), ECmS: c.Care.ChangeECmS})
			continue
		}
		drop := c.Care.TopUpDropMM
		if !c.Calendar.Open(d.Add(1)) {
			drop = 0
		}
		out = append(out, forecast.Event{AtHour: at, Kind: forecast.FillTo, LineMM: c.Line(d), DropMM: drop, ECmS: c.Care.TopUpECmS})
	}
	return out
}

// careHours is how long before the last person leaves the tub is seen to.
var careHours = value(factCareBefore)

// changes are the days on which the water is changed: the last open ones that
// are not late, counted from the move or from the last change that was written
// down.
func (c Course) changes() []term.Date {
	var out []term.Date
	at, due := c.MoveOn, c.Care.FirstChangeDays
	for _, e := range c.Deeds {
		if d, ok := c.Clock().Date(e.AtHour); ok && e.Kind == forecast.ChangeOut && !d.Before(at) {
			at, due = d, c.Care.ChangeDays
		}
	}
	for ; due > 0; due = c.Care.ChangeDays {
		d, ok := c.Calendar.OpenUntil(at.Add(due))
		if !ok || !d.After(at) {
			if d, ok = c.Calendar.OpenFrom(at.Add(due)); !ok {
				return out
			}
		}
		if c.To.Since(d) < int(value(factChangeLast)) {
			return out
		}
		out, at = append(out, d), d
	}
	return out
}

func holds(days []term.Date, d term.Date) bool {
	for _, other := range days {
		if other == d {
			return true
		}
	}
	return false
}

func follow(ctx context.Context, c Course, e Effort) (Followed, error) {
	if err := c.check(); err != nil {
		return Followed{}, err
	}
	c.Bed = c.moved(c.MoveOn)
	c.Tub.Stands = c.warmed()
	out := Followed{Clock: c.Clock(), Changes: c.changes()}
	if days := c.To.Since(c.MoveOn); days < 0 || days > mostDays {
		return out, fmt.Errorf("a season ends 0 to %d days after the plants move into the tub, not %d", mostDays, days)
	}
	legs := c.legs()
	var before *forecast.Forecast
	for i, l := range legs {
		s, o := c.season(l), c.Options
		shift := out.Clock.Hour(l.from)
		places := c.readings(&s, l, shift, i == len(legs)-1)
		o.Members, o.Workers, o.Known, o.After, o.Seed = e.members(), e.Workers, e.Known, before, e.Seed+uint64(i)
		if o.LearnToHour > 0 {
			if o.LearnToHour -= shift; o.LearnToHour <= 0 {
				o.NoLearning = true
			}
		}
		f, err := forecast.Run(ctx, s, o)
		if err != nil {
			return out, err
		}
		if l.stretch != nil && before != nil && !l.stretch.Until.After(l.to) {
			out.Standing = append(out.Standing, Standing{Stretch: *l.stretch, State: *before, Dry: later(f.Stretches[0], shift), seed: o.Seed})
		}
		out.add(c, l, f, places)
		before = &f
	}
	out.Members, out.Factors, out.Ends = before.Members, before.Factors, before.Ends
	return out, nil
}

// readings puts those of a leg into its season, and gives their places.
func (c Course) readings(s *forecast.Season, l leg, shift float64, last bool) (places []int) {
	hours := l.to.Sub(l.from).Hours()
	for i, r := range c.Readings {
		if r.AtHour -= shift; r.AtHour >= 0 && (r.AtHour < hours || last && r.AtHour == hours) {
			s.Readings, places = append(s.Readings, r), append(places, i)
		}
	}
	return places
}

func later(s forecast.Stretch, shift float64) forecast.Stretch {
	for _, v := range []*float64{&s.DryAt.P5, &s.DryAt.P25, &s.DryAt.P50, &s.DryAt.P75, &s.DryAt.P95} {
		*v += shift
	}
	return s
}

// add takes a leg's days into the course's.
func (f *Followed) add(c Course, l leg, of forecast.Forecast, places []int) {
	for i, day := range of.Days {
		poured := day.PouredL.P50
		if n := len(f.Days); n > 0 {
			poured -= f.Days[n-1].PouredL.P50
		} else {
			poured -= c.Tub.Start.Litres
		}
		d := l.days[i]
		f.Dates = append(f.Dates, Day{Date: d, Open: c.Calendar.Open(d), Filled: poured > leastPourL})
		f.Days = append(f.Days, day)
	}
	for _, e := range of.Expected {
		e.Reading = places[e.Reading]
		f.Expected = append(f.Expected, e)
	}
	for _, s := range of.Stretches {
		f.Stretches = append(f.Stretches, later(s, f.Clock.Hour(l.from)))
	}
}

// mostDays bounds a season, so that no input makes one without end.
const mostDays = 700

// leastPourL is what counts as having been filled up.
const leastPourL = 0.1

func (e Effort) members() int {
	if e.Members <= 0 {
		return forecast.DefaultMembers
	}
	return e.Members
}

func (e Effort) search() int {
	if e.Search <= 0 {
		return max(20, e.members()/5)
	}
	return e.Search
}
