package oxygen

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Units and kinds that only oxygen shows.
var (
	rateDim     = quantity.Dim{Mass: 1, Time: -1}
	perTime     = quantity.Dim{Time: -1}
	perMetre    = quantity.Dim{Length: -1}
	pressureDim = quantity.Dim{Mass: 1, Length: -1, Time: -2}
	milligramH  = quantity.Unit{Symbol: "mg/h", Dim: rateDim, Scale: 1e-6 / 3600}
	perHour     = quantity.Unit{Symbol: "1/h", Dim: perTime, Scale: 1. / 3600}
	percentM    = quantity.Unit{Symbol: "%/m", Dim: perMetre, Scale: 1e-5}
	nanomole    = quantity.Unit{Symbol: "nmol/g/s", Dim: quantity.Dim{Amount: 1, Mass: -1, Time: -1}, Scale: 1e-6}
	kilopascal  = quantity.Unit{Symbol: "kPa", Dim: pressureDim, Scale: 1}
	gramLitre   = quantity.Unit{Symbol: "g/L", Dim: quantity.DensityDim, Scale: 1e-9}
	permilUnit  = quantity.Unit{Symbol: "‰", Scale: 1e-3}
	kelvinUnit  = quantity.Unit{Symbol: "K", Dim: quantity.TemperatureDim, Scale: 1}

	Rate        = quantity.Kind{Name: "oxygen in an hour", Dim: rateDim, Metric: milligramH, US: milligramH, Decimals: [2]int{1, 1}}
	Closing     = quantity.Kind{Name: "a rate", Dim: perTime, Metric: perHour, US: perHour, Decimals: [2]int{3, 3}}
	PerDepth    = quantity.Kind{Name: "a share for each metre", Dim: perMetre, Metric: percentM, US: percentM, Decimals: [2]int{1, 1}}
	Breathing   = quantity.Kind{Name: "a respiration", Dim: nanomole.Dim, Metric: nanomole, US: nanomole, Decimals: [2]int{1, 1}}
	Pressure    = quantity.Kind{Name: "a pressure", Dim: pressureDim, Metric: kilopascal, US: kilopascal, Decimals: [2]int{2, 2}}
	Hours       = quantity.Kind{Name: "a time", Dim: quantity.TimeDim, Metric: quantity.Hour, US: quantity.Hour, Decimals: [2]int{1, 1}}
	Minutes     = quantity.Kind{Name: "a time", Dim: quantity.TimeDim, Metric: quantity.Minute, US: quantity.Minute, Decimals: [2]int{0, 0}}
	Dissolved   = quantity.Content.WithDecimals(2, 2)
	InAir       = quantity.Kind{Name: "a content", Dim: quantity.DensityDim, Metric: gramLitre, US: gramLitre, Decimals: [2]int{4, 4}}
	Salt        = quantity.Kind{Name: "a salt content", Metric: permilUnit, US: permilUnit, Decimals: [2]int{3, 3}}
	Absolute    = quantity.Kind{Name: "a temperature from absolute nought", Dim: quantity.TemperatureDim, Metric: kelvinUnit, US: kelvinUnit, Decimals: [2]int{2, 2}}
	RootMass    = quantity.SmallMass.WithDecimals(1, 2)
	Multiplier  = quantity.Factor.WithDecimals(4, 4)
	benson      = "Benson & Krause 1980, 1984, as used by the USGS"
	transferred = "clean-water aeration: EPA fine-pore manuals, from memory; the change with temperature as usual in that trade"
)

