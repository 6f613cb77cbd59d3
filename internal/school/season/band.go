package season

import (
	"math"
	"slices"

	"rootbell/internal/forecast"
)

// bandOf is the band of some values, which it sorts.
func bandOf(values []float64) forecast.Band {
	slices.Sort(values)
	return forecast.Band{
		P5: quantile(values, 0.05), P25: quantile(values, 0.25), P50: quantile(values, 0.5),
		P75: quantile(values, 0.75), P95: quantile(values, 0.95),
	}
}

// quantile is the value that a share of the sorted ones lies under, on the
// straight line between the two nearest (definition 7 of Hyndman & Fan, Am.
// Stat. 50:361-365, 1996, from memory). It is NaN for none.
func quantile(sorted []float64, share float64) float64 {
	if len(sorted) == 0 {
		return math.NaN()
	}
	at := share * float64(len(sorted)-1)
	i := int(at)
	if i >= len(sorted)-1 || at == float64(i) {
		return sorted[i]
	}
	if math.IsInf(sorted[i+1], 1) {
		return sorted[i+1]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}
