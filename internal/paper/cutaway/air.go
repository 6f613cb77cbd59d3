package cutaway

import (
	"math"

	"rootbell/internal/paper/scene"
)

// Sizes of the air pump as it is drawn, and how far over the water it hangs.
const (
	pumpWide, pumpHigh = 70.0, 50.0
	pumpOverWater      = 70.0
)

// Air is what blows air into the water: the stone on the tub's floor, its line
// over the lid, the check valve in it, and the pump outside the tub, above the
// water line, with its lead.
type Air struct {
	Stone    scene.Box
	HasStone bool
	Line     scene.Path
	Valve    scene.Point // the line runs level there
	Pump     scene.Box
	// Lead runs from the pump down into a loop and up again to the socket, so
	// that drops fall off at the lowest point.
	Lead    scene.Path
	Socket  scene.Point
	LoopLow float64 // height of the loop's lowest point
}

// Air is laid out for an aerated tub; ok is false for a still one.
func (c Cut) Air() (a Air, ok bool) {
	if !c.Aerated {
		return Air{}, false
	}
	stone := c.HalfInside(0) * 0.55
	side := c.OutsideWidthMM/2 + 20
	low := c.FillMM + pumpOverWater
	high := math.Max(low+pumpHigh*0.6, c.LidFaceMM+30)
	inlet := c.OnLid(c.LidWidthMM) - 25
	a.HasStone = c.StoneMM > 0
	a.Stone = box(stone-30, 2, stone+30, 2+c.StoneMM)
	a.Line = scene.Polyline(
		scene.Point{X: stone + 20, Y: 2 + c.StoneMM}, scene.Point{X: inlet, Y: c.FillMM * 0.6}, scene.Point{X: inlet, Y: high},
		scene.Point{X: side + pumpWide*0.4, Y: high}, scene.Point{X: side + pumpWide*0.4, Y: low + pumpHigh},
	)
	a.Valve = scene.Point{X: (inlet+side)/2 + 12, Y: high}
	a.Pump = box(side, low, side+pumpWide, low+pumpHigh)
	from, loop := scene.Point{X: side + pumpWide*0.7, Y: low}, low-120
	a.Socket = scene.Point{X: side + pumpWide*1.6, Y: low - 45}
	a.Lead = scene.Path{Vertices: []scene.Vertex{
		{Point: from},
		{Point: scene.Point{X: from.X, Y: loop}, Bulge: 1},
		{Point: scene.Point{X: a.Socket.X, Y: loop}},
		{Point: a.Socket},
	}}
	a.LoopLow = loop - (a.Socket.X-from.X)/2
	return a, true
}
