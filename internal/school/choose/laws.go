package choose

import (
	"strconv"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/lamp"
)

// perEnergy is money for a kilowatt-hour.
var perEnergy = quantity.Kind{
	Name: "a price of electricity", Dim: quantity.MoneyDim.Over(lamp.Energy.Dim), Decimals: [2]int{4, 4},
	Metric: quantity.Unit{Symbol: "per kWh", Dim: quantity.MoneyDim.Over(lamp.Energy.Dim), Scale: 1 / lamp.Energy.Metric.Scale},
	US:     quantity.Unit{Symbol: "per kWh", Dim: quantity.MoneyDim.Over(lamp.Energy.Dim), Scale: 1 / lamp.Energy.Metric.Scale},
}

var (
	plants    = quantity.Factor.WithDecimals(1, 1) // plants on average, so not whole
	fineSpace = quantity.Volume.WithDecimals(2, 2)
)

func money(name, meaning string) working.Symbol { return working.Letter(name, meaning, quantity.Money) }

func count(name, meaning string) working.Symbol { return working.Letter(name, meaning, quantity.Count) }

func law(symbol string, kind quantity.Kind, formula, source string, where ...working.Symbol) *working.Law {
	return working.Must(working.Law{Symbol: symbol, Kind: kind, Formula: formula, Where: where, Basis: working.OfNature, Source: source})
}

const (
	plain = "plain arithmetic"
	sum   = "sum"
)

// What an option feeds and yields.
var (
	perSiteLaw = law("v", fineSpace, "V/s", "the water shared among the holes", working.Letter("V", "water it holds", quantity.Volume), count("s", "holes"))
	feedsLaw   = law("f", quantity.Count, "floor(V/p)", "whole plants whose need the water meets", working.Letter("V", "water it holds", quantity.Volume), working.Letter("p", "solution for one plant", fineSpace))
	fewestLaw  = law("n", quantity.Count, "min(f, s)", "a plant needs a hole and its water", count("f", "plants the water feeds"), count("s", "holes"))
	apartLaw   = working.Must(working.Law{
		Symbol: "n", Kind: quantity.Count, Formula: "min(f, s, a)",
		Where: []working.Symbol{count("f", "plants the water feeds"), count("s", "holes"), count("a", "holes that keep the crop's distance")},
		Basis: working.OfNature, Source: "a plant needs a hole, its water and its room",
	})
	emptyLaw    = law("e", quantity.Count, "s-n", "the holes that are left", count("s", "holes"), count("n", "plants"))
	plantedLaw  = law("N", quantity.Count, "n*k", plain, count("n", "plants in a crop"), count("k", "crops"))
	harvestLaw  = law("H", plants, "N*h", "planted times the share that a class brings to the harvest", count("N", "planted, all crops"), working.Letter("h", "share that is harvested", quantity.Share))
	leavesLaw   = law("M", quantity.Mass, "a+n*m", "plants of each tub times the mass of one at harvest", working.Letter("a", "so far", quantity.Mass), count("n", "plants"), working.Letter("m", "one plant at harvest", quantity.SmallMass))
	servingsLaw = law("S", plants, "M*k*h*(1-t)/g", "what is harvested of it, less the trimming, over what one child eats", working.Letter("M", "leaves of a crop, if nothing is lost", quantity.Mass), count("k", "crops"), working.Letter("h", "share that is harvested", quantity.Share), working.Letter("t", "lost in trimming", quantity.Share), working.Letter("g", "one serving", quantity.SmallMass))
)

