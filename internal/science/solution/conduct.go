package solution

import (
	"math"

	"rootbell/internal/base/facts"
)

// conductor is how one ion conducts at one temperature: at rest, and what of
// it √I/(1+B√I) takes away, in S·cm²/mol.
type conductor struct{ limit, drop, b float64 }

// The bare ions of the components. SO4 and CO3 are the bare ions too.
var bareMC = [ionCount]facts.ID{
	NH4: factConductivityNH4, K: factConductivityK, Na: factConductivityNa, Ca: factConductivityCa, Mg: factConductivityMg,
	NO3: factConductivityNO3, Cl: factConductivityCl, SO4: factConductivitySO4, CO3: factConductivityCO3,
}

var bareLimit = [ionCount]facts.ID{
	Metal: factConductivityLimitMetal, Other: factConductivityLimitOther, PO4: factConductivityLimitPO4, Citrate: factConductivityLimitCit,
}

var (
	onsager = numbers(factConductivityOnsager, 3)
	slope   = percent(factConductivitySlope)
)

// published are the rows of McCleskey et al., read once.
var published = func() map[facts.ID][]float64 {
	out := map[facts.ID][]float64{factConductivityH: numbers(factConductivityH, 7)}
	for _, id := range bareMC {
		if id != "" {
			out[id] = numbers(id, 7)
		}
	}
	for _, sp := range complexes {
		if sp.mc != "" {
			out[sp.mc] = numbers(sp.mc, 7)
		}
	}
	return out
}()

// conductors fills the table for the temperature: hydrogen first, then the
// bare ions, then the complexes.
func (c *Chemistry) conductors() {
	c.lambda[0] = c.published(factConductivityH)
	for i := range ionCount {
		c.lambda[1+i] = c.conductor(bareMC[i], bareLimit[i], charges[i])
	}
	for n, sp := range complexes {
		c.lambda[1+int(ionCount)+n] = c.conductor(sp.mc, sp.limit, float64(sp.charge))
	}
}

func (c *Chemistry) conductor(mc, limit facts.ID, charge float64) conductor {
	switch {
	case mc != "":
		return c.published(mc)
	case limit != "":
		return c.estimated(value(limit), math.Abs(charge))
	}
	return conductor{}
}

// published is λ = (a t² + b t + c) − (d t² + e t + f) √I/(1 + B√I) of McCleskey
// et al. 2012, where I is the ionic strength of the whole solution.
func (c *Chemistry) published(id facts.ID) conductor {
	p, t := published[id], c.tempC
	return conductor{(p[0]*t+p[1])*t + p[2], (p[3]*t+p[4])*t + p[5], p[6]}
}

// estimated is an ion that they have not measured: its limit at 25 °C, a slope
// with temperature, and the drop of Onsager's limiting law.
func (c *Chemistry) estimated(limit, charge float64) conductor {
	limit *= 1 + slope*(c.tempC-25)
	return conductor{limit, (limit*onsager[0] + onsager[1]*charge) * charge, onsager[2]}
}

func (l conductor) at(rootI float64) float64 {
	return max(0, l.limit-l.drop*rootI/(1+l.b*rootI))
}

// Conductivity is the EC in mS/cm at the temperature of the chemistry: the sum
// over all ions of what they carry.
func (s State) Conductivity() float64 {
	rootI := math.Sqrt(s.IonicStrength)
	l := &s.chemistry.lambda
	sum := l[0].at(rootI) * s.hydrogen
	for i, v := range s.free {
		sum += l[1+i].at(rootI) * v
	}
	for n, v := range s.complex {
		sum += l[1+int(ionCount)+n].at(rootI) * v
	}
	return sum
}

// at25 is the temperature that EC is told for.
var at25, _ = At(25)

// EC25 is the EC that a meter shows for the solution, in mS/cm at 25 °C. The pH
// is the one at which it rests under the air.
func EC25(w Ions, air Air) float64 {
	return at25.Equilibrium(w, air).Conductivity()
}
