package garden

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// The sums of a morning that are not steering's own.
var (
	leastOfLaw = working.Must(working.Law{
		Symbol: "M", Kind: quantity.Volume, Formula: "min(v, m)",
		Where: []working.Symbol{working.Letter("v", "what it holds there", quantity.Volume), working.Letter("m", "the most it may hold", quantity.Volume)},
		Basis: working.OfNature, Source: "the smaller of the two",
	})
	sameLaw = working.Must(working.Law{
		Symbol: "M", Kind: quantity.Volume, Formula: "v", Where: []working.Symbol{working.Letter("v", "solution at the fill line of transplant day", quantity.Volume)},
		Basis: working.OfTrade, Source: "never over the fill line that the tub was laid out for",
	})
	roomLaw = working.Must(working.Law{
		Symbol: "r", Kind: quantity.Volume, Formula: "v-V",
		Where: []working.Symbol{working.Letter("v", "so much higher than the lowest line it has had", quantity.Volume), working.Letter("V", "in the tub now", quantity.Volume)},
		Basis: working.OfNature, Source: "difference",
	})
	riseLaw = working.Must(working.Law{
		Symbol: "h", Kind: quantity.Length, Formula: "min(l+u, H)",
		Where: []working.Symbol{
			working.Letter("l", "lowest line since it was filled", quantity.Length),
			working.Letter("u", "what a still tub's line may rise by", quantity.Length),
			working.Letter("H", "inside height", quantity.Length),
		},
		Basis: working.OfTrade, Source: "roots that hang in air may not be drowned again",
	})
	fallLaw = working.Must(working.Law{
		Symbol: "d", Kind: quantity.SmallLength, Formula: "h-l",
		Where: []working.Symbol{working.Letter("h", "fill line of the day", quantity.Length), working.Letter("l", "line as read", quantity.Length)},
		Basis: working.OfNature, Source: "difference",
	})
	middleLaw = working.Must(working.Law{
		Symbol: "T", Kind: quantity.Conductivity, Formula: "(l+h)/2", Where: []working.Symbol{working.Letter("l", "weakest", quantity.Conductivity), working.Letter("h", "strongest", quantity.Conductivity)},
		Basis: working.OfTrade, Source: "the middle of what the crop is grown in",
	})
	higherLaw = working.Must(working.Law{
		Symbol: "l", Kind: quantity.Conductivity, Formula: "max(a, b)", Where: []working.Symbol{working.Letter("a", "one crop", quantity.Conductivity), working.Letter("b", "another", quantity.Conductivity)},
		Basis: working.OfNature, Source: "strong enough for both",
	})
	lowerLaw = working.Must(working.Law{
		Symbol: "h", Kind: quantity.Conductivity, Formula: "min(a, b)", Where: []working.Symbol{working.Letter("a", "one crop", quantity.Conductivity), working.Letter("b", "another", quantity.Conductivity)},
		Basis: working.OfNature, Source: "weak enough for both",
	})
	rateLaw = working.Must(working.Law{
		Symbol: "q", Kind: quantity.DailyVolume, Formula: "W/t", Where: []working.Symbol{working.Letter("W", "gone", quantity.Volume), working.Letter("t", "in the time", quantity.Time)},
		Basis: working.OfNature, Source: "what went, over the time it took",
	})
	thirstLaw = working.Must(working.Law{
		Symbol: "w", Kind: quantity.Volume, Formula: "k*q*t",
		Where: []working.Symbol{
			working.Letter("k", "a hot dry day against a usual one", quantity.Factor), working.Letter("q", "what the tub takes in a day", quantity.DailyVolume), working.Letter("t", "time since the last reading", quantity.Time),
		},
		Basis: working.OfTrade, Source: "stands in for what 95 of 100 cases stay under, by sums that a pencil can do; the season's forecast counts it in runs",
	})
	useLaw = working.Must(working.Law{
		Symbol: "W", Kind: quantity.Volume, Formula: "q*t", Where: []working.Symbol{working.Letter("q", "what the tub takes in a day", quantity.DailyVolume), working.Letter("t", "time nobody comes", quantity.Time)},
		Basis: working.OfNature, Source: "as much each day as before; growing plants take more",
	})
	hotUseLaw = working.Must(working.Law{
		Symbol: "W", Kind: quantity.Volume, Formula: "k*w",
		Where: []working.Symbol{working.Letter("k", "a hot dry day against a usual one", quantity.Factor), working.Letter("w", "on usual days", quantity.Volume)},
		Basis: working.OfTrade, Source: "all days hot and dry",
	})
	leftLaw = working.Must(working.Law{
		Symbol: "V", Kind: quantity.Volume, Formula: "v-w", Where: []working.Symbol{working.Letter("v", "at the fill line", quantity.Volume), working.Letter("w", "at the lowest safe line", quantity.Volume)},
		Basis: working.OfNature, Source: "difference",
	})
)
