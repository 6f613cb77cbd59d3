package garden

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

func inLitres(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.Volume}
}

func inEC(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.Conductivity}
}

func inTime(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.Time}
}

func perDay(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.DailyVolume}
}

// The sums of a morning that are not steering's own.
var (
	leastOfLaw = working.Must(working.Law{
		Symbol: "M", Kind: quantity.Volume, Formula: "min(v, m)",
		Where: []working.Symbol{inLitres("v", "what it holds there"), inLitres("m", "the most it may hold")},
		Basis: working.OfNature, Source: "the smaller of the two",
	})
	sameLaw = working.Must(working.Law{
		Symbol: "M", Kind: quantity.Volume, Formula: "v", Where: []working.Symbol{inLitres("v", "solution at the fill line of transplant day")},
		Basis: working.OfTrade, Source: "never over the fill line that the tub was laid out for",
	})
	roomLaw = working.Must(working.Law{
		Symbol: "r", Kind: quantity.Volume, Formula: "v-V",
		Where: []working.Symbol{inLitres("v", "so much higher than the lowest line it has had"), inLitres("V", "in the tub now")},
		Basis: working.OfNature, Source: "difference",
	})
	riseLaw = working.Must(working.Law{
		Symbol: "h", Kind: quantity.Length, Formula: "min(l+u, H)",
		Where: []working.Symbol{
			{Name: "l", Meaning: "lowest line since it was filled", Kind: quantity.Length},
			{Name: "u", Meaning: "what a still tub's line may rise by", Kind: quantity.Length},
			{Name: "H", Meaning: "inside height", Kind: quantity.Length},
		},
		Basis: working.OfTrade, Source: "roots that hang in air may not be drowned again",
	})
	fallLaw = working.Must(working.Law{
		Symbol: "d", Kind: quantity.SmallLength, Formula: "h-l",
		Where: []working.Symbol{{Name: "h", Meaning: "fill line of the day", Kind: quantity.Length}, {Name: "l", Meaning: "line as read", Kind: quantity.Length}},
		Basis: working.OfNature, Source: "difference",
	})
	middleLaw = working.Must(working.Law{
		Symbol: "T", Kind: quantity.Conductivity, Formula: "(l+h)/2", Where: []working.Symbol{inEC("l", "weakest"), inEC("h", "strongest")},
		Basis: working.OfTrade, Source: "the middle of what the crop is grown in",
	})
	higherLaw = working.Must(working.Law{
		Symbol: "l", Kind: quantity.Conductivity, Formula: "max(a, b)", Where: []working.Symbol{inEC("a", "one crop"), inEC("b", "another")},
		Basis: working.OfNature, Source: "strong enough for both",
	})
	lowerLaw = working.Must(working.Law{
		Symbol: "h", Kind: quantity.Conductivity, Formula: "min(a, b)", Where: []working.Symbol{inEC("a", "one crop"), inEC("b", "another")},
		Basis: working.OfNature, Source: "weak enough for both",
	})
	rateLaw = working.Must(working.Law{
		Symbol: "q", Kind: quantity.DailyVolume, Formula: "W/t", Where: []working.Symbol{inLitres("W", "gone"), inTime("t", "in the time")},
		Basis: working.OfNature, Source: "what went, over the time it took",
	})
	thirstLaw = working.Must(working.Law{
		Symbol: "w", Kind: quantity.Volume, Formula: "k*q*t",
		Where: []working.Symbol{
			{Name: "k", Meaning: "a hot dry day against a usual one", Kind: quantity.Factor}, perDay("q", "what the tub takes in a day"), inTime("t", "time since the last reading"),
		},
		Basis: working.OfTrade, Source: "stands in for what 95 of 100 cases stay under, by sums that a pencil can do; the season's forecast counts it in runs",
	})
	useLaw = working.Must(working.Law{
		Symbol: "W", Kind: quantity.Volume, Formula: "q*t", Where: []working.Symbol{perDay("q", "what the tub takes in a day"), inTime("t", "time nobody comes")},
		Basis: working.OfNature, Source: "as much each day as before; growing plants take more",
	})
	hotUseLaw = working.Must(working.Law{
		Symbol: "W", Kind: quantity.Volume, Formula: "k*w",
		Where: []working.Symbol{{Name: "k", Meaning: "a hot dry day against a usual one", Kind: quantity.Factor}, inLitres("w", "on usual days")},
		Basis: working.OfTrade, Source: "all days hot and dry",
	})
	leftLaw = working.Must(working.Law{
		Symbol: "V", Kind: quantity.Volume, Formula: "v-w", Where: []working.Symbol{inLitres("v", "at the fill line"), inLitres("w", "at the lowest safe line")},
		Basis: working.OfNature, Source: "difference",
	})
)
