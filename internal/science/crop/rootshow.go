package crop

import (
	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// DryRoot is how a plant's root is shown.
var DryRoot = quantity.SmallMass.WithDecimals(2, 3)

var rootLaw = working.Must(working.Law{
	Symbol: "m", Kind: DryRoot, Formula: "g/(q*k*(1-r))*r",
	Where: []working.Symbol{
		{Name: "g", Meaning: "picked of one plant, fresh", Kind: quantity.SmallMass},
		{Name: "q", Meaning: "share of the shoot that is picked", Kind: Part},
		{Name: "k", Meaning: "fresh for dry", Kind: Part},
		{Name: "r", Meaning: "share of roots", Kind: Part},
	},
	Basis: working.OfNature, Source: "shares of the growth model: roots beside the shoot, both dry",
})

// ShowRoot enters the dry root of a plant of which so much is picked; key and
// name tell the crops of a tub apart.
func (c Crop) ShowRoot(b *working.Book, key string, picked working.Number) working.Number {
	share := typedAs(b, "shoot_picked", "share of the shoot that is picked", "q", Part, 1)
	if f, fruits := c.growthRow("fruit"); fruits {
		share = b.Fact(key+"_fruit", "share of the shoot that is fruit", "q", Part, f.Value/100, f)
	}
	return b.Work(rootLaw, key, c.Name+", dry root of one plant", picked, share,
		factAs(b, "fresh_for_dry", "fresh for dry", "k", Part, factGrowthFresh), factAs(b, "share_of_roots", "share of roots", "r", Part, factGrowthRoots))
}

// LeastDLI is the row of the least light of a day that the crop wants.
func (c Crop) LeastDLI() facts.Fact {
	f, _ := c.growthRow("dli.low")
	return f
}
