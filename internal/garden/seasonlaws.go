package garden

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// chanceKind is a chance as it is shown.
var chanceKind = quantity.Share.WithDecimals(1, 1)

// The sums of a season.
var (
	usualLaw = working.Must(working.Law{
		Symbol: "w", Kind: quantity.SmallMass, Formula: "n*g", Where: []working.Symbol{working.Letter("n", "plants", quantity.Count), working.Letter("g", "one plant at harvest", quantity.SmallMass)},
		Basis: working.OfTrade, Source: "as many as there are, each at its usual mass",
	})
	bothLaw = working.Must(working.Law{
		Symbol: "w", Kind: quantity.SmallMass, Formula: "a+b", Where: []working.Symbol{working.Letter("a", "so far", quantity.SmallMass), working.Letter("b", "more", quantity.SmallMass)},
		Basis: working.OfNature, Source: "sum",
	})
	neededLaw = working.Must(working.Law{
		Symbol: "N", Kind: quantity.SmallMass, Formula: "e*p/(1-t)*w/W",
		Where: []working.Symbol{
			working.Letter("e", "eaters", quantity.Count), working.Letter("p", "trimmed leaves for each", quantity.SmallMass),
			working.Letter("t", "trimmed away", quantity.Share),
			working.Letter("w", "this tub at its usual harvest", quantity.SmallMass), working.Letter("W", "all tubs at theirs", quantity.SmallMass),
		},
		Basis: working.OfTrade, Source: "each tub brings its part of what all bring",
	})
	partLaw = working.Must(working.Law{
		Symbol: "P", Kind: chanceKind, Formula: "k/n", Where: []working.Symbol{working.Letter("k", "runs in which it came so", quantity.Count), working.Letter("n", "runs followed", quantity.Count)},
		Basis: working.OfNature, Source: "counted: each run is one way the season may go",
	})
	sownLaw = working.Must(working.Law{
		Symbol: "s", Kind: quantity.Count, Formula: "c*k", Where: []working.Symbol{working.Letter("c", "cells", quantity.Count), working.Letter("k", "seeds in a cell", quantity.Count)},
		Basis: working.OfNature, Source: "so many in each",
	})
	thirstOfLaw = working.Must(working.Law{
		Symbol: "q", Kind: quantity.SmallVolume, Formula: "W/n",
		Where: []working.Symbol{working.Letter("W", "gone from the tub on that day", quantity.Volume), working.Letter("n", "plants", quantity.Count)},
		Basis: working.OfNature, Source: "shared out evenly; what passes the lid is in it",
	})
)
