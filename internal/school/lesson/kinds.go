package lesson

import "rootbell/internal/base/quantity"

const cubicInch = 25.4 * 25.4 * 25.4

// Units that only a sheet of sums needs. A US gallon is 231 cubic inches, four
// quarts, sixteen cups (NIST Handbook 44, appendix C, from memory).
var (
	quart           = quantity.Unit{Symbol: "qt", Dim: quantity.VolumeDim, Scale: 231 * cubicInch / 4}
	cup             = quantity.Unit{Symbol: "cups", Dim: quantity.VolumeDim, Scale: 231 * cubicInch / 16}
	cubicCentimetre = quantity.Unit{Symbol: "cm³", Dim: quantity.VolumeDim, Scale: 1000}
	cubicInches     = quantity.Unit{Symbol: "in³", Dim: quantity.VolumeDim, Scale: cubicInch}
	kilowattHour    = quantity.Unit{Symbol: "kWh", Dim: quantity.PowerDim.Times(quantity.TimeDim), Scale: 1e9 * 3600}
)

// The kinds in which sheets show.
var (
	whole      = quantity.Count
	wholeLong  = quantity.Length.WithDecimals(0, 0)
	tenthLong  = quantity.Length.WithDecimals(1, 1)
	wholeArea  = quantity.Area.WithDecimals(0, 0)
	tenthArea  = quantity.Area.WithDecimals(1, 1)
	wholeLitre = quantity.Kind{Name: "a volume", Dim: quantity.VolumeDim, Metric: quantity.Litre, US: quart, Decimals: [2]int{0, 0}}
	tenthLitre = quantity.Kind{Name: "a volume", Dim: quantity.VolumeDim, Metric: quantity.Litre, US: quantity.USGallon, Decimals: [2]int{1, 2}}
	cubes      = quantity.Kind{Name: "a volume", Dim: quantity.VolumeDim, Metric: cubicCentimetre, US: cubicInches, Decimals: [2]int{0, 0}}
	millis     = quantity.Kind{Name: "a volume", Dim: quantity.VolumeDim, Metric: quantity.Millilitre, US: quantity.Millilitre, Decimals: [2]int{0, 0}}
	gallons    = quantity.Kind{Name: "a volume", Dim: quantity.VolumeDim, Metric: quantity.USGallon, US: quantity.USGallon, Decimals: [2]int{2, 2}}
	litres     = quantity.Kind{Name: "a volume", Dim: quantity.VolumeDim, Metric: quantity.Litre, US: quantity.Litre, Decimals: [2]int{1, 1}}
	cups       = quantity.Kind{Name: "a volume", Dim: quantity.VolumeDim, Metric: cup, US: cup, Decimals: [2]int{0, 0}}
	hours      = quantity.Kind{Name: "a time", Dim: quantity.TimeDim, Metric: quantity.Hour, US: quantity.Hour, Decimals: [2]int{1, 1}}
	days       = quantity.Kind{Name: "a time", Dim: quantity.TimeDim, Metric: quantity.Day, US: quantity.Day, Decimals: [2]int{0, 0}}
	tenthDays  = days.WithDecimals(1, 1)
	percent    = quantity.Share
	energy     = quantity.Kind{Name: "an energy", Dim: kilowattHour.Dim, Metric: kilowattHour, US: kilowattHour, Decimals: [2]int{2, 2}}
)

// plain is a bare number with a unit beside it: readings are summed up in the
// unit they were read in, whatever it is.
func plain(unit string, decimals int) quantity.Kind {
	u := quantity.Unit{Symbol: unit, Scale: 1}
	return quantity.Kind{Name: "a number", Metric: u, US: u, Decimals: [2]int{decimals, decimals}}
}
