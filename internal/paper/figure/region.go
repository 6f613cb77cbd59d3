package figure

import (
	"math"

	"rootbell/internal/base/plane"
	"rootbell/internal/paper/scene"
)

// regionCellPX is how finely the edge of the region for centres is followed;
// its corners are cut off by less.
const regionCellPX = 2.0

// regionShown says whether the drawing has room for the edge of the region: in
// the hand drawing of many small holes it would run through their numbers.
func (f *lidFigure) regionShown() bool {
	const leastPX = 8.0
	return f.laid && (!f.hand || f.lid.HoleMM/2*f.scale >= leastPX)
}

// region is the chain line inside which centres may lie: so far from the lid's
// edge, from the tub's wall and from what is kept clear.
func (f *lidFigure) region() {
	if !f.regionShown() {
		return
	}
	b := f.outline.Bounds()
	within := scene.Box{Min: scene.PointOf(b.Min), Max: scene.PointOf(b.Max)}
	for _, edge := range contour(f.roomAt, within, regionCellPX/f.scale, 0.2/f.scale) {
		path := f.pixels(edge)
		f.printf(`<path class="cen" d="%s"/>`, pathData(path))
		f.room.path(path, weights["cen"], softPX)
	}
}

// roomAt is how far a centre could still move, in mm; below zero where none may
// lie.
func (f *lidFigure) roomAt(at scene.Point) float64 {
	p := plane.Point{X: at.X, Y: at.Y}
	room := f.outline.Distance(p) - f.lid.EdgeMM
	if f.lid.Wall != nil {
		room = math.Min(room, f.lid.Wall.Distance(p)-f.lid.WallMM)
	}
	for _, k := range f.clear {
		room = math.Min(room, -k.Shape.Distance(p)-f.lid.ClearMM)
	}
	return room
}
