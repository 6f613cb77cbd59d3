package solution

import (
	"fmt"
	"math"
)

// Chemistry holds the constants of one temperature. Its zero value is of no
// use: see At.
type Chemistry struct {
	tempC  float64
	a      float64 // of the Davies equation
	k      [complexCount]float64
	henry  float64 // mol/L of CO2 for each atmosphere
	lambda [complexCount + int(ionCount) + 1]conductor
}

// Temperatures for which the constants are used, in °C.
const (
	ColdestC = 0
	WarmestC = 40
)

// At is the chemistry at a temperature from 0 to 40 °C; beyond, the nearer end
// is taken, and ok is false.
func At(tempC float64) (c *Chemistry, ok bool) {
	ok = tempC >= ColdestC && tempC <= WarmestC
	if math.IsNaN(tempC) {
		tempC = 25
	}
	tempC = min(max(tempC, ColdestC), WarmestC)
	c = &Chemistry{tempC: tempC, a: davies(tempC)}
	t := tempC + 273.15
	for i, s := range complexes {
		c.k[i] = math.Pow(10, s.k(t))
	}
	c.henry = math.Pow(10, henry(t))
	c.conductors()
	return c, ok
}

// TemperatureC is the temperature of these constants in °C.
func (c *Chemistry) TemperatureC() float64 { return c.tempC }

// Air says what stands over the water. The zero value is a closed bottle, whose
// carbonate stays; aerated water takes up or gives off carbon dioxide until it
// is even with so many ppm in the air.
type Air struct{ CO2PPM float64 }

// Closed is no air at all.
var Closed = Air{}

// OutdoorAir is what an air stone in a room without people blows in.
func OutdoorAir() Air { return Air{value(factCarbonDioxideAir)} }

func (a Air) open() bool { return a.CO2PPM > 0 }

// State is a solution come to rest: its pH, the ionic strength in mol/L, and
// what each component and complex is present as, in mol/L.
type State struct {
	PH            float64
	IonicStrength float64
	free          [ionCount]float64
	complex       [complexCount]float64
	hydrogen      float64
	charge        float64
	gamma         [4]float64
	chemistry     *Chemistry
}

// Free is what of a component is in no complex, in mol/L.
func (s State) Free(i Ion) float64 { return s.free[i] }

// Totals are the components again, free and bound. With open air the carbonate
// is what the water holds then.
func (s State) Totals() Ions {
	w := Ions(s.free)
	for n, sp := range complexes {
		if sp.cation != none {
			w[sp.cation] += s.complex[n]
		}
		if sp.anion != none {
			w[sp.anion] += s.complex[n]
		}
	}
	return w
}

// Species lists what carries or hides the ions, by name in a fixed order, for
// those who want to see it.
func (s State) Species() []Amount {
	out := []Amount{{"H", s.hydrogen}}
	for i, v := range s.free {
		out = append(out, Amount{Ion(i).Symbol(), v})
	}
	for n, v := range s.complex {
		out = append(out, Amount{complexes[n].name, v})
	}
	return out
}

// Amount is a named concentration in mol/L.
type Amount struct {
	Name string
	MolL float64
}

// String is the state in one line.
func (s State) String() string {
	return fmt.Sprintf("pH %.3f, I %.4f mol/L", s.PH, s.IonicStrength)
}
