package solution

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestGradesOfBags(t *testing.T) {
	const source = "computed with CIAAW 2021; the bag is read as N, P2O5, K2O"
	for _, c := range []struct {
		grade   string
		way     Way
		n, p, k float64 // percent of the element
	}{
		{"0-52-34", Oxides, 0, 22.69, 28.23},
		{"15.5-0-0", Oxides, 15.5, 0, 0},
		{"5-12-26", Oxides, 5, 5.237, 21.58},
		{"5,5-12-26", Oxides, 5.5, 5.237, 21.58},
		{"5-12-26", Elements, 5, 12, 26},
		{" 20 – 20 – 20 ", Oxides, 20, 8.729, 16.60},
	} {
		declared, err := ParseGrade(c.grade, c.way)
		if err != nil {
			t.Errorf("%s: %v", c.grade, err)
			continue
		}
		f, err := Label{Name: "a bag", Declares: declared}.Read()
		if err != nil {
			t.Errorf("%s: %v", c.grade, err)
			continue
		}
		for n, want := range map[Nutrient]float64{Nitrogen: c.n, Phosphorus: c.p, Potassium: c.k} {
			if got := 100 * f.Share[n]; math.Abs(got-want) > 0.005 {
				t.Errorf("%s: %.3f %% of %s, want %v (%s)", c.grade, got, n, want, source)
			}
		}
	}
	for _, bad := range []string{"", "5-12", "5-12-26-1", "a-b-c", "5--26", "5-12-260", "-5-12-26", "1e1-2-3"} {
		if got, err := ParseGrade(bad, Oxides); err == nil {
			t.Errorf("%q is read as %v", bad, got)
		}
	}
}

// A gram in a litre of fertiliser calcium nitrate, as its label has it.
func TestALabelInWater(t *testing.T) {
	f, err := Label{Name: "calcium nitrate", Declares: []Declared{{"N", 15.5}, {"NO3-N", 14.4}, {"NH4-N", 1.1}, {"Ca", 19}}}.Read()
	if err != nil {
		t.Fatal(err)
	}
	c := f.MgL(1)
	for n, want := range map[Nutrient]float64{Nitrogen: 155, NitrateN: 144, AmmoniumN: 11, Calcium: 190} {
		if math.Abs(c[n]-want) > 1e-9 {
			t.Errorf("%v mg/L of %s, want %v (labels, read)", c[n], n, want)
		}
	}
	// The charges of the label nearly balance by themselves: 14.4 % N as nitrate
	// against 19 % Ca and 1.1 % N as ammonium, 10.28 and 10.27 mmol/g.
	if f.Ions[Cl] > 1e-4 || f.Ions[Na] > 1e-4 {
		t.Errorf("too much was assumed: %v", f.Ions)
	}
}

func TestWaysToWriteOneLabel(t *testing.T) {
	oxides, err := Label{Name: "a", Declares: []Declared{{"N", 8}, {"P2O5", 10}, {"K2O", 20}, {"CaO", 7}, {"MgO", 3}, {"SO3", 5}}}.Read()
	if err != nil {
		t.Fatal(err)
	}
	elements, err := Label{Name: "b", Declares: []Declared{{"N", 8}, {"P", 4.3643}, {"K", 16.603}, {"Ca", 5.0029}, {"Mg", 1.80912}, {"S", 2.0023}}}.Read()
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range Nutrients() {
		if math.Abs(oxides.Share[n]-elements.Share[n]) > 1e-6 {
			t.Errorf("%s: %v as oxides, %v as elements", n, oxides.Share[n], elements.Share[n])
		}
	}
	// 4 % by volume in a liquid of 1.25 kg/L is 3.2 % by mass: 10 mL bring 400 mg.
	liquid, err := Label{Name: "c", Declares: []Declared{{"N", 4}, {"K2O", 6}}, Liquid: true, DensityKgL: 1.25, ByVolume: true}.Read()
	if err != nil {
		t.Fatal(err)
	}
	if got := liquid.MgL(liquid.Grams(10))[Nitrogen]; math.Abs(got-400) > 1e-9 || math.Abs(liquid.Millilitres(12.5)-10) > 1e-12 {
		t.Errorf("10 mL bring %v mg of nitrogen, want 400", got)
	}
}

func TestLabelsThatCannotBe(t *testing.T) {
	for _, c := range []struct {
		name  string
		label Label
		code  string
	}{
		{"over a hundred", Label{Declares: []Declared{{"N", 40}, {"P2O5", 40}, {"K2O", 30}}}, "label-over-100"},
		{"below nought", Label{Declares: []Declared{{"N", -1}}}, "label-percent"},
		{"not a number", Label{Declares: []Declared{{"N", math.NaN()}}}, "label-percent"},
		{"an unknown name", Label{Declares: []Declared{{"Nitrogen", 5}}}, "label-name"},
		{"the same twice", Label{Declares: []Declared{{"P", 5}, {"P2O5", 11}}}, "label-twice"},
		{"forms over the whole", Label{Declares: []Declared{{"N", 5}, {"NO3-N", 4}, {"NH4-N", 4}}}, "label-nitrogen"},
		{"nothing", Label{}, "label-empty"},
		{"a liquid without density", Label{Declares: []Declared{{"N", 5}}, Liquid: true}, "liquid-density"},
		{"a liquid of lead", Label{Declares: []Declared{{"N", 5}}, Liquid: true, DensityKgL: 11}, "liquid-density"},
		{"a powder by volume", Label{Declares: []Declared{{"N", 5}}, ByVolume: true}, "label-by-volume"},
	} {
		_, err := c.label.Read()
		f, ok := err.(*Fault)
		if !ok || f.Code != c.code || f.Hint == "" || f.Field == "" {
			t.Errorf("%s: %#v, want %s with field and hint", c.name, err, c.code)
		}
	}
}

