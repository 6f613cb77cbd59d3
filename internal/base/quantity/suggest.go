package quantity

import "strings"

// wouldDo lists units that would do for the kind, as said in a hint.
func wouldDo(k Kind) string {
	switch k.Dim {
	case LengthDim:
		return "mm, cm, m, in or ft"
	case AreaDim:
		return "cm², m², in² or ft²"
	case VolumeDim:
		return "mL, L, gal (US), imp gal, qt, pt or fl oz"
	case MassDim:
		return "g, kg, oz or lb"
	case TimeDim:
		return "min, h or d"
	case TemperatureDim:
		return "°C or °F"
	case DensityDim:
		if k.Metric == MilligramPerL {
			return "mg/L, g/L or ppm"
		}
		return "kg/L, g/mL or lb/gal"
	case FlowDim:
		if k.Metric == LitrePerDay {
			return "L/d, mL/d or gal/d"
		}
		return "L/min, L/h or gal/min"
	case PowerDim:
		return "W or kW"
	case PhotonFluxDim:
		return "µmol/s"
	case PPFDDim:
		return "µmol/m²/s"
	case IlluminanceDim:
		return "lx or klx"
	case ConductivityDim:
		return "mS/cm, µS/cm or dS/m"
	}
	if k.Metric.Symbol != "" {
		return k.Metric.Symbol
	}
	return "a number alone"
}

// unitOf names what a unit of the kind would be: "a unit of length".
func unitOf(k Kind) string {
	_, noun, _ := strings.Cut(k.Name, " ")
	return "a unit of " + noun
}

// suited puts an example of the kind asked for in place of the general one.
func suited(bad *Error, k Kind) *Error {
	bad.Hint = strings.ReplaceAll(bad.Hint, "3 in", example(k))
	if bare(k) {
		bad.Hint = strings.Replace(bad.Hint, "a number and a unit", "a number", 1)
	}
	return bad
}

// example is a quantity of the kind as a teacher might type it.
func example(k Kind) string {
	switch k.Dim {
	case LengthDim:
		return "3 in"
	case VolumeDim:
		return "45 L"
	case MassDim:
		return "20 g"
	case TemperatureDim:
		return "21 °C"
	case DensityDim:
		if k.Metric == MilligramPerL {
			return "120 mg/L"
		}
	}
	if k.Metric.Symbol == "" {
		return "5"
	}
	return "5 " + k.Metric.Symbol
}
