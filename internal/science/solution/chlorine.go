package solution

import (
	"fmt"
)

// Dechlorination is how chlorine comes out of so many litres, before the salts
// go in. Milligrams are exact; a pinch more does no harm.
type Dechlorination struct {
	StandHours     float64 // open bucket, under 20 cm; 0 where standing does not help
	StandHoursDeep float64
	AscorbicMg     float64
	ThiosulfateMg  float64 // of the pentahydrate
	AmmoniaMgL     float64 // nitrogen that chloramine leaves, mg/L
	UseBelowMgL    float64
	HarmMgL        float64
}

// ascorbicPerChlorine is mg of ascorbic acid for each mg of chlorine: one
// molecule takes up one.
func ascorbicPerChlorine() float64 { return molarMass("C6H8O6") / molarMass("Cl2") }

// Dechlorinate is what takes mg/L of free chlorine and of chloramine, both as
// Cl2, out of the water. Standing helps against free chlorine only.
func Dechlorinate(litres, chlorineMgL, chloramineMgL float64) Dechlorination {
	mg := litres * (chlorineMgL + chloramineMgL)
	d := Dechlorination{
		AscorbicMg: mg * ascorbicPerChlorine(), ThiosulfateMg: mg * value(factChlorineThiosulfate),
		AmmoniaMgL:  chloramineMgL * weight("N") / molarMass("Cl2"),
		UseBelowMgL: value(factChlorineUseBelow), HarmMgL: value(factChlorineHarm),
	}
	if chloramineMgL < d.UseBelowMgL {
		d.StandHours, d.StandHoursDeep = value(factChlorineStandHours), value(factChlorineStandHoursDeep)
	}
	return d
}

// UnknownChlorine is what tap water may hold where nobody measured, in mg/L.
func UnknownChlorine() float64 { return value(factChlorineLimit) }

// TopUpShare is the share of the tub that may be topped up a day with water of
// so much chlorine before the whole reaches what hurts; at most 1.
func TopUpShare(chlorineMgL float64) float64 {
	if chlorineMgL <= 0 {
		return 1
	}
	return min(1, value(factChlorineHarm)/chlorineMgL)
}

// Bleach is how a tub is cleaned down: bleach for so many litres, how long, and
// when it is rinsed well enough.
type Bleach struct {
	Millilitres    float64
	ChlorineMgL    float64
	ContactMinutes float64
	RinseBelowMgL  float64
	LifeDays       float64
}

// CleanDown is the bleach for so many litres of cleaning water. percent is the
// available chlorine of the label, in g for 100 mL where the density is 0, else
// in g for 100 g. Never with acid, never with fertiliser, never on the same day.
func CleanDown(litres, percent, densityKgL float64) (Bleach, error) {
	b := Bleach{
		ChlorineMgL: value(factBleachChlorine), ContactMinutes: value(factBleachContactMinutes),
		RinseBelowMgL: value(factBleachRinseBelow), LifeDays: value(factBleachLife),
	}
	if densityKgL > 0 {
		percent *= densityKgL
	}
	if most := value(factBleachStrongest); !(percent >= 0.5 && percent <= most) {
		return b, &Fault{"bleach-strength", "bleach.chlorine", fmt.Sprintf("%g %% available chlorine is no household bleach", percent), fmt.Sprintf("it lies between 0.5 and %g %%; read the label, and use plain bleach without scent or detergent", most)}
	}
	if !(litres > 0) {
		return b, &Fault{"tub-empty", "", "there is no water to clean with", "look at the tub's fill line"}
	}
	b.Millilitres = 1000 * litres * b.ChlorineMgL / (10_000*percent - b.ChlorineMgL)
	return b, nil
}

// BleachChlorine is the available chlorine in mg/L of so many millilitres of
// bleach in so many litres; percent is g of available chlorine in 100 mL.
func BleachChlorine(millilitres, litres, percent float64) float64 {
	return 10_000 * percent * millilitres / (1000*litres + millilitres)
}

// AvailableChlorine is the percentage of available chlorine of a label that
// gives sodium hypochlorite instead.
func AvailableChlorine(hypochloritePercent float64) float64 {
	return hypochloritePercent * value(factBleachFactor)
}