var (
	absoluteLaw = working.Must(working.Law{
		Symbol: "K", Kind: Absolute, Unit: kelvinUnit, Empirical: true, Formula: "t+273.15", Where: []working.Symbol{working.Letter("t", "water", quantity.Temperature)},
		Basis: working.OfNature, Source: "definition of the kelvin",
	})
	freshLaw = working.Must(working.Law{
		Symbol: "c", Kind: Dissolved, Unit: quantity.MilligramPerL, Empirical: true,
		Formula: "exp(-139.34411+157570.1/K-66423080/K^2+12438000000/K^3-862194900000/K^4)",
		Where:   []working.Symbol{working.Letter("K", "water, from absolute nought", Absolute)}, Basis: working.OfNature, Source: benson,
	})
	salinityLaw = working.Must(working.Law{
		Symbol: "S", Kind: Salt, Unit: permilUnit, Empirical: true, Formula: "0.5572*E+0.00202*E^2", Where: []working.Symbol{working.Letter("E", "EC at 25 °C", quantity.Conductivity)},
		Basis: working.OfNature, Source: "USGS, from memory",
	})
	saltLaw = working.Must(working.Law{
		Symbol: "f", Kind: Multiplier, Unit: quantity.One, Empirical: true, Formula: "exp(-S*(0.017674-10.754/K+2140.7/K^2))",
		Where: []working.Symbol{working.Letter("S", "salt in the water", Salt), working.Letter("K", "water, from absolute nought", Absolute)}, Basis: working.OfNature, Source: benson,
	})
	vapourLaw = working.Must(working.Law{
		Symbol: "u", Kind: Multiplier, Unit: quantity.One, Empirical: true, Formula: "exp(11.8571-3840.7/K-216961/K^2)",
		Where: []working.Symbol{working.Letter("K", "water, from absolute nought", Absolute)}, Basis: working.OfNature, Source: benson,
	})
	pressureLaw = working.Must(working.Law{
		Symbol: "g", Kind: Multiplier, Unit: quantity.One, Empirical: true,
		Formula: "(P/101.325-u)*(1-(0.000975-0.00001426*t+0.00000006436*t^2)*P/101.325)/((1-u)*(1-(0.000975-0.00001426*t+0.00000006436*t^2)))",
		Where:   []working.Symbol{working.Letter("P", "pressure of the air", Pressure), working.Letter("u", "water vapour, in atmospheres", Multiplier), working.Letter("t", "water", quantity.Temperature)},
		Basis:   working.OfNature, Source: benson,
	})
	saturationLaw = working.Must(working.Law{
		Symbol: "C", Kind: Dissolved, Formula: "c*f*g", Where: []working.Symbol{working.Letter("c", "fresh water, one atmosphere", Dissolved), working.Letter("f", "for the salts", Multiplier), working.Letter("g", "for the air's pressure", Multiplier)},
		Basis: working.OfNature, Source: benson,
	})
	respirationLaw = working.Must(working.Law{
		Symbol: "b", Kind: Breathing, Unit: nanomole, Empirical: true, Formula: "r*2^((t-22)/10)", Where: []working.Symbol{working.Letter("r", "respiration at 22 °C", Breathing), working.Letter("t", "water", quantity.Temperature)},
		Basis: working.OfNature, Source: "doubles with each 10 K (from memory; 1.5 to over 3 times are reported)",
	})
	uptakeLaw = working.Must(working.Law{
		Symbol: "R", Kind: Rate, Unit: milligramH, Empirical: true, Formula: "m*b*3600*32/1000000", Where: []working.Symbol{working.Letter("m", "roots, dry", RootMass), working.Letter("b", "respiration", Breathing)},
		Basis: working.OfNature, Source: "32 g of oxygen in a mole, 3600 seconds in an hour",
	})
	standardLaw = working.Must(working.Law{
		Symbol: "A", Kind: Rate, Formula: "Q*o*s*d",
		Where: []working.Symbol{working.Letter("Q", "air", quantity.AirFlow), working.Letter("o", "oxygen in air", InAir), working.Letter("s", "share taken up for each metre", PerDepth), working.Letter("d", "water over the stone", quantity.Length)},
		Basis: working.OfNature, Source: transferred,
	})
	closingLaw = working.Must(working.Law{
		Symbol: "k", Kind: Closing, Unit: perHour, Empirical: true, Formula: "A/(9.092*V)*1.024^(t-20)",
		Where: []working.Symbol{working.Letter("A", "oxygen brought into empty water at 20 °C", Rate), working.Letter("V", "solution", quantity.Volume), working.Letter("t", "water", quantity.Temperature)},
		Basis: working.OfNature, Source: transferred,
	})
	steadyLaw = working.Must(working.Law{
		Symbol: "X", Kind: Dissolved, Formula: "max(z, C-R/(k*V))",
		Where: []working.Symbol{working.Letter("z", "nought", Dissolved), working.Letter("C", "full water", Dissolved), working.Letter("R", "oxygen the roots take", Rate), working.Letter("k", "rate at which air fills the water", Closing), working.Letter("V", "solution", quantity.Volume)},
		Basis: working.OfNature, Source: "as much comes as goes",
	})
	flowLaw = working.Must(working.Law{
		Symbol: "Q", Kind: quantity.AirFlow, Formula: "q*R/(k*V*(C-a))",
		Where: []working.Symbol{working.Letter("q", "air", quantity.AirFlow), working.Letter("R", "oxygen the roots take", Rate), working.Letter("k", "rate at which that air fills the water", Closing), working.Letter("V", "solution", quantity.Volume), working.Letter("C", "full water", Dissolved), working.Letter("a", "oxygen to hold", Dissolved)},
		Basis: working.OfNature, Source: "twice the air brings twice the oxygen",
	})
	plantsLaw = working.Must(working.Law{
		Symbol: "n", Kind: quantity.Count, Formula: "floor(max(k*V*(C-a), z)/r)",
		Where: []working.Symbol{working.Letter("k", "rate at which air fills the water", Closing), working.Letter("V", "solution", quantity.Volume), working.Letter("C", "full water", Dissolved), working.Letter("a", "oxygen to hold", Dissolved), working.Letter("z", "nought", Rate), working.Letter("r", "oxygen one plant's roots take", Rate)},
		Basis: working.OfNature, Source: "what the air brings at that level, shared out",
	})
	lastsLaw = working.Must(working.Law{
		Symbol: "h", Kind: Hours, Formula: "V*max(z, X-a)/R",
		Where: []working.Symbol{working.Letter("V", "solution", quantity.Volume), working.Letter("z", "nought", Dissolved), working.Letter("X", "oxygen when the pump stops", Dissolved), working.Letter("a", "oxygen to fall to", Dissolved), working.Letter("R", "oxygen the roots take", Rate)},
		Basis: working.OfNature, Source: "what is in the water over what is taken; nothing counted from the surface",
	})
	quietLaw = working.Must(working.Law{
		Symbol: "q", Kind: Minutes, Unit: quantity.Minute, Empirical: true, Formula: "min(m, floor(h*60/(s*5))*5)",
		Where: []working.Symbol{working.Letter("m", "one lesson", Minutes), working.Letter("h", "hours to the warning level", Hours), working.Letter("s", "reserve", quantity.Factor)},
		Basis: working.OfTrade, Source: "half the time to the warning level, in steps of five minutes (common practice, no source)",
	})
)
