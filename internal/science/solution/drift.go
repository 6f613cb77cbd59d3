package solution

import "math"

// Uptake is what plants take out of the water, in mol/L. Ammonium leaves acid
// behind; nitrate beyond what is taken with cations leaves base.
type Uptake struct{ Ammonium, Nitrate float64 }

// Drift is the pH after the plants took something: a direction and a size, not
// a forecast. The water is a closed or an aerated one.
func (c *Chemistry) Drift(w Ions, u Uptake, air Air) float64 {
	w[NH4] = max(0, w[NH4]-u.Ammonium)
	w[NO3] = max(0, w[NO3]-u.Nitrate)
	return c.Equilibrium(w, air).PH
}

// Exchange is the range in which an air stone exchanges carbon dioxide, in
// parts of the difference for each hour.
func Exchange() (slow, fast float64) {
	k := numbers(factAcidAirKla, 2)
	return k[0], k[1]
}

// exchangeSteps is enough for a thousandth of a pH unit over a day at the
// fastest exchange.
const exchangeSteps = 240

// AfterAir is the pH of closed water after so many hours of air: carbon dioxide
// leaves or enters in proportion to what is too much or too little of it. The
// steps are Heun's.
func (c *Chemistry) AfterAir(w Ions, hours, perHour float64, air Air) float64 {
	if !air.open() || !(hours > 0) {
		return c.Equilibrium(w, Closed).PH
	}
	even := c.henry * air.CO2PPM * 1e-6
	rate := func(total float64) float64 {
		v := w
		v[CO3] = total
		return -perHour * (c.Equilibrium(v, Closed).complex[carbonDioxide] - even)
	}
	total, dt := w[CO3], hours/exchangeSteps
	for range exchangeSteps {
		first := rate(total)
		second := rate(math.Max(0, total+dt*first))
		total = math.Max(0, total+dt*(first+second)/2)
	}
	w[CO3] = total
	return c.Equilibrium(w, Closed).PH
}
