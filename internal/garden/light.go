package garden

import (
	"rootbell/internal/science/lamp"
)

// Light is the light on a tub's plants, at the height of its lid on transplant
// day; later lamp and leaves rise together.
type Light struct {
	PPFD    []HoleLight `json:"ppfd"`      // at each hole of the chosen layout
	MeanPPF float64     `json:"mean_ppfd"` // µmol/m²/s
	DLI     float64     `json:"dli"`       // mol/m²/d, mean over the holes
	LowDLI  float64     `json:"low_dli"`   // of the darkest hole
	HighDLI float64     `json:"high_dli"`
	Even    float64     `json:"even"`     // the darkest hole beside the mean; 1 where all are alike
	Hours   float64     `json:"hours"`    // lit in a day
	NeedH   float64     `json:"need_h"`   // that would bring the least daily light that its crops want; 0 where leaves do not stand so long a day
	KWhADay float64     `json:"kwh_day"`  // of all lamps of the garden; 0 where no power is known
	From    string      `json:"from"`     // lamps, or lux readings
	WantLow float64     `json:"want_low"` // daily light that all its crops want
	WantTop float64     `json:"want_top"`

	RaiseMM float64 `json:"raise_mm"` // of the lowest lamp, from transplant to the grown crop

	Meal *MealLight `json:"meal,omitempty"` // nil without a meal or a term, and in the dark

	Lamps lamp.Rig `json:"-"` // over the lid, in its coordinates; none where only readings are known
	Key   string   `json:"-"` // of its numbers: tubs.Heron.light
}

// HoleLight is the light at one hole.
type HoleLight struct {
	N    int     `json:"n"`
	PPFD float64 `json:"ppfd"`
	DLI  float64 `json:"dli"`
}

// MealLight is what the light brings a plant to by the meal, else by the end of
// the term: the middle of the forecast for a plant in the mean light of the
// holes, and for one at the darkest. Of several crops it is the one furthest
// behind.
type MealLight struct {
	By    string  `json:"by"`     // the day
	Days  int     `json:"days"`   // in the tub until then
	Crop  string  `json:"crop"`   // furthest behind in the mean light
	MassG float64 `json:"mass_g"` // of a plant of it
	PickG float64 `json:"pick_g"` // at which it is picked
	Ready bool    `json:"ready"`

	DarkHole  int     `json:"dark_hole"`
	DarkCrop  string  `json:"dark_crop"`
	DarkG     float64 `json:"dark_mass_g"`
	DarkPickG float64 `json:"dark_pick_g"`
	DarkReady bool    `json:"dark_ready"`

	KWh  float64  `json:"kwh"`            // of all lamps of the garden, in those days
	Cost *float64 `json:"cost,omitempty"` // of that, where the price of electricity is known
}

// tubLight is the light over one tub's lid, in the lid's coordinates: from
// lamps, or from what a lux meter read.
type tubLight struct {
	rig    lamp.Rig
	read   lamp.Measured // where there is any, it counts and not the lamps
	source lamp.Source
	hours  float64 // lit in a day, h/d
}

// known tells whether anything is known of the light.
func (l tubLight) known() bool { return len(l.rig) > 0 || len(l.read) > 0 }

// at is the light on level leaves at the height of the lid, on transplant day,
// at some places on it, in µmol/m²/s. Later on lamp and leaves rise together.
func (l tubLight) at(places []lamp.Point) []float64 {
	if len(l.read) > 0 {
		return l.read.At(places)
	}
	return l.rig.At(places)
}

// dli is the light of a day at a place, in mol/m²/d.
func (l tubLight) dli(p lamp.Point) float64 {
	if len(l.read) > 0 {
		return lamp.DLI(l.read.PPFD(p.XMM, p.YMM), l.hours)
	}
	return l.rig.DLI(p.XMM, p.YMM)
}

// lightOf is the light over a tub of the plan. It is worked out from the plan
// alone, so that other stages can ask for it at any time.
func (a *assessor) lightOf(tub int) tubLight {
	l := tubLight{source: lamp.WhiteLED, hours: a.litHours()}
	for k := range a.plan.Lamps {
		l.rig = append(l.rig, a.lampOver(k, tub))
	}
	if read, source := a.luxOver(tub); len(read) > 0 {
		l.read, l.source = read, source
		if len(l.rig) == 0 && ofWindow(source) {
			l.hours = lamp.WindowHours()
		}
	}
	return l
}

// ofWindow tells whether a light goes with the sun.
func ofWindow(s lamp.Source) bool { return s == lamp.Daylight || s == lamp.BlueSky }

// steady is the light at some places while the lamp that is lit longest is on:
// lamps that are lit for other hours count with what they bring in a day.
func (l tubLight) steady(places []lamp.Point) []float64 {
	out := make([]float64, len(places))
	for i, p := range places {
		if l.hours > 0 {
			out[i] = l.dli(p) / lamp.DLI(1, l.hours)
		}
	}
	return out
}

// holePlaces are the holes of the layout that is shown.
func (t *tubState) holePlaces() []lamp.Point {
	if t.out.Lid == nil {
		return nil
	}
	chosen, ok := t.out.Lid.Layout(t.out.Lid.Chosen)
	if !ok {
		return nil
	}
	out := make([]lamp.Point, len(chosen.Holes))
	for i, h := range chosen.Holes {
		out[i] = lamp.Point{XMM: h.XMM, YMM: h.YMM}
	}
	return out
}

// perM2 is how closely so many plants stand, in plants a square metre: each has
// its share of the lid. It is 0 where the outline is impossible.
func (t *tubState) perM2(plants int) float64 {
	const squareMetre = 1e6
	shape, err := outline(t.typed.Lid)
	if err != nil || !(shape.Area() > 0) {
		return 0
	}
	return float64(plants) * squareMetre / shape.Area()
}
