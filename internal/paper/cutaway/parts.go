package cutaway

import (
	"math"
	"slices"

	"rootbell/internal/paper/scene"
)

// ShelfMM is how thick a board is drawn; its thickness is not asked for.
const ShelfMM = 18

// Boards are the shelf and, where the bay's clear height is known, the board
// over it; half is half their drawn width.
func (c Cut) Boards(half float64) []scene.Box {
	out := []scene.Box{box(-half, -c.FloorMM-ShelfMM, half, -c.FloorMM)}
	if c.ClearMM > 0 {
		out = append(out, box(-half, c.ClearMM-c.FloorMM, half, c.ClearMM-c.FloorMM+ShelfMM))
	}
	return out
}

// Walls are the tub's, from rim over floor to rim; the rim reaches out to the
// outside width.
func (c Cut) Walls() scene.Path {
	var left, right []scene.Point
	for _, w := range c.Profile {
		left = append(left, scene.Point{X: -w.MM / 2, Y: w.HeightMM})
		right = append(right, scene.Point{X: w.MM / 2, Y: w.HeightMM})
	}
	slices.Reverse(left)
	rim := c.Rim()
	path := append([]scene.Point{{X: -c.OutsideWidthMM / 2, Y: rim}}, left...)
	path = append(append(path, right...), scene.Point{X: c.OutsideWidthMM / 2, Y: rim})
	return scene.Polyline(path...)
}

// Feet are the lines from the tub's floor down to the shelf.
func (c Cut) Feet() []scene.Path {
	x := c.Profile[0].MM / 2 * 0.9
	return []scene.Path{
		scene.Polyline(scene.Point{X: -x}, scene.Point{X: -x, Y: -c.FloorMM}),
		scene.Polyline(scene.Point{X: x}, scene.Point{X: x, Y: -c.FloorMM}),
	}
}

// Water is the area of the water up to a level.
func (c Cut) Water(level float64) scene.Path {
	left := []scene.Point{{X: -c.HalfInside(level), Y: level}}
	right := []scene.Point{{X: c.HalfInside(level), Y: level}}
	for _, w := range slices.Backward(c.Profile) {
		if w.HeightMM < level {
			left = append(left, scene.Point{X: -w.MM / 2, Y: w.HeightMM})
			right = append(right, scene.Point{X: w.MM / 2, Y: w.HeightMM})
		}
	}
	slices.Reverse(right)
	return scene.Polygon(append(left, right...)...)
}

// Lid are the pieces between the cups.
func (c Cut) Lid() []scene.Box {
	var out []scene.Box
	low := c.LidFaceMM - math.Max(c.LidThicknessMM, 1)
	from := c.OnLid(0)
	at := slices.Clone(c.CupsAtMM)
	slices.Sort(at)
	for _, x := range append(at, math.Inf(1)) {
		to := math.Min(c.OnLid(c.LidWidthMM), c.OnLid(x)-c.Cup.BodyMM/2)
		if to > from {
			out = append(out, box(from, low, to, c.LidFaceMM))
		}
		from = math.Max(from, to+c.Cup.BodyMM)
	}
	return out
}

// Taper is how much narrower a cup is drawn at its bottom.
const Taper = 0.75

// CupBottom is the height of the cups' bottom.
func (c Cut) CupBottom() float64 { return c.LidFaceMM - c.Cup.DepthMM }

// CupAt is the cup that hangs at x, open at the top.
func (c Cut) CupAt(x float64) scene.Path {
	top, bottom := c.LidFaceMM+1, c.CupBottom()
	body, rim := c.Cup.BodyMM/2, c.Cup.RimMM/2
	return scene.Polyline(
		scene.Point{X: x - rim, Y: top}, scene.Point{X: x - body, Y: top}, scene.Point{X: x - body*Taper, Y: bottom},
		scene.Point{X: x + body*Taper, Y: bottom}, scene.Point{X: x + body, Y: top}, scene.Point{X: x + rim, Y: top},
	)
}

// Roots hang from the cup at x to below the lowest safe line.
func (c Cut) Roots(x float64) []scene.Path {
	body, bottom := c.Cup.BodyMM/2, c.CupBottom()
	var out []scene.Path
	for _, share := range []float64{-0.5, -0.2, 0.15, 0.45} {
		end := math.Max(c.LowestMM-20, bottom-80+60*math.Abs(share))
		out = append(out, scene.Polyline(
			scene.Point{X: x + body*share, Y: bottom}, scene.Point{X: x + body*share*1.3, Y: (bottom + end) / 2}, scene.Point{X: x + body*share*1.2, Y: end},
		))
	}
	return out
}

// PlantAt is the outline of the plant at x as it will be at harvest, as high and
// as wide as it is said to be; ok is false where its size is not known.
func (c Cut) PlantAt(x float64) (path scene.Path, ok bool) {
	if c.PlantMM <= 0 || c.SpreadMM <= 0 {
		return scene.Path{}, false
	}
	const steps = 16
	widths := make([]float64, steps+1)
	widest := 0.0
	for i := range widths {
		widths[i] = leafage(float64(i) / steps)
		widest = math.Max(widest, widths[i])
	}
	var left, right []scene.Point
	for i, w := range widths {
		half, y := c.SpreadMM/2*w/widest, c.LidFaceMM+c.PlantMM*float64(i)/steps
		left = append(left, scene.Point{X: x - half, Y: y})
		right = append(right, scene.Point{X: x + half, Y: y})
	}
	slices.Reverse(left)
	return scene.Polygon(append(right, left[1:]...)...), true
}

// leafage is how wide a plant is at a share of its height: narrow at the foot,
// round over the lid, with the waves of its leaves. A convention, no law.
func leafage(up float64) float64 {
	round := math.Sqrt(math.Max(0, up*(1-up))) * 2
	return (0.12*(1-up) + round) * (1 + 0.05*math.Sin(6*math.Pi*up))
}

// LampMM is how high a lamp is drawn.
const LampMM = 25

// Lamp is the lamp as it hangs on transplant day; ok is false without one.
func (c Cut) Lamp() (lamp scene.Box, ok bool) {
	half, low := math.Max(c.LampWideMM, 40)/2, c.LidFaceMM+c.LampMM
	return box(-half, low, half, low+LampMM), c.LampMM > 0
}
