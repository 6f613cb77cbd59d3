package crop

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/ode"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/base/working/pencil"
)

var exact = ode.Tolerance{Relative: 1e-11, Absolute: 1e-13}

func drawAir(t *rapid.T) Air {
	return Air{rapid.Float64Range(6, 36).Draw(t, "temperature"), rapid.Float64Range(300, 2000).Draw(t, "co2"), rapid.Float64Range(0, 120).Draw(t, "watts")}
}

func drawModel(t *rapid.T) Model {
	c, _ := Find(rapid.SampledFrom(Names()).Draw(t, "crop"))
	m := c.Growth()
	m.Vigour = rapid.Float64Range(0.5, 1.5).Draw(t, "vigour")
	return m
}

// hungerShare is a store beside the structure under which a plant starves at
// night: growth then bends sharply, and steps see less of it.
const hungerShare = 0.02

// A season of any crop keeps to its brakes each day: no store under nought, no
// structure lost, no leaf over the limit; and what the usual precision leaves
// after fifty days is five millionths of the mass, in any air from 6 to 36 °C,
// and a thousandth where plants starve: growth bends where leaves begin to shade
// one another away and where a store runs out, and steps see less of a bend.
func TestSeasonsKeepTheirBrakes(t *testing.T) {
	worst, starved := 0.0, 0.0
	rapid.Check(t, func(t *rapid.T) {
		m, air := drawModel(t), drawAir(t)
		dark := air
		dark.WattsM2 = 0
		light, night := m.Under(air), m.Under(dark)
		hours, perM2 := rapid.Float64Range(8, 20).Draw(t, "hours"), rapid.Float64Range(8, 50).Draw(t, "density")
		s := m.Start(perM2)
		fine, hungry := s, false
		for day := range 50 {
			before := s
			s = Follow(s, []Span{{&light, hours * 3600}, {&night, (24 - hours) * 3600}})
			fine = night.GrowWithin(light.GrowWithin(fine, hours*3600, exact), (24-hours)*3600, exact)
			hungry = hungry || s.Store < hungerShare*s.Structure
			if s.Store < 0 || s.Structure < before.Structure || m.LeafIndex(s) > m.LeafMost+1e-12 {
				t.Fatalf("day %d: %+v after %+v", day, s, before)
			}
		}
		off := math.Abs(s.DryG()/fine.DryG() - 1)
		if hungry {
			starved = max(starved, off)
		} else {
			worst = max(worst, off)
		}
	})
	t.Logf("largest error of a season: %.1e, of one that starves: %.1e", worst, starved)
	if worst > 5e-6 || starved > 1e-3 {
		t.Error("that is too much")
	}
}

// In a long night the store runs out, and then nothing changes.
func TestLongNightEmptiesTheStore(t *testing.T) {
	m := Published()
	night := m.Under(Air{21, 400, 0})
	s := State{1, 100}
	for range 40 {
		s = night.Grow(s, 86400)
	}
	if s.Store != 0 || s.Structure < 100 || s.Structure > 101 {
		t.Errorf("after forty nights %+v", s)
	}
	if again := night.Grow(s, 86400); again.Structure != s.Structure || again.Store != 0 {
		t.Errorf("an empty store builds: %+v after %+v", again, s)
	}
}

// Growth stops at the mass that is picked, whole days or not.
func TestGrowthStopsAtTheHarvest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawModel(t)
		perM2, harvest := rapid.Float64Range(8, 50).Draw(t, "density"), rapid.Float64Range(20, 300).Draw(t, "harvest")
		light := m.Under(Air{21, 800, 60})
		light.Most = m.DryForHarvest(harvest, perM2)
		s := m.Start(perM2)
		if m.HarvestG(s, perM2) >= harvest {
			return
		}
		reached := false
		for range 200 {
			before := s
			s = light.Grow(s, 86400)
			got := m.HarvestG(s, perM2)
			if got > harvest*(1+1e-9) {
				t.Fatalf("%v g, to be picked at %v", got, harvest)
			}
			if reached = reached || got > harvest*(1-1e-9); reached && before == s {
				return
			}
		}
		if reached || m.Tempo == 1 && harvest < 100 {
			t.Fatalf("grows on to %v g, to be picked at %v", m.HarvestG(s, perM2), harvest)
		}
	})
}

