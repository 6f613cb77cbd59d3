package choose

import (
	"rootbell/internal/base/working"
)

// Option is one way to a garden, with what it feeds, lacks and costs.
type Option struct {
	Key   string // of its numbers: choose.build, choose.offer_1
	Name  string
	Built bool
	Offer int // its place among the offers; -1 for the build

	Possible bool
	NotYet   []string // why it is not possible yet
	ForFood  bool
	NotFood  string // why nothing from it is eaten

	Contradicts string // why its plants cannot be counted; empty where its figures agree

	Sites, Plants int
	Limits        Limits
	Binds         string    // what stops at so many plants
	Use, Cap      []int     // holes by number, from 1; nil without a pattern
	ApartMM       float64   // least distance between two that are used; 0 for fewer than two
	Proved        bool      // that no other choice stands further apart
	Crowded       bool      // the holes stand closer than the crop wants, whatever is chosen
	PerSite       OrUnknown // solution for each hole

	Lacks []Thing
	Needs []string // what the school may not have

	Lines    []Line
	Unknown  []string // what has no price; never guessed
	Costs    Costs
	Planted  working.Number // all crops
	Harvest  working.Number
	Servings working.Number

	For, Against []string
}

// Limits are how many plants each thing allows; -1 where that is not known.
type Limits struct{ Water, Holes, Room int }

// The words for what stops at so many plants.
const (
	ByWater = "nutrient volume"
	ByHoles = "holes"
	ByRoom  = "spacing"
	ByPlan  = "the plan"
)

// OrUnknown is a number that may not be known.
type OrUnknown struct {
	working.Number
	Is bool
}

func known(n working.Number) OrUnknown { return OrUnknown{n, n.Known()} }

// Thing is something that is not there and has to be.
type Thing struct {
	Item  string // as in the teacher's prices
	What  string
	Count int
	Unit  string // what is counted: pieces where empty
	Each  bool   // for each crop
	Later bool   // for each crop but the first, for which it comes with the offer
}

// Costs are what an option costs. Where something has no price, the sums are
// of what has one, and Whole is false: the option costs at least so much.
type Costs struct {
	Whole                             bool
	First, PerCrop, Replace           OrUnknown // PerCrop has its electricity in it
	FirstCrop, Total                  OrUnknown
	PerPlanted, PerHarvest, PerServed OrUnknown
	Energy, Current                   OrUnknown // of a crop: kWh, money
	Running                           OrUnknown // what a crop costs on average
}

// option is one being worked out.
type option struct {
	*Option
	q    *Question
	book *working.Book
	crop cropNumbers
}

// cropNumbers are entered once for all options.
type cropNumbers struct {
	crops, share, trim, nought working.Number
	cycle                      working.Number // days from sowing to harvest
}
