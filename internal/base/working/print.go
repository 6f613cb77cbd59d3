package working

import (
	"math"
	"strconv"
	"strings"
)

// binding strength of the operators; a weaker one inside a stronger one takes
// brackets.
func (n *node) strength() int {
	switch {
	case n.op == '-' && len(n.args) == 1:
		return 2
	case n.op == '+' || n.op == '-':
		return 1
	case n.op == '*' || n.op == '/':
		return 2
	case n.op == '^':
		return 3
	case n.op == 'n' && n.num < 0:
		return 0
	}
	return 4
}

func (n *node) print(b *strings.Builder) {
	switch {
	case n.op == 'n':
		b.WriteString(plainNumber(n.num))
	case n.op == 's':
		b.WriteString(n.name)
	case n.op == 'f':
		b.WriteString(n.name)
		b.WriteByte('(')
		for i, a := range n.args {
			if i > 0 {
				b.WriteString(", ")
			}
			a.print(b)
		}
		b.WriteByte(')')
	case len(n.args) == 1:
		b.WriteByte('-')
		n.args[0].printWithin(b, 3)
	default:
		left, right := n.strength(), n.strength()
		if n.op == '-' || n.op == '/' {
			right++
		}
		if n.op == '^' {
			left, right = 4, 4
		}
		n.args[0].printWithin(b, left)
		b.WriteByte(n.op)
		if strings.HasPrefix(n.args[1].String(), "-") {
			right = 5 // 3-(-2), never 3--2
		}
		n.args[1].printWithin(b, right)
	}
}

func (n *node) printWithin(b *strings.Builder, least int) {
	if n.strength() >= least {
		n.print(b)
		return
	}
	b.WriteByte('(')
	n.print(b)
	b.WriteByte(')')
}

func (n *node) String() string {
	var b strings.Builder
	n.print(&b)
	return b.String()
}

// mostDigits are the significant digits of a number written down.
const mostDigits = 12

// plainNumber writes a number without exponent. The tree holds none that is not
// finite.
func plainNumber(v float64) string {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return "0"
	}
	decimals := max(mostDigits-1-int(math.Floor(math.Log10(math.Abs(v)))), 0)
	return trimZeros(strconv.FormatFloat(v, 'f', decimals, 64))
}

// penned is a number as it is written down, so that the tree holds no digit
// that the reader does not see.
func penned(v float64) *node {
	written, err := strconv.ParseFloat(plainNumber(v), 64)
	if err != nil {
		written = v
	}
	return &node{op: 'n', num: written}
}

// nudged is a number with its last digit one more or less.
func nudged(v float64, by int) float64 {
	if v == 0 || by == 0 {
		return v
	}
	return v + float64(by)*math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-mostDigits+1)
}

func trimZeros(s string) string {
	if !strings.Contains(s, ".") {
		return s
	}
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

// replace is the tree with every symbol exchanged for what by gives.
func (n *node) replace(by func(name string) *node) *node {
	if n.op == 's' {
		if r := by(n.name); r != nil {
			return r
		}
		return n
	}
	if len(n.args) == 0 {
		return n
	}
	out := *n
	out.args = make([]*node, len(n.args))
	for i, a := range n.args {
		out.args[i] = a.replace(by)
	}
	return &out
}
