package solution

import "math"

// Gypsum is the saturation index of CaSO4·2H2O: the logarithm of what is there
// over what can stay dissolved. Above 0 it falls out. Beyond an ionic strength
// of about 0.5 mol/L only its sign is to be trusted.
func (s State) Gypsum() float64 {
	return logOr(s.free[Ca]*s.free[SO4]*s.gamma[2]*s.gamma[2]) - value(factSolidGypsum)
}

// Brushite is the saturation index of CaHPO4·2H2O, the phosphate that makes a
// solution cloudy; as for Gypsum.
func (s State) Brushite() float64 {
	return logOr(s.free[Ca]*s.complex[hydrogenPhosphate]*s.gamma[2]*s.gamma[2]) - value(factSolidBrushite)
}

// logOr is the logarithm, and a very low number for nothing at all.
func logOr(v float64) float64 {
	if v <= 0 {
		return -99
	}
	return math.Log10(v)
}
