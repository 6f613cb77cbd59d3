package solution

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestReagentsThatCannotBe(t *testing.T) {
	for _, c := range []struct {
		name             string
		percent, density float64
		solid            bool
		code             string
	}{
		{"vinegar", 5, 1, false, "acid-name"},
		{"phosphoric", 0, 1.05, false, "acid-strength"},
		{"phosphoric", 120, 1.05, false, "acid-strength"},
		{"phosphoric", math.NaN(), 1.05, false, "acid-strength"},
		{"phosphoric", 8.5, 0, false, "acid-density"},
		{"phosphoric", 8.5, 5, false, "acid-density"},
	} {
		_, err := NewReagent(c.name, c.percent, c.density, c.solid)
		if f, ok := err.(*Fault); !ok || f.Code != c.code || f.Hint == "" {
			t.Errorf("%+v: %v", c, err)
		}
	}
}

// Who may handle what; the strengths are those of the labelling rules, from
// memory, and the rule for pupils is common practice.
func TestHazards(t *testing.T) {
	for _, c := range []struct {
		name    string
		percent float64
		burns   bool
		pupils  bool // of 12 years
	}{
		{"phosphoric", 8.5, false, false},
		{"phosphoric", 25, true, false},
		{"sulfuric", 14, false, false},
		{"sulfuric", 15, true, false},
		{"nitric", 5, true, false},
		{"nitric", 3, false, false},
		{"potassium hydroxide", 2, true, false},
		{"potassium hydroxide", 1, false, false},
		{"citric", 5, false, true},
		{"citric", 6, false, false},
		{"citric", 100, false, false},
		{"potassium bicarbonate", 1, false, false},
	} {
		r, err := NewReagent(c.name, c.percent, 1.1, false)
		if err != nil {
			t.Fatal(err)
		}
		if r.Burns() != c.burns || r.PupilsMay(12) != c.pupils || r.PupilsMay(10) {
			t.Errorf("%s of %v %%: burns %v, pupils %v", c.name, c.percent, r.Burns(), r.PupilsMay(12))
		}
	}
	nitric, _ := NewReagent("nitric", 60, 1.37, false)
	if got := codes(nitric.Findings("acids", 0)); !slices.Equal(got, []string{"acid-burns", "acid-oxidises"}) {
		t.Errorf("%v", got)
	}
}

// Moles to the bottle and back, and more acid is never a higher pH.
func TestDosesAreMonotone(t *testing.T) {
	c := at(t, 20)
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom([]string{"sulfuric", "phosphoric", "nitric", "citric"}).Draw(t, "acid")
		r, err := NewReagent(name, rapid.Float64Range(1, 100).Draw(t, "percent"), rapid.Float64Range(0.95, 1.9).Draw(t, "density"), false)
		if err != nil {
			t.Fatal(err)
		}
		mol := rapid.Float64Range(1e-6, 2).Draw(t, "mol")
		if back := r.Mol(r.Millilitres(mol)); math.Abs(back/mol-1) > 1e-12 {
			t.Fatalf("%v mol come back as %v", mol, back)
		}
		w := tapOf(rapid.Float64Range(20, 400).Draw(t, "alkalinity"), rapid.Float64Range(6.5, 8.3).Draw(t, "pH"), rapid.Bool().Draw(t, "hard"))
		air := Air{rapid.SampledFrom([]float64{0, 420, 1000}).Draw(t, "air")}
		before := 15.0
		for _, dose := range []float64{0, 1e-4, 1e-3, 5e-3} {
			ph := c.Equilibrium(w.Plus(r.row.ions.Times(dose)), air).PH
			if ph >= before {
				t.Fatalf("%v mol/L more: pH %v, before %v", dose, ph, before)
			}
			before = ph
		}
		target := rapid.Float64Range(5, 6.2).Draw(t, "target")
		a, ok := c.Acidify(w, r, target, OutdoorAir())
		if !ok || math.Abs(a.PHAfterAir-target) > 1e-6 || a.OpenMolL < a.ClosedMolL || a.PHAtOnce > target+1e-9 {
			t.Fatalf("%+v", a)
		}
	})
}

// Whatever is in the water, the charges balance at the pH found and nothing is
// lost or negative.
func TestEquilibriumKeepsWhatIsThere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var w Ions
		for i := range w {
			w[i] = rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(0, 0.02), rapid.Float64Range(0, 0.3)).Draw(t, Ion(i).Symbol())
		}
		c, _ := At(rapid.Float64Range(0, 40).Draw(t, "temperature"))
		s := c.Equilibrium(w, Closed)
		if math.IsNaN(s.PH) || s.PH < 0 || s.PH > 14 {
			t.Fatalf("%v", s)
		}
		if s.PH > 0.01 && s.PH < 13.9 && math.Abs(s.charge) > 1e-8 {
			t.Fatalf("%v: a charge of %v is left", s, s.charge)
		}
		for i, total := range s.Totals() {
			if s.free[i] < 0 || math.Abs(total-w[i]) > 1e-8*(1+w[i]) {
				t.Fatalf("%v: %s %v of %v", s, Ion(i).Symbol(), total, w[i])
			}
		}
		if ec := s.Conductivity(); !(ec >= 0) || math.IsInf(ec, 0) {
			t.Fatalf("EC %v", ec)
		}
	})
}

func TestTemperaturesOutsideTheConstants(t *testing.T) {
	for tempC, want := range map[float64]bool{-1: false, 0: true, 40: true, 41: false} {
		c, ok := At(tempC)
		if ok != want || c.TemperatureC() < 0 || c.TemperatureC() > 40 {
			t.Errorf("%v °C: %v, taken as %v", tempC, ok, c.TemperatureC())
		}
	}
	if c, ok := At(math.NaN()); ok || c.TemperatureC() != 25 {
		t.Error("not a temperature")
	}
}
