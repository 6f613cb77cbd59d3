package plan

import (
	"math"
	"testing"
)

// What labels print, by hand with the US gallon of 3.7854118 L and the US
// teaspoon of 4.9289 mL (units 2.22).
func TestDosesAsLabelsPrintThem(t *testing.T) {
	for _, c := range []struct {
		text    string
		mL, gOf float64
	}{
		{"2 mL/L", 2, 0},
		{"2ml/l", 2, 0},
		{"5 mL per 10 L", 0.5, 0},
		{"5 mL / 10 L", 0.5, 0},
		{"1 g/L", 0, 1},
		{"0,8 g per L", 0, 0.8},
		{"1 tsp/gal", 4.92892 / 3.7854118, 0},
		{"1/2 tsp per gal", 4.92892 / 2 / 3.7854118, 0},
		{"1 oz per 10 gal", 0, 28.349523 / 37.854118},
	} {
		var d Dose
		if err := d.readText(c.text, Key{}); err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		if math.Abs(d.MLPerL-c.mL) > 1e-5 || math.Abs(d.GPerL-c.gOf) > 1e-5 || d.Text != c.text {
			t.Errorf("%s: %+v, want %v mL or %v g", c.text, d, c.mL, c.gOf)
		}
	}
	for _, text := range []string{"", "/", "2 mL/", "/ L", "per L", "2 cm/L", "2 mL/kg", "mL per L", "-1 mL/L", "0 mL/L"} {
		var d Dose
		if err := d.readText(text, Key{}); err == nil || d.Set() {
			t.Errorf("%q is taken as %+v", text, d)
		}
	}
}

func FuzzDose(f *testing.F) {
	for _, text := range []string{"2 mL/L", "5 mL per 10 L", "1 g/L", "1/2 tsp/gal", "per", "/", "1e9 g/L", "1 g / 0,0001 mL"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var d Dose
		err := d.readText(text, Key{})
		each := d.MLPerL + d.GPerL
		if err == nil && !(each > 0 && each <= strongestDose) || err != nil && d != (Dose{}) || d.MLPerL > 0 && d.GPerL > 0 {
			t.Errorf("%q: %+v, %v", text, d, err)
		}
	})
}
