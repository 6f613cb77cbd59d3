package solution

import (
	"strconv"
	"strings"

	"rootbell/internal/base/facts"
)

// numbers reads a row that holds several figures. A row is part of the
// program, so a mistake in it stops the program at start.
func numbers(id facts.ID, count int) []float64 {
	words := strings.Fields(Facts.Get(id).Word)
	if len(words) != count {
		panic("solution: " + string(id) + " does not hold " + strconv.Itoa(count) + " figures")
	}
	out := make([]float64, count)
	for i, w := range words {
		v, err := strconv.ParseFloat(w, 64)
		if err != nil {
			panic("solution: " + string(id) + ": " + err.Error())
		}
		out[i] = v
	}
	return out
}

// value is the one figure of a row, in the row's unit.
func value(id facts.ID) float64 { return Facts.Get(id).Value }

// percent is the one figure of a row in percent, as a share.
func percent(id facts.ID) float64 { return Facts.Get(id).Value / 100 }
