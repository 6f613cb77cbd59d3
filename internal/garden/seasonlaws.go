package garden

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

func inGrams(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.SmallMass}
}

func counting(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.Count}
}

// chanceKind is a chance as it is shown.
var chanceKind = quantity.Share.WithDecimals(1, 1)

// The sums of a season.
var (
	usualLaw = working.Must(working.Law{
		Symbol: "w", Kind: quantity.SmallMass, Formula: "n*g", Where: []working.Symbol{counting("n", "plants"), inGrams("g", "one plant at harvest")},
		Basis: working.OfTrade, Source: "as many as there are, each at its usual mass",
	})
	bothLaw = working.Must(working.Law{
		Symbol: "w", Kind: quantity.SmallMass, Formula: "a+b", Where: []working.Symbol{inGrams("a", "so far"), inGrams("b", "more")},
		Basis: working.OfNature, Source: "sum",
	})
	neededLaw = working.Must(working.Law{
		Symbol: "N", Kind: quantity.SmallMass, Formula: "e*p/(1-t)*w/W",
		Where: []working.Symbol{
			counting("e", "eaters"), inGrams("p", "trimmed leaves for each"),
			{Name: "t", Meaning: "trimmed away", Kind: quantity.Share},
			inGrams("w", "this tub at its usual harvest"), inGrams("W", "all tubs at theirs"),
		},
		Basis: working.OfTrade, Source: "each tub brings its part of what all bring",
	})
	partLaw = working.Must(working.Law{
		Symbol: "P", Kind: chanceKind, Formula: "k/n", Where: []working.Symbol{counting("k", "runs in which it came so"), counting("n", "runs followed")},
		Basis: working.OfNature, Source: "counted: each run is one way the season may go",
	})
	sownLaw = working.Must(working.Law{
		Symbol: "s", Kind: quantity.Count, Formula: "c*k", Where: []working.Symbol{counting("c", "cells"), counting("k", "seeds in a cell")},
		Basis: working.OfNature, Source: "so many in each",
	})
	thirstOfLaw = working.Must(working.Law{
		Symbol: "q", Kind: quantity.SmallVolume, Formula: "W/n",
		Where: []working.Symbol{{Name: "W", Meaning: "gone from the tub on that day", Kind: quantity.Volume}, counting("n", "plants")},
		Basis: working.OfNature, Source: "shared out evenly; what passes the lid is in it",
	})
)
