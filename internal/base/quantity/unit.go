package quantity

// System is the unit system in which results are shown. It never changes what
// a typed text means: '3 in' is three inches in either system.
type System int

// The two systems. The zero value is Metric.
const (
	Metric System = iota
	US
)

// String gives the word used in a plan document: "metric" or "us".
func (s System) String() string {
	if s == US {
		return "us"
	}
	return "metric"
}

// Dim is a dimension as exponents of the base dimensions. The zero value is
// the dimension of a pure number. Dims are comparable with ==.
type Dim struct {
	Length, Mass, Time, Temperature, Amount, Current, Light, Money int8
}

// Times is the dimension of a product.
func (d Dim) Times(e Dim) Dim { return d.plus(e, 1) }

// Over is the dimension of a quotient.
func (d Dim) Over(e Dim) Dim { return d.plus(e, -1) }

// Power is the dimension raised to a whole power.
func (d Dim) Power(n int8) Dim { return Dim{}.plus(d, n) }

// Root is the dimension of the square root; ok is false when an exponent is odd.
func (d Dim) Root() (root Dim, ok bool) {
	all := []int8{d.Length, d.Mass, d.Time, d.Temperature, d.Amount, d.Current, d.Light, d.Money}
	for _, e := range all {
		if e%2 != 0 {
			return Dim{}, false
		}
	}
	return Dim{
		Length: d.Length / 2, Mass: d.Mass / 2, Time: d.Time / 2, Temperature: d.Temperature / 2,
		Amount: d.Amount / 2, Current: d.Current / 2, Light: d.Light / 2, Money: d.Money / 2,
	}, true
}

func (d Dim) plus(e Dim, n int8) Dim {
	return Dim{
		Length: d.Length + n*e.Length, Mass: d.Mass + n*e.Mass, Time: d.Time + n*e.Time,
		Temperature: d.Temperature + n*e.Temperature, Amount: d.Amount + n*e.Amount,
		Current: d.Current + n*e.Current, Light: d.Light + n*e.Light, Money: d.Money + n*e.Money,
	}
}

// The dimensions the garden uses.
var (
	None           = Dim{}
	LengthDim      = Dim{Length: 1}
	AreaDim        = Dim{Length: 2}
	VolumeDim      = Dim{Length: 3}
	MassDim        = Dim{Mass: 1}
	TimeDim        = Dim{Time: 1}
	TemperatureDim = Dim{Temperature: 1}
	DensityDim     = Dim{Mass: 1, Length: -3}
	FlowDim        = Dim{Length: 3, Time: -1}
	PowerDim       = Dim{Mass: 1, Length: 2, Time: -3}
	PhotonFluxDim  = Dim{Amount: 1, Time: -1}
	PPFDDim        = Dim{Amount: 1, Time: -1, Length: -2}
	IlluminanceDim = Dim{Light: 1, Length: -2}
	// A conductance per length is A²·s³ per kg·m³.
	ConductivityDim = Dim{Current: 2, Time: 3, Mass: -1, Length: -3}
	MoneyDim        = Dim{Money: 1}
)

// Unit is one way to write a quantity. A value in the unit becomes a value in
// base units (mm, kg, s, K, mol, A, lm, one unit of money) as value·Scale + Offset;
// Offset is zero for all but the temperature scales.
type Unit struct {
	Symbol string
	Dim    Dim
	Scale  float64
	Offset float64
}

// Base converts a value in the unit to base units.
func (u Unit) Base(value float64) float64 { return value*u.Scale + u.Offset }

// From converts a value in base units to the unit.
func (u Unit) From(base float64) float64 { return (base - u.Offset) / u.Scale }