// Money.
var (
	lineLaw    = law("c", quantity.Money, "p*ceil(n)", "price of one times whole pieces", money("p", "price of one"), working.Letter("n", "how many", quantity.Factor))
	timesLaw   = law("c", quantity.Money, "p*k", plain, money("p", "each time"), count("k", "how often"))
	stonesLaw  = law("k", quantity.Count, "s*max(a, ceil(d*n/l)-1)", "a stone is replaced each time its life is over", count("s", "air stones"), count("a", "nought"), working.Letter("d", "days of a crop, from sowing on", quantity.Time), count("n", "crops"), working.Letter("l", "life of an air stone", quantity.Time))
	refillsLaw = law("k", quantity.Count, "max(a, ceil(d*n/m)-1)", "a refill each time what came last is used up", count("a", "nought"), working.Letter("d", "days in the tub", quantity.Time), count("n", "crops"), working.Letter("m", "how long one lasts", quantity.Time))
	energyLaw  = working.Must(working.Law{
		Symbol: "W", Kind: lamp.Energy, Unit: lamp.Energy.Metric, Empirical: true, Formula: "floor((P*h+q*24)*d/100+0.5)/10",
		Where: []working.Symbol{working.Letter("P", "lamps, from the socket", quantity.Power), working.Letter("h", "hours lit in a day", lamp.LitHours), working.Letter("q", "air pumps, day and night", quantity.Power), working.Letter("d", "days in the tub", quantity.Time)},
		Basis: working.OfNature, Source: "power times time, to a tenth of a kilowatt-hour, so that a budget is checked with a pencil",
	})
	currentLaw = working.Must(working.Law{
		Symbol: "c", Kind: quantity.Money, Unit: quantity.Money.Metric, Empirical: true, Formula: "floor(100*W*u+0.5)/100",
		Where: []working.Symbol{working.Letter("W", "electricity of a crop", lamp.Energy), working.Letter("u", "price of electricity", perEnergy)},
		Basis: working.OfNature, Source: "energy times its price, to the cent, so that a budget adds up",
	})
	totalLaw   = law("T", quantity.Money, "F+k*c+r", "first outlay, every crop, and what wears out", money("F", "first outlay"), count("k", "crops"), money("c", "each crop"), money("r", "replacements"))
	perPlant   = law("c", quantity.Money, "T/N", "shared among the plants", money("T", "all crops together"), working.Letter("N", "plants", plants))
	runningLaw = law("c", quantity.Money, "(T-F)/k", "what a crop costs on average, with what wears out", money("T", "all crops together"), money("F", "first outlay"), count("k", "crops"))
)

// Where two options cost the same.
var (
	evenLaw  = law("k", plants, "(F-G)/(d-c)", "F+k*c and G+k*d are equal", money("F", "first outlay of the one"), money("G", "first outlay of the other"), money("d", "each crop of the other"), money("c", "each crop of the one"))
	roomLaw  = law("R", quantity.Money, "c*H-T", "so much more may the one cost until a harvested plant costs the same in both", money("c", "the other, for each harvested plant"), working.Letter("H", "harvested from the one", plants), money("T", "the one, all crops together, as far as priced"))
	priceLaw = law("p", quantity.Money, "P+c*H-T", "the price at which a harvested plant costs the same in both", money("P", "price now"), money("c", "the other, for each harvested plant"), working.Letter("H", "harvested from this one", plants), money("T", "this one, all crops together"))
	shareLaw = law("h", quantity.Share, "T/(c*N)", "the share at which a harvested plant costs the same in both", money("T", "this one, all crops together"), money("c", "the other, for each harvested plant"), count("N", "planted in this one, all crops"))
)

// One big tub or several.
var (
	addLitres = law("V", quantity.Volume, "a+b", sum, working.Letter("a", "so far", quantity.Volume), working.Letter("b", "the next tub", quantity.Volume))
	splitLaw  = law("V", quantity.Volume, "a/n", "the water shared among the tubs", working.Letter("a", "water of all tubs", quantity.Volume), count("n", "tubs"))
	massLaw   = law("m", quantity.Mass, "V*w", "the water alone; tub, lid and plants come on top", working.Letter("V", "water in one tub", quantity.Volume), working.Letter("w", "density of water", quantity.Density))
	lostLaw   = law("l", quantity.Count, "ceil(n/t)", "the plants shared among the tubs", count("n", "plants of all tubs"), count("t", "tubs"))
)

// sumLaw adds so many amounts; one letter with a number for each.
func sumLaw(n int) *working.Law {
	where := make([]working.Symbol, n)
	names := make([]string, n)
	for i := range where {
		names[i] = "c" + strconv.Itoa(i+1)
		where[i] = money(names[i], "line "+strconv.Itoa(i+1))
	}
	return law("F", quantity.Money, strings.Join(names, "+"), sum, where...)
}
