package cutaway_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/paper/cutaway"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

func tub(t *rapid.T) cutaway.Cut {
	length := func(name string, from, to float64) float64 { return rapid.Float64Range(from, to).Draw(t, name) }
	base, high := length("base", 200, 500), length("height", 150, 400)
	c := cutaway.Cut{
		Profile:        []cutaway.Width{{HeightMM: 0, MM: base}, {HeightMM: high, MM: base + length("taper", 0, 80)}},
		OutsideWidthMM: base + 120, LidWidthMM: base + 100, LidThicknessMM: 2, LidFaceMM: high + 2,
		Cup: sheet.Cup{BodyMM: 50, RimMM: 60, DepthMM: 60}, FillMM: high - 50, LowestMM: 60, Aerated: true, StoneMM: 25,
	}
	for x := 60.0; x < c.LidWidthMM-60 && len(c.CupsAtMM) < 4; x += length("apart", 70, 160) {
		c.CupsAtMM = append(c.CupsAtMM, x)
	}
	return c
}

// The water of a straight wall is a trapezium: half the sum of its parallel
// sides, times the height between them.
func TestWaterIsATrapezium(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := tub(t)
		base, top := c.Profile[0], c.Profile[1]
		level := rapid.Float64Range(1, top.HeightMM).Draw(t, "level")
		v := c.Water(level).Vertices
		area := 0.0
		for i, p := range v {
			q := v[(i+1)%len(v)]
			area += (p.X*q.Y - q.X*p.Y) / 2
		}
		surface := base.MM + (top.MM-base.MM)*level/top.HeightMM
		if want := (base.MM + surface) / 2 * level; math.Abs(math.Abs(area)-want) > 1e-6*want {
			t.Errorf("area %g, want %g", area, want)
		}
	})
}

// The lid's pieces and the cups' bodies make up its length between them.
func TestLidIsCutWhereCupsHang(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := tub(t)
		sum := float64(len(c.CupsAtMM)) * c.Cup.BodyMM
		for _, piece := range c.Lid() {
			sum += piece.Width()
			for _, at := range c.CupsAtMM {
				body := scene.Box{Min: scene.Point{X: c.OnLid(at) - 24.9, Y: piece.Min.Y}, Max: scene.Point{X: c.OnLid(at) + 24.9, Y: piece.Max.Y}}
				if piece.Overlaps(body) {
					t.Errorf("the lid runs through the cup at %g", at)
				}
			}
		}
		if math.Abs(sum-c.LidWidthMM) > 1e-6 {
			t.Errorf("pieces and cups make %g of %g mm", sum, c.LidWidthMM)
		}
	})
}

// The pump stands outside the tub with its underside over the water, and the
// lead hangs lower than both the pump and the socket (common practice: drops
// fall off at the lowest point).
func TestThePumpStaysDry(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := tub(t)
		a, ok := c.Air()
		if !ok {
			t.Fatal("an aerated tub has no air")
		}
		if a.Pump.Min.X <= c.OutsideWidthMM/2 || a.Pump.Min.Y <= c.FillMM {
			t.Errorf("the pump stands at %v, water at %g", a.Pump.Min, c.FillMM)
		}
		if a.LoopLow >= a.Socket.Y || a.LoopLow >= a.Pump.Min.Y {
			t.Errorf("the lead's loop reaches down to %g only", a.LoopLow)
		}
		if half := c.HalfInside(0); a.Stone.Max.X > half || a.Stone.Min.Y < 0 {
			t.Errorf("the stone at %v sticks out of a tub %g wide", a.Stone, 2*half)
		}
		c.Aerated = false
		if _, ok := c.Air(); ok {
			t.Error("a still tub has a pump")
		}
	})
}

// A plant is as high and as wide as it is said to be: its height stands beside it.
func TestPlantKeepsItsSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := tub(t)
		c.PlantMM, c.SpreadMM = rapid.Float64Range(80, 500).Draw(t, "high"), rapid.Float64Range(80, 300).Draw(t, "spread")
		plant, ok := c.PlantAt(10)
		b := plant.Bounds()
		if !ok || math.Abs(b.Max.Y-c.LidFaceMM-c.PlantMM) > 1e-9 || math.Abs(b.Width()-c.SpreadMM) > 1e-9 || b.Min.Y != c.LidFaceMM {
			t.Errorf("a plant of %g by %g mm is drawn %g by %g", c.PlantMM, c.SpreadMM, b.Max.Y-c.LidFaceMM, b.Width())
		}
	})
}
