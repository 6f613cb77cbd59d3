package quantity

import (
	"slices"
	"strings"
)

// The simple units a teacher may type, by every usual name. A name is looked
// up as written first and without regard to case second, where that is
// unambiguous. Quotients such as mg/L are put together from these.
//
// Sources of the factors: the international yard and pound of 1959 (inch
// 25.4 mm, pound 0.453 592 37 kg, exact) and NIST SP 811 (2008), appendix B.8
// (US gallon 231 in³; imperial gallon 4.546 09 L).
var simpleUnits = []struct {
	unit  Unit
	names string // separated by |
}{
	{Millimetre, "mm|millimetre|millimetres|millimeter|millimeters"},
	{Centimetre, "cm|centimetre|centimetres|centimeter|centimeters"},
	{Metre, "m|metre|metres|meter|meters"},
	{Inch, `in|"|inch|inches`},
	{Foot, "ft|'|foot|feet"},
	{Unit{Symbol: "yd", Dim: LengthDim, Scale: 914.4}, "yd|yard|yards"},

	{Unit{Symbol: "mm²", Dim: AreaDim, Scale: 1}, "mm2|sq mm"},
	{SquareCentimetre, "cm2|sq cm"},
	{Unit{Symbol: "m²", Dim: AreaDim, Scale: 1e6}, "m2|sq m"},
	{SquareInch, "in2|sq in"},
	{Unit{Symbol: "ft²", Dim: AreaDim, Scale: 304.8 * 304.8}, "ft2|sq ft"},

	{Litre, "L|l|litre|litres|liter|liters|dm3"},
	{Unit{Symbol: "dL", Dim: VolumeDim, Scale: 1e5}, "dL|dl"},
	{Unit{Symbol: "cL", Dim: VolumeDim, Scale: 1e4}, "cL|cl"},
	{Millilitre, "mL|ml|millilitre|millilitres|milliliter|milliliters|cm3|cc"},
	{Unit{Symbol: "m³", Dim: VolumeDim, Scale: 1e9}, "m3"},
	{Unit{Symbol: "in³", Dim: VolumeDim, Scale: cubicInch}, "in3|cu in"},
	{Unit{Symbol: "ft³", Dim: VolumeDim, Scale: 1728 * cubicInch}, "ft3|cu ft"},
	{USGallon, "gal|gallon|gallons|US gal|US gallon|US gallons|gal (US)|gallon (US)|gallons (US)|gal US"},
	{Unit{Symbol: "qt", Dim: VolumeDim, Scale: 231 * cubicInch / 4}, "qt|quart|quarts|US qt|US quart|US quarts"},
	{Unit{Symbol: "pt", Dim: VolumeDim, Scale: 231 * cubicInch / 8}, "pt|pint|pints|US pt|US pint|US pints"},
	{Unit{Symbol: "cup", Dim: VolumeDim, Scale: 231 * cubicInch / 16}, "cup|cups|US cup|US cups"},
	{FluidOunce, "fl oz|floz|fluid ounce|fluid ounces|US fl oz"},
	{Unit{Symbol: "tbsp", Dim: VolumeDim, Scale: 231 * cubicInch / 256}, "tbsp|tablespoon|tablespoons"},
	{Unit{Symbol: "tsp", Dim: VolumeDim, Scale: 231 * cubicInch / 768}, "tsp|teaspoon|teaspoons"},
	{
		ImperialGallon,
		"imp gal|imp gallon|imp gallons|imperial gal|imperial gallon|imperial gallons|UK gal|UK gallon|UK gallons|" +
			"gal (imp)|gal (imperial)|gal (UK)|gallon (imp)|gallons (imp)|gallons (UK)|gal imp|gal UK",
	},
	{Unit{Symbol: "imp qt", Dim: VolumeDim, Scale: 4546090. / 4}, "imp qt|imperial quart|imperial quarts|UK qt|qt (imp)"},
	{Unit{Symbol: "imp pt", Dim: VolumeDim, Scale: 4546090. / 8}, "imp pt|imperial pint|imperial pints|UK pt|UK pint|UK pints|pt (imp)"},
	{Unit{Symbol: "imp fl oz", Dim: VolumeDim, Scale: 4546090. / 160}, "imp fl oz|imperial fluid ounce|imperial fluid ounces|UK fl oz|fl oz (imp)"},

	{Kilogram, "kg|kilo|kilos|kilogram|kilograms"},
	{Gram, "g|gram|grams|gramme|grammes"},
	{Unit{Symbol: "mg", Dim: MassDim, Scale: 1e-6}, "mg|milligram|milligrams"},
	{Unit{Symbol: "µg", Dim: MassDim, Scale: 1e-9}, "µg|ug|microgram|micrograms"},
	{Pound, "lb|lbs|pound|pounds"},
	{Ounce, "oz|ounce|ounces"},

	{Second, "s|sec|second|seconds"},
	{Minute, "min|mins|minute|minutes"},
	{Hour, "h|hr|hrs|hour|hours"},
	{Day, "d|day|days"},
	{Unit{Symbol: "week", Dim: TimeDim, Scale: 7 * 86400}, "wk|week|weeks"},

	{Celsius, "°C|° C|C|deg C|degC|degree C|degrees C|celsius|deg celsius|degree celsius|degrees celsius|° celsius"},
	{Fahrenheit, "°F|° F|F|deg F|degF|degree F|degrees F|fahrenheit|deg fahrenheit|degree fahrenheit|degrees fahrenheit|° fahrenheit"},
	{Unit{Symbol: "K", Dim: TemperatureDim, Scale: 1}, "K|kelvin"},

	{Lux, "lx|lux"},
	{Unit{Symbol: "klx", Dim: IlluminanceDim, Scale: 1e-3}, "klx|kilolux"},
	{Unit{Symbol: "fc", Dim: IlluminanceDim, Scale: 1 / (304.8 * 304.8)}, "fc|footcandle|footcandles|foot candle|foot candles"},

	{Watt, "W|watt|watts"},
	{Unit{Symbol: "kW", Dim: PowerDim, Scale: 1e9}, "kW|kilowatt|kilowatts"},

	{Unit{Symbol: "mol", Dim: Dim{Amount: 1}, Scale: 1}, "mol"},
	{Unit{Symbol: "mmol", Dim: Dim{Amount: 1}, Scale: 1e-3}, "mmol"},
	{Unit{Symbol: "µmol", Dim: Dim{Amount: 1}, Scale: 1e-6}, "µmol|umol|micromole|micromoles"},

	{MicromolePerM2S, "µmol/m2/s|umol/m2/s|µmol/s/m2|umol/s/m2"},

	// One siemens is 1 A²·s³/(kg·m²), so 1e-6 in millimetres.
	{Unit{Symbol: "S", Dim: siemensDim, Scale: 1e-6}, "S"},
	{Unit{Symbol: "dS", Dim: siemensDim, Scale: 1e-7}, "dS"},
	{Unit{Symbol: "mS", Dim: siemensDim, Scale: 1e-9}, "mS"},
	{Unit{Symbol: "µS", Dim: siemensDim, Scale: 1e-12}, "µS|uS"},

	{Percent, "%|percent|per cent|pct"},
	{Unit{Symbol: "‰", Scale: 1e-3}, "‰"},
	{Unit{Symbol: "L/min", Dim: FlowDim, Scale: LitrePerMinute.Scale}, "lpm"},
	{Unit{Symbol: "gal/min", Dim: FlowDim, Scale: GallonPerMinute.Scale}, "gpm"},
	{Unit{Symbol: "gal/h", Dim: FlowDim, Scale: GallonPerMinute.Scale / 60}, "gph"},
}

