package sheet

import (
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"rootbell/internal/garden"
)

// Mark is a length as it is marked with a ruler: cm to 0.1, or inches to the
// nearest 1/16. The unit stands in the title block, not beside each number.
func Mark(mm float64, system garden.System) string {
	return strings.TrimSuffix(garden.Mark(mm, system), noBreak+UnitName(system))
}

const noBreak = "\u00a0"

// MarkDown is Mark, rounded down: for a length that is there at least.
func MarkDown(mm float64, system garden.System) string {
	step := markStep(system)
	return Mark(math.Floor(mm/step+1e-9)*step, system)
}

// MarkUp is Mark, rounded up: for a length that must be there at least.
func MarkUp(mm float64, system garden.System) string {
	step := markStep(system)
	return Mark(math.Ceil(mm/step-1e-9)*step, system)
}

func markStep(system garden.System) float64 {
	if system == garden.US {
		return 25.4 / 16
	}
	return 1
}

// ToolSize is a size stamped on a tool, with its unit: mm to 0.1, or inches with
// the mm beside them. Saws are sold in eighths of an inch and stamped with whole
// mm: such a size is the eighth that it was rounded from. Others are to 1/64.
func ToolSize(mm float64, system garden.System) string {
	metric := strconv.FormatFloat(noMinusZero(mm, 1), 'f', -1, 64) + " mm"
	if system == garden.US {
		parts := 64
		if eighth := math.Round(mm/25.4*8) * 25.4 / 8; eighth > 0 && mm == math.Round(eighth) {
			mm, parts = eighth, 8
		}
		return inches(mm, parts) + " in (" + metric + ")"
	}
	return metric
}

// UnitName is the unit of the marks, for the title block.
func UnitName(system garden.System) string {
	if system == garden.US {
		return "in"
	}
	return "cm"
}

// UnitWord is the unit of the marks within a sentence.
func UnitWord(system garden.System) string {
	if system == garden.US {
		return "inches"
	}
	return "cm"
}

// inches is a whole number and a reduced fraction with at most the given parts.
func inches(mm float64, parts int) string {
	n := int(math.Round(math.Abs(mm) / 25.4 * float64(parts)))
	sign := ""
	if mm < 0 && n > 0 {
		sign = "−"
	}
	whole, rest := n/parts, n%parts
	for rest > 0 && rest%2 == 0 {
		rest, parts = rest/2, parts/2
	}
	switch {
	case rest == 0:
		return sign + strconv.Itoa(whole)
	case whole == 0:
		return sign + strconv.Itoa(rest) + "/" + strconv.Itoa(parts)
	}
	return sign + strconv.Itoa(whole) + " " + strconv.Itoa(rest) + "/" + strconv.Itoa(parts)
}

// capital is a text as a sentence begins.
func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}

func noMinusZero(v float64, decimals int) float64 {
	scale := math.Pow10(decimals)
	return math.Round(v*scale)/scale + 0
}
