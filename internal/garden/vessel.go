package garden

import (
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/school/term"
	"rootbell/internal/science/reading"
	"rootbell/internal/science/tub"
)

// Vessel is what readings need to know of a tub: what stands in it at the fill
// line of a day goes by when its plants went in, as the tub's own entries say.
func (a *Assessment) Vessel(i int, entries []reading.Entry, zone *time.Location) reading.Vessel {
	t := a.states[i]
	v := reading.Vessel{Name: t.name}
	high := t.shape.HeightMM()
	if high > 0 {
		v.InsideHeight, v.RimL = quantity.MM(high), t.shape.Volume(high)
		v.LitresAtDepth = func(mm quantity.MM) quantity.L { return t.shape.Volume(float64(mm)) }
	}
	if t.fill.Symbol == "" {
		return v
	}
	v.FillL = litresOf(t.fill)
	for _, e := range entries {
		if high > 0 && t.lowers() && e.Did(reading.Planted) {
			v.Lowered = term.DateOf(e.At.In(zone)).Add(tub.LowerAfterDays()).At(0, zone)
			v.LoweredL = t.shape.Volume(t.lines.Lowered.Base)
		}
	}
	return v
}

// lowers tells whether the fill line is lowered once roots hang.
func (t *tubState) lowers() bool {
	return !t.setup.Still && t.lines.Lowered.Base > t.lines.Lowest.Base && t.lines.Lowered.Base < t.lines.Fill.Base
}
