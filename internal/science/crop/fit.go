package crop

import (
	"math"
	"sync"

	"rootbell/internal/base/facts"
)

// growthRow is a row of growth.csv of this crop; every crop has every row but
// start, cold, fruit and days.fit, which a test holds.
func (c Crop) growthRow(what string) (facts.Fact, bool) {
	return GrowthFacts.Find(facts.ID("growth." + c.id + "." + what))
}

func (c Crop) growthValue(what string, otherwise float64) float64 {
	if f, ok := c.growthRow(what); ok {
		return f.Value
	}
	return otherwise
}

// Lettuce tells whether the crop is one for which the model was made; any other
// is scaled to its row.
func (c Crop) Lettuce() bool {
	return c.id == "leaf_lettuce" || c.id == "butterhead" || c.id == "romaine"
}

// Heading tells whether the crop makes a head whose inner leaves can burn.
func (c Crop) Heading() bool { return c.id == "butterhead" || c.id == "romaine" }

// LongNight tells whether the crop wants a night in order to fruit.
func (c Crop) LongNight() bool { return c.growthValue("fruit", 0) > 0 }

// Band is a range that a crop's row gives.
type Band struct{ Low, High float64 }

// Mid is its middle.
func (b Band) Mid() float64 { return (b.Low + b.High) / 2 }

// DLI is the light of a day that the crop wants, in mol/m²/d: under it it grows
// slowly, over it it gains nothing.
func (c Crop) DLI() Band { return Band{c.growthValue("dli.low", 0), c.growthValue("dli.high", 0)} }

// Days are from the tub to the harvest, in the usual room and light.
func (c Crop) Days() Band { return Band{c.growthValue("days.low", 0), c.growthValue("days.high", 0)} }

// Harvest is what a plant usually brings, fresh, in g.
func (c Crop) Harvest() Band {
	return Band{c.growthValue("mass.low", 0), c.growthValue("mass.high", 0)}
}

// NurseryDays are from sowing to the tub at 20 to 22 °C; 0 for what comes as a
// plant.
func (c Crop) NurseryDays() float64 { return c.growthValue("nursery", 0) }

// WarmFrom is the air in °C under which the crop should not stand.
func (c Crop) WarmFrom() float64 { return c.growthValue("cold", grown(factGrowthAirCool)) }

// Growth is how the crop grows. Lettuce grows as published, with the leaf area
// that counts held to a limit. Any other crop is lettuce at another tempo: all
// rates are scaled until, in the usual room under the middle of its light, it
// has its usual harvest on the middle of its days. That is common practice, and
// no better than the row it is fitted to. Scaling photosynthesis alone was tried
// too: it makes these crops answer to light more than was measured (cilantro,
// parsley: Currey 2019; kale and spinach beside lettuce). It is worked out once
// for each crop.
func (c Crop) Growth() Model {
	if model, ok := growths[c.id]; ok {
		return model()
	}
	return Model{}
}

var growths = func() map[string]func() Model {
	out := map[string]func() Model{}
	for _, name := range Names() {
		c, _ := Find(name)
		out[c.id] = sync.OnceValue(c.fitted)
	}
	return out
}()

func (c Crop) unscaled() Model {
	m := Published()
	m.LeafMost = grown(factGrowthLeafMost)
	m.StartG = c.growthValue("start", m.StartG)
	m.ColdC = c.growthValue("cold", 0)
	m.FruitShare = c.growthValue("fruit", 0) / 100
	return m
}

// Fit is the season that a crop's row is taken to hold for.
type Fit struct {
	TempC, HoursADay, CO2PPM float64
	PPFD, UmolPerJoule       float64
	PerM2                    float64
	Days, HarvestG           float64
}

// Fit is the season of this crop's row.
func (c Crop) Fit() Fit {
	f := Fit{
		TempC: grown(factGrowthFitTemperature), HoursADay: grown(factGrowthFitHours), CO2PPM: grown(factGrowthFitCo2), UmolPerJoule: grown(factGrowthFitLight),
		Days: c.growthValue("days.fit", c.Days().Mid()), HarvestG: c.fact("harvest_mass").Value,
	}
	spacing := c.fact("spacing").Value
	if young, ok := Facts.Find(facts.ID("crop." + c.id + ".spacing.young")); ok {
		spacing = young.Value
	}
	f.PerM2 = 1e6 / (spacing * spacing)
	f.PPFD = c.DLI().Mid() * 1e6 / (3600 * f.HoursADay)
	return f
}

// TrimFact is the part of what is picked that is trimmed away before it is
// eaten, in %.
func TrimFact() facts.Fact { return GrowthFacts.Get(factHarvestTrim) }

// LeastPerM2 is how many plants stand on a square metre at their final spacing;
// a plant with more room than that does not use it.
func (c Crop) LeastPerM2() float64 {
	spacing := c.fact("spacing").Value
	if !(spacing > 0) {
		return 0
	}
	return 1e6 / (spacing * spacing)
}

// Of is what a model brings in that season, in g a plant.
func (f Fit) Of(m Model) float64 {
	light, night := m.Under(Air{f.TempC, f.CO2PPM, f.PPFD / f.UmolPerJoule}), m.Under(Air{f.TempC, f.CO2PPM, 0})
	const day = 86400
	s := m.Start(f.PerM2)
	for left := f.Days * day; left > 0; left -= day {
		lit := min(left, f.HoursADay*3600)
		s = night.Grow(light.Grow(s, lit), min(left, day)-lit)
	}
	return m.HarvestG(s, f.PerM2)
}

// The search for the tempo ends when it is known to a few billionths.
const (
	leastTempo, mostTempo = 0.01, 4.0
	tempoSteps            = 30
)

func (c Crop) fitted() Model {
	m := c.unscaled()
	if c.Lettuce() {
		return m
	}
	season := c.Fit()
	low, high := leastTempo, mostTempo
	for range tempoSteps {
		m.Tempo = math.Sqrt(low * high)
		if season.Of(m) < season.HarvestG {
			low = m.Tempo
		} else {
			high = m.Tempo
		}
	}
	return m
}
