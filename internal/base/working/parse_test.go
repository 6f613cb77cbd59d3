package working

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/working/pencil"
)

func TestFormulasAreReadAsWritten(t *testing.T) {
	for _, c := range []struct {
		formula, printed string
		value            float64 // at a = 2, b = 3
	}{
		{"a+b*4", "a+b*4", 14},
		{"(a+b)*4", "(a+b)*4", 20},
		{"a-b-1", "a-b-1", -2},
		{"a-(b-1)", "a-(b-1)", 0},
		{"a/b/4", "a/b/4", 1.0 / 6},
		{"a/(b/4)", "a/(b/4)", 8.0 / 3},
		{"a/(b*4)", "a/(b*4)", 1.0 / 6},
		{"a*(b/4)", "a*b/4", 1.5},
		{"a+(b-1)", "a+b-1", 4},
		{"-a^2", "-a^2", -4},
		{"(-a)^2", "(-a)^2", 4},
		{"a^b^2", "a^(b^2)", 512},
		{"(a^b)^2", "(a^b)^2", 64},
		{"a^-1", "a^(-1)", 0.5},
		{"-a*b", "-a*b", -6},
		{"-(a*b)", "-(a*b)", -6},
		{"-(a+b)", "-(a+b)", -5},
		{"a--b", "a-(-b)", 5},
		{"a+-b*4", "a+(-b*4)", -10},
		{"a*-b", "a*(-b)", -6},
		{"--a", "-(-a)", 2},
		{" min( a ,b, 1 ) ", "min(a, b, 1)", 1},
		{"max(-a, -b)", "max(-a, -b)", -2},
		{"sqrt(a*8)", "sqrt(a*8)", 4},
		{"floor(-a/b)+ceil(a/b)", "floor(-a/b)+ceil(a/b)", 0},
		{"ln(exp(b))", "ln(exp(b))", 3},
		{"pi*a", "pi*a", 2 * math.Pi},
		{"((((a))))", "a", 2},
		{"0.50*a", "0.5*a", 1},
		{"0.000000000000000000000000123456", "0.000000000000000000000000123456", 1.23456e-25},
	} {
		n, err := parse(c.formula)
		if err != nil {
			t.Errorf("%s: %v", c.formula, err)
			continue
		}
		if got := n.eval(map[string]float64{"a": 2, "b": 3}); math.Abs(got-c.value) > 1e-15*max(1, math.Abs(c.value)) {
			t.Errorf("%s is %v, want %v", c.formula, got, c.value)
		}
		if got := n.String(); got != c.printed {
			t.Errorf("%s is printed %s, want %s", c.formula, got, c.printed)
		}
	}
}

func TestFormulasThatAreNone(t *testing.T) {
	for _, formula := range []string{
		"", " ", "a+", "+a", "(a", "a)", "()", "a b", "a(2)", "2a", "1.2.3", ".", "1e5", "0x1p4", "1_000", "sin(a)", "sqrt()", "sqrt(a, b)",
		"min(a,)", "min(", "min(a", "a^", "a;b", "a,b", "½", "a\n+b", strings.Repeat("(", longestFormula+1),
	} {
		if n, err := parse(formula); err == nil {
			t.Errorf("%q is taken as %s", formula, n)
		}
	}
}

// What is printed is read back as the same sum, and printed the same again.
func TestPrintedFormulasReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		law, in := randomLaw(t, false)
		values := map[string]float64{}
		for i, w := range law.Where {
			values[w.Name] = in[i].Base
		}
		readsBack(t, law.Formula, values)
	})
}

func readsBack(t rapid.TB, formula string, values map[string]float64) {
	first, err := parse(formula)
	if err != nil {
		t.Fatalf("%s: %v", formula, err)
	}
	printed := first.String()
	again, err := parse(printed)
	if err != nil || again.String() != printed {
		t.Fatalf("%s is printed %s and read back as %s, %v", formula, printed, again, err)
	}
	a, b := first.eval(values), again.eval(values)
	if math.Abs(a-b) > 1e-9*math.Abs(a) {
		t.Fatalf("%s is %v, printed %s it is %v", formula, a, printed, b)
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"h/6*(A0+4*Am+Ah)/1000", "-a^-2^b", "a--b", "min(a, max(1, 2), pi)", "1.5.2", "((a)", "floor(a)/0", "9999999999999999999^9"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, formula string) {
		n, err := parse(formula)
		if err != nil {
			return
		}
		printed := n.String()
		if len(printed) > longestFormula {
			return // brackets make it longer than what is read
		}
		again, err := parse(printed)
		if err != nil || again.String() != printed {
			t.Fatalf("%q is printed %q and read back as %v, %v", formula, printed, again, err)
		}
		values := map[string]float64{"a": 2, "b": 3, "h": 5, "A0": 7, "Am": 11, "Ah": 13}
		sees, err := pencil.With(formula, values)
		if got := n.evalWithin(0, values); err == nil && len(formula) < 20 && math.Abs(got-sees) > 1e-6*math.Abs(sees) && !delicate(formula) {
			t.Errorf("%q is %v, with the pencil %v", formula, got, sees)
		}
	})
}

// delicate formulas turn a rounding error into something larger: exact
// fractions and float64 need not agree on them.
func delicate(formula string) bool {
	return strings.ContainsAny(formula, "-^") || strings.Contains(formula, "floor") || strings.Contains(formula, "ceil") || strings.Contains(formula, "ln")
}
