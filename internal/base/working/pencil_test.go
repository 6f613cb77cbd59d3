package working

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working/pencil"
)

var systems = []quantity.System{quantity.Metric, quantity.US}

// mostShown bounds the digits a shown value may have: the factors of a formula
// have twelve, of which rounding along it takes some.
const mostShown = 1e8

// What is put in, worked out by other code, rounds to what is shown.
func TestPencilFindsWhatIsShown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		law, in := randomLaw(t, true)
		if nearlyWhole(law, in) {
			t.Skip("see TestWholeQuotients")
		}
		n := NewBook().Work(law, "y", "y", in...)
		for _, s := range systems {
			shown := n.Show(s)
			if math.Abs(shown.Value)*math.Pow(10, float64(shown.Decimals)) > mostShown {
				continue
			}
			got, err := pencil.Round(shown.PutIn, shown.Decimals)
			if err != nil || got != shown.Value {
				t.Fatalf("%s\n%s: shown %v, formula %s\nput in %s gives %v, %v", told(law, in), s, shown.Value, shown.Formula, shown.PutIn, got, err)
			}
		}
	})
}

// nearlyWhole tells a floor or ceil of a whole number or next to one. Decimals
// of the other system may miss it; a formula that holds it twice or rounds to a
// tie besides can have no decimals that meet both.
func nearlyWhole(l *Law, in []Number) bool {
	values := map[string]float64{}
	for i, w := range l.Where {
		values[w.Name] = in[i].Base
		if l.Empirical {
			values[w.Name] = w.Unit.From(in[i].Base)
		}
	}
	return l.tree.evalWithin(wholeTolerance, values) != l.tree.evalWithin(-wholeTolerance, values)
}

// A quotient that is whole in the units it was typed in is whole in the others,
// and what is put in says so too.
func TestWholeQuotients(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom([]quantity.Kind{quantity.Length, quantity.Volume, quantity.Mass, quantity.SmallMass, quantity.Time}).Draw(t, "kind")
		unit := k.Unit(rapid.SampledFrom(systems).Draw(t, "typed in"))
		function := rapid.SampledFrom([]string{"floor", "ceil"}).Draw(t, "function")
		law := Must(Law{
			Symbol: "n", Kind: quantity.Count, Formula: function + "(V/p)", Basis: OfNature, Source: "invented",
			Where: []Symbol{{Name: "V", Meaning: "all", Kind: k}, {Name: "p", Meaning: "a part", Kind: k}},
		})
		times := rapid.IntRange(1, 400).Draw(t, "times")
		part := rapid.IntRange(1, 4000).Draw(t, "hundredths")
		b := NewBook()
		n := b.Work(law, "n", "n",
			b.Typed("V", "V", "V", k, unit.Base(float64(times*part)/100), 0), b.Typed("p", "p", "p", k, unit.Base(float64(part)/100), 0))
		if n.Base != float64(times) {
			t.Fatalf("%s of %d times %v %s gives %v", function, times, float64(part)/100, unit.Symbol, n.Base)
		}
		for _, s := range systems {
			shown := n.Show(s)
			if got, err := pencil.Round(shown.PutIn, 0); err != nil || got != shown.Value {
				t.Fatalf("%s: shown %v, put in %s gives %v, %v", s, shown.Value, shown.PutIn, got, err)
			}
		}
	})
}

// formulaTolerance covers the factors of a shown formula, which have twelve
// significant digits each.
const formulaTolerance = 1e-9

// The shown formula is the law in the units shown.
func TestShownFormulaIsTheLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		law, in := randomLaw(t, false)
		n := NewBook().Work(law, "y", "y", in...)
		for _, s := range systems {
			values := map[string]float64{}
			for i, w := range law.Where {
				values[w.Name] = in[i].Kind.Unit(s).From(in[i].Base)
			}
			shown := n.Show(s)
			got, err := pencil.With(shown.Formula, values)
			unit := law.Kind.Unit(s)
			// A temperature near 0 K is a small difference of large numbers.
			size := math.Abs(n.Base) + math.Abs(unit.Offset)
			if base := unit.Base(got); err != nil || math.Abs(base-n.Base) > formulaTolerance*size {
				t.Fatalf("%s\n%s: formula %s gives %v, %v; the law %v", told(law, in), s, shown.Formula, base, err, n.Base)
			}
		}
	})
}

// The package's own parser and the pencil read a formula the same way.
func TestParserAgreesWithPencil(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		law, in := randomLaw(t, false)
		values := map[string]float64{}
		for i, w := range law.Where {
			values[w.Name] = in[i].Base
			if law.Empirical {
				values[w.Name] = w.Unit.From(in[i].Base)
			}
		}
		want, err := pencil.With(law.Formula, values)
		got := law.tree.eval(values)
		if err != nil || math.Abs(got/want-1) > 1e-12 {
			t.Fatalf("%s: %v, the pencil %v, %v", told(law, in), got, want, err)
		}
	})
}

// A difference of like numbers loses binary digits, and 0.959-0.924 falls under
// the half on which a pencil lands: more digits are written then.
func TestADifferenceBesideATie(t *testing.T) {
	law := Must(Law{
		Symbol: "V", Kind: quantity.Volume, Formula: "v-w", Basis: OfNature, Source: "difference",
		Where: []Symbol{{Name: "v", Meaning: "upper", Kind: quantity.Volume}, {Name: "w", Meaning: "lower", Kind: quantity.Volume}},
	})
	b := NewBook()
	volume := func(key string, gallons float64) Number {
		return b.Typed(key, key, "v", quantity.Volume, quantity.USGallon.Base(gallons), 0)
	}
	shown := b.Work(law, "left", "left", volume("upper", 0.959134), volume("lower", 0.924467)).Show(quantity.US)
	if got, err := pencil.Round(shown.PutIn, shown.Decimals); err != nil || got != shown.Value || got != 0.03 {
		t.Errorf("%s gives %v, %v; shown %v", shown.PutIn, got, err, shown.Value)
	}
}
