package solution

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Units that only chemistry shows.
var (
	gramPerLitre  = quantity.Unit{Symbol: "g/L", Dim: quantity.DensityDim, Scale: 1e-9}
	millimolar    = quantity.Unit{Symbol: "mmol/L", Dim: quantity.Dim{Amount: 1, Length: -3}, Scale: 1e-9}
	gramPerMole   = quantity.Unit{Symbol: "g/mol", Dim: quantity.Dim{Mass: 1, Amount: -1}, Scale: 1e-3}
	millilitrePer = quantity.Unit{Symbol: "mL/L", Scale: 1e-3}
	milligram     = quantity.Unit{Symbol: "mg", Dim: quantity.MassDim, Scale: 1e-6}
	times         = quantity.One
)

// Kinds of numbers that only chemistry shows.
var (
	StockContent = quantity.Kind{Name: "a content", Dim: quantity.DensityDim, Metric: gramPerLitre, US: gramPerLitre, Decimals: [2]int{1, 1}}
	Molarity     = quantity.Kind{Name: "a molarity", Dim: millimolar.Dim, Metric: millimolar, US: millimolar, Decimals: [2]int{3, 3}}
	MolarMass    = quantity.Kind{Name: "a molar mass", Dim: gramPerMole.Dim, Metric: gramPerMole, US: gramPerMole, Decimals: [2]int{3, 3}}
	Dose         = quantity.Kind{Name: "a dose", Metric: millilitrePer, US: millilitrePer, Decimals: [2]int{2, 2}}
	TinyMass     = quantity.Kind{Name: "a mass", Dim: quantity.MassDim, Metric: milligram, US: milligram, Decimals: [2]int{0, 0}}
	Strength     = quantity.Kind{Name: "a strength", Metric: times, US: times, Decimals: [2]int{3, 3}}
)

