package lesson

import (
	"math"
	"slices"
)

// The sums behind the laws, for choosing readings and for drawing; a test holds
// both against each other.

func mean(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return sum / float64(len(x))
}

// median is that of an unsorted row; NaN for none.
func median(x []float64) float64 {
	if len(x) == 0 {
		return math.NaN()
	}
	s := sorted(x)
	n := len(s)
	if n%2 == 1 {
		return s[n/2]
	}
	return (s[n/2-1] + s[n/2]) / 2
}

func sorted(x []float64) []float64 {
	s := slices.Clone(x)
	slices.Sort(s)
	return s
}

// halves are the lower and the upper half of a sorted row; the one in the middle
// of an odd row belongs to neither.
func halves(s []float64) (low, high []float64) {
	return s[:len(s)/2], s[(len(s)+1)/2:]
}

// quartiles are the medians of the two halves.
func quartiles(x []float64) (low, high float64) {
	l, h := halves(sorted(x))
	return median(l), median(h)
}

// fit is the line y = a + b·x with the least sum of squares.
func fit(x, y []float64) (a, b float64) {
	mx, my := mean(x), mean(y)
	var sxx, sxy float64
	for i := range x {
		sxx += (x[i] - mx) * (x[i] - mx)
		sxy += (x[i] - mx) * (y[i] - my)
	}
	b = sxy / sxx
	return my - b*mx, b
}

// steadyLine is the line through the median of all slopes between two points
// (Theil 1950, Sen 1968), which one slip does not turn.
func steadyLine(x, y []float64) (a, b float64) {
	var slopes, starts []float64
	for i := range x {
		for j := i + 1; j < len(x); j++ {
			if x[j] != x[i] {
				slopes = append(slopes, (y[j]-y[i])/(x[j]-x[i]))
			}
		}
	}
	if len(slopes) == 0 {
		return median(y), 0
	}
	b = median(slopes)
	for i := range x {
		starts = append(starts, y[i]-b*x[i])
	}
	return median(starts), b
}
