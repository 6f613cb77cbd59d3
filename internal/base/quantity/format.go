package quantity

import (
	"math"
	"strconv"
	"strings"
)

// noBreak keeps number and unit on one line.
const noBreak = "\u00a0"

// Format shows a value in base units in the kind's unit and decimals for the
// system, with a no-break space and a true minus sign: '14.5 cm'. Money and
// pure numbers have no unit. A value that is not finite shows as a dash.
func Format(k Kind, base float64, s System) string {
	unit := k.Unit(s)
	text := FormatNumber(unit.From(base), k.Decimals[s])
	if unit.Symbol == "" || text == "–" {
		return text
	}
	return text + noBreak + unit.Symbol
}

// Shown is the number that Format shows: in the kind's unit for the system,
// rounded to its decimals.
func Shown(k Kind, base float64, s System) float64 {
	return Round(k.Unit(s).From(base), k.Decimals[s])
}

// FormatNumber shows a number with a fixed count of decimals and a true minus.
func FormatNumber(value float64, decimals int) string {
	if math.IsNaN(value) || math.IsInf(value, 0) {
		return "–"
	}
	text := strconv.FormatFloat(Round(value, decimals), 'f', max(decimals, 0), 64)
	return strings.Replace(text, "-", "−", 1)
}

// tieSlack is how near to a half, in units of the last decimal and relative to
// the size, a number counts as a tie: a binary fraction cannot hold most halves.
const tieSlack = 1e-9

// Round rounds to so many decimals as a pencil does: a half goes away from
// zero, also where binary fractions put it a hair below. It never gives −0.
func Round(value float64, decimals int) float64 {
	power := math.Pow(10, float64(decimals))
	scaled := math.Abs(value) * power
	if math.IsInf(scaled, 0) || scaled >= 1<<52 {
		return value
	}
	rounded := math.Floor(scaled + 0.5 + tieSlack*min(max(1, scaled), 1e6))
	if rounded == 0 {
		return 0
	}
	return math.Copysign(rounded/power, value)
}

// sixteenths is the finest mark of an inch ruler.
const sixteenths = 16

// FormatMark shows a length in mm as a mark to be made with a ruler:
// centimetres to the millimetre, or inches and a fraction to 1/16.
func FormatMark(mm float64, s System) string {
	if s == Metric {
		return Format(Length.WithDecimals(1, 1), mm, Metric)
	}
	marks := Round(mm/25.4*sixteenths, 0)
	if math.IsNaN(marks) || math.IsInf(marks, 0) || math.Abs(marks) >= 1<<52 {
		return "–"
	}
	sign := ""
	if marks < 0 {
		sign, marks = "−", -marks
	}
	whole, part := int64(marks)/sixteenths, int64(marks)%sixteenths
	return sign + mixed(whole, part, sixteenths) + noBreak + "in"
}

// MarkMM is the length in mm that FormatMark's text stands for.
func MarkMM(mm float64, s System) float64 {
	if s == Metric {
		return Round(mm, 0)
	}
	return Round(mm/25.4*sixteenths, 0) * 25.4 / sixteenths
}

func mixed(whole, part, of int64) string {
	if part == 0 {
		return strconv.FormatInt(whole, 10)
	}
	for part%2 == 0 {
		part, of = part/2, of/2
	}
	fraction := strconv.FormatInt(part, 10) + "/" + strconv.FormatInt(of, 10)
	if whole == 0 {
		return fraction
	}
	return strconv.FormatInt(whole, 10) + noBreak + fraction
}
