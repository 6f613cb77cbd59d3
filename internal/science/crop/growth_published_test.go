package crop

import (
	"math"
	"testing"

	"rootbell/internal/base/ode"
)

// Where the values below come from.
const (
	henten = "equations and constants of Van Henten 1994 as read in public transcriptions; values worked out with scipy's DOP853 at 1e-11"
)

func near(t *testing.T, what string, got, want, within float64, source string) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %v, want %v (off by %+.2g; %s)", what, got, want, got-want, source)
	}
}

const daylight = 4.57 // µmol/J, Thimijan & Heins 1983

// One state: five rates.
func TestPublishedRates(t *testing.T) {
	const within = 1e-8 // as a share; the printed digits are ten
	m := Published()
	air := Air{TempC: 21, CO2PPM: 400, WattsM2: 250 / daylight}
	p := m.Under(air)
	dStore, dStructure := p.Rates(10, 30)
	share := func(what string, got, want float64) { t.Helper(); near(t, what, got/want, 1, within, henten) }
	share("photosynthesis", (1-math.Exp(-p.cover*30))*photosynthesis(air), 3.579987143e-4)
	share("growth", dStructure/30, 1.310152987e-6)
	share("respiration", p.burns*30, 7.521667675e-6)
	share("store", dStore, 1.874376278e-4)
	share("structure", dStructure, 3.930458961e-5)
}

type condition struct {
	name               string
	ppfd, co2, density float64
}

// follow is 16 h of light and 8 h of night at 21 °C for some days.
func follow(m Model, c condition, hours float64, days int, tolerance ode.Tolerance) State {
	light, night := m.Under(Air{21, c.co2, c.ppfd / daylight}), m.Under(Air{21, c.co2, 0})
	s := m.Start(c.density)
	for range days {
		s = light.GrowWithin(s, hours*3600, tolerance)
		s = night.GrowWithin(s, (24-hours)*3600, tolerance)
	}
	return s
}

var (
	condA = condition{"A", 150, 400, 16}
	condB = condition{"B", 250, 400, 16}
	condC = condition{"C", 250, 1000, 16}
	condD = condition{"D", 250, 400, 8}
)

// Trajectories, to 1e-6 of their mass at the usual precision.
func TestPublishedTrajectories(t *testing.T) {
	worst := 0.0
	m := Published()
	for _, row := range []struct {
		condition
		day                    int
		store, structure, leaf float64
		dry, shoot             float64
	}{
		{condA, 20, 23.502749, 76.312845, 5.323, 6.23847, 130.540},
		{condA, 28, 16.619548, 141.612407, 9.877, 9.88950, 206.938},
		{condA, 35, 13.282112, 189.881055, 13.244, 12.69770, 265.699},
		{condA, 50, 9.109195, 273.452747, 19.073, 17.66012, 369.538},
		{condB, 10, 24.210085, 17.923729, 1.250, 2.63336, 55.103},
		{condB, 20, 34.346559, 121.316785, 8.462, 9.72896, 203.578},
		{condB, 28, 22.509363, 213.446516, 14.888, 14.74724, 308.586},
		{condB, 35, 18.091176, 279.823394, 19.518, 18.61966, 389.616},
		{condB, 50, 12.457519, 394.927609, 27.546, 25.46157, 532.783},
		{condC, 28, 33.063149, 341.521359, 23.821, 23.41153, 489.886},
		{condC, 50, 18.438782, 611.638870, 42.662, 39.37985, 824.023},
		{condD, 28, 24.728651, 189.658134, 13.229, 26.79835, 560.755},
		{condD, 50, 13.151057, 379.607596, 26.478, 49.09483, 1027.309},
	} {
		s := follow(m, row.condition, 16, row.day, growthTolerance)
		worst = max(worst, math.Abs(s.Store/row.store-1), math.Abs(s.Structure/row.structure-1))
		exact := follow(m, row.condition, 16, row.day, ode.Tolerance{Relative: 1e-11, Absolute: 1e-13})
		near(t, row.name+" store", exact.Store, row.store, 1e-6, henten)
		near(t, row.name+" structure", exact.Structure, row.structure, 1e-6, henten)
		near(t, row.name+" leaf", m.LeafIndex(exact), row.leaf, 5e-4, henten)
		near(t, row.name+" dry", exact.DryG()/row.density, row.dry, 5.1e-6, henten)
		near(t, row.name+" shoot", m.ShootG(exact, row.density), row.shoot, 5.1e-4, henten)
		near(t, row.name+" shoot at the usual precision", m.ShootG(s, row.density), row.shoot, 1e-3, henten)
	}
	t.Logf("largest difference at the usual precision: %.1e", worst)
	if worst > 1e-6 {
		t.Errorf("off by %.1e of the mass (%s)", worst, henten)
	}
}
