package solution

import (
	"math"
	"testing"
)

// Where the values below come from.
const (
	phreeqc  = "PHREEQC 3 (USGS), phreeqc.dat with citrate of minteq.v4.dat; computed with it, not printed anywhere"
	crcKCl   = "CRC Handbook of Chemistry and Physics 5-73 (Pratt et al. 2001, Pure Appl. Chem. 73:1783), read"
	ciaaw    = "CIAAW, Standard Atomic Weights 2021, read; recomputed"
	fromMind = "from memory of the literature, not opened"
)

func at(t testing.TB, tempC float64) *Chemistry {
	t.Helper()
	c, ok := At(tempC)
	if !ok {
		t.Fatalf("no chemistry at %v °C", tempC)
	}
	return c
}

// tapOf is water of a given alkalinity and pH, of sodium alone or hard: 60 %
// Ca, 25 % Mg, 15 % Na by equivalents, with carbonate as the only anion.
func tapOf(alkalinity, ph float64, hard bool) Ions {
	eq := alkalinity / perMeq() / 1000
	w := Water{AlkalinityMgL: alkalinity, PH: ph, Ions: Ions{Na: eq}}
	if hard {
		w.Ions = Ions{Ca: 0.6 * eq / 2, Mg: 0.25 * eq / 2, Na: 0.15 * eq}
	}
	w.carbonate()
	return w.Ions
}

