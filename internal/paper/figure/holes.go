package figure

import (
	"fmt"
	"strconv"

	"rootbell/internal/base/plane"
	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// keepClear is crossed with strokes both ways.
func (f *lidFigure) keepClear() {
	const apartPX = 5
	for _, k := range f.clear {
		shape := scene.PathOfShape(k.Shape)
		f.strokes("n", scene.Crossed(shape, apartPX/f.scale, scene.Thin))
		f.path("mm", shape)
		f.room.block(f.pixels(shape).Bounds())
	}
}

// standing says whether a hole is there already: at a place the plan gives.
func (f *lidFigure) standing(h garden.Hole) bool {
	const sameMM = 0.02 // places of holes are rounded to a hundredth
	for _, p := range f.fixed {
		if p.To(plane.Point{X: h.XMM, Y: h.YMM}) <= sameMM {
			return true
		}
	}
	return false
}

func (f *lidFigure) centre(h garden.Hole) scene.Point {
	return f.at(scene.Point{X: h.XMM, Y: h.YMM})
}

func (f *lidFigure) holes() {
	if !f.laid {
		return
	}
	for _, h := range f.layout.Holes {
		f.hole(h)
	}
}

// hole is one hole that can have the focus and be moved.
func (f *lidFigure) hole(h garden.Hole) {
	n := strconv.Itoa(h.N)
	at, radius := f.centre(h), h.DiameterMM/2*f.scale
	class, words, fixed := "hole", fmt.Sprintf("Hole %s, %s right, %s up", n, f.mark(h.XMM), f.mark(h.YMM)), ""
	if f.standing(h) {
		class, fixed = "hole fixed", ` data-fixed="yes"`
		words += ", fixed: it is there already"
	}
	f.printf(`<g class="%s" id="%s-hole-%s" data-n="%s" data-x="%s" data-y="%s"%s tabindex="0" role="button" aria-label="%s">`,
		class, escaped(f.id), n, n, mm(h.XMM), mm(h.YMM), fixed, escaped(words))
	f.circle("k ground", at, radius)
	if fixed != "" {
		f.circle("n", at, radius-4)
	}
	f.cross(at, radius)
	f.number(h, at, radius)
	f.printf(`</g>`)
}

// cross marks a centre: chain lines over the circle, or a small cross where
// those would run into the number.
func (f *lidFigure) cross(at scene.Point, radius float64) {
	class, arm := "cen", radius+6
	if radius < 20 {
		class, arm = "n", min(3, radius)
	}
	f.line(class, at.Minus(scene.Point{X: arm}), at.Plus(scene.Point{X: arm}))
	f.line(class, at.Minus(scene.Point{Y: arm}), at.Plus(scene.Point{Y: arm}))
}

func (f *lidFigure) number(h garden.Hole, at scene.Point, radius float64) {
	f.text(lettering{words: strconv.Itoa(h.N), class: "b", anchor: scene.Middle, at: at.Plus(scene.Point{X: -radius * 0.42, Y: -radius * 0.28})})
}

func (f *lidFigure) smallHoles() {
	for _, h := range f.layout.Holes {
		at, radius := f.centre(h), h.DiameterMM/2*f.scale
		f.circle("k ground", at, radius)
		f.cross(at, min(radius, 10))
	}
}

// openings are the holes for the air line and the dipstick.
func (f *lidFigure) openings() {
	if !f.laid {
		return
	}
	if s := f.lid.Service; s != nil {
		f.circle("mm ground", f.at(scene.Point{X: s.XMM, Y: s.YMM}), s.DiameterMM/2*f.scale)
	}
	if a := f.lid.AirLine; a != nil {
		at := f.at(scene.Point{X: a.XMM, Y: a.YMM})
		f.circle("mm ground", at, max(a.DiameterMM/2*f.scale, 2))
	}
}

func (f *lidFigure) sectionLine() {}

// overall are the lid's length and width.
func (f *lidFigure) overall() {
	b, mm := f.box(), f.outline.Bounds()
	up := scene.Point{Y: -f.frame.above * 0.45}
	f.measure(dimension{a: b.Min, b: scene.Point{X: b.Max.X, Y: b.Min.Y}, aside: up, words: []string{f.mark(mm.Width())}}, "")
	right := scene.Point{X: f.frame.right * 0.55}
	f.measure(dimension{a: b.Max, b: scene.Point{X: b.Max.X, Y: b.Min.Y}, aside: right, words: []string{f.mark(mm.Height())}}, "")
}

func (f *lidFigure) leastDistance() {
	n := len(f.layout.Holes)
	i, j := f.layout.Pair[0], f.layout.Pair[1]
	if !f.laid || n < 2 || i >= n || j >= n {
		return
	}
	text := sheet.Mark(f.layout.SpacingMM, f.system)
	words := []string{text + ", the least", text}
	f.measure(dimension{a: f.centre(f.layout.Holes[i]), b: f.centre(f.layout.Holes[j]), words: words}, "halo")
}

func (f *lidFigure) edgeDistance() {}
func (f *lidFigure) numbers()      {}
func (f *lidFigure) words()        {}
