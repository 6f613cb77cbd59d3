package working

import (
	"math"

	"rootbell/internal/base/quantity"
)

// coherent is a choice of one unit for each base dimension, in which a law
// holds without factors.
type coherent struct{ length, mass, time, money, amount float64 }

// unit is the coherent unit of a dimension.
func (c coherent) unit(d quantity.Dim) quantity.Unit {
	scale := math.Pow(c.length, float64(d.Length)) * math.Pow(c.mass, float64(d.Mass)) *
		math.Pow(c.time, float64(d.Time)) * math.Pow(c.amount, float64(d.Amount)) * math.Pow(c.money, float64(d.Money))
	return quantity.Unit{Dim: d, Scale: scale}
}

// choose takes the coherent units that leave the fewest conversions among the
// units shown: centimetres for a volume from an area and a depth, the cube
// root of a gallon for a share of gallons.
func choose(units []quantity.Unit) coherent {
	lengths, masses, times := []float64{}, []float64{}, []float64{}
	for _, u := range units {
		d := u.Dim
		switch {
		case d.Length > 0 && d == (quantity.Dim{Length: d.Length}):
			lengths = append(lengths, math.Pow(u.Scale, 1/float64(d.Length)))
		case d == quantity.MassDim:
			masses = append(masses, u.Scale)
		case d == quantity.TimeDim:
			times = append(times, u.Scale)
		}
	}
	best, fewest := coherent{1, 1, 1, 1, 1}, math.MaxInt
	for _, l := range append(lengths, 10) {
		for _, m := range append(masses, 1) {
			for _, t := range append(times, quantity.Day.Scale) {
				c := coherent{length: l, mass: m, time: t, money: 1, amount: 1}
				if k := c.conversions(units); k < fewest {
					best, fewest = c, k
				}
			}
		}
	}
	return best
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

// convert is a symbol whose number is in one unit, written so that it counts
// in another.
func convert(name string, shown, wanted quantity.Unit) *node {
	sym := &node{op: 's', name: name}
	factor := shown.Scale / wanted.Scale
	offset := (shown.Offset - wanted.Offset) / wanted.Scale
	n := times(sym, factor)
	if shift := math.Round(offset*1e9) / 1e9; shift != 0 {
		n = plus(n, shift)
	}
	return n
}

// unconvert is a result that comes out in one unit, written so that it is read
// in another.
func unconvert(n *node, from, shown quantity.Unit) *node {
	out := times(n, from.Scale/shown.Scale)
	if shift := math.Round((from.Offset-shown.Offset)/shown.Scale*1e9) / 1e9; shift != 0 {
		out = plus(out, shift)
	}
	return out
}

// times multiplies by a factor, as a division where that reads shorter.
func times(n *node, factor float64) *node {
	if same(factor, 1) {
		return n
	}
	up, down := plainNumber(factor), plainNumber(1/factor)
	if len(down) < len(up) {
		return &node{op: '/', args: []*node{n, {op: 'n', num: 1 / factor}}}
	}
	return &node{op: '*', args: []*node{n, {op: 'n', num: factor}}}
}

func plus(n *node, shift float64) *node {
	if shift < 0 {
		return &node{op: '-', args: []*node{n, {op: 'n', num: -shift}}}
	}
	return &node{op: '+', args: []*node{n, {op: 'n', num: shift}}}
}
