package oxygen

import (
	"math"
	"strconv"

	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

func typed(b *working.Book, key, name, symbol string, kind quantity.Kind, v float64) working.Number {
	return b.Typed(key, name, symbol, kind, kind.Metric.Base(v), 0)
}

func fact(b *working.Book, key, name, symbol string, kind quantity.Kind, id facts.ID) working.Number {
	f := Facts.Get(id)
	return b.Fact(key, name, symbol, kind, kind.Metric.Base(f.Value), f)
}

func nought(b *working.Book, kind quantity.Kind) working.Number {
	key := "no_oxygen"
	if kind == Rate {
		key = "no_rate"
	}
	return typed(b, key, "nought", "z", kind, 0)
}

// Show enters what the water can hold.
func (w Water) Show(b *working.Book) working.Number {
	t := typed(b, "water_temperature", "water", "t", quantity.Temperature, w.TempC)
	k := b.Work(absoluteLaw, "water_kelvin", "water, from absolute nought", t)
	salts := b.Work(salinityLaw, "salinity", "salt in the water", typed(b, "ec", "EC at 25 °C", "E", quantity.Conductivity, w.ECmS))
	return b.Work(saturationLaw, "oxygen_full", "oxygen in full water",
		b.Work(freshLaw, "oxygen_fresh", "fresh water, one atmosphere", k), b.Work(saltLaw, "oxygen_salt", "for the salts", salts, k),
		b.Work(pressureLaw, "oxygen_pressure", "for the air's pressure", typed(b, "air_pressure", "pressure of the air", "P", Pressure, w.PressureKPa), b.Work(vapourLaw, "water_vapour", "water vapour, in atmospheres", k), t))
}

// ShowUptake enters what roots of a dry mass take at a temperature; key and
// name tell one plant's from all.
func ShowUptake(b *working.Book, key, name string, dryRootG, tempC float64) working.Number {
	return b.Work(uptakeLaw, key, name, typed(b, key+"_roots", "roots, dry", "m", RootMass, dryRootG),
		b.Work(respirationLaw, "respiration", "respiration", fact(b, "respiration_22", "respiration at 22 °C", "r", Breathing, factRootsRespiration), typed(b, "water_temperature", "water", "t", quantity.Temperature, tempC)))
}

// ShowWarm enters the temperature of a warm day's water, over which roots rot
// more easily.
func ShowWarm(b *working.Book) working.Number {
	return fact(b, "water_warm", "water on a warm day", "b", quantity.Temperature, factWaterWarm)
}

// Shown are the numbers of a tub's oxygen; the last four are ShowStop's.
type Shown struct {
	Full, Taken, Rate, Steady working.Number
	ToWarn, ToAct, ToTwo      working.Number // unknown where nothing is taken
	Quiet                     working.Number
}

// Show enters what the water holds, what is taken and brought, and where that
// settles. taken is from ShowUptake, which then is the tub's UptakeMgH. What
// stands in the book already under a key that is used here counts.
func (t Tub) Show(b *working.Book, taken working.Number) Shown {
	return t.show(b, t.Water.Show(b), taken, "", "")
}

// ShowLow enters where the oxygen of the same tub settles with a stone that
// brings the least; t has that stone. Its keys end in _low.
func (t Tub) ShowLow(b *working.Book, s Shown) Shown {
	ShowTransfer(b, true)
	return t.show(b, s.Full, s.Taken, "_low", ", poor stone")
}

func (t Tub) show(b *working.Book, full, taken working.Number, end, of string) Shown {
	s := Shown{Full: full, Taken: taken}
	litres := typed(b, "solution", "solution", "V", quantity.Volume, t.Litres)
	s.Rate = b.Work(closingLaw, "air_rate"+end, "rate at which air fills the water"+of, b.Work(standardLaw, "air_brings"+end, "oxygen brought into empty water at 20 °C"+of,
		typed(b, "air_flow", "air", "Q", quantity.AirFlow, t.FlowLMin), fact(b, "air_oxygen", "oxygen in air", "o", InAir, factAirOxygen),
		typed(b, "air_transfer"+end, "share taken up for each metre"+of, "s", PerDepth, 100*t.Transfer), b.Typed("stone_depth", "water over the stone", "d", quantity.Length, t.DepthMM, 0)),
		litres, typed(b, "water_temperature", "water", "t", quantity.Temperature, t.TempC))
	s.Steady = b.Work(steadyLaw, "oxygen_steady"+end, "oxygen while the pump runs"+of, nought(b, Dissolved), s.Full, taken, s.Rate, litres)
	return s
}

// ShowTransfer enters the share of a bubble's oxygen that water takes up from an
// air stone: as usual, or at the lower end.
func ShowTransfer(b *working.Book, low bool) working.Number {
	if low {
		return fact(b, "air_transfer_low", "share taken up for each metre, poor stone", "s", PerDepth, factAirTransferLow)
	}
	return fact(b, "air_transfer", "share taken up for each metre", "s", PerDepth, factAirTransferCoarse)
}

// ShowStop enters how long the oxygen of a tub that was shown lasts without the
// pump.
func (t Tub) ShowStop(b *working.Book, s Shown) Shown {
	litres := typed(b, "solution", "solution", "V", quantity.Volume, t.Litres)
	lasts := func(key, name string, level working.Number) working.Number {
		return b.Work(lastsLaw, key, name, litres, nought(b, Dissolved), s.Steady, level, s.Taken)
	}
	s.ToWarn = lasts("pump_off_warn", "pump off until the warning level", fact(b, "oxygen_warn", "oxygen to warn below", "a", Dissolved, factOxygenWarn))
	s.ToAct = lasts("pump_off_act", "pump off until plants suffer", fact(b, "oxygen_act", "oxygen to act below", "a", Dissolved, factOxygenAct))
	s.ToTwo = lasts("pump_off_two", "pump off until 2 mg/L", fact(b, "oxygen_two", "oxygen to fall to", "a", Dissolved, factOxygenTwo))
	s.Quiet = b.Work(quietLaw, "pump_quiet", "pump off for a quiet lesson, at most",
		fact(b, "lesson", "one lesson", "m", Minutes, factAirQuietMost), s.ToWarn, fact(b, "quiet_reserve", "reserve", "s", quantity.Factor, factAirQuietReserve))
	return s
}

// hold is the level that the air is to hold.
func (t Tub) hold(b *working.Book) working.Number {
	if aim, _, _, _ := Levels(); t.Hold() < aim {
		return fact(b, "oxygen_warn", "oxygen to warn below", "a", Dissolved, factOxygenWarn)
	}
	return fact(b, "oxygen_aim", "oxygen to hold", "a", Dissolved, factOxygenAim)
}

// ShowFlow enters the air that holds a level, from a tub shown with any air.
func (t Tub) ShowFlow(b *working.Book, s Shown) working.Number {
	return b.Work(flowLaw, "air_needed", "air needed", typed(b, "air_flow", "air", "Q", quantity.AirFlow, t.FlowLMin), s.Taken, s.Rate,
		typed(b, "solution", "solution", "V", quantity.Volume, t.Litres), s.Full, t.hold(b))
}

// ShowPlants enters how many plants the air keeps at the level that it is to
// hold; each is from ShowUptake for one plant.
func (t Tub) ShowPlants(b *working.Book, s Shown, each working.Number) working.Number {
	return b.Work(plantsLaw, "plants_oxygen", "plants that the air keeps", s.Rate, typed(b, "solution", "solution", "V", quantity.Volume, t.Litres), s.Full,
		t.hold(b), nought(b, Rate), each)
}

// Says is a stop of the pump in one sentence for the teacher.
func (s Stop) Says() string {
	if math.IsInf(s.ToWarn, 1) {
		return "No roots take oxygen yet."
	}
	if s.ToWarn <= 0 {
		return "The oxygen stands at " + one(s.FromMgL) + " mg/L with the pump running: do not stop it."
	}
	return "If the pump stops, the oxygen falls from " + one(s.FromMgL) + " to 4 mg/L in " + one(s.ToWarn) + " h, to 3 in " + one(s.ToAct) + " h and to 2 in " + one(s.ToTwo) + " h."
}

func one(v float64) string { return strconv.FormatFloat(v, 'f', 1, 64) }
