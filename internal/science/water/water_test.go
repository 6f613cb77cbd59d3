package water

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/base/working/pencil"
)

func drawRoom(t *rapid.T) Room {
	return Room{rapid.Float64Range(5, 40).Draw(t, "temperature"), rapid.Float64Range(0.1, 0.98).Draw(t, "humidity")}
}

// Slope is what the curve climbs.
func TestSlopeIsOfTheCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Float64Range(0, 45).Draw(t, "temperature")
		const d = 1e-5
		if got, want := SlopeKPa(at), (FullVapourKPa(at+d)-FullVapourKPa(at-d))/(2*d); math.Abs(got/want-1) > 1e-7 {
			t.Fatalf("%v, want %v", got, want)
		}
	})
}

// What the lamp brings leaves as heat and as vapour; drier air, more light and
// more leaves take more water; nights are never dry.
func TestLeafBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := drawRoom(t)
		ppfd := rapid.Float64Range(0, 1000).Draw(t, "ppfd")
		lai := rapid.Float64Range(0.01, 3).Draw(t, "leaf index")
		air := rapid.Float64Range(50, 300).Draw(t, "air")
		breathe := func(room Room, ppfd, lai float64) Leaf {
			c := NewCanopy(room, ppfd, ppfd/4.57, air)
			return c.Breathe(lai)
		}
		leaf := breathe(room, ppfd, lai)
		in := 0.94 * ppfd / 4.57 * (1 - math.Exp(-0.9*lai))
		heat := lai * 1215.6 / air * (leaf.TempC - room.TempC)
		full := FullVapourKPa(leaf.TempC) * 1000 * 18.015 / 8.314 / (leaf.TempC + 273.15)
		vapour := lai * (full - room.VapourGM3()) / (PoreResistance(ppfd) + air)
		if off := in - heat - 2450*vapour; math.Abs(off) > 1e-7 {
			t.Fatalf("%v W/m² are left over at %v °C", off, leaf.TempC)
		}
		if math.Abs(leaf.GM2H-3600*max(0, vapour)) > 1e-6 || leaf.GM2H <= 0 {
			t.Fatalf("%v g/m²/h, the balance %v", leaf.GM2H, 3600*vapour)
		}
		drier, bigger := room, lai
		drier.Humidity -= 0.05
		bigger *= 1.1
		for what, more := range map[string]Leaf{"drier": breathe(drier, ppfd, lai), "more light": breathe(room, ppfd+50, lai), "more leaf": breathe(room, ppfd, min(3, bigger))} {
			if more.GM2H < leaf.GM2H-1e-9 {
				t.Fatalf("%s: %v, before %v", what, more.GM2H, leaf.GM2H)
			}
		}
	})
}

func TestLeafCorners(t *testing.T) {
	room := Room{21, 0.7}
	if got := leafAt(room, 200, 0); got.GM2H != 0 || got.TempC != 21 {
		t.Errorf("no leaf: %+v", got)
	}
	if a, b := leafAt(room, 200, 3), leafAt(room, 200, 9); a != b {
		t.Errorf("leaves over an index of 3 breathe %v, not %v", b, a)
	}
	if got := leafAt(Room{21, 1}, 0, 2); got.GM2H > 1e-6 {
		t.Errorf("%v g in the dark in full air", got.GM2H)
	}
	if got := leafAt(Room{21, math.NaN()}, 200, 2); !(got.GM2H >= 0) {
		t.Errorf("%+v of no humidity", got)
	}
	still := NewCanopy(room, 0, 0, AirResistance(false))
	fan := NewCanopy(room, 0, 0, AirResistance(true))
	if still.Breathe(2).GM2H >= fan.Breathe(2).GM2H {
		t.Error("still air takes as much as a fan")
	}
	for _, r := range []Room{{-1, 0.5}, {46, 0.5}, {21, 1.01}, {21, -0.1}, {math.NaN(), 0.5}} {
		if r.Valid() {
			t.Errorf("%+v counts as valid", r)
		}
	}
	if !room.Valid() || (Day{LitresM2: 1}).PlantML(0) != 0 || DayOf(Leaf{}, Leaf{}, 16) != (Day{}) {
		t.Error("nothing is something")
	}
}

