package sheet

import (
	"math"

	"rootbell/internal/paper/scene"
)

const (
	// marginMM is the border kept free on each page: printers leave some 4 to
	// 6 mm blank (memory: printer manuals), 10 to be safe (common practice).
	marginMM = 10
	// overlapMM is how much two neighbouring pages share.
	overlapMM = 10
	// footMM is the height under the drawing for bars, page map and title block.
	footMM = 30
)

// TileCount is the number of tiles of a printable length that cover a length,
// all in mm, when neighbours share the overlap.
func TileCount(length, printable, overlap float64) int {
	if length <= printable {
		return 1
	}
	return 1 + int(math.Ceil((length-printable)/(printable-overlap)))
}

// Tiling says how a drawing is cut into pages of one paper.
type Tiling struct {
	Paper         scene.Size // as the pages are held
	Columns, Rows int
	window        scene.Size // what each page shows
	origin        scene.Point
}

// tile cuts a box of the drawing into pages in the orientation that needs
// fewer, upright when both need as many.
func tile(paper scene.Size, box scene.Box) Tiling {
	upright, across := tiling(paper, box), tiling(paper.Across(), box)
	if across.Pages() < upright.Pages() {
		return across
	}
	return upright
}

func tiling(paper scene.Size, box scene.Box) Tiling {
	window := scene.Size{Width: paper.Width - 2*marginMM, Height: paper.Height - 2*marginMM - footMM}
	t := Tiling{Paper: paper, window: window}
	t.Columns = TileCount(box.Width(), window.Width, overlapMM)
	t.Rows = TileCount(box.Height(), window.Height, overlapMM)
	// The slack of the last pages is shared between both sides.
	covered := scene.Point{
		X: window.Width + float64(t.Columns-1)*(window.Width-overlapMM),
		Y: window.Height + float64(t.Rows-1)*(window.Height-overlapMM),
	}
	t.origin = box.Centre().Minus(covered.Times(0.5))
	return t
}

// Pages is the number of pages.
func (t Tiling) Pages() int { return t.Columns * t.Rows }

// place is one page's place in the map; rows count from the top.
type place struct{ row, column int }

func (t Tiling) places() []place {
	var out []place
	for row := range t.Rows {
		for column := range t.Columns {
			out = append(out, place{row, column})
		}
	}
	return out
}

// number is the page's number from 1, row by row from the top.
func (t Tiling) number(p place) int { return p.row*t.Columns + p.column + 1 }

// shows is the part of the drawing that a page shows.
func (t Tiling) shows(p place) scene.Box {
	up := t.Rows - 1 - p.row
	corner := t.origin.Plus(scene.Point{
		X: float64(p.column) * (t.window.Width - overlapMM),
		Y: float64(up) * (t.window.Height - overlapMM),
	})
	return scene.BoxAt(corner, t.window.Width, t.window.Height)
}

// onPage is the window of every page, in the page's coordinates.
func (t Tiling) onPage() scene.Box {
	return scene.BoxAt(scene.Point{X: marginMM, Y: marginMM + footMM}, t.window.Width, t.window.Height)
}

// seam is the strip that two neighbouring pages share.
type seam struct {
	letter  string
	strip   scene.Box
	upright bool // the pages lie side by side
}

func (t Tiling) seams() []seam {
	var out []seam
	add := func(a, b place, upright bool) {
		one, two := t.shows(a), t.shows(b)
		strip := scene.Box{
			Min: scene.Point{X: math.Max(one.Min.X, two.Min.X), Y: math.Max(one.Min.Y, two.Min.Y)},
			Max: scene.Point{X: math.Min(one.Max.X, two.Max.X), Y: math.Min(one.Max.Y, two.Max.Y)},
		}
		out = append(out, seam{letters(len(out)), strip, upright})
	}
	for _, p := range t.places() {
		if p.column+1 < t.Columns {
			add(p, place{p.row, p.column + 1}, true)
		}
		if p.row+1 < t.Rows {
			add(p, place{p.row + 1, p.column}, false)
		}
	}
	return out
}

// letters are A to Z, then AA, AB and on.
func letters(n int) string {
	if n < 26 {
		return string(rune('A' + n))
	}
	return letters(n/26-1) + string(rune('A'+n%26))
}
