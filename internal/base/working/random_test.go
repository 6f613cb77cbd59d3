package working

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
)

// kinds are what a random law is made of.
var kinds = []quantity.Kind{
	quantity.Length, quantity.SmallLength, quantity.Area, quantity.Volume, quantity.SmallVolume, quantity.Mass,
	quantity.SmallMass, quantity.Time, quantity.Temperature, quantity.Density, quantity.Content, quantity.AirFlow,
	quantity.DailyVolume, quantity.Power, quantity.PhotonFlux, quantity.Conductivity, quantity.Share,
	quantity.MoleFraction, quantity.Count, quantity.Factor, quantity.Money,
}

// author writes random laws. Every part of one is above nought, so that no
// difference of near equals turns a rounding into anything larger.
type author struct {
	t       *rapid.T
	steps   bool // one floor or ceil too: two could hold a whole number from both sides, which no decimals meet
	symbols []Symbol
	values  []float64
}

// randomLaw is a law with the right dimensions, and numbers to put in.
func randomLaw(t *rapid.T, steps bool) (*Law, []Number) {
	a := &author{t: t, steps: steps}
	kind := rapid.SampledFrom(kinds).Draw(t, "kind")
	l := Law{Symbol: "y", Kind: kind, Basis: OfNature, Source: "invented", Empirical: rapid.Bool().Draw(t, "empirical")}
	dim := kind.Dim
	if l.Empirical {
		l.Unit = kind.Unit(quantity.System(rapid.IntRange(0, 1).Draw(t, "unit")))
		dim = quantity.None
	}
	l.Formula = a.term(dim, 3, l.Empirical)
	l.Where = a.symbols
	book := NewBook()
	var in []Number
	for i, s := range l.Where {
		in = append(in, book.Typed(s.Name, s.Name, s.Name, s.Kind, a.values[i], 0))
	}
	return Must(l), in
}

// term is a formula of a dimension; all symbols of an empirical law are bare.
func (a *author) term(d quantity.Dim, deep int, empirical bool) string {
	if deep == 0 {
		return a.leaf(d, empirical)
	}
	part := func(d quantity.Dim) string { return a.term(d, deep-1, empirical) }
	other := quantity.None
	if !empirical {
		other = a.kind(nil).Dim
	}
	forms := []func() string{
		func() string { return a.leaf(d, empirical) },
		func() string { return "(" + part(d) + "+" + part(d) + ")" },
		func() string { return "(" + part(d) + "--" + part(d) + ")" },
		func() string { return "max(" + part(d) + ", " + part(d) + ")" },
		func() string { return "min(" + part(d) + ", " + part(d) + ")" },
		func() string { return part(d) + "*" + part(quantity.None) },
		func() string { return part(d) + "/(" + part(quantity.None) + ")" },
		func() string { return "sqrt(" + part(d) + "*" + part(d) + ")" },
		func() string { return "(" + part(d) + ")^2/(" + part(d) + ")" },
		func() string { return part(d) + "*exp(-1/(1+" + part(quantity.None) + "))" },
		func() string { return part(d) + "*ln(2+" + part(quantity.None) + ")" },
		func() string { return part(d) + "*(" + part(other) + ")/(" + part(other) + ")" },
		func() string { return "-(-(" + part(d) + "))" },
	}
	if a.steps && d == quantity.None {
		step := func(before, after string) func() string {
			return func() string { a.steps = false; return before + part(d) + after }
		}
		forms = append(forms, step("(1+floor(", "))"), step("ceil(", ")"))
	}
	return forms[rapid.IntRange(0, len(forms)-1).Draw(a.t, "form")]()
}

// leaf is a number or a symbol, sometimes one that stands already.
func (a *author) leaf(d quantity.Dim, empirical bool) string {
	if d == quantity.None && rapid.Bool().Draw(a.t, "constant") {
		return rapid.StringMatching(`[1-9][0-9]?(\.[0-9]{0,2}[1-9])?|pi`).Draw(a.t, "number")
	}
	if n := len(a.symbols); n > 0 && rapid.Bool().Draw(a.t, "again") {
		if s := a.symbols[n-1]; empirical || s.Kind.Dim == d {
			return s.Name
		}
	}
	fits := func(k quantity.Kind) bool { return empirical || k.Dim == d }
	k := a.kind(fits)
	s := Symbol{Name: fmt.Sprintf("s%d", len(a.symbols)), Meaning: "invented", Kind: k}
	unit := k.Unit(quantity.System(rapid.IntRange(0, 1).Draw(a.t, "unit")))
	if empirical {
		s.Unit = unit
	}
	a.symbols = append(a.symbols, s)
	a.values = append(a.values, unit.Base(a.measure()))
	return s.Name
}

func (a *author) kind(fits func(quantity.Kind) bool) quantity.Kind {
	var some []quantity.Kind
	for _, k := range kinds {
		if a.steps && k == quantity.MoleFraction {
			continue // a millionth squared is nought to floor and ceil
		}
		if fits == nil || fits(k) {
			some = append(some, k)
		}
	}
	return rapid.SampledFrom(some).Draw(a.t, "symbol")
}

// measure is what a person reads off, or any number at all.
func (a *author) measure() float64 {
	if rapid.Bool().Draw(a.t, "any") {
		return rapid.Float64Range(40, 4000).Draw(a.t, "value")
	}
	return float64(rapid.IntRange(400, 9999).Draw(a.t, "tenths")) / 10
}

// told writes a law and its inputs for a message.
func told(l *Law, in []Number) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s as %s:", l.Formula, l.Kind.Name)
	for _, n := range in {
		fmt.Fprintf(&b, " %s=%v (%s)", n.Symbol, n.Base, n.Kind.Name)
	}
	return b.String()
}
