package choose

import (
	"fmt"
	"math"
	"sort"
	"strconv"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// offer works out a kit or tub that the school could buy.
func (q *Question) offer(b *working.Book, i int, n cropNumbers) Option {
	given := q.Offers[i]
	out := Option{Key: b.Key(""), Name: given.Name, Offer: i, ForFood: true}
	out.Key = out.Key[:len(out.Key)-1]
	o := option{&out, q, b, n}
	o.past(given)
	o.Limits = Limits{Water: -1, Holes: -1, Room: -1}
	if o.Contradicts = given.Contradicts; o.Contradicts != "" {
		o.NotYet = append(o.NotYet, given.Contradicts)
	} else {
		o.feeds(given)
	}
	o.missing(given)
	o.site(q.Plant.Aerated, given.Watts > 0 || given.Flux > 0 || q.Have.Lamp)
	o.kitchen()
	o.weighs(given)
	o.offerCosts(given)
	o.yields()
	out.Possible = len(out.NotYet) == 0
	return out
}

// past says what may be eaten from a tub that somebody used before.
func (o *option) past(given Offer) {
	if given.Past == Unknown || given.Past == New && secondHand(given) {
		o.ForFood = false
		o.NotFood = "second-hand, and nobody knows what was in it: no food from it. Plastic keeps what it held, and no washing proves it clean"
	}
}

// feeds is how many plants the water, the holes and the crop's distance allow.
func (o *option) feeds(given Offer) {
	o.Sites = given.Sites
	if given.Sites == 0 || given.Litres == 0 {
		return
	}
	litres := o.book.Typed("volume", "water it holds", "V", quantity.Volume, quantity.Litre.Base(given.Litres), 0)
	sites := o.book.Typed("sites", "holes", "s", quantity.Count, float64(given.Sites), 0)
	o.PerSite = known(o.book.Work(perSiteLaw, "litres_per_site", "solution for each hole", litres, sites))
	fed := o.book.Work(feedsLaw, "fed", "plants the water feeds", litres, o.q.Plant.Litres)
	o.Limits.Water, o.Limits.Holes = int(fed.Base), given.Sites
	o.Plants, o.Binds = o.Limits.Holes, ByHoles
	if o.Limits.Water < o.Plants {
		o.Plants, o.Binds = o.Limits.Water, ByWater
	}
	most := o.Plants
	if h := given.Holes; h != nil && most > 0 {
		o.holes(h, most)
	}
	o.counted(fed, sites)
	if o.Plants == 0 {
		o.NotYet = append(o.NotYet, fmt.Sprintf("its water does not feed one plant of %s", o.q.Plant.Crop))
	}
}

// counted enters how many plants there are room and water for, and the holes
// that are left.
func (o *option) counted(fed, sites working.Number) {
	var plants working.Number
	if o.Binds == ByRoom {
		room := o.book.Found("apart", "holes that keep the crop's distance", "a", quantity.Count, float64(o.Limits.Room), "search among all choices of the holes")
		plants = o.book.Work(apartLaw, "plants", "plants", fed, sites, room)
	} else {
		plants = o.book.Work(fewestLaw, "plants", "plants", fed, sites)
	}
	o.book.Work(emptyLaw, "capped", "holes to cap", sites, plants)
}

// spaceSlackMM lets a distance count as kept that a ruler cannot tell from it.
const spaceSlackMM = 0.5

// holes picks the holes to use, at most so many: as many as keep the crop's
// distance, and of those the ones that stand furthest apart.
func (o *option) holes(h *Holes, most int) {
	wanted := o.q.Plant.Spacing.Base - spaceSlackMM
	apart := func(k int) bool {
		if k < 2 {
			return true
		}
		_, far, _ := h.At(k)
		return far >= wanted
	}
	keep := most
	if !apart(most) {
		// The least distance falls as more holes are used, so halving finds it.
		keep = sort.Search(most, func(k int) bool { return !apart(k + 1) })
	}
	if keep < most {
		o.Plants, o.Limits.Room, o.Binds = keep, keep, ByRoom
	}
	use, far, proved := h.At(o.Plants)
	o.Use, o.Proved = use, proved
	if o.Plants > 1 {
		o.ApartMM = far
		o.book.Found("distance", "least distance between two holes in use", "d", quantity.Length, far, "search among all choices of so many holes")
	}
	used := map[int]bool{}
	for _, n := range use {
		used[n] = true
	}
	for n := 1; n <= h.Count; n++ {
		if !used[n] {
			o.Cap = append(o.Cap, n)
		}
	}
}

// empty is how many holes get a cap.
func (o *option) empty() int {
	if o.Limits.Water < 0 {
		return 0 // nobody knows yet how many plants there are
	}
	return max(o.Sites-o.Plants, 0)
}

// missing lists what does not come with an offer and has to be there. What comes
// with it for the first crop alone is lacking for the later ones.
func (o *option) missing(given Offer) {
	for _, n := range append(o.q.kitNeeds(o.Plants, o.empty()), schoolNeeds(o.q.Have)...) {
		with := n.key == "ph_test" && given.PH || n.key == "ec_meter" && given.EC || n.key == "lamp" && (given.Watts > 0 || given.Flux > 0)
		if !with && !n.brings(given.Includes) {
			o.Lacks = append(o.Lacks, n.thing())
		}
	}
	if given.PerCrop == nil {
		o.usedUp(given)
	}
	for _, what := range given.Lacks {
		if !o.lacks(what) {
			o.Lacks = append(o.Lacks, Thing{Item: itemOf(what), What: what, Count: 1})
		}
	}
}

// usedUp is what each crop uses up, where the offer has no price for a crop.
func (o *option) usedUp(given Offer) {
	for _, n := range o.q.cropNeeds(o.Plants) {
		t := n.thing()
		switch {
		case n.key == "nutrient" && given.Months > 0:
			continue // refills go on from there
		case n.brings(given.Includes) && o.q.Crops == 1:
			continue
		case n.brings(given.Includes):
			t.Each, t.Later, t.What = false, true, n.what+" for later crops"
			if n.key == "nutrient" {
				t.What = "feed for later crops"
			}
		}
		o.Lacks = append(o.Lacks, t)
	}
}

func (n need) thing() Thing {
	return Thing{Item: n.key, What: n.what, Count: max(n.count, 1), Unit: n.unit, Each: n.each}
}

// lacks tells whether something that the teacher names is on the list already.
func (o *option) lacks(what string) bool {
	item := itemOf(what)
	for _, t := range o.Lacks {
		if t.Item == item || itemOf(t.What) == item {
			return true
		}
	}
	return false
}

// site is what the option needs where it is to stand, if anything of it has a
// plug.
func (o *option) site(pump, lamp bool) {
	if !pump && !lamp {
		return
	}
	switch o.q.Site.Socket {
	case No:
		o.NotYet = append(o.NotYet, "there is no socket within reach, and an extension lead is no answer: ask the caretaker for a fixed one")
	case Ask:
		o.Needs = append(o.Needs, "a socket within reach, without an extension lead: ask the caretaker")
	}
	switch o.q.Site.RCD {
	case No:
		o.NotYet = append(o.NotYet, "the socket has no RCD (GFCI), and water stands beside it: the school's electrician decides")
	case Ask:
		o.Needs = append(o.Needs, "a socket protected by an RCD (GFCI): the school's electrician says so")
	}
}

// NoEating is why nothing is eaten where the school says so.
const NoEating = "the school does not let the class eat what it grows"

// kitchen is what the school says of eating, whatever the tub is.
func (o *option) kitchen() {
	switch o.q.Site.Kitchen {
	case Ask:
		o.Needs = append(o.Needs, "a yes from whoever decides on food at school, before anybody eats")
	case No:
		if o.ForFood {
			o.ForFood, o.NotFood = false, NoEating
		}
	}
}

// weighs says what the filled tub weighs at least, against the shelf.
func (o *option) weighs(given Offer) {
	if given.Litres == 0 {
		return
	}
	volume := o.book.Typed("volume", "water it holds", "V", quantity.Volume, quantity.Litre.Base(given.Litres), 0)
	mass := o.book.Work(massLaw, "mass_water", "its water", volume, waterDensity(o.book))
	if limit := o.q.Site.LoadKG; limit > 0 && mass.Base > limit {
		o.NotYet = append(o.NotYet, "its water alone weighs more than the shelf bears in the middle")
	}
}

func waterDensity(b *working.Book) working.Number {
	f := Facts.Get(factWaterDensity)
	return b.Fact("water_density", "density of water", "w", quantity.Density, quantity.KilogramPerLitre.Base(f.Value), f)
}

// yields are the plants of all crops, and what is eaten of them.
func (o *option) yields() {
	if o.Plants == 0 {
		return
	}
	plants, ok := o.book.Find(o.Key + ".plants")
	if !ok {
		plants = o.book.Typed("plants", "plants in a crop", "n", quantity.Count, float64(o.Plants), 0)
	}
	o.Planted = o.book.Work(plantedLaw, "planted", "plants moved in, all crops", plants, o.crop.crops)
	o.Harvest = o.book.Work(harvestLaw, "harvested", "plants harvested, all crops", o.Planted, o.crop.share)
	if o.ForFood && o.q.Plant.Portion.Base > 0 {
		o.Servings = o.book.Work(servingsLaw, "servings", "servings, all crops", o.leaves(), o.crop.crops, o.crop.share, o.crop.trim, o.q.Plant.Portion)
	}
	o.each("per_planted", "cost of each plant moved in", o.Planted, &o.Costs.PerPlanted)
	o.each("per_harvested", "cost of each plant harvested", o.Harvest, &o.Costs.PerHarvest)
	o.each("per_serving", "cost of each serving", o.Servings, &o.Costs.PerServed)
}

// leaves are what the plants of a crop weigh at harvest, if none is lost.
func (o *option) leaves() working.Number {
	stands := []Tub{{Plants: o.Plants, Mass: o.q.Plant.Mass}}
	if o.Built {
		stands = o.q.Build.Tubs
	}
	sofar := o.book.Typed("no_leaves", "nought", "a", quantity.Mass, 0, 0)
	for i, t := range stands {
		key := strconv.Itoa(i + 1)
		sofar = o.book.Work(leavesLaw, "leaves_"+key, "leaves of a crop, if nothing is lost", sofar, o.book.Typed("stand_"+key, "plants", "n", quantity.Count, float64(t.Plants), 0), t.Mass)
	}
	return sofar
}

func (o *option) each(key, name string, of working.Number, into *OrUnknown) {
	if !o.Costs.Total.Is || of.Base <= 0 || math.IsNaN(of.Base) {
		return
	}
	*into = known(o.book.Work(perPlant, key, name, o.Costs.Total.Number, of))
}