var (
	saturatedLaw = working.Must(working.Law{
		Symbol: "m", Kind: StockContent, Unit: gramPerLitre, Empirical: true, Formula: "1000*s/(100+s)",
		Where: []working.Symbol{{Name: "s", Meaning: "grams of salt that 100 g of water take up", Kind: quantity.Factor, Unit: quantity.One}},
		Basis: working.OfNature, Source: "share of the salt in a saturated solution, of which a litre weighs a kilogram at the least",
	})
	doseLaw = working.Must(working.Law{
		Symbol: "v", Kind: quantity.SmallVolume, Formula: "V*d", Where: []working.Symbol{working.Letter("V", "solution in the tub", quantity.Volume), working.Letter("d", "maker's dose", Dose)},
		Basis: working.OfNature, Source: "the maker's dose for each litre, times the litres",
	})
	bagDoseLaw = working.Must(working.Law{
		Symbol: "m", Kind: quantity.SmallMass, Formula: "V*d", Where: []working.Symbol{working.Letter("V", "solution in the tub", quantity.Volume), working.Letter("d", "grams for each litre", StockContent)},
		Basis: working.OfNature, Source: "grams for each litre, times the litres",
	})
	bringsLaw = working.Must(working.Law{
		Symbol: "c", Kind: quantity.Content, Formula: "m*s/V",
		Where: []working.Symbol{working.Letter("m", "fertiliser weighed", quantity.SmallMass), working.Letter("s", "share of the nutrient in it", quantity.Share), working.Letter("V", "solution in the tub", quantity.Volume)},
		Basis: working.OfNature, Source: "what is weighed, times its share, over the water",
	})
	addLaw = working.Must(working.Law{
		Symbol: "c", Kind: quantity.Content, Formula: "a+b", Where: []working.Symbol{working.Letter("a", "what is there", quantity.Content), working.Letter("b", "what is added", quantity.Content)},
		Basis: working.OfNature, Source: "sum",
	})
	to25Law = working.Must(working.Law{
		Symbol: "E", Kind: quantity.Conductivity, Unit: quantity.MillisiemensPerCM, Empirical: true, Formula: "e/(1+a*(t-25))",
		Where: []working.Symbol{
			{Name: "e", Meaning: "reading", Kind: quantity.Conductivity, Unit: quantity.MillisiemensPerCM},
			{Name: "a", Meaning: "slope, parts of the EC at 25 °C for each kelvin", Kind: quantity.Factor.WithDecimals(4, 4), Unit: quantity.One},
			{Name: "t", Meaning: "temperature of the water", Kind: quantity.Temperature, Unit: quantity.Celsius},
		},
		Basis: working.OfNature, Source: "linear compensation to 25 °C, as meters do it",
	})
	ppmLaw = working.Must(working.Law{
		Symbol: "p", Kind: quantity.Count, Unit: quantity.One, Empirical: true, Formula: "E*f",
		Where: []working.Symbol{
			{Name: "E", Meaning: "EC at 25 °C", Kind: quantity.Conductivity, Unit: quantity.MillisiemensPerCM},
			{Name: "f", Meaning: "the meter's ppm for 1 mS/cm", Kind: quantity.Count, Unit: quantity.One},
		},
		Basis: working.OfTrade, Source: "the meter's own scale; it is no mg/L of nutrients",
	})
	refillLaw = working.Must(working.Law{
		Symbol: "W", Kind: Strength, Formula: "min(c/N, 1)",
		Where: []working.Symbol{working.Letter("c", "nitrogen that a top-up wants", quantity.Content), working.Letter("N", "nitrogen of the feed as mixed", quantity.Content)},
		Basis: working.OfNature, Source: "so much of the feed holds so much nitrogen; never stronger than the feed",
	})
	lowLaw = working.Must(working.Law{
		Symbol: "l", Kind: quantity.Conductivity, Formula: "E*(1-b)", Where: []working.Symbol{working.Letter("E", "EC expected", quantity.Conductivity), working.Letter("b", "band", quantity.Share)},
		Basis: working.OfNature, Source: "the lower end of the band",
	})
	highLaw = working.Must(working.Law{
		Symbol: "h", Kind: quantity.Conductivity, Formula: "E*(1+b)", Where: []working.Symbol{working.Letter("E", "EC expected", quantity.Conductivity), working.Letter("b", "band", quantity.Share)},
		Basis: working.OfNature, Source: "the upper end of the band",
	})
)

