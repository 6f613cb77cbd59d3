package lamp

// Point is a place on the lid, in millimetres.
type Point struct{ XMM, YMM float64 }

// Rig is all the lamps over one tub.
type Rig []Lamp

// PPFD is the light of all lamps at a place while all are lit, in µmol/m²/s.
func (r Rig) PPFD(xMM, yMM float64) float64 {
	sum := 0.0
	for _, l := range r {
		sum += l.PPFD(xMM, yMM)
	}
	return sum
}

// DLI is the light of a day at a place, each lamp by its own hours, in mol/m²/d.
func (r Rig) DLI(xMM, yMM float64) float64 {
	sum := 0.0
	for _, l := range r {
		sum += DLI(l.PPFD(xMM, yMM), l.HoursADay)
	}
	return sum
}

// At is the light at each of some places, in their order, in µmol/m²/s.
func (r Rig) At(places []Point) []float64 {
	out := make([]float64, len(places))
	for i, p := range places {
		out[i] = r.PPFD(p.XMM, p.YMM)
	}
	return out
}

// Over is the rig as leaves see it that stand so high over the level it was
// given for. A leaf at or above a lamp sees none of it.
func (r Rig) Over(leavesMM float64) Rig {
	out := append(Rig(nil), r...)
	for i := range out {
		out[i].AboveMM -= leavesMM
	}
	return out
}

// KWhADay is what the rig takes from the socket in a day.
func (r Rig) KWhADay() float64 {
	sum := 0.0
	for _, l := range r {
		sum += KWh(l.PowerWatts, l.HoursADay, 1)
	}
	return sum
}

// Spread says how evenly light falls on some places.
type Spread struct {
	Least, Mean, Most float64 // in the unit of what was spread
	Even              float64 // least over mean, 1 where all are alike, 0 in the dark
}

// SpreadOf is the spread of some values; all zero for none.
func SpreadOf(values []float64) Spread {
	if len(values) == 0 {
		return Spread{}
	}
	s := Spread{Least: values[0], Most: values[0]}
	for _, v := range values {
		s.Least, s.Most = min(s.Least, v), max(s.Most, v)
		s.Mean += v / float64(len(values))
	}
	if s.Mean > 0 {
		s.Even = s.Least / s.Mean
	}
	return s
}

// RaiseMM is how much higher a lamp must hang, so that leaves of a height keep
// their distance from it; 0 where they do already. All heights count from the
// lid.
func RaiseMM(lampMM, leavesMM float64) float64 {
	return max(0, leavesMM+LeafClearMM()-lampMM)
}

// LeafClearMM is the least distance from a lamp down to the leaves.
func LeafClearMM() float64 { return 10 * value(factLampOverLeafMin) }

// StartClearMM is the distance from a lamp down to seedlings.
func StartClearMM() float64 { return 10 * value(factLampOverLeafStart) }
