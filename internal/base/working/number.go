package working

import (
	"math"
	"sort"

	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
)

// Number is a value with its working: what it is called, how it came about and
// the numbers that went in. Base is in base units (mm, kg, s, K …).
type Number struct {
	Key    string
	Name   string
	Base   float64
	Kind   quantity.Kind
	Symbol string
	Law    *Law // nil for what was typed, taken from a fact or counted
	Inputs []Number
	Basis  Basis
	Source string
	spread []effect
}

// effect is by how much the error of one measure moves a number.
type effect struct {
	key  string
	base float64
}

// Error is the number's half range in base units: the errors of the measures
// behind it, each taken as independent, combined as the root of the sum of
// squares. Zero when it rests on no measure.
func (n Number) Error() float64 {
	sum := 0.0
	for _, e := range n.spread {
		sum += e.base * e.base
	}
	return math.Sqrt(sum)
}

// Book collects the numbers of an assessment in the order they were worked
// out. Scopes of one book share its pages; each key stands once.
type Book struct {
	scope string
	pages *pages
}

type pages struct {
	numbers []Number
	at      map[string]int
}

// NewBook is an empty book.
func NewBook() *Book { return &Book{pages: &pages{at: map[string]int{}}} }

// In is the same book with keys under a scope: In("tubs.Heron").
func (b *Book) In(scope string) *Book {
	return &Book{scope: b.Key(scope), pages: b.pages}
}

// Numbers are the known numbers of the book, in order.
func (b *Book) Numbers() []Number {
	out := make([]Number, 0, len(b.pages.numbers))
	for _, n := range b.pages.numbers {
		if n.Known() {
			out = append(out, n)
		}
	}
	return out
}

// Find is the number of a full key.
func (b *Book) Find(key string) (Number, bool) {
	i, ok := b.pages.at[key]
	if !ok {
		return Number{}, false
	}
	return b.pages.numbers[i], true
}

// put enters a number; a key that stands already keeps its first number, so a
// default used twice is listed once.
func (b *Book) put(n Number) Number {
	n.Key = b.Key(n.Key)
	if i, ok := b.pages.at[n.Key]; ok {
		return b.pages.numbers[i]
	}
	b.pages.at[n.Key] = len(b.pages.numbers)
	b.pages.numbers = append(b.pages.numbers, n)
	return n
}

// Typed enters what the plan says. errorBase is the half range of the
// instrument it was read with, in base units; zero for what has none.
func (b *Book) Typed(key, name, symbol string, kind quantity.Kind, base, errorBase float64) Number {
	n := Number{Key: key, Name: name, Symbol: symbol, Kind: kind, Base: base, Basis: AsTyped, Source: "the plan"}
	if errorBase != 0 && math.Abs(errorBase) <= most {
		n.spread = []effect{{b.Key(key), errorBase}}
	}
	return b.put(n)
}

// Fact enters a sourced value; base is its value in base units.
func (b *Book) Fact(key, name, symbol string, kind quantity.Kind, base float64, f facts.Fact) Number {
	basis := OfNature
	if f.Status == "common practice" {
		basis = OfTrade
	}
	return b.put(Number{Key: key, Name: name, Symbol: symbol, Kind: kind, Base: base, Basis: basis, Source: f.Says() + " (" + string(f.ID) + ")"})
}

// Found enters a leaf that a search gave, such as a coordinate of a hole.
func (b *Book) Found(key, name, symbol string, kind quantity.Kind, base float64, how string) Number {
	return b.put(Number{Key: key, Name: name, Symbol: symbol, Kind: kind, Base: base, Basis: BySearch, Source: how})
}

// Work enters the result of a law applied to numbers in the order of its
// Where. The law's kind shows it unless kind is given another by WorkAs.
func (b *Book) Work(l *Law, key, name string, in ...Number) Number {
	return b.WorkAs(l, l.Kind, key, name, in...)
}

// WorkAs is Work shown as another kind of the same dimension.
func (b *Book) WorkAs(l *Law, kind quantity.Kind, key, name string, in ...Number) Number {
	values := make([]float64, len(in))
	for i, n := range in {
		values[i] = n.Base
	}
	return b.put(Number{
		Key: key, Name: name, Base: l.Value(values...), Kind: kind, Symbol: l.Symbol, Law: l,
		Inputs: in, Basis: l.Basis, Source: l.Source, spread: l.spread(in, values),
	})
}

// Value is the law's result in base units for inputs in base units, in the
// order of Where. It is NaN when there are not as many inputs as symbols.
func (l *Law) Value(in ...float64) float64 {
	if len(in) != len(l.Where) {
		return math.NaN()
	}
	symbols := make(map[string]float64, len(in))
	for i, s := range l.Where {
		symbols[s.Name] = in[i]
		if l.Empirical {
			symbols[s.Name] = s.Unit.From(in[i])
		}
	}
	v := l.tree.eval(symbols)
	if l.Empirical {
		return l.Unit.Base(v)
	}
	return v
}

// spread carries the errors of the inputs through the law to first order,
// measure by measure, so that a measure used twice counts once.
func (l *Law) spread(in []Number, values []float64) []effect {
	if l.tree.op == 'f' && (l.tree.name == "floor" || l.tree.name == "ceil") {
		return nil // a count jumps: no slope says by how much
	}
	sums := map[string]float64{}
	for i, n := range in {
		for _, e := range n.spread {
			step := e.base
			moved := append([]float64(nil), values...)
			moved[i] = values[i] + step
			up := l.Value(moved...)
			moved[i] = values[i] - step
			sums[e.key] += (up - l.Value(moved...)) / 2
		}
	}
	var out []effect
	for k, v := range sums {
		if v != 0 && !math.IsNaN(v) && !math.IsInf(v, 0) {
			out = append(out, effect{k, v})
		}
	}
	sort.Slice(out, func(i, j int) bool { return out[i].key < out[j].key })
	return out
}

// Key is the full key a short one has in this scope.
func (b *Book) Key(short string) string {
	if b.scope == "" {
		return short
	}
	return b.scope + "." + short
}
