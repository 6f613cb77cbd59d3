package season

import (
	"testing"
	"time"
	_ "time/tzdata"

	"rootbell/internal/forecast"
	"rootbell/internal/school/term"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/oxygen"
	"rootbell/internal/science/tub"
	"rootbell/internal/science/water"
)

func day(t testing.TB, text string) term.Date {
	t.Helper()
	d, err := term.ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// spring is the calendar of the invented school: a term with a break and a
// staff day.
func spring(t testing.TB) *term.Calendar {
	one := func(text string) term.Span { return term.Span{From: day(t, text), To: day(t, text)} }
	return term.New(term.Given{
		Terms: []term.Span{{From: day(t, "2027-01-11"), To: day(t, "2027-04-02")}},
		Closed: []term.Closure{
			{Span: term.Span{From: day(t, "2027-02-15"), To: day(t, "2027-02-19")}, Why: "break"},
			{Span: one("2027-03-08"), Why: "staff day"},
		},
		ArriveMin: 8*60 + 30, LeaveMin: 15*60 + 30,
	})
}

func zone(t testing.TB, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

func room(t testing.TB) Place {
	return Place{
		Calendar: spring(t), Zone: zone(t, "Europe/Dublin"),
		Open:   Air{Room: water.Room{TempC: 21, Humidity: 0.5}, CO2PPM: 800, WaterC: 20},
		Closed: Air{Room: water.Room{TempC: 16, Humidity: 0.5}, CO2PPM: 420, WaterC: 16},
		Lamp:   Lamp{6 * 60, 22 * 60},
	}
}

func stand(t testing.TB, name string, plants int) (crop.Crop, forecast.Stand) {
	t.Helper()
	c, ok := crop.Find(name)
	if !ok {
		t.Fatal("no", name)
	}
	return c, forecast.Stand{Crop: c, Model: c.Growth(), Plants: plants, PerM2: 25, PPFD: 170, UmolPerJoule: 4.75, PickG: 100}
}

// bed is a tub of the demo with some plants of a crop.
func bed(t testing.TB, name string, plants int) Bed {
	t.Helper()
	shape, err := tub.NewRect([2]float64{520, 360}, [2]float64{460, 300}, 220, 40, 40)
	if err != nil {
		t.Fatal(err)
	}
	c, s := stand(t, name, plants)
	b := Bed{Place: room(t), Tub: forecast.Tub{
		Shape: shape, StonesL: 0.1, CupsL: 0.3, CupBottomMM: 155, LineMM: 165, LowestMM: 80,
		LidM2: 0.18, OpenShare: 0.03, PressureKPa: oxygen.Atmosphere, StoneMM: 25,
		Air: oxygen.Air{FlowLMin: 2, Transfer: 0.02}, Stands: []forecast.Stand{s},
	}}
	b.Tub.Start = water.Solution{Litres: b.Tub.LitresAt(b.Tub.LineMM), ECmS: 1.5}
	b.Crops = []Crop{{Kind: c, Stands: []int{0}, Seed: crop.Seed{Germination: c.Germination(), TempC: 21}}}
	b.Care = Care{TopUpDropMM: 20, TopUpECmS: 0.8, FirstChangeDays: 21, ChangeDays: 14, ChangeECmS: 1.5}
	b.Hang = Hang{OverLidMM: 300, OverLeafMM: 150, StepMM: 50}
	return b
}

func wish(t testing.TB, plants int) Wish {
	b := bed(t, "leaf lettuce", plants)
	return Wish{Bed: b, Today: day(t, "2026-11-25"), MealOn: day(t, "2027-03-24"), NeededG: 260, Eaters: 13, PortionG: 20, Chance: 0.8}
}

// quick is an effort for tests.
func quick() Effort { return Effort{Members: 120, Search: 60, Seed: 11, Workers: 2} }

// thirsty is a course of many plants over the break, so that it runs dry.
func thirsty(t testing.TB, plants int) Course {
	return Course{Bed: bed(t, "leaf lettuce", plants), MoveOn: day(t, "2027-01-19"), To: day(t, "2027-03-24")}
}

func follows(t testing.TB, c Course, e Effort) Followed {
	t.Helper()
	f, err := Follow(t.Context(), c, e)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func leaves(t testing.TB, c Course, f Followed, w Ways, e Effort) []Closed {
	t.Helper()
	all, err := Leave(t.Context(), c, f, w, e)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func backs(t testing.TB, w Wish, e Effort) Answer {
	t.Helper()
	a, err := Back(t.Context(), w, e)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// tryOf are the tries of a course's break.
func tryOf(t testing.TB, c Course, f Followed, w Ways, e Effort) tries {
	t.Helper()
	w.LineStepMM = 5
	for _, s := range f.Standing {
		if s.Stretch.Why == "break" || s.Stretch.Days() > 5 {
			return tries{Course: c, Standing: s, ways: w, e: e, clock: f.Clock}
		}
	}
	t.Fatal("no break")
	return tries{}
}