// A salt that is written as a label comes out with the salt's own ions: the
// balance of charges finds nitrate and ammonium by itself.
func TestAssumedFormsAreThoseOfTheSalt(t *testing.T) {
	for _, id := range []string{"calcium-nitrate", "potassium-nitrate", "potassium-dihydrogen-phosphate", "ammonium-dihydrogen-phosphate", "ammonium-nitrate", "ammonium-sulfate", "magnesium-sulfate", "calcium-nitrate-double-salt"} {
		salt, _ := SaltNamed(id)
		label := Label{Name: id}
		for _, d := range []struct {
			name string
			n    Nutrient
		}{{"N", Nitrogen}, {"P", Phosphorus}, {"K", Potassium}, {"Ca", Calcium}, {"Mg", Magnesium}, {"S", Sulfur}} {
			if v := salt.Share[d.n]; v > 0 {
				label.Declares = append(label.Declares, Declared{d.name, 100 * v})
			}
		}
		f, err := label.Read()
		if err != nil {
			t.Fatal(err)
		}
		for i := range ionCount {
			if math.Abs(f.Ions[i]-salt.Ions[i]) > 1e-6*(1+salt.Ions[i]) {
				t.Errorf("%s: %s %v mol/g, the salt has %v", id, i.Symbol(), f.Ions[i], salt.Ions[i])
			}
		}
		if salt.Share[Nitrogen] > 0 && !strings.Contains(strings.Join(f.Assumed, " "), "nitrogen") {
			t.Errorf("%s: it is not told that the forms are assumed: %v", id, f.Assumed)
		}
	}
}

// Whatever a label says, its ions balance and none is negative.
func TestLabelsBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var l Label
		for _, name := range LabelNames() {
			if name == "P" || name == "K" || name == "Ca" || name == "Mg" || name == "S" || name == "SO4" || name == "Na" || !rapid.Bool().Draw(t, name) {
				continue
			}
			l.Declares = append(l.Declares, Declared{name, rapid.Float64Range(0, 9).Draw(t, "percent")})
		}
		f, err := l.Read()
		if err != nil {
			if _, ok := err.(*Fault); !ok {
				t.Fatal(err)
			}
			return
		}
		for i, v := range f.Ions {
			if v < 0 {
				t.Fatalf("%s: %v", Ion(i).Symbol(), v)
			}
		}
		if gap := f.Ions.strongCharge() - f.Ions[PO4]; math.Abs(gap) > 1e-12 {
			t.Fatalf("charge left over: %v", gap)
		}
	})
}

func FuzzParseGrade(f *testing.F) {
	for _, text := range []string{"15.5-0-0", "0–52–34", "5,5-1-2", "--", "1-2-3-4"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		declared, err := ParseGrade(text, Oxides)
		if err != nil {
			return
		}
		for _, d := range declared {
			if !(d.Percent >= 0 && d.Percent <= 100) {
				t.Fatalf("%q gives %v", text, declared)
			}
		}
	})
}

// Every salt of the trade gives no charge to the water, and its ions are what
// its formula holds.
func TestSaltsBalance(t *testing.T) {
	for _, id := range SaltNames() {
		f, _ := SaltNamed(id)
		formula, _, _ := SaltFormula(id)
		per := f.Ions.Times(formula.MolarMass())
		// Protons that phosphate, borate, molybdate or carbonate keep are not ions here.
		protons := -per.strongCharge() + 3*per[PO4] + 2*per[CO3]
		if protons < -1e-9 || math.Abs(protons-math.Round(protons)) > 1e-9 {
			t.Errorf("%s: a charge of %v is left over", id, -protons)
		}
		for element, ions := range map[string]float64{
			"K": per[K], "Ca": per[Ca], "Mg": per[Mg], "Na": per[Na], "P": per[PO4], "S": per[SO4], "Cl": per[Cl], "B": per[Borate],
		} {
			if math.Abs(formula.Count(element)-ions) > 1e-9 {
				t.Errorf("%s: %v of %s in the formula, %v as ions", id, formula.Count(element), element, ions)
			}
		}
		if id != "iron-edta" && math.Abs(formula.Count("N")-per[NO3]-per[NH4]) > 1e-9 {
			t.Errorf("%s: nitrogen", id)
		}
	}
	// The chelate's own nitrogen, 7.6 % of the salt, is not counted.
	edta, _ := SaltNamed("iron-edta")
	formula, _, _ := SaltFormula("iron-edta")
	if edta.Share[Nitrogen] != 0 || math.Abs(formula.Content("N")-0.0763) > 1e-4 || math.Abs(edta.Share[Iron]-0.1522) > 1e-4 {
		t.Errorf("iron EDTA: N %v counted, %v in it, Fe %v", edta.Share[Nitrogen], formula.Content("N"), edta.Share[Iron])
	}
}
