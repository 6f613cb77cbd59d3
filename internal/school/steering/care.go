package steering

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/reading"
)

// CheckDays is how many days may lie between two readings of a field of one tub:
// the pH or the EC; 1 for everything else.
func CheckDays(f reading.Field) int {
	switch f {
	case reading.FieldPH:
		return int(value(factCheckPhDays))
	case reading.FieldEC:
		return int(value(factCheckEcDays))
	}
	return 1
}

// WorkingLifeDays is how many days mixed solution keeps in a closed dark jug.
func WorkingLifeDays() int { return int(value(factLabelWorkingLife)) }

// RootsOutMinutes is how long roots may stay in a bucket of old solution.
func RootsOutMinutes() int { return int(value(factChangeoutMinutesRootsOut)) }

// RescueLitres is the room in buckets that stand ready for the roots of one tub.
func RescueLitres() quantity.L { return quantity.L(value(factLeakRescueVolume)) }

// Towels is how many lie ready for one tub.
func Towels() int { return int(value(factSpillTowels)) }

// Stress enters how much more than usual a hot dry day may take.
func Stress(b *working.Book) working.Number {
	f := Facts.Get(factThirstStressFactor)
	return b.Fact("stress_factor", "a hot dry day against a usual one", "k", quantity.Factor, f.Value, f)
}

// WaterStepWords is how near the temperature of new water has to be to the old.
func WaterStepWords(s quantity.System) string {
	apart := value(factFixWaterTempStepMax)
	if s == quantity.US {
		return quantity.FormatNumber(apart*9/5, 0) + " °F"
	}
	return quantity.FormatNumber(apart, 0) + " °C"
}
