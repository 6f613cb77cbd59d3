package water

import (
	"math"
	"strconv"
	"strings"

	"rootbell/internal/base/facts"
)

func value(id facts.ID) float64 { return Facts.Get(id).Value }

// figures are the numbers of a row that holds several.
func figures(id facts.ID) []float64 {
	words := strings.Fields(Facts.Get(id).Word)
	out := make([]float64, len(words))
	for i, w := range words {
		v, err := strconv.ParseFloat(w, 64)
		if err != nil {
			panic("water: " + string(id) + ": " + err.Error())
		}
		out[i] = v
	}
	return out
}

// Compiled once from the facts and never written again.
var (
	vapourFigures   = figures(factAirVapour)
	vapour0         = vapourFigures[0]
	vapourA         = vapourFigures[1]
	vapourB         = vapourFigures[2]
	pressureFigures = figures(factAirPressure)
	gasPerKPa       = 1000 * value(factAirWaterMolarMass) / value(factAirGasConstant)
)

const kelvin = 273.15

// FullVapourKPa is the pressure of water vapour in air that holds all it can,
// FAO-56 equation 11.
func FullVapourKPa(tempC float64) float64 { return vapour0 * math.Exp(vapourA*tempC/(tempC+vapourB)) }

// SlopeKPa is how much that rises with a kelvin, FAO-56 equation 13, in kPa/K.
func SlopeKPa(tempC float64) float64 {
	d := tempC + vapourB
	return vapourA * vapourB * FullVapourKPa(tempC) / (d * d)
}

// PressureKPa is the usual pressure of the air at metres above the sea, FAO-56
// equation 7; it holds from the sea to the highest school.
func PressureKPa(altitudeM float64) float64 {
	p := pressureFigures
	return p[0] * math.Pow((p[1]-p[2]*altitudeM)/p[1], p[3])
}

// PsychrometricKPa is the psychrometric constant at a pressure, FAO-56 equation
// 8, in kPa/K.
func PsychrometricKPa(pressureKPa float64) float64 { return value(factAirPsychrometric) * pressureKPa }

// Room is the air around the leaves.
type Room struct {
	TempC    float64
	Humidity float64 // relative, 0 to 1
}

// Valid tells whether the formulas hold for a room: 0 to 45 °C and a humidity
// from nought to full.
func (r Room) Valid() bool {
	return r.TempC >= 0 && r.TempC <= 45 && r.Humidity >= 0 && r.Humidity <= 1
}

// DeficitKPa is the vapour pressure deficit: how thirsty the air is.
func (r Room) DeficitKPa() float64 { return FullVapourKPa(r.TempC) * (1 - r.Humidity) }

// VapourGM3 is the water in the air, in g/m³, by the ideal gas.
func (r Room) VapourGM3() float64 { return gramsPerM3(r.Humidity*FullVapourKPa(r.TempC), r.TempC) }

func gramsPerM3(kPa, tempC float64) float64 { return gasPerKPa * kPa / (tempC + kelvin) }
