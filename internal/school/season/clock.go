package season

import (
	"math"
	"time"

	"rootbell/internal/school/term"
)

// Clock carries moments to hours of a season and back. Hours are those that
// pass for a tub: a day on which clocks change has 23 or 25 of them.
type Clock struct {
	Start time.Time      // hour nought
	Zone  *time.Location // of the school; nil is UTC
}

// Hour is how many hours after the start a moment lies; negative before it.
func (c Clock) Hour(moment time.Time) float64 { return moment.Sub(c.Start).Hours() }

// Moment is an hour of the season by the school's clock, to the second.
// Hours without end have none: false.
func (c Clock) Moment(hour float64) (time.Time, bool) {
	if math.IsNaN(hour) || math.Abs(hour) > mostHours {
		return time.Time{}, false
	}
	return c.Start.Add(time.Duration(math.Round(hour*3600)) * time.Second).In(c.zone()), true
}

// At is the hour of so many minutes after midnight on a day, by the school's
// clock.
func (c Clock) At(d term.Date, minutes int) float64 { return c.Hour(d.At(minutes, c.zone())) }

// Date is the day of an hour by the school's clock.
func (c Clock) Date(hour float64) (term.Date, bool) {
	moment, ok := c.Moment(hour)
	return term.DateOf(moment), ok
}

func (c Clock) zone() *time.Location {
	if c.Zone == nil {
		return time.UTC
	}
	return c.Zone
}

// mostHours bounds a season's clock, some centuries before time.Duration's end.
const mostHours = 1e6
