package pencil

import (
	"math"
	"math/big"
)

// value is an exact fraction where it can be, else the nearest float64.
type value struct {
	exact *big.Rat
	near  float64
}

// mostBits is where a fraction has grown past any use and becomes a float64.
const mostBits = 2000

// mostPower is the largest whole exponent that is multiplied out.
const mostPower = 40

func of(r *big.Rat) value {
	if r.Num().BitLen()+r.Denom().BitLen() > mostBits {
		f, _ := r.Float64()
		return near(f)
	}
	return value{exact: r}
}

func near(f float64) value { return value{near: f} }

func (v value) float() float64 {
	if v.exact != nil {
		f, _ := v.exact.Float64()
		return f
	}
	return v.near
}

func (v value) negated() value {
	if v.exact != nil {
		return value{exact: new(big.Rat).Neg(v.exact)}
	}
	return near(-v.near)
}

func (v value) less(w value) bool {
	if v.exact != nil && w.exact != nil {
		return v.exact.Cmp(w.exact) < 0
	}
	return v.float() < w.float()
}

// with is v op w.
func (v value) with(op string, w value) (value, error) {
	if w.float() == 0 && (op == "/" && (w.exact == nil || w.exact.Sign() == 0)) {
		return value{}, errNoResult
	}
	if op == "^" {
		return v.power(w)
	}
	if v.exact != nil && w.exact != nil {
		r := new(big.Rat)
		switch op {
		case "+":
			return of(r.Add(v.exact, w.exact)), nil
		case "-":
			return of(r.Sub(v.exact, w.exact)), nil
		case "*":
			return of(r.Mul(v.exact, w.exact)), nil
		}
		return of(r.Quo(v.exact, w.exact)), nil
	}
	a, b := v.float(), w.float()
	switch op {
	case "+":
		return near(a + b), nil
	case "-":
		return near(a - b), nil
	case "*":
		return near(a * b), nil
	}
	return near(a / b), nil
}

func (v value) power(w value) (value, error) {
	if v.exact == nil || w.exact == nil || !w.exact.IsInt() || math.Abs(w.float()) > mostPower {
		return near(math.Pow(v.float(), w.float())), nil
	}
	n := w.exact.Num().Int64()
	base := v
	if n < 0 {
		if v.exact.Sign() == 0 {
			return value{}, errNoResult
		}
		base, n = value{exact: new(big.Rat).Inv(v.exact)}, -n
	}
	out := value{exact: big.NewRat(1, 1)}
	for range n {
		var err error
		if out, err = out.with("*", base); err != nil {
			return value{}, err
		}
	}
	return out, nil
}

// apply is the function of the numbers. A result that is no number is found
// at the end, where every sum is looked at.
func apply(function string, v []value) (value, error) {
	switch function {
	case "sqrt":
		return root(v[0]), nil
	case "exp":
		return near(math.Exp(v[0].float())), nil
	case "ln":
		return near(math.Log(v[0].float())), nil
	case "floor":
		return v[0].floor(), nil
	case "ceil":
		return v[0].negated().floor().negated(), nil
	}
	best := v[0]
	for _, w := range v[1:] {
		if w.less(best) == (function == "min") {
			best = w
		}
	}
	return best, nil
}

// floor divides as integers, whose Euclidean quotient is rounded down.
func (v value) floor() value {
	if v.exact == nil {
		return near(math.Floor(v.near))
	}
	return value{exact: new(big.Rat).SetInt(new(big.Int).Div(v.exact.Num(), v.exact.Denom()))}
}

// root is exact where both halves of the fraction are squares.
func root(v value) value {
	if v.exact != nil && v.exact.Sign() >= 0 {
		top, bottom := new(big.Int).Sqrt(v.exact.Num()), new(big.Int).Sqrt(v.exact.Denom())
		r := new(big.Rat).SetFrac(top, bottom)
		if new(big.Rat).Mul(r, r).Cmp(v.exact) == 0 {
			return value{exact: r}
		}
	}
	return near(math.Sqrt(v.float()))
}
