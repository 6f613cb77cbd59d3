package solution

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rootbell/internal/base/finding"
)

func TestSaltsAsWritten(t *testing.T) {
	for _, c := range []struct {
		text, salt string
		share      float64 // of the nutrient, percent
		n          Nutrient
	}{
		{"magnesium-sulfate", "magnesium-sulfate", 9.86, Magnesium},
		{"MgSO4.7H2O", "magnesium-sulfate", 9.86, Magnesium},
		{"MgSO4·7H₂O", "magnesium-sulfate", 9.86, Magnesium},
		{"MgSO4", "magnesium-sulfate", 20.19, Magnesium},
		{"MnSO4.4H2O", "manganese-sulfate", 24.6, Manganese},
		{"Ca(NO3)2", "calcium-nitrate", 24.42, Calcium},
		{"KH2PO4", "potassium-dihydrogen-phosphate", 22.76, Phosphorus},
	} {
		f, err := SaltWritten(c.text)
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		if got := 100 * f.Share[c.n]; f.Salt != c.salt || math.Abs(got-c.share) > 0.05 {
			t.Errorf("%s: %s with %.2f %%, want %s, %v (%s)", c.text, f.Salt, got, c.salt, c.share, ciaaw)
		}
	}
	for text, code := range map[string]string{"NaCl": "salt-unknown", "soap": "salt-unknown", "": "salt-unknown", "NO3-": "salt-charge"} {
		_, err := SaltWritten(text)
		if f, ok := err.(*Fault); !ok || f.Code != code || f.Hint == "" {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// Two label bags on hard water: what the bags bring, and acid that would rule.
func TestTwoBagsOnHardWater(t *testing.T) {
	a, err := Label{Name: "powder A", Declares: []Declared{{"N", 5}, {"P2O5", 12}, {"K2O", 26}, {"MgO", 6}, {"SO3", 10}, {"Fe", 0.3}, {"Mn", 0.05}, {"B", 0.05}, {"Zn", 0.015}, {"Cu", 0.01}, {"Mo", 0.01}}}.Read()
	if err != nil {
		t.Fatal(err)
	}
	b, err := Label{Name: "calcium nitrate", Declares: []Declared{{"N", 15.5}, {"NO3-N", 14.4}, {"NH4-N", 1.1}, {"Ca", 19}}}.Read()
	if err != nil {
		t.Fatal(err)
	}
	o := order(t)
	o.Shelf = []Fertiliser{a, b}
	o.Water = waterOf(t, Tap{PH: Exactly(7.4), Alkalinity: Exactly(240), Calcium: Exactly(90), Magnesium: Exactly(12), Sodium: Exactly(15), Chloride: Exactly(25), Sulfate: Exactly(30)})
	mix, err := Mix(o)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(mix.Band.EC-1.4) > 0.05 || mix.Portions[0].RoundedGrams <= 0 {
		t.Errorf("EC %v, %+v", mix.Band.EC, mix.Portions)
	}
	if !slices.Contains(codes(mix.Findings), "feed-P") {
		t.Errorf("nobody says what the acid does to phosphorus: %v", codes(mix.Findings))
	}
	// Half rain first, and the acid no longer rules.
	o.Water = o.Water.Blend(BlendFor(240, 150))
	thinned, err := Mix(o)
	if err != nil {
		t.Fatal(err)
	}
	if r := thinned.Acid.OpenMmolL / mix.Acid.OpenMmolL; math.Abs(r-0.5) > 0.02 {
		t.Errorf("half the alkalinity takes %v of the acid", r)
	}
}

// Single salts on soft water reach the target; the pH is the salts' own, and a
// trace of base brings it up.
func TestSaltsOnSoftWater(t *testing.T) {
	o := order(t)
	o.Water = waterOf(t, Tap{PH: Exactly(7), Alkalinity: Exactly(15), Calcium: Exactly(4), Magnesium: Exactly(1), Sodium: Exactly(3)})
	o.Tools.ScaleStepG = 0.01
	base, err := NewReagent("potassium bicarbonate", 100, 0, true)
	if err != nil {
		t.Fatal(err)
	}
	o.Base = &base
	mix, err := Mix(o)
	if err != nil {
		t.Fatal(err)
	}
	if mix.Acid.Why == "" || mix.Acid.DoseTodayML != 0 {
		t.Errorf("acid on soft water: %+v", mix.Acid)
	}
	for _, n := range []Nutrient{Nitrogen, Phosphorus, Potassium, Calcium, Magnesium} {
		if off := mix.MgL[n]/mix.Target.MgL[n] - 1; math.Abs(off) > 0.02 {
			t.Errorf("%s is off by %.1f %%", n, 100*off)
		}
	}
	// Each micronutrient is within what a syringe of half a millilitre can do.
	for _, n := range []Nutrient{Iron, Manganese, Boron, Zinc, Copper, Molybdenum} {
		if off := mix.MgL[n]/mix.Target.MgL[n] - 1; math.Abs(off) > 0.06 {
			t.Errorf("%s is off by %.1f %%", n, 100*off)
		}
	}
	if mix.BaseMmolL > 0 {
		at, _ := At(o.TemperatureC)
		if ph := at.Equilibrium(mix.Ions.Plus(base.row.ions.Times(mix.BaseMmolL/1000)), o.Air).PH; math.Abs(ph-o.PH) > 1e-6 {
			t.Errorf("with the base the pH is %v", ph)
		}
	} else if mix.PHAfterSalts < o.PH {
		t.Errorf("pH %v and no base", mix.PHAfterSalts)
	}
	for _, f := range mix.Findings {
		if f.Level == finding.Stop {
			t.Errorf("%s: %s", f.Code, f.Text)
		}
	}
}

// Strips only: no ions, an interval of alkalinity, and a dose for its lower end.
func TestStripsOnly(t *testing.T) {
	tap := Tap{PH: Between(7, 7.5), Alkalinity: Between(80, 120)}
	least, _ := tap.Ends()
	o := order(t)
	o.Water = waterOf(t, least)
	mix, err := Mix(o)
	if err != nil {
		t.Fatal(err)
	}
	o.Water = waterOf(t, tap)
	middle, err := Mix(o)
	if err != nil {
		t.Fatal(err)
	}
	if !(mix.Acid.OpenMmolL < middle.Acid.OpenMmolL) || mix.Acid.DoseTodayML <= 0 {
		t.Errorf("%v, %v", mix.Acid.OpenMmolL, middle.Acid.OpenMmolL)
	}
	if got := strings.Join(waterOf(t, tap).Assumed, " "); !strings.Contains(got, "most hard waters") {
		t.Errorf("what is assumed is not told: %s", got)
	}
}

// A tap that brings a micronutrient does not stand in the way of a weak feed.
func TestMicronutrientsOfTheTap(t *testing.T) {
	o := order(t)
	tap := hardTap()
	tap.Iron, tap.Boron = Exactly(0.3), Exactly(0.1)
	o.Water, o.EC = waterOf(t, tap), 0.9
	mix, err := Mix(o)
	if err != nil {
		t.Fatal(err)
	}
	if mix.MgL[Boron] < 0.1 || math.Abs(mix.Band.EC-0.9) > 0.03 {
		t.Errorf("boron %v mg/L, EC %v", mix.MgL[Boron], mix.Band.EC)
	}
	for name, c := range map[string]struct {
		change func(*Tap)
		level  finding.Level
	}{
		"boron that poisons": {func(t *Tap) { t.Boron = Exactly(2) }, finding.Stop},
		"much sodium":        {func(t *Tap) { t.Boron, t.Sodium = Figure{}, Exactly(80) }, finding.Warn},
	} {
		tap := hardTap()
		c.change(&tap)
		o.Water = waterOf(t, tap)
		mix, err := Mix(o)
		if err != nil {
			t.Fatal(err)
		}
		if at := slices.IndexFunc(mix.Findings, func(f finding.Finding) bool { return f.Code == "limit-by-water" }); at < 0 || mix.Findings[at].Level != c.level {
			t.Errorf("%s: %v", name, mix.Findings)
		}
	}
}
