package season

import (
	"context"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/forecast"
	"rootbell/internal/school/term"
)

// Ways are what may be done for a closed stretch.
type Ways struct {
	MayVisit      bool // somebody can come in while the school is closed
	VisitFromMin  int  // and between which minutes after midnight; both 0: the hours of an open day
	VisitToMin    int
	VisitECmS     float64   // of plain tap water
	LineStepMM    float64   // a ruler's; 0 for 5 mm
	StillLowestMM float64   // never below, without a pump; 0: the tub's own
	LoweredOn     term.Date // the day on which the line had been lowered by stages for the still way; zero for never
	From          time.Time // stretches that begin before are left out
	NeedG         float64   // of this tub for the meal, fresh; 0: no plant is missed
	Wanted        float64   // chance of it that is wanted
}

// Closed is one closed stretch and what can be done for it.
type Closed struct {
	Stretch  term.Stretch
	Risk     float64   // of falling below the lowest line, as things go
	RiskHigh float64   // at 90 % thirst: that of the thirstiest in ten classes
	DryHalf  time.Time // half the runs have fallen below it; zero: not within the stretch
	DryFirst time.Time // one in twenty has
	Options  []Option  // from the least burden up
	Take     int       // the first that brings the risk under 1 in 20 and leaves enough for the meal, else the first that does the one; -1: nothing is needed or nothing does
	Needed   bool      // the risk is 1 in 20 or more as things go
	PowerCut *Case     // nil in a tub without a pump
	Pump     *Case
}

// Option is one thing that can be done for a stretch, or several together.
type Option struct {
	Kind      string // fill, lamp, harvest, fewer, visit, still, or several joined by +
	Risk      float64
	RiskHigh  float64
	LineMM    float64   // filled up to, when the last person leaves
	PourL     float64   // that this takes, the middle
	LampHours float64   // a day
	Off       Lamp      // the timer then
	Plants    []int     // taken out of each stand
	Left      int       // plants that stay, where some are taken out
	Meal      float64   // chance that those are enough for the meal
	Short     bool      // and that is less than is wanted, by their absence
	VisitL    float64   // plain water poured in by one visit
	VisitFrom time.Time // window of the visit
	VisitTo   time.Time

	how attempt // it is done
}

// Do is the option in one or two sentences, in a system of units.
func (o Option) Do(s quantity.System) string { return optionWords(o, s) }

// Case is what a failure does within a stretch that is left in the way to take.
type Case struct {
	Hours         float64       // that it lasts
	To4, To3, To2 forecast.Band // hours until the oxygen falls to 4, 3 and 2 mg/L
	Risk          float64       // of falling below the lowest line
}

// Leave works out what each closed stretch of a course that was followed asks
// for. Each option is followed anew from the stretch's first hour, with the
// members that stood there.
func Leave(ctx context.Context, c Course, f Followed, w Ways, e Effort) ([]Closed, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	c.Bed = c.moved(c.MoveOn)
	if w.LineStepMM <= 0 {
		w.LineStepMM = value(factLeaveLineStep)
	}
	if !w.LoweredOn.Set() {
		w.LoweredOn, _ = c.Lowered()
	}
	var out []Closed
	for _, s := range f.Standing {
		if s.Stretch.Since.Before(w.From) {
			continue
		}
		t := tries{Course: c, Standing: s, ways: w, e: e, clock: f.Clock, ends: f.Ends}
		closed, err := t.closed(ctx)
		if err != nil {
			return nil, err
		}
		out = append(out, closed)
	}
	return out, nil
}
