package lesson

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/base/working/pencil"
	"rootbell/internal/science/reading"
)

// anyTub is a tub of any measures, also of none and of impossible ones.
func anyTub(t *rapid.T) *Tub {
	number := func(name string, most float64) float64 {
		return rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(0, most), rapid.SampledFrom([]float64{-1, 1e9, math.Inf(1), math.NaN()})).Draw(t, name)
	}
	length := func(name string) float64 { return rapid.Float64Range(1, 3000).Draw(t, name) }
	tub := &Tub{
		Name: "Heron", System: rapid.SampledFrom([]quantity.System{quantity.Metric, quantity.US}).Draw(t, "system"),
		Plants: rapid.IntRange(-1, 200).Draw(t, "plants"), Hole: number("hole", 250), Lid: Plate{Long: number("long", 3000), Wide: number("wide", 3000), Round: rapid.Bool().Draw(t, "round")},
		Straight: rapid.Bool().Draw(t, "straight"), Top: [2]float64{length("top"), length("top wide")}, Base: [2]float64{length("base"), length("base wide")},
		Height: number("height", 1500), Fill: number("fill", 1500), Tape: number("tape", 20), SolutionL: quantity.L(number("solution", 1000)), ReserveL: quantity.L(number("reserve", 500)),
		Germinate: number("germination", 1), TapEC: quantity.MSPerCM(number("tap", 3)), WantEC: quantity.MSPerCM(number("want", 5)), Price: number("price", 2),
		School: [2]int{rapid.IntRange(0, 1440).Draw(t, "arrive"), rapid.IntRange(0, 1440).Draw(t, "leave")},
	}
	if rapid.Bool().Draw(t, "shaped") {
		tub.LitresAt = func(mm float64) quantity.L { return quantity.L(mm * 0.15) }
		tub.Vessel.LitresAtDepth = func(mm quantity.MM) quantity.L { return quantity.L(mm) * 0.15 }
	}
	if rapid.Bool().Draw(t, "lamp") {
		tub.Lamp = &Lamp{rapid.IntRange(0, 1440).Draw(t, "on"), rapid.IntRange(0, 1440).Draw(t, "off"), number("watts", 2000)}
	}
	if rapid.Bool().Draw(t, "dose") {
		tub.Dose = &Dose{"grow", number("a litre", 20)}
	}
	for i := range rapid.IntRange(0, 20).Draw(t, "holes") {
		tub.Holes = append(tub.Holes, Hole{i + 1, number("x", 3000), number("y", 3000)})
	}
	tub.Entries = anyBook(t)
	return tub
}

// anyBook is a logbook of any readings that could be written down.
func anyBook(t *rapid.T) []reading.Entry {
	var rows []reading.Row
	at := time.Date(2027, 1, 11, 9, 0, 0, 0, time.UTC)
	for range rapid.IntRange(0, 15).Draw(t, "rows") {
		at = at.Add(time.Duration(rapid.IntRange(0, 100).Draw(t, "hours")) * time.Hour)
		r := reading.Row{ID: "row-" + at.Format("01021504") + string(rune('a'+len(rows))), Tub: "Heron", At: at}
		r.Height = quantity.Typed[quantity.MM]{Value: quantity.MM(rapid.Float64Range(0, 2000).Draw(t, "height")), Text: "x"}
		r.Level.Litres = quantity.Typed[quantity.L]{Value: quantity.L(rapid.Float64Range(0, 300).Draw(t, "level")), Text: "x"}
		ph := quantity.PH(rapid.Float64Range(2, 12).Draw(t, "pH"))
		r.PH.Read = quantity.Interval[quantity.PH]{Low: ph, High: ph, Text: "x"}
		ec := quantity.MSPerCM(rapid.Float64Range(0, 10).Draw(t, "EC"))
		r.EC.Read = quantity.Interval[quantity.MSPerCM]{Low: ec, High: ec, Text: "x"}
		if rapid.Bool().Draw(t, "poured") {
			r.Added.Litres = quantity.Typed[quantity.L]{Value: quantity.L(rapid.Float64Range(0, 50).Draw(t, "litres")), Text: "x"}
		}
		rows = append(rows, r)
	}
	return reading.Standing(rows)
}

// Whatever the tub and the logbook, a sheet is made or says why not; every number
// is worked out, and a pencil comes to it.
func TestAnyTubGivesASheetOrAReason(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tub := anyTub(t)
		p := rapid.SampledFrom(Templates()).Draw(t, "template")
		c := Choice{Template: p.ID, Band: rapid.SampledFrom(p.Bands).Draw(t, "band"), Seed: rapid.Uint64Range(1, 50).Draw(t, "variant")}
		if len(tub.Entries) > 0 {
			id := rapid.SampledFrom(tub.Entries).Draw(t, "row").ID
			c.Odd = []Decision{{ID: id, Do: rapid.SampledFrom([]Deed{Keep, LeaveOut, Correct}).Draw(t, "deed"), Value: rapid.Float64Range(-1e5, 1e5).Draw(t, "value")}}
		}
		s, ok := Make(c, tub, working.NewBook())
		if !ok {
			t.Fatalf("no sheet %s", p.ID)
		}
		if s.Why != "" {
			return
		}
		for _, n := range s.Numbers() {
			shown := n.Show(s.System)
			if shown.None {
				t.Fatalf("%s: %s is not worked out", p.ID, n.Name)
			}
			if got, err := pencil.Round(shown.PutIn, shown.Decimals); err != nil || math.Abs(got-shown.Value) > 1e-9*math.Max(1, math.Abs(shown.Value)) {
				t.Errorf("%s: %s = %s is %v with a pencil (%v), the key has %v", p.ID, n.Name, shown.PutIn, got, err, shown.Value)
			}
		}
	})
}
