package quantity

import (
	"math"
	"testing"
)

func FuzzParse(f *testing.F) {
	for _, text := range []string{
		"3 in", "1 1/2 in", `5'2"`, "0.75 gal (US)", "70F", "1.4 mS/cm", "80 to 120 mg/L", "−3 mm", "1e999 m", "½ in",
		"99999999999999999 kg/L", "1/0 in", "2 lb 3 oz", "\u00a03\u202fcm", "1,500 L", "--3", "3-", "0x1p4 m", "5 ft 2", "%", "µ/µ",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, k := range allKinds {
			base, err := Parse(k, text)
			if _, is := err.(*Error); err != nil && !is {
				t.Fatalf("%q: %T is no *Error", text, err)
			}
			if math.IsNaN(base) || math.IsInf(base, 0) || err != nil && base != 0 {
				t.Fatalf("%q as %s = %v, %v", text, k.Name, base, err)
			}
			low, high, err := ParseInterval(k, text)
			if math.IsNaN(low+high) || math.IsInf(low, 0) || math.IsInf(high, 0) || low > high || err != nil && (low != 0 || high != 0) {
				t.Fatalf("%q as %s = %v to %v, %v", text, k.Name, low, high, err)
			}
			if err == nil {
				Format(k, low, US)
			}
		}
	})
}