// More light or CO2 never grows less; in the cold a basil stands still.
func TestPaceFollowsTheAir(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, air := drawModel(t), drawAir(t)
		s := State{rapid.Float64Range(0.1, 40).Draw(t, "store"), rapid.Float64Range(0.5, 200).Draw(t, "structure")}
		gain := func(a Air) float64 {
			p := m.Under(a)
			d, e := p.Rates(s.Store, s.Structure)
			return d + e
		}
		brighter, richer := air, air
		brighter.WattsM2 += 10
		richer.CO2PPM += 50
		if gain(brighter) < gain(air)-1e-15 || gain(richer) < gain(air)-1e-15 {
			t.Fatalf("%v, brighter %v, richer %v", gain(air), gain(brighter), gain(richer))
		}
	})
	basil, _ := Find("basil")
	m := basil.Growth()
	for _, row := range []struct{ tempC, part float64 }{{9, 0}, {10, 0}, {12.5, 0.5}, {15, 1}, {25, 1}} {
		if got := m.cold(row.tempC); math.Abs(got-row.part) > 1e-12 {
			t.Errorf("%v °C leave %v of the growth, want %v", row.tempC, got, row.part)
		}
	}
	if cold := m.Under(Air{9, 400, 50}); cold.Grow(State{1, 3}, 86400).Structure != 3 {
		t.Error("basil grows at 9 °C")
	}
	lettuce := Published()
	for _, a := range []Air{{4, 400, 50}, {41, 400, 50}, {21, 40, 50}, {21, 400, 0}} {
		if p := lettuce.Under(a); p.gain != 0 {
			t.Errorf("light is used in %+v", a)
		}
	}
}

// A stand of nothing stays nothing, and what is asked of it is nothing.
func TestNothingGrowsFromNothing(t *testing.T) {
	m := Published()
	light := m.Under(Air{21, 400, 50})
	if s := light.Grow(State{}, 86400); s != (State{}) {
		t.Errorf("%+v from nothing", s)
	}
	if s := light.Grow(State{1, 3}, 0); s != (State{1, 3}) {
		t.Errorf("%+v in no time", s)
	}
	var none Model
	still := none.Under(Air{21, 400, 50})
	if s := still.Grow(State{1, 3}, 86400); s != (State{1, 3}) || none.DryForHarvest(100, 16) != 0 {
		t.Errorf("the zero model grows to %+v", s)
	}
	if lettuce, _ := Find("leaf lettuce"); lettuce.HeightMM(0) != 0 || (Crop{}).HeightMM(10) != 0 {
		t.Error("nothing stands high")
	}
	if m.ShootG(State{1, 3}, 0) != 0 || m.RootG(State{1, 3}, 0) != 0 {
		t.Error("plants on no ground weigh something")
	}
	if (Crop{id: "none"}).Growth() != (Model{}) {
		t.Error("an unknown crop has a model")
	}
	for _, a := range []Air{{5, 400, 0}, {40, 400, 0}, {21, 0, 0}, {21, 6000, 0}, {21, 400, -1}, {math.NaN(), 400, 0}} {
		if a.Valid() {
			t.Errorf("%+v counts as valid", a)
		}
	}
}

// Every crop has its rows, each is used, and the fitted ones meet their row.
func TestEveryCropGrows(t *testing.T) {
	perCrop := []string{"days.low", "days.high", "mass.low", "mass.high", "dli.low", "dli.high", "nursery", "germination", "emergence", "seeds"}
	some := []string{"start", "cold", "fruit", "days.fit"}
	for _, name := range Names() {
		c, _ := Find(name)
		for _, what := range perCrop {
			if _, ok := c.growthRow(what); !ok {
				t.Errorf("%s has no row %s", name, what)
			}
		}
		for what, band := range map[string]Band{"light": c.DLI(), "days": c.Days(), "harvest": c.Harvest()} {
			if !(band.Low > 0 && band.Low <= band.High && band.Mid() >= band.Low && band.Mid() <= band.High) {
				t.Errorf("%s: %s %+v", name, what, band)
			}
		}
		m, fit := c.Growth(), c.Fit()
		if usual := c.Harvest(); fit.HarvestG < usual.Low || fit.HarvestG > usual.High {
			t.Errorf("%s: usual harvest %v g outside %+v", name, fit.HarvestG, usual)
		}
		got := fit.Of(m)
		t.Logf("%s: tempo %.3f, %.0f g on day %.0f at %.0f/m² under %.0f µmol, usual %.0f g", name, m.Tempo, got, fit.Days, fit.PerM2, fit.PPFD, fit.HarvestG)
		if !c.Lettuce() && math.Abs(got/fit.HarvestG-1) > 1e-5 {
			t.Errorf("%s is fitted to %v g and brings %v", name, fit.HarvestG, got)
		}
		if c.Lettuce() && m.Tempo != 1 || c.WarmFrom() < 10 || c.NurseryDays() < 0 {
			t.Errorf("%s: %+v", name, m)
		}
	}
	for _, f := range GrowthFacts.Rows() {
		parts := strings.SplitN(string(f.ID), ".", 3)
		c, isCrop := Find(strings.ReplaceAll(parts[min(1, len(parts)-1)], "_", " "))
		if isCrop && parts[0] == "growth" && !slices.Contains(perCrop, parts[2]) && !slices.Contains(some, parts[2]) {
			t.Errorf("%s of %s is a row that nobody asks for", f.ID, c.Name)
		}
	}
	romaine, _ := Find("romaine")
	tomato, _ := Find("dwarf cherry tomato")
	if !romaine.Heading() || tomato.Heading() || !tomato.LongNight() || romaine.LongNight() {
		t.Error("what burns and what wants a night are mixed up")
	}
}

