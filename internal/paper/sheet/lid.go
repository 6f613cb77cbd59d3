package sheet

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
)

// Lid is all that the lid sheet and the helper card show of one tub's lid.
// Lengths are in mm. Coordinates are the plan's: seen from above with the lid
// on, from the lower left of the flat part, x to the right and y up.
type Lid struct {
	Garden   string
	Tub      string
	Invented bool // the numbers belong to an example that is made up
	System   garden.System

	Outline     scene.Path   // the lid's flat part, closed
	KeepClear   []KeepClear  // where no hole may be
	CentresIn   []scene.Path // edge of the region for centres, if it is to be shown
	Holes       []Hole       // for the cups
	AirLine     *AirLine     // nil where none was placed
	Service     *Opening     // nil where none was placed
	Cup         Cup
	ThicknessMM float64 // of the lid; 0 where unknown
	Foam        *Foam   // nil for a lid that is drilled

	RulerStepMM float64 // the step the centres lie on; 0 when on none
	ToleranceMM float64 // how far a measured distance may be off
	LeastWebMM  float64 // least plastic left beside a hole in the worst case; 0 where unknown
	Pairs       []Pair  // distances to measure afterwards; empty: chosen here

	Layout   string // the layout's name: widest, rows, ruler
	Stop     string // why nobody may drill; empty when all is well
	On       string // the date it was asked for, YYYY-MM-DD
	Revision string // of the plan; may be empty
}

// Foam is what a board of foam must keep: between two holes, between a hole and
// the board's edge, and of the cup below the board.
type Foam struct{ WebMM, EdgeMM, CupMM float64 }

// KeepClear is a part of the lid where no hole may be.
type KeepClear struct {
	Shape scene.Path
	Why   string
}

// Hole is a hole for a cup.
type Hole struct {
	N                int
	XMM, YMM, SizeMM float64 // SizeMM is the diameter
}

// Opening is another hole through the lid.
type Opening struct{ XMM, YMM, SizeMM float64 }

// AirLine is the hole for the air line, in the lid, or in the tub's wall at
// HeightMM above the inside floor, nearest to the given place of the outline.
type AirLine struct {
	Opening
	OnWall   bool
	HeightMM float64
}

// Cup is the net cup the holes are for.
type Cup struct{ BodyMM, RimMM, DepthMM float64 }

// Pair is a distance between the centres of two holes.
type Pair struct {
	A, B int
	MM   float64
}

// At is the hole's centre.
func (h Hole) At() scene.Point { return scene.Point{X: h.XMM, Y: h.YMM} }

// At is the opening's centre.
func (o Opening) At() scene.Point { return scene.Point{X: o.XMM, Y: o.YMM} }
