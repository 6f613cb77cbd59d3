package lamp

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/base/working/pencil"
)

func drawLamp(t *rapid.T) Lamp {
	side := func(name string) float64 {
		return rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(1, 1500)).Draw(t, name)
	}
	return Lamp{
		Name: "bay lamp", XMM: rapid.Float64Range(-500, 500).Draw(t, "x"), YMM: rapid.Float64Range(-500, 500).Draw(t, "y"),
		AlongXMM: side("along x"), AlongYMM: side("along y"), AboveMM: rapid.Float64Range(50, 1500).Draw(t, "above"),
		FluxUmolS: rapid.Float64Range(1, 500).Draw(t, "flux"), HoursADay: rapid.Float64Range(0, 24).Draw(t, "hours"),
	}
}

// A lamp's light is the same on its four sides, falls outward, and is nowhere
// more than a small lamp's right below.
func TestLightOfALamp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawLamp(t)
		dx, dy := rapid.Float64Range(0, 2000).Draw(t, "dx"), rapid.Float64Range(0, 2000).Draw(t, "dy")
		at := l.PPFD(l.XMM+dx, l.YMM+dy)
		if !(at > 0) {
			t.Fatalf("%v at %v, %v", at, dx, dy)
		}
		for _, side := range [][2]float64{{-dx, dy}, {dx, -dy}, {-dx, -dy}} {
			if mirrored := l.PPFD(l.XMM+side[0], l.YMM+side[1]); math.Abs(mirrored-at) > 1e-9*l.PPFD(l.XMM, l.YMM) {
				t.Fatalf("%v, mirrored %v", at, mirrored)
			}
		}
		further := l.PPFD(l.XMM+dx+50, l.YMM+dy)
		point := Lamp{AboveMM: l.AboveMM, FluxUmolS: l.FluxUmolS}.PPFD(0, 0)
		if further > at*(1+1e-9) || at > point*(1+1e-9) {
			t.Fatalf("%v, further out %v, small lamp %v", at, further, point)
		}
		turned := l
		turned.AlongXMM, turned.AlongYMM = l.AlongYMM, l.AlongXMM
		if other := turned.PPFD(l.XMM+dy, l.YMM+dx); math.Abs(other-at) > 1e-9*point {
			t.Fatalf("%v, turned %v", at, other)
		}
	})
}

// A thin panel is a strip, a short strip is a small lamp; far away all are.
func TestShapesMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h := rapid.Float64Range(100, 1000).Draw(t, "h")
		x, y := rapid.Float64Range(-500, 500).Draw(t, "x"), rapid.Float64Range(-500, 500).Draw(t, "y")
		length := rapid.Float64Range(10, 1200).Draw(t, "length")
		panel := Lamp{AlongXMM: 2e-5 * h, AlongYMM: length, AboveMM: h, FluxUmolS: 100}.PPFD(x, y)
		strip := Lamp{AlongYMM: length, AboveMM: h, FluxUmolS: 100}.PPFD(x, y)
		// The panel's four factors cancel to the share its width is of the height.
		if math.Abs(panel/strip-1) > 1e-6 {
			t.Fatalf("panel %v, strip %v", panel, strip)
		}
		short := Lamp{AlongYMM: 2e-5 * h, AboveMM: h, FluxUmolS: 100}.PPFD(x, y)
		point := Lamp{AboveMM: h, FluxUmolS: 100}.PPFD(x, y)
		if math.Abs(short/point-1) > 1e-6 {
			t.Fatalf("short strip %v, small lamp %v", short, point)
		}
	})
}

// All photons sent down arrive on an endless floor; most on ten heights of it.
func TestPhotonsArrive(t *testing.T) {
	l := Lamp{AlongXMM: 300, AlongYMM: 600, AboveMM: 300, FluxUmolS: 100}
	const step, reach = 20.0, 6000.0
	sum := 0.0
	for x := -reach + step/2; x < reach; x += step {
		for y := -reach + step/2; y < reach; y += step {
			sum += l.PPFD(x, y) * step * step / 1e6
		}
	}
	// A disc of twenty heights sees 1 - 1/(1+20²) of a small diffuse lamp.
	if sum > 100 || sum < 99.6 {
		t.Errorf("%v of 100 µmol/s arrive", sum)
	}
}

