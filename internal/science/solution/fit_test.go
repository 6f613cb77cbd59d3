package solution

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/leastsq"
)

func targetOf(t testing.TB, mgL Content) Target {
	t.Helper()
	target, err := NewTarget(mgL)
	if err != nil {
		t.Fatal(err)
	}
	return target
}

var lettuce = Content{Nitrogen: 150, Phosphorus: 31, Potassium: 210, Calcium: 90, Magnesium: 24}

// The target of the published lettuce recipe from its own salts, against scipy's
// nnls and glpsol, which agree.
func TestPublishedFit(t *testing.T) {
	const source = "scipy.optimize.nnls and glpsol, computed; molar masses of " + ciaaw
	shelf := saltsNamed(t, "calcium-nitrate-double-salt", "ammonium-nitrate", "potassium-nitrate", "potassium-dihydrogen-phosphate", "magnesium-sulfate")
	f, err := targetOf(t, lettuce).FitTo(shelf, Content{})
	if err != nil {
		t.Fatal(err)
	}
	for j, want := range []float64{485.33, 37.99, 441.84, 136.20, 243.37} {
		if got := 1000 * f.GramsPerLitre[j]; math.Abs(got-want) > 0.02 {
			t.Errorf("%s: %.2f mg/L, want %v (%s)", shelf[j].Name, got, want, source)
		}
	}
	if f.Residual > 1e-9 {
		t.Errorf("residual %v, want none (%s)", f.Residual, source)
	}
}

// The same without ammonium nitrate and without weights, which does not come out.
func TestPublishedUnweightedFit(t *testing.T) {
	const source = "scipy.optimize.nnls and glpsol, computed"
	shelf := saltsNamed(t, "calcium-nitrate-double-salt", "potassium-nitrate", "potassium-dihydrogen-phosphate", "magnesium-sulfate")
	rows := []Nutrient{Nitrogen, Phosphorus, Potassium, Calcium, Magnesium}
	a, right := leastsq.NewMatrix(len(rows), len(shelf)), make([]float64, len(rows))
	for i, n := range rows {
		right[i] = lettuce[n]
		for j, f := range shelf {
			a.Set(i, j, f.Share[n])
		}
	}
	r, err := leastsq.NonNegative(a, right)
	if err != nil {
		t.Fatal(err)
	}
	for j, want := range []float64{514.86, 457.53, 123.23, 243.37} {
		if math.Abs(r.X[j]-want) > 0.02 {
			t.Errorf("%s: %.2f mg/L, want %v (%s)", shelf[j].Name, r.X[j], want, source)
		}
	}
	if math.Abs(r.Residual-9.3) > 0.05 {
		t.Errorf("residual %.3f mg/L, want 9.3 (%s)", r.Residual, source)
	}
}

// Whatever stands on the shelf, no amount is negative, no limit is passed and
// no single fertiliser more or less would come nearer.
func TestTheFitIsTheBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var shelf []Fertiliser
		for _, id := range rapid.SliceOfNDistinct(rapid.SampledFrom(SaltNames()), 1, 8, rapid.ID[string]).Draw(t, "shelf") {
			f, _ := SaltNamed(id)
			shelf = append(shelf, f)
		}
		var mgL Content
		for n, v := range lettuce {
			mgL[n] = v * rapid.Float64Range(0.2, 2).Draw(t, "part")
		}
		target, err := NewTarget(mgL)
		if err != nil {
			t.Fatal(err)
		}
		f, err := target.FitTo(shelf, Content{})
		if err != nil {
			t.Fatal(err)
		}
		cost := func(grams []float64) (sum float64, kept bool) {
			c, _ := Sum(shelf, grams)
			for _, n := range aims {
				if mgL[n] > 0 {
					sum += math.Pow(weightOf(n)*(c[n]/mgL[n]-1), 2)
				}
			}
			kept = true
			for _, l := range target.Limits {
				kept = kept && c[l.Of] <= l.MostMgL*(1+1e-9)
			}
			return sum, kept
		}
		best, kept := cost(f.GramsPerLitre)
		if !kept || math.Abs(math.Sqrt(best)-f.Residual) > 1e-9 {
			t.Fatalf("limits kept %v, residual %v, told %v", kept, math.Sqrt(best), f.Residual)
		}
		for j := range shelf {
			for _, by := range []float64{-0.01, 0.01} {
				grams := slices.Clone(f.GramsPerLitre)
				if grams[j] < 0 {
					t.Fatalf("%v g/L", grams[j])
				}
				grams[j] = max(0, grams[j]+by)
				if other, ok := cost(grams); ok && other < best-1e-7 {
					t.Fatalf("%s %+v g/L comes nearer: %v, not %v", shelf[j].Name, by, other, best)
				}
			}
		}
	})
}

