package plan

import (
	"fmt"
	"time"

	"rootbell/internal/base/quantity"
)

type (
	// Length is a length as typed.
	Length = quantity.Typed[quantity.MM]
	// Volume is a volume as typed.
	Volume = quantity.Typed[quantity.L]
	// Mass is a mass as typed.
	Mass = quantity.Typed[quantity.KG]
	// Temperature is a temperature as typed.
	Temperature = quantity.Typed[quantity.DegC]
	// EC is an electrical conductivity as typed.
	EC = quantity.Typed[quantity.MSPerCM]
	// Density is a density as typed.
	Density = quantity.Typed[quantity.KGPerL]
	// Content is a content of water as typed.
	Content = quantity.Typed[quantity.MGPerL]
	// AirFlow is a flow of air as typed.
	AirFlow = quantity.Typed[quantity.LPerMin]
	// DailyVolume is a volume a day as typed.
	DailyVolume = quantity.Typed[quantity.LPerDay]
	// Power is an electric power as typed.
	Power = quantity.Typed[quantity.W]
	// PhotonFlux is a photon flux as typed.
	PhotonFlux = quantity.Typed[quantity.UmolPerS]
	// PPFD is a light on leaves as typed.
	PPFD = quantity.Typed[quantity.UmolPerM2S]
	// Illuminance is a light for the eye as typed, in lux.
	Illuminance = quantity.Typed[quantity.LX]
	// Share is a share of a whole as typed.
	Share = quantity.Typed[quantity.Fraction]
	// MoleShare is a share of air as typed, in ppm.
	MoleShare = quantity.Typed[quantity.MoleShare]
	// PH is a pH as typed.
	PH = quantity.Typed[quantity.PH]
	// Cash is an amount of money as typed.
	Cash = quantity.Typed[quantity.Cash]

	// ContentReading is a content of the tap water: a figure, or the interval
	// that a strip leaves open.
	ContentReading = quantity.Interval[quantity.MGPerL]
	// ECReading is a conductivity of the tap water: a figure or an interval.
	ECReading = quantity.Interval[quantity.MSPerCM]
	// PHReading is a pH of the tap water: a figure or an interval.
	PHReading = quantity.Interval[quantity.PH]
)

// Opt is a value that may be left out. The zero value is one left out.
type Opt[T any] struct {
	Value T
	Given bool
}

// Or is the value given, or the default when it was left out.
func (o Opt[T]) Or(value T) T {
	if o.Given {
		return o.Value
	}
	return value
}

type (
	// Tick is yes or no.
	Tick = Opt[bool]
	// Whole is a whole number.
	Whole = Opt[int]
)

// Pair is two lengths: a size (width along x, depth along y) or a point (x, y).
type Pair [2]Length

// Set tells whether the pair was given.
func (p Pair) Set() bool { return p[0].Set() && p[1].Set() }

// Disc is a circle: x and y of its centre, and its radius.
type Disc [3]Length

// Set tells whether the circle was given.
func (d Disc) Set() bool { return d[0].Set() && d[1].Set() && d[2].Set() }

// Box is a rectangle from corner to corner: x0, y0, x1, y1.
type Box [4]Length

// Set tells whether the rectangle was given.
func (b Box) Set() bool { return b[0].Set() && b[1].Set() && b[2].Set() && b[3].Set() }

// Line is a straight line from one point to another.
type Line [2]Pair

// Set tells whether the line was given.
func (l Line) Set() bool { return l[0].Set() && l[1].Set() }

// Corners is the radius of a tub's upright corners at its top and at its base.
// Typed as one radius, both are the same.
type Corners struct {
	Top, Base Length
}

// Set tells whether a radius was given.
func (c Corners) Set() bool { return c.Top.Set() }

// Plants is how many plants a tub is to hold: a number, or the best number.
// The zero value is one left out.
type Plants struct {
	Best   bool
	Number int // zero when Best
	Given  bool
}

// Date is a day of the calendar. The zero value is one left out.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// Set tells whether a day was given.
func (d Date) Set() bool { return d != Date{} }

// String gives the day as 2027-01-11.
func (d Date) String() string { return fmt.Sprintf("%04d-%02d-%02d", d.Year, int(d.Month), d.Day) }

// Clock is a time of day, in minutes after midnight.
type Clock = Opt[Minutes]

// Minutes is minutes after midnight, 0 to 1440.
type Minutes int

// String gives the time of day as 08:30.
func (m Minutes) String() string { return fmt.Sprintf("%02d:%02d", int(m)/60, int(m)%60) }
