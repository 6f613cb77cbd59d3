package working

import (
	"fmt"

	"rootbell/internal/base/quantity"
)

// Basis says on what a number rests.
type Basis string

// The bases of a number.
const (
	OfNature Basis = "law"               // geometry, physics, arithmetic
	OfTrade  Basis = "rule of the trade" // common practice
	AsTyped  Basis = "typed"             // what the plan says
	BySearch Basis = "search"            // found by trying; the formula is the check
)

// Symbol is one letter of a formula. Unit is needed in an empirical law only:
// the unit the law was published for.
type Symbol struct {
	Name    string
	Meaning string
	Kind    quantity.Kind
	Unit    quantity.Unit
}

// Letter is a symbol of a kind; in an empirical law, in the kind's metric unit.
func Letter(name, meaning string, kind quantity.Kind) Symbol {
	return Symbol{Name: name, Meaning: meaning, Kind: kind, Unit: kind.Metric}
}

// Law is a formula with the meaning of its letters and its source. A coherent
// law holds in any units; its dimensions are checked by Must. An Empirical one
// holds in the units its symbols name, and so does its result.
type Law struct {
	Symbol    string
	Kind      quantity.Kind
	Unit      quantity.Unit // of the result of an empirical law
	Formula   string
	Where     []Symbol
	Basis     Basis
	Source    string
	Empirical bool
	tree      *node
}

// Must parses the law's formula and checks its symbols and dimensions. A law
// is part of the program, so a mistake in it stops the program at start.
func Must(l Law) *Law {
	if err := l.prepare(); err != nil {
		panic("working: " + err.Error())
	}
	return &l
}

func (l *Law) prepare() error {
	tree, err := parse(l.Formula)
	if err != nil {
		return err
	}
	l.tree = tree
	dims := map[string]quantity.Dim{"pi": quantity.None}
	for _, s := range l.Where {
		dims[s.Name] = s.Kind.Dim
		if l.Empirical {
			dims[s.Name] = quantity.None
		}
	}
	dim, err := tree.dim(dims)
	if err != nil {
		return fmt.Errorf("%s = %s: %w", l.Symbol, l.Formula, err)
	}
	if !l.Empirical && dim != l.Kind.Dim {
		return fmt.Errorf("%s = %s: the formula is no %s", l.Symbol, l.Formula, l.Kind.Name)
	}
	return nil
}

// dim is the dimension of the tree, or why it has none.
func (n *node) dim(of map[string]quantity.Dim) (quantity.Dim, error) {
	switch n.op {
	case 'n':
		return quantity.None, nil
	case 's':
		d, known := of[n.name]
		if !known {
			return d, fmt.Errorf("the symbol %s is not explained", n.name)
		}
		return d, nil
	}
	d := make([]quantity.Dim, len(n.args))
	for i, a := range n.args {
		var err error
		if d[i], err = a.dim(of); err != nil {
			return d[i], err
		}
	}
	switch {
	case n.op == '*':
		return d[0].Times(d[1]), nil
	case n.op == '/':
		return d[0].Over(d[1]), nil
	case n.op == '^':
		return powerDim(d[0], n.args[1])
	case n.op == 'f' && n.name == "sqrt":
		root, ok := d[0].Root()
		if !ok {
			return root, fmt.Errorf("the root of %s has no dimension", n.args[0])
		}
		return root, nil
	case n.op == 'f' && n.name != "min" && n.name != "max":
		if d[0] != quantity.None {
			return d[0], fmt.Errorf("%s of a quantity with a unit", n.name)
		}
		return quantity.None, nil
	}
	for _, e := range d[1:] {
		if e != d[0] {
			return e, fmt.Errorf("%s adds or compares different dimensions", n)
		}
	}
	return d[0], nil
}

func powerDim(base quantity.Dim, exponent *node) (quantity.Dim, error) {
	if base == quantity.None {
		return base, nil
	}
	if exponent.op != 'n' || exponent.num != float64(int8(exponent.num)) {
		return base, fmt.Errorf("a quantity with a unit raised to %s", exponent)
	}
	return base.Power(int8(exponent.num)), nil
}
