package crop_test

import (
	"math"
	"testing"

	"rootbell/internal/science/crop"
	"rootbell/internal/science/oxygen"
	"rootbell/internal/science/water"
)

// Where the values below come from.
const (
	coupled = "growth of Van Henten and transpiration of Graamans together, worked out with scipy; leaf area between two days, at most 3"
	eaten   = "fresh grams for each litre drunk: 75 Pennisi 2019 (Sci. Rep. 9:14127), 71 Gavhane 2023, 50 Barbosa 2015 (10.3390/ijerph120606879), all read"
)

// Condition B drinks: 250 µmol for 16 h, 21 °C, 70 %, 400 ppm, 16 plants a
// square metre.
func TestPublishedThirst(t *testing.T) {
	const perM2, joule = 16, 4.57
	m := crop.Published()
	light, night := m.Under(crop.Air{TempC: 21, CO2PPM: 400, WattsM2: 250 / joule}), m.Under(crop.Air{TempC: 21, CO2PPM: 400})
	room := water.Room{TempC: 21, Humidity: 0.7}
	lit, dark := water.NewCanopy(room, 250, 250/joule, 100), water.NewCanopy(room, 0, 0, 100)
	want := map[int][2]float64{1: {6.9, 0.05}, 7: {33.6, 0.05}, 14: {175.5, 0.6}, 21: {175.5, 0.6}, 28: {175.5, 0.6}}
	s, litres := m.Start(perM2), 0.0
	for day := 1; day <= 28; day++ {
		before := m.LeafIndex(s)
		s = crop.Follow(s, []crop.Span{{Pace: &light, Seconds: 16 * 3600}, {Pace: &night, Seconds: 8 * 3600}})
		leaf := (before + m.LeafIndex(s)) / 2
		drunk := water.DayOf(lit.Breathe(leaf), dark.Breathe(leaf), 16).PlantML(perM2)
		litres += drunk / 1000
		if w, asked := want[day]; asked && math.Abs(drunk-w[0]) > w[1] {
			t.Errorf("day %d: %.2f mL a plant, want %v (%s)", day, drunk, w[0], coupled)
		}
	}
	gained := m.ShootG(s, perM2) - m.ShootG(m.Start(perM2), perM2)
	if math.Abs(litres-3.28) > 0.005 || math.Abs(gained/litres-93) > 0.5 {
		t.Errorf("%.3f L and %.2f g a litre, want 3.28 and 93 (%s)", litres, gained/litres, coupled)
	}
	t.Logf("%.1f g for each litre here, %s", gained/litres, eaten)
}

// Roots of a big lettuce are of the size that oxygen is worked out for.
func TestPublishedRoots(t *testing.T) {
	m := crop.Published()
	s := m.OfDryG(m.DryForHarvest(150, 25)/25, 25)
	if got := m.RootG(s, 25); math.Abs(got-0.07*150/22.5/0.93) > 1e-12 {
		t.Errorf("%v g of root", got)
	}
	_, usual, _ := oxygen.Respiration()
	if got := oxygen.UptakeMgH(m.RootG(s, 25), usual); got < 1 || got > 3 {
		t.Errorf("a big lettuce takes %v mg of oxygen an hour", got)
	}
}

// BenchmarkTwoTubs is the plants' part of an ensemble: 1,000 members, 80 days,
// two tubs of one mean plant each, four spans a day, each with its growth and
// its thirst.
func BenchmarkTwoTubs(b *testing.B) {
	const members, days, tubs, perM2 = 1000, 80, 2, 25
	hours := [4]float64{8, 2.5, 7, 6.5}
	b.ReportAllocs()
	for b.Loop() {
		for member := range members * tubs {
			m := crop.Published()
			m.Vigour = 0.7 + 0.6*float64(member)/(members*tubs)
			var paces [4]crop.Pace
			var leaves [4]water.Canopy
			for i, air := range [4]crop.Air{{TempC: 16, CO2PPM: 420}, {TempC: 16, CO2PPM: 420, WattsM2: 45}, {TempC: 21, CO2PPM: 800, WattsM2: 45}, {TempC: 16, CO2PPM: 420, WattsM2: 45}} {
				paces[i] = m.Under(air)
				leaves[i] = water.NewCanopy(water.Room{TempC: air.TempC, Humidity: 0.5}, 4.75*air.WattsM2, air.WattsM2, 200)
			}
			s := m.Start(perM2)
			for range days {
				for i := range paces {
					leaves[i].Breathe(m.LeafIndex(s))
					s = paces[i].Grow(s, hours[i]*3600)
				}
			}
		}
	}
}