const cubicInch = 25.4 * 25.4 * 25.4

var siemensDim = Dim{Current: 2, Time: 3, Mass: -1, Length: -2}

// ImperialGallon is 4.546 09 L exactly, and is never meant by a bare 'gal'.
var ImperialGallon = Unit{Symbol: "imp gal", Dim: VolumeDim, Scale: 4546090}

// ppm stands for milligrams per litre of water where a content is asked for,
// and for a millionth elsewhere.
func ppmFor(k Kind) Unit {
	if k.Dim == DensityDim {
		return Unit{Symbol: "ppm", Dim: DensityDim, Scale: MilligramPerL.Scale}
	}
	return PPM
}

// names maps a typed name to its unit, and folded does so without case and
// points. They are filled from simpleUnits alone and never written again.
var names, folded = unitNames()

func unitNames() (exact, loose map[string]Unit) {
	exact, loose = map[string]Unit{}, map[string]Unit{}
	clash := map[string]bool{}
	for _, row := range simpleUnits {
		for name := range strings.SplitSeq(row.names, "|") {
			exact[name] = row.unit
			key := fold(name)
			if other, taken := loose[key]; taken && other != row.unit {
				clash[key] = true
			}
			loose[key] = row.unit
		}
	}
	for key := range clash {
		delete(loose, key)
	}
	return exact, loose
}

func fold(name string) string {
	low := strings.ToLower(strings.NewReplacer(".", "", "(", " (").Replace(name))
	return strings.Join(strings.Fields(low), " ")
}

// findUnit gives the unit that the text names, for the kind asked for.
func findUnit(text string, k Kind) (Unit, bool) {
	if strings.EqualFold(text, "ppm") {
		return ppmFor(k), true
	}
	if u, ok := simple(text); ok {
		return u, true
	}
	for _, word := range []string{"/", " per ", " a ", " each "} {
		above, below, cut := strings.Cut(text, word)
		if !cut {
			continue
		}
		top, okTop := simple(strings.TrimSpace(above))
		bottom, okBottom := simple(strings.TrimSpace(below))
		if okTop && okBottom && top.Offset == 0 && bottom.Offset == 0 {
			return quotient(top, bottom), true
		}
	}
	return Unit{}, false
}

// quotient is the unit top/bottom. Where one of the named units is meant, its
// own scale is given, so that a value typed in it is kept to the last bit.
func quotient(top, bottom Unit) Unit {
	u := Unit{Symbol: top.Symbol + "/" + bottom.Symbol, Dim: top.Dim.Over(bottom.Dim), Scale: top.Scale / bottom.Scale}
	named := []Unit{
		KilogramPerLitre, PoundPerGallon, MilligramPerL, LitrePerMinute, LitrePerDay,
		GallonPerMinute, GallonPerDay, MicromolePerSecond, MillisiemensPerCM,
	}
	if i := slices.IndexFunc(named, func(n Unit) bool { return n.Symbol == u.Symbol }); i >= 0 {
		return named[i]
	}
	return u
}

func simple(text string) (Unit, bool) {
	if u, ok := names[text]; ok {
		return u, true
	}
	u, ok := folded[fold(text)]
	return u, ok
}
