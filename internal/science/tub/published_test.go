package tub

import (
	"math"
	"testing"

	"rootbell/internal/base/quantity"
)

const byHand = "computed by hand integration for this project"

// Volumes that others worked out. Lengths in mm, though the first is a pond:
// a shape does not know its size.
func TestPublishedVolumes(t *testing.T) {
	const exam = "worked examination solution, civinnovate.com/?p=18730, question 3"
	const nist = "NIST Special Publication 811, appendix B.8: one US gallon is 231 cubic inches, 3.785412 L"
	in := func(v float64) float64 { return 25.4 * v }
	pond := rectTub(t, [2]float64{50_000, 40_000}, [2]float64{34_000, 24_000}, 4000, 0, 0)
	sharp := rectTub(t, [2]float64{540, 360}, [2]float64{460, 290}, 300, 0, 0)
	rounded := rectTub(t, [2]float64{540, 360}, [2]float64{460, 290}, 300, 60, 40)
	gallon := rectTub(t, [2]float64{in(7), in(11)}, [2]float64{in(7), in(11)}, in(3), 0, 0)
	bucket, err := NewRound(288, 263, 362)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name    string
		tub     Shape
		depthMM float64
		litres  float64
		digit   float64 // of the last place printed
		source  string
	}{
		{"pond", pond, 4000, 5_461_330, 10, exam},
		{"pond, as a fraction", pond, 4000, 16384e3 / 3, 1e-6, "the same, 4/6 × 8192 m³"},
		{"tub, sharp corners", sharp, 300, 48.890, 1e-3, byHand},
		{"tub, sharp corners", sharp, 200, 30.539, 1e-3, byHand},
		{"tub, sharp corners", sharp, 150, 22.158, 1e-3, byHand},
		{"tub, round corners", rounded, 300, 48.2376, 1e-4, byHand},
		{"tub, round corners", rounded, 200, 30.1628, 1e-4, byHand},
		{"tub, round corners", rounded, 150, 21.8957, 1e-4, byHand},
		{"bucket", bucket, 362, 21.6, 0.1, byHand},
		{"a gallon", gallon, in(3), 3.785412, 1e-6, nist},
	} {
		if got := float64(c.tub.Volume(c.depthMM)); math.Abs(got-c.litres) > c.digit/2*(1+1e-9) {
			t.Errorf("%s to %g mm holds %.6f L, want %v (%s)", c.name, c.depthMM, got, c.litres, c.source)
		}
	}
	for _, c := range []struct {
		depthMM, areaM2 float64
		source          string
	}{{4000, 2000, exam}, {2000, 1344, exam}, {0, 816, exam}} {
		if got := pond.AreaMM2(c.depthMM) / 1e6; math.Abs(got-c.areaM2) > 1e-9 {
			t.Errorf("pond at %g mm: %v m², want %v (%s)", c.depthMM, got, c.areaM2, c.source)
		}
	}
	half, ok := rounded.Depth(rounded.Volume(300) / 2)
	if !ok || math.Abs(half-163.75) > 0.005 {
		t.Errorf("half the water of the tub with round corners stands %v mm deep, want 163.75 (%s)", half, byHand)
	}
	if got := quantity.USGallon.From(gallon.Volume(in(3)).Base()); math.Abs(got-1) > 1e-12 {
		t.Errorf("7 × 11 × 3 in are %v gal, want 1 (%s)", got, nist)
	}
}

func TestPublishedDensityOfWater(t *testing.T) {
	const tanaka = "computed from the formula of Tanaka et al., Metrologia 38 (2001) 301-309; its printed table not seen"
	// Another laboratory's water: its maximum is given as 999.9756 ± 0.0008, and
	// two measurements differ by the root of the sum of their squares. At 16 °C
	// it is 0.0009 above the formula.
	const other = "abstract on the absolute density of water at 16 °C and 0.101325 MPa, discovery.researcher.life"
	both := math.Hypot(8e-4, 8e-4)
	const handbook = "handbook of chemistry and physics, from memory"
	for _, c := range []struct {
		degC, kgPerM3, within float64
		source                string
	}{
		{3.983035, 999.97495, 5e-7, "Tanaka et al. 2001: the maximum is a constant of the formula"},
		{4, 999.9749, 5e-5, tanaka},
		{10, 999.7027, 5e-5, tanaka},
		{15, 999.1026, 5e-5, tanaka},
		{18, 998.5984, 5e-5, tanaka},
		{20, 998.2067, 5e-5, tanaka},
		{22, 997.7730, 5e-5, tanaka},
		{25, 997.0470, 5e-5, tanaka},
		{30, 995.6488, 5e-5, tanaka},
		{40, 992.2152, 5e-5, tanaka},
		{3.983, 999.9756, both, other},
		{16, 998.9468, both, other},
		{0, 999.84, 5e-3, handbook},
		{20, 998.21, 5e-3, handbook},
		{30, 995.65, 5e-3, handbook},
	} {
		got := densityLaw.Value(quantity.Celsius.Base(c.degC)) * 1e9
		if math.Abs(got-c.kgPerM3) > c.within {
			t.Errorf("at %g °C %.5f kg/m³, want %v (%s)", c.degC, got, c.kgPerM3, c.source)
		}
	}
	most, at := 0.0, 0.0
	for degC := 0.0; degC <= 40; degC += 0.001 {
		if d := densityLaw.Value(quantity.Celsius.Base(degC)); d > most {
			most, at = d, degC
		}
	}
	if math.Abs(at-3.983) > 0.0006 {
		t.Errorf("water is densest at %v °C, want 3.983 (Tanaka et al. 2001)", at)
	}
}

func rectTub(t testing.TB, top, base [2]float64, heightMM, radiusTop, radiusBase float64) Shape {
	t.Helper()
	s, err := NewRect(top, base, heightMM, radiusTop, radiusBase)
	if err != nil {
		t.Fatal(err)
	}
	return s
}
