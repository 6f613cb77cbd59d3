package forecast

import "math"

// Band is what may come: one in twenty lies under P5 and one in twenty over
// P95, half lie between P25 and P75.
type Band struct{ P5, P25, P50, P75, P95 float64 }

// Wide and Half tell whether a figure lies in the band of nine in ten, and in
// that of one in two.
func (b Band) Wide(v float64) bool { return v >= b.P5 && v <= b.P95 }

// Half tells whether a figure lies in the middle half of the band.
func (b Band) Half(v float64) bool { return v >= b.P25 && v <= b.P75 }

// bandOf is the band of values that are sorted.
func bandOf(sorted []float64) Band {
	return Band{
		quantile(sorted, 0.05), quantile(sorted, 0.25), quantile(sorted, 0.50),
		quantile(sorted, 0.75), quantile(sorted, 0.95),
	}
}

// quantile is the one of sorted values that a share of them lies under, on the
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
	if math.IsInf(sorted[i+1], 1) { // never is later than any hour
		return sorted[i+1]
	}
	return sorted[i] + (at-float64(i))*(sorted[i+1]-sorted[i])
}

// through is a band seen through something that only rises, such as the level
// of litres.
func (b Band) through(f func(float64) float64) Band {
	return Band{f(b.P5), f(b.P25), f(b.P50), f(b.P75), f(b.P95)}
}

// farBands is how many widths of the band of nine in ten a figure lies outside
// it to be far from anything that was held possible.
const farBands = 2

// Far tells whether a figure lies so far outside the band that it speaks of
// something that is not followed: a leak, a figure misread. That is some eight
// standard deviations.
func (b Band) Far(x float64) bool {
	reach := farBands * (b.P95 - b.P5)
	return x < b.P5-reach || x > b.P95+reach
}
