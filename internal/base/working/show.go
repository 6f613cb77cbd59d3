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
	None     bool // no result, as from a division by nought: the rest is empty but for Unit and Formula
}

// most is beyond any measure of a garden, and far enough from the ends of
// float64 that every conversion stays finite.
const most = 1e60

// Known says that the number and what went into it are finite. One that is not
// known, as from a division by nought, is in no list and shows no value.
func (n Number) Known() bool {
	known := math.Abs(n.Base) <= most
	for _, in := range n.Inputs {
		known = known && math.Abs(in.Base) <= most
	}
	return known
}

// Show writes the number in a system.
func (n Number) Show(s quantity.System) Shown {
	unit := n.Kind.Unit(s)
	decimals := n.Kind.Decimals[s]
	if !n.Known() {
		return Shown{Decimals: decimals, Unit: unit.Symbol, Formula: n.Symbol, None: true}
	}
	out := Shown{Value: quantity.Round(unit.From(n.Base), decimals), Decimals: decimals, Unit: unit.Symbol}
	if e := n.Error(); e > 0 && e <= most {
		out.Low, out.High = quantity.Round(unit.From(n.Base-e), decimals), quantity.Round(unit.From(n.Base+e), decimals)
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

// roundWithin rounds half away from zero, where a half is what lies within tie of
// one, relative to its size; a negative tie rounds a half towards zero. Past a
// dozen digits the tie would be larger than what it mends. NaN and infinities stay
// what they are.
func roundWithin(tie, v float64, decimals int) float64 {
	p := math.Pow(10, float64(decimals))
	whole := v * p
	switch size := math.Abs(whole); {
	case size < 1e12:
		whole *= 1 + tie
	case size >= 1<<53:
		return v // no digits left to round
	}
	r := math.Round(whole) / p
	if r == 0 {
		return 0 // never -0
	}
	return r
}

// hand is a sum about to be written down: the tree, and what each input has by
// way of decimals and of last digits more or less.
type hand struct {
	number Number
	tree   *node
	system quantity.System
	shown  Shown
	digits []int
	nudge  []int
	ties   bool // whether a sum may end on a half of its last shown digit
}

// putIn writes the inputs with just enough digits. Every input starts with the
// decimals it is shown with; all gain digits until the sum comes out, then each
// gives back what it does not need.
func (n Number) putIn(tree *node, s quantity.System, out Shown) string {
	const mostMore = 12
	h := hand{number: n, tree: tree, system: s, shown: out, digits: make([]int, len(n.Inputs)), nudge: make([]int, len(n.Inputs))}
	for _, h.ties = range []bool{false, true} {
		for more := 0; more <= mostMore; more++ {
			for i, in := range n.Inputs {
				h.digits[i] = in.Kind.Decimals[s] + more
			}
			if h.comesOut() {
				h.giveBack()
				return h.filled().String()
			}
		}
	}
	h.nudgeOne()
	return h.filled().String()
}

func (h *hand) giveBack() {
	for i, in := range h.number.Inputs {
		for h.digits[i] > in.Kind.Decimals[h.system] {
			h.digits[i]--
			if !h.comesOut() {
				h.digits[i]++
				break
			}
		}
	}
}

// nudgeOne rounds one input the other way in its last digit: 40 °F is
// 4.44444444444 °C, so that a whole 40 comes out of 4.44444444445 only.
func (h *hand) nudgeOne() {
	for i := range h.nudge {
		for _, by := range []int{1, -1} {
			h.nudge[i] = by
			if h.comesOut() {
				return
			}
		}
		h.nudge[i] = 0
	}
}

func (h *hand) filled() *node {
	byName := map[string]*node{}
	for i, in := range h.number.Inputs {
		v := quantity.Round(in.Kind.Unit(h.system).From(in.Base), h.digits[i])
		byName[h.number.Law.Where[i].Name] = penned(nudged(v, h.nudge[i]))
	}
	return h.tree.replace(func(name string) *node { return byName[name] })
}

// nearTie is how near to a half a sum is not trusted to fall on its side: a
// difference of like numbers, as 0.959-0.924, keeps few of its binary digits.
const nearTie = 1e-12

func (h *hand) comesOut() bool {
	sum, decimals := h.filled().asPencil(), h.shown.Decimals
	if roundWithin(pencilTolerance, sum, decimals) != h.shown.Value {
		return false
	}
	return h.ties || roundWithin(-nearTie, sum, decimals) == roundWithin(nearTie, sum, decimals)
}

// in is the law's tree for inputs and a result in the units the system shows.
func (l *Law) in(n Number, s quantity.System) *node {
	result := n.Kind.Unit(s)
	units := make([]quantity.Unit, len(n.Inputs))
	for i, in := range n.Inputs {
		units[i] = in.Kind.Unit(s)
	}
	c := choose(append(append([]quantity.Unit(nil), units...), result))
	own := func(_ Symbol, shown quantity.Unit) quantity.Unit { return c.unit(shown.Dim) }
	from := c.unit(result.Dim)
	if l.Empirical {
		own = func(w Symbol, _ quantity.Unit) quantity.Unit { return w.Unit }
		from = l.Unit
	}
	tree := l.tree.replace(func(name string) *node {
		for i, w := range l.Where {
			if w.Name == name {
				return convert(&node{op: 's', name: name}, units[i], own(w, units[i]))
			}
		}
		return nil
	})
	return convert(tree, from, result)
}
