package oxygen

import "math"

// Respiration is what a gram of dry root takes at 22 °C: as taken for granted
// here, and the ends of what is reported, in nmol/g/s.
func Respiration() (low, usual, high float64) {
	return value(factRootsRespirationLow), value(factRootsRespiration), value(factRootsRespirationHigh)
}

var (
	respirationTempC = value(factRootsRespirationTemperature)
	respirationLnQ10 = math.Log(value(factRootsRespirationQ10))
	gramPerMole      = value(factOxygenMolarMass)
)

// RespirationAt carries a respiration at 22 °C to another temperature.
func RespirationAt(nmolGS, tempC float64) float64 {
	return nmolGS * math.Exp(respirationLnQ10*(tempC-respirationTempC)/10)
}

// UptakeMgH is what roots of a dry mass in grams take, in mg/h, at a
// respiration in nmol/g/s.
func UptakeMgH(dryRootG, nmolGS float64) float64 { return dryRootG * nmolGS * 3600 * gramPerMole / 1e6 }

// Air is what a pump blows through a stone.
type Air struct {
	FlowLMin float64 // through all stones together
	DepthMM  float64 // water over the stone
	// Transfer is the share of the oxygen taken up for each metre of depth, 1/m;
	// see Transfer for usual values.
	Transfer float64
}

// Transfer is the share of a bubble's oxygen that water takes up for each metre
// of depth, 1/m: at the lower end and of air stones, and of fine bubbles.
func Transfer() (low, stone, fine float64) {
	return value(factAirTransferLow) / 100, value(factAirTransferCoarse) / 100, value(factAirTransferFine) / 100
}

// StandardMgH is what the air would bring into water at 20 °C without any
// oxygen, in mg/h.
func (a Air) StandardMgH() float64 {
	return max(0, a.FlowLMin*60*1000*airOxygen*a.Transfer*a.DepthMM/1000)
}

// PerHour is the rate at which the air closes the gap to saturation in a tub of
// some litres at a temperature, 1/h.
func (a Air) PerHour(litres, tempC float64) float64 {
	if !(litres > 0) {
		return 0
	}
	return a.StandardMgH() / (standard * litres) * math.Pow(perKelvin, tempC-20)
}

// RuleLMin is the flow that the trade's rule gives a tub of some litres.
func RuleLMin(litres float64) float64 { return value(factAirFlow) * litres / 10 }

// HeadPa is the pressure that a pump works against under a depth of water in
// mm; tubes and stones come on top.
func HeadPa(depthMM float64) float64 {
	return value(factWaterWeight) * value(factGravity) * depthMM / 1000
}

// IdealWatts is the least power that pushes a flow against a head. Small pumps
// take ten times as much and more.
func IdealWatts(flowLMin, headPa float64) float64 { return flowLMin / 60000 * headPa }

// SiphonMM is the level to which a tub empties through its air line when the
// pump stops and no check valve holds: down to the stone, or to the pump where
// that is higher. drains is false where nothing runs, because the pump stands
// above the water. All heights count from the tub's inside floor.
func SiphonMM(lineMM, stoneMM, pumpMM float64) (levelMM float64, drains bool) {
	if pumpMM >= lineMM || stoneMM >= lineMM {
		return lineMM, false
	}
	return max(stoneMM, pumpMM, 0), true
}
