package pencil

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"strconv"
)

// longest is the longest sum in bytes; nobody works out a longer one by hand.
const longest = 4096

// Eval is the result of a sum without symbols. The error says what is wrong
// with the sum, or that it has no result, such as a division by nought.
func Eval(putIn string) (float64, error) { return With(putIn, nil) }

// With is Eval for a sum with symbols, whose values are given.
func With(formula string, values map[string]float64) (float64, error) {
	v, err := work(formula, values)
	if err != nil {
		return 0, err
	}
	return v.float(), nil
}

// Round is Eval rounded to decimals, half away from zero. The rounding is that
// of the decimal result: 0.285 becomes 0.29 although a float64 holds less.
func Round(putIn string, decimals int) (float64, error) {
	v, err := work(putIn, nil)
	if err != nil {
		return 0, err
	}
	exact := v.exact
	if exact == nil {
		// A root or a logarithm is read off to fifteen digits.
		exact, _ = new(big.Rat).SetString(strconv.FormatFloat(v.near, 'g', 15, 64))
	}
	return strconv.ParseFloat(exact.FloatString(decimals), 64)
}

func work(formula string, values map[string]float64) (value, error) {
	tokens, err := split(formula)
	if err != nil {
		return value{}, fmt.Errorf("%q: %w", formula, err)
	}
	y := yard{values: values, wanted: true}
	for i, t := range tokens {
		opens := i+1 < len(tokens) && tokens[i+1] == "("
		if err := y.shunt(t, opens); err != nil {
			return value{}, fmt.Errorf("%q: %w", formula, err)
		}
	}
	v, err := y.end()
	if err != nil {
		return value{}, fmt.Errorf("%q: %w", formula, err)
	}
	if f := v.float(); math.IsNaN(f) || math.IsInf(f, 0) {
		return value{}, fmt.Errorf("%q: %w", formula, errNoResult)
	}
	return v, nil
}

var errNoResult = errors.New("the sum has no result")

// split cuts a sum into numbers, words and single marks.
func split(s string) ([]string, error) {
	if len(s) > longest {
		return nil, fmt.Errorf("longer than %d", longest)
	}
	var out []string
	for i := 0; i < len(s); {
		start := i
		switch c := s[i]; {
		case c == ' ':
			i++
			continue
		case isDigit(c) || c == '.':
			for i < len(s) && (isDigit(s[i]) || s[i] == '.') {
				i++
			}
		case isLetter(c):
			for i < len(s) && (isLetter(s[i]) || isDigit(s[i])) {
				i++
			}
		default:
			i++
		}
		out = append(out, s[start:i])
	}
	return out, nil
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' || c == '_' }
