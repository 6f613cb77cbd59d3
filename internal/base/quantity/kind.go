package quantity

// Kind says what sort of quantity a number is: its dimension, and the unit and
// decimals each system shows it in. Kinds are values and comparable.
type Kind struct {
	Name     string // as a person says it: "a length", "a volume"
	Dim      Dim
	Metric   Unit
	US       Unit
	Decimals [2]int // shown decimals, by System
}

// Unit is the unit the system shows this kind in.
func (k Kind) Unit(s System) Unit {
	if s == US {
		return k.US
	}
	return k.Metric
}

// WithDecimals is the kind shown with other decimals, metric then US.
func (k Kind) WithDecimals(metric, us int) Kind {
	k.Decimals = [2]int{metric, us}
	return k
}

// The kinds the garden shows.
var (
	Length       = Kind{"a length", LengthDim, Centimetre, Inch, [2]int{1, 2}}
	SmallLength  = Kind{"a length", LengthDim, Millimetre, Inch, [2]int{1, 3}}
	Area         = Kind{"an area", AreaDim, SquareCentimetre, SquareInch, [2]int{0, 1}}
	Volume       = Kind{"a volume", VolumeDim, Litre, USGallon, [2]int{1, 2}}
	SmallVolume  = Kind{"a volume", VolumeDim, Millilitre, FluidOunce, [2]int{0, 1}}
	Mass         = Kind{"a mass", MassDim, Kilogram, Pound, [2]int{1, 1}}
	SmallMass    = Kind{"a mass", MassDim, Gram, Ounce, [2]int{0, 1}}
	Time         = Kind{"a time", TimeDim, Day, Day, [2]int{1, 1}}
	Temperature  = Kind{"a temperature", TemperatureDim, Celsius, Fahrenheit, [2]int{1, 1}}
	Density      = Kind{"a density", DensityDim, KilogramPerLitre, PoundPerGallon, [2]int{4, 3}}
	Content      = Kind{"a content", DensityDim, MilligramPerL, MilligramPerL, [2]int{1, 1}}
	AirFlow      = Kind{"a flow", FlowDim, LitrePerMinute, LitrePerMinute, [2]int{1, 1}}
	DailyVolume  = Kind{"a daily volume", FlowDim, LitrePerDay, GallonPerDay, [2]int{1, 2}}
	Power        = Kind{"a power", PowerDim, Watt, Watt, [2]int{0, 0}}
	PhotonFlux   = Kind{"a photon flux", PhotonFluxDim, MicromolePerSecond, MicromolePerSecond, [2]int{0, 0}}
	PPFD         = Kind{"a light on leaves", PPFDDim, MicromolePerM2S, MicromolePerM2S, [2]int{0, 0}}
	Illuminance  = Kind{"a light for the eye", IlluminanceDim, Lux, Lux, [2]int{0, 0}}
	Conductivity = Kind{"a conductivity", ConductivityDim, MillisiemensPerCM, MillisiemensPerCM, [2]int{2, 2}}
	Share        = Kind{"a share", None, Percent, Percent, [2]int{0, 0}}
	MoleFraction = Kind{"a mole fraction", None, PPM, PPM, [2]int{0, 0}}
	Count        = Kind{"a count", None, One, One, [2]int{0, 0}}
	Factor       = Kind{"a number", None, One, One, [2]int{2, 2}}
	Money        = Kind{"an amount of money", MoneyDim, Unit{Dim: MoneyDim, Scale: 1}, Unit{Dim: MoneyDim, Scale: 1}, [2]int{2, 2}}
)
