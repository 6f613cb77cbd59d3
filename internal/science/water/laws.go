package water

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Units that only the air and leaves show.
var (
	pressureDim = quantity.Dim{Mass: 1, Length: -1, Time: -2}
	kilopascal  = quantity.Unit{Symbol: "kPa", Dim: pressureDim, Scale: 1}
	gramM3      = quantity.Unit{Symbol: "g/m³", Dim: quantity.DensityDim, Scale: 1e-12}
	secondM     = quantity.Unit{Symbol: "s/m", Dim: quantity.Dim{Time: 1, Length: -1}, Scale: 1e-3}
	gramM2H     = quantity.Unit{Symbol: "g/m²/h", Dim: quantity.Dim{Mass: 1, Length: -2, Time: -1}, Scale: 1e-9 / 3600}
	squareM     = quantity.Unit{Symbol: "m² per m²", Scale: 1}
	ppfdUnit    = quantity.Unit{Symbol: "µmol/m²/s", Dim: quantity.Dim{Amount: 1, Length: -2, Time: -1}, Scale: 1e-12}
	mmDay       = quantity.Unit{Symbol: "mm/d", Dim: quantity.Dim{Length: 1, Time: -1}, Scale: 1. / 86400}
	metreSecond = quantity.Unit{Symbol: "m/s", Dim: quantity.Dim{Length: 1, Time: -1}, Scale: 1000}
	areaM2      = quantity.Unit{Symbol: "m²", Dim: quantity.AreaDim, Scale: 1e6}
	perArea     = quantity.Unit{Symbol: "/m²", Dim: quantity.Dim{Length: -2}, Scale: 1e-6}
	metres      = quantity.Metre
)

// Kinds of numbers that only the air and leaves show.
var (
	VapourPressure = quantity.Kind{Name: "a vapour pressure", Dim: pressureDim, Metric: kilopascal, US: kilopascal, Decimals: [2]int{3, 3}}
	AirPressure    = quantity.Kind{Name: "a pressure", Dim: pressureDim, Metric: kilopascal, US: kilopascal, Decimals: [2]int{1, 1}}
	Vapour         = quantity.Kind{Name: "water in air", Dim: quantity.DensityDim, Metric: gramM3, US: gramM3, Decimals: [2]int{2, 2}}
	Resistance     = quantity.Kind{Name: "a resistance", Dim: secondM.Dim, Metric: secondM, US: secondM, Decimals: [2]int{0, 0}}
	Breath         = quantity.Kind{Name: "water breathed out", Dim: gramM2H.Dim, Metric: gramM2H, US: gramM2H, Decimals: [2]int{1, 1}}
	LeafIndex      = quantity.Kind{Name: "a leaf area", Metric: squareM, US: squareM, Decimals: [2]int{2, 2}}
	Light          = quantity.Kind{Name: "a light level", Dim: ppfdUnit.Dim, Metric: ppfdUnit, US: ppfdUnit, Decimals: [2]int{0, 0}}
	Loss           = quantity.Kind{Name: "a depth in a day", Dim: mmDay.Dim, Metric: mmDay, US: mmDay, Decimals: [2]int{2, 2}}
	Speed          = quantity.Kind{Name: "a speed", Dim: metreSecond.Dim, Metric: metreSecond, US: metreSecond, Decimals: [2]int{2, 2}}
	Ground         = quantity.Kind{Name: "an area", Dim: quantity.AreaDim, Metric: areaM2, US: areaM2, Decimals: [2]int{3, 3}}
	Density        = quantity.Kind{Name: "plants on an area", Dim: perArea.Dim, Metric: perArea, US: perArea, Decimals: [2]int{1, 1}}
	Height         = quantity.Kind{Name: "a height above the sea", Dim: quantity.LengthDim, Metric: metres, US: quantity.Foot, Decimals: [2]int{0, 0}}
	hourKind       = quantity.Kind{Name: "a time", Dim: quantity.TimeDim, Metric: quantity.Hour, US: quantity.Hour, Decimals: [2]int{1, 1}}
	leafWarmth     = quantity.Temperature.WithDecimals(2, 2)
	drunk          = quantity.Volume.WithDecimals(2, 2)
)

const graamans = "Graamans et al. 2017, Agric. Syst. 153:138-147"

