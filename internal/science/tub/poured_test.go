package tub

import (
	"encoding/binary"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/quantity"
)

// anyPoured is a tub measured in one to eight steps.
func anyPoured(t *rapid.T) Shape {
	var steps []Pour
	var at Pour
	for range rapid.IntRange(1, 8).Draw(t, "steps") {
		at.Volume += quantity.L(rapid.Float64Range(0.5, 20).Draw(t, "litres more"))
		at.DepthMM += rapid.Float64Range(1, 100).Draw(t, "mm more")
		steps = append(steps, at)
	}
	s, err := NewPoured(steps)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestPouredTubsReadBetweenTheirSteps(t *testing.T) {
	s, err := NewPoured([]Pour{{10, 80}, {5, 41}, {20, 150}})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		depthMM float64
		litres  quantity.L
		areaMM2 float64
	}{
		{0, 0, 5e6 / 41},
		{20.5, 2.5, 5e6 / 41},
		{41, 5, 5e6 / 39},
		{60.5, 7.5, 5e6 / 39},
		{115, 15, 10e6 / 70},
		{150, 20, 10e6 / 70},
		{200, 20, 10e6 / 70},
	} {
		if got := s.Volume(c.depthMM); math.Abs(float64(got-c.litres)) > 1e-12 {
			t.Errorf("at %v mm %v L, want %v", c.depthMM, got, c.litres)
		}
		if got := s.AreaMM2(c.depthMM); math.Abs(got/c.areaMM2-1) > 1e-12 {
			t.Errorf("at %v mm %v mm², want %v", c.depthMM, got, c.areaMM2)
		}
	}
	if s.HeightMM() != 150 || s.IsRound() {
		t.Errorf("height %v, round %v", s.HeightMM(), s.IsRound())
	}
	if _, _, _, ok := s.Wall(100); ok {
		t.Error("the wall of a poured tub is not known")
	}
}

// A tub poured in n even steps of depth differs from the true one by at most
// the chord's error: h²/8 times how fast the area grows.
func TestPouringFollowsTheTrueTubWithinTheChord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyTub(t)
		n := rapid.IntRange(2, 20).Draw(t, "steps")
		var steps []Pour
		for i := 1; i <= n; i++ {
			d := s.HeightMM() * float64(i) / float64(n)
			steps = append(steps, Pour{s.Volume(d), d})
		}
		p, err := NewPoured(steps)
		if err != nil {
			t.Fatal(err)
		}
		h := s.HeightMM()
		steepest := max(math.Abs(s.AreaMM2(h*1e-6)-s.AreaMM2(0)), math.Abs(s.AreaMM2(h)-s.AreaMM2(h*(1-1e-6)))) / (h * 1e-6)
		bound := h / float64(n) * h / float64(n) / 8 * steepest / 1e6
		d := h * rapid.Float64Range(0, 1).Draw(t, "at")
		if off := math.Abs(float64(p.Volume(d) - s.Volume(d))); off > bound*1.001+1e-6 {
			t.Fatalf("poured in %d steps it is %v L off at %v mm, bound %v", n, off, d, bound)
		}
	})
}

func TestPouringsThatAreNone(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name  string
		steps []Pour
		says  string
	}{
		{"none", nil, "at least one step"},
		{"more water, same depth", []Pour{{5, 41}, {10, 41}}, "at 10 L does not stand deeper"},
		{"more water, less deep", []Pour{{5, 41}, {10, 40}}, "at 10 L does not stand deeper"},
		{"the same water twice", []Pour{{5, 41}, {5, 60}}, "at 5 L"},
		{"nought litres", []Pour{{0, 10}}, "0 L"},
		{"less than nought", []Pour{{-5, -3}, {5, 41}}, "more than nought"},
		{"litres below nought", []Pour{{-5, 3}, {5, 41}}, "-5 L"},
		{"no depth", []Pour{{5, 0}}, "more than nought"},
		{"no number of litres", []Pour{{quantity.L(nan), 41}}, "NaN L"},
		{"no number of mm", []Pour{{5, nan}}, "more than nought"},
		{"endless litres", []Pour{{quantity.L(inf), 41}}, "+Inf L"},
		{"endless depth", []Pour{{5, inf}}, "below 100 m"},
	} {
		if s, err := NewPoured(c.steps); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %+v, %v", c.name, s, err)
		}
	}
}

func TestNewPouredLeavesItsStepsAlone(t *testing.T) {
	steps := []Pour{{10, 80}, {5, 41}}
	if _, err := NewPoured(steps); err != nil || steps[0].Volume != 10 {
		t.Errorf("%v, %v", steps, err)
	}
}

func FuzzNewPoured(f *testing.F) {
	seed := func(v ...float64) {
		var b []byte
		for _, x := range v {
			b = binary.LittleEndian.AppendUint64(b, math.Float64bits(x))
		}
		f.Add(b, 7.0)
	}
	seed(5, 41, 10, 80)
	seed(math.NaN(), 1, 2, math.Inf(1))
	seed(5e-324, 5e-324, 1e8, 1e5)
	f.Fuzz(func(t *testing.T, raw []byte, at float64) {
		var steps []Pour
		for ; len(raw) >= 16; raw = raw[16:] {
			steps = append(steps, Pour{
				quantity.L(math.Float64frombits(binary.LittleEndian.Uint64(raw))), math.Float64frombits(binary.LittleEndian.Uint64(raw[8:])),
			})
		}
		if s, err := NewPoured(steps); err == nil {
			holdsWater(t, s, at)
		}
	})
}
