package lamp

import "math"

// leastStepMM is a step that a hand can still see; a smaller one is none.
const leastStepMM = 1

// Raise is a day on which a lamp is hung higher.
type Raise struct {
	Day  int     // counted as the days of leaves given
	ByMM float64 // from where it hung before
	ToMM float64 // over the lid, afterwards
}

// Raises are the days on which a lamp goes up, so that leaves whose height over
// the lid is known for each day keep their distance from it. It goes up by whole
// steps, such as links of a chain, and never past top; fits is false where the
// leaves come too near even there. All heights count from the lid; a step under
// a millimetre goes up by what is needed.
func Raises(lampMM, topMM, stepMM float64, leavesMM []float64) (raises []Raise, fits bool) {
	fits = true
	for day, leaves := range leavesMM {
		need := RaiseMM(lampMM, leaves)
		if need == 0 {
			continue
		}
		to := lampMM + need
		if stepMM >= leastStepMM {
			to = lampMM + stepMM*math.Ceil(need/stepMM-1e-9)
		}
		if to > topMM {
			to = max(lampMM, topMM)
			fits = fits && to >= lampMM+need-1e-9
		}
		if to > lampMM {
			raises = append(raises, Raise{Day: day, ByMM: to - lampMM, ToMM: to})
			lampMM = to
		}
	}
	return raises, fits
}