var (
	fullLaw = working.Must(working.Law{
		Symbol: "e", Kind: VapourPressure, Unit: kilopascal, Empirical: true, Formula: "0.6108*exp(17.27*t/(t+237.3))", Where: []working.Symbol{working.Letter("t", "air", leafWarmth)},
		Basis: working.OfNature, Source: "FAO Irrigation and Drainage Paper 56, equation 11",
	})
	deficitLaw = working.Must(working.Law{
		Symbol: "v", Kind: VapourPressure, Formula: "e*(1-H)", Where: []working.Symbol{working.Letter("e", "vapour that full air holds", VapourPressure), working.Letter("H", "relative humidity", quantity.Share)},
		Basis: working.OfNature, Source: "definition of relative humidity",
	})
	pressureLaw = working.Must(working.Law{
		Symbol: "P", Kind: AirPressure, Unit: kilopascal, Empirical: true, Formula: "101.3*((293-0.0065*z)/293)^5.26", Where: []working.Symbol{working.Letter("z", "height above the sea", Height)},
		Basis: working.OfNature, Source: "FAO Irrigation and Drainage Paper 56, equation 7",
	})
	vapourLaw = working.Must(working.Law{
		Symbol: "x", Kind: Vapour, Unit: gramM3, Empirical: true, Formula: "e*H*1000*18.015/(8.314*(t+273.15))",
		Where: []working.Symbol{working.Letter("e", "vapour that full air holds", VapourPressure), working.Letter("H", "share of it that is there", quantity.Kind{Name: "a share", Metric: quantity.One, US: quantity.One, Decimals: [2]int{2, 2}}), working.Letter("t", "air", leafWarmth)},
		Basis: working.OfNature, Source: "ideal gas",
	})
	poresLaw = working.Must(working.Law{
		Symbol: "s", Kind: Resistance, Unit: secondM, Empirical: true, Formula: "60*(1500+E)/(200+E)", Where: []working.Symbol{working.Letter("E", "light on the leaf", Light)},
		Basis: working.OfNature, Source: graamans,
	})
	breathLaw = working.Must(working.Law{
		Symbol: "B", Kind: Breath, Unit: gramM2H, Empirical: true, Formula: "3600*L*(X-x)/(s+a)",
		Where: []working.Symbol{working.Letter("L", "leaf area over a square metre", LeafIndex), working.Letter("X", "water in the air of the leaf's pores", Vapour), working.Letter("x", "water in the room's air", Vapour), working.Letter("s", "resistance of the pores", Resistance), working.Letter("a", "resistance of the air", Resistance)},
		Basis: working.OfNature, Source: graamans + "; the leaf's temperature is the one at which the lamp's heat goes out as vapour and warm air",
	})
	dayLaw = working.Must(working.Law{
		Symbol: "w", Kind: quantity.SmallVolume, Unit: quantity.Millilitre, Empirical: true, Formula: "(B*h+b*(24-h))/n",
		Where: []working.Symbol{working.Letter("B", "breathed out in the light", Breath), working.Letter("h", "hours lit", hourKind), working.Letter("b", "breathed out in the dark", Breath), working.Letter("n", "plants on a square metre", Density)},
		Basis: working.OfNature, Source: "day and night; a gram of water is a millilitre",
	})
	openLaw = working.Must(working.Law{
		Symbol: "o", Kind: Loss, Unit: mmDay, Empirical: true, Formula: "2.6*(1+0.54*u)*v", Where: []working.Symbol{working.Letter("u", "air over the water", Speed), working.Letter("v", "vapour pressure deficit", VapourPressure)},
		Basis: working.OfNature, Source: "Penman 1948, from memory",
	})
	lidLaw = working.Must(working.Law{
		Symbol: "w", Kind: quantity.SmallVolume, Unit: quantity.Millilitre, Empirical: true, Formula: "1000*o*A*g/100", Where: []working.Symbol{working.Letter("o", "open water loses", Loss), working.Letter("A", "area of the water", Ground), working.Letter("g", "open share of the lid", quantity.Share.WithDecimals(1, 1))},
		Basis: working.OfTrade, Source: "a lid passes what its gaps would (common practice, no source)",
	})
	drinkLaw = working.Must(working.Law{
		Symbol: "E", Kind: quantity.Conductivity, Formula: "max(z, e*V-u*w)/(V-w-x)",
		Where: []working.Symbol{
			working.Letter("z", "nought", ecLitres), working.Letter("e", "EC before", quantity.Conductivity), working.Letter("V", "solution before", drunk), working.Letter("u", "strength of what the plants take", quantity.Conductivity),
			working.Letter("w", "drunk", drunk), working.Letter("x", "gone as vapour", drunk),
		},
		Basis: working.OfNature, Source: "mass balance: the salts that stay, in the water that stays",
	})
	topUpLaw = working.Must(working.Law{
		Symbol: "E", Kind: quantity.Conductivity, Formula: "(e*V+t*w)/(V+w)",
		Where: []working.Symbol{working.Letter("e", "EC before", quantity.Conductivity), working.Letter("V", "solution before", drunk), working.Letter("t", "EC of what is poured in", quantity.Conductivity), working.Letter("w", "poured in", drunk)},
		Basis: working.OfNature, Source: "mass balance",
	})
	takenLaw = working.Must(working.Law{
		Symbol: "m", Kind: quantity.SmallMass.WithDecimals(2, 3), Formula: "w*c", Where: []working.Symbol{working.Letter("w", "drunk", drunk), working.Letter("c", "taken with each litre", quantity.Content)},
		Basis: working.OfNature, Source: "litres times what a litre brings (10.3389/fpls.2024.1411572)",
	})
	ecLitres = quantity.Kind{
		Name: "salts as EC times volume", Dim: quantity.ConductivityDim.Times(quantity.VolumeDim),
		Metric:   quantity.Unit{Symbol: "mS/cm·L", Dim: quantity.ConductivityDim.Times(quantity.VolumeDim), Scale: 1e-4},
		US:       quantity.Unit{Symbol: "mS/cm·L", Dim: quantity.ConductivityDim.Times(quantity.VolumeDim), Scale: 1e-4},
		Decimals: [2]int{2, 2},
	}
)