func TestWhatIsSaidOfTheAir(t *testing.T) {
	for _, row := range []struct {
		crop  string
		tempC float64
		code  string
	}{
		{"leaf lettuce", 21, ""},
		{"leaf lettuce", 9, "air-cold"},
		{"leaf lettuce", 27, "air-warm"},
		{"leaf lettuce", 4, "air-outside"},
		{"leaf lettuce", 40, "air-outside"},
		{"basil", 12, "air-cold"},
		{"basil", 16, ""},
		{"basil", math.NaN(), "air-outside"},
	} {
		c, _ := Find(row.crop)
		code := ""
		for _, f := range c.CheckAir("place.air_temperature", row.tempC) {
			if code += f.Code; f.Text == "" || f.Hint == "" || f.Field != "place.air_temperature" {
				t.Errorf("%+v", f)
			}
		}
		if code != row.code {
			t.Errorf("%s at %v °C: said %q, want %q", row.crop, row.tempC, code, row.code)
		}
	}
}

// The formulas shown are those that compute.
func TestGrowthFormulasAreTheOnesThatCompute(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m, air := drawModel(t), drawAir(t)
		m.ColdC, m.LeafMost = 0, 0
		s := State{rapid.Float64Range(0.1, 40).Draw(t, "store"), rapid.Float64Range(0.5, 200).Draw(t, "structure")}
		g, ok := m.Show(working.NewBook(), s, air, 25)
		if !ok {
			t.Fatal("not shown")
		}
		p := m.Under(air)
		dStore, dStructure := p.Rates(s.Store, s.Structure)
		for what, pair := range map[string][2]float64{
			"built": {gramM2H.From(g.Built.Base), 3600 * dStructure}, "burnt": {gramM2H.From(g.Burnt.Base), 3600 * p.burns * s.Structure},
			"gain": {gramM2H.From(g.Gain.Base), 3600 * (dStore + dStructure)}, "shoot": {quantity.Gram.From(g.Shoot.Base), m.ShootG(s, 25)},
		} {
			if math.Abs(pair[0]-pair[1]) > 1e-10*(1+math.Abs(pair[1])) {
				t.Fatalf("%s: the formula gives %v, the code %v", what, pair[0], pair[1])
			}
		}
		seed := Seed{rapid.Float64Range(0, 1).Draw(t, "germination"), rapid.Float64Range(0, 6).Draw(t, "age"), rapid.Float64Range(5, 35).Draw(t, "seed temperature")}
		c, _ := Find(rapid.SampledFrom(Names()).Draw(t, "sown"))
		fresh := rapid.Float64Range(1, 400).Draw(t, "fresh")
		if high, shown := c.HeightMM(fresh), c.Height(working.NewBook(), grams(working.NewBook(), fresh)).Base; math.Abs(high-shown) > 1e-9*shown {
			t.Fatalf("%s of %v g is %v mm high, the formula gives %v", c.Name, fresh, high, shown)
		}
		k := rapid.IntRange(1, 6).Draw(t, "seeds")
		one, cell := c.ShowChance(working.NewBook(), seed, k)
		if math.Abs(one.Base-c.Chance(seed)) > 1e-12 || math.Abs(cell.Base-CellChance(c.Chance(seed), k)) > 1e-12 {
			t.Fatalf("seed %v, cell %v; the code %v, %v", one.Base, cell.Base, c.Chance(seed), CellChance(c.Chance(seed), k))
		}
	})
	m := Published()
	for _, row := range []struct {
		s     State
		air   Air
		perM2 float64
	}{{State{1, 3}, Air{3, 400, 50}, 16}, {State{0, 3}, Air{21, 400, 50}, 16}, {State{1, 3}, Air{21, 30, 50}, 16}, {State{1, 3}, Air{21, 400, 50}, 0}} {
		if _, ok := m.Show(working.NewBook(), row.s, row.air, row.perM2); ok {
			t.Errorf("%+v is shown", row)
		}
	}
}

// Every number comes out with a pencil in both unit systems.
func TestGrowthPencil(t *testing.T) {
	b := working.NewBook()
	basil, _ := Find("basil")
	m := basil.Growth()
	if _, ok := m.Show(b.In("day"), State{4.2, 13.7}, Air{21, 800, 42}, 25); !ok {
		t.Fatal("not shown")
	}
	basil.ShowChance(b, Seed{0.8, 1, 21}, 4)
	worked := 0
	for _, n := range b.Numbers() {
		if n.Law == nil {
			continue
		}
		worked++
		for _, system := range []quantity.System{quantity.Metric, quantity.US} {
			shown := n.Show(system)
			if got, err := pencil.Round(shown.PutIn, shown.Decimals); err != nil || got != shown.Value {
				t.Errorf("%s is shown as %v, and %s gives %v, %v", n.Key, shown.Value, shown.PutIn, got, err)
			}
		}
	}
	if worked < 13 {
		t.Errorf("only %d numbers with a formula", worked)
	}
}

func TestGrowingAllocatesNothing(t *testing.T) {
	m := Published()
	light := m.Under(Air{21, 400, 50})
	s := m.Start(16)
	if n := testing.AllocsPerRun(100, func() { s = light.Grow(s, 3600) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}
