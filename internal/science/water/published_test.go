package water

import (
	"math"
	"testing"
)

// Where the values below come from.
const (
	fao3     = "FAO-56 example 3, its two values read in a function page of the NCL library"
	sirad    = "manual of the R package sirad, es(25.1, 19.1), read"
	fao2     = "FAO-56 example 2, from memory"
	fao4     = "FAO-56 example 4, from memory"
	fao5     = "FAO-56 examples 5 and 6, from memory"
	graaman  = "equations of Graamans et al. 2017, read; values worked out with another program that finds the leaf's temperature by bracketing"
	batavia  = "10.3389/fpls.2024.1411572 (2024), read; sums by hand"
	byHand   = "worked out by hand from the same formula"
	parPerJ  = 4.57 // µmol/J of daylight, Thimijan & Heins 1983
	fanned   = 100  // s/m
	humidity = 0.70
)

func near(t *testing.T, what string, got, want, within float64, source string) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %v, want %v (off by %+.2g; %s)", what, got, want, got-want, source)
	}
}

func TestPublishedVapour(t *testing.T) {
	near(t, "e°(24.5)", FullVapourKPa(24.5), 3.075, 5e-4, fao3)
	near(t, "e°(15)", FullVapourKPa(15), 1.705, 5e-4, fao3)
	near(t, "mean", (FullVapourKPa(24.5)+FullVapourKPa(15))/2, 2.39, 5e-3, fao3)
	near(t, "es(25.1, 19.1)", (FullVapourKPa(25.1)+FullVapourKPa(19.1))/2, 2.698918, 5e-7, sirad)
	near(t, "P(1800 m)", PressureKPa(1800), 81.8, 0.05, fao2)
	near(t, "γ(1800 m)", PsychrometricKPa(PressureKPa(1800)), 0.054, 5e-4, fao2)
	// The example's own psychrometer has the constant 0.000662.
	near(t, "ea by wet and dry bulb", FullVapourKPa(19.4)-0.000662*PressureKPa(1200)*(25.6-19.4), 1.89, 0.01, fao4)
	ea := (FullVapourKPa(18)*0.82 + FullVapourKPa(25)*0.54) / 2
	es := (FullVapourKPa(18) + FullVapourKPa(25)) / 2
	near(t, "ea", ea, 1.70, 0.005, fao5)
	near(t, "es", es, 2.62, 0.005, fao5)
	near(t, "VPD", es-ea, 0.91, 0.005, fao5)
	near(t, "VPD 21 °C 70 %", Room{21, 0.70}.DeficitKPa(), 0.74610, 5e-6, byHand)
	near(t, "VPD 24 °C 60 %", Room{24, 0.60}.DeficitKPa(), 1.19357, 5e-6, byHand)
}

func leafAt(room Room, ppfd, lai float64) Leaf {
	c := NewCanopy(room, ppfd, ppfd/parPerJ, fanned)
	return c.Breathe(lai)
}

func TestPublishedTranspiration(t *testing.T) {
	for _, row := range []struct {
		ppfd, lai  float64
		room       Room
		pores      float64
		leafC      float64
		gramsM2H   float64
		withinGram float64
	}{
		{200, 3, Room{21, humidity}, 255.000, 19.6945, 126.3, 0.05},
		{0, 3, Room{21, humidity}, 450.000, 19.5359, 78.5, 0.05},
		{600, 3, Room{24, 0.73}, 157.500, 23.2598, 208.8, 0.05},
	} {
		got := leafAt(row.room, row.ppfd, row.lai)
		t.Logf("%v µmol, %v °C: leaf %.5f °C, %.4f g/m²/h", row.ppfd, row.room.TempC, got.TempC, got.GM2H)
		near(t, "pores", PoreResistance(row.ppfd), row.pores, 1e-9, graaman)
		near(t, "leaf", got.TempC, row.leafC, 5e-5, graaman)
		near(t, "breathed out", got.GM2H, row.gramsM2H, row.withinGram, graaman)
	}
}

func TestPublishedDays(t *testing.T) {
	for _, row := range []struct {
		lai    float64
		room   Room
		ml     float64
		within float64
	}{
		{0.3, Room{21, 0.7}, 19.7, 0.05}, {1, Room{21, 0.7}, 61.4, 0.05}, {3, Room{21, 0.7}, 165.6, 0.05}, {3, Room{24, 0.5}, 298.0, 0.05},
	} {
		day := DayOf(leafAt(row.room, 200, row.lai), leafAt(row.room, 0, row.lai), 16)
		near(t, "mL a plant", day.PlantML(16), row.ml, row.within, graaman)
		if row.lai == 3 && row.room.TempC == 21 && (day.DarkShare < 0.22 || day.DarkShare > 0.24) {
			t.Errorf("%v of the water is drunk in the dark, want 22 to 24 %% (%s)", day.DarkShare, graaman)
		}
	}
}

func TestPublishedOpenWater(t *testing.T) {
	room := Room{21, 0.7}
	near(t, "open water, mm", OpenMMDay(room, StillAirMS()), 2.04, 0.006, byHand)
	near(t, "tank of 0.24 m², mL", LidMLDay(room, StillAirMS(), 0.24, 1), 490, 1, byHand)
	near(t, "with 5 % of gaps, mL", LidMLDay(room, StillAirMS(), 0.24, 0.05), 25, 0.6, byHand)
}

// What lettuce takes with ten litres.
func TestPublishedUptake(t *testing.T) {
	want := map[string]struct{ mmol, mgL, within float64 }{
		"N": {134, 187.7, 0.05}, "P": {17.2, 53.3, 0.05}, "K": {102, 398.8, 0.05}, "Ca": {31.3, 125.4, 0.1}, "Mg": {8.6, 20.9, 0.05},
		"Fe": {0.278, 1.55, 0.005}, "Mn": {0.0563, 0.309, 5e-4}, "Zn": {0.0545, 0.356, 5e-4}, "Cu": {0.0072, 0.0458, 5e-5},
	}
	for _, e := range Uptake() {
		near(t, e.Symbol+" in 10 L, mmol", 10*e.MmolL, want[e.Symbol].mmol, 1e-9, batavia)
		near(t, e.Symbol+", mg/L", e.MgL(), want[e.Symbol].mgL, want[e.Symbol].within, batavia)
	}
	if len(want) != len(Uptake()) {
		t.Errorf("%d elements, want %d", len(Uptake()), len(want))
	}
}

// Ten days of 1.2 L at an uptake strength of 1.2, with plain top-ups and without.
func TestPublishedECBalance(t *testing.T) {
	topped, left := Solution{40, 1.6}, Solution{40, 1.6}
	for range 10 {
		topped = topped.Drink(1.2, 1.2, 0).TopUp(1.2, 0)
		left = left.Drink(1.2, 1.2, 0)
	}
	near(t, "topped up", topped.ECmS, 1.240, 5e-4, byHand)
	near(t, "left alone, L", left.Litres, 28, 1e-9, byHand)
	near(t, "left alone", left.ECmS, 1.771, 5e-4, byHand)
}
