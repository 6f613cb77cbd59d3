package season

import (
	"time"

	"rootbell/internal/forecast"
	"rootbell/internal/school/term"
	"rootbell/internal/science/water"
)

// Place is the school as a tub lives in it.
type Place struct {
	Calendar *term.Calendar
	Zone     *time.Location // nil is UTC
	Open     Air            // from the first person's coming to the last one's going
	Closed   Air            // at all other hours
	Lamp     Lamp
	NoLamp   bool // nobody switches its light: the hours of Lamp are those of daylight, or as read
}

// Air is what surrounds a tub for some hours.
type Air struct {
	Room   water.Room
	CO2PPM float64
	WaterC float64
}

// Lamp is when the timer has the lamp lit, in minutes after midnight by the
// school's clock, 0 to 1440. ToMin before FromMin is over midnight; both alike
// is never.
type Lamp struct{ FromMin, ToMin int }

// Hours is how long a usual day is lit.
func (l Lamp) Hours() float64 { return float64(l.minutes()) / 60 }

func (l Lamp) minutes() int {
	n := (l.ToMin - l.FromMin) % dayMinutes
	if n < 0 {
		n += dayMinutes
	}
	if n == 0 && l.ToMin != l.FromMin {
		return dayMinutes
	}
	return n
}

// Shorter is the same timer switched off earlier, so that it is lit for at
// most so many hours.
func (l Lamp) Shorter(hours float64) Lamp {
	n := min(l.minutes(), int(hours*60))
	if n <= 0 {
		return Lamp{l.FromMin, l.FromMin}
	}
	return Lamp{l.FromMin, (l.FromMin + n) % dayMinutes}
}

const dayMinutes = 24 * 60

// Leaves is when the last person goes on a day.
func (p Place) leaves(d term.Date) time.Time { return p.Calendar.Leaves(d, p.Zone) }

// Spans are the hours from one moment to another, cut wherever somebody comes
// or goes, the lamp is switched, or a day begins.
func (p Place) Spans(from, to time.Time) forecast.Day {
	var out forecast.Day
	for at := from; at.Before(to); {
		next := p.next(at, to)
		if hours := next.Sub(at).Hours(); hours >= leastHours {
			out = append(out, p.span(at, hours))
		}
		at = next
	}
	return out
}

// leastHours is what a forecast takes as a span.
const leastHours = 1.0 / 3600

// next is the first moment after at at which something changes, at most to.
func (p Place) next(at, to time.Time) time.Time {
	day := term.DateOf(at.In(p.zone()))
	next := to
	for _, d := range []term.Date{day, day.Add(1)} {
		moments := []time.Time{d.At(0, p.zone()), d.At(p.Lamp.FromMin%dayMinutes, p.zone()), d.At(p.Lamp.ToMin%dayMinutes, p.zone())}
		if p.Calendar.Open(d) {
			moments = append(moments, p.Calendar.Arrives(d, p.zone()), p.leaves(d))
		}
		for _, m := range moments {
			if m.After(at) && m.Before(next) {
				next = m
			}
		}
	}
	return next
}

func (p Place) span(at time.Time, hours float64) forecast.Span {
	air := p.Closed
	if p.Calendar.Attended(at, p.zone()) {
		air = p.Open
	}
	return forecast.Span{Hours: hours, Lit: p.lit(at), Room: air.Room, CO2PPM: air.CO2PPM, WaterC: air.WaterC}
}

// lit tells whether the timer has the lamp on, by the clock on the wall.
func (p Place) lit(at time.Time) bool {
	here := at.In(p.zone())
	minute := here.Hour()*60 + here.Minute()
	since := (minute - p.Lamp.FromMin) % dayMinutes
	if since < 0 {
		since += dayMinutes
	}
	return since < p.Lamp.minutes()
}

func (p Place) zone() *time.Location {
	if p.Zone == nil {
		return time.UTC
	}
	return p.Zone
}
