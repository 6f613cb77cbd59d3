package oxygen

import "math"

// Tub is a tub's water, its air and its roots.
type Tub struct {
	Water
	Air
	Litres    float64
	UptakeMgH float64 // all roots together; see UptakeMgH
}

// Steady is the oxygen that settles while the pump runs, in mg/L: where as much
// is brought as taken. It is never under 0; without air it is 0 as soon as
// anything is taken.
func (t Tub) Steady() float64 {
	full := t.Saturation()
	k := t.PerHour(t.Litres, t.TempC)
	if t.UptakeMgH <= 0 {
		return full
	}
	if !(k > 0) {
		return 0
	}
	return max(0, full-t.UptakeMgH/(k*t.Litres))
}

// After is the oxygen some hours later, in mg/L, from a start. Roots are taken
// to breathe alike down to nought, which is the cautious side.
func (t Tub) After(startMgL, hours float64) float64 {
	if !(t.Litres > 0) {
		return startMgL
	}
	k, taken := t.PerHour(t.Litres, t.TempC), t.UptakeMgH/t.Litres
	if !(k > 0) {
		return max(0, startMgL-taken*hours)
	}
	end := t.Saturation() - taken/k
	return max(0, end+(startMgL-end)*math.Exp(-k*hours))
}

// FlowFor is the air that holds a level in mg/L, in L/min through this stone at
// this depth; ok is false where no air can, because the water holds no more
// than that when full, or the stone brings nothing.
func (t Tub) FlowFor(levelMgL float64) (lMin float64, ok bool) {
	gap := t.Saturation() - levelMgL
	one := Air{FlowLMin: 1, DepthMM: t.DepthMM, Transfer: t.Transfer}.StandardMgH() / standard * math.Pow(perKelvin, t.TempC-20)
	if t.UptakeMgH <= 0 {
		return 0, gap >= 0
	}
	if !(gap > 0) || !(one > 0) {
		return 0, false
	}
	return t.UptakeMgH / (one * gap), true
}

// Hold is the level that the air of a tub is to hold, in mg/L: the one to aim
// at, or the warning level where warm or high water holds hardly more than that
// when full.
func (w Water) Hold() float64 {
	aim, warn, _, _ := Levels()
	if w.Saturation() < aim+value(factOxygenHoldGap) {
		return warn
	}
	return aim
}

// PlantsAt is how many plants, each of which takes so much in mg/h, the air
// keeps at a level in mg/L; math.MaxInt32 where they take nothing.
func (t Tub) PlantsAt(levelMgL, eachMgH float64) int {
	brought := t.PerHour(t.Litres, t.TempC) * t.Litres * (t.Saturation() - levelMgL)
	if !(eachMgH > 0) {
		return math.MaxInt32
	}
	// A billionth lets a whole number be whole in spite of rounding.
	return int(min(math.MaxInt32, math.Floor(max(0, brought)/eachMgH*(1+1e-9))))
}

// HoursTo is how long after the pump stops the oxygen falls from a start to a
// level, both in mg/L: 0 where it is there already, infinite where nothing is
// taken. What passes the surface is not counted, and roots in the air gap help.
func (t Tub) HoursTo(startMgL, levelMgL float64) float64 {
	if startMgL <= levelMgL {
		return 0
	}
	if !(t.UptakeMgH > 0) {
		return math.Inf(1)
	}
	return (startMgL - levelMgL) * t.Litres / t.UptakeMgH
}

// Stop is what happens when the pump stops at the steady level.
type Stop struct {
	FromMgL              float64
	ToWarn, ToAct, ToTwo float64 // hours until 4, 3 and 2 mg/L; infinite where nothing is taken
	QuietMinutes         float64 // how long the pump may be off for a quiet lesson
}

// Stopped is what happens when the pump stops now.
func (t Tub) Stopped() Stop {
	s := Stop{FromMgL: t.Steady()}
	s.ToWarn, s.ToAct, s.ToTwo = t.HoursTo(s.FromMgL, value(factOxygenWarn)), t.HoursTo(s.FromMgL, value(factOxygenAct)), t.HoursTo(s.FromMgL, value(factOxygenTwo))
	s.QuietMinutes = QuietMinutes(s.ToWarn)
	return s
}

// QuietMinutes is how long a pump may be off, for the hours until the warning
// level: a part of that time, in steps of five minutes, and one lesson at most.
func QuietMinutes(hoursToWarn float64) float64 {
	m := math.Floor(min(hoursToWarn, 24)*60/value(factAirQuietReserve)/5+1e-9) * 5
	return min(m, value(factAirQuietMost))
}
