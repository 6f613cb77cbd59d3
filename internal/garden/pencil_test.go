package garden_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/base/working/pencil"
	"rootbell/internal/garden"
)

// Every number of every plan, in both unit systems: its sum, worked out by code
// that shares nothing with the one that computed it, rounds to what is shown.
func TestPencilReachesEveryNumber(t *testing.T) {
	for _, name := range plans(t) {
		for _, system := range systems {
			t.Run(fmt.Sprintf("%s/%s", name, system), func(t *testing.T) {
				_, a := standing(t, name, system)
				if len(a.Numbers) < 20 {
					t.Fatalf("only %d numbers", len(a.Numbers))
				}
				keys := map[string]bool{}
				for _, n := range a.Numbers {
					if keys[n.Key] {
						t.Errorf("%s stands twice", n.Key)
					}
					keys[n.Key] = true
					walked(t, n)
				}
				for _, n := range a.Numbers {
					for _, from := range n.From {
						if !keys[from] {
							t.Errorf("%s comes from %s, which is no number", n.Key, from)
						}
					}
				}
				finite(t, document(t, a))
			})
		}
	}
}

func walked(t teller, n garden.Number) {
	t.Helper()
	got, err := pencil.Round(n.PutIn, n.Decimals)
	if err != nil || got != n.Value {
		t.Errorf("%s is shown as %v, and %s gives %v, %v", n.Key, n.Value, n.PutIn, got, err)
	}
	for what, said := range map[string]string{"name": n.Name, "symbol": n.Symbol, "formula": n.Formula, "source": n.Source} {
		if strings.TrimSpace(said) == "" {
			t.Errorf("%s has no %s", n.Key, what)
		}
	}
	bases := []working.Basis{working.OfNature, working.OfTrade, working.AsTyped, working.BySearch}
	if !slices.Contains(bases, n.Basis) {
		t.Errorf("%s rests on %q", n.Key, n.Basis)
	}
	if n.Low != nil && (*n.Low > n.Value || *n.High < n.Value) {
		t.Errorf("%s: %v lies outside its range, %v to %v", n.Key, n.Value, *n.Low, *n.High)
	}
}

// finite fails on a number in the document that is none. encoding/json refuses
// NaN and infinities itself; this holds the other ways to write one.
func finite(t teller, doc []byte) {
	t.Helper()
	var whole any
	d := json.NewDecoder(bytes.NewReader(doc))
	if err := d.Decode(&whole); err != nil {
		t.Errorf("%v", err)
	}
	each(whole, func(v any) {
		switch v := v.(type) {
		case float64:
			if math.Abs(v) > 1e12 {
				t.Errorf("%v in the document is no measure of a garden", v)
			}
		case string:
			for _, word := range []string{"NaN", "Inf", "%!"} {
				if strings.Contains(v, word) {
					t.Errorf("%q in the document", v)
				}
			}
		}
	})
}

func each(v any, visit func(any)) {
	switch v := v.(type) {
	case map[string]any:
		for _, x := range v {
			each(x, visit)
		}
	case []any:
		for _, x := range v {
			each(x, visit)
		}
	default:
		visit(v)
	}
}

// The sum of a number that rests on others is the formula with those others in
// it: as many numbers as the formula has symbols, and the symbols gone.
func TestSumsHaveNoSymbolsLeft(t *testing.T) {
	for _, name := range plans(t) {
		_, a := standing(t, name, quantity.Metric)
		for _, n := range a.Numbers {
			if _, err := pencil.Eval(n.PutIn); err != nil {
				t.Errorf("%s: %s: %v", name, n.Key, err)
			}
			if len(n.From) > 0 && n.Formula == n.PutIn {
				t.Errorf("%s: %s comes from %v, and its formula is already a number", name, n.Key, n.From)
			}
		}
	}
}
