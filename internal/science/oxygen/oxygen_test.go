package oxygen

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/base/working/pencil"
)

func drawWater(t *rapid.T) Water {
	draw := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	return Water{draw("temperature", 0, 40), draw("pressure", 50, 110), draw("ec", 0, 5)}
}

func drawTub(t *rapid.T) Tub {
	draw := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	return Tub{
		Water: drawWater(t), Litres: draw("litres", 5, 120), UptakeMgH: draw("taken", 0.1, 150),
		Air: Air{FlowLMin: draw("flow", 0.1, 10), DepthMM: draw("depth", 50, 400), Transfer: draw("transfer", 0.01, 0.07)},
	}
}

// Warmer, higher up or saltier, water holds less.
func TestWaterHoldsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWater(t)
		if !w.Valid() {
			t.Fatalf("%+v", w)
		}
		full := w.Saturation()
		warmer, higher, saltier := w, w, w
		warmer.TempC += 1
		higher.PressureKPa -= 1
		saltier.ECmS += 1
		for what, other := range map[string]Water{"warmer": warmer, "higher": higher, "saltier": saltier} {
			if !(other.Saturation() < full) {
				t.Fatalf("%s: %v, before %v", what, other.Saturation(), full)
			}
		}
	})
	for _, w := range []Water{{-1, 101, 0}, {41, 101, 0}, {20, 40, 0}, {20, 120, 0}, {20, 101, -1}, {math.NaN(), 101, 1}} {
		if w.Valid() {
			t.Errorf("%+v counts as valid", w)
		}
	}
}

// The course of a tub meets its rates, ends at the steady level, and the air
// that is said to hold a level holds it.
func TestCourseAndBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tub := drawTub(t)
		steady := tub.Steady()
		if got := tub.After(steady, 5); steady > 0 && math.Abs(got-steady) > 1e-9 {
			t.Fatalf("steady at %v, five hours later %v", steady, got)
		}
		start := rapid.Float64Range(6, 9).Draw(t, "start")
		const dt = 1e-4
		slope := (tub.After(start, dt) - start) / dt
		want := tub.PerHour(tub.Litres, tub.TempC)*(tub.Saturation()-start) - tub.UptakeMgH/tub.Litres
		if math.Abs(slope-want) > 1e-2*(1+math.Abs(want)) {
			t.Fatalf("the slope is %v, the balance %v", slope, want)
		}
		level := rapid.Float64Range(1, 8).Draw(t, "level")
		flow, ok := tub.FlowFor(level)
		if ok != (tub.Saturation() > level) {
			t.Fatalf("%v mg/L of %v: %v", level, tub.Saturation(), ok)
		}
		if tub.FlowLMin = flow; ok && math.Abs(tub.Steady()-level) > 1e-9*(1+level) {
			t.Fatalf("%v L/min hold %v, not %v", flow, tub.Steady(), level)
		}
	})
}

// As many plants as are said to be kept are kept, and one more is not.
func TestPlantsAt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tub := drawTub(t)
		each, level := rapid.Float64Range(0.5, 10).Draw(t, "each"), rapid.Float64Range(2, 7).Draw(t, "level")
		n := tub.PlantsAt(level, each)
		holds := func(n int) bool {
			tub.UptakeMgH = float64(n) * each
			return tub.Steady() >= level-1e-6
		}
		if n > 0 && !holds(n) || holds(n+1) && tub.Saturation() > level+1e-3 && tub.Steady() > level+1e-6 {
			t.Fatalf("%d plants", n)
		}
	})
	if n := (Tub{Water: Water{TempC: 20, PressureKPa: Atmosphere}, Litres: 10}).PlantsAt(6, 0); n != math.MaxInt32 {
		t.Errorf("plants that take nothing: %d", n)
	}
}

func TestStopped(t *testing.T) {
	good := Tub{Water: Water{TempC: 21, PressureKPa: Atmosphere}, Litres: 24, UptakeMgH: 20, Air: Air{2, 150, 0.025}}
	s := good.Stopped()
	if !(s.FromMgL > 4 && 0 < s.ToWarn && s.ToWarn < s.ToAct && s.ToAct < s.ToTwo) || s.QuietMinutes != 60 {
		t.Errorf("%+v", s)
	}
	crowded := good
	crowded.UptakeMgH = 2000
	if s := crowded.Stopped(); s.FromMgL != 0 || s.ToWarn != 0 || s.QuietMinutes != 0 || !strings.Contains(s.Says(), "do not stop") {
		t.Errorf("%+v: %s", s, s.Says())
	}
	empty := good
	empty.UptakeMgH = 0
	if s := empty.Stopped(); !math.IsInf(s.ToWarn, 1) || s.QuietMinutes != 60 || s.FromMgL != empty.Saturation() || s.Says() == "" {
		t.Errorf("%+v", s)
	}
	for hours, minutes := range map[float64]float64{0: 0, 0.1: 0, 0.5: 15, 1.79: 50, 10: 60, math.Inf(1): 60} {
		if got := QuietMinutes(hours); got != minutes {
			t.Errorf("%v h: %v min quiet, want %v", hours, got, minutes)
		}
	}
}

