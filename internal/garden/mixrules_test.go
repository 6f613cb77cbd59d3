package garden_test

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/solution"
)

// A page that does not ask for Mix gets, and pays for, none of it; whoever asks
// gets everything that was there before.
func TestMixOnlyAdds(t *testing.T) {
	for _, name := range []string{fern, salt, saltsSoft} {
		p := parsed(t, name, text(t, name))
		plain, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick, Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		with := assessed(t, p)
		for i, tub := range plain.Tubs {
			if tub.Mix != nil || with.Tubs[i].Mix == nil {
				t.Errorf("%s: %s", name, tub.Name)
			}
		}
		for _, n := range plain.Numbers {
			if strings.Contains(n.Key, ".mix.") {
				t.Errorf("%s: %s is worked out for nobody", name, n.Key)
			}
			if got := number(t, with, n.Key); fmt.Sprint(got.Value, got.PutIn) != fmt.Sprint(n.Value, n.PutIn) {
				t.Errorf("%s: %s is %v with Mix and %v without", name, n.Key, got.Value, n.Value)
			}
		}
		had := map[string]bool{}
		for _, f := range with.Findings {
			had[f.Code+f.Field+f.Text] = true
		}
		for _, f := range plain.Findings {
			if !had[f.Code+f.Field+f.Text] {
				t.Errorf("%s: %s is gone with Mix", name, f.Code)
			}
		}
	}
}

// What must be put right first leaves no mix, says so at its field, and stops no
// drill.
func TestMixStops(t *testing.T) {
	for _, c := range []struct {
		what  string
		edits []edit
		code  string
		field string
	}{
		{"softened water", []edit{{"tap.softened", "yes"}}, "tap-softened", "tap.softened"},
		{"a report out of balance", []edit{{"tap.calcium", "450 mg/L"}}, "tap-balance", "tap"},
		{"an absurd strip", []edit{{"tap.alkalinity", "900 mg/L"}}, "tap-absurd", "tap.alkalinity"},
		{"a label above the whole", []edit{{"fertilisers[3].label.K2O", "95 %"}}, "label-over-100", "fertilisers[3].label"},
		{"P told twice", []edit{{"fertilisers[3].label.P", "3 %"}}, "label-twice", "fertilisers[3].label.P2O5"},
		{"more nitrate than nitrogen", []edit{{"fertilisers[3].nitrate_n", "9 %"}}, "label-nitrogen", "fertilisers[3].label.N"},
		{"an unknown formula", []edit{{"fertilisers[1].salt", "NaCl"}}, "salt-unknown", "fertilisers[1].salt"},
		{"an unknown recipe", []edit{{"feed.recipe", "soup"}}, "recipe-unknown", "feed.recipe"},
		{"an EC that cannot be", []edit{{"feed.ec", "0.25 mS/cm"}}, "feed-ec-low", "feed.ec"},
		{"a powder dosed in spoons", []edit{{"fertilisers[3].dose", "1 tsp/gal"}, {"fertilisers[3].form", "dry"}}, "dose-by-spoon", "fertilisers[3].dose"},
	} {
		a := edited(t, fern, c.edits...)
		f, ok := found(a, c.code)
		if !ok || f.Level != finding.Stop || f.Field != c.field || f.Line == 0 || f.Hint == "" {
			t.Errorf("%s: %+v of %v", c.what, f, codes(a))
		}
		if a.Tubs[0].Mix != nil {
			t.Errorf("%s: mixed all the same", c.what)
		}
		if a.StopMixOf(0) == "" || a.StopOf(0) != "" {
			t.Errorf("%s: drilling stops for %q, mixing for %q", c.what, a.StopOf(0), a.StopMixOf(0))
		}
	}
	over := edited(t, fern, edit{"tubs[0].max_fill", "20 L"})
	if over.Tubs[0].Mix != nil || over.Tubs[1].Mix == nil || over.StopMixOf(0) == "" || over.StopMixOf(1) != "" {
		t.Errorf("a tub beyond its maximum: %v", codes(over))
	}
}

// Every finding names its field, a place in the text, and what to do.
func TestFindingsOfMixLeadSomewhere(t *testing.T) {
	for _, name := range plans(t) {
		_, a := standing(t, name, quantity.Metric)
		for _, f := range a.Findings {
			if f.Field == "" || f.Line == 0 || f.Hint == "" || !strings.HasSuffix(f.Text, ".") {
				t.Errorf("%s: %+v", name, f)
			}
		}
	}
}

// What is missing is on the shopping list once, with the teacher's price.
func TestWhatMixingBuys(t *testing.T) {
	body := string(text(t, fern))
	for _, line := range []string{"  - {name: potassium nitrate, salt: potassium-nitrate}\n", "  - {name: Epsom salt, salt: magnesium-sulfate}\n"} {
		if !strings.Contains(body, line) {
			t.Fatalf("the example has no %s", line)
		}
		body = strings.Replace(body, line, "", 1)
	}
	body = strings.Replace(body, "prices: {", "prices: {potassium_nitrate: 7.50, ", 1)
	a := assessed(t, parsed(t, "short of potassium", []byte(body)))
	count := 0
	for _, i := range a.Shopping {
		if i.Key != "potassium_nitrate" {
			continue
		}
		count++
		if i.Price == nil || *i.Price != 7.5 || !strings.Contains(i.Size, "g for one filling of all tubs") {
			t.Errorf("%+v", i)
		}
	}
	if count != 1 {
		t.Errorf("potassium nitrate stands %d times on the list: %v", count, a.Tubs[0].Mix.Misses)
	}
}

// What is listed for the class is what the numbers behind it say: amounts, their
// sums by nutrient, the EC and its band.
func TestMixListsItsNumbers(t *testing.T) {
	for _, name := range []string{bottle, bagsHard, saltsSoft, strips, fern, salt} {
		_, a := standing(t, name, quantity.Metric)
		for _, tub := range a.Tubs {
			m := tub.Mix
			base := func(key string) float64 {
				n, ok := a.Book.Find(key)
				if !ok {
					t.Errorf("%s: no number %s", name, key)
				}
				return n.Base
			}
			near := func(what string, got, want, within float64) {
				if math.Abs(got-want) > within {
					t.Errorf("%s, %s: %s is listed as %v, and its number is %v", name, tub.Name, what, got, want)
				}
			}
			for _, w := range m.Weigh {
				base(w.Key)
				near(w.Name, w.RoundedGrams, quantity.Gram.From(base(m.Key+".grams_"+solution.KeyOf(w.Name))), 1e-3)
				if w.Millilitres != nil {
					near(w.Name, *w.Millilitres, quantity.Millilitre.From(base(m.Key+".poured_"+solution.KeyOf(w.Name))), 1e-2)
				}
			}
			for _, e := range m.Elements {
				near(e.Word, e.HaveMgL, quantity.MilligramPerL.From(base(e.Key)), 0.051)
			}
			near("EC", *m.EC, quantity.MillisiemensPerCM.From(base(m.Key+".ec")), 1e-3)
			near("band", m.Band[1], quantity.MillisiemensPerCM.From(base(m.Key+".ec_high")), 1e-3)
			for _, s := range m.Steps {
				if s.Key != "" {
					base(s.Key)
				}
			}
		}
	}
}
