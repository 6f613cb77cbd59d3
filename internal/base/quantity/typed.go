package quantity

// The typed quantities a plan holds. Each comment names the unit stored.
type (
	// MM is a length in millimetres.
	MM float64
	// L is a volume in litres.
	L float64
	// KG is a mass in kilograms.
	KG float64
	// G is a small mass in grams.
	G float64
	// DegC is a temperature in degrees Celsius.
	DegC float64
	// MSPerCM is an electrical conductivity in mS/cm at 25 °C.
	MSPerCM float64
	// MGPerL is a content in mg/L.
	MGPerL float64
	// KGPerL is a density in kg/L.
	KGPerL float64
	// LPerMin is an air flow in L/min.
	LPerMin float64
	// LPerDay is a daily volume in L/d.
	LPerDay float64
	// W is a power in watts.
	W float64
	// UmolPerS is a photon flux in µmol/s.
	UmolPerS float64
	// UmolPerM2S is a light on leaves in µmol/m²/s.
	UmolPerM2S float64
	// LX is a light for the eye in lux.
	LX float64
	// Fraction is a share, 1 for the whole.
	Fraction float64
	// Days is a length of time in days.
	Days float64
)

// Quantity is any of the typed quantities.
type Quantity interface {
	~float64
	// Kind is the kind the quantity is shown as.
	Kind() Kind
	// Base is the value in base units.
	Base() float64
}

// Kind and Base of each typed quantity.
func (MM) Kind() Kind         { return Length }
func (L) Kind() Kind          { return Volume }
func (KG) Kind() Kind         { return Mass }
func (G) Kind() Kind          { return SmallMass }
func (DegC) Kind() Kind       { return Temperature }
func (MSPerCM) Kind() Kind    { return Conductivity }
func (MGPerL) Kind() Kind     { return Content }
func (KGPerL) Kind() Kind     { return Density }
func (LPerMin) Kind() Kind    { return AirFlow }
func (LPerDay) Kind() Kind    { return DailyVolume }
func (W) Kind() Kind          { return Power }
func (UmolPerS) Kind() Kind   { return PhotonFlux }
func (UmolPerM2S) Kind() Kind { return PPFD }
func (LX) Kind() Kind         { return Illuminance }
func (Fraction) Kind() Kind   { return Share }
func (Days) Kind() Kind       { return Time }

func (q MM) Base() float64         { return float64(q) }
func (q L) Base() float64          { return Litre.Base(float64(q)) }
func (q KG) Base() float64         { return float64(q) }
func (q G) Base() float64          { return Gram.Base(float64(q)) }
func (q DegC) Base() float64       { return Celsius.Base(float64(q)) }
func (q MSPerCM) Base() float64    { return MillisiemensPerCM.Base(float64(q)) }
func (q MGPerL) Base() float64     { return MilligramPerL.Base(float64(q)) }
func (q KGPerL) Base() float64     { return KilogramPerLitre.Base(float64(q)) }
func (q LPerMin) Base() float64    { return LitrePerMinute.Base(float64(q)) }
func (q LPerDay) Base() float64    { return LitrePerDay.Base(float64(q)) }
func (q W) Base() float64          { return Watt.Base(float64(q)) }
func (q UmolPerS) Base() float64   { return MicromolePerSecond.Base(float64(q)) }
func (q UmolPerM2S) Base() float64 { return MicromolePerM2S.Base(float64(q)) }
func (q LX) Base() float64         { return Lux.Base(float64(q)) }
func (q Fraction) Base() float64   { return float64(q) }
func (q Days) Base() float64       { return Day.Base(float64(q)) }
