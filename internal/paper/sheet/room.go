package sheet

import (
	"math"
	"strconv"

	"rootbell/internal/paper/scene"
)

func itoa(n int) string { return strconv.Itoa(n) }

// Costs of covering a thing with lettering or a bar: only their order counts.
const (
	costCentre  = 1000.0
	costCircle  = 30.0
	costClear   = 10.0
	costOutline = 3.0
	costOutside = 1.0 // per mm
)

// room is what stands on the drawing already, kept ready so that many places
// can be tried for a label or a bar.
type room struct {
	discs  []disc
	boxes  []scene.Box
	line   []scene.Point // along the outline, a step apart
	around scene.Box
}

type disc struct {
	at     scene.Point
	radius float64
}

// draft is a lid being drawn.
type draft struct {
	Lid
	room room
}

func (l Lid) draft() draft {
	r := room{around: l.Outline.Bounds(), line: stepped(l.Outline)}
	for _, h := range l.Holes {
		r.discs = append(r.discs, disc{h.At(), h.SizeMM / 2})
	}
	if l.Service != nil {
		r.discs = append(r.discs, disc{l.Service.At(), l.Service.SizeMM / 2})
	}
	if l.AirLine != nil {
		r.discs = append(r.discs, disc{l.AirLine.At(), l.AirLine.SizeMM / 2})
	}
	for _, k := range l.KeepClear {
		r.boxes = append(r.boxes, k.Shape.Bounds())
	}
	return draft{l, r}
}

// covers is what a box laid on the drawing would cover: nothing at 0.
func (r room) covers(box scene.Box) float64 {
	cost := 0.0
	for _, d := range r.discs {
		cost += coversCircle(box, d.at, d.radius)
	}
	for _, b := range r.boxes {
		if box.Overlaps(b) {
			cost += costClear
		}
	}
	if !r.around.Grown(edgeMM).Overlaps(box) {
		return cost
	}
	for _, p := range r.line {
		if nearest(box, p) == p {
			return cost + costOutline
		}
	}
	return cost
}

// outside is how far a box sticks out of the lid, as a cost.
func (r room) outside(box scene.Box) float64 {
	x := math.Max(r.around.Min.X-box.Min.X, box.Max.X-r.around.Max.X)
	y := math.Max(r.around.Min.Y-box.Min.Y, box.Max.Y-r.around.Max.Y)
	return costOutside * (math.Max(0, x) + math.Max(0, y))
}

// coversCircle counts the crosshair with its ticks, and the circle.
func coversCircle(box scene.Box, at scene.Point, radius float64) float64 {
	near := nearest(box, at).Distance(at)
	switch {
	case near < math.Min(crossMM, radius+tickMM):
		return costCentre
	case near < radius+tickMM:
		return costCircle + radius - near
	}
	return 0
}

// nearest is the point of the box that is nearest to p.
func nearest(b scene.Box, p scene.Point) scene.Point {
	return scene.Point{
		X: math.Max(b.Min.X, math.Min(p.X, b.Max.X)),
		Y: math.Max(b.Min.Y, math.Min(p.Y, b.Max.Y)),
	}
}

// stepMM is how closely a line is followed when looking for room; a label is
// higher than that.
const stepMM = 2.0

// stepped are points along a closed path, at most a step apart.
func stepped(path scene.Path) []scene.Point {
	corners := path.Flat(0.2)
	var out []scene.Point
	for i, p := range corners {
		q := corners[(i+1)%len(corners)]
		n := max(1, int(math.Ceil(p.Distance(q)/stepMM)))
		for k := range n {
			out = append(out, p.Plus(q.Minus(p).Times(float64(k)/float64(n))))
		}
	}
	return out
}

// beside sets a label to the right, left, under or over a thing of the given
// half sizes, where it covers least.
func (d draft) beside(at scene.Point, halfWidth, halfHeight float64, text string) scene.Element {
	low := scene.Point{Y: -labelMM * 0.35}
	right := scene.Point{X: halfWidth + 1}
	up := scene.Point{Y: halfHeight + 1 + labelMM*0.25}
	down := scene.Point{Y: -halfHeight - 1 - labelMM*0.76}
	choices := []scene.Text{
		{At: at.Plus(right).Plus(low), Anchor: scene.Start},
		{At: at.Minus(right).Plus(low), Anchor: scene.End},
		{At: at.Plus(down), Anchor: scene.Middle},
		{At: at.Plus(up), Anchor: scene.Middle},
	}
	best, least := choices[0], math.Inf(1)
	for _, choice := range choices {
		choice.Text, choice.SizeMM, choice.Halo = text, labelMM, true
		box := choice.Bounds()
		if cost := d.room.covers(box) + d.room.outside(box); cost < least {
			best, least = choice, cost
		}
	}
	return best
}
