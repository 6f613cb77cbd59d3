package solution

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rootbell/internal/base/finding"
)

func saltsNamed(t testing.TB, names ...string) []Fertiliser {
	t.Helper()
	out := make([]Fertiliser, len(names))
	for i, n := range names {
		f, ok := SaltNamed(n)
		if !ok {
			t.Fatalf("no salt %s", n)
		}
		out[i] = f
	}
	return out
}

var wholeShelf = []string{
	"calcium-nitrate-double-salt", "ammonium-nitrate", "potassium-nitrate", "potassium-dihydrogen-phosphate", "magnesium-sulfate",
	"iron-edta", "manganese-sulfate", "boric-acid", "sodium-molybdate", "zinc-sulfate", "copper-sulfate",
}

// hardTap is an invented report of a hard tap.
func hardTap() Tap {
	return Tap{
		PH: Exactly(7.6), Alkalinity: Exactly(120), EC: Exactly(0.36), Calcium: Exactly(45), Magnesium: Exactly(8), Sodium: Exactly(14),
		Potassium: Exactly(2), Chloride: Exactly(20), Sulfate: Exactly(25), NitrateN: Exactly(2), Chlorine: Exactly(0.4),
	}
}

func waterOf(t testing.TB, tap Tap) Water {
	t.Helper()
	w, err := tap.Water()
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func phDown(t testing.TB) Reagent {
	t.Helper()
	r, err := NewReagent("phosphoric", 8.5, 1.05, false)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func order(t testing.TB) Order {
	t.Helper()
	recipe, err := RecipeNamed(DefaultRecipe)
	if err != nil {
		t.Fatal(err)
	}
	acid := phDown(t)
	return Order{
		Litres: 25, Water: waterOf(t, hardTap()), Shelf: saltsNamed(t, wholeShelf...), MgL: recipe.MgL, EC: 1.4, PH: 5.8,
		Acid: &acid, Air: OutdoorAir(), TemperatureC: 20, Tools: Tools{ScaleStepG: 0.1}, Field: "fertilisers",
	}
}

// The whole of a mix hangs together: the EC asked for comes out of what is
// weighed, the pH before the salts is the target, and every share is told.
func TestAWholeMix(t *testing.T) {
	o := order(t)
	b, err := Mix(o)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range b.Portions {
		t.Logf("%-22s %8.4f g, %8.4f g measured, %6.2f mL, stock %+v", p.Name, p.Grams, p.RoundedGrams, p.Millilitres, p.Stock)
	}
	t.Logf("strength %.3f, EC %.3f, acid %+v", b.Strength, b.Band.EC, b.Acid)
	t.Logf("pH after the salts %.2f, gypsum %.2f, brushite %.2f", b.PHAfterSalts, b.Gypsum, b.Brushite)
	for _, f := range b.Findings {
		t.Logf("%s %s: %s %s", f.Level, f.Code, f.Text, f.Hint)
	}
	at := slices.IndexFunc(b.Findings, func(f finding.Finding) bool { return f.Code == "feed-P" })
	if at < 0 || !strings.Contains(b.Findings[at].Text, "the acid for this water") || !strings.Contains(b.Findings[at].Hint, "less acid") {
		t.Errorf("nobody says that the phosphorus is the acid's: %v", b.Findings)
	}
	if math.Abs(b.Band.EC-1.4) > 0.03 || !b.Band.Holds(1.4) {
		t.Errorf("EC %v, wanted 1.4", b.Band.EC)
	}
	if math.Abs(b.Acid.PHAfterAir-5.8) > 1e-6 {
		t.Errorf("the lasting dose comes to pH %v under the air, wanted 5.8", b.Acid.PHAfterAir)
	}
	if b.Acid.PHAtOnce >= 5.8 || b.Acid.PHRebound < 5.8+0.5 {
		t.Errorf("at once pH %v, and the closed dose comes back to %v: want below 5.8, and half a unit above", b.Acid.PHAtOnce, b.Acid.PHRebound)
	}
	// What the salts and the acid bring is what the tub holds: phosphorus by hand.
	by := o.Water.Content[Phosphorus] + b.Acid.Adds[Phosphorus]
	for j, p := range b.Portions {
		by += 1000 * p.RoundedGrams * o.Shelf[j].Share[Phosphorus] / o.Litres
	}
	if math.Abs(by-b.MgL[Phosphorus]) > 1e-9 {
		t.Errorf("phosphorus %v mg/L, by hand %v", b.MgL[Phosphorus], by)
	}
}

func TestWhenNoAcidIsDosed(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Order)
		why    string
	}{
		{"unknown alkalinity", func(o *Order) { o.Water = waterOf(t, Tap{}) }, "not known"},
		{"soft water", func(o *Order) { o.Water = waterOf(t, Tap{Alkalinity: Exactly(59), PH: Exactly(7)}) }, "under 60"},
		{"no target", func(o *Order) { o.PH = 0 }, "No pH"},
		{"a target above the water", func(o *Order) { o.PH = 8.9 }, "does not bring"},
	} {
		o := order(t)
		o.Tools = Tools{}
		c.change(&o)
		b, err := Mix(o)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		if a := b.Acid; !strings.Contains(a.Why, c.why) || a.DoseTodayML != 0 || a.OpenML != 0 || a.OpenMmolL != 0 {
			t.Errorf("%s: %+v", c.name, a)
		}
	}
}

