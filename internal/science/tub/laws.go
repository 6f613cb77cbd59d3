package tub

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

func length(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.Length}
}

func litres(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.Volume}
}

func count(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.Count}
}

const prismoidal = "prismoidal formula; exact because the area is quadratic in the depth (Deakin & Hunter, The Prismoidal Correction Revisited, 2009)"

var (
	rectAreaLaw = working.Must(working.Law{
		Symbol: "A", Kind: quantity.Area, Formula: "(a+(c-a)*h/H)*(b+(d-b)*h/H)-(4-pi)*(r+(R-r)*h/H)^2",
		Where: []working.Symbol{
			length("a", "length at the base"), length("c", "length at the top"), length("b", "width at the base"),
			length("d", "width at the top"), length("r", "corner radius at the base"), length("R", "corner radius at the top"),
			length("H", "inside height"), length("h", "height"),
		},
		Basis: working.OfNature, Source: "a rectangle less what its four rounded corners lack, each measure straight from base to top",
	})
	roundAreaLaw = working.Must(working.Law{
		Symbol: "A", Kind: quantity.Area, Formula: "pi/4*(a+(c-a)*h/H)^2",
		Where: []working.Symbol{length("a", "diameter at the base"), length("c", "diameter at the top"), length("H", "inside height"), length("h", "height")},
		Basis: working.OfNature, Source: "area of a circle, its diameter straight from base to top",
	})
	halfLaw = working.Must(working.Law{
		Symbol: "m", Kind: quantity.Length, Formula: "h/2", Where: []working.Symbol{length("h", "depth")},
		Basis: working.OfNature, Source: "half the depth",
	})
	volumeLaw = working.Must(working.Law{
		Symbol: "V", Kind: quantity.Volume, Formula: "h/6*(A0+4*Am+Ah)",
		Where: []working.Symbol{
			length("h", "depth of the water"),
			{Name: "A0", Meaning: "area at the floor", Kind: quantity.Area},
			{Name: "Am", Meaning: "area at half the depth", Kind: quantity.Area},
			{Name: "Ah", Meaning: "area at the water", Kind: quantity.Area},
		},
		Basis: working.OfNature, Source: prismoidal,
	})
	pouredLaw = working.Must(working.Law{
		Symbol: "V", Kind: quantity.Volume, Formula: "v+(w-v)*(h-p)/(q-p)",
		Where: []working.Symbol{
			litres("v", "poured, the step below"), litres("w", "poured, the step above"), length("h", "depth"),
			length("p", "depth of the step below"), length("q", "depth of the step above"),
		},
		Basis: working.OfNature, Source: "straight line between two of your own pourings",
	})
	cupBottomLaw = working.Must(working.Law{
		Symbol: "z", Kind: quantity.Length, Formula: "H+u+t-c",
		Where: []working.Symbol{
			length("H", "inside height"), length("u", "lid's underside above the rim"), length("t", "lid thickness"), length("c", "cup depth under the lip"),
		},
		Basis: working.OfNature, Source: "the lip lies on the lid's upper face",
	})
	aboveLaw = working.Must(working.Law{
		Symbol: "h", Kind: quantity.Length, Formula: "z+o", Where: []working.Symbol{length("z", "cup bottom"), length("o", "water over the cup bottom")},
		Basis: working.OfTrade, Source: "the cup stands in the water by so much on transplant day",
	})
	belowLaw = working.Must(working.Law{
		Symbol: "h", Kind: quantity.Length, Formula: "z-g", Where: []working.Symbol{length("z", "height"), length("g", "gap")},
		Basis: working.OfTrade, Source: "so much left free",
	})
	lowestLaw = working.Must(working.Law{
		Symbol: "l", Kind: quantity.Length, Formula: "max(k, s+o)",
		Where: []working.Symbol{length("k", "least depth of a tub"), length("s", "height of the air stone"), length("o", "water over the stone")},
		Basis: working.OfTrade, Source: "the stone stays covered and the roots stay in the water",
	})
	differenceLaw = working.Must(working.Law{
		Symbol: "V", Kind: quantity.Volume, Formula: "v-w", Where: []working.Symbol{litres("v", "water at the upper line"), litres("w", "water at the lower line")},
		Basis: working.OfNature, Source: "the one less the other",
	})
	solutionLaw = working.Must(working.Law{
		Symbol: "V", Kind: quantity.Volume, Formula: "v-w", Where: []working.Symbol{litres("v", "water up to the fill line"), litres("w", "what cups and stones push aside")},
		Basis: working.OfNature, Source: "the one less the other",
	})
	displacedLaw = working.Must(working.Law{
		Symbol: "D", Kind: quantity.Volume, Formula: "n*pi/4*b^2*max(h-z, k)+s*pi/4*d^2*e",
		Where: []working.Symbol{
			count("n", "cups"), length("b", "cup body"), length("h", "fill line"), length("z", "cup bottom"), length("k", "nought"),
			count("s", "air stones"), length("d", "stone across"), length("e", "stone height"),
		},
		Basis: working.OfNature, Source: "cylinders; a cup is taken as solid and as wide as under its lip, which is the cautious side",
	})
	densityLaw = working.Must(working.Law{
		Symbol: "w", Kind: quantity.Density, Unit: quantity.KilogramPerLitre, Empirical: true,
		Formula: "0.99997495*(1-(t-3.983035)^2*(t+301.797)/(522528.9*(t+69.34881)))",
		Where:   []working.Symbol{{Name: "t", Meaning: "water temperature", Kind: quantity.Temperature, Unit: quantity.Celsius}},
		Basis:   working.OfNature, Source: "Tanaka, Girard, Davis, Peuto, Bignell, Metrologia 38 (2001) 301-309",
	})
	massLaw = working.Must(working.Law{
		Symbol: "m", Kind: quantity.Mass, Formula: "e+V*w",
		Where: []working.Symbol{
			{Name: "e", Meaning: "tub and lid, empty", Kind: quantity.Mass}, litres("V", "solution"), {Name: "w", Meaning: "density of water", Kind: quantity.Density},
		},
		Basis: working.OfNature, Source: "mass is volume times density; the salts add under 0.5 %",
	})
	tripsLaw = working.Must(working.Law{
		Symbol: "k", Kind: quantity.Count, Formula: "ceil(V/b)", Where: []working.Symbol{litres("V", "solution"), litres("b", "water in one bucket")},
		Basis: working.OfTrade, Source: "8 L in a 10 L bucket is what an adult carries without spilling",
	})
	daysLaw = working.Must(working.Law{
		Symbol: "d", Kind: quantity.Time, Formula: "V/q",
		Where: []working.Symbol{litres("V", "water down to the lowest line"), {Name: "q", Meaning: "water the tub takes in a day", Kind: quantity.DailyVolume}},
		Basis: working.OfNature, Source: "plain division; a hot dry room takes nearly twice as much",
	})
)
