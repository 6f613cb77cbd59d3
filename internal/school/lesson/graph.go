package lesson

import "math"

// Graph is drawn on squared paper. On the pupil's copy the axes stand with
// their numbers, and what belongs on it is left to the pupil unless the sheet
// is filled.
type Graph struct {
	Title  string
	X, Y   Axis
	Bars   bool // a bar for each point, named by its label
	Points []Point
	Line   *[2]float64 // start and slope, in the key
	Joined bool        // the points are joined
	Same   bool        // one scale both ways, as of a lid seen from above
	Scale  float64     // of a drawing at true scale: 1 to so much; 0 for none
	Round  bool        // the lid of a drawing is a disc
	Discs  float64     // diameter of the circles round points, in units of the axes
}

// Axis is one side of a graph.
type Axis struct {
	Name, Unit string
	To, Step   float64 // from nought, in steps
}

// Point is one mark.
type Point struct {
	X, Y  float64
	Label string
	Odd   bool
}

// axis is one that reaches to a value in at most so many steps of 1, 2 or 5.
func axis(name, unit string, to float64, most int) Axis {
	if !(to > 0) {
		to = 1
	}
	step := math.Pow(10, math.Floor(math.Log10(to/float64(most))))
	for _, k := range []float64{1, 2, 5, 10} {
		if s := step * k; math.Ceil(to/s-1e-9) <= float64(most) {
			step = s
			break
		}
	}
	return Axis{Name: name, Unit: unit, Step: step, To: math.Ceil(to/step-1e-9) * step}
}
