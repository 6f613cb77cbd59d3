package forecast

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/science/crop"
	"rootbell/internal/science/water"
)

// Each of these is told in words, and none is followed.
func TestBadSeasons(t *testing.T) {
	nan := math.NaN()
	for says, spoil := range map[string]func(s *Season){
		"1 to 1000 days":             func(s *Season) { s.Days = nil },
		"1 to 96 spans":              func(s *Season) { s.Days[1] = nil },
		"a span lasts":               func(s *Season) { s.Days[0] = Day{{Hours: 1e-12}} },
		"0 to 45 °C":                 func(s *Season) { s.Days[0][0].Room = water.Room{TempC: 60, Humidity: 0.5} },
		"figure of the tub is not":   func(s *Season) { s.Tub.LidM2 = nan },
		"figure of the tub is under": func(s *Season) { s.Tub.OpenShare = -1 },
		"fill line lies over":        func(s *Season) { s.Tub.LineMM = s.Tub.LowestMM },
		"do not stand in this tub":   func(s *Season) { s.Tub.Start.Litres = 1000 },
		"pressure":                   func(s *Season) { s.Tub.PressureKPa = 0 },
		"stand 1":                    func(s *Season) { s.Tub.Stands[0].PerM2 = 0 },
		"event 1: its hour":          func(s *Season) { s.Events = []Event{{AtHour: nan}} },
		"event 1: no such":           func(s *Season) { s.Events = []Event{{Kind: 99}} },
		"event 1: a figure":          func(s *Season) { s.Events = []Event{{Litres: -1}} },
		"event 1: it picks":          func(s *Season) { s.Events = []Event{{Kind: Harvest, Stand: 1}} },
		"reading 1: its hour":        func(s *Season) { s.Readings = []Reading{{Value: nan, SD: 1}} },
		"reading 1: no instrument":   func(s *Season) { s.Readings = []Reading{{Value: 1}} },
		"reading 1: no such":         func(s *Season) { s.Readings = []Reading{{Of: 9, Value: 1, SD: 1}} },
		"reading 1: it is of":        func(s *Season) { s.Readings = []Reading{{Of: Picked, Stand: 3, Value: 1, SD: 1}} },
		"how many leaves": func(s *Season) {
			s.Tub.Stands[0].Crop = crop.Crop{Name: "basil"}
			s.Readings = []Reading{{Of: Leaves, Value: 9, SD: 1}}
		},
		"stretch 1": func(s *Season) { s.Watches = []Watch{{5, 4}} },
	} {
		s := season(t, 3)
		spoil(&s)
		if _, err := Run(t.Context(), s, Options{Members: 2}); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("want an error with %q, got %v", says, err)
		}
	}
}

// Whatever passes the check is followed to the end with numbers that are
// numbers, and quantiles in order.
func TestAnySeason(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		s := season(t, 6)
		s.Tub.Still = rapid.Bool().Draw(rt, "still")
		for i := range s.Days {
			for j := range s.Days[i] {
				p := &s.Days[i][j]
				p.Hours = rapid.Float64Range(leastHours, 30).Draw(rt, "hours")
				p.Room = water.Room{TempC: rapid.Float64Range(0, 45).Draw(rt, "room"), Humidity: rapid.Float64Range(0, 1).Draw(rt, "humidity")}
				p.CO2PPM, p.WaterC = rapid.Float64Range(-10, 9000).Draw(rt, "co2"), rapid.Float64Range(-5, 60).Draw(rt, "water")
			}
		}
		stand := &s.Tub.Stands[0]
		stand.Plants, stand.PPFD = rapid.IntRange(0, 200).Draw(rt, "plants"), rapid.Float64Range(0, 2500).Draw(rt, "ppfd")
		stand.StopG = rapid.Float64Range(0, 200).Draw(rt, "stop")
		s.Events = drawEvents(rt, 6)
		s.Readings = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Reading {
			return Reading{
				AtHour: rapid.Float64Range(0, 200).Draw(t, "hour"), Of: Quantity(rapid.IntRange(0, int(quantityCount)-1).Draw(t, "of")),
				Value: rapid.Float64Range(0, 400).Draw(t, "value"), SD: rapid.Float64Range(0.01, 50).Draw(t, "sd"),
			}
		}), 0, 8).Draw(rt, "readings")
		f := run(t, s, Options{Members: 12, Seed: 3})
		for d, day := range f.Days {
			for _, b := range []Band{day.LevelMM, day.Litres, day.ECmS, day.OxygenMgL, day.DrunkL, day.Stands[0].MassG, day.Stands[0].HeightMM} {
				if !finite(b.P5, b.P25, b.P50, b.P75, b.P95) || b.P5 < -1e-9 || b.P5 > b.P25 || b.P25 > b.P50 || b.P50 > b.P75 || b.P75 > b.P95 {
					rt.Fatalf("day %d: %+v", d+1, day)
				}
			}
		}
	})
}