// What is not reached says what is in the way and what to buy.
func TestWhatIsNotReached(t *testing.T) {
	for _, c := range []struct {
		name  string
		shelf []string
		base  Content
		of    Nutrient
		level finding.Level
		way   string
		buy   string
	}{
		{"no calcium at all", []string{"potassium-nitrate", "ammonium-nitrate", "potassium-dihydrogen-phosphate", "magnesium-sulfate"}, Content{}, Calcium, finding.Stop, "nothing on the shelf brings calcium", "calcium nitrate"},
		{"hard water helps lettuce over the line", []string{"potassium-nitrate", "potassium-dihydrogen-phosphate", "magnesium-sulfate"}, Content{Calcium: 42}, Calcium, finding.Warn, "nothing on the shelf brings calcium", "calcium nitrate"},
		{"no magnesium", []string{"calcium-nitrate-double-salt", "ammonium-nitrate", "potassium-nitrate", "potassium-dihydrogen-phosphate"}, Content{}, Magnesium, finding.Stop, "nothing on the shelf brings magnesium", "magnesium"},
		{"potassium only with chloride", []string{"calcium-nitrate-double-salt", "ammonium-nitrate", "potassium-chloride", "ammonium-dihydrogen-phosphate", "magnesium-sulfate"}, Content{}, Potassium, finding.Warn, "limit of 140 mg/L chloride", "potassium"},
		{"a tap full of calcium", []string{"ammonium-nitrate", "potassium-nitrate", "potassium-dihydrogen-phosphate", "magnesium-sulfate"}, Content{Calcium: 140}, Calcium, finding.Warn, "water and acid alone bring 140", ""},
		{"phosphorus tied to potassium", []string{"calcium-nitrate-double-salt", "potassium-dihydrogen-phosphate", "ammonium-nitrate", "magnesium-sulfate"}, Content{Potassium: 205}, Potassium, finding.Warn, "monopotassium phosphate is needed for its phosphorus", ""},
	} {
		shelf, target := saltsNamed(t, c.shelf...), targetOf(t, lettuce)
		f, err := target.FitTo(shelf, c.base)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		misses := target.Misses(shelf, c.base, f)
		at := slices.IndexFunc(misses, func(m Miss) bool { return m.Of == c.of })
		if at < 0 {
			t.Errorf("%s: not told: %+v", c.name, misses)
			continue
		}
		m := misses[at]
		if m.Level != c.level || !strings.Contains(m.InTheWay, c.way) || !strings.Contains(strings.Join(m.Buy, ", "), c.buy) {
			t.Errorf("%s: %+v, want %s, %q, %q", c.name, m, c.level, c.way, c.buy)
		}
		if text := m.Finding("fertilisers"); text.Text == "" || text.Hint == "" || text.Code != "feed-"+c.of.Symbol() {
			t.Errorf("%s: %+v", c.name, text)
		}
	}
}

// The search among whole steps is as good as trying them all.
func TestWeighingIsAsGoodAsTryingAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ids := []string{"calcium-nitrate-double-salt", "potassium-nitrate", "potassium-dihydrogen-phosphate", "magnesium-sulfate"}
		var shelf []Fertiliser
		for _, id := range ids {
			f, _ := SaltNamed(id)
			shelf = append(shelf, f)
		}
		target, err := NewTarget(lettuce.Times(rapid.Float64Range(0.5, 1.5).Draw(t, "strength")))
		if err != nil {
			t.Fatal(err)
		}
		fit, err := target.FitTo(shelf, Content{})
		if err != nil {
			t.Fatal(err)
		}
		litres := rapid.Float64Range(15, 60).Draw(t, "litres")
		tools := Tools{ScaleStepG: rapid.SampledFrom([]float64{0.01, 0.1}).Draw(t, "scale")}
		portions, got := target.Weigh(tools, shelf, fit.GramsPerLitre, litres, Content{})
		cost := func(c Content) float64 { r := rounding{target: target, mgL: c}; return r.cost() }
		best := math.Inf(1)
		var each func(j int, c Content)
		each = func(j int, c Content) {
			if j == len(shelf) {
				best = min(best, cost(c))
				return
			}
			p := portions[j]
			if p.step == 0 {
				each(j+1, c.Plus(shelf[j].MgL(p.RoundedGrams/litres)))
				return
			}
			for k := math.Ceil(p.Grams/p.step - 2); k <= p.Grams/p.step+2; k++ {
				if k >= 1 {
					each(j+1, c.Plus(shelf[j].MgL(k*p.step/litres)))
				}
			}
		}
		each(0, Content{})
		// Moves of two at a time can miss what only three would find: by little.
		if ours := cost(got); ours > best+1e-6 {
			t.Fatalf("cost %v, the best of all is %v", ours, best)
		}
	})
}

