package pencil

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestRoundIsThatOfDecimals(t *testing.T) {
	for _, c := range []struct {
		sum      string
		decimals int
		want     float64
	}{
		{"0.285", 2, 0.29},
		{"1.005", 2, 1.01},
		{"-0.285", 2, -0.29},
		{"2.5", 0, 3},
		{"-2.5", 0, -3},
		{"2.675*10", 1, 26.8},
		{"1/3", 3, 0.333},
		{"2/3", 3, 0.667},
		{"sqrt(2)", 4, 1.4142},
		{"0.4999999999999999999", 0, 0},
	} {
		if got, err := Round(c.sum, c.decimals); err != nil || got != c.want {
			t.Errorf("%s to %d decimals is %v, %v; want %v", c.sum, c.decimals, got, err, c.want)
		}
	}
}

func TestSumsThatAreNone(t *testing.T) {
	for _, sum := range []string{
		"", " ", "1+", "+1", "*2", "(1", "1)", "()", "1 2", "1(2)", "(1)(2)", "2pi", "1..2", "1.2.3", ".", "1e5", "0x10", "1_000",
		"x", "sin(1)", "sqrt", "sqrt()", "sqrt(1, 2)", "min(1,)", "min(,1)", "(1, 2)", "1, 2", "pi(2)", "2^", "-", "1%2", "½", "min 1",
		"1/0", "1/(0.3-0.1-0.2)", "0^-1", "sqrt(-1)", "ln(0)", "ln(-1)", "exp(1000)", "(-8)^0.5", strings.Repeat("1+", longest) + "1",
	} {
		if v, err := Eval(sum); err == nil {
			t.Errorf("%q gives %v", sum, v)
		}
	}
}

func TestSymbolsTakeTheirValues(t *testing.T) {
	got, err := With("h/6*(A0+4*Am+Ah)", map[string]float64{"h": 4, "A0": 816, "Am": 1344, "Ah": 2000})
	if err != nil || math.Abs(got-16384.0/3) > 1e-11 {
		t.Errorf("got %v, %v", got, err)
	}
	if got, err := With("b", map[string]float64{"a": 1}); err == nil {
		t.Errorf("a symbol without a value gave %v", got)
	}
}

// What is written down with every bracket is the sum without rules of
// precedence, so Go's own arithmetic decides.
func TestPrecedenceAgainstBrackets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := number(t, "a"), number(t, "b"), number(t, "c")
		for _, pair := range [][2]string{
			{a + "+" + b + "*" + c, a + "+(" + b + "*" + c + ")"},
			{a + "-" + b + "-" + c, "(" + a + "-" + b + ")-" + c},
			{a + "/" + b + "/" + c, "(" + a + "/" + b + ")/" + c},
			{a + "/" + b + "*" + c, "(" + a + "/" + b + ")*" + c},
			{"-" + a + "^2", "-(" + a + "^2)"},
			{a + "*-" + b, "-(" + a + "*" + b + ")"},
			{"(" + a + "+" + b + ")^2", a + "^2+2*" + a + "*" + b + "+" + b + "^2"},
			{"(" + a + "-" + b + ")*(" + a + "+" + b + ")", a + "^2-" + b + "^2"},
			{"max(" + a + "," + b + ")+min(" + a + "," + b + ")", a + "+" + b},
			{"ceil(" + a + "/" + b + ")", "-floor(-" + a + "/" + b + ")"},
			{"sqrt(" + a + "^2)", a},
		} {
			left, err := Eval(pair[0])
			right, err2 := Eval(pair[1])
			if err != nil || err2 != nil || left != right {
				t.Fatalf("%s = %v (%v), %s = %v (%v)", pair[0], left, err, pair[1], right, err2)
			}
		}
	})
}

func number(t *rapid.T, label string) string {
	return rapid.StringMatching(`[1-9][0-9]{0,3}(\.[0-9]{1,3})?`).Draw(t, label)
}

func FuzzEval(f *testing.F) {
	for _, s := range []string{"1+2", "-2^-3^2", "min(1, max(2, 3))", "9^9^9", "((((1))))", "sqrt(", "1/0", "pi*ln(exp(2))", "0.1.2", "floor(-1/3)"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, sum string) {
		v, err := Eval(sum)
		if err != nil {
			return
		}
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Errorf("%q gives %v", sum, v)
		}
		if w, err := Eval("(" + sum + ")"); len(sum)+2 <= longest && (err != nil || w != v) {
			t.Errorf("%q gives %v, in brackets %v, %v", sum, v, w, err)
		}
	})
}
