package season

import (
	"context"

	"rootbell/internal/forecast"
	"rootbell/internal/school/term"
)

// Course is a tub followed from the day its plants move in.
type Course struct {
	Bed
	MoveOn   term.Date
	To       term.Date          // the last day followed
	Deeds    []forecast.Event   // done and written down, by the hours of Clock
	NeedG    float64            // see forecast.Season
	Held     bool               // the water is held up on closed days too, as when the plan to leave it is kept
	CareFrom float64            // hour from which care is taken as a matter of course; what was before is in Deeds
	Readings []forecast.Reading // by the hours of Clock
	Options  forecast.Options   // NoLearning and LearnToHour are kept to
}

// Clock is the course's: its hour nought is when the first person comes on the
// day the plants move in.
func (c Course) Clock() Clock {
	return Clock{Start: c.Calendar.Arrives(c.MoveOn, c.zone()), Zone: c.zone()}
}

// Line is the fill line that holds on a day: the bed's, lowered once roots hang.
func (c Course) Line(d term.Date) float64 {
	line := c.Bed.Line(d)
	if c.Care.LowerDays > 0 && c.Care.LoweredMM > 0 && d.Since(c.MoveOn) >= c.Care.LowerDays {
		return min(line, c.Care.LoweredMM)
	}
	return line
}

// Followed is what may come of a course. Its Forecast is the whole course, with
// Expected by the places of Course.Readings; each of its days ends when the
// last person leaves, or would.
type Followed struct {
	forecast.Forecast
	Clock    Clock
	Dates    []Day      // of Forecast.Days
	Standing []Standing // at the first hour of each closed stretch, in order
	Changes  []term.Date
}

// Day is the day of a Forecast's day.
type Day struct {
	Date   term.Date
	Open   bool
	Filled bool // topped up in half the runs and more, or filled anew
}

// Standing is the tub's members at the first hour of a closed stretch.
type Standing struct {
	Stretch term.Stretch
	State   forecast.Forecast // its Ends and Factors
	Dry     forecast.Stretch  // as things go, by the hours of Clock
	seed    uint64
}

// Follow follows a course. Errors are those of forecast.Run, and of a course
// that ends before it begins.
func Follow(ctx context.Context, c Course, e Effort) (Followed, error) {
	return follow(ctx, c, e)
}