// Salts are neither made nor lost, but by what plants take.
func TestSaltsAreKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		s := Solution{draw("litres", 10, 80), draw("ec", 0.5, 3)}
		litres, strength, vapour := draw("drunk", 0, 4), draw("uptake", 0, 1.2), draw("vapour", 0, 1)
		after := s.Drink(litres, strength, vapour)
		if got, want := after.ECmS*after.Litres, s.ECmS*s.Litres-strength*litres; math.Abs(got-want) > 1e-9 {
			t.Fatalf("%v of salts, want %v", got, want)
		}
		if rises := after.ECmS > s.ECmS+1e-12; rises && strength*litres > s.ECmS*(litres+vapour)+1e-9 {
			t.Fatalf("the EC rises to %v", after.ECmS)
		}
		added := draw("added", 0, 20)
		if topped := after.TopUp(added, 0); math.Abs(topped.ECmS*topped.Litres-after.ECmS*after.Litres) > 1e-9 || math.Abs(topped.Litres-after.Litres-added) > 1e-9 {
			t.Fatalf("%+v after %+v", topped, after)
		}
	})
	for _, row := range []struct{ got, want Solution }{
		{Solution{1, 1.5}.Drink(2, 1, 0), Solution{0, 1.5}},
		{Solution{10, 0.1}.Drink(2, 1, 0), Solution{8, 0}},
		{Solution{}.TopUp(0, 1), Solution{}},
		{Solution{}.TopUp(2, 1), Solution{2, 1}},
	} {
		if row.got != row.want {
			t.Errorf("%+v, want %+v", row.got, row.want)
		}
	}
}

// one is everything shown of one set of figures.
func one(b *working.Book, room Room, ppfd, lai float64) (deficit, lit, dark, day, lid working.Number) {
	deficit = room.ShowDeficit(b)
	light := NewCanopy(room, ppfd, ppfd/4.57, AirResistance(true))
	night := NewCanopy(room, 0, 0, AirResistance(true))
	lit, dark = light.Show(b.In("lit"), room, ppfd, lai), night.Show(b.In("dark"), room, 0, lai)
	return deficit, lit, dark, ShowDay(b, lit, dark, 16, 25), ShowLid(b, deficit, StillAirMS(), 0.16, 0.05)
}

// The formulas shown are those that compute.
func TestFormulasAreTheOnesThatCompute(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := working.NewBook()
		check := func(what string, n working.Number, unit quantity.Unit, want float64) {
			// The leaf's temperature is found to a billionth of a kelvin, of which
			// the water breathed out makes some ten times as much.
			if got := unit.From(n.Base); math.Abs(got-want) > 1e-7*(1+math.Abs(want)) {
				t.Fatalf("%s: the formula gives %v, the code %v", what, got, want)
			}
		}
		room := drawRoom(t)
		ppfd, lai := rapid.Float64Range(0, 800).Draw(t, "ppfd"), rapid.Float64Range(0.01, 4).Draw(t, "leaf index")
		deficit, lit, dark, day, lid := one(b, room, ppfd, lai)
		light := NewCanopy(room, ppfd, ppfd/4.57, AirResistance(true))
		night := NewCanopy(room, 0, 0, AirResistance(true))
		check("deficit", deficit, kilopascal, room.DeficitKPa())
		check("lit", lit, gramM2H, light.Breathe(lai).GM2H)
		check("dark", dark, gramM2H, night.Breathe(lai).GM2H)
		check("day", day, quantity.Millilitre, DayOf(light.Breathe(lai), night.Breathe(lai), 16).PlantML(25))
		check("lid", lid, quantity.Millilitre, LidMLDay(room, StillAirMS(), 0.16, 0.05))
		check("pressure", ShowPressure(b, 850), kilopascal, PressureKPa(850))
		s := Solution{rapid.Float64Range(5, 60).Draw(t, "litres"), rapid.Float64Range(0, 3).Draw(t, "ec")}
		check("drunk", s.ShowDrink(b, 1.2, UptakeEC(), 0.1), quantity.MillisiemensPerCM, s.Drink(1.2, UptakeEC(), 0.1).ECmS)
		check("topped up", s.ShowTopUp(b, 2, 0.4), quantity.MillisiemensPerCM, s.TopUp(2, 0.4).ECmS)
		check("taken", Uptake()[0].ShowTaken(b, 10), quantity.Gram, Uptake()[0].MgL()/100)
	})
}

// Every number comes out with a pencil in both unit systems.
func TestPencil(t *testing.T) {
	b := working.NewBook()
	one(b, Room{21, 0.5}, 180, 1.7)
	ShowPressure(b, 80)
	s := Solution{24.3, 1.4}
	s.ShowDrink(b, 1.25, UptakeEC(), 0.04)
	s.ShowTopUp(b, 2.5, 0.36)
	for _, e := range Uptake() {
		e.ShowTaken(b, 10)
	}
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
	if worked < 25 {
		t.Errorf("only %d numbers with a formula", worked)
	}
}

func TestBreathingAllocatesNothing(t *testing.T) {
	c := NewCanopy(Room{21, 0.5}, 200, 44, 100)
	if n := testing.AllocsPerRun(100, func() { c.Breathe(2) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func BenchmarkBreathe(b *testing.B) {
	c := NewCanopy(Room{21, 0.5}, 200, 44, 100)
	lai := 0.0
	b.ReportAllocs()
	for b.Loop() {
		lai += 0.01
		if lai > 3 {
			lai = 0.01
		}
		c.Breathe(lai)
	}
}

func BenchmarkNewCanopy(b *testing.B) {
	for b.Loop() {
		NewCanopy(Room{21, 0.5}, 200, 44, 100)
	}
}
