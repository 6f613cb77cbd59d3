package lesson

import (
	"fmt"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// On what the laws of the sheets rest, where it is no one's finding.
const (
	arithmetic = "arithmetic"
	geometry   = "geometry"
)

// law is a formula of a sheet; a mistake in it stops the program at start.
func law(symbol string, kind quantity.Kind, formula, source string, where ...working.Symbol) *working.Law {
	return working.Must(working.Law{Symbol: symbol, Kind: kind, Formula: formula, Where: where, Basis: working.OfNature, Source: source})
}

// letters are x1 to xn, all of one kind.
func letters(letter string, n int, meaning string, kind quantity.Kind) []working.Symbol {
	out := make([]working.Symbol, n)
	for i := range out {
		out[i] = working.Letter(fmt.Sprintf("%s%d", letter, i+1), meaning, kind)
	}
	return out
}

// joined writes a pattern for each of n letters and puts a sign between them:
// 'x1+x2+x3'.
func joined(n int, sign, pattern string) string {
	parts := make([]string, n)
	for i := range parts {
		parts[i] = strings.ReplaceAll(pattern, "#", fmt.Sprint(i+1))
	}
	return strings.Join(parts, sign)
}

// totalLaw is the sum of n numbers.
func totalLaw(symbol, letter string, n int, meaning string, kind quantity.Kind) *working.Law {
	return law(symbol, kind, joined(n, "+", letter+"#"), arithmetic, letters(letter, n, meaning, kind)...)
}

// meanLaw is the mean of n readings.
func meanLaw(n int, kind quantity.Kind) *working.Law {
	return law("m", kind, fmt.Sprintf("(%s)/%d", joined(n, "+", "x#"), n), "the arithmetic mean", letters("x", n, "a reading", kind)...)
}

// deviationLaw is the standard deviation of n readings about their mean, with
// n - 1 below, as of a sample.
func deviationLaw(n int, kind quantity.Kind) *working.Law {
	where := append(letters("x", n, "a reading", kind), working.Letter("m", "their mean", kind))
	return law("s", kind, fmt.Sprintf("sqrt((%s)/%d)", joined(n, "+", "(x#-m)^2"), n-1), "the standard deviation of a sample, n - 1 below", where...)
}

// crossLaw is the sum of products of two rows.
func crossLaw(symbol, a, b string, n int) *working.Law {
	kind := plain("", 2)
	if a == b {
		return law(symbol, kind, joined(n, "+", a+"#^2"), arithmetic, letters(a, n, "a number of the row", kind)...)
	}
	return law(symbol, kind, joined(n, "+", a+"#*"+b+"#"), arithmetic, append(letters(a, n, "a number of the first row", kind), letters(b, n, "of the second", kind)...)...)
}

// Laws of the centre and the spread.
var (
	number      = plain("", 2)
	betweenLaw  = law("M", number, "(a+b)/2", "the median: the middle of the two in the middle", working.Letter("a", "the one before the middle", number), working.Letter("b", "the one after it", number))
	middleLaw   = law("M", number, "a", "the median: the one in the middle", working.Letter("a", "the one in the middle", number))
	rangeLaw    = law("R", number, "g-k", "the range", working.Letter("g", "the greatest", number), working.Letter("k", "the least", number))
	quartersLaw = law("I", number, "u-l", "the interquartile range", working.Letter("u", "the upper quartile", number), working.Letter("l", "the lower quartile", number))
	lowFence    = law("f", number, "l-1.5*(u-l)", fences, working.Letter("l", "the lower quartile", number), working.Letter("u", "the upper quartile", number))
	highFence   = law("F", number, "u+1.5*(u-l)", fences, working.Letter("l", "the lower quartile", number), working.Letter("u", "the upper quartile", number))
)

// Laws of a fitted line y = a + b·x, by least squares (Legendre 1805), in the
// sums that a pencil adds up.
var (
	slopeLaw = law("b", number, "(n*P-X*Y)/(n*Q-X^2)", "least squares", working.Letter("n", "how many points", number), working.Letter("P", "sum of x times y", number), working.Letter("X", "sum of x", number),
		working.Letter("Y", "sum of y", number), working.Letter("Q", "sum of x times x", number))
	interceptLaw = law("a", number, "(Y-b*X)/n", "least squares", working.Letter("Y", "sum of y", number), working.Letter("b", "the slope", number), working.Letter("X", "sum of x", number), working.Letter("n", "how many points", number))
	onLineLaw    = law("p", number, "a+b*x", "the fitted line", working.Letter("a", "where the line begins", number), working.Letter("b", "the slope", number), working.Letter("x", "where it is asked", number))
	residualLaw  = law("e", number, "y-p", "measured less predicted", working.Letter("y", "measured", number), working.Letter("p", "predicted", number))
	riseLaw      = law("b", number, "(v-u)/(d-c)", "rise over run", working.Letter("v", "the later height", number), working.Letter("u", "the earlier height", number), working.Letter("d", "the later day", number), working.Letter("c", "the earlier day", number))
)
