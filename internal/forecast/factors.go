package forecast

import (
	"math"
	"math/rand/v2"

	"rootbell/internal/base/facts"
)

// Factor is one thing in which a class's tub differs from the model.
type Factor int

// The factors. Each is a multiplier of what the model says, but Warmth, which
// is added in K, and Damp, which is added to the humidity.
const (
	Growth  Factor = iota // photosynthesis
	Thirst                // water that leaves breathe out
	Uptake                // salts taken with a litre
	Light                 // at the leaf
	Open                  // gaps of the lid
	Breath                // oxygen that roots take
	Warmth                // of the room
	Damp                  // of the room
	Tall                  // height of a plant beside the rule's
	Start                 // dry mass of a young plant
	Leafing               // leaves by warmth
	factorCount
)

var spreadIDs = [factorCount]facts.ID{
	factSpreadGrowth, factSpreadThirst, factSpreadUptake, factSpreadLight, factSpreadOpen,
	factSpreadBreath, factSpreadWarmth, factSpreadDamp, factSpreadHeight, factSpreadStart, factSpreadLeaves,
}

// spreads are one standard deviation of each factor: of its logarithm for a
// multiplier, in K for Warmth, as a share of full for Damp.
var spreads = func() (out [factorCount]float64) {
	for k, id := range spreadIDs {
		out[k] = value(id) / 100
	}
	out[Warmth] = value(factSpreadWarmth)
	return out
}()

var (
	daySpread = value(factSpreadDay) / 100
	fillMM    = value(factSpreadFill)
	mixSpread = value(factSpreadMix) / 100
)

// Factors are those of one member, each in standard deviations from the model.
// The zero Factors are the model itself.
type Factors [factorCount]float64

// Value is a factor as it acts: a multiplier, or for Warmth and Damp what is
// added.
func (f Factors) Value(k Factor) float64 {
	if k < 0 || k >= factorCount {
		return 1
	}
	if k == Warmth || k == Damp {
		return spreads[k] * f[k]
	}
	return math.Exp(spreads[k] * f[k])
}

// streamOfLeaves keeps the chance of Leafing apart from that of the others, so
// that a forecast whose leaves nobody counts is the same with it and without.
const streamOfLeaves = 1 << 41

// draw is the factors of a member that nothing is known of.
func draw(r *rand.Rand, leaves *rand.Rand) (f Factors) {
	for k := range Leafing {
		f[k] = r.NormFloat64()
	}
	f[Leafing] = leaves.NormFloat64()
	return f
}
