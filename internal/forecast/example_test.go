package forecast

import (
	"testing"

	"rootbell/internal/science/crop"
	"rootbell/internal/science/oxygen"
	"rootbell/internal/science/tub"
	"rootbell/internal/science/water"
)

// box is a tapered tub of about 45 L, invented.
func box(t testing.TB) Tub {
	t.Helper()
	shape, err := tub.NewRect([2]float64{560, 380}, [2]float64{500, 320}, 280, 40, 30)
	if err != nil {
		t.Fatal(err)
	}
	out := Tub{
		Shape: shape, StonesL: 0.1, CupsL: 0.4, CupBottomMM: 225, LineMM: 235, LowestMM: 80,
		LidM2: 0.2, OpenShare: 0.03, PressureKPa: oxygen.Atmosphere, StoneMM: 25,
		Air: oxygen.Air{FlowLMin: 4, Transfer: 0.02},
	}
	out.Start = water.Solution{Litres: out.LitresAt(out.LineMM), ECmS: 1.4}
	return out
}

// lettuce is a stand of leaf lettuce under white light.
func lettuce(t testing.TB, plants int) Stand {
	t.Helper()
	c, ok := crop.Find("leaf lettuce")
	if !ok {
		t.Fatal("no lettuce")
	}
	return Stand{Crop: c, Model: c.Growth(), Plants: plants, PerM2: 25, PPFD: 220, UmolPerJoule: 4.75, PickG: 120}
}

// schoolDay is a day of five spans: lit from six to ten at night, open from
// half past eight to half past three.
func schoolDay(open bool) Day {
	closed := Span{Room: water.Room{TempC: 17, Humidity: 0.5}, CO2PPM: 420, WaterC: 17}
	with := func(hours float64, lit bool) Span {
		s := closed
		s.Hours, s.Lit = hours, lit
		return s
	}
	mid := with(7, true)
	if open {
		mid.Room.TempC, mid.CO2PPM, mid.WaterC = 21, 800, 20
	}
	return Day{with(6, false), with(2.5, true), mid, with(6.5, true), with(2, false)}
}

// season is so many days, from a Monday on.
func season(t testing.TB, days int) Season {
	s := Season{Tub: box(t)}
	s.Tub.Stands = []Stand{lettuce(t, 6)}
	for d := range days {
		s.Days = append(s.Days, schoolDay(d%7 < 5))
	}
	return s
}

// filled is a season in which the tub is filled up on every open day.
func filled(t testing.TB, days int) Season {
	s := season(t, days)
	for d := range days {
		if d%7 < 5 {
			s.Events = append(s.Events, Event{AtHour: float64(24*d) + 9, Kind: FillTo, LineMM: s.Tub.LineMM, DropMM: 5, ECmS: 0.7})
		}
	}
	return s
}