var (
	acidVolumeLaw = working.Must(working.Law{
		Symbol: "v", Kind: quantity.SmallVolume, Formula: "V*n*M/(w*d)",
		Where: []working.Symbol{
			working.Letter("V", "solution in the tub", quantity.Volume), working.Letter("n", "acid for each litre", Molarity), working.Letter("M", "molar mass", MolarMass),
			working.Letter("w", "strength by mass", quantity.Share.WithDecimals(1, 1)), working.Letter("d", "density of the bottle", quantity.Density),
		},
		Basis: working.OfNature, Source: "moles to grams of pure acid, to grams of the bottle, to millilitres",
	})
	acidMassLaw = working.Must(working.Law{
		Symbol: "m", Kind: quantity.SmallMass, Formula: "V*n*M/w",
		Where: []working.Symbol{
			working.Letter("V", "solution in the tub", quantity.Volume), working.Letter("n", "acid for each litre", Molarity), working.Letter("M", "molar mass", MolarMass),
			working.Letter("w", "strength by mass", quantity.Share.WithDecimals(1, 1)),
		},
		Basis: working.OfNature, Source: "moles to grams of pure acid, to grams of what is in the bag",
	})
	alkalinityLaw = working.Must(working.Law{
		Symbol: "n", Kind: Molarity, Formula: "A/(q*k)",
		Where: []working.Symbol{
			working.Letter("A", "alkalinity, as CaCO3", quantity.Content), working.Letter("q", "CaCO3 for each mole of acid charge", MolarMass), working.Letter("k", "charges that each acid molecule gives at the target", quantity.Factor),
		},
		Basis: working.OfNature, Source: "in aerated water all of the alkalinity has to go; Standard Methods 2320 for the unit",
	})
	bleachLaw = working.Must(working.Law{
		Symbol: "v", Kind: quantity.SmallVolume, Formula: "V*c/(p-c)",
		Where: []working.Symbol{
			working.Letter("V", "water to clean with", quantity.Volume), working.Letter("c", "available chlorine wanted", quantity.Content), working.Letter("p", "available chlorine in the bottle", StockContent),
		},
		Basis: working.OfNature, Source: "mixing; the bleach counts as part of the water",
	})
	captureLaw = working.Must(working.Law{
		Symbol: "m", Kind: TinyMass, Formula: "V*c*k",
		Where: []working.Symbol{working.Letter("V", "water", quantity.Volume), working.Letter("c", "chlorine, as Cl2", quantity.Content), working.Letter("k", "needed for each part of chlorine", quantity.Factor.WithDecimals(3, 3))},
		Basis: working.OfNature, Source: "one molecule for one, by molar masses",
	})
	roomLaw = working.Must(working.Law{
		Symbol: "w", Kind: quantity.Volume, Formula: "V*(s-r)/r",
		Where: []working.Symbol{working.Letter("V", "solution now", quantity.Volume), working.Letter("s", "strength now, from the curve", Strength), working.Letter("r", "strength wanted, from the curve", Strength)},
		Basis: working.OfNature, Source: "the salts stay, the water grows",
	})
	swapLaw = working.Must(working.Law{
		Symbol: "w", Kind: quantity.Volume, Formula: "V*(s-r)/s",
		Where: []working.Symbol{working.Letter("V", "solution now", quantity.Volume), working.Letter("s", "strength now, from the curve", Strength), working.Letter("r", "strength wanted, from the curve", Strength)},
		Basis: working.OfNature, Source: "what is taken out carries its salts with it",
	})
	strengthenLaw = working.Must(working.Law{
		Symbol: "v", Kind: quantity.SmallVolume, Formula: "V*d*(r-s)",
		Where: []working.Symbol{
			working.Letter("V", "solution now", quantity.Volume), working.Letter("d", "dose at full strength", Dose), working.Letter("r", "strength wanted, from the curve", Strength), working.Letter("s", "strength now, from the curve", Strength),
		},
		Basis: working.OfNature, Source: "the rise in strength, times the full dose",
	})
	topUpLaw = working.Must(working.Law{
		Symbol: "c", Kind: quantity.Content, Formula: "f*u", Where: []working.Symbol{working.Letter("f", "nitrogen in the dry matter", quantity.Share), working.Letter("u", "dry matter made for each litre used", StockContent)},
		Basis: working.OfNature, Source: "mass balance: what the plants built in, over what they drank (Langenfeld et al. 2022, Sustainability 14:10204)",
	})
	buildUpLaw = working.Must(working.Law{
		Symbol: "c", Kind: quantity.Content, Formula: "a+b*u/V",
		Where: []working.Symbol{
			working.Letter("a", "in the tub at the start", quantity.Content), working.Letter("b", "in the water topped up", quantity.Content), working.Letter("u", "water used", quantity.Volume), working.Letter("V", "solution in the tub", quantity.Volume),
		},
		Basis: working.OfNature, Source: "what plants leave behind gathers",
	})
	stockDoseLaw = working.Must(working.Law{
		Symbol: "d", Kind: Dose, Formula: "1/s", Where: []working.Symbol{working.Letter("s", "strength of the stock, times the feed", quantity.Count)},
		Basis: working.OfNature, Source: "a stock of 100 times the feed is thinned 100 times",
	})
	fillsLaw = working.Must(working.Law{
		Symbol: "k", Kind: quantity.Factor, Formula: "s*v/V",
		Where: []working.Symbol{working.Letter("s", "strength of the stock, times the feed", quantity.Count), working.Letter("v", "stock of each", quantity.Volume), working.Letter("V", "solution in the tub", quantity.Volume)},
		Basis: working.OfNature, Source: "how often the stock fills the tub",
	})
)
