package solution

import (
	"strings"
	"unicode"

	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// fact enters a row whose value is in a unit.
func fact(b *working.Book, key, name, symbol string, kind quantity.Kind, unit quantity.Unit, id facts.ID) working.Number {
	f := Facts.Get(id)
	return b.Fact(key, name, symbol, kind, unit.Base(f.Value), f)
}

// typed enters what the plan says, in a unit.
func typed(b *working.Book, key, name, symbol string, kind quantity.Kind, unit quantity.Unit, v float64) working.Number {
	return b.Typed(key, name, symbol, kind, unit.Base(v), 0)
}

// found enters what a search or the equilibrium gave, in a unit.
func found(b *working.Book, key, name, symbol string, kind quantity.Kind, unit quantity.Unit, v float64, how string) working.Number {
	return b.Found(key, name, symbol, kind, unit.Base(v), how)
}

// ShowDose enters the maker's dose times the litres: mL of a liquid, g of a dry
// one, with what was typed.
func (d Dosed) ShowDose(b *working.Book, litres working.Number) working.Number {
	which := KeyOf(d.Fertiliser.Name)
	if d.Fertiliser.Liquid() {
		return b.Work(doseLaw, "pour_"+which, "pour of "+d.Fertiliser.Name, litres, typed(b, "dose_"+which, "maker's dose of "+d.Fertiliser.Name, "d", Dose, millilitrePer, d.PerLitre))
	}
	return b.Work(bagDoseLaw, "weigh_"+which, "weigh of "+d.Fertiliser.Name, litres, typed(b, "dose_"+which, "grams for each litre of "+d.Fertiliser.Name, "d", StockContent.WithDecimals(3, 3), gramPerLitre, d.PerLitre))
}

// ShowNutrient enters how much of a nutrient the weighed portions bring, one by
// one, on top of what water and acid bring: the check that a pencil can do for
// amounts that a search found.
func ShowNutrient(b *working.Book, n Nutrient, shelf []Fertiliser, portions []Portion, base Content, litres working.Number) working.Number {
	kind := quantity.Content
	if n.Micro() {
		kind = kind.WithDecimals(3, 3)
	}
	total := found(b, "water_"+n.Symbol(), "water and acid, "+n.String(), "a", kind, quantity.MilligramPerL, base[n], "report and acid")
	for j, p := range portions {
		if shelf[j].Share[n] == 0 || p.RoundedGrams == 0 {
			continue
		}
		which := KeyOf(shelf[j].Name)
		name := "_" + which + "_" + n.Symbol()
		m := found(b, "grams_"+which, p.Name+", weighed", "m", quantity.SmallMass.WithDecimals(2, 3), quantity.Gram, p.RoundedGrams, "non-negative least squares, then whole steps of the scale")
		s := found(b, "share"+name, "share of "+n.String()+" in "+p.Name, "s", quantity.Share.WithDecimals(2, 2), quantity.One, shelf[j].Share[n], "label or formula, "+ciaawSource)
		c := b.WorkAs(bringsLaw, kind, "brings"+name, n.String()+" from "+p.Name, m, s, litres)
		total = b.WorkAs(addLaw, kind, "sum"+name, n.String()+" so far", total, c)
	}
	return total
}

// KeyOf is a fertiliser's name as it stands in the keys of its numbers: letters
// and figures, a hyphen between.
func KeyOf(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	if len(words) == 0 {
		return "fertiliser"
	}
	return strings.Join(words, "-")
}

const ciaawSource = "CIAAW, Standard Atomic Weights 2021"

// Show enters the band of an EC that the chemistry predicts.
func (x Band) Show(b *working.Book) (low, high working.Number) {
	ec := found(b, "ec", "EC expected at 25 °C", "E", quantity.Conductivity, quantity.MillisiemensPerCM, x.EC, "speciation with ion pairs, then McCleskey et al. 2012, Geochim. Cosmochim. Acta 77:369")
	share := fact(b, "ec_band", "how well EC can be predicted", "b", quantity.Share, quantity.Percent, factEcBand)
	return b.Work(lowLaw, "ec_low", "lowest EC to expect", ec, share), b.Work(highLaw, "ec_high", "highest EC to expect", ec, share)
}

// ShowTo25 enters a reading brought to 25 °C.
func ShowTo25(b *working.Book, readingMS, tempC float64) working.Number {
	return b.Work(to25Law, "ec_25", "EC at 25 °C",
		typed(b, "ec_reading", "reading", "e", quantity.Conductivity, quantity.MillisiemensPerCM, readingMS),
		fact(b, "ec_slope", "slope of a nutrient solution", "a", quantity.Factor.WithDecimals(4, 4), quantity.Percent, factEcSlopeFeed),
		typed(b, "ec_temperature", "water temperature", "t", quantity.Temperature, quantity.Celsius, tempC))
}

// Show enters what a meter with this scale shows for an EC.
func (s Scale) Show(b *working.Book, ec working.Number) working.Number {
	id := map[Scale]facts.ID{PPM500: factEcScale500, PPM640: factEcScale640, PPM700: factEcScale700}[s]
	if id == "" {
		id = factEcScale500
	}
	return b.Work(ppmLaw, "ppm", "what a ppm meter shows", ec, fact(b, "ppm_scale", "the meter's scale", "f", quantity.Count, quantity.One, id))
}

// Show enters the millilitres, or grams of a solid, that hold so many mol/L of
// the reagent for the tub.
func (r Reagent) Show(b *working.Book, key string, litres working.Number, molL float64) working.Number {
	n := found(b, key+"_molarity", r.Name+" for each litre", "n", Molarity, millimolar, 1000*molL, "balance of charges at the target")
	m := found(b, key+"_molar_mass", "molar mass of "+r.Name, "M", MolarMass, gramPerMole, r.molarMass, ciaawSource)
	if r.example {
		return b.Work(acidVolumeLaw, key, r.Name+" for the tub, an example", litres, n, m,
			fact(b, key+"_by_mass", "strength by mass", "w", quantity.Share.WithDecimals(1, 1), quantity.Percent, factAcidExampleMass),
			fact(b, key+"_density", "density", "d", quantity.Density, quantity.KilogramPerLitre, factAcidExampleDensity))
	}
	w := typed(b, key+"_by_mass", "strength by mass", "w", quantity.Share.WithDecimals(1, 1), quantity.One, r.ByMass)
	if r.DensityKgL == 0 {
		return b.Work(acidMassLaw, key, r.Name+" for the tub", litres, n, m, w)
	}
	return b.Work(acidVolumeLaw, key, r.Name+" for the tub", litres, n, m, w, typed(b, key+"_density", "density", "d", quantity.Density, quantity.KilogramPerLitre, r.DensityKgL))
}

// ShowLasting enters the check that a pencil can do for a lasting dose: the
// alkalinity over the charges that each molecule gives at the target.
func (a Acidification) ShowLasting(b *working.Book, alkalinityMgL float64) working.Number {
	return b.Work(alkalinityLaw, "acid_check", "lasting acid, by the alkalinity",
		typed(b, "alkalinity", "alkalinity of the water", "A", quantity.Content, quantity.MilligramPerL, alkalinityMgL),
		fact(b, "alkalinity_unit", "CaCO3 for each mole of charge", "q", MolarMass, gramPerMole, factAlkalinityPerMeq),
		found(b, "acid_charges", "charges for each molecule at the target", "k", quantity.Factor, quantity.One, a.ChargeMeqL/(1000*a.OpenMolL), "acid constants at the target pH"))
}

// ShowClean enters the bleach for so much water; percent is g of available
// chlorine in 100 mL.
func ShowClean(b *working.Book, water working.Number, percent float64) working.Number {
	return b.Work(bleachLaw, "bleach", "bleach for cleaning down", water,
		fact(b, "bleach_chlorine", "available chlorine wanted", "c", quantity.Content, quantity.MilligramPerL, factBleachChlorine),
		typed(b, "bleach_bottle", "available chlorine in the bottle", "p", StockContent, gramPerLitre, 10*percent))
}

// ShowAscorbic enters the ascorbic acid that takes up the chlorine.
func ShowAscorbic(b *working.Book, water working.Number, chlorineMgL float64) working.Number {
	return b.Work(captureLaw, "ascorbic", "ascorbic acid against chlorine", water,
		typed(b, "chlorine", "chlorine in the water", "c", quantity.Content, quantity.MilligramPerL, chlorineMgL),
		found(b, "ascorbic_per_chlorine", "ascorbic acid for each part of chlorine", "k", quantity.Factor.WithDecimals(3, 3), quantity.One, ascorbicPerChlorine(), ciaawSource))
}

// curveNumbers enters two strengths read off the curve.
func curveNumbers(b *working.Book, now, then float64) (s, r working.Number) {
	const how = "read off the curve of EC against strength"
	return found(b, "strength_now", "strength now", "s", Strength, quantity.One, now, how), found(b, "strength_wanted", "strength wanted", "r", Strength, quantity.One, then, how)
}

// ShowThin enters the water that thins a tub with room in it, and what is
// swapped in a full one, for two strengths from the curve.
func ShowThin(b *working.Book, litres working.Number, now, then float64) (room, swap working.Number) {
	s, r := curveNumbers(b, now, then)
	return b.Work(roomLaw, "thin_room", "water to add", litres, s, r), b.Work(swapLaw, "thin_swap", "to swap for water", litres, s, r)
}

// ShowStrengthen enters what of a liquid feed is added for a rise in strength.
func ShowStrengthen(b *working.Book, litres working.Number, doseMLPerL, now, then float64) working.Number {
	s, r := curveNumbers(b, now, then)
	return b.Work(strengthenLaw, "strengthen", "feed to add", litres, typed(b, "dose", "dose at full strength", "d", Dose, millilitrePer, doseMLPerL), r, s)
}

// ShowTopUp enters how much nitrogen a top-up should hold in the long run.
func ShowTopUp(b *working.Book) working.Number {
	return b.Work(topUpLaw, "top_up_nitrogen", "nitrogen in the top-up",
		fact(b, "dry_matter_nitrogen", "nitrogen in the dry matter", "f", quantity.Share, quantity.Percent, factTopupNitrogen),
		fact(b, "dry_matter_per_litre", "dry matter for each litre used", "u", StockContent, gramPerLitre, factTopupWue))
}

// ShowRefill enters how strong a top-up is in the long run, in parts of a feed
// that holds so much nitrogen as mixed.
func ShowRefill(b *working.Book, nitrogenMgL float64) working.Number {
	return b.Work(refillLaw, "top_up_parts", "strength of a top-up, in parts of the feed", ShowTopUp(b),
		found(b, "feed_nitrogen", "nitrogen of the feed as mixed", "N", quantity.Content, quantity.MilligramPerL, nitrogenMgL, "the tub's mix"))
}

// ShowBuildUp enters what gathers of an ion that plants leave behind.
func ShowBuildUp(b *working.Book, n Nutrient, startMgL, waterMgL float64, used, litres working.Number) working.Number {
	return b.Work(buildUpLaw, "build_up_"+n.Symbol(), n.String()+" in the tub",
		typed(b, "start_"+n.Symbol(), n.String()+" at the start", "a", quantity.Content, quantity.MilligramPerL, startMgL),
		typed(b, "tap_"+n.Symbol(), n.String()+" in the water", "b", quantity.Content, quantity.MilligramPerL, waterMgL), used, litres)
}

// Show enters the dose of each stock for a litre, and how often they fill the
// tub.
func (s Stocks) Show(b *working.Book, litres working.Number) (dose, fills working.Number) {
	k := typed(b, "stock_strength", "strength of the stocks", "s", quantity.Count, quantity.One, s.Strength)
	each := typed(b, "stock_volume", "stock of each", "v", quantity.Volume, quantity.Litre, s.LitresEach)
	return b.Work(stockDoseLaw, "stock_dose", "of each stock, for a litre", k), b.Work(fillsLaw, "stock_fills", "fills that the stocks give", k, each, litres)
}

// ShowSolubility enters how much of a salt a litre of stock takes at a
// temperature in °C, without its crystal water; ok is false where the
// solubility is not known.
func (f Fertiliser) ShowSolubility(b *working.Book, tempC float64) (working.Number, bool) {
	if !f.dissolves.known() {
		return working.Number{}, false
	}
	return b.Work(saturatedLaw, "solubility_"+f.Salt, "most in a litre of stock: "+f.Name,
		found(b, "solubility_water_"+f.Salt, "grams that 100 g of water take up", "s", quantity.Factor, quantity.One, f.dissolves.at(tempC), f.dissolves.source)), true
}

// Lives are how long a stock and a mixed solution keep in the dark, in days.
func Lives() (stock, mixed float64) { return value(factStockLife), value(factStockWorkingLife) }
