package garden

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/school/choose"
)

// Choose is what there is to choose between: every offer of the plan, and the
// garden built by the school, each with its reasons. None of them is called the
// best.
type Choose struct {
	Offers []ChooseOffer `json:"offers"` // as in the plan, then the build
	Crops  int           `json:"crops"`  // that the costs are counted for
	Crop   string        `json:"crop"`   // that the plants are counted with
	Senses []ChooseSense `json:"would_change"`
	Sizes  []ChooseSize  `json:"sizes"`

	Need      choose.Need `json:"-"`
	Harvested float64     `json:"-"` // share of the plants moved in that is harvested
}

// ChooseOffer is one way to a garden. Money is in the plan's currency; where
// something has no price, it is the sum of what has one, and Priced is false.
type ChooseOffer struct {
	Name         string   `json:"name"`
	Total        *float64 `json:"total"` // all crops together
	FirstCrop    *float64 `json:"first_crop"`
	PerHarvested *float64 `json:"per_harvested"`
	PerPlanted   *float64 `json:"per_planted"`
	PerServing   *float64 `json:"per_serving"`
	Sites        int      `json:"sites"`
	PlantSites   int      `json:"plant_sites"`
	UseHoles     []int    `json:"use_holes"` // by number from 1; null without a pattern
	CapHoles     []int    `json:"cap_holes"`
	Lacks        []string `json:"lacks"`
	Possible     bool     `json:"possible"`

	NotYet       []string     `json:"not_yet"` // why it is not possible yet
	ForFood      bool         `json:"for_food"`
	NotFood      string       `json:"not_for_food,omitempty"`
	Needs        []string     `json:"needs"` // what the school may not have
	Built        bool         `json:"built"`
	Binds        string       `json:"binds"`
	LitresASite  *float64     `json:"litres_per_site"`
	LeastMM      *float64     `json:"least_distance_mm"` // between two holes in use
	Proved       bool         `json:"proved"`            // that no other choice stands further apart
	Priced       bool         `json:"priced"`            // that everything has a price
	Unknown      []string     `json:"unknown_prices"`
	FirstOutlay  *float64     `json:"first_outlay"`
	EachCrop     *float64     `json:"each_crop"` // with its electricity
	Replacements *float64     `json:"replacements"`
	KWhACrop     *float64     `json:"kwh_per_crop"`
	Planted      int          `json:"planted"`   // all crops
	Harvested    float64      `json:"harvested"` // all crops, on average
	For          []string     `json:"for"`
	Against      []string     `json:"against"`
	Budget       []BudgetLine `json:"budget"`

	Holes  []ChooseHole  `json:"-"` // where they lie; none without a pattern
	Index  int           `json:"-"` // among the plan's offers; -1 for the build
	Key    string        `json:"-"` // of its numbers: choose.offer_1
	Option choose.Option `json:"-"`
}

// ChooseHole is one hole of an offer.
type ChooseHole struct {
	N        int
	XMM, YMM float64
	Use      bool
}

// BudgetLine is one line of an option's budget; without a price it is named and
// not guessed.
type BudgetLine struct {
	Part  string   `json:"part"` // once, each crop, replaced
	Item  string   `json:"item"` // as in the plan's prices
	What  string   `json:"what"`
	Size  string   `json:"size,omitempty"`
	Count float64  `json:"count"`
	Unit  string   `json:"unit,omitempty"`
	Price *float64 `json:"price"`
	Cost  *float64 `json:"cost"`

	Key string `json:"-"` // of the cost's number
}

// ChooseSense is one thing that would change the order of the build and an
// offer.
type ChooseSense struct {
	Kind  string  `json:"kind"`
	Offer string  `json:"offer"`
	Turn  float64 `json:"turns_at"`
	Now   float64 `json:"now"`
	Says  string  `json:"says"`

	Key string `json:"-"`
}

// ChooseSize is the water of the plan in so many tubs.
type ChooseSize struct {
	Words   string  `json:"words"`
	Tubs    int     `json:"tubs"`
	LitresL float64 `json:"litres_each"`
	MassKG  float64 `json:"mass_kg_each"`
	Pumps   int     `json:"pumps"`
	Lost    int     `json:"plants_lost"` // by one failure
	Planned bool    `json:"planned"`

	Litres, Mass string `json:"-"` // in the plan's units
	Key          string `json:"-"`
}

