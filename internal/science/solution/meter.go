package solution

// Scale is what a meter multiplies EC with to show ppm. None of them is mg/L
// of nutrients.
type Scale int

// The scales in use, named by their ppm for 1 mS/cm.
const (
	PPM500 Scale = 500
	PPM640 Scale = 640
	PPM700 Scale = 700
)

// Factor is the scale's ppm for each mS/cm.
func (s Scale) Factor() float64 {
	switch s {
	case PPM640:
		return value(factEcScale640)
	case PPM700:
		return value(factEcScale700)
	default:
		return value(factEcScale500)
	}
}

// PPM is what a meter of the scale shows for an EC in mS/cm.
func (s Scale) PPM(ecMS float64) float64 { return ecMS * s.Factor() }

// EC is the EC in mS/cm behind a reading in ppm.
func (s Scale) EC(ppm float64) float64 { return ppm / s.Factor() }

// Slopes of EC with temperature, as a share of the EC at 25 °C for each kelvin:
// of the standard KCl solution, and of a complete nutrient solution.
func Slopes() (standard, feed float64) { return percent(factEcSlope), percent(factEcSlopeFeed) }

// To25 brings a reading of a meter that does not compensate to 25 °C. It is
// meant for 5 to 35 °C.
func To25(reading, tempC, slope float64) float64 { return reading / (1 + slope*(tempC-25)) }
