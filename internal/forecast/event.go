package forecast

import "errors"

// Kind is what happens at an event.
type Kind int

// The kinds of event, with the fields of Event that each reads.
const (
	TopUp     Kind = iota // Litres of ECmS; what would rise too far is not poured
	FillTo                // up to LineMM with ECmS, where the level is DropMM or more under it
	ChangeOut             // all water out, ECmS in up to LineMM
	Harvest               // Plants of Stand are picked whole
	LampHours             // at most Hours lit each day from now on, the day's first
	LampOff               // for Hours
	PumpOff               // for Hours
	PowerCut              // lamp and pump off for Hours
)

// Event is something that people or the mains do to a tub.
type Event struct {
	AtHour         float64 // from the season's first midnight
	Kind           Kind
	Litres, ECmS   float64
	LineMM, DropMM float64
	Hours          float64
	Stand, Plants  int
}

func (e Event) check(stands int) error {
	switch {
	case !finite(e.AtHour, e.Litres, e.ECmS, e.LineMM, e.DropMM, e.Hours) || e.AtHour < 0:
		return errors.New("its hour or a figure is not known")
	case e.Kind < TopUp || e.Kind > PowerCut:
		return errors.New("no such kind of event")
	case min(e.Litres, e.ECmS, e.LineMM, e.DropMM, e.Hours) < 0 || e.Plants < 0:
		return errors.New("a figure is under nought")
	case e.Kind == Harvest && (e.Stand < 0 || e.Stand >= stands):
		return errors.New("it picks from a stand that is not there")
	}
	return nil
}

// off tells whether an event keeps the lamp or the pump off at an hour.
func (e Event) off(hour float64) (lamp, pump bool) {
	if hour < e.AtHour || hour >= e.AtHour+e.Hours {
		return false, false
	}
	return e.Kind == LampOff || e.Kind == PowerCut, e.Kind == PumpOff || e.Kind == PowerCut
}
