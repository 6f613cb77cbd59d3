package garden_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/garden"
)

// What others measured or worked out comes out of a plan.
func TestPublishedOxygen(t *testing.T) {
	for _, row := range []struct {
		source, keys, key string
		want, within      float64
	}{
		// A little salt is in every feed: at 0.2 mS/cm it takes 0.005 mg/L.
		{"Benson & Krause 1980, 1984: fresh water at 30 °C and one atmosphere", "place: {water_temperature: 30 °C}\nfeed: {ec: 0.2 mS/cm}", "oxygen.oxygen_full", 7.559, 0.012},
		{"Benson & Krause 1980, 1984: fresh water at 25 °C and one atmosphere", "place: {water_temperature: 12 °C}\nfeed: {ec: 0.2 mS/cm}", "oxygen.oxygen_full", 8.263, 0.012},
		{"FAO Irrigation and Drainage Paper 56, example 2: 1800 m", "place: {altitude: 1800 m}", "oxygen.air_pressure", 81.8, 0.05},
	} {
		if got := number(t, under(t, row.keys), "tubs.One."+row.key).Value; math.Abs(got-row.want) > row.within {
			t.Errorf("%s: %v, want %v", row.source, got, row.want)
		}
	}
}

// The oxygen of the example, worked out with a pencil from the plan alone: what
// is brought is what is taken, and what is in the water lasts so long.
func TestOxygenByHand(t *testing.T) {
	_, a := standing(t, "../../examples/fernhollow.yaml", systems[0])
	o, tub := a.Tubs[0].Oxygen, a.Tubs[0]
	root := 100.0 / (22.5 * 0.93) * 0.07 // g dry of a lettuce of 100 g fresh
	taken := 8 * root * 30 * math.Exp2(0.3) * 3600 * 32 / 1e6
	brought := func(perMetre float64) float64 { // mg/h for each mg/L under full water
		return 2 * 60 * 0.2786 * 1000 * perMetre * (*tub.FillDepthMM - 25) / 1000 / 9.092 * math.Pow(1.024, 5)
	}
	for what, pair := range map[string][2]float64{
		"steady":      {o.SteadyMgL, o.SaturateMgL - taken/brought(0.025)},
		"poor stone":  {o.LowMgL, o.SaturateMgL - taken/brought(0.01)},
		"need":        {o.NeedLMin, 2 * taken / (brought(0.025) * (o.SaturateMgL - 6))},
		"to 4":        {o.To4H, (o.LowMgL - 4) * *tub.VolumeSolution / taken},
		"to 3":        {o.To3H, (o.LowMgL - 3) * *tub.VolumeSolution / taken},
		"to 2":        {o.To2H, (o.LowMgL - 2) * *tub.VolumeSolution / taken},
		"water":       {o.HeadMM, *tub.FillDepthMM - 25},
		"one lesson":  {o.QuietMin, 60},
		"full plants": {float64(tub.Plants.Limits[garden.ByOxygen]), math.Floor(brought(0.025) * (o.SaturateMgL - 6) / (taken / 8))},
	} {
		if math.Abs(pair[0]-pair[1]) > 0.02*math.Abs(pair[1])+0.01 {
			t.Errorf("%s: %v, by hand %v", what, pair[0], pair[1])
		}
	}
}

// Each thing about air is said, at its place.
func TestWhatIsSaidOfAir(t *testing.T) {
	const plan = "../../examples/fernhollow.yaml"
	for _, c := range []struct {
		code, field string
		edits       []edit
	}{
		{"air-assumed", "tubs[0]", []edit{{"tubs[0].air.flow", ""}}},
		{"oxygen-short", "tubs[0].air.flow", []edit{{"tubs[0].air.flow", "0 L/min"}, {"tubs[0].plants", "8"}}},
		{"oxygen-low", "tubs[0].air.flow", []edit{{"tubs[0].air.flow", "0.35 L/min"}, {"tubs[0].plants", "8"}}},
		{"oxygen-aim", "tubs[0].air.flow", []edit{{"tubs[0].air.flow", "0.5 L/min"}, {"tubs[0].plants", "8"}}},
		{"pump-head", "tubs[0].air.head", []edit{{"tubs[0].air.head", "10 cm"}}},
		{"water-warm", "place.water_temperature", []edit{{"place.water_temperature", "29 °C"}}},
	} {
		f, said := found(edited(t, plan, c.edits...), c.code)
		if !said || f.Field != c.field || f.Hint == "" {
			t.Errorf("%s at %q: %+v", c.code, c.field, f)
		}
	}
	if o := edited(t, plan, edit{"tubs[0].method", "still"}).Tubs[0]; o.Oxygen != nil {
		t.Errorf("a tub without a pump has %+v", o.Oxygen)
	}
}