func pure(t testing.TB, name string) Reagent {
	t.Helper()
	r, err := NewReagent(name, 100, 1, true)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The fourteen doses of acid, closed and open to 420 ppm, in mmol/L.
func TestPublishedAcidDoses(t *testing.T) {
	const within = 0.01 // as the issue asks; the activity models differ by that much
	c, worst := at(t, 25), 0.0
	for _, row := range []struct {
		alkalinity, ph float64
		hard           bool
		acid           string
		target         float64
		closed, open   float64
		source         string
	}{
		{50, 7.5, false, "sulfuric", 5.8, 0.3798, 0.4983, phreeqc},
		{50, 7.5, false, "phosphoric", 5.8, 0.7302, 0.9567, phreeqc},
		{100, 7.8, false, "sulfuric", 5.8, 0.7642, 0.9979, phreeqc},
		{100, 7.8, false, "nitric", 5.8, 1.5312, 1.9957, phreeqc},
		{100, 7.8, false, "phosphoric", 5.8, 1.4672, 1.9126, phreeqc},
		{100, 7.8, false, "citric", 5.8, 0.6974, 0.9098, phreeqc},
		{100, 7.8, true, "sulfuric", 5.8, 0.7637, 0.9979, phreeqc},
		{100, 7.8, true, "phosphoric", 5.8, 1.4477, 1.8897, phreeqc},
		{150, 8.0, true, "nitric", 6.0, 2.0203, 2.9916, phreeqc},
		{150, 8.0, true, "phosphoric", 6.0, 1.8453, 2.7335, phreeqc},
		{200, 7.6, true, "sulfuric", 5.5, 1.7219, 1.9991, phreeqc},
		{200, 7.6, true, "phosphoric", 5.5, 3.3314, 3.8646, phreeqc},
		{250, 7.4, true, "nitric", 5.8, 3.7309, 4.9930, phreeqc},
		{300, 7.3, true, "phosphoric", 6.2, 2.6609, 5.1292, phreeqc},
	} {
		a, ok := c.Acidify(tapOf(row.alkalinity, row.ph, row.hard), pure(t, row.acid), row.target, OutdoorAir())
		if !ok {
			t.Errorf("%+v: no dose", row)
			continue
		}
		for what, pair := range map[string][2]float64{"closed": {a.ClosedMolL * 1000, row.closed}, "open": {a.OpenMolL * 1000, row.open}} {
			off := pair[0]/pair[1] - 1
			worst = max(worst, math.Abs(off))
			if math.Abs(off) > within {
				t.Errorf("%g mg/L, %s to %g, %s: %.4f mmol/L, want %.4f (%+.2f %%; %s)", row.alkalinity, row.acid, row.target, what, pair[0], pair[1], 100*off, row.source)
			}
		}
	}
	t.Logf("largest difference of 28 doses: %.2f %%", 100*worst)
}

// Waters that stand under the air, and the pH they come to.
func TestPublishedAeratedPH(t *testing.T) {
	const within = 0.02
	c := at(t, 25)
	acidified, _ := c.Acidify(tapOf(100, 7.8, false), pure(t, "sulfuric"), 5.8, OutdoorAir())
	rebound := tapOf(100, 7.8, false).Plus(Ions{SO4: acidified.ClosedMolL})
	for _, row := range []struct {
		name   string
		water  Ions
		ppm    float64
		ph     float64
		source string
	}{
		{"acidified to 5.8 in a closed bottle, then aired", rebound, 420, 7.84, phreeqc},
		{"the same in a full classroom", rebound, 1000, 7.47, phreeqc},
		{"pure water", Ions{}, 420, 5.60, phreeqc},
		{"alkalinity 50", tapOf(50, 7.5, false), 420, 8.17, phreeqc},
		{"alkalinity 100", tapOf(100, 7.5, false), 420, 8.46, phreeqc},
		{"alkalinity 150", tapOf(150, 7.5, false), 420, 8.63, phreeqc},
		{"alkalinity 200", tapOf(200, 7.5, false), 420, 8.74, phreeqc},
		{"alkalinity 300", tapOf(300, 7.5, false), 420, 8.90, phreeqc},
	} {
		got := c.Equilibrium(row.water, Air{row.ppm}).PH
		t.Logf("%s: %.3f, published %.2f", row.name, got, row.ph)
		if math.Abs(got-row.ph) > within {
			t.Errorf("%s: pH %.3f, want %.2f (%s)", row.name, got, row.ph, row.source)
		}
	}
}

// Recipes in pure water, by what they hold in mmol/L.
var recipeIons = map[string]Ions{
	"Hoagland & Arnon no. 1": {K: 6, Ca: 5, Mg: 2, NO3: 15, PO4: 1, SO4: 2},
	"Hoagland & Arnon no. 2": {NH4: 1, K: 6, Ca: 4, Mg: 2, NO3: 14, PO4: 1, SO4: 2},
	"Knop":                   {K: 4.310, Ca: 6.094, Mg: 1.014, NO3: 14.661, PO4: 1.837, SO4: 1.014},
	"Steiner":                {K: 7, Ca: 4.5, Mg: 2, NO3: 12, PO4: 1, SO4: 3.5},
	"Yamazaki lettuce":       {NH4: .5, K: 4, Ca: 1, Mg: .5, NO3: 6, PO4: .5, SO4: .5},
	"Sonneveld & Straver":    {NH4: 1.25, K: 11, Ca: 4.5, Mg: 1, NO3: 19, PO4: 2, SO4: 1.125},
}

func TestPublishedEC(t *testing.T) {
	const within = 0.04 // as the issue asks: published ion models agree no better
	for _, row := range []struct {
		name   string
		ions   Ions
		ec     float64 // mS/cm at 25 °C
		within float64
		source string
	}{
		{"KCl 0.01 mol/kg", Ions{K: 0.01, Cl: 0.01}, 1.40823, 0.02, crcKCl},
		{"KCl 0.1 mol/kg", Ions{K: 0.1, Cl: 0.1}, 12.8246, 0.02, crcKCl},
		{"NaCl 0.01 M", Ions{Na: 0.01, Cl: 0.01}, 1.185, within, fromMind + ": CRC Handbook"},
		{"CaCl2 0.005 M", Ions{Ca: 0.005, Cl: 0.01}, 1.2036, within, fromMind + ": CRC Handbook"},
		{"KNO3 0.01 M", Ions{K: 0.01, NO3: 0.01}, 1.328, within, fromMind + ": CRC Handbook"},
		{"Hoagland & Arnon no. 1", recipeIons["Hoagland & Arnon no. 1"].Times(1e-3), 2.171, within, phreeqc},
		{"Hoagland & Arnon no. 2", recipeIons["Hoagland & Arnon no. 2"].Times(1e-3), 2.090, within, phreeqc},
		{"Knop", recipeIons["Knop"].Times(1e-3), 2.003, within, phreeqc},
		{"Steiner", recipeIons["Steiner"].Times(1e-3), 2.142, within, phreeqc},
		{"Yamazaki lettuce", recipeIons["Yamazaki lettuce"].Times(1e-3), 0.918, within, phreeqc},
		{"Sonneveld & Straver", recipeIons["Sonneveld & Straver"].Times(1e-3), 2.637, within, phreeqc},
		{"Hoagland no. 1, a tenth", recipeIons["Hoagland & Arnon no. 1"].Times(0.1e-3), 0.248, within, phreeqc},
		{"Hoagland no. 1, a quarter", recipeIons["Hoagland & Arnon no. 1"].Times(0.25e-3), 0.595, within, phreeqc},
		{"Hoagland no. 1, half", recipeIons["Hoagland & Arnon no. 1"].Times(0.5e-3), 1.142, within, phreeqc},
		{"Hoagland no. 1, three quarters", recipeIons["Hoagland & Arnon no. 1"].Times(0.75e-3), 1.664, within, phreeqc},
		{"Hoagland no. 1, double", recipeIons["Hoagland & Arnon no. 1"].Times(2e-3), 4.089, within, phreeqc},
	} {
		got := EC25(row.ions, Closed)
		off := got/row.ec - 1
		t.Logf("%s: %.4f mS/cm, published %.4f (%+.2f %%)", row.name, got, row.ec, 100*off)
		if math.Abs(off) > row.within {
			t.Errorf("%s: %.4f mS/cm, want %.4f (%s)", row.name, got, row.ec, row.source)
		}
	}
}
