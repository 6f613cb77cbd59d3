package chart

import (
	"math"
	"strconv"
	"strings"
)

// scale is the axis of the values: level lines from low to high, a step apart.
type scale struct {
	low, high, step float64
	decimals        int
}

// Level lines of an axis.
const (
	leastLines = 4
	mostLines  = 7
)

// scaleOf is the axis of a chart: what is shown at least, and all that was read
// or may come, as far as that is possible.
func scaleOf(c *Chart) scale {
	low, high := math.Inf(1), math.Inf(-1)
	take := func(values ...float64) {
		for _, v := range values {
			if finite(v) {
				v = c.possible(v)
				low, high = min(low, v), max(high, v)
			}
		}
	}
	if c.Shown.known() {
		take(c.Shown.Low, c.Shown.High)
	}
	// What is doubtful stretches no axis; it is drawn at the edge.
	for _, p := range c.Points {
		if p.Kind == Sure {
			take(p.Low, p.High)
		}
	}
	for _, run := range c.Bands {
		for _, b := range run {
			take(b.Low90, b.Mid, b.High90)
		}
	}
	for _, l := range c.Lines {
		take(l.Value)
	}
	if low > high {
		for _, p := range c.Points {
			take(p.Low, p.High)
		}
	}
	if low > high {
		low, high = 0, 1
	}
	return rounded(low, high, c.decimals(), c.Possible)
}

func (c *Chart) decimals() int { return min(max(c.Decimals, 0), 3) }

// possible is the nearest value that is possible.
func (c *Chart) possible(v float64) float64 {
	if c.Possible.known() {
		return min(max(v, c.Possible.Low), c.Possible.High)
	}
	return v
}

func finite(v float64) bool { return !math.IsNaN(v) && math.Abs(v) < 1e12 }

// rounded is the least axis of 4 to 7 level lines at round numbers that holds
// two values. Its step is no finer than the instrument reads.
func rounded(low, high float64, decimals int, within Range) scale {
	for power := -decimals; ; power++ {
		for _, lead := range []float64{1, 2, 5} {
			step := lead * math.Pow(10, float64(power))
			// A value that stands on a level line needs no further one, whatever
			// its last bit says.
			const slack = 1e-9
			first := math.Floor(low/step + slack)
			last := math.Ceil(high/step - slack)
			if last-first+1 > mostLines {
				continue
			}
			for up := true; last-first+1 < leastLines; up = !up {
				over := within.known() && (last+1)*step > within.High+slack
				under := within.known() && (first-1)*step < within.Low-slack
				if up && !over || under {
					last++
				} else {
					first--
				}
			}
			return scale{low: first * step, high: last * step, step: step, decimals: max(0, -power)}
		}
	}
}

// values are the level lines from the lowest up.
func (s scale) values() []float64 {
	n := int(math.Round((s.high - s.low) / s.step))
	first := math.Round(s.low / s.step)
	out := make([]float64, n+1)
	for i := range out {
		out[i] = (first + float64(i)) * s.step
	}
	return out
}

// label is a number at the axis.
func (s scale) label(v float64) string { return number(v, s.decimals) }

// number writes a value with the signs of a school book.
func number(v float64, decimals int) string {
	text := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Trim(text, "-0.") == "" {
		return strings.TrimPrefix(text, "-")
	}
	return strings.Replace(text, "-", "−", 1)
}