// Without an acid the molarity stands, with a worked example and no dose.
func TestWithoutAnAcid(t *testing.T) {
	o := order(t)
	o.Acid = nil
	b, err := Mix(o)
	if err != nil {
		t.Fatal(err)
	}
	a := b.Acid
	if a.Missing == "" || a.DoseTodayML != 0 || a.OpenMmolL <= a.ClosedMmolL || a.ClosedMmolL <= 0 {
		t.Errorf("%+v", a)
	}
	example := phDown(t)
	if want := example.Millilitres(a.OpenMmolL / 1000 * o.Litres); math.Abs(a.OpenML-want) > 1e-9 {
		t.Errorf("%v mL as an example, by hand %v", a.OpenML, want)
	}
	if b.MgL[Phosphorus] > 1.05*b.Target.MgL[Phosphorus] {
		t.Errorf("phosphorus of an acid that is not there counts: %v", b.MgL[Phosphorus])
	}
}

// In a planted tub no dose takes the pH at once under 5.2.
func TestPlantedTubsAreDosedWithCare(t *testing.T) {
	o := order(t)
	o.Planted = true
	b, err := Mix(o)
	if err != nil {
		t.Fatal(err)
	}
	if b.Acid.PHAtOnce < LeastPHAtOnce()-1e-6 || b.Acid.DoseTodayML >= b.Acid.OpenML {
		t.Errorf("%+v", b.Acid)
	}
}

// Citric acid is for trims: little of it, and the pH comes back.
func TestCitricAcidOnlyTrims(t *testing.T) {
	o := order(t)
	citric, err := NewReagent("citric", 100, 0, true)
	if err != nil {
		t.Fatal(err)
	}
	o.Acid = &citric
	b, err := Mix(o)
	if err != nil {
		t.Fatal(err)
	}
	if mg := 1000 * b.Acid.DoseTodayML / o.Litres; mg > 25*(1+1e-9) || b.Acid.PHAfterAir < 8 {
		t.Errorf("%v mg/L of citric acid, pH %v afterwards", mg, b.Acid.PHAfterAir)
	}
	if !slices.ContainsFunc(b.Findings, func(f finding.Finding) bool { return f.Code == "acid-citric" }) {
		t.Errorf("no word on citric acid: %v", b.Findings)
	}
}

func TestOrdersThatCannotBe(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Order)
		code   string
	}{
		{"no water", func(o *Order) { o.Litres = 0 }, "tub-empty"},
		{"no feed", func(o *Order) { o.Shelf = nil }, "shelf-empty"},
		{"no target", func(o *Order) { o.MgL = Content{} }, "target-empty"},
		{"a target below nought", func(o *Order) { o.MgL[Calcium] = -1 }, "target-absurd"},
		{"an EC under the water's", func(o *Order) { o.EC = 0.1 }, "feed-ec-low"},
		{"an EC of brine", func(o *Order) { o.EC = 40 }, "feed-ec-high"},
	} {
		o := order(t)
		c.change(&o)
		_, err := Mix(o)
		f, ok := err.(*Fault)
		if !ok || f.Code != c.code || f.Hint == "" {
			t.Errorf("%s: %v, want %s with a hint", c.name, err, c.code)
		}
	}
}
