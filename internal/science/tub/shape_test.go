package tub

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
)

// anyTub is a rectangular tub with corners up to a half circle, or a round one.
func anyTub(t *rapid.T) Shape {
	mm := func(name string, least, most float64) float64 { return rapid.Float64Range(least, most).Draw(t, name) }
	height := mm("height", 20, 900)
	if rapid.Bool().Draw(t, "round") {
		s, err := NewRound(mm("top", 50, 1500), mm("base", 50, 1500), height)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	top := [2]float64{mm("top length", 50, 1500), mm("top width", 50, 1500)}
	base := [2]float64{mm("base length", 50, 1500), mm("base width", 50, 1500)}
	corner := func(name string, side [2]float64) float64 { return mm(name, 0, min(side[0], side[1])/2) }
	s, err := NewRect(top, base, height, corner("top corner", top), corner("base corner", base))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// slices adds up thin slices of the tub, each measured by a ruler: the water's
// outline is cut into strips and never put into a formula for an area.
func slices(s Shape, depthMM float64) quantity.L {
	const layers = 400
	sum := 0.0
	for i := range layers {
		length, width, radius, _ := s.Wall(depthMM * (float64(i) + 0.5) / layers)
		sum += outlineMM2(length, width, radius) * depthMM / layers
	}
	return quantity.L(sum / 1e6)
}

// outlineMM2 is a rounded rectangle's area by the midpoint rule, strip by strip
// across its corners.
func outlineMM2(length, width, radius float64) float64 {
	const strips = 400
	corners := 0.0
	for i := range strips {
		// The strips are even in the angle, so that none meets a steep end.
		a, b := math.Pi/2*float64(i)/strips, math.Pi/2*float64(i+1)/strips
		wide := radius * (math.Sin(b) - math.Sin(a))
		corners += wide * (width - 2*radius + 2*radius*math.Cos((a+b)/2))
	}
	return (length-2*radius)*width + 2*corners
}

// sliceTolerance is what 400 layers and 400 strips leave of a volume: the
// midpoint rule errs by (1/400)²/24 of the curvature, which is at most a few
// times the volume itself.
const sliceTolerance = 5e-6

func TestVolumeIsTheSumOfThinSlicesAtEveryDepth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyTub(t)
		depth := s.HeightMM() * rapid.Float64Range(0.01, 1).Draw(t, "filled")
		got, want := s.Volume(depth), slices(s, depth)
		if math.Abs(float64(got/want-1)) > sliceTolerance {
			t.Fatalf("%.9f L, in slices %.9f L", got, want)
		}
	})
}

// Simpson's rule has a quadratic exactly, however it is divided.
func TestPrismoidalFormulaIsExactAtEveryDepth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyTub(t)
		depth := s.HeightMM() * rapid.Float64Range(0.01, 1).Draw(t, "filled")
		const parts = 16
		sum := 0.0
		for i := range parts {
			lo, hi := depth*float64(i)/parts, depth*float64(i+1)/parts
			sum += (hi - lo) / 6 * (s.AreaMM2(lo) + 4*s.AreaMM2((lo+hi)/2) + s.AreaMM2(hi))
		}
		if got := s.Volume(depth).Base(); math.Abs(got/sum-1) > 1e-12 {
			t.Fatalf("%v mm³ at once, %v in parts", got, sum)
		}
	})
}

func TestDepthAndVolumeUndoEachOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyTub(t)
		if rapid.Bool().Draw(t, "poured") {
			s = anyPoured(t)
		}
		depth := s.HeightMM() * rapid.Float64Range(0, 1).Draw(t, "filled")
		v := s.Volume(depth)
		back, ok := s.Depth(v)
		if !ok || math.Abs(back-depth) > 1e-9*s.HeightMM() {
			t.Fatalf("%v mm hold %v L, which stand %v mm deep, %v", depth, v, back, ok)
		}
	})
}

func TestVolumeRisesWithDepthAndStopsAtTheEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyTub(t)
		if rapid.Bool().Draw(t, "poured") {
			s = anyPoured(t)
		}
		a, b := rapid.Float64Range(0, 1).Draw(t, "a"), rapid.Float64Range(0, 1).Draw(t, "b")
		low, high := s.HeightMM()*min(a, b), s.HeightMM()*max(a, b)
		if high-low > 1e-9 && s.Volume(low) >= s.Volume(high) {
			t.Fatalf("%v mm hold %v L, %v mm %v L", low, s.Volume(low), high, s.Volume(high))
		}
		if s.Volume(-1) != 0 || s.Volume(0) != 0 || s.Volume(s.HeightMM()+1) != s.Volume(s.HeightMM()) {
			t.Fatal("water below the floor or above the rim")
		}
		full := s.Volume(s.HeightMM())
		for _, v := range []quantity.L{-0.001, full * 1.001, quantity.L(math.NaN()), quantity.L(math.Inf(1))} {
			if d, ok := s.Depth(v); ok {
				t.Fatalf("%v L stand %v mm deep in a tub of %v L", v, d, full)
			}
		}
	})
}

func TestAreaIsThatOfTheWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyTub(t)
		at := s.HeightMM() * rapid.Float64Range(0, 1).Draw(t, "at")
		length, width, radius, ok := s.Wall(at)
		if want := outlineMM2(length, width, radius); !ok || math.Abs(s.AreaMM2(at)/want-1) > sliceTolerance {
			t.Fatalf("area %v, of the wall's outline %v", s.AreaMM2(at), want)
		}
		if s.IsRound() != (length == width && radius == length/2) {
			t.Skip("a rectangle may be a circle too")
		}
	})
}

func TestShapesThatAreNone(t *testing.T) {
	bad := []float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e300}
	good := []float64{520, 360, 460, 300, 220}
	for i := range good {
		for _, v := range bad {
			m := append([]float64(nil), good...)
			m[i] = v
			if s, err := NewRect([2]float64{m[0], m[1]}, [2]float64{m[2], m[3]}, m[4], 40, 40); err == nil {
				t.Errorf("rectangular, %v: %+v", m, s)
			}
		}
	}
	for _, r := range [][2]float64{{-1, 40}, {40, -1}, {181, 40}, {40, 151}, {math.NaN(), 40}, {40, math.NaN()}, {math.Inf(1), 0}, {0, math.Inf(-1)}} {
		if s, err := NewRect([2]float64{520, 360}, [2]float64{460, 300}, 220, r[0], r[1]); err == nil {
			t.Errorf("corners %v: %+v", r, s)
		}
	}
	for _, v := range bad {
		for i := range 3 {
			m := []float64{288, 263, 362}
			m[i] = v
			if s, err := NewRound(m[0], m[1], m[2]); err == nil {
				t.Errorf("round, %v: %+v", m, s)
			}
		}
	}
	if _, err := NewRect([2]float64{520, 360}, [2]float64{460, 300}, 220, 180, 150); err != nil {
		t.Errorf("half circles at the ends: %v", err)
	}
}

func TestTheZeroShapeHoldsNothing(t *testing.T) {
	var s Shape
	if v := s.Volume(100); v != 0 {
		t.Errorf("volume %v", v)
	}
	if a := s.AreaMM2(0); a != 0 {
		t.Errorf("area %v", a)
	}
	if d, ok := s.Depth(1); ok {
		t.Errorf("a litre stands %v deep", d)
	}
	if _, _, _, ok := s.Wall(0); ok {
		t.Error("it has a wall")
	}
}

func FuzzNewRect(f *testing.F) {
	f.Add(520.0, 360.0, 460.0, 300.0, 220.0, 40.0, 40.0, 100.0)
	f.Add(1.0, 1e-300, 1e5, 1e5, 5e-324, 0.0, 0.5e-300, 1e300)
	f.Add(math.NaN(), 1.0, 1.0, 1.0, math.Inf(1), math.NaN(), -1.0, math.NaN())
	f.Fuzz(func(t *testing.T, a, b, c, d, h, r, q, at float64) {
		if s, err := NewRect([2]float64{a, b}, [2]float64{c, d}, h, r, q); err == nil {
			holdsWater(t, s, at)
		}
	})
}

func FuzzNewRound(f *testing.F) {
	f.Add(288.0, 263.0, 362.0, 21.6)
	f.Add(math.Inf(1), 1e-320, 5e-324, math.NaN())
	f.Fuzz(func(t *testing.T, top, base, h, at float64) {
		if s, err := NewRound(top, base, h); err == nil {
			holdsWater(t, s, at)
		}
	})
}

func holdsWater(t *testing.T, s Shape, at float64) {
	full := float64(s.Volume(s.HeightMM()))
	if !(full >= 0 && full <= mostL) {
		t.Fatalf("%+v holds %v L", s, full)
	}
	if v := float64(s.Volume(at)); !math.IsNaN(at) && !(v >= 0 && v <= full*(1+1e-12)) {
		t.Fatalf("%+v holds %v of %v L up to %v", s, v, full, at)
	}
	if d, ok := s.Depth(quantity.L(at)); ok && !(d >= 0 && d <= s.HeightMM()) {
		t.Fatalf("%+v: %v L stand %v mm deep", s, at, d)
	}
}

func BenchmarkDepth(b *testing.B) {
	s := rectTub(b, [2]float64{520, 360}, [2]float64{460, 300}, 220, 40, 40)
	half := s.Volume(220) / 2
	b.ReportAllocs()
	for b.Loop() {
		if _, ok := s.Depth(half); !ok {
			b.Fatal("half the water has no depth")
		}
	}
}
