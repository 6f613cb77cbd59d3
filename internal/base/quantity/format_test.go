package quantity

import (
	"math"
	"strings"
	"testing"
)

// spaced makes no-break spaces readable.
func spaced(text string) string { return strings.ReplaceAll(text, noBreak, " ") }

func TestFormat(t *testing.T) {
	tests := []struct {
		kind   Kind
		base   float64
		system System
		want   string
	}{
		{Length, 145, Metric, "14.5 cm"},
		{Length, 76.2, US, "3.00 in"},
		{SmallLength, 76, Metric, "76.0 mm"},
		{Length, -3, Metric, "−0.3 cm"},
		{Length, -0.3, Metric, "0.0 cm"},
		{Volume, Litre.Base(25.04), Metric, "25.0 L"},
		{Volume, Litre.Base(3.785411784), US, "1.00 gal"},
		{Mass, 1.9, Metric, "1.9 kg"},
		{Mass, 0.45359237, US, "1.0 lb"},
		{Temperature, Celsius.Base(21), Metric, "21.0 °C"},
		{Temperature, Celsius.Base(21), US, "69.8 °F"},
		{Conductivity, MillisiemensPerCM.Base(1.4), US, "1.40 mS/cm"},
		{Share, 0.8, Metric, "80 %"},
		{MoleFraction, 8e-4, Metric, "800 ppm"},
		{Count, 8, Metric, "8"},
		{Money, 92, Metric, "92.00"},
		{Length, math.NaN(), Metric, "–"},
		{Length, math.Inf(1), Metric, "–"},
	}
	for _, tt := range tests {
		if got := spaced(Format(tt.kind, tt.base, tt.system)); got != tt.want {
			t.Errorf("Format(%s, %v, %s) = %q, want %q", tt.kind.Name, tt.base, tt.system, got, tt.want)
		}
	}
}

// A pencil rounds a half up; the binary fractions nearest to these halves lie
// below them.
func TestHalvesGoAwayFromZero(t *testing.T) {
	tests := []struct {
		value    float64
		decimals int
		want     float64
	}{
		{0.25, 1, 0.3},
		{0.285, 2, 0.29},
		{-0.285, 2, -0.29},
		{0.1 + 0.2, 1, 0.3},
		{2.4999, 0, 2},
		{25.84999, 1, 25.8},
		{1234567890123.44, 1, 1234567890123.4},
		{4.5e15, 1, 4.5e15},
		{-2.5, 0, -3},
		{math.Inf(1), 1, math.Inf(1)},
		{1.005, 2, 1.01},
		{2.675, 2, 2.68},
		{14.35, 1, 14.4},
		{-0.25, 1, -0.3},
		{0.5, 0, 1},
		{2.5, 0, 3},
		{0.249, 1, 0.2},
		{-0.04, 1, 0},
		{1e300, 2, 1e300},
		{1234.5, -2, 1200},
	}
	for _, tt := range tests {
		if got := Round(tt.value, tt.decimals); got != tt.want || math.Signbit(got) != math.Signbit(tt.want) {
			t.Errorf("Round(%v, %d) = %v, want %v", tt.value, tt.decimals, got, tt.want)
		}
	}
	if got := Round(math.NaN(), 1); !math.IsNaN(got) {
		t.Errorf("no number rounds to %v", got)
	}
}

func TestMarks(t *testing.T) {
	tests := []struct {
		mm     float64
		system System
		want   string
	}{
		{144.5, US, "5 11/16 in"},
		{6.35, US, "1/4 in"},
		{-6.35, US, "−1/4 in"},
		{76.2, US, "3 in"},
		{76.9, US, "3 in"},
		{0, US, "0 in"},
		{0.7, US, "0 in"},
		{0.8, US, "1/16 in"},
		{25.3, US, "1 in"},
		{12.7, US, "1/2 in"},
		{145, Metric, "14.5 cm"},
		{144.6, Metric, "14.5 cm"},
		{math.NaN(), US, "–"},
		{math.Inf(-1), US, "–"},
	}
	for _, tt := range tests {
		if got := spaced(FormatMark(tt.mm, tt.system)); got != tt.want {
			t.Errorf("FormatMark(%v, %s) = %q, want %q", tt.mm, tt.system, got, tt.want)
		}
	}
}
