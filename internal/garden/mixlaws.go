package garden

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/solution"
)

var weighed = quantity.SmallMass.WithDecimals(2, 3)

// The sums of a mix that are not the chemistry's own.
var (
	rainLaw = working.Must(working.Law{
		Symbol: "r", Kind: quantity.Volume, Formula: "V*s",
		Where: []working.Symbol{working.Letter("V", "solution in the tub", quantity.Volume), working.Letter("s", "share of rain or deionised water", quantity.Share)},
		Basis: working.OfNature, Source: "share of the whole",
	})
	tapLaw = working.Must(working.Law{
		Symbol: "w", Kind: quantity.Volume, Formula: "V-r",
		Where: []working.Symbol{working.Letter("V", "solution in the tub", quantity.Volume), working.Letter("r", "rain or deionised water", quantity.Volume)},
		Basis: working.OfNature, Source: "the rest",
	})
	bottleMassLaw = working.Must(working.Law{
		Symbol: "m", Kind: weighed, Formula: "v*d",
		Where: []working.Symbol{working.Letter("v", "poured", quantity.SmallVolume.WithDecimals(1, 2)), working.Letter("d", "density", quantity.Density)},
		Basis: working.OfNature, Source: "volume times density",
	})
	stockMassLaw = working.Must(working.Law{
		Symbol: "m", Kind: weighed, Formula: "v*g/(L*k)",
		Where: []working.Symbol{
			working.Letter("v", "poured of the small stock", quantity.SmallVolume.WithDecimals(1, 2)),
			working.Letter("g", "dissolved in it", weighed),
			working.Letter("L", "made up to", quantity.Volume),
			working.Letter("k", "times it was thinned", quantity.Count),
		},
		Basis: working.OfNature, Source: "the share of the stock that is poured",
	})
	spoonMassLaw = working.Must(working.Law{
		Symbol: "m", Kind: weighed, Formula: "n*g",
		Where: []working.Symbol{working.Letter("n", "level spoons", quantity.Count), working.Letter("g", "one level spoon, as the class weighed it", weighed)},
		Basis: working.OfNature, Source: "the class's own spoon",
	})
	tankMassLaw = working.Must(working.Law{
		Symbol: "m", Kind: weighed, Formula: "c*s*v",
		Where: []working.Symbol{
			working.Letter("c", "in a litre of the tub", solution.StockContent.WithDecimals(4, 4)),
			working.Letter("s", "strength of the stock, times the feed", quantity.Count),
			working.Letter("v", "stock of each", quantity.Volume),
		},
		Basis: working.OfNature, Source: "so many times the feed, times the litres",
	})
	stockPourLaw = working.Must(working.Law{
		Symbol: "v", Kind: quantity.SmallVolume, Formula: "V*d",
		Where: []working.Symbol{working.Letter("V", "solution in the tub", quantity.Volume), working.Letter("d", "of each stock, for a litre", solution.Dose)},
		Basis: working.OfNature, Source: "the dose for a litre, times the litres",
	})
	ecAimLaw = working.Must(working.Law{
		Symbol: "E", Kind: quantity.Conductivity, Formula: "(l+h)/2",
		Where: []working.Symbol{working.Letter("l", "weakest", quantity.Conductivity), working.Letter("h", "strongest", quantity.Conductivity)},
		Basis: working.OfTrade, Source: "the middle of what the crops are grown in",
	})
	phAimLaw = working.Must(working.Law{
		Symbol: "p", Kind: quantity.PHScale, Formula: "(l+h)/2",
		Where: []working.Symbol{working.Letter("l", "lowest", quantity.PHScale), working.Letter("h", "highest", quantity.PHScale)},
		Basis: working.OfTrade, Source: "the middle of what the crops are grown in",
	})
)