// Units as shown. What a teacher may type is wider: see Parse.
var (
	One        = Unit{Symbol: "", Scale: 1}
	Percent    = Unit{Symbol: "%", Scale: 0.01}
	PPM        = Unit{Symbol: "ppm", Scale: 1e-6}
	Millimetre = Unit{Symbol: "mm", Dim: LengthDim, Scale: 1}
	Centimetre = Unit{Symbol: "cm", Dim: LengthDim, Scale: 10}
	Metre      = Unit{Symbol: "m", Dim: LengthDim, Scale: 1000}
	Inch       = Unit{Symbol: "in", Dim: LengthDim, Scale: 25.4}
	Foot       = Unit{Symbol: "ft", Dim: LengthDim, Scale: 304.8}

	SquareCentimetre = Unit{Symbol: "cm²", Dim: AreaDim, Scale: 100}
	SquareInch       = Unit{Symbol: "in²", Dim: AreaDim, Scale: 25.4 * 25.4}

	Litre      = Unit{Symbol: "L", Dim: VolumeDim, Scale: 1e6}
	Millilitre = Unit{Symbol: "mL", Dim: VolumeDim, Scale: 1e3}
	USGallon   = Unit{Symbol: "gal", Dim: VolumeDim, Scale: 231 * 25.4 * 25.4 * 25.4}
	FluidOunce = Unit{Symbol: "fl oz", Dim: VolumeDim, Scale: 231 * 25.4 * 25.4 * 25.4 / 128}

	Kilogram = Unit{Symbol: "kg", Dim: MassDim, Scale: 1}
	Gram     = Unit{Symbol: "g", Dim: MassDim, Scale: 1e-3}
	Pound    = Unit{Symbol: "lb", Dim: MassDim, Scale: 0.45359237}
	Ounce    = Unit{Symbol: "oz", Dim: MassDim, Scale: 0.45359237 / 16}

	Second = Unit{Symbol: "s", Dim: TimeDim, Scale: 1}
	Minute = Unit{Symbol: "min", Dim: TimeDim, Scale: 60}
	Hour   = Unit{Symbol: "h", Dim: TimeDim, Scale: 3600}
	Day    = Unit{Symbol: "d", Dim: TimeDim, Scale: 86400}

	Celsius    = Unit{Symbol: "°C", Dim: TemperatureDim, Scale: 1, Offset: 273.15}
	Fahrenheit = Unit{Symbol: "°F", Dim: TemperatureDim, Scale: 5.0 / 9, Offset: 273.15 - 32*5.0/9}

	KilogramPerLitre = Unit{Symbol: "kg/L", Dim: DensityDim, Scale: 1e-6}
	PoundPerGallon   = Unit{Symbol: "lb/gal", Dim: DensityDim, Scale: 0.45359237 / (231 * 25.4 * 25.4 * 25.4)}
	MilligramPerL    = Unit{Symbol: "mg/L", Dim: DensityDim, Scale: 1e-12}
	LitrePerMinute   = Unit{Symbol: "L/min", Dim: FlowDim, Scale: 1e6 / 60}
	LitrePerDay      = Unit{Symbol: "L/d", Dim: FlowDim, Scale: 1e6 / 86400}
	GallonPerMinute  = Unit{Symbol: "gal/min", Dim: FlowDim, Scale: 231 * 25.4 * 25.4 * 25.4 / 60}
	GallonPerDay     = Unit{Symbol: "gal/d", Dim: FlowDim, Scale: 231 * 25.4 * 25.4 * 25.4 / 86400}

	// One watt is 1 kg·m²/s³, so 1e6 kg·mm²/s³.
	Watt               = Unit{Symbol: "W", Dim: PowerDim, Scale: 1e6}
	MicromolePerSecond = Unit{Symbol: "µmol/s", Dim: PhotonFluxDim, Scale: 1e-6}
	MicromolePerM2S    = Unit{Symbol: "µmol/m²/s", Dim: PPFDDim, Scale: 1e-12}
	Lux                = Unit{Symbol: "lx", Dim: IlluminanceDim, Scale: 1e-6}
	// One S/m is 1 A²·s³/(kg·m³), so 1e-9 in millimetres; 1 mS/cm is 0.1 S/m.
	MillisiemensPerCM = Unit{Symbol: "mS/cm", Dim: ConductivityDim, Scale: 1e-10}
)
