package quantity

import (
	"math"
	"testing"
)

func TestWhatTeachersType(t *testing.T) {
	tests := []struct {
		kind Kind
		text string
		unit Unit
		want float64 // in unit
	}{
		{Length, "3 in", Inch, 3},
		{Length, "3in", Inch, 3},
		{Length, `3"`, Inch, 3},
		{Length, "3 in.", Inch, 3},
		{Length, "3 Inches", Inch, 3},
		{Length, "1/4 in", Inch, 0.25},
		{Length, "1 1/2 in", Inch, 1.5},
		{Length, "1-1/2 in", Inch, 1.5},
		{Length, `16 1/4"`, Inch, 16.25},
		{Length, "2½ in", Inch, 2.5},
		{Length, "¾ in", Inch, 0.75},
		{Length, "1⁄4 in", Inch, 0.25},
		{Length, `5'2"`, Inch, 62},
		{Length, "5’ 2”", Inch, 62},
		{Length, "5 ft 2 in", Inch, 62},
		{Length, "5 ft 2 1/2 in", Inch, 62.5},
		{Length, "1 m 20 cm", Centimetre, 120},
		{Length, "14,5 cm", Centimetre, 14.5},
		{Length, "14.5 cm", Centimetre, 14.5},
		{Length, ".5 in", Inch, 0.5},
		{Length, "0,125 in", Inch, 0.125},
		{Length, "12\u00a0mm", Millimetre, 12},
		{Length, "12\u202fmm", Millimetre, 12},
		{Length, "−3 mm", Millimetre, -3},
		{Length, "-3 mm", Millimetre, -3},
		{Length, "+3 mm", Millimetre, 3},
		{Length, "0", Millimetre, 0},
		{Volume, "45 L", Litre, 45},
		{Volume, "45 l", Litre, 45},
		{Volume, "45 ℓ", Litre, 45},
		{Volume, "45 litres", Litre, 45},
		{Volume, "45 Liters", Litre, 45},
		{Volume, "750 ml", Litre, 0.75},
		{Volume, "750 cm³", Litre, 0.75},
		{Volume, "0.75 gal", USGallon, 0.75},
		{Volume, "0.75 US gal", USGallon, 0.75},
		{Volume, "0.75 U.S. gallons", USGallon, 0.75},
		{Volume, "0.75 gal (US)", USGallon, 0.75},
		{Volume, "2 imp gal", ImperialGallon, 2},
		{Volume, "2 gal (imp)", ImperialGallon, 2},
		{Volume, "2 gal(imp)", ImperialGallon, 2},
		{Volume, "2 UK gal", ImperialGallon, 2},
		{Volume, "2 Imperial Gallons", ImperialGallon, 2},
		{Volume, "4 qt", USGallon, 1},
		{Volume, "8 pints", USGallon, 1},
		{Volume, "16 cups", USGallon, 1},
		{Volume, "128 fl. oz.", USGallon, 1},
		{Volume, "1 gal 2 qt", USGallon, 1.5},
		{Mass, "2 lb 3 oz", Ounce, 35},
		{Mass, "3/4 oz", Ounce, 0.75},
		{Mass, "1.9 kg", Kilogram, 1.9},
		{Mass, "20 g", Gram, 20},
		{Temperature, "70F", Fahrenheit, 70},
		{Temperature, "70 °F", Fahrenheit, 70},
		{Temperature, "70 degrees Fahrenheit", Fahrenheit, 70},
		{Temperature, "21 °C", Celsius, 21},
		{Temperature, "21ºC", Celsius, 21},
		{Temperature, "21 ℃", Celsius, 21},
		{Temperature, "−5 °C", Celsius, -5},
		{Conductivity, "1.4 mS/cm", MillisiemensPerCM, 1.4},
		{Conductivity, "1400 µS/cm", MillisiemensPerCM, 1.4},
		{Conductivity, "1400 μS/cm", MillisiemensPerCM, 1.4},
		{Conductivity, "1400 uS/cm", MillisiemensPerCM, 1.4},
		{Conductivity, "1.4 dS/m", MillisiemensPerCM, 1.4},
		{Content, "120 mg/L", MilligramPerL, 120},
		{Content, "120 mg/l", MilligramPerL, 120},
		{Content, "120 ppm", MilligramPerL, 120},
		{Content, "0.12 g/L", MilligramPerL, 120},
		{Density, "1.05 kg/L", KilogramPerLitre, 1.05},
		{Density, "1.05 g/mL", KilogramPerLitre, 1.05},
		{AirFlow, "2 L/min", LitrePerMinute, 2},
		{AirFlow, "2 lpm", LitrePerMinute, 2},
		{AirFlow, "120 L/h", LitrePerMinute, 2},
		{DailyVolume, "0.8 L/d", LitrePerDay, 0.8},
		{DailyVolume, "0.8 litres a day", LitrePerDay, 0.8},
		{DailyVolume, "800 mL per day", LitrePerDay, 0.8},
		{Power, "44 W", Watt, 44},
		{PhotonFlux, "110 µmol/s", MicromolePerSecond, 110},
		{PhotonFlux, "110 umol/s", MicromolePerSecond, 110},
		{MoleFraction, "800 ppm", PPM, 800},
		{Share, "6.5 %", Percent, 6.5},
		{Share, "6.5%", Percent, 6.5},
		{Share, "50 percent", Percent, 50},
		{Time, "2 weeks", Day, 14},
		{PHScale, "5.8", One, 5.8},
		{Money, "92.00", One, 92},
		{Factor, "-2.5", One, -2.5},
	}
	for _, tt := range tests {
		base, err := Parse(tt.kind, tt.text)
		if err != nil {
			t.Errorf("Parse(%s, %q): %v", tt.kind.Name, tt.text, err)
			continue
		}
		if want := tt.unit.Base(tt.want); !close15(base, want) {
			t.Errorf("Parse(%s, %q) = %v, want %v", tt.kind.Name, tt.text, base, want)
		}
	}
}

