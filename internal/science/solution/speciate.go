package solution

import "math"

// Where the loops stop. The answers are good to about the root of these.
const (
	balanceTolerance  = 1e-6  // of a logarithm in Newton's last step, which leaves its square
	strengthTolerance = 1e-11 // mol/L
	mostRounds        = 60
	mostStrengths     = 60
)

// AtPH is the solution held at a pH, whatever acid or base that takes; what it
// takes is the charge that is missing then.
func (c *Chemistry) AtPH(w Ions, ph float64, air Air) State {
	s := c.start(w)
	c.settle(w, ph, air, &s)
	return s
}

// Equilibrium is the solution at the pH at which its charges balance. Of the
// components none may be negative; one that is counts as absent.
func (c *Chemistry) Equilibrium(w Ions, air Air) State {
	for i := range w {
		if !(w[i] > 0) {
			w[i] = 0
		}
	}
	s := c.start(w)
	ph := root(func(ph float64) float64 {
		c.settle(w, ph, air, &s)
		// The charge runs over many powers of ten; this keeps its sign and
		// makes it nearly straight in the pH.
		return math.Asinh(s.charge / 1e-8)
	}, 0, 14, 1e-11)
	c.settle(w, ph, air, &s)
	return s
}

func (c *Chemistry) start(w Ions) State {
	s := State{chemistry: c}
	for i, v := range w {
		z := min(math.Abs(charges[i]), 2)
		s.IonicStrength += v * z * z / 2
		s.free[i] = v
	}
	return s
}

// settle finds the composition at a pH: inside, the free ions for given
// activity coefficients; outside, the ionic strength that these rest on.
func (c *Chemistry) settle(w Ions, ph float64, air Air, s *State) {
	s.PH = ph
	before := math.Inf(1)
	for range mostStrengths {
		c.compose(w, ph, air, s)
		by := s.strength() - s.IonicStrength
		s.IonicStrength += by
		if math.Abs(by) <= strengthTolerance {
			break
		}
		// The steps shrink evenly, so the rest of them is known (Aitken).
		if r := by / before; math.Abs(r) < 0.5 {
			s.IonicStrength = max(0, s.IonicStrength+by*r/(1-r))
		}
		before = by
	}
	s.balance()
}

// strongest is the ionic strength beyond which the coefficients no longer
// change: the equation means nothing there, and must not run away.
const strongest = 2

// activity fills the coefficients for charges 0 to 3 by the Davies equation,
// log γ = −A z² (√I/(1+√I) − 0.3 I). It is meant for I up to about 0.5 mol/L;
// beyond, only the sign of a result is to be trusted.
func (c *Chemistry) activity(s *State) {
	i := min(s.IonicStrength, strongest)
	root := math.Sqrt(i)
	one := math.Exp(-math.Ln10 * c.a * (root/(1+root) - daviesB*i))
	two := one * one * one * one
	s.gamma = [4]float64{1, one, two, two * two * one}
}

// binding is how strongly the ions hold each other at one pH and ionic
// strength: each complex per product of its free ions, what of an ion is bound
// to protons alone, and all complexes of one cation and one anion together.
type binding struct {
	each  [complexCount]float64
	alone [ionCount]float64
	pair  [pairingCations][pairingAnions]float64
}

// Only these pair: NH4, K, Na, Ca and Mg with SO4, CO3, PO4 and citrate.
const (
	pairingCations = int(Mg) + 1
	pairingAnions  = 4
)

var pairing = [pairingAnions]Ion{SO4, CO3, PO4, Citrate}

var pairingPlace = [ionCount]int{SO4: 0, CO3: 1, PO4: 2, Citrate: 3}

// compose finds the free ions and from them every complex.
func (c *Chemistry) compose(w Ions, ph float64, air Air, s *State) {
	c.activity(s)
	h := math.Exp(-math.Ln10 * ph)
	s.hydrogen = h / s.gamma[1]
	var b binding
	c.bind(h, s, &b)
	fixed := -1
	if air.open() {
		s.free[CO3] = c.henry * air.CO2PPM * 1e-6 / b.each[carbonDioxide]
		fixed = pairingPlace[CO3]
	}
	b.free(w, fixed, s)
	for n := range complexes {
		sp := &complexes[n]
		v := b.each[n]
		if sp.cation != none {
			v *= s.free[sp.cation]
		}
		if sp.anion != none {
			v *= s.free[sp.anion]
		}
		s.complex[n] = v
	}
}