// Air that keeps too few plants binds, and air that keeps none is a warning and
// no limit of nought.
func TestOxygenLimit(t *testing.T) {
	const plan = "../../examples/fernhollow.yaml"
	p := edited(t, plan, edit{"tubs[0].air.flow", "0.4 L/min"}).Tubs[0].Plants
	if p.Binds != garden.ByOxygen || p.Count != p.Limits[garden.ByOxygen] || p.Count < 1 || p.Count > 7 {
		t.Errorf("%+v", p)
	}
	none := edited(t, plan, edit{"tubs[0].air.flow", "0 L/min"}).Tubs[0].Plants
	if _, limited := none.Limits[garden.ByOxygen]; limited || none.Count != 8 || none.Moves[garden.ByOxygen] == "" {
		t.Errorf("%+v", none)
	}
	// High up even full water holds less than the level aimed at; the warning
	// level is held instead.
	high := edited(t, plan, edit{"place.altitude", "3600 m"}).Tubs[0]
	if high.Oxygen.HoldMgL != 4 || high.Plants.Limits[garden.ByOxygen] < 8 {
		t.Errorf("%+v, %v", high.Oxygen, high.Plants.Limits)
	}
}

// The pump on the list is the larger of the trade's rule and what roots want.
func TestPumpToBuy(t *testing.T) {
	a := edited(t, "../../examples/fernhollow.yaml", edit{"tubs[0].harvest_mass", "800 g"}, edit{"tubs[0].plants", "8"})
	rule, want := number(t, a, "tubs.Heron.air_needed").Value, a.Tubs[0].Oxygen.NeedLMin
	if got := number(t, a, "tubs.Heron.air_wanted").Value; want <= rule || math.Abs(got-want) > 0.06 {
		t.Errorf("buy %v, rule %v, roots %v", got, rule, want)
	}
	for _, i := range a.Shopping {
		if i.Key == "pump" && !strings.Contains(i.Measure, "of water") {
			t.Errorf("%+v", i)
		}
		if i.Key == "check_valve" && !strings.Contains(i.What, "run back") {
			t.Errorf("%+v", i)
		}
	}
}

// More air never keeps fewer plants, nor leaves less oxygen.
func TestMoreAirIsNeverLess(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		flow := rapid.IntRange(1, 400).Draw(r, "flow")
		warm := rapid.IntRange(10, 34).Draw(r, "water")
		high := rapid.IntRange(0, 4000).Draw(r, "altitude")
		at := func(flow int) garden.Tub {
			text := string(text(t, "testdata/clean.yaml", edit{"tubs[0].air.flow", fmt.Sprintf("%d.%d L/min", flow/10, flow%10)}))
			a := assessed(t, parsed(t, "air", []byte(text+fmt.Sprintf("place: {water_temperature: %d °C, altitude: %d m}\n", warm, high))))
			finite(t, document(t, a))
			return a.Tubs[0]
		}
		less, more := at(flow), at(flow+10)
		if less.Plants.Limits[garden.ByOxygen] > more.Plants.Limits[garden.ByOxygen] {
			r.Fatalf("%v, with more air %v", less.Plants.Limits, more.Plants.Limits)
		}
		if less.Plants.Count == more.Plants.Count && (less.Oxygen.SteadyMgL > more.Oxygen.SteadyMgL || more.Oxygen.LowMgL > more.Oxygen.SteadyMgL) {
			r.Fatalf("%+v, with more air %+v", less.Oxygen, more.Oxygen)
		}
	})
}
