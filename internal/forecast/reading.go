package forecast

import (
	"errors"
	"math"
)

// Quantity is what a reading is of.
type Quantity int

// The quantities that a forecast learns from.
const (
	Level    Quantity = iota // of the water, mm over the floor
	Strength                 // EC, mS/cm at 25 °C
	Height                   // of the plants of a stand over the lid, mm
	Picked                   // fresh mass of one picked plant of a stand, g
	Leaves                   // on one plant of a stand, counted
	quantityCount
)

// HeightSDMM is the error of a plant's height read with a ruler, one standard
// deviation.
func HeightSDMM() float64 { return value(factReadHeight) }

// PickedSDG is the error of the mass of one plant where so many were picked and
// weighed together, one standard deviation in g: of the scale, and because those
// picked are not all that stand there.
func PickedSDG(eachG float64, plants int) float64 {
	n := float64(max(1, plants))
	return math.Hypot(value(factReadPicked)/100*eachG/math.Sqrt(n), value(factReadScale)/n)
}

// LeavesSD is the error of a count of leaves, one standard deviation: which of
// the small ones count is not the same for two children.
func LeavesSD() float64 { return value(factReadLeaves) }

// Reading is one figure read at the tub, before anything is done there.
type Reading struct {
	AtHour float64
	Of     Quantity
	Stand  int // for Height, Picked and Leaves
	Value  float64
	SD     float64 // standard deviation of the reading's error, in its unit, over 0
}

func (r Reading) check(stands []Stand) error {
	switch {
	case !finite(r.AtHour, r.Value, r.SD) || r.AtHour < 0 || r.Value < 0:
		return errors.New("its hour or its figure is not known")
	case !(r.SD > 0):
		return errors.New("no instrument is without an error")
	case r.Of < Level || r.Of >= quantityCount:
		return errors.New("no such quantity")
	case r.Of >= Height && (r.Stand < 0 || r.Stand >= len(stands)):
		return errors.New("it is of a stand that is not there")
	case r.Of == Height && stands[r.Stand].Crop.Name == "":
		return errors.New("the height of a crop that is not named says nothing")
	case r.Of == Leaves && !CountsLeaves(stands[r.Stand].Crop):
		return errors.New("how many leaves that crop has is not followed")
	}
	return nil
}
