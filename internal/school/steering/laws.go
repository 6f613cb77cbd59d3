package steering

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

func litres(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.Volume}
}

func strength(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.Conductivity}
}

func share(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.Share}
}

// mixing is the source of all sums here. That EC stands for salts is a straight
// line where the truth is bent.
const mixing = "salts before = salts after, EC taken for salts; half of a full-strength solution then reads 5 % low " +
	"(1142 µS/cm against 2171/2, computed with the USGS speciation program PHREEQC 3)"

var (
	ceilingLaw = working.Must(working.Law{
		Symbol: "C", Kind: quantity.Volume, Formula: "min(M, V+r)",
		Where: []working.Symbol{litres("M", "the most it may hold"), litres("V", "in the tub now"), litres("r", "what the line may rise by")},
		Basis: working.OfTrade, Source: "Kratky, Acta Hort. 648:83-89, 2004, abstract: a rise of more than 2 cm may injure the roots of a still tub",
	})
	allowedLaw = working.Must(working.Law{
		Symbol: "Y", Kind: quantity.Volume, Formula: "max(k*F-p, z)",
		Where: []working.Symbol{share("k", "share of the fill a day"), litres("F", "at the fill line"), litres("p", "poured in today already"), litres("z", "nought")},
		Basis: working.OfTrade, Source: "2 mg/L of chlorine in a quarter of the water are 0.5 mg/L (McGehee & Raudales, HortTechnology 33(1):125, 2023)",
	})
	takeLaw = working.Must(working.Law{
		Symbol: "X", Kind: quantity.Volume, Formula: "max(min(x, s*V, V+Y-C), z)",
		Where: []working.Symbol{
			litres("x", "to be taken out by the sum"), share("s", "share of the water at once"), litres("V", "in the tub now"),
			litres("Y", "may be poured in today"), litres("C", "the most it may hold today"), litres("z", "nought"),
		},
		Basis: working.OfTrade, Source: "common practice, no source: no more than half the water of a planted tub at once, and no more than can be poured in again",
	})
	pourLaw = working.Must(working.Law{
		Symbol: "y", Kind: quantity.Volume, Formula: "max(min(D, Y, C-V+X), z)",
		Where: []working.Symbol{
			litres("D", "needed by the sum"), litres("Y", "may be poured in today"), litres("C", "the most it may hold today"),
			litres("V", "in the tub now"), litres("X", "taken out first"), litres("z", "nought"),
		},
		Basis: working.OfNature, Source: "the least of what is needed, what may be poured in, and the room there is",
	})
	massLaw = working.Must(working.Law{
		Symbol: "m", Kind: quantity.Mass, Formula: "X*d", Where: []working.Symbol{litres("X", "taken out"), {Name: "d", Meaning: "density of water", Kind: quantity.Density}},
		Basis: working.OfNature, Source: "a litre of water weighs a kilogram",
	})
	stepLaw = working.Must(working.Law{
		Symbol: "T", Kind: quantity.Conductivity, Formula: "min(G, E+u)",
		Where: []working.Symbol{strength("G", "target"), strength("E", "EC now"), strength("u", "rise in a day")},
		Basis: working.OfTrade, Source: "common practice, no source: no more than 0.3 mS/cm stronger a day",
	})
	roomLaw = working.Must(working.Law{
		Symbol: "D", Kind: quantity.Volume, Formula: "max(F-V, z)",
		Where: []working.Symbol{litres("F", "at the fill line"), litres("V", "in the tub now"), litres("z", "nought")},
		Basis: working.OfNature, Source: "difference",
	})
	restLaw = working.Must(working.Law{
		Symbol: "R", Kind: quantity.Volume, Formula: "max(min(F, C)-V-y, z)",
		Where: []working.Symbol{
			litres("F", "at the fill line"), litres("C", "the most it may hold today"), litres("V", "in the tub now"),
			litres("y", "poured in"), litres("z", "nought"),
		},
		Basis: working.OfNature, Source: "what is missing to the line after that",
	})
	restAllowedLaw = working.Must(working.Law{
		Symbol: "R", Kind: quantity.Volume, Formula: "max(min(min(F, C)-V-y, Y-y), z)",
		Where: []working.Symbol{
			litres("F", "at the fill line"), litres("C", "the most it may hold today"), litres("V", "in the tub now"),
			litres("y", "poured in"), litres("Y", "may be poured in today"), litres("z", "nought"),
		},
		Basis: working.OfNature, Source: "what is missing to the line after that, or what may still be poured in",
	})
	halfLaw = working.Must(working.Law{
		Symbol: "W", Kind: quantity.Conductivity, Formula: "(w+N)/2",
		Where: []working.Symbol{strength("w", "EC of the tap water"), strength("N", "EC of the solution")},
		Basis: working.OfNature, Source: "half of each",
	})
	halfPartsLaw = working.Must(working.Law{
		Symbol: "W", Kind: parts, Formula: "N/2", Where: []working.Symbol{{Name: "N", Meaning: "strength of the solution", Kind: parts}},
		Basis: working.OfNature, Source: "half of it, and no feed in the water",
	})
	surplusLaw = working.Must(working.Law{
		Symbol: "X", Kind: quantity.Volume, Formula: "V-M", Where: []working.Symbol{litres("V", "in the tub now"), litres("M", "the most it may hold")},
		Basis: working.OfNature, Source: "difference",
	})
)
