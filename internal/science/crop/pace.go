package crop

import (
	"math"

	"rootbell/internal/base/ode"
)

// Air is what a leaf lives in for some hours.
type Air struct {
	TempC   float64
	CO2PPM  float64
	WattsM2 float64 // light that leaves use, W/m²; 0 at night
}

// Valid tells whether the equations hold for this air.
func (a Air) Valid() bool {
	return a.TempC > grown(factGrowthAirLow) && a.TempC < grown(factGrowthAirHigh) && a.CO2PPM > 0 && a.CO2PPM <= 5000 && a.WattsM2 >= 0
}

// Pace is how a model grows while its air and its light stay the same: worked
// out once, then quick for any state. It may be shared by many plants.
type Pace struct {
	// Most is the dry mass in g/m² at which growth stops, because the plant is
	// picked; 0 for none.
	Most float64

	gain     float64 // g sugar/m²/s of ground that leaves cover whole
	cover    float64 // m²/g, light that a gram of structure takes
	mostLeaf float64 // structure whose leaves count, g/m²
	rate     float64 // 1/s
	burns    float64 // 1/s
}

// Under is the model's pace in some air. Outside the range of the equations, 5
// to 40 °C, no light is used.
func (m *Model) Under(a Air) Pace {
	cold := m.cold(a.TempC)
	p := Pace{
		gain:     m.Tempo * m.Vigour * cold * sugarOfCO2 * photosynthesis(a),
		cover:    extinction * m.LeafPerG * (1 - m.RootShare),
		mostLeaf: math.Inf(1),
		rate:     m.Tempo * cold * growthRate * math.Exp(lnRateQ10*(a.TempC-20)/10),
		burns:    m.Tempo * (shootBurns*(1-m.RootShare) + rootBurns*m.RootShare) * math.Exp(lnRespirQ10*(a.TempC-25)/10),
	}
	if m.LeafMost > 0 && p.cover > 0 {
		p.mostLeaf = m.LeafMost * extinction / p.cover
	}
	return p
}

// cold is the part of the growth that the cold leaves.
func (m *Model) cold(tempC float64) float64 {
	if m.ColdC <= stopsInTheCold {
		return 1
	}
	return max(0, min(1, (tempC-stopsInTheCold)/(m.ColdC-stopsInTheCold)))
}

// photosynthesis is the CO2 in g/m²/s that leaves which cover the ground whole
// take up.
func photosynthesis(a Air) float64 {
	g := conductance(a.TempC)
	lost := compensation * math.Exp(lnCompensQ10*(a.TempC-20)/10)
	if !(a.WattsM2 > 0) || !(a.CO2PPM > lost) || !(g > 0) {
		return 0
	}
	byLight := lightUse * (a.CO2PPM - lost) / (a.CO2PPM + 2*lost) * a.WattsM2
	byAir := g * co2PerPPM * (a.CO2PPM - lost)
	return byLight * byAir / (byLight + byAir)
}

// conductance is how quickly CO2 gets from the air into the leaf, in m/s; 0
// outside 5 to 40 °C.
func conductance(tempC float64) float64 {
	c := carboxylation
	within := c[0]*tempC*tempC + c[1]*tempC + c[2]
	if !(within > 0) {
		return 0
	}
	return 1 / (1/boundary + 1/stomata + 1/within)
}

// Rates are dStore/dt and dStructure/dt in g/m²/s. An empty store builds
// nothing.
func (p *Pace) Rates(store, structure float64) (dStore, dStructure float64) {
	if store > 0 {
		dStructure = p.rate * store / (halfStore*structure + store) * structure
	}
	dStore = -dStructure/yield - p.burns*structure
	if p.gain > 0 {
		dStore += p.gain * (1 - math.Exp(-p.cover*min(structure, p.mostLeaf)))
	}
	return dStore, dStructure
}

// Precision is the error of each step that growth is followed with, as a share
// of the mass.
const Precision = 5e-7

var growthTolerance = ode.Tolerance{Relative: Precision, Absolute: 1e-9}

// Grow is a stand some seconds later. The store is never under nought: what a
// long night would burn more than there is, is left unburnt. At Most growth
// stops.
func (p *Pace) Grow(s State, seconds float64) State {
	return p.GrowWithin(s, seconds, growthTolerance)
}

// GrowWithin is Grow with a tolerance of one's own.
func (p *Pace) GrowWithin(s State, seconds float64, tolerance ode.Tolerance) State {
	if p.Most > 0 && s.DryG() >= p.Most || s.Structure <= 0 {
		return s
	}
	store, structure, _, err := ode.SolvePair(p, seconds, s.Store, s.Structure, tolerance)
	if err != nil {
		return s
	}
	end := State{max(0, store), structure}
	if dry := end.DryG(); p.Most > 0 && dry > p.Most && dry > s.DryG() {
		part := (p.Most - s.DryG()) / (dry - s.DryG())
		end = State{s.Store + part*(end.Store-s.Store), s.Structure + part*(end.Structure-s.Structure)}
	}
	return end
}

// Span is some seconds at one pace.
type Span struct {
	Pace    *Pace
	Seconds float64
}

// Follow is a stand after spans, one after another: a day of light and night,
// of school hours and closed ones.
func Follow(s State, spans []Span) State {
	for _, span := range spans {
		s = span.Pace.Grow(s, span.Seconds)
	}
	return s
}
