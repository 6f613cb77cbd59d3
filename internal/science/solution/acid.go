package solution

import "math"

// mostDose bounds a search for a dose, in mol/L: a hundred times what the
// hardest tap asks for.
const mostDose = 1

// DoseTo is how much of a reagent brings the water to a pH in rest under the
// air, in mol/L. ok is false when it is there already or cannot get there.
func (c *Chemistry) DoseTo(w Ions, r Reagent, ph float64, air Air) (molL float64, ok bool) {
	s := c.start(w)
	charge := func(dose float64) float64 {
		c.settle(w.Plus(r.row.ions.Times(dose)), ph, air, &s)
		return s.charge
	}
	start := charge(0)
	if (start > 0) == r.Base() || start == 0 {
		return 0, false
	}
	top := 4*math.Abs(start) + 1e-6
	for (charge(top) > 0) == (start > 0) {
		if top *= 2; top > mostDose {
			return 0, false
		}
	}
	return root(charge, 0, top, 1e-16), true
}

// Acidification is what an acid has to do in one water, each dose in mol/L.
type Acidification struct {
	TargetPH    float64
	ClosedMolL  float64 // reads the target at once, and does not last in an aerated tub
	OpenMolL    float64 // lasts under the air
	PHRebound   float64 // where the closed dose ends up under the air
	PHAtOnce    float64 // right after the whole lasting dose
	PHAfterAir  float64 // after a day of air; the target, if all is right
	Alkalinity  float64 // of the water, meq/L
	ChargeMeqL  float64 // the lasting dose in meq/L of acid at the target
	AddsContent Content // mg/L that the lasting dose brings
}

// Acidify is the lasting dose for an aerated tub and what else is to be known
// of it. ok is false where no acid is needed or the target cannot be reached.
func (c *Chemistry) Acidify(w Ions, r Reagent, targetPH float64, air Air) (a Acidification, ok bool) {
	a.TargetPH = targetPH
	a.Alkalinity = 1000 * (w.strongCharge() - w[PO4])
	if a.OpenMolL, ok = c.DoseTo(w, r, targetPH, air); !ok {
		return a, false
	}
	a.ClosedMolL, _ = c.DoseTo(w, r, targetPH, Closed)
	dosed := func(molL float64) Ions { return w.Plus(r.row.ions.Times(molL)) }
	a.PHRebound = c.Equilibrium(dosed(a.ClosedMolL), air).PH
	a.PHAtOnce = c.Equilibrium(dosed(a.OpenMolL), Closed).PH
	a.PHAfterAir = c.Equilibrium(dosed(a.OpenMolL), air).PH
	_, a.AddsContent = r.Adds(a.OpenMolL)
	before, after := c.AtPH(w, targetPH, air), c.AtPH(dosed(a.OpenMolL), targetPH, air)
	a.ChargeMeqL = 1000 * math.Abs(before.charge-after.charge)
	return a, true
}

// Planted is the dose for a tub with plants in it: as much of the lasting dose
// as keeps the pH at once at the least that roots bear, in mol/L, and that pH.
func (c *Chemistry) Planted(w Ions, r Reagent, lasting float64) (molL, phAtOnce float64) {
	least := value(factAcidStepLeastPh)
	at := func(dose float64) float64 { return c.Equilibrium(w.Plus(r.row.ions.Times(dose)), Closed).PH }
	if ph := at(lasting); r.Base() || ph >= least {
		return lasting, ph
	}
	if ph := at(0); ph <= least {
		return 0, ph
	}
	molL = root(func(dose float64) float64 { return at(dose) - least }, 0, lasting, lasting*1e-6)
	return molL, at(molL)
}

// StepHours is how long to wait between two doses in a planted tub.
func StepHours() float64 { return value(factAcidStepHours) }

// LeastPHAtOnce is the pH below which no single dose takes a planted tub.
func LeastPHAtOnce() float64 { return value(factAcidStepLeastPh) }

// Point is one point of a curve.
type Point struct{ X, Y float64 }

// Titration is the pH at once and under the air against the dose in mmol/L,
// from nothing to a quarter more than the lasting dose.
func (c *Chemistry) Titration(w Ions, r Reagent, lastingMolL float64, air Air, points int) (atOnce, aired []Point) {
	points = min(max(points, 2), 500)
	for i := range points {
		dose := 1.25 * lastingMolL * float64(i) / float64(points-1)
		v := w.Plus(r.row.ions.Times(dose))
		atOnce = append(atOnce, Point{1000 * dose, c.Equilibrium(v, Closed).PH})
		aired = append(aired, Point{1000 * dose, c.Equilibrium(v, air).PH})
	}
	return atOnce, aired
}
