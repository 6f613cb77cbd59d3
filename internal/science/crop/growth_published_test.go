package crop

import (
	"math"
	"testing"

	"rootbell/internal/base/ode"
)

// Where the values below come from.
const (
	henten = "equations and constants of Van Henten 1994 as read in public copies; values worked out with scipy's DOP853 at 1e-11"
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

// Where the harvests below come from.
const (
	gavhane = "Gavhane et al. 2023, Sci. Rep. 13, 10.1038/s41598-023-36997-2, read: iceberg at 200 µmol, 275.5 g at 12 h, 393 g at 16 h, lighter at 20 h"
	cornell = "Cornell CEA lettuce handbook, read: 5 oz (142 g) 35 days from seed; that the light was 17 mol is from memory"
	currey  = "Currey 2019, 10.3390/agronomy9070389, read: 7 to 18 mol brought cilantro 154 % and parsley 120 % more"
	leafy   = "'Leaf lettuce yield is more sensitive …', read: 8 to 14 mol for 28 days, dry mass of kale, spinach and lettuce +47, +42 and +203 %"
	model   = "the equations themselves, worked out with scipy"
)

// How the model answers to a change, and what published crops did. These are
// bands, not fits: what is off is logged, and the bounds say how far off it may
// be before something else is wrong.
func TestPublishedHarvests(t *testing.T) {
	dry := func(ppfd, co2, temp, density, hours float64, days int) float64 {
		m := Published()
		light, night := m.Under(Air{temp, co2, ppfd / daylight}), m.Under(Air{temp, co2, 0})
		s := m.Start(density)
		for range days {
			s = night.Grow(light.Grow(s, hours*3600), (24-hours)*3600)
		}
		return s.DryG()
	}
	for _, days := range []int{28, 35, 40} {
		at12, at16, at20 := dry(200, 400, 22, 16, 12, days), dry(200, 400, 22, 16, 16, days), dry(200, 400, 22, 16, 20, days)
		t.Logf("day %d: 16 h over 12 h %.3f, published 1.426; 20 h over 16 h %.3f, published under 1: longer days are always better here, wrongly", days, at16/at12, at20/at16)
		near(t, "16 h over 12 h", at16/at12, 1.426, 0.05, gavhane)
	}
	raft := Published()
	end := follow(raft, condB, 16, 21, growthTolerance)
	t.Logf("raft lettuce on day 21: %.0f g here, 142 g published: over by half (%s)", raft.ShootG(end, 16), cornell)
	near(t, "raft lettuce, day 21", raft.ShootG(end, 16), 217, 0.5, model)
	near(t, "little light with CO2 as much light without", dry(150, 1000, 21, 16, 16, 50)/dry(250, 400, 21, 16, 16, 50), 1, 0.002, model)
	steady := func() float64 {
		m := Published()
		all := m.Under(Air{21, 400, 250 * 16. / 24 / daylight})
		s := m.Start(16)
		for range 50 {
			s = all.Grow(s, 86400)
		}
		return s.DryG()
	}
	near(t, "light of a day spread over 24 h", steady()/dry(250, 400, 21, 16, 16, 50), 1.159, 5e-4, model)
}

// Published answers to more light of other crops, which decided that a whole
// tempo is scaled and not photosynthesis alone. Two are missed; they are logged
// and stand in docs/growth.md.
func TestPublishedLightResponse(t *testing.T) {
	const near15 = 0.15 // as a share
	for _, row := range []struct {
		crop      string
		low, high float64 // mol/m²/d
		days      float64
		published float64
		met       bool
		source    string
	}{
		{"cilantro", 7, 18, 24.5, 2.54, true, currey},
		{"parsley", 7, 18, 31.5, 2.20, true, currey},
		{"spinach", 8, 14, 28, 1.42, true, leafy},
		{"kale", 8, 14, 28, 1.47, false, leafy},
		{"leaf lettuce", 8, 14, 28, 3.03, false, leafy},
	} {
		c, _ := Find(row.crop)
		f, m := c.Fit(), c.Growth()
		f.Days = row.days
		at := func(dli float64) float64 { f.PPFD = dli * 1e6 / (3600 * f.HoursADay); return f.Of(m) }
		got := at(row.high) / at(row.low)
		t.Logf("%s, %v to %v mol: %.2f times here, %.2f published", row.crop, row.low, row.high, got, row.published)
		if off := math.Abs(got/row.published - 1); (off <= near15) != row.met {
			t.Errorf("%s: off by %.0f %%, so that what is said of it in docs/growth.md is no longer so (%s)", row.crop, 100*off, row.source)
		}
	}
}

// How far one figure moves a harvest: condition B on day 28.
func TestPublishedSensitivity(t *testing.T) {
	base := func() (Model, condition, float64, float64) { return Published(), condB, 21, daylight }
	for _, row := range []struct {
		name   string
		change func(m *Model, temp, perJoule *float64)
		shoot  float64
	}{
		{"as it is", func(*Model, *float64, *float64) {}, 308.6},
		{"roots 15 %", func(m *Model, _, _ *float64) { m.RootShare = 0.15 }, 277.5},
		{"4.8 µmol/J", func(_ *Model, _, j *float64) { *j = 4.8 }, 298.1},
		{"start 0.05 g", func(m *Model, _, _ *float64) { m.StartG = 0.05 }, 280.4},
		{"start 0.20 g", func(m *Model, _, _ *float64) { m.StartG = 0.20 }, 335.6},
		{"18 °C", func(_ *Model, temp, _ *float64) { *temp = 18 }, 322.5},
		{"24 °C", func(_ *Model, temp, _ *float64) { *temp = 24 }, 285.2},
	} {
		m, c, temp, perJoule := base()
		row.change(&m, &temp, &perJoule)
		light, night := m.Under(Air{temp, c.co2, c.ppfd / perJoule}), m.Under(Air{temp, c.co2, 0})
		s := m.Start(c.density)
		for range 28 {
			s = night.Grow(light.Grow(s, 16*3600), 8*3600)
		}
		near(t, row.name, m.ShootG(s, c.density), row.shoot, 0.05, model)
	}
}
