package lesson

import (
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/science/reading"
)

// Tub is what sheets may ask about: a tub as its plan has it, what grows in it,
// and its rows of the logbook. What is not known is zero; lengths are in mm.
type Tub struct {
	Name   string
	System quantity.System
	Zone   *time.Location
	On     time.Time // the day asked for, midnight UTC

	Crop   string
	Plants int
	Holes  []Hole
	Hole   float64 // diameter
	Lid    Plate

	Straight     bool // a rectangular tub
	Top, Base    [2]float64
	Height, Fill float64
	Tape         float64 // how far a measure may be off
	SolutionL    quantity.L
	ReserveL     quantity.L // from the fill line to the lowest safe line
	LitresAt     func(mm float64) quantity.L

	Lamp      *Lamp
	Dose      *Dose
	School    [2]int // minutes after midnight at which it begins and ends
	Germinate float64
	TapEC     quantity.MSPerCM
	WantEC    quantity.MSPerCM
	Price     float64 // of a kilowatt hour
	Currency  string

	Sown, Meal         time.Time // midnight UTC
	TermFrom, TermTill time.Time
	Away               []Stretch

	Entries []reading.Entry
	Vessel  reading.Vessel
}

// Hole is a hole of the lid by its number, from the lid's lower left corner.
type Hole struct {
	N    int
	X, Y float64
}

// Plate is a flat lid: a rectangle, or a disc where Round.
type Plate struct {
	Long, Wide float64
	Round      bool
}

// Lamp is when the lamp is lit, in minutes after midnight, and what it takes.
type Lamp struct {
	On, Off int
	Watts   float64
}

// Dose is the maker's dose of a bottle, in mL for a litre.
type Dose struct {
	Name   string
	MLPerL float64
}

// Stretch is a time in which nobody comes.
type Stretch struct {
	Words string
	Hours float64
}
