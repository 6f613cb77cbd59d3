package working

import (
	"math"

	"rootbell/internal/base/quantity"
)

// axis is a base dimension, in the order in which its unit is chosen.
// Temperature is none: kelvins serve in every law.
type axis int

const (
	lengthAxis axis = iota
	timeAxis
	massAxis
	amountAxis
	currentAxis
	moneyAxis
	axes
)

// coherent is a choice of one unit for each base dimension, in which a law
// holds without factors.
type coherent [axes]float64

// usual is taken where no unit shown decides: centimetres, days, kilograms.
var usual = coherent{lengthAxis: 10, timeAxis: quantity.Day.Scale, massAxis: 1, amountAxis: 1, currentAxis: 1, moneyAxis: 1}

func exponents(d quantity.Dim) [axes]int8 {
	return [axes]int8{
		lengthAxis: d.Length, timeAxis: d.Time, massAxis: d.Mass,
		amountAxis: d.Amount, currentAxis: d.Current, moneyAxis: d.Money,
	}
}

// unit is the coherent unit of a dimension.
func (c coherent) unit(d quantity.Dim) quantity.Unit {
	scale := 1.0
	for a, e := range exponents(d) {
		scale *= math.Pow(c[a], float64(e))
	}
	return quantity.Unit{Dim: d, Scale: scale}
}

// choose takes the coherent units that leave the fewest conversions among the
// units shown: centimetres for a volume from an area and a depth, the cube
// root of a gallon for a share of gallons.
func choose(units []quantity.Unit) coherent {
	best, fewest := usual, math.MaxInt
	var try func(c coherent, a axis)
	try = func(c coherent, a axis) {
		if a == axes {
			if k := c.conversions(units); k < fewest {
				best, fewest = c, k
			}
			return
		}
		for _, size := range c.candidates(units, a) {
			c[a] = size
			try(c, a+1)
		}
	}
	try(usual, lengthAxis)
	return best
}

// candidates are the sizes of an axis's unit that make one of the units shown
// coherent with the axes chosen before, then the usual one.
func (c coherent) candidates(units []quantity.Unit, a axis) []float64 {
	var out []float64
	c[a] = 1
	for _, u := range units {
		if e := exponents(u.Dim); e[a] != 0 && ([axes]int8{}) == later(e, a) {
			out = addSize(out, math.Pow(u.Scale/c.unit(u.Dim).Scale, 1/float64(e[a])))
		}
	}
	return addSize(out, usual[a])
}

// later are the exponents of the axes after a.
func later(e [axes]int8, a axis) [axes]int8 {
	for i := range a + 1 {
		e[i] = 0
	}
	return e
}

func addSize(sizes []float64, size float64) []float64 {
	for _, s := range sizes {
		if same(s, size) {
			return sizes
		}
	}
	return append(sizes, size)
}

func (c coherent) conversions(units []quantity.Unit) int {
	count := 0
	for _, u := range units {
		if u.Dim != quantity.None && !same(u.Scale, c.unit(u.Dim).Scale) || u.Offset != 0 {
			count++
		}
	}
	return count
}

func same(a, b float64) bool { return math.Abs(a/b-1) < 1e-12 }

// convert is a term whose number is in one unit, written so that it counts in
// another. Of the two places for a shift the one with the shorter number is
// taken: (t-32)/1.8, but t*1.8+32.
func convert(n *node, from, to quantity.Unit) *node {
	factor := from.Scale / to.Scale
	before, after := tidy((from.Offset-to.Offset)/from.Scale), tidy((from.Offset-to.Offset)/to.Scale)
	if len(plainNumber(before)) < len(plainNumber(after)) {
		return times(plus(n, before), factor)
	}
	return plus(times(n, factor), after)
}

// tidy drops what binary arithmetic left of a temperature scale's shift.
func tidy(shift float64) float64 { return math.Round(shift*1e9) / 1e9 }

// times multiplies by a factor, as a division where that reads shorter.
func times(n *node, factor float64) *node {
	if same(factor, 1) {
		return n
	}
	up, down := plainNumber(factor), plainNumber(1/factor)
	if len(down) < len(up) {
		return &node{op: '/', args: []*node{n, penned(1 / factor)}}
	}
	return &node{op: '*', args: []*node{n, penned(factor)}}
}

func plus(n *node, shift float64) *node {
	if shift == 0 {
		return n
	}
	if shift < 0 {
		return &node{op: '-', args: []*node{n, penned(-shift)}}
	}
	return &node{op: '+', args: []*node{n, penned(shift)}}
}
