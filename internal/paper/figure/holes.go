package figure

import (
	"fmt"
	"math"
	"strconv"

	"rootbell/internal/base/plane"
	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
)

// keepClear is crossed with strokes both ways.
func (f *lidFigure) keepClear() {
	const apartPX = 5
	for _, k := range f.clear {
		shape := scene.PathOfShape(k.Shape)
		f.strokes("n", scene.Crossed(shape, apartPX/f.scale, scene.Thin))
		f.path("mm", shape)
		f.blockStrokes(shape)
	}
}

// blockStrokes keeps lettering off a crossed area.
func (f *lidFigure) blockStrokes(shape scene.Path) {
	for _, e := range scene.Hatch(shape, 6/f.scale, 0, scene.Thin) {
		l := e.(scene.Line)
		f.room.line(f.at(l.From), f.at(l.To), weights["n"], softPX)
	}
}

// standing says whether a hole is there already: at a place the plan gives.
func (f *lidFigure) standing(h garden.Hole) bool {
	for _, p := range f.fixed {
		if same(p, h) {
			return true
		}
	}
	return false
}

func same(p plane.Point, h garden.Hole) bool {
	const sameMM = 0.02 // places of holes are rounded to a hundredth
	return p.To(plane.Point{X: h.XMM, Y: h.YMM}) <= sameMM
}

// unused are the holes that are there and take no cup in this layout.
func (f *lidFigure) unused() []garden.Hole {
	var out []garden.Hole
	for _, p := range f.fixed {
		taken := false
		for _, h := range f.layout.Holes {
			taken = taken || same(p, h)
		}
		if !taken {
			out = append(out, garden.Hole{XMM: p.X, YMM: p.Y, DiameterMM: f.lid.HoleMM})
		}
	}
	return out
}

func (f *lidFigure) centre(h garden.Hole) scene.Point {
	return f.at(scene.Point{X: h.XMM, Y: h.YMM})
}

func (f *lidFigure) radius(h garden.Hole) float64 { return h.DiameterMM / 2 * f.scale }

// crossedPX is the least radius of a hole whose centre is marked by lines over
// the whole circle.
const crossedPX = 20.0

// arm is half the centre mark of a hole, and the class of its lines.
func (f *lidFigure) arm(h garden.Hole) (class string, half float64) {
	if r := f.radius(h); r >= crossedPX && f.frame.words {
		return "cen", r + 6
	}
	return "n", min(3, f.radius(h)/2)
}

// reserve tells the room of the holes before they are drawn, so that words
// placed earlier keep clear of them.
func (f *lidFigure) reserve() {
	for _, h := range f.layout.Holes {
		at, w := f.centre(h), weights["k"]
		f.room.path(scene.Disc(at, f.radius(h)), w, w)
		class, half := f.arm(h)
		if class == "cen" {
			f.room.line(at.Minus(scene.Point{X: half}), at.Plus(scene.Point{X: half}), weights["cen"], softPX)
			f.room.line(at.Minus(scene.Point{Y: half}), at.Plus(scene.Point{Y: half}), weights["cen"], softPX)
		}
		if f.standing(h) {
			f.room.path(scene.Disc(at, f.second(h)), weights["n"], weights["n"])
		}
	}
}

// second is the radius of the second ring that marks a hole as fixed.
func (f *lidFigure) second(h garden.Hole) float64 { return f.radius(h) - min(4, f.radius(h)*0.3) }

// hole is one hole that can have the focus and be moved.
func (f *lidFigure) hole(h garden.Hole) {
	n := strconv.Itoa(h.N)
	at := f.centre(h)
	class, words, fixed := "hole", fmt.Sprintf("Hole %s, %s right, %s up", n, f.mark(h.XMM), f.mark(h.YMM)), ""
	if f.standing(h) {
		class, fixed = "hole fixed", ` data-fixed="yes"`
		words += ", fixed"
	}
	f.printf(`<g class="%s" id="%s-hole-%s" data-n="%s" data-x="%s" data-y="%s"%s tabindex="0" role="button" aria-label="%s">`,
		class, escaped(f.id), n, n, mm(h.XMM), mm(h.YMM), fixed, escaped(words))
	f.ring("k ground", at, f.radius(h))
	if fixed != "" {
		f.ring("n", at, f.second(h))
	}
	f.number(h)
	f.printf(`</g>`)
}

// ring is a circle that the room knows already.
func (f *lidFigure) ring(class string, at scene.Point, radius float64) {
	f.printf(`<circle class="%s" cx="%s" cy="%s" r="%s"/>`, class, px(at.X), px(at.Y), px(radius))
}

