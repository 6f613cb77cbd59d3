package web

import (
	"testing"

	"rootbell/internal/base/quantity"
)

// Each default in words is told in the units of the page. The sums: an inch is
// 25.4 mm, a US gallon 231 cubic inches, and a difference of 1 °C is 1.8 °F.
func TestADefaultInWordsIsToldInTheUnitsOfThePage(t *testing.T) {
	for _, c := range []struct{ text, metric, us string }{
		{"2 mm; 30 mm for foam", "2 mm; 30 mm for foam", "0.08 in; 1.18 in for foam"},
		{"0 mm, with a note", "0 mm, with a note", "0.00 in, with a note"},
		{"1 L/min for each 10 L", "1 L/min for each 10 L", "1 L/min for each 2.64 gal"},
		{"1 for each 20 L; 0 when still", "1 for each 20 L; 0 when still", "1 for each 5.28 gal; 0 when still"},
		{"5 °C under air_temperature", "5 °C under air temperature", "9 °F under air temperature"},
		{"5 mm; 1/4 in with US units", "5 mm", "1/4 in"},
		{"150 mg/L, and no acid dose", "150 mg/L, and no acid dose", "150 mg/L, and no acid dose"},
		{"the crop's", "the crop's", "the crop's"},
	} {
		if got := defaultWords(c.text, quantity.Metric); got != c.metric {
			t.Errorf("metric: %q, want %q", got, c.metric)
		}
		if got := defaultWords(c.text, quantity.US); got != c.us {
			t.Errorf("US: %q, want %q", got, c.us)
		}
	}
}
