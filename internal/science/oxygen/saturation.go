package oxygen

import (
	"math"
	"strconv"
	"strings"

	"rootbell/internal/base/facts"
)

func value(id facts.ID) float64 { return Facts.Get(id).Value }

// polynomial is the row's figures as coefficients of rising powers.
func polynomial(id facts.ID) []float64 {
	words := strings.Fields(Facts.Get(id).Word)
	out := make([]float64, len(words))
	for i, w := range words {
		v, err := strconv.ParseFloat(w, 64)
		if err != nil {
			panic("oxygen: " + string(id) + ": " + err.Error())
		}
		out[i] = v
	}
	return out
}

func at(c []float64, x float64) float64 {
	sum := 0.0
	for i := len(c) - 1; i >= 0; i-- {
		sum = sum*x + c[i]
	}
	return sum
}

// Compiled once from the facts and never written again.
var (
	fresh     = polynomial(factOxygenSolubilityFresh)
	salt      = polynomial(factOxygenSolubilitySalt)
	vapour    = polynomial(factOxygenSolubilityVapour)
	theta     = polynomial(factOxygenSolubilityTheta)
	salinity  = polynomial(factOxygenSalinity)
	standard  = value(factOxygenReference)
	perKelvin = value(factAirTransferTheta)
	airOxygen = value(factAirOxygen)
)

// Atmosphere is one atmosphere in kPa.
const Atmosphere = 101.325

const kelvin = 273.15

// Water is what decides how much oxygen it can hold. The formulas hold from 0
// to 40 °C, 50 to 110 kPa and up to sea water.
type Water struct {
	TempC       float64
	PressureKPa float64 // of the air over it
	ECmS        float64 // mS/cm at 25 °C
}

// Valid tells whether the formulas of this package hold for the water.
func (w Water) Valid() bool {
	return w.TempC >= 0 && w.TempC <= 40 && w.PressureKPa >= 50 && w.PressureKPa <= 110 && w.ECmS >= 0 && w.ECmS <= 50
}

// Saturation is the oxygen that water under air holds, in mg/L.
//
// Source: Benson & Krause 1980, 1984, as used by the USGS.
func (w Water) Saturation() float64 {
	return freshMgL(w.TempC) * saltFactor(w.TempC, Salinity(w.ECmS)) * pressureFactor(w.TempC, w.PressureKPa/Atmosphere)
}

// freshMgL is for fresh water under one atmosphere.
func freshMgL(tempC float64) float64 { return math.Exp(at(fresh, 1/(tempC+kelvin))) }

func saltFactor(tempC, permil float64) float64 {
	return math.Exp(-permil * at(salt, 1/(tempC+kelvin)))
}

func pressureFactor(tempC, atmospheres float64) float64 {
	u, th := math.Exp(at(vapour, 1/(tempC+kelvin))), at(theta, tempC)
	return (atmospheres - u) * (1 - th*atmospheres) / ((1 - u) * (1 - th))
}

// Salinity is the salt of water by its EC in mS/cm at 25 °C, in permil.
func Salinity(ecmS float64) float64 {
	ec := 1000 * ecmS
	return ec * at(salinity, ec)
}

// MgL is a content of oxygen in mmol/L as mg/L.
func MgL(mmolL float64) float64 { return mmolL * value(factOxygenMolarMass) }

// Levels are the oxygen to aim at, to warn below and to act below, in mg/L, and
// the one under which lettuce was seen to suffer.
func Levels() (aim, warn, act, critical float64) {
	return value(factOxygenAim), value(factOxygenWarn), value(factOxygenAct), value(factOxygenCritical)
}
