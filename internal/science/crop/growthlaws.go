package crop

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Units that only growth shows.
var (
	perSecondM2 = quantity.Dim{Mass: 1, Length: -2, Time: -1}
	gramM2      = quantity.Unit{Symbol: "g/m²", Dim: quantity.Dim{Mass: 1, Length: -2}, Scale: 1e-9}
	gramM2H     = quantity.Unit{Symbol: "g/m²/h", Dim: perSecondM2, Scale: 1e-9 / 3600}
	milligramJ  = quantity.Unit{Symbol: "mg/J", Dim: quantity.MassDim.Over(quantity.PowerDim.Times(quantity.TimeDim)), Scale: 1e-12}
	mmSecond    = quantity.Unit{Symbol: "mm/s", Dim: quantity.Dim{Length: 1, Time: -1}, Scale: 1}
	wattM2      = quantity.Unit{Symbol: "W/m²", Dim: quantity.Dim{Mass: 1, Time: -3}, Scale: 1}
	leafPerM2   = quantity.Unit{Symbol: "m² per m²", Scale: 1}
	leafPerG    = quantity.Unit{Symbol: "m²/g", Dim: quantity.Dim{Length: 2, Mass: -1}, Scale: 1e9}
	perM2Unit   = quantity.Unit{Symbol: "/m²", Dim: quantity.Dim{Length: -2}, Scale: 1e-6}
)

func kindOf(name string, u quantity.Unit, decimals int) quantity.Kind {
	return quantity.Kind{Name: name, Dim: u.Dim, Metric: u, US: u, Decimals: [2]int{decimals, decimals}}
}

// Kinds of numbers that only growth shows.
var (
	Standing    = kindOf("a dry mass on the ground", gramM2, 2)
	Gain        = kindOf("a gain of dry mass", gramM2H, 4)
	LightUse    = kindOf("CO2 that light fixes", milligramJ, 5)
	Conductance = kindOf("a conductance", mmSecond, 3)
	Radiation   = kindOf("light that leaves use", wattM2, 1)
	Leaves      = kindOf("a leaf area", leafPerM2, 2)
	LeafOfAGram = kindOf("leaf of a gram", leafPerG, 3)
	PerGround   = kindOf("plants on an area", perM2Unit, 1)
	Part        = quantity.Factor.WithDecimals(3, 3)
	Carbon      = quantity.MoleFraction
	Seedlings   = quantity.Share.WithDecimals(1, 1)
)

func growthLaw(symbol string, kind quantity.Kind, formula, source string, where ...working.Symbol) *working.Law {
	return working.Must(working.Law{
		Symbol: symbol, Kind: kind, Unit: kind.Metric, Empirical: true, Formula: formula, Where: where, Basis: working.OfNature, Source: source,
	})
}

const vanHenten = "Van Henten 1994, Agric. Syst. 45:55-72"

var (
	warm      = working.Letter("t", "air", quantity.Temperature)
	carbon    = working.Letter("C", "CO2 in the air", Carbon)
	lossPoint = working.Letter("G", "CO2 at which leaves gain nothing", Carbon)
	structure = working.Letter("S", "structure", Standing)
	store     = working.Letter("N", "store of sugar and starch", Standing)
	tempo     = working.Letter("T", "tempo beside lettuce", Part)

	lossPointLaw = growthLaw("G", Carbon, "40*2^((t-20)/10)", vanHenten, warm)
	lightUseLaw  = growthLaw("e", LightUse, "0.017*(C-G)/(C+2*G)", vanHenten, carbon, lossPoint)
	withinLaw    = growthLaw("q", Conductance, "-0.0132*t^2+0.594*t-2.64", vanHenten+"; within the leaf", warm)
	passLaw      = growthLaw("g", Conductance, "1/(1/7+1/5+1/q)", vanHenten+"; through air, pores and leaf", working.Letter("q", "conductance within the leaf", Conductance))
	fixedLaw     = growthLaw("F", Gain, "3.6*e*I*g*0.00183*(C-G)/(e*I+g*0.00183*(C-G))", vanHenten, working.Letter("e", "CO2 that light fixes", LightUse), working.Letter("I", "light that leaves use", Radiation), working.Letter("g", "conductance for CO2", Conductance), carbon, lossPoint)
	leafLaw      = growthLaw("L", Leaves, "l*(1-r)*S", vanHenten, working.Letter("l", "leaf of a gram of structure", LeafOfAGram), working.Letter("r", "share of roots", Part), structure)
	sugarLaw     = growthLaw("A", Gain, "T*v*30/44*F*(1-exp(-0.9*L))", vanHenten, tempo, working.Letter("v", "vigour", Part), working.Letter("F", "CO2 that full leaves take", Gain), working.Letter("L", "leaf area", Leaves))
	buildLaw     = growthLaw("B", Gain, "T*0.018*1.6^((t-20)/10)*N*S/(S+N)", vanHenten, tempo, warm, store, structure)
	burnLaw      = growthLaw("R", Gain, "T*3600*(0.000000347*(1-r)+0.000000116*r)*S*2^((t-25)/10)", vanHenten, tempo, working.Letter("r", "share of roots", Part), structure, warm)
	gainLaw      = growthLaw("D", Gain, "A-R-B*(1-0.8)/0.8", vanHenten+"; a fifth of the sugar is lost when it is built in", working.Letter("A", "sugar made", Gain), working.Letter("R", "burnt", Gain), working.Letter("B", "structure built", Gain))
	shootLaw     = growthLaw("W", quantity.SmallMass.WithDecimals(1, 2), "k*(1-r)*(N+S)/n", "fresh for dry, without the roots", working.Letter("k", "fresh for dry", Part), working.Letter("r", "share of roots", Part), store, structure, working.Letter("n", "plants on a square metre", PerGround))

	chanceLaw = growthLaw("p", Seedlings, "max(z, g-l*y)*n/100*s/100", "packet, age, temperature and the class, one after another", working.Letter("z", "nought", Seedlings), working.Letter("g", "germination of the packet", Seedlings), working.Letter("l", "lost each year", Seedlings), working.Letter("y", "years since the packet's year", quantity.Factor), working.Letter("n", "sound seedlings at that temperature, beside the best", Seedlings), working.Letter("s", "seedlings that a class brings through", Seedlings))
	cellLaw   = growthLaw("c", Seedlings, "100*(1-(1-p/100)^k)", "one of several seeds in a cell is enough", working.Letter("p", "a seed becomes a seedling", Seedlings), working.Letter("k", "seeds in a cell", quantity.Count))
)
