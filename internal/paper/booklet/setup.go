package booklet

import (
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// setUpScale is the scale of the set-up drawing: one to so many.
const setUpScale = 3

// What the set-up shows besides the saw, in mm of the real thing; sizes of the
// bench and board are usual ones, not asked for.
const (
	benchMM  = 30
	boardMM  = 18
	lidMM    = 2.0
	sawDepth = 40
	arborMM  = 10
	shankMM  = 30
	mostSaw  = 130
	letterMM = sheet.LetteringMM
)

// setUp draws lid, board and bench clamped together under the saw, cut through,
// in a frame of the given width.
func (c card) setUp(width float64) (scene.Box, []scene.Element) {
	saw := 76.0
	if len(c.Holes) > 0 {
		saw = min(c.Holes[0].SizeMM, mostSaw)
	}
	const k = 1.0 / setUpScale
	middle := width / 2
	at := func(x, y float64) scene.Point { return scene.Point{X: middle + x*k, Y: y*k + 9} }
	box := func(x0, y0, x1, y1 float64) scene.Box { return scene.Box{Min: at(x0, y0), Max: at(x1, y1)} }
	half := saw/2 + 45
	board, top := float64(benchMM), float64(benchMM+boardMM)
	lid := top + lidMM

	bench := scene.Rectangle(box(-half-12, 0, half+12, board))
	out := scene.Hatch(bench, 1.6, 45, scene.Thin)
	out = append(
		out,
		scene.Shape{Path: bench, Class: scene.Edge},
		scene.Shape{Path: scene.Rectangle(box(-half, board, half, top)), Class: scene.Edge},
		scene.Shape{Path: scene.Rectangle(box(-half-5, top, half+5, lid)), Class: scene.Cut, Fill: scene.Black},
	)
	out = append(out, sawShape(at, saw, lid)...)
	for _, side := range []float64{-1, 1} {
		out = append(out, clamp(at, side, half, lid)...)
	}
	out = append(out, sheet.Dimension(at(-saw/2, lid+sawDepth), at(saw/2, lid+sawDepth), 7, c.sawWords())...)
	return scene.BoxAt(scene.Point{}, width, (lid+sawDepth)*k+9+12), append(out, setUpWords(at, saw, half, lid)...)
}

// sawWords name the saw of the first hole; a saw larger than the drawing has
// room for is drawn smaller, but named by its own size.
func (c card) sawWords() string {
	if len(c.Holes) == 0 {
		return "saw"
	}
	return "saw " + sheet.ToolSize(c.Holes[0].SizeMM, c.System)
}

func (c card) setUpShown() string {
	return "Cut through: the " + c.sawWords() + " stands on the lid, the lid lies on the backing board, the board on the bench; a clamp on each side holds all three together."
}

// sawShape is the saw standing on the lid, with its pilot bit, arbor and axis.
func sawShape(at func(x, y float64) scene.Point, saw, lid float64) []scene.Element {
	return []scene.Element{
		scene.Shape{Path: scene.Polyline(at(-saw/2, lid), at(-saw/2, lid+sawDepth), at(saw/2, lid+sawDepth), at(saw/2, lid)), Class: scene.Edge},
		scene.Shape{Path: scene.Polyline(at(-arborMM, lid+sawDepth), at(-arborMM, lid+sawDepth+shankMM/2), at(arborMM, lid+sawDepth+shankMM/2), at(arborMM, lid+sawDepth)), Class: scene.Part},
		scene.Shape{Path: scene.Polyline(at(-3, lid+sawDepth), at(-3, lid-4), at(0, lid-9), at(3, lid-4), at(3, lid+sawDepth)), Class: scene.Part},
		scene.Line{From: at(0, lid-14), To: at(0, lid+sawDepth+shankMM/2+5), Class: scene.Centre},
	}
}

// clamp is one clamp from over the lid to under the bench.
func clamp(at func(x, y float64) scene.Point, side, half, lid float64) []scene.Element {
	back, jaw := side*(half+24), side*(half-12)
	path := scene.Polyline(at(jaw, lid+8), at(jaw, lid+20), at(back, lid+20), at(back, -20), at(jaw, -20), at(jaw, -8))
	pad := func(y0, y1 float64) scene.Element {
		return scene.Shape{Path: scene.Polygon(at(jaw-7, y0), at(jaw+7, y0), at(jaw+7, y1), at(jaw-7, y1)), Class: scene.Part, Fill: scene.White}
	}
	return []scene.Element{scene.Shape{Path: path, Class: scene.Part}, pad(lid, lid+8), pad(-8, 0)}
}

func setUpWords(at func(x, y float64) scene.Point, saw, half, lid float64) []scene.Element {
	word := func(p scene.Point, text string) scene.Element {
		return scene.Text{At: p.Minus(scene.Point{Y: letterMM * 0.36}), Text: text, SizeMM: letterMM, Anchor: scene.Middle, Halo: true}
	}
	return []scene.Element{
		word(at(0, benchMM/2), "bench"),
		word(at(-half+30, benchMM+boardMM/2.0), "backing board"),
		word(at(0, -18), "a clamp on each side"),
		scene.Line{From: at(half-26, lid), To: at(half-20, lid+32)},
		scene.Text{At: at(half-22, lid+34), Text: "lid", SizeMM: letterMM},
	}
}