// close15 tells whether two numbers agree in the 14 digits that are left of a
// float64 after a few conversions.
func close15(a, b float64) bool {
	return math.Abs(a-b) <= 1e-14*max(math.Abs(a), math.Abs(b))
}

func TestWhatCannotBeAQuantity(t *testing.T) {
	tests := []struct {
		kind       Kind
		text       string
		what, hint string
	}{
		{Length, "", "nothing is typed here", "type a number and a unit, such as 3 in"},
		{Length, "  ", "nothing is typed here", "type a number and a unit, such as 3 in"},
		{Length, "3", "'3' has no unit", "add one, such as mm, cm, m, in or ft"},
		{Volume, "0", "'0' has no unit", "add one, such as mL, L, gal (US), imp gal, qt, pt or fl oz"},
		{Length, "3 lb", "lb is not a unit of length", "use mm, cm, m, in or ft"},
		{Length, "3 inn", "the unit 'inn' is not known", "use mm, cm, m, in or ft"},
		{Volume, "12 oz", "oz is not a unit of volume", "oz is a mass; write fl oz for a volume"},
		{Conductivity, "1.4 mS", "mS is not a unit of conductivity", "write mS/cm if that is what the meter shows"},
		{Temperature, "21", "'21' has no unit", "add one, such as °C or °F"},
		{Volume, "1,500 L", "'1,500' can be read as 1500 or as 1.500", "write 1500 or 1.500"},
		{Volume, "1,500.5 L", "the number '1,500.5' has more than one point or comma", "write it without thousands separators, such as 1500 or 1500.5"},
		{Volume, "1.500.000 L", "the number '1.500.000' has more than one point or comma", "write it without thousands separators, such as 1500 or 1500.5"},
		{Volume, "1 500 L", "there are two numbers in '1 500 L'", "write one number without spaces in it, such as 1500"},
		{Length, "NaN", "'NaN' is not a number one can measure", "type the figure, such as 3 in"},
		{Length, "-inf cm", "'inf cm' is not a number one can measure", "type the figure, such as 3 in"},
		{Length, "∞", "'∞' is not a number one can measure", "type the figure, such as 3 in"},
		{Length, "1e3 mm", "the number is written with an exponent", "write it out, such as 1500 or 0.0015"},
		{Length, "1e999999999 mm", "the number is written with an exponent", "write it out, such as 1500 or 0.0015"},
		{Length, "99999999999999999999 mm", "the number is too large", "check the digits"},
		{Volume, "-3 L", "a volume cannot be negative", "leave out the minus sign"},
		{Mass, "−3 g", "a mass cannot be negative", "leave out the minus sign"},
		{Temperature, "-300 °C", "nothing is colder than −273.2 °C", "check the number and the unit"},
		{Length, "5'2", `'5'2' has no unit`, "add one, such as mm, cm, m, in or ft"},
		{Length, "12 in 5 ft", "'12 in 5 ft' holds two quantities", "write one, such as 5 ft 2 in"},
		{Length, "5 ft 13 in", "'5 ft 13 in' has more in than make one ft", "write it as one number"},
		{Length, "5 ft -2 in", "there is a minus sign in the middle of '5 ft -2 in'", "write one quantity"},
		{Temperature, "70 °F 2 °C", "'70 °F 2 °C' holds two temperatures", "write one"},
		{Length, "1/0 in", "the fraction divides by zero", "write it like 1/4 or 1 1/2"},
		{Length, "1 5/4 in", "the fraction after 1 is not less than one", "write a mixed number such as 1 1/2"},
		{Length, "1.5 1/2 in", "'1.5 1/2 in' has a decimal number and a fraction", "write 1 1/2 or 1.5"},
		{Length, ".", "there is no number in it", "begin with a number, such as 3 in"},
		{Length, "about 3 in", "'about 3 in' does not begin with a number", "type a number and a unit, such as 3 in"},
		{PHScale, "5.8 mm", "mm is not a unit of pH", "write only the number"},
		{Money, "12 EUR", "'12 EUR' is not an amount of money", "write only the number"},
		{Length, "3 \x01in", "there is an invisible control character in it", "type it again"},
		{Length, "3 \xffin", "this is not text", "type a number and a unit, such as 3 in"},
	}
	for _, tt := range tests {
		base, err := Parse(tt.kind, tt.text)
		bad, is := err.(*Error)
		if !is {
			t.Errorf("Parse(%s, %q) = %v, %v; want an *Error", tt.kind.Name, tt.text, base, err)
			continue
		}
		if spaced(bad.What) != tt.what || spaced(bad.Hint) != tt.hint {
			t.Errorf("Parse(%s, %q) says\n  %q\n  %q\nwant\n  %q\n  %q", tt.kind.Name, tt.text, bad.What, bad.Hint, tt.what, tt.hint)
		}
	}
}
