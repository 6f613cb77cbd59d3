package garden

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/solution"
)

var weighed = quantity.SmallMass.WithDecimals(2, 3)

func inMass(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: weighed}
}

// The sums of a mix that are not the chemistry's own.
var (
	rainLaw = working.Must(working.Law{
		Symbol: "r", Kind: quantity.Volume, Formula: "V*s",
		Where: []working.Symbol{{Name: "V", Meaning: "solution in the tub", Kind: quantity.Volume}, {Name: "s", Meaning: "share of rain or deionised water", Kind: quantity.Share}},
		Basis: working.OfNature, Source: "share of the whole",
	})
	tapLaw = working.Must(working.Law{
		Symbol: "w", Kind: quantity.Volume, Formula: "V-r",
		Where: []working.Symbol{{Name: "V", Meaning: "solution in the tub", Kind: quantity.Volume}, {Name: "r", Meaning: "rain or deionised water", Kind: quantity.Volume}},
		Basis: working.OfNature, Source: "the rest",
	})
	bottleMassLaw = working.Must(working.Law{
		Symbol: "m", Kind: weighed, Formula: "v*d",
		Where: []working.Symbol{{Name: "v", Meaning: "poured", Kind: quantity.SmallVolume.WithDecimals(1, 2)}, {Name: "d", Meaning: "density", Kind: quantity.Density}},
		Basis: working.OfNature, Source: "volume times density",
	})
	stockMassLaw = working.Must(working.Law{
		Symbol: "m", Kind: weighed, Formula: "v*g/(L*k)",
		Where: []working.Symbol{
			{Name: "v", Meaning: "poured of the small stock", Kind: quantity.SmallVolume.WithDecimals(1, 2)},
			inMass("g", "dissolved in it"),
			{Name: "L", Meaning: "made up to", Kind: quantity.Volume},
			{Name: "k", Meaning: "times it was thinned", Kind: quantity.Count},
		},
		Basis: working.OfNature, Source: "the share of the stock that is poured",
	})
	spoonMassLaw = working.Must(working.Law{
		Symbol: "m", Kind: weighed, Formula: "n*g",
		Where: []working.Symbol{{Name: "n", Meaning: "level spoons", Kind: quantity.Count}, inMass("g", "one level spoon, as the class weighed it")},
		Basis: working.OfNature, Source: "the class's own spoon",
	})
	tankMassLaw = working.Must(working.Law{
		Symbol: "m", Kind: weighed, Formula: "c*s*v",
		Where: []working.Symbol{
			{Name: "c", Meaning: "in a litre of the tub", Kind: solution.StockContent.WithDecimals(4, 4)},
			{Name: "s", Meaning: "strength of the stock, times the feed", Kind: quantity.Count},
			{Name: "v", Meaning: "stock of each", Kind: quantity.Volume},
		},
		Basis: working.OfNature, Source: "so many times the feed, times the litres",
	})
	stockPourLaw = working.Must(working.Law{
		Symbol: "v", Kind: quantity.SmallVolume, Formula: "V*d",
		Where: []working.Symbol{{Name: "V", Meaning: "solution in the tub", Kind: quantity.Volume}, {Name: "d", Meaning: "of each stock, for a litre", Kind: solution.Dose}},
		Basis: working.OfNature, Source: "the dose for a litre, times the litres",
	})
	ecAimLaw = working.Must(working.Law{
		Symbol: "E", Kind: quantity.Conductivity, Formula: "(l+h)/2",
		Where: []working.Symbol{{Name: "l", Meaning: "weakest", Kind: quantity.Conductivity}, {Name: "h", Meaning: "strongest", Kind: quantity.Conductivity}},
		Basis: working.OfTrade, Source: "the middle of what the crops are grown in",
	})
	phAimLaw = working.Must(working.Law{
		Symbol: "p", Kind: quantity.PHScale, Formula: "(l+h)/2",
		Where: []working.Symbol{{Name: "l", Meaning: "lowest", Kind: quantity.PHScale}, {Name: "h", Meaning: "highest", Kind: quantity.PHScale}},
		Basis: working.OfTrade, Source: "the middle of what the crops are grown in",
	})
)