// Each portion is one that the tools can measure.
func TestPortionsCanBeMeasured(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		step := rapid.SampledFrom([]float64{0.01, 0.1, 1}).Draw(t, "scale")
		tools := Tools{ScaleStepG: step}
		f, _ := SaltNamed("potassium-nitrate")
		grams := rapid.Float64Range(0.02, 50).Draw(t, "grams")
		target, _ := NewTarget(Content{Nitrogen: 100})
		portions, _ := target.Weigh(tools, []Fertiliser{f}, []float64{grams / 20}, 20, Content{})
		p := portions[0]
		whole := func(v, step float64) bool { return math.Abs(v/step-math.Round(v/step)) < 1e-6 }
		if s := p.Stock; s != nil {
			if grams >= 20*step || s.Grams < 20*step-1e-9 || !whole(s.Grams, step) || !whole(s.PourML, 0.5) || s.PourML > 4*60+1e-9 {
				t.Fatalf("%v g by a scale of %v g: %+v", grams, step, *s)
			}
			if back := s.PourML / 1000 / s.Litres * s.Grams / s.Thin; math.Abs(back-p.RoundedGrams) > 1e-9 {
				t.Fatalf("the stock gives %v g, told %v", back, p.RoundedGrams)
			}
			return
		}
		if grams < 20*step || !whole(p.RoundedGrams, step) {
			t.Fatalf("%v g by a scale of %v g: %+v", grams, step, p)
		}
	})
}

func TestTargetsAndRecipesByName(t *testing.T) {
	if _, err := RecipeNamed("soup"); err == nil || err.(*Fault).Hint == "" {
		t.Errorf("%v", err)
	}
	for _, id := range RecipeNames() {
		r, err := RecipeNamed(id)
		if err != nil {
			t.Fatal(err)
		}
		if gap := r.Ions.strongCharge() - r.Ions[PO4]; math.Abs(gap) > 0.4e-3 {
			t.Errorf("%s: %v mol/L of charge is left over", id, gap)
		}
		half, _ := r.At(0.5)
		if math.Abs(half[Nitrogen]*2-r.MgL[Nitrogen]) > 1e-9 {
			t.Errorf("%s: half of it holds %v mg/L", id, half[Nitrogen])
		}
	}
	// The ions of a target that names no salts are close to the recipe's own.
	r, _ := RecipeNamed(DefaultRecipe)
	a, b := EC25(IonsOf(r.MgL), Closed), EC25(r.Ions, Closed)
	if math.Abs(a/b-1) > 0.03 {
		t.Errorf("EC %v from the target, %v from the salts", a, b)
	}
}

// A class without a scale counts its own spoons.
func TestSpoons(t *testing.T) {
	shelf := saltsNamed(t, "potassium-nitrate")
	tools := Tools{Spoons: []Spoon{{"small spoon", "potassium-nitrate", 2.5}}}
	p, c := targetOf(t, Content{Potassium: 200}).Weigh(tools, shelf, []float64{0.5}, 25, Content{})
	if p[0].Spoons != 5 || math.Abs(p[0].RoundedGrams-12.5) > 1e-12 || math.Abs(c[Potassium]-1000*12.5/25*shelf[0].Share[Potassium]) > 1e-9 {
		t.Errorf("%+v, %v mg/L", p[0], c[Potassium])
	}
}

// What bags warn of is told with its code and its words.
func TestHazardsOfSalts(t *testing.T) {
	for _, f := range saltsNamed(t, "calcium-nitrate-double-salt", "boric-acid", "copper-sulfate", "ammonium-nitrate") {
		if len(f.Hazards()) == 0 {
			t.Errorf("%s: nothing is told", f.Name)
		}
		for _, h := range append(f.Hazards(), BleachHazards()...) {
			if h.Says == "" {
				t.Errorf("%s: %s says nothing", f.Name, h.Code)
			}
		}
	}
	for _, f := range saltsNamed(t, "ammonium-nitrate") {
		if got := codes(f.Findings("fertilisers[0]")); !slices.Equal(got, []string{"salt-restricted"}) {
			t.Errorf("%v", got)
		}
	}
}