// number writes a hole's number in its circle, on the centre where nothing else
// marks that, else beside it, and then the centre's cross.
func (f *lidFigure) number(h garden.Hole) {
	n := strconv.Itoa(h.N)
	class, half := f.arm(h)
	middle := lettering{words: n, class: "b", anchor: scene.Middle, at: f.centre(h).Plus(scene.Point{Y: letterPX * 0.36})}
	if class == "n" && f.free(middle, true) {
		f.text(middle)
		return
	}
	for _, t := range f.within(h, n, "b") {
		if f.free(t, true) {
			if class == "cen" {
				f.cross(class, f.centre(h), half)
			}
			f.text(t)
			return
		}
	}
	f.cross(class, f.centre(h), min(half, f.radius(h))) // no further than the number stands
	switch {
	case f.place(f.round(h, n)...):
	case f.hand:
		f.unnumbered++
	default:
		f.text(f.leastHarm(append(f.round(h, n), middle)))
	}
}

// leastHarm is the choice that covers least, the first of equals: on a desk a
// hole always has its number.
func (f *lidFigure) leastHarm(choices []lettering) lettering {
	best, least := choices[len(choices)-1], math.Inf(1)
	for _, t := range choices {
		if h := f.harm(t); h < least {
			best, least = t, h
		}
	}
	return best
}

func (f *lidFigure) cross(class string, at scene.Point, half float64) {
	f.printf(`<path class="%s" d="M%s %sH%sM%s %sV%s"/>`, class,
		px(at.X-half), px(at.Y), px(at.X+half), px(at.X), px(at.Y-half), px(at.Y+half))
}

// within are the places in the four quarters of a hole.
func (f *lidFigure) within(h garden.Hole, words, class string) []lettering {
	at, r := f.centre(h), f.radius(h)
	t := lettering{words: words, class: class, anchor: scene.Middle}
	var out []lettering
	for _, reach := range []float64{0.42, 0.36, 0.5, 0.3} {
		for _, quarter := range []scene.Point{{X: -1, Y: -1}, {X: -1, Y: 1}, {X: 1, Y: 1}, {X: 1, Y: -1}} {
			t.at = at.Plus(scene.Point{X: quarter.X * r * reach, Y: quarter.Y*r*reach + t.size()*0.36})
			out = append(out, t)
		}
	}
	return out
}

// round are the places round a hole: right, left, over, under, then aslant.
func (f *lidFigure) round(h garden.Hole, words string) []lettering {
	const gap = 4.5
	at, r := f.centre(h), f.radius(h)
	class := "b"
	if r < 10 {
		class = "sm b"
	}
	var out []lettering
	for _, degrees := range []float64{0, 180, -90, 90, -45, -135, 45, 135, -25, -155, 25, 155, -65, -115, 65, 115} {
		t := lettering{words: words, class: class, anchor: scene.Middle}
		// The middle of the words lies where their box would touch the ring's
		// surroundings in that direction.
		dir := scene.Point{X: 1}.Turned(degrees)
		half := scene.Point{X: t.long() / 2, Y: t.size() * 0.36}
		reach := r + gap + min(half.X/math.Max(math.Abs(dir.X), 1e-9), half.Y/math.Max(math.Abs(dir.Y), 1e-9))
		t.at = at.Plus(dir.Times(reach)).Plus(scene.Point{Y: half.Y})
		out = append(out, t)
	}
	return out
}

func (f *lidFigure) smallHoles() {
	for _, h := range f.layout.Holes {
		f.ring("k ground", f.centre(h), f.radius(h))
		f.cross("n", f.centre(h), min(3, f.radius(h)/2))
	}
}

// caps are the holes that are there and must be capped: dashed, with the word.
func (f *lidFigure) caps() {
	for _, h := range f.unused() {
		at := f.centre(h)
		f.circle("hid ground", at, f.radius(h))
		word := lettering{words: "cap", class: "sm", anchor: scene.Middle, at: at.Plus(scene.Point{Y: smallPX * 0.36})}
		if f.free(word, true) {
			f.text(word)
		}
	}
}

// openings are the holes for the air line and the dipstick. An air line that
// goes through the wall is an open square on the lid's edge: nothing is drilled
// in the lid there.
func (f *lidFigure) openings() {
	if s := f.lid.Service; s != nil {
		at, r := f.at(scene.Point{X: s.XMM, Y: s.YMM}), s.DiameterMM/2*f.scale
		f.circle("mm ground", at, r)
		f.cross("n", at, min(4, r/2))
	}
	if a := f.lid.AirLine; a != nil {
		at := f.at(scene.Point{X: a.XMM, Y: a.YMM})
		if a.On == "wall" {
			half := scene.Point{X: 4, Y: 4}
			f.chain("mm sheetfill", true, at.Minus(half), at.Plus(scene.Point{X: 4, Y: -4}), at.Plus(half), at.Plus(scene.Point{X: -4, Y: 4}))
			return
		}
		f.circle("mm ground", at, max(a.DiameterMM/2*f.scale, 2))
	}
}
