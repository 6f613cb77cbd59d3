package quantity

import "testing"

// One of each unit, against the factors that standards publish.
func TestPublishedFactors(t *testing.T) {
	tests := []struct {
		kind   Kind
		text   string
		unit   Unit
		want   float64
		source string
	}{
		{Length, "1 in", Millimetre, 25.4, "NIST SP 811 (2008) B.8, exact (international yard and pound agreement, 1959)"},
		{Length, "1 ft", Metre, 0.3048, "NIST SP 811 (2008) B.8, exact"},
		{Length, "1 yd", Metre, 0.9144, "NIST SP 811 (2008) B.8, exact"},
		{Area, "1 in²", SquareCentimetre, 6.4516, "NIST SP 811 (2008) B.8, exact"},
		{Mass, "1 lb", Kilogram, 0.45359237, "NIST SP 811 (2008) B.8, exact (international yard and pound agreement, 1959)"},
		{Mass, "16 oz", Kilogram, 0.45359237, "NIST Handbook 44 Appendix C: 16 avoirdupois ounces are 1 pound"},
		{Volume, "1 gal", Litre, 3.785411784, "NIST Handbook 44 Appendix C: 231 cubic inches"},
		{Volume, "1 qt", Litre, 0.946352946, "NIST Handbook 44 Appendix C: 57.75 cubic inches"},
		{Volume, "1 pt", Litre, 0.473176473, "NIST Handbook 44 Appendix C: 28.875 cubic inches"},
		{Volume, "1 fl oz", Millilitre, 29.5735295625, "NIST Handbook 44 Appendix C: 1/128 gallon"},
		{Volume, "1 imp gal", Litre, 4.54609, "UK Weights and Measures Act 1985, Schedule 1, exact"},
		{Volume, "1 L", Litre, 1, "CGPM, 12th meeting 1964, Resolution 6: the litre is 1 dm³"},
		{Volume, "1 dm³", Litre, 1, "CGPM, 12th meeting 1964, Resolution 6: the litre is 1 dm³"},
		{Temperature, "32 °F", Celsius, 0, "NIST SP 811 (2008) B.8: t/°C = (t/°F − 32)/1.8"},
		{Temperature, "212 °F", Celsius, 100, "NIST SP 811 (2008) B.8: t/°C = (t/°F − 32)/1.8"},
		{Temperature, "-40 °F", Celsius, -40, "NIST SP 811 (2008) B.8: t/°C = (t/°F − 32)/1.8"},
		{Temperature, "273.15 K", Celsius, 0, "SI Brochure, 9th edition (2019), 2.3.1: t/°C = T/K − 273.15"},
		{Conductivity, "1 dS/m", MillisiemensPerCM, 1, "computed from the SI prefixes"},
	}
	for _, tt := range tests {
		base, err := Parse(tt.kind, tt.text)
		if err != nil {
			t.Errorf("%s: %v", tt.text, err)
			continue
		}
		// Kelvins near 300 leave eleven digits to a temperature.
		if got := tt.unit.From(base); !close15(got, tt.want) && (tt.kind != Temperature || abs(got-tt.want) > 1e-11) {
			t.Errorf("%s = %v %s, want %v (%s)", tt.text, got, tt.unit.Symbol, tt.want, tt.source)
		}
	}
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}
