package shelf

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

func mass(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.Mass}
}

func length(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.Length}
}

var (
	allowedLaw = working.Must(working.Law{
		Symbol: "M", Kind: quantity.Mass, Formula: "r*u/(2-c/L)",
		Where: []working.Symbol{
			mass("r", "rated load, spread evenly"),
			{Name: "u", Meaning: "share of the rating used", Kind: quantity.Share},
			length("c", "length of the tubs, side by side in the middle"), length("L", "shelf width"),
		},
		Basis: working.OfNature, Source: "simply supported beam: a block of length c in the middle bends it 2 - c/L times as much as the same load spread evenly; 80 % of the rating is common practice",
	})
	loadLaw = working.Must(working.Law{
		Symbol: "m", Kind: quantity.Mass, Formula: "t+n*(p+g)",
		Where: []working.Symbol{mass("t", "tub filled"), {Name: "n", Meaning: "plants", Kind: quantity.Count}, mass("p", "cup with wet pebbles"), mass("g", "plant at harvest")},
		Basis: working.OfNature, Source: "sum",
	})
	plantsLaw = working.Must(working.Law{
		Symbol: "n", Kind: quantity.Count, Formula: "floor(max(M*c/C-t, z)/(p+g))",
		Where: []working.Symbol{
			mass("M", "load allowed on the shelf"), length("c", "this tub's length"), length("C", "all tubs' length"),
			mass("t", "tub filled"), mass("z", "nought"), mass("p", "cup with wet pebbles"), mass("g", "plant at harvest"),
		},
		Basis: working.OfNature, Source: "each tub has its length's share of the load allowed",
	})
	roomLaw = working.Must(working.Law{
		Symbol: "r", Kind: quantity.Length, Formula: "H-t-l",
		Where: []working.Symbol{length("H", "clear height of the bay"), length("t", "tub with its lid"), length("l", "lamp over the leaves")},
		Basis: working.OfNature, Source: "difference; a household or bar lamp keeps 15 cm from the leaves (common practice)",
	})
	abreastLaw = working.Must(working.Law{
		Symbol: "k", Kind: quantity.Count, Formula: "floor(L/c)", Where: []working.Symbol{length("L", "shelf width"), length("c", "tub length")},
		Basis: working.OfNature, Source: "whole tubs side by side",
	})
	sumLaw = working.Must(working.Law{
		Symbol: "S", Kind: quantity.Length, Formula: "a+b", Where: []working.Symbol{length("a", "tubs so far"), length("b", "this tub")},
		Basis: working.OfNature, Source: "sum",
	})
)

// Allowed enters what may stand on the shelf when the tubs stand side by side
// in its middle. tubs is their length together.
func Allowed(b *working.Book, rated quantity.KG, widthMM float64, tubs working.Number) working.Number {
	use := Facts.Get(factShelfUseShare)
	return b.Work(allowedLaw, "allowed", "load allowed in the middle of the shelf",
		b.Typed("rated_load", "rated load, spread evenly", "r", quantity.Mass, rated.Base(), 0),
		b.Fact("use_share", "share of the rating used", "u", quantity.Share, use.Value/100, use), tubs,
		b.Typed("width", "shelf width", "L", quantity.Length, widthMM, 0))
}

// Side enters the length of one more tub beside the others.
func Side(b *working.Book, key string, sofar, next working.Number) working.Number {
	return b.Work(sumLaw, key, "tubs side by side", sofar, next)
}

// Load enters the mass of a tub with its cups and grown plants.
func Load(b *working.Book, tub, plants, cup, plant working.Number) working.Number {
	return b.Work(loadLaw, "mass_grown", "tub at harvest, with cups and plants", tub, plants, cup, plant)
}

// Plants enters how many plants the shelf bears in a tub.
func Plants(b *working.Book, allowed, length, all, tub, cup, plant working.Number) working.Number {
	nought := b.Typed("no_mass", "nought", "z", quantity.Mass, 0, 0)
	return b.Work(plantsLaw, "limit_shelf", "plants the shelf bears", allowed, length, all, tub, nought, cup, plant)
}

// Room enters the height left for plants over the lid. tubMM is the tub with
// its lid on; lit says whether a lamp hangs in the bay.
func Room(b *working.Book, clearMM float64, tub working.Number, lit bool) working.Number {
	f := Facts.Get(factLampOverLeafMin)
	lamp := b.Fact("lamp_over_leaf", "lamp over the leaves, at least", "l", quantity.Length, quantity.Centimetre.Base(f.Value), f)
	if !lit {
		lamp = b.Typed("no_lamp", "no lamp in the bay", "l", quantity.Length, 0, 0)
	}
	return b.Work(roomLaw, "room_for_plants", "height left for plants", b.Typed("clear_height", "clear height of the bay", "H", quantity.Length, clearMM, 0), tub, lamp)
}

// Unrated says where a tub stands when no rated load is known.
func Unrated() string { return Facts.Get(factShelfUnrated).Word }

// Abreast enters how many tubs of one length stand side by side.
func Abreast(b *working.Book, widthMM float64, length working.Number) working.Number {
	return b.Work(abreastLaw, "abreast", "such tubs as the first, side by side", b.Typed("width", "shelf width", "L", quantity.Length, widthMM, 0), length)
}