// bind fills a binding for a proton activity.
func (c *Chemistry) bind(h float64, s *State, b *binding) {
	powers := [5]float64{1 / h, 1, h, h * h, h * h * h} // by protons, from −1
	for n := range complexes {
		sp := &complexes[n]
		v := c.k[n] * powers[sp.protons+1] / s.gamma[abs(sp.charge)]
		if sp.cation != none {
			v *= s.gamma[int(charges[sp.cation])]
		}
		if sp.anion != none {
			v *= s.gamma[int(-charges[sp.anion])]
		}
		b.each[n] = v
		switch {
		case sp.cation != none && sp.anion != none:
			b.pair[sp.cation][pairingPlace[sp.anion]] += v
		case sp.anion != none:
			b.alone[sp.anion] += v
		case sp.cation != none:
			b.alone[sp.cation] += v
		}
	}
}

// free finds the free ions. Each pair holds one cation and one anion, so the
// free anions give the free cations, and what is left are as many equations as
// anions. In the logarithms they are the slope of a convex function, which
// Newton's method descends; a step is cut to two powers of e.
func (b *binding) free(w Ions, fixed int, s *State) {
	for i := range w {
		if p := pairingPlace[i]; Ion(i) >= NO3 && pairing[p] != Ion(i) {
			s.free[i] = w[i] / (1 + b.alone[i])
		}
	}
	s.free[Metal] = w[Metal]
	for k, i := range pairing { // with the free cations as they were
		if k == fixed {
			continue
		}
		held := 1 + b.alone[i]
		for j := range pairingCations {
			held += b.pair[j][k] * s.free[j]
		}
		s.free[i] = w[i] / held
	}
	for range mostRounds {
		moved := b.newton(w, fixed, s)
		if moved < balanceTolerance {
			break
		}
	}
	for j := range pairingCations {
		s.free[j] = b.cation(w, j, s)
	}
}

func (b *binding) cation(w Ions, j int, s *State) float64 {
	sum := 1 + b.alone[j]
	for k, i := range pairing {
		sum += b.pair[j][k] * s.free[i]
	}
	return w[j] / sum
}

// leastSlope keeps a division by nought away; a step in error is cut and the
// next one mends it.
const leastSlope = 1e-12

// newton is one step; it returns by how much the largest logarithm moved.
func (b *binding) newton(w Ions, fixed int, s *State) float64 {
	var slope [pairingAnions][pairingAnions]float64
	var miss [pairingAnions]float64
	for k, i := range pairing {
		slope[k][k] = s.free[i] * (1 + b.alone[i])
	}
	for j := range pairingCations {
		if w[j] == 0 {
			continue
		}
		free := b.cation(w, j, s)
		var bound [pairingAnions]float64
		for k, i := range pairing {
			bound[k] = b.pair[j][k] * free * s.free[i]
			slope[k][k] += bound[k]
		}
		for k := range pairing {
			miss[k] += bound[k]
			for l := range pairing {
				slope[k][l] -= bound[k] * bound[l] / w[j]
			}
		}
	}
	for k, i := range pairing {
		miss[k] += s.free[i]*(1+b.alone[i]) - w[i]
		if k == fixed || w[i] == 0 {
			for l := range pairing {
				slope[k][l], slope[l][k] = 0, 0
			}
			slope[k][k], miss[k] = 1, 0
		}
	}
	for k, i := range pairing {
		// What is all but wholly bound leaves a slope of rounding errors.
		slope[k][k] = max(slope[k][k], leastSlope*w[i])
	}
	step := solve(&slope, &miss)
	moved := 0.0
	for k, i := range pairing {
		d := min(max(-step[k], -2), 2)
		moved = max(moved, math.Abs(d))
		s.free[i] *= math.Exp(d)
	}
	return moved
}

// solve is elimination without exchange, which a symmetric matrix with a
// dominant diagonal does not need.
func solve(a *[pairingAnions][pairingAnions]float64, y *[pairingAnions]float64) [pairingAnions]float64 {
	for k := range pairingAnions {
		a[k][k] = max(a[k][k], leastSlope*leastSlope)
		for i := k + 1; i < pairingAnions; i++ {
			f := a[i][k] / a[k][k]
			for l := k; l < pairingAnions; l++ {
				a[i][l] -= f * a[k][l]
			}
			y[i] -= f * y[k]
		}
	}
	for k := pairingAnions - 1; k >= 0; k-- {
		for l := k + 1; l < pairingAnions; l++ {
			y[k] -= a[k][l] * y[l]
		}
		y[k] /= a[k][k]
	}
	return *y
}

func (s *State) strength() float64 {
	sum := s.hydrogen
	for i, v := range s.free {
		sum += v * charges[i] * charges[i]
	}
	for n, v := range s.complex {
		z := float64(complexes[n].charge)
		sum += v * z * z
	}
	return sum / 2
}

// balance is the charge of everything, in eq/L.
func (s *State) balance() {
	s.charge = s.hydrogen
	for i, v := range s.free {
		s.charge += v * charges[i]
	}
	for n, v := range s.complex {
		s.charge += v * float64(complexes[n].charge)
	}
}

func abs(z int) int {
	if z < 0 {
		return -z
	}
	return z
}
