package reading

import (
	"math"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Range is a value known to lie between two figures, both finite.
type Range[Q quantity.Quantity] struct{ Low, High Q }

// Mid is the middle of the range.
func (r Range[Q]) Mid() Q { return r.Low + (r.High-r.Low)/2 }

// Above tells whether the whole range lies above a figure.
func (r Range[Q]) Above(q Q) bool { return r.Low > q }

// Below tells whether the whole range lies below a figure.
func (r Range[Q]) Below(q Q) bool { return r.High < q }

// Apart tells whether two ranges have no value in common.
func (r Range[Q]) Apart(other Range[Q]) bool { return r.Low > other.High || r.High < other.Low }

func around[Q quantity.Quantity](low, high, by Q) Range[Q] { return Range[Q]{low - by, high + by} }

// Sure is the pH with what its instrument leaves open, on the day of a moment:
// a colour is so much more or less, a meter has its error, a larger one when
// its calibration is old or unknown. False where no pH was read.
func (p PH) Sure(at time.Time) (Range[quantity.PH], bool) {
	if !p.Read.Set() {
		return Range[quantity.PH]{}, false
	}
	by := quantity.PH(Facts.Get(factPhStripStep).Value)
	switch {
	case p.With == Meter:
		by = quantity.PH(Facts.Get(factPhMeterError).Value)
		if days, known := age(p.Calibrated, at); !known || float64(days) > Facts.Get(factPhMeterOldDays).Value {
			by = quantity.PH(Facts.Get(factPhMeterErrorOld).Value)
		}
	case p.Read.Low != p.Read.High:
		by = 0 // between two colours, as typed
	case p.Step > 0:
		by = p.Step
	}
	sure := around(p.Read.Low, p.Read.High, by)
	return Range[quantity.PH]{max(sure.Low, 0), sure.High}, true
}

// Sure is the EC with what its instrument leaves open. The error of a meter is
// so much and a share of the reading. False where no EC was read.
func (e EC) Sure() (Range[quantity.MSPerCM], bool) {
	if !e.Read.Set() {
		return Range[quantity.MSPerCM]{}, false
	}
	low, high := e.Read.Low, e.Read.High
	switch {
	case e.With == Meter:
		by, share := quantity.MSPerCM(Facts.Get(factEcMeterError).Value), quantity.MSPerCM(Facts.Get(factEcMeterErrorShare).Value/100)
		low, high = low-by-low*share, high+by+high*share
	case low != high:
	case e.Step > 0:
		low, high = low-e.Step, high+e.Step
	default:
		by := quantity.MSPerCM(Facts.Get(factEcStripStep).Value)
		low, high = low-by, high+by
	}
	return Range[quantity.MSPerCM]{max(low, 0), high}, true
}

// LevelErrorMM is how far a reading of the dipstick may be off, in mm.
func LevelErrorMM() quantity.MM { return quantity.MM(Facts.Get(factMeasureLevelError).Value) }

var at25Law = working.Must(working.Law{
	Symbol: "E", Kind: quantity.Conductivity, Unit: quantity.MillisiemensPerCM, Formula: "e/(1+a/100*(t-25))", Empirical: true,
	Where: []working.Symbol{
		{Name: "e", Meaning: "EC as the meter shows it", Kind: quantity.Conductivity, Unit: quantity.MillisiemensPerCM},
		{Name: "a", Meaning: "rise for each degree, in %", Kind: quantity.Factor, Unit: quantity.One},
		{Name: "t", Meaning: "temperature of the water", Kind: quantity.Temperature, Unit: quantity.Celsius},
	},
	Basis: working.OfTrade, Source: "straight line around 25 °C, as conductivity meters take it (common practice)",
})

// At25 enters the EC at 25 °C for a meter that does not do it by itself.
func At25(b *working.Book, key string, ec quantity.MSPerCM, water quantity.DegC) working.Number {
	slope := Facts.Get(factEcTemperatureSlope)
	return b.Work(at25Law, key, "EC at 25 °C",
		b.Typed(key+"_raw", "EC as the meter shows it", "e", quantity.Conductivity, ec.Base(), 0),
		b.Fact("ec_slope", "rise for each degree, in %", "a", quantity.Factor, slope.Value, slope),
		b.Typed(key+"_water", "temperature of the water", "t", quantity.Temperature, water.Base(), 0))
}

// AtTwentyFive is the row's EC at 25 °C: a raw figure is brought there by the
// water's temperature. False where there is no EC, or a raw one without a
// temperature.
func (r Row) AtTwentyFive() (EC, bool) {
	e := r.EC
	if !e.Read.Set() || !e.Raw {
		return e, e.Read.Set()
	}
	if !r.Water.Set() || r.Doubts(FieldWater) {
		return EC{}, false
	}
	slope, water := Facts.Get(factEcTemperatureSlope).Value, r.Water.Value.Base()
	for _, end := range []*quantity.MSPerCM{&e.Read.Low, &e.Read.High} {
		at := at25Law.Value(end.Base(), slope, water)
		if math.IsNaN(at) || math.IsInf(at, 0) || at < 0 {
			return EC{}, false
		}
		*end = quantity.FromBase[quantity.MSPerCM](at)
	}
	e.Raw = false
	return e, true
}