// Tubs without air, water or roots give sense.
func TestCorners(t *testing.T) {
	w := Water{TempC: 20, PressureKPa: Atmosphere}
	still := Tub{Water: w, Litres: 20, UptakeMgH: 10}
	if still.Steady() != 0 || still.After(1, 10) != 0 {
		t.Errorf("a tub without air holds %v", still.Steady())
	}
	if _, ok := still.FlowFor(6); ok {
		t.Error("a stone on the floor of nothing holds 6 mg/L")
	}
	if flow, ok := (Tub{Water: w, Litres: 20}).FlowFor(6); flow != 0 || !ok {
		t.Errorf("no roots want %v L/min", flow)
	}
	if (Tub{Water: w}).After(5, 1) != 5 || (Air{1, 100, 0.02}).PerHour(0, 20) != 0 || still.HoursTo(3, 4) != 0 {
		t.Error("nothing is something")
	}
	if RuleLMin(25) != 2.5 {
		t.Errorf("rule: %v", RuleLMin(25))
	}
	low, usual, high := Respiration()
	tLow, tStone, tFine := Transfer()
	if !(low < usual && usual < high && tLow < tStone && tStone < tFine) {
		t.Error("ranges are out of order")
	}
	if got := RespirationAt(30, 32); math.Abs(got-60) > 1e-9 {
		t.Errorf("10 K warmer: %v", got)
	}
}

func TestSiphon(t *testing.T) {
	for _, row := range []struct {
		name              string
		line, stone, pump float64
		level             float64
		drains            bool
	}{
		{"pump above the water", 150, 30, 300, 150, false},
		{"pump on the floor, below the tub", 150, 30, -400, 30, true},
		{"pump beside the tub, half way up", 150, 30, 80, 80, true},
		{"stone out of the water", 150, 160, 0, 150, false},
		{"an air line that lies on the floor", 150, 0, -400, 0, true},
	} {
		if level, drains := SiphonMM(row.line, row.stone, row.pump); level != row.level || drains != row.drains {
			t.Errorf("%s: down to %v, %v", row.name, level, drains)
		}
	}
}

func shown(tub Tub, rootG, eachG float64) (*working.Book, Shown, []working.Number) {
	b := working.NewBook()
	all := ShowUptake(b, "oxygen_taken", "oxygen the roots take", rootG, tub.TempC)
	each := ShowUptake(b, "oxygen_each", "oxygen one plant takes", eachG, tub.TempC)
	s := tub.ShowStop(b, tub.Show(b, all))
	return b, s, []working.Number{each, tub.ShowFlow(b, s), tub.ShowPlants(b, s, each)}
}

// The formulas shown are those that compute.
func TestFormulasAreTheOnesThatCompute(t *testing.T) {
	_, usual, _ := Respiration()
	rapid.Check(t, func(t *rapid.T) {
		tub := drawTub(t)
		root := rapid.Float64Range(0.1, 10).Draw(t, "root")
		tub.UptakeMgH = UptakeMgH(root, RespirationAt(usual, tub.TempC))
		_, s, rest := shown(tub, root, root/8)
		check := func(what string, n working.Number, unit quantity.Unit, want float64) {
			if got := unit.From(n.Base); math.Abs(got-want) > 1e-9*(1+math.Abs(want)) {
				t.Fatalf("%s: the formula gives %v, the code %v", what, got, want)
			}
		}
		mg := quantity.MilligramPerL
		stop := tub.Stopped()
		check("full", s.Full, mg, tub.Saturation())
		check("taken", s.Taken, milligramH, tub.UptakeMgH)
		check("rate", s.Rate, perHour, tub.PerHour(tub.Litres, tub.TempC))
		check("steady", s.Steady, mg, tub.Steady())
		check("to 4", s.ToWarn, quantity.Hour, stop.ToWarn)
		check("to 3", s.ToAct, quantity.Hour, stop.ToAct)
		check("to 2", s.ToTwo, quantity.Hour, stop.ToTwo)
		check("quiet", s.Quiet, quantity.Minute, stop.QuietMinutes)
		if flow, ok := tub.FlowFor(tub.Hold()); ok {
			check("air", rest[1], quantity.LitrePerMinute, flow)
		}
		check("plants", rest[2], quantity.One, float64(tub.PlantsAt(tub.Hold(), tub.UptakeMgH/8)))
	})
}

// Every number comes out with a pencil in both unit systems.
func TestPencil(t *testing.T) {
	_, usual, _ := Respiration()
	tub := Tub{Water: Water{TempC: 21, PressureKPa: 100.4, ECmS: 1.4}, Litres: 24.3, Air: Air{2, 140, 0.025}}
	tub.UptakeMgH = UptakeMgH(4.2, RespirationAt(usual, 21))
	b, _, _ := shown(tub, 4.2, 0.6)
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
	if worked < 18 {
		t.Errorf("only %d numbers with a formula", worked)
	}
}

func BenchmarkSteady(b *testing.B) {
	tub := Tub{Water: Water{TempC: 21, PressureKPa: 101, ECmS: 1.4}, Litres: 24, UptakeMgH: 20, Air: Air{2, 150, 0.025}}
	b.ReportAllocs()
	for b.Loop() {
		tub.Steady()
	}
}
