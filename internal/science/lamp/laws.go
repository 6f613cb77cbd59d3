package lamp

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Units that only light shows.
var (
	ppfdUnit       = quantity.Unit{Symbol: "µmol/m²/s", Dim: ppfdDim, Scale: 1e-12}
	dliUnit        = quantity.Unit{Symbol: "mol/m²/d", Dim: ppfdDim, Scale: 1e-6 / 86400}
	luxPerUmol     = quantity.Unit{Symbol: "lx per µmol/m²/s", Scale: 1}
	hoursADay      = quantity.Unit{Symbol: "h/d", Scale: 1. / 24}
	kilowattHour   = quantity.Unit{Symbol: "kWh", Dim: energyDim, Scale: 3.6e12}
	umolPerJoule   = quantity.Unit{Symbol: "µmol/J", Dim: quantity.PhotonFluxDim.Over(quantity.PowerDim), Scale: 1e-12}
	squareMetre    = quantity.Unit{Symbol: "m²", Dim: quantity.AreaDim, Scale: 1e6}
	ppfdDim        = quantity.Dim{Amount: 1, Length: -2, Time: -1}
	energyDim      = quantity.Dim{Mass: 1, Length: 2, Time: -2}
	squareFootUnit = quantity.Unit{Symbol: "ft²", Dim: quantity.AreaDim, Scale: 304.8 * 304.8}
)

// Kinds of numbers that only light shows.
var (
	LightLevel = quantity.Kind{Name: "a light level", Dim: ppfdDim, Metric: ppfdUnit, US: ppfdUnit, Decimals: [2]int{0, 0}}
	DayLight   = quantity.Kind{Name: "the light of a day", Dim: ppfdDim, Metric: dliUnit, US: dliUnit, Decimals: [2]int{1, 1}}
	LitHours   = quantity.Kind{Name: "hours a day", Metric: hoursADay, US: hoursADay, Decimals: [2]int{1, 1}}
	Energy     = quantity.Kind{Name: "an energy", Dim: energyDim, Metric: kilowattHour, US: kilowattHour, Decimals: [2]int{1, 1}}
	Efficacy   = quantity.Kind{Name: "photons for each joule", Dim: umolPerJoule.Dim, Metric: umolPerJoule, US: umolPerJoule, Decimals: [2]int{2, 2}}
	Ground     = quantity.Kind{Name: "an area", Dim: quantity.AreaDim, Metric: squareMetre, US: squareFootUnit, Decimals: [2]int{2, 1}}
	Lux        = quantity.Illuminance
	LuxFactor  = quantity.Kind{Name: "lux for each µmol/m²/s", Metric: luxPerUmol, US: luxPerUmol, Decimals: [2]int{1, 1}}
)

var (
	dliLaw = working.Must(working.Law{
		Symbol: "D", Kind: DayLight, Unit: dliUnit, Empirical: true, Formula: "E*h*3600/1000000",
		Where: []working.Symbol{working.Letter("E", "light on the leaf", LightLevel), working.Letter("h", "hours lit in a day", LitHours)},
		Basis: working.OfNature, Source: "photons a second times the seconds of the day that are lit",
	})
	hoursLaw = working.Must(working.Law{
		Symbol: "h", Kind: LitHours, Unit: hoursADay, Empirical: true, Formula: "D*1000000/(E*3600)",
		Where: []working.Symbol{working.Letter("D", "light of a day wanted", DayLight), working.Letter("E", "light on the leaf", LightLevel)},
		Basis: working.OfNature, Source: "the light of a day over the light of a second",
	})
	kwhLaw = working.Must(working.Law{
		Symbol: "W", Kind: Energy, Unit: kilowattHour, Empirical: true, Formula: "P*h*d/1000",
		Where: []working.Symbol{working.Letter("P", "lamp, from the socket", quantity.Power), working.Letter("h", "hours lit in a day", LitHours), working.Letter("d", "days", quantity.Time)},
		Basis: working.OfNature, Source: "power times time",
	})
	wattsLaw = working.Must(working.Law{
		Symbol: "P", Kind: quantity.Power, Formula: "E*A/(e*s)",
		Where: []working.Symbol{working.Letter("E", "light on the leaf", LightLevel), working.Letter("A", "area lit", Ground), working.Letter("e", "photons for each joule", Efficacy), working.Letter("s", "share of them that falls on the area", quantity.Share)},
		Basis: working.OfNature, Source: "photons wanted over photons for each joule",
	})
	luxLaw = working.Must(working.Law{
		Symbol: "E", Kind: LightLevel, Unit: ppfdUnit, Empirical: true, Formula: "l/k",
		Where: []working.Symbol{working.Letter("l", "lux meter at the leaf", Lux), working.Letter("k", "lux for each µmol/m²/s of this light", LuxFactor)},
		Basis: working.OfNature, Source: "one factor for each kind of light (Thimijan & Heins 1983, HortScience 18:818; white LED: Sharakshane 2018)",
	})
	smallLaw = working.Must(working.Law{
		Symbol: "E", Kind: LightLevel, Formula: "f*h^2/(pi*(h^2+r^2)^2)",
		Where: []working.Symbol{working.Letter("f", "photons sent down", quantity.PhotonFlux), working.Letter("h", "lamp over the leaf", quantity.Length), working.Letter("r", "aside of it", quantity.Length)},
		Basis: working.OfNature, Source: "small diffuse lamp, cosine to the fourth power (textbooks of light)",
	})
	panelLaw = working.Must(working.Law{
		Symbol: "E", Kind: LightLevel, Formula: "f/(w*l)*F",
		Where: []working.Symbol{working.Letter("f", "photons sent down", quantity.PhotonFlux), working.Letter("w", "width of the lamp", quantity.Length), working.Letter("l", "length of the lamp", quantity.Length), working.Letter("F", "share of what the leaf sees that is lamp", quantity.Factor.WithDecimals(4, 4))},
		Basis: working.OfNature, Source: "flat diffuse lamp; F is the sum of four corner factors (textbooks of radiant heat)",
	})
	addLaw = working.Must(working.Law{
		Symbol: "E", Kind: LightLevel, Formula: "a+b", Where: []working.Symbol{working.Letter("a", "light of the lamps so far", LightLevel), working.Letter("b", "light of this lamp", LightLevel)},
		Basis: working.OfNature, Source: "sum",
	})
	raiseLaw = working.Must(working.Law{
		Symbol: "u", Kind: quantity.Length, Formula: "max(z, y+c-a)",
		Where: []working.Symbol{working.Letter("z", "nought", quantity.Length), working.Letter("y", "leaves over the lid", quantity.Length), working.Letter("c", "lamp over the leaves, at the least", quantity.Length), working.Letter("a", "lamp over the lid", quantity.Length)},
		Basis: working.OfTrade, Source: "a household or bar lamp keeps its distance from the leaves (common practice, no source)",
	})
)
