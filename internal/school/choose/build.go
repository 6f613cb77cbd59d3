package choose

import (
	"slices"

	"rootbell/internal/base/working"
	"rootbell/internal/school/shopping"
)

// OwnBuild is what the garden of the plan is called among the offers.
const OwnBuild = "build our own"

// build works out the garden that the school builds itself.
func (q *Question) build(b *working.Book, n cropNumbers) Option {
	out := Option{Key: b.Key(""), Name: OwnBuild, Built: true, Offer: -1, ForFood: true, Sites: q.Build.Plants, Plants: q.Build.Plants, Binds: ByPlan, Limits: Limits{-1, q.Build.Plants, -1}}
	out.Key = out.Key[:len(out.Key)-1]
	o := option{&out, q, b, n}
	if !q.Site.AdultDrills {
		o.NotYet = append(o.NotYet, "no adult has said yes to drilling the lid, and pupils do not drill")
	}
	if q.Build.Stopped != "" {
		o.NotYet = append(o.NotYet, "the plan has a stop: "+q.Build.Stopped)
	}
	if q.Build.Past != "" {
		o.ForFood, o.NotFood = false, q.Build.Past+" is second-hand, and nobody knows what was in it: no food from it"
	}
	aerated := slices.ContainsFunc(q.Build.Tubs, func(t Tub) bool { return !t.Still })
	o.site(aerated, q.Have.Lamp)
	o.kitchen()
	o.absent(q.Build.Items)
	o.buildCosts(q.Build.Items)
	o.yields()
	out.Possible = len(out.NotYet) == 0
	return out
}

// absent lists what a garden needs and the shopping list does not have.
func (o *option) absent(items []shopping.Item) {
	var all []need
	for _, n := range o.q.cropNeeds(o.Plants) {
		if n.key == "nutrient" {
			all = append(all, n)
		}
	}
	for _, n := range append(all, schoolNeeds(o.q.Have)...) {
		if !slices.ContainsFunc(items, func(i shopping.Item) bool { return i.Key == n.key }) {
			o.Lacks = append(o.Lacks, Thing{Item: n.key, What: n.what, Count: max(n.count, 1), Unit: n.unit, Each: n.each})
		}
	}
}
