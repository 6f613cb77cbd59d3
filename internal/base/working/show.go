package working

import (
	"math"
	"strconv"

	"rootbell/internal/base/quantity"
)

// Shown is a number as one unit system writes it: Formula with the unit
// conversions as factors, PutIn the same sum with numbers, whose pencil result
// rounds to Value.
type Shown struct {
	Value    float64
	Decimals int
	Unit     string
	Formula  string
	PutIn    string
	Low      float64 // the range the measures' errors give; both zero without
	High     float64
}

// Show writes the number in a system.
func (n Number) Show(s quantity.System) Shown {
	unit := n.Kind.Unit(s)
	decimals := n.Kind.Decimals[s]
	out := Shown{Value: Round(unit.From(n.Base), decimals), Decimals: decimals, Unit: unit.Symbol}
	if e := n.Error(); e > 0 {
		out.Low, out.High = Round(unit.From(n.Base-e), decimals), Round(unit.From(n.Base+e), decimals)
	}
	if n.Law == nil {
		out.Formula = n.Symbol
		out.PutIn = trimZeros(strconv.FormatFloat(out.Value, 'f', decimals, 64))
		return out
	}
	tree := n.Law.in(n, s)
	out.Formula = tree.String()
	out.PutIn = n.putIn(tree, s, out)
	return out
}

// Round rounds half away from zero. The nudge takes 0.285, which binary
// arithmetic holds a hair lower, to 0.29 as a pencil does.
func Round(v float64, decimals int) float64 {
	p := math.Pow(10, float64(decimals))
	r := math.Round(v*p*(1+1e-13)) / p
	if r == 0 {
		return 0 // never -0
	}
	return r
}

// putIn writes the inputs with just enough digits. Every input starts with the
// decimals it is shown with; all gain digits until the sum comes out, then each
// gives back what it does not need.
func (n Number) putIn(tree *node, s quantity.System, out Shown) string {
	const most = 12
	start := make([]int, len(n.Inputs))
	for i, in := range n.Inputs {
		start[i] = in.Kind.Decimals[s]
	}
	digits := append([]int(nil), start...)
	for more := 1; !n.comesOut(tree, s, digits, out) && more <= most; more++ {
		for i := range digits {
			digits[i] = start[i] + more
		}
	}
	for i := range digits {
		for digits[i] > start[i] {
			digits[i]--
			if !n.comesOut(tree, s, digits, out) {
				digits[i]++
				break
			}
		}
	}
	return n.filled(tree, s, digits).String()
}

func (n Number) filled(tree *node, s quantity.System, digits []int) *node {
	byName := map[string]*node{}
	for i, in := range n.Inputs {
		v := Round(in.Kind.Unit(s).From(in.Base), digits[i])
		byName[n.Law.Where[i].Name] = &node{op: 'n', num: v}
	}
	return tree.replace(func(name string) *node { return byName[name] })
}

func (n Number) comesOut(tree *node, s quantity.System, digits []int, out Shown) bool {
	return Round(n.filled(tree, s, digits).eval(nil), out.Decimals) == out.Value
}

// in is the law's tree for inputs and a result in the units the system shows.
func (l *Law) in(n Number, s quantity.System) *node {
	result := n.Kind.Unit(s)
	units := make([]quantity.Unit, len(n.Inputs))
	for i, in := range n.Inputs {
		units[i] = in.Kind.Unit(s)
	}
	if l.Empirical {
		tree := l.tree.replace(func(name string) *node {
			for i, w := range l.Where {
				if w.Name == name {
					return convert(name, units[i], w.Unit)
				}
			}
			return nil
		})
		return unconvert(tree, l.Unit, result)
	}
	c := choose(append(append([]quantity.Unit(nil), units...), result))
	tree := l.tree.replace(func(name string) *node {
		for i, w := range l.Where {
			if w.Name == name {
				return convert(name, units[i], c.unit(units[i].Dim))
			}
		}
		return nil
	})
	return unconvert(tree, c.unit(result.Dim), result)
}
