package reading

import (
	"slices"
	"time"

	"rootbell/internal/base/quantity"
)

// Row is one row of the logbook. Rows are only ever added: a correction is a
// new row that names the one it takes the place of. A field that was not read
// is its zero value.
type Row struct {
	ID        string    // made by whoever writes it; the same row sent twice has the same id
	Tub       string    // the tub's name
	At        time.Time // when it was read, not when it was written down
	By        string    // a team or a job, never a person's name
	PH        PH
	EC        EC
	Water     quantity.Typed[quantity.DegC] // temperature of the water
	Level     Level
	Added     Added                       // poured in besides, where Level is not Filled
	Height    quantity.Typed[quantity.MM] // of the tallest plant above the lid
	Leaves    string
	Counted   quantity.Typed[quantity.Number] // leaves on one plant
	Picked    Picked                          // what was harvested
	Roots     Roots
	Seen      string // what else was seen
	Done      []Deed // what was done, after the reading
	Note      string // what else was done
	Doubtful  []Field
	Corrects  string // id of the row that this one takes the place of
	Withdrawn bool   // with Corrects: the reading should not have been
}

// Field names a part of a row, as the head of its column does.
type Field string

// The fields that can be asked about or kept as doubtful.
const (
	FieldTub    Field = "tub"
	FieldMoment Field = "moment"
	FieldPH     Field = "pH"
	FieldEC     Field = "EC"
	FieldWater  Field = "water"
	FieldLevel  Field = "level"
	FieldAdded  Field = "added"
	FieldHeight Field = "height"
	FieldLeaves Field = "leaves on one plant"
	FieldPicked Field = "plants picked"
	FieldWeigh  Field = "mass picked"
)

// Fields are all fields that can be doubtful, in the order of the form.
var fields = [...]Field{FieldTub, FieldMoment, FieldPH, FieldEC, FieldWater, FieldLevel, FieldAdded, FieldHeight, FieldLeaves, FieldPicked, FieldWeigh}

// Fields are all fields that can be asked about, in the order of the form.
func Fields() []Field { return slices.Clone(fields[:]) }

// PH is a pH as read: one value, or the two colours it lies between.
type PH struct {
	Read       quantity.Interval[quantity.PH]
	With       Instrument
	Step       quantity.PH // between two colours; zero: not given
	Calibrated time.Time   // the day, at midnight UTC; zero: nobody knows
}

// EC is a conductivity as read, in mS/cm whatever the meter shows. Read.Text
// is the figure on the meter.
type EC struct {
	Read       quantity.Interval[quantity.MSPerCM]
	With       Instrument
	Scale      Scale
	Step       quantity.MSPerCM
	Calibrated time.Time // the day it was last checked against a standard, as in PH
	Raw        bool      // the meter does not bring its figure to 25 °C
}

// Level is how much stands in the tub, told in one of three ways.
type Level struct {
	Litres quantity.Typed[quantity.L]  // read on the dipstick
	Depth  quantity.Typed[quantity.MM] // from the inside floor to the water
	Filled quantity.Typed[quantity.L]  // it was filled to the line with so much
}

// Set tells whether the level was told at all.
func (l Level) Set() bool { return l.Litres.Set() || l.Depth.Set() || l.Filled.Set() }

// Added is what was poured in, and how strong it was; EC unset is plain water
// from the tap.
type Added struct {
	Litres quantity.Typed[quantity.L]
	EC     quantity.Typed[quantity.MSPerCM]
}

// Picked is a harvest: how many plants were picked whole, and what they weigh
// together, fresh and without their roots.
type Picked struct {
	Plants quantity.Typed[quantity.Number]
	Mass   quantity.Typed[quantity.G]
}

// EachG is what one of the plants picked weighs, in g. False where their number
// or their mass is not known, or is in doubt.
func (r Row) EachG() (grams float64, ok bool) {
	p := r.Picked
	if !p.Mass.Set() || p.Mass.Value <= 0 || r.Doubts(FieldWeigh) || !r.CountsPicked() {
		return 0, false
	}
	return float64(p.Mass.Value) / float64(p.Plants.Value), true
}

// CountsPicked tells whether the row says, without a doubt, how many plants were
// picked.
func (r Row) CountsPicked() bool {
	return r.Picked.Plants.Set() && r.Picked.Plants.Value >= 1 && !r.Doubts(FieldPicked)
}

// Instrument is what a value was read with.
type Instrument string

// The instruments. The empty one is 'not said', and is taken for the coarsest.
const (
	Meter Instrument = "meter"
	Strip Instrument = "strip"
	Drops Instrument = "drops"
)

// Roots is how the roots look and whether they smell.
type Roots struct {
	Colour RootColour
	Smell  bool
}

// RootColour is the colour of the roots; empty: not looked at.
type RootColour string

// The colours.
const (
	White RootColour = "white"
	Tan   RootColour = "tan"
	Brown RootColour = "brown"
)

// Deed is one of the things that are done at a tub.
type Deed string

// The deeds that later sums need to know of. All else is a note.
const (
	ToppedUp   Deed = "topped up"
	ChangedOut Deed = "changed out"
	Fed        Deed = "fed"
	Corrected  Deed = "pH corrected"
	Planted    Deed = "planted"
	Harvested  Deed = "harvested"
	Nothing    Deed = "nothing"
)

var (
	instruments = [...]Instrument{Meter, Strip, Drops}
	colours     = [...]RootColour{White, Tan, Brown}
	deeds       = [...]Deed{ToppedUp, ChangedOut, Fed, Corrected, Planted, Harvested, Nothing}
)

// Deeds are the deeds to choose from, in the order of the form.
func Deeds() []Deed { return slices.Clone(deeds[:]) }

// Instruments are the instruments to choose from.
func Instruments() []Instrument { return slices.Clone(instruments[:]) }

// RootColours are the colours to choose from.
func RootColours() []RootColour { return slices.Clone(colours[:]) }

// Doubts tells whether a field is kept as doubtful.
func (r Row) Doubts(f Field) bool { return slices.Contains(r.Doubtful, f) }

// Did tells whether a deed was done.
func (r Row) Did(d Deed) bool { return slices.Contains(r.Done, d) }

// Correction is a row that takes the place of another, with the same values to
// begin with and an id of its own.
func (r Row) Correction(id string) Row {
	r.Corrects, r.ID, r.Withdrawn = r.ID, id, false
	r.Done, r.Doubtful = slices.Clone(r.Done), slices.Clone(r.Doubtful)
	return r
}

// Withdrawal is a row that takes a reading out of the logbook; the reading
// itself stays written down.
func (r Row) Withdrawal(id string) Row {
	r = r.Correction(id)
	r.Withdrawn = true
	return r
}
