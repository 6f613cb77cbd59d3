package reading

import (
	"math"
	"testing"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

func book() *working.Book { return working.NewBook() }

// What 1 mS/cm is on each scale, and figures that others turned over.
func TestPublishedScales(t *testing.T) {
	const (
		pages = "two growers' explanations of meter scales, read: 1 mS/cm is 500 or 700 ppm; 2.4 mS/cm is 1200 ppm on the 500 scale"
		usda  = "USDA Agriculture Handbook 60 (1954): 640 mg/L for 1 mmho/cm, from memory"
		si    = "NIST Special Publication 811: 1 S/m = 10 mS/cm; prefixes milli and micro"
	)
	for _, c := range []struct {
		text   string
		scale  Scale
		mS     float64
		source string
	}{
		{"1200", PPM500, 2.4, pages},
		{"500 ppm", PPM500, 1, pages},
		{"2800", PPM700, 4, pages},
		{"640", PPM640, 1, usda},
		{"1413", MicroSiemens, 1.413, si},
		{"1413 µS/cm", PPM500, 1.413, si},
		{"1.4", MilliSiemens, 1.4, si},
		{"1.4", "", 1.4, si},
		{"1 dS/m", MicroSiemens, 1, si},
	} {
		got, err := ParseEC(c.text, c.scale)
		if err != nil || math.Abs(float64(got.Low)-c.mS) > 1e-12 || got.Low != got.High || got.Text != c.text {
			t.Errorf("%q on %q: %+v, %v; want %v mS/cm (%s)", c.text, c.scale, got, err, c.mS, c.source)
		}
		shown := EC{Read: got, Scale: c.scale}.Shown(book(), "ec")
		if back := quantity.MillisiemensPerCM.From(shown.Base); math.Abs(back-c.mS) > 1e-12 {
			t.Errorf("%q on %q is shown as %v mS/cm", c.text, c.scale, back)
		}
	}
	for _, text := range []string{"700 ppm", "ppm", "-3", "", "six"} {
		if got, err := ParseEC(text, MilliSiemens); err == nil {
			t.Errorf("%q in mS/cm is read as %+v", text, got)
		}
	}
}

// The straight line to 25 °C, held against a handbook's potassium chloride.
func TestPublishedTemperature(t *testing.T) {
	const crc = "CRC Handbook 5-73 (Pratt et al., Pure Appl. Chem. 73:1783, 2001): KCl 0.01 mol/kg, 1141.45 µS/cm at 15 °C, 1273.03 at 20, 1408.23 at 25, 1546.63 at 30"
	// With its own slope of 1.9 %/K the handbook's figure at 25 °C comes out; the
	// law's slope is a nutrient solution's, so that KCl is off by what the slopes
	// differ: 0.1 %/K over 10 K.
	for _, c := range []struct {
		uS, degC, within float64
	}{{1141.45, 15, 0.015}, {1273.03, 20, 0.006}, {1408.23, 25, 1e-9}, {1546.63, 30, 0.006}} {
		got := At25(book(), "ec", quantity.MSPerCM(c.uS/1000), quantity.DegC(c.degC))
		at := quantity.MillisiemensPerCM.From(got.Base) * 1000
		if math.Abs(at/1408.23-1) > c.within {
			t.Errorf("%v µS/cm at %v °C are %v at 25 °C, want 1408.23 within %v (%s)", c.uS, c.degC, at, c.within, crc)
		}
	}
	// The same figure with three slopes, each result rounded as printed.
	for slope, uS := range map[float64]float64{1.894: 1408.2, 1.91: 1410.9, 2: 1426.8} {
		own := at25Law.Value(quantity.MSPerCM(1.14145).Base(), slope, quantity.Celsius.Base(15))
		if at := quantity.MillisiemensPerCM.From(own) * 1000; math.Abs(at-uS) > 0.05 {
			t.Errorf("with %v %%/K: %v µS/cm, want %v (computed by hand from %s)", slope, at, uS, crc)
		}
	}
	const usgs = "computed with the USGS speciation program PHREEQC 3, Hoagland no. 2: 1473 µS/cm at 10 °C, 1673 at 15, 1879 at 20, 2090 at 25, 2303 at 30"
	for degC, uS := range map[float64]float64{10: 1473, 15: 1673, 20: 1879, 30: 2303} {
		at := quantity.MillisiemensPerCM.From(At25(book(), "ec", quantity.MSPerCM(uS/1000), quantity.DegC(degC)).Base) * 1000
		if math.Abs(at/2090-1) > 0.01 {
			t.Errorf("%v µS/cm at %v °C are %v, want 2090 within 1 %% (%s)", uS, degC, at, usgs)
		}
	}
	r := Row{EC: ec(1.14145), Water: typed[quantity.DegC](15)}
	if got, ok := r.AtTwentyFive(); !ok || got.Read.Low != 1.14145 {
		t.Errorf("a meter that does it by itself is corrected again: %v", got.Read)
	}
	r.EC.Raw = true
	if got, ok := r.AtTwentyFive(); !ok || got.Read.Low < 1.42 || got.Read.Low > 1.43 {
		t.Errorf("a raw figure: %v, %v", got.Read, ok)
	}
	r.Water = quantity.Typed[quantity.DegC]{}
	if _, ok := r.AtTwentyFive(); ok {
		t.Error("a raw figure without a temperature counts")
	}
}

// How sure a reading is. All common practice, no source.
func TestHowSureAReadingIs(t *testing.T) {
	strip := func(low, high, step float64) PH {
		return PH{Read: quantity.Interval[quantity.PH]{Low: quantity.PH(low), High: quantity.PH(high), Text: "x"}, With: Strip, Step: quantity.PH(step)}
	}
	old := ph(6)
	old.Calibrated = day(monday.AddDate(0, 0, -31))
	edge := ph(6)
	edge.Calibrated = day(monday.AddDate(0, 0, -30))
	unknown := ph(6)
	unknown.Calibrated = time.Time{}
	ahead := ph(6)
	ahead.Calibrated = day(monday.AddDate(0, 0, 1))
	for _, c := range []struct {
		name      string
		ph        PH
		low, high float64
	}{
		{"meter calibrated today", ph(6), 5.8, 6.2},
		{"calibrated 30 days ago", edge, 5.8, 6.2},
		{"calibrated 31 days ago", old, 5.5, 6.5},
		{"nobody knows", unknown, 5.5, 6.5},
		{"calibrated tomorrow", ahead, 5.5, 6.5},
		{"one colour", strip(6.5, 6.5, 0), 6, 7},
		{"one colour of a finer strip", strip(6.5, 6.5, 0.2), 6.3, 6.7},
		{"between two colours", strip(6, 6.5, 0.5), 6, 6.5},
		{"not said with what", PH{Read: ph(6).Read}, 5.5, 6.5},
	} {
		got, ok := c.ph.Sure(monday)
		if !ok || math.Abs(float64(got.Low)-c.low) > 1e-12 || math.Abs(float64(got.High)-c.high) > 1e-12 {
			t.Errorf("%s: %v", c.name, got)
		}
	}
	got, ok := ec(1.5).Sure()
	if !ok || math.Abs(float64(got.Low)-1.37) > 1e-12 || math.Abs(float64(got.High)-1.63) > 1e-12 {
		t.Errorf("EC 1.5 on a pen: %v, want 1.37 to 1.63 (0.1 mS/cm and 2 %%)", got)
	}
	if _, ok := (PH{}).Sure(monday); ok {
		t.Error("a pH that was not read is sure")
	}
}

// The card of a meter. All common practice, no source.
func TestMeterPassport(t *testing.T) {
	on := monday
	ago := func(days int) time.Time { return day(on.AddDate(0, 0, -days)) }
	for _, c := range []struct {
		name  string
		card  Passport
		codes []string
	}{
		{"ready", Passport{Measures: FieldPH, Calibrated: ago(7), Bottles: []Bottle{{Name: "buffer 7", Opened: ago(100)}}}, nil},
		{"a day over", Passport{Measures: FieldPH, Calibrated: ago(8)}, []string{"meter-due"}},
		{"EC has a month", Passport{Measures: FieldEC, Calibrated: ago(30)}, nil},
		{"and not more", Passport{Measures: FieldEC, Calibrated: ago(31)}, []string{"meter-due"}},
		{"nobody knows", Passport{Measures: FieldPH}, []string{"meter-unknown"}},
		{"tomorrow", Passport{Measures: FieldPH, Calibrated: ago(-1)}, []string{"meter-ahead"}},
		{"bottle open for long", Passport{Measures: FieldPH, Calibrated: ago(1), Bottles: []Bottle{{Name: "buffer 4", Opened: ago(200)}}}, []string{"bottle-old"}},
		{"bottle past its date", Passport{Measures: FieldPH, Calibrated: ago(1), Bottles: []Bottle{{Name: "buffer 4", Opened: ago(10), UseBy: ago(1)}}}, []string{"bottle-old"}},
		{"bottle good to the day", Passport{Measures: FieldPH, Calibrated: ago(1), Bottles: []Bottle{{Name: "buffer 4", UseBy: ago(0)}}}, nil},
		{"bottle without a date", Passport{Measures: FieldPH, Calibrated: ago(1), Bottles: []Bottle{{Name: "buffer 4"}}}, []string{"bottle-unknown"}},
	} {
		got := c.card.Check(on)
		if len(got) != len(c.codes) || len(got) > 0 && got[0].Code != c.codes[0] {
			t.Errorf("%s: %+v, want %v", c.name, got, c.codes)
		}
	}
	end, _ := Bottle{Opened: time.Date(2026, 8, 31, 0, 0, 0, 0, time.UTC)}.Good()
	if end.Format(time.DateOnly) != "2027-02-28" {
		t.Errorf("six months from 31 August end on %v", end)
	}
}