func TestRigAddsAndLeavesRise(t *testing.T) {
	a := Lamp{Name: "a", AlongYMM: 1100, AlongXMM: 80, AboveMM: 300, FluxUmolS: 110, HoursADay: 16, PowerWatts: 44}
	b := Lamp{Name: "b", XMM: 200, AboveMM: 300, FluxUmolS: 20, HoursADay: 4, PowerWatts: 10}
	rig := Rig{a, b}
	places := []Point{{0, 0}, {100, 50}}
	for i, level := range rig.At(places) {
		if want := a.PPFD(places[i].XMM, places[i].YMM) + b.PPFD(places[i].XMM, places[i].YMM); math.Abs(level-want) > 1e-12 {
			t.Errorf("%v, want %v", level, want)
		}
	}
	if got, want := rig.DLI(0, 0), DLI(a.PPFD(0, 0), 16)+DLI(b.PPFD(0, 0), 4); math.Abs(got-want) > 1e-12 {
		t.Errorf("DLI %v, want %v", got, want)
	}
	if got := rig.KWhADay(); math.Abs(got-(0.044*16+0.01*4)) > 1e-12 {
		t.Errorf("%v kWh", got)
	}
	if low, high := rig.PPFD(0, 0), rig.Over(100).PPFD(0, 0); high <= low || rig[0].AboveMM != 300 {
		t.Errorf("leaves 10 cm higher get %v instead of %v", high, low)
	}
	if got := rig.Over(300).PPFD(0, 0); got != 0 {
		t.Errorf("a leaf at the lamp gets %v", got)
	}
	for _, row := range []struct{ lamp, leaves, raise float64 }{{300, 100, 0}, {300, 150, 0}, {300, 250, 100}} {
		if got := RaiseMM(row.lamp, row.leaves); math.Abs(got-row.raise) > 1e-9 {
			t.Errorf("lamp %v, leaves %v: raise by %v, want %v", row.lamp, row.leaves, got, row.raise)
		}
	}
}

func TestSpreadOf(t *testing.T) {
	for _, row := range []struct {
		values []float64
		want   Spread
	}{
		{nil, Spread{}},
		{[]float64{0, 0}, Spread{}},
		{[]float64{100, 200, 300}, Spread{100, 200, 300, 0.5}},
		{[]float64{5}, Spread{5, 5, 5, 1}},
	} {
		got := SpreadOf(row.values)
		if math.Abs(got.Mean-row.want.Mean) > 1e-9 || got.Least != row.want.Least || got.Most != row.want.Most || math.Abs(got.Even-row.want.Even) > 1e-12 {
			t.Errorf("%v: %+v, want %+v", row.values, got, row.want)
		}
	}
}

// Hours stop at what leaves stand; the dark is told.
func TestHoursFor(t *testing.T) {
	for _, row := range []struct{ dli, ppfd, wanted, given, reaches float64 }{
		{8.64, 200, 12, 12, 8.64}, {17.28, 200, 24, 18, 12.96}, {17, 0, 24, 18, 0}, {0, 200, 0, 0, 0},
	} {
		got := HoursFor(row.dli, row.ppfd)
		for _, pair := range [][2]float64{{got.Wanted, row.wanted}, {got.Given, row.given}, {got.Reaches, row.reaches}} {
			if math.Abs(pair[0]-pair[1]) > 1e-9 {
				t.Errorf("%v mol at %v: %+v", row.dli, row.ppfd, got)
			}
		}
	}
	if least, usual, most := UsualHours(); least >= usual || usual >= most || most > 24-DarkHours() || StartClearMM() < LeafClearMM() {
		t.Errorf("hours %v %v %v, dark %v", least, usual, most, DarkHours())
	}
	if WattsFor(200, 1, 0, 1) != 0 {
		t.Error("a lamp without light takes power")
	}
}

func TestSources(t *testing.T) {
	if len(Sources()) != len(sources) {
		t.Fatalf("%d listed, %d known", len(Sources()), len(sources))
	}
	for _, s := range Sources() {
		if got, ok := FindSource(" " + string(s) + " "); !ok || got != s {
			t.Errorf("%s is not found", s)
		}
		if u := s.UmolPerJoule(); u < 4 || u > 5.6 || math.Abs(s.Watts(u)-1) > 1e-12 {
			t.Errorf("%s: %v µmol/J", s, u)
		}
	}
	if _, ok := FindSource("candle"); ok {
		t.Error("a candle is known")
	}
	if _, ok := RedBlueLED.PPFD(1000); ok {
		t.Error("a lux meter reads red and blue")
	}
	if Source("").UmolPerJoule() != WhiteLED.UmolPerJoule() {
		t.Error("an unknown source is no white LED")
	}
}

// Readings are kept at their places and never left behind between them.
func TestMeasured(t *testing.T) {
	if Measured(nil).PPFD(1, 1) != 0 {
		t.Error("light without a reading")
	}
	m := Measured{{Point{0, 0}, 100}, {Point{400, 0}, 200}}
	for x, want := range map[float64]float64{0: 100, 400: 200, 200: 150, 100: 110} {
		if got := m.At([]Point{{x, 0}})[0]; math.Abs(got-want) > 1e-9 {
			t.Errorf("at %v: %v, want %v", x, got, want)
		}
	}
}

