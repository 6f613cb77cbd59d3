package working

import "math"

// wholeTolerance lets floor and ceil see a whole number in a quotient that a
// change of units left a rounding error short of it: 6 gal at 0.75 gal a plant
// is eight plants in litres too.
const wholeTolerance = 1e-9

// pencilTolerance does no more than undo binary rounding: a pencil finds
// 0.6/0.1 whole and 2.85 a tie, but not what is short of either in the twelfth
// digit.
const pencilTolerance = 2e-15

// eval is the value of the tree for the given symbols.
func (n *node) eval(symbols map[string]float64) float64 { return n.evalWithin(wholeTolerance, symbols) }

// asPencil is what a pencil makes of a tree without symbols.
func (n *node) asPencil() float64 { return n.evalWithin(pencilTolerance, nil) }

func (n *node) evalWithin(whole float64, symbols map[string]float64) float64 {
	switch n.op {
	case 'n':
		return n.num
	case 's':
		if v, ok := symbols[n.name]; ok {
			return v
		}
		if n.name == "pi" {
			return math.Pi
		}
		return math.NaN()
	}
	v := make([]float64, len(n.args))
	for i, a := range n.args {
		v[i] = a.evalWithin(whole, symbols)
	}
	if n.op == 'f' {
		return call(n.name, v, whole)
	}
	if len(v) == 1 {
		return -v[0]
	}
	switch n.op {
	case '+':
		return v[0] + v[1]
	case '-':
		return v[0] - v[1]
	case '*':
		return v[0] * v[1]
	case '/':
		return v[0] / v[1]
	default:
		return math.Pow(v[0], v[1])
	}
}

func call(name string, v []float64, whole float64) float64 {
	switch name {
	case "sqrt":
		return math.Sqrt(v[0])
	case "exp":
		return math.Exp(v[0])
	case "ln":
		return math.Log(v[0])
	case "floor":
		return math.Floor(v[0] + whole*max(1, math.Abs(v[0])))
	case "ceil":
		return math.Ceil(v[0] - whole*max(1, math.Abs(v[0])))
	}
	best := v[0]
	for _, x := range v[1:] {
		if name == "min" {
			best = min(best, x)
		} else {
			best = max(best, x)
		}
	}
	return best
}
