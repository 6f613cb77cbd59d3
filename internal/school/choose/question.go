package choose

import (
	"rootbell/internal/base/working"
	"rootbell/internal/school/shopping"
)

// Question is what is compared, as plain values.
type Question struct {
	Crops int  // planned, one after the other; 0 takes the usual number
	Plant Need // of the plant that is counted with
	Site  Site
	Have  Have // what the school has already, whatever it chooses
	Lamp  Lamp // over the shelf
	// Tube is how much air tube an offer without one wants, in TubeUnit.
	Tube     int
	TubeUnit string
	Build    *Build
	Offers   []Offer
	// Prices are the teacher's own, by item. There are no others.
	Prices map[string]float64
}

// Need is what one plant of the crop wants, and what it gives.
type Need struct {
	Crop    string
	Litres  working.Number // solution for one
	Spacing working.Number // centre to centre
	Mass    working.Number // at harvest
	Days    working.Number // in the tub
	Nursery float64        // days before that
	Portion working.Number // one serving
	Aerated bool
}

// Answer is yes, no or not known yet.
type Answer int

// The answers; the zero value is not known.
const (
	Ask Answer = iota
	Yes
	No
)

// Site is what there is where the tubs are to stand.
type Site struct {
	Socket, RCD, Kitchen Answer
	AdultDrills          bool
	LoadKG               float64 // that the shelf bears in the middle; 0 where that is not known
}

// Have is what the school has already.
type Have struct{ PH, EC, Feed, Lamp bool }

// Lamp is the light over the shelf; watts 0 where there is none.
type Lamp struct {
	Watts, Hours float64
}

// Build is the garden of the plan, to be built by the school.
type Build struct {
	Plants  int
	Items   []shopping.Item
	Tubs    []Tub
	Stopped string // why the plan cannot be built as it is
	Past    string // the name of a tub of unknown past; empty for none
}

// Tub is one tub of the plan.
type Tub struct {
	Name      string
	Plants    int
	Solution  working.Number
	Mass      working.Number // of one plant at harvest
	Stones    int
	PumpWatts float64 // 0 where its label is not known
	Still     bool
}

// Offer is a kit or tub that the school could buy.
type Offer struct {
	Name                     string
	Price, Delivery, PerCrop *float64
	Refill                   *float64
	Months                   int // feed that comes with it
	Sites                    int
	Litres                   float64
	Includes, Lacks          []string
	PH, EC                   bool    // meters that come with it
	Watts                    float64 // of its own lamp
	Flux                     float64 // of its own lamp, µmol/s
	Past                     Past
	Holes                    *Holes // nil without a pattern
	Contradicts              string // why its figures cannot be trusted; empty where they agree
}

// Past is what is known of what a tub was used for.
type Past int

// The pasts of a tub.
const (
	New Past = iota
	Known
	Unknown
)

// Holes is what the search found among an offer's holes: At(k) are the best k
// of them, by number from 1, how far apart they stand, and whether that is
// proved.
type Holes struct {
	Count int
	At    func(k int) (use []int, apartMM float64, proved bool)
}
