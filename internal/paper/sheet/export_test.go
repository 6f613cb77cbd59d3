package sheet

import "rootbell/internal/paper/scene"

// Tile is one drawn page, for the tests that measure it.
type Tile struct {
	Window   scene.Box      // on the page
	Shows    scene.Box      // of the drawing
	Upright  [2]scene.Point // where the upright bars start, on the page
	Crosses  map[string]scene.Point
	Row, Col int
}

// TilesOf is how the lid is cut for a paper.
func TilesOf(l Lid, paper scene.Size) (scene.Size, []Tile) {
	t := l.tiling(paper)
	d := l.draft()
	for _, e := range d.drawing() {
		if label, ok := e.(scene.Text); ok {
			d.room.boxes = append(d.room.boxes, label.Bounds())
		}
	}
	crosses := d.crosses(t)
	var out []Tile
	for _, p := range t.places() {
		tile := Tile{Window: t.onPage(), Shows: t.shows(p), Crosses: map[string]scene.Point{}, Row: p.row, Col: p.column}
		bars := d.uprightBars(t, p, crosses)
		tile.Upright = [2]scene.Point{bars[0].(scene.Line).From, bars[len(bars)/2].(scene.Line).From}
		for _, c := range crosses {
			if tile.Shows.Holds(c.box(), 0.01) {
				tile.Crosses[c.name] = c.at
			}
		}
		out = append(out, tile)
	}
	return t.Paper, out
}

// Constants and rules that the tests hold against outside values.
const (
	MarginMM  = marginMM
	OverlapMM = overlapMM
	FootMM    = footMM
	StripMM   = stripMM
	TitleMM   = titleMM
)

// TabbedRing is the outline of a ring with its tab.
func TabbedRing(at scene.Point, radius, degrees float64) scene.Path {
	return tabbed(at, radius, degrees)
}

// CrossHeight is where the crosses of a seam stand that begins at a height.
func CrossHeight(d Dipstick, from float64) float64 { return d.crossHeight(from) }