func TestWhatIsSaidOfTheLight(t *testing.T) {
	good := Day{Crop: "butterhead", DLI: 14, Low: 12, High: 17, Hours: 16}
	with := func(change func(*Day)) Day { d := good; change(&d); return d }
	for _, row := range []struct {
		name string
		day  Day
		code string
	}{
		{"enough", good, ""},
		{"under the band", with(func(d *Day) { d.DLI = 9 }), "light-low"},
		{"dark", with(func(d *Day) { d.DLI = 0 }), "lamp-dark"},
		{"over the band", with(func(d *Day) { d.DLI = 17.5 }), "light-high"},
		{"a head over 17 mol", with(func(d *Day) { d.DLI, d.High, d.Heading = 18, 20, true }), "tip-burn"},
		{"a head with a fan", with(func(d *Day) { d.DLI, d.High, d.Heading, d.Fan = 18, 20, true, true }), ""},
		{"20 hours", with(func(d *Day) { d.Hours = 20 }), "light-long"},
		{"tomato without night", with(func(d *Day) { d.Hours, d.LongNight = 18.5, true }), "light-long night-short"},
		{"a window alone", with(func(d *Day) { d.WindowOnly = true }), "window-only"},
	} {
		codes := ""
		for _, f := range row.day.Check("lamps[0]") {
			if f.Text == "" || f.Hint == "" || f.Field != "lamps[0]" || f.Level == finding.Stop {
				t.Errorf("%s: %+v", row.name, f)
			}
			if codes != "" {
				codes += " "
			}
			codes += f.Code
		}
		if codes != row.code {
			t.Errorf("%s: said %q, want %q", row.name, codes, row.code)
		}
	}
	if len(Cautions()) < 3 {
		t.Error("cautions are missing")
	}
}

// The formulas shown are those that compute, and a pencil gets the same.
func TestFormulasAreTheOnesThatCompute(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := working.NewBook()
		check := func(what string, n working.Number, unit quantity.Unit, want float64) {
			if got := unit.From(n.Base); math.Abs(got-want) > 1e-9*(1+math.Abs(want)) {
				t.Fatalf("%s: the formula gives %v, the code %v", what, got, want)
			}
		}
		rig := Rig{drawLamp(t), drawLamp(t)}
		x, y := rapid.Float64Range(-500, 500).Draw(t, "place x"), rapid.Float64Range(-500, 500).Draw(t, "place y")
		level, ok := rig.Show(b, x, y)
		if !ok {
			t.Fatal("no lamp")
		}
		check("light", level, ppfdUnit, rig.PPFD(x, y))
		hours := rapid.Float64Range(0.5, 24).Draw(t, "h")
		check("DLI", ShowDLI(b, level, hours), dliUnit, DLI(rig.PPFD(x, y), hours))
		dli := rapid.Float64Range(1, 30).Draw(t, "dli")
		check("hours", ShowHours(b, level, dli), hoursADay, HoursFor(dli, rig.PPFD(x, y)).Wanted)
		check("kWh", ShowKWh(b, 44, hours, 35), kilowattHour, KWh(44, hours, 35))
		check("watts", ShowWatts(b, 200, 0.72, 2.5, 0.85), quantity.Watt, WattsFor(200, 0.72, 2.5, 0.85))
		lux := rapid.Float64Range(1, 1e5).Draw(t, "lux")
		shown, _ := WhiteLED.ShowLux(b, lux)
		want, _ := WhiteLED.PPFD(lux)
		check("lux", shown, ppfdUnit, want)
		leaves := rapid.Float64Range(0, 600).Draw(t, "leaves")
		check("raise", ShowRaise(b, 300, b.Typed("leaves", "leaves over the lid", "y", quantity.Length, leaves, 0)), quantity.Millimetre, RaiseMM(300, leaves))
	})
	b := working.NewBook()
	if _, ok := RedBlueLED.ShowLux(b, 1000); ok {
		t.Error("lux of red and blue shown")
	}
	if _, ok := (Rig{}).Show(b, 0, 0); ok {
		t.Error("light without a lamp shown")
	}
}

// What is shown of a small and a usual lamp comes out with a pencil.
func TestAPencilFollows(t *testing.T) {
	b := working.NewBook()
	level, _ := Rig{{Name: "bay lamp", AlongXMM: 80, AlongYMM: 1100, AboveMM: 300, FluxUmolS: 110}, {Name: "spot", XMM: 100, AboveMM: 400, FluxUmolS: 20}}.Show(b, 50, 120)
	ShowDLI(b, level, 16)
	ShowHours(b, level, 14)
	ShowKWh(b, 44, 16, 35)
	ShowWatts(b, 200, 0.72, 2.5, 0.85)
	WhiteLED.ShowLux(b, 11000)
	ShowRaise(b, 300, b.Typed("leaves", "leaves over the lid", "y", quantity.Length, 220, 0))
	for _, system := range []quantity.System{quantity.Metric, quantity.US} {
		for _, n := range b.Numbers() {
			if n.Law == nil {
				continue
			}
			shown := n.Show(system)
			if got, err := pencil.Round(shown.PutIn, shown.Decimals); err != nil || got != shown.Value {
				t.Errorf("%s is shown as %v, and %s gives %v, %v", n.Key, shown.Value, shown.PutIn, got, err)
			}
		}
	}
}

func BenchmarkPPFD(b *testing.B) {
	l := Lamp{AlongXMM: 80, AlongYMM: 1100, AboveMM: 300, FluxUmolS: 110}
	for b.Loop() {
		l.PPFD(50, 120)
	}
}
