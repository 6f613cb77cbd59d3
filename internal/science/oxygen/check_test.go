package oxygen

import (
	"strings"
	"testing"

	"rootbell/internal/base/finding"
)

func TestWhatIsSaidOfTheOxygen(t *testing.T) {
	for _, row := range []struct {
		name  string
		taken float64
		level finding.Level
		code  string
	}{
		{"few roots", 5, finding.Note, ""},
		{"a good crop", 24, finding.Note, "oxygen-aim"},
		{"a full tub", 36, finding.Warn, "oxygen-low"},
		{"too much for the stone", 45, finding.Warn, "oxygen-short"},
	} {
		tub := Tub{Water: Water{TempC: 21, PressureKPa: Atmosphere}, Air: Air{1, 150, 0.025}, Litres: 24, UptakeMgH: row.taken}
		said := tub.Check("tubs[0].air")
		code := ""
		for _, f := range said {
			if code = f.Code; f.Level != row.level || f.Field != "tubs[0].air" || !strings.Contains(f.Hint, "L/min") {
				t.Errorf("%s: %+v", row.name, f)
			}
		}
		if code != row.code {
			t.Errorf("%s: settles at %.1f, said %q, want %q", row.name, tub.Steady(), code, row.code)
		}
	}
	hot := Tub{Water: Water{TempC: 39, PressureKPa: 70}, Litres: 20, UptakeMgH: 10}
	if said := hot.Check("x"); len(said) != 1 || strings.Contains(said[0].Hint, "L/min") {
		t.Errorf("no air holds 6 mg/L at 39 °C: %+v", said)
	}
}

func TestWhatIsSaidOfWarmWaterAndTheAirLine(t *testing.T) {
	for _, row := range []struct {
		tempC   float64
		spinach bool
		said    int
	}{{24, false, 0}, {24, true, 1}, {25, false, 0}, {25.5, false, 1}} {
		if got := CheckWater("place", row.tempC, row.spinach); len(got) != row.said {
			t.Errorf("%+v: %+v", row, got)
		}
	}
	if got := CheckValve("tubs[0].air.pump", 150, 25, 400); got != nil {
		t.Errorf("a pump above the water: %+v", got)
	}
	if got := CheckValve("tubs[0].air.pump", 150, 25, -300); len(got) != 1 || !strings.Contains(got[0].Text, "2.5 cm") {
		t.Errorf("a pump on the floor: %+v", got)
	}
}