// choose works out what there is to choose between. The error is that the
// context ended.
func (a *assessor) choose(out *Assessment) (*Choose, error) {
	q, holes, err := a.question(out)
	if err != nil {
		return nil, err
	}
	c := choose.Compare(a.book, q)
	if err := a.ctx.Err(); err != nil {
		return nil, err
	}
	answer := &Choose{Crops: c.Crops, Crop: c.Crop, Offers: []ChooseOffer{}, Senses: []ChooseSense{}, Sizes: []ChooseSize{}, Need: c.Need, Harvested: c.Share.Base}
	for i := range c.Options {
		o := a.chosen(&c.Options[i])
		if o.Index >= 0 {
			o.at(holes[o.Index])
		}
		answer.Offers = append(answer.Offers, o)
	}
	for i := range c.Senses {
		answer.Senses = append(answer.Senses, a.senseOf(&c, &c.Senses[i]))
	}
	for _, s := range c.Sizes {
		answer.Sizes = append(answer.Sizes, ChooseSize{
			Words: s.Words, Tubs: s.Tubs, Pumps: s.Pumps, Planned: s.Planned, Lost: int(s.Lost.Base), Key: s.Mass.Key,
			LitresL: *in(s.Litres, quantity.Litre, 2), MassKG: *in(s.Mass, quantity.Kilogram, 2), Litres: a.says(s.Litres), Mass: a.says(s.Mass),
		})
	}
	a.reasons(answer)
	return answer, nil
}

// cash is an amount as the document has it; nil where it is not known.
func cash(n choose.OrUnknown) *float64 {
	if !n.Is {
		return nil
	}
	v := quantity.Round(n.Base, 2)
	return &v
}

// chosen is one option for the document.
func (a *assessor) chosen(o *choose.Option) ChooseOffer {
	k := o.Costs
	out := ChooseOffer{
		Name: o.Name, Total: cash(k.Total), FirstCrop: cash(k.FirstCrop), PerHarvested: cash(k.PerHarvest), PerPlanted: cash(k.PerPlanted), PerServing: cash(k.PerServed),
		Sites: o.Sites, PlantSites: o.Plants, UseHoles: o.Use, CapHoles: o.Cap, Lacks: []string{}, Possible: o.Possible,
		NotYet: orEmpty(o.NotYet), ForFood: o.ForFood, NotFood: o.NotFood, Needs: orEmpty(o.Needs), Built: o.Built, Binds: o.Binds, Proved: o.Proved,
		Priced: k.Whole, Unknown: orEmpty(o.Unknown), FirstOutlay: cash(k.First), EachCrop: cash(k.PerCrop), Replacements: cash(k.Replace),
		Planted: int(o.Planted.Base), Harvested: quantity.Round(o.Harvest.Base, 1), For: []string{}, Against: []string{}, Budget: []BudgetLine{},
		Index: o.Offer, Key: o.Key, Option: *o,
	}
	if k.Energy.Is {
		v := k.Energy.Show(quantity.Metric).Value
		out.KWhACrop = &v
	}
	if o.PerSite.Is {
		out.LitresASite = in(o.PerSite.Number, quantity.Litre, 2)
	}
	if o.ApartMM > 0 {
		v := quantity.Round(o.ApartMM, 1)
		out.LeastMM = &v
	}
	for _, t := range o.Lacks {
		out.Lacks = append(out.Lacks, LackWords(t))
	}
	for _, l := range o.Lines {
		out.Budget = append(out.Budget, BudgetLine{Part: l.Part, Item: l.Item, What: l.What, Size: l.Size, Count: l.Count, Unit: l.Unit, Price: l.Price, Cost: cents(l.Cost), Key: l.Key})
	}
	return out
}

func cents(v *float64) *float64 {
	if v == nil {
		return nil
	}
	r := quantity.Round(*v, 2)
	return &r
}

func orEmpty(all []string) []string {
	if all == nil {
		return []string{}
	}
	return all
}

// at puts the holes of the pattern in their places.
func (o *ChooseOffer) at(places []ChooseHole) {
	use := map[int]bool{}
	for _, n := range o.UseHoles {
		use[n] = true
	}
	for _, h := range places {
		h.Use = use[h.N]
		o.Holes = append(o.Holes, h)
	}
}

// numberOf is a known number of the book under an option's key.
func (a *Assessment) numberOf(key string) (working.Number, bool) {
	n, ok := a.Book.Find(key)
	return n, ok && n.Known()
}
