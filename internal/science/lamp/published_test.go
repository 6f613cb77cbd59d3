package lamp

import (
	"math"
	"testing"
)

// Where the values below come from.
const (
	gavhane      = "Gavhane et al. 2023, Sci. Rep. 13, 10.1038/s41598-023-36997-2, read"
	frantz       = "Frantz 2004, JASHS 129:331, read"
	sharakshane  = "Sharakshane 2018, 10.1101/289280, read"
	thimijan     = "Thimijan & Heins 1983, HortScience 18:818, as quoted on bio.net plant-ed 2001, read"
	bruteForce   = "computed by another program, the first panel also by a sum over 160,000 patches; not printed anywhere"
	byHand       = "computed by hand"
	radiantTable = "configuration factor of equal parallel squares seen from a corner, textbooks of radiant heat, from memory"
)

func near(t *testing.T, what string, got, want, within float64, source string) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %v, want %v (off by %+.2g; %s)", what, got, want, got-want, source)
	}
}

// The light of a day: 12, 16 and 20 h of 200 µmol, 16 h of 1000.
func TestPublishedDLI(t *testing.T) {
	for _, row := range []struct {
		ppfd, hours, dli float64
		source           string
	}{
		{200, 12, 8.64, gavhane}, {200, 16, 11.52, gavhane}, {200, 20, 14.4, gavhane}, {1000, 16, 57.6, frantz},
	} {
		near(t, "DLI", DLI(row.ppfd, row.hours), row.dli, 1e-12, row.source)
	}
	near(t, "hours for 17 mol at 295.139 µmol", HoursFor(17, 295.139).Given, 16, 1e-4, byHand)
}

func TestPublishedLux(t *testing.T) {
	for _, row := range []struct {
		source    Source
		lux, ppfd float64
		within    float64
		from      string
	}{
		{WhiteLED, 11000, 165, 0.01, sharakshane}, {WhiteLED, 1000, 15, 0.001, sharakshane}, {Daylight, 108000, 2000, 1e-9, thimijan},
	} {
		got, ok := row.source.PPFD(row.lux)
		if !ok {
			t.Errorf("%s: no factor", row.source)
		}
		near(t, string(row.source), got, row.ppfd, row.within, row.from)
	}
}

// The light under lamps, in metres and µmol/m²/s.
func TestPublishedPPFD(t *testing.T) {
	for _, row := range []struct {
		name           string
		w, l, flux, h  float64
		x, y           float64
		ppfd, decimals float64
		source         string
	}{
		{"small lamp at 0.3 m", 0, 0, 100, 0.3, 0, 0, 353.678, 3, byHand},
		{"small lamp at 0.6 m", 0, 0, 100, 0.6, 0, 0, 88.419, 3, byHand},
		{"square panel, centre", 0.3, 0.3, 100, 0.3, 0, 0, 266.063, 3, bruteForce},
		{"square panel, under its corner", 0.3, 0.3, 100, 0.3, 0.15, 0.15, 153.924, 3, bruteForce},
		{"square panel, 0.3 m aside", 0.3, 0.3, 100, 0.3, 0.3, 0, 93.726, 3, bruteForce},
		{"long panel, centre", 0.6, 1.2, 300, 0.4, 0, 0, 226.442, 3, bruteForce},
		{"long panel, corner", 0.6, 1.2, 300, 0.4, 0.3, 0.6, 84.680, 3, bruteForce},
		{"strip, centre", 0, 1.2, 60, 0.3, 0, 0, 79.957, 3, bruteForce},
		{"strip, under its end", 0, 1.2, 60, 0.3, 0, 0.6, 41.410, 3, bruteForce},
		{"strip, 0.3 m aside", 0, 1.2, 60, 0.3, 0.3, 0, 26.760, 3, bruteForce},
		{"endless strip: φ/(2 L h)", 0, 1200, 60000, 0.3, 0, 0, 83.333, 3, byHand},
	} {
		lamp := Lamp{AlongXMM: 1000 * row.w, AlongYMM: 1000 * row.l, AboveMM: 1000 * row.h, FluxUmolS: row.flux}
		near(t, row.name, lamp.PPFD(1000*row.x, 1000*row.y), row.ppfd, 0.5*math.Pow(10, -row.decimals), row.source)
	}
	near(t, "corner factor 1, 1", corner(1, 1), 0.138532, 5e-7, radiantTable)
	near(t, "four endless corners", 4*corner(1e9, 1e9), 1, 1e-8, radiantTable)
}

// A panel taken for a small lamp is a third too bright in the middle.
func TestPublishedPanelIsNoPoint(t *testing.T) {
	panel := Lamp{AlongXMM: 300, AlongYMM: 300, AboveMM: 300, FluxUmolS: 100}
	point := Lamp{AboveMM: 300, FluxUmolS: 100}
	near(t, "ratio", point.PPFD(0, 0)/panel.PPFD(0, 0), 1.33, 0.005, bruteForce)
}

func TestPublishedElectricity(t *testing.T) {
	watts := WattsFor(200, 0.72, 2.5, 0.85)
	near(t, "watts", watts, 67.765, 5e-4, byHand)
	near(t, "kWh of 35 days", KWh(watts, 16, 35), 37.948, 5e-4, byHand)
	near(t, "photons of 44 W", FluxOfWatts(44), 66, 1e-9, byHand)
	// A mole of photons at 660 nm carries 0.119627/660e-9 J.
	near(t, "red and blue, µmol/J", RedBlueLED.UmolPerJoule(), 4/(3/(660/119.6266)+1/(450/119.6266)), 0.005, "Planck's law, CODATA constants, from memory")
}
