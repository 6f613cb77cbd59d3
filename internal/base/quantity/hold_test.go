package quantity

import "testing"

func TestTypedKeepsWhatWasTyped(t *testing.T) {
	var hole Typed[MM]
	if hole.Set() || hole.Or(76) != 76 {
		t.Errorf("the zero value is one left out: %+v", hole)
	}
	if err := hole.UnmarshalText([]byte("3 in")); err != nil {
		t.Fatal(err)
	}
	if !hole.Set() || hole.Text != "3 in" || hole.Value != 76.2 || hole.Or(1) != 76.2 {
		t.Errorf("3 in is held as %+v", hole)
	}
	if err := hole.UnmarshalText([]byte("4 lb")); err == nil || hole.Text != "3 in" {
		t.Errorf("a mistake changed the value to %+v (%v)", hole, err)
	}
}

// A value typed in the unit that is stored, or one decimal step from it, is
// stored as its decimal reads, to the last bit.
func TestStoredAsTheDecimalReads(t *testing.T) {
	check := func(text string, got, want float64, err error) {
		if err != nil || got != want {
			t.Errorf("%s is held as %v (%v), want %v", text, got, err, want)
		}
	}
	mm, err := ParseAs[MM]("14.5 cm")
	check("14.5 cm", float64(mm), 145, err)
	mm, err = ParseAs[MM]("1 1/2 in")
	check("1 1/2 in", float64(mm), 38.1, err)
	deg, err := ParseAs[DegC]("21.3 °C")
	check("21.3 °C", float64(deg), 21.3, err)
	deg, err = ParseAs[DegC]("-0.1 °C")
	check("-0.1 °C", float64(deg), -0.1, err)
	l, err := ParseAs[L]("0.75 gal")
	check("0.75 gal", float64(l), 2.839058838, err)
	ec, err := ParseAs[MSPerCM]("360 µS/cm")
	check("360 µS/cm", float64(ec), 0.36, err)
	mg, err := ParseAs[MGPerL]("0.12 g/L")
	check("0.12 g/L", float64(mg), 120, err)
	share, err := ParseAs[Fraction]("6.5 %")
	check("6.5 %", float64(share), 0.065, err)
	co2, err := ParseAs[MoleShare]("800 ppm")
	check("800 ppm", float64(co2), 0.0008, err)
	flow, err := ParseAs[LPerMin]("120 L/h")
	check("120 L/h", float64(flow), 2, err)
}

func TestIntervals(t *testing.T) {
	tests := []struct {
		text      string
		low, high MGPerL
		err       string
	}{
		{"80 to 120 mg/L", 80, 120, ""},
		{"80 mg/L to 120 mg/L", 80, 120, ""},
		{"80–120 mg/L", 80, 120, ""},
		{"80 - 120 mg/L", 80, 120, ""},
		{"80-120 mg/L", 80, 120, ""},
		{"0.08 g/L to 120 mg/L", 80, 120, ""},
		{"80 to 80 mg/L", 80, 80, ""},
		{"90 mg/L", 90, 90, ""},
		{"120 to 80 mg/L", 0, 0, "'120 to 80 mg/L' begins with the larger figure (write the smaller one first)"},
		{"80 to 120", 0, 0, "'120' has no unit (add one, such as mg/L, g/L or ppm)"},
		{"80 cm to 120 mg/L", 0, 0, "cm is not a unit of content (use mg/L, g/L or ppm)"},
		{"80 to", 0, 0, "the unit 'to' is not known (use mg/L, g/L or ppm)"},
		{"to 80 mg/L", 0, 0, "'to 80 mg/L' does not begin with a number (type a number and a unit, such as 120 mg/L)"},
	}
	for _, tt := range tests {
		got, err := ParseIntervalAs[MGPerL](tt.text)
		if (err == nil) != (tt.err == "") || err != nil && err.Error() != tt.err {
			t.Errorf("%q: %v, want %q", tt.text, err, tt.err)
			continue
		}
		if got.Low != tt.low || got.High != tt.high {
			t.Errorf("%q is %v to %v, want %v to %v", tt.text, got.Low, got.High, tt.low, tt.high)
		}
		if err == nil && (got.Text != tt.text || got.Mid() != (tt.low+tt.high)/2) {
			t.Errorf("%q: kept %q, middle %v", tt.text, got.Text, got.Mid())
		}
	}
}
