package sheet

import (
	"math"
	"strconv"

	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
)

// Overview is the lid drawn small.
type Overview struct {
	Frame    scene.Box
	Elements []scene.Element
	Scale    string // one to so many
}

// Scales are what a drawing is made at, as one to so many.
var Scales = []float64{1, 2, 2.5, 3, 4, 5, 6, 7, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100}

// LetteringMM is the size of the letters on a drawing that is not true scale.
const LetteringMM = 2.8

// Room round the small lid for its dimensions, mm on paper.
const (
	aboveMM  = 8
	asideMM  = 8
	letterMM = LetteringMM
)

// OverviewOf draws the lid at the largest usual scale that fits a width and a
// height in mm.
func OverviewOf(l Lid, width, height float64) Overview {
	box := l.Outline.Bounds()
	scale := Scales[len(Scales)-1]
	for _, s := range Scales {
		if box.Width()/s <= width-asideMM-2 && box.Height()/s <= height-aboveMM-2 {
			scale = s
			break
		}
	}
	small := func(p scene.Point) scene.Point { return p.Minus(box.Min).Times(1 / scale) }
	o := Overview{Scale: strconv.FormatFloat(scale, 'f', -1, 64)}
	for _, k := range l.KeepClear {
		shape := k.Shape.Mapped(small)
		o.Elements = append(o.Elements, scene.Crossed(shape, 1.2, scene.Thin)...)
		o.Elements = append(o.Elements, scene.Shape{Path: shape, Class: scene.Part})
	}
	o.Elements = append(o.Elements, scene.Shape{Path: l.Outline.Mapped(small), Class: scene.Cut})
	for _, h := range l.Holes {
		// A hole typed far off the lid is a stop elsewhere; here it would run
		// over the text.
		if !box.Holds(scene.Box{Min: h.At(), Max: h.At()}, h.SizeMM/2) {
			continue
		}
		o.Elements = append(o.Elements, numbered(small(h.At()), h.SizeMM/2/scale, strconv.Itoa(h.N))...)
	}
	o.openings(l, small, scale)
	o.dimensions(l.System, box, scale)
	// The frame takes the column's width, the drawing stands at its left.
	o.Frame = scene.BoxAt(scene.Point{X: -1, Y: -1}, width, box.Height()/scale+aboveMM+2)
	return o
}

func numbered(at scene.Point, radius float64, n string) []scene.Element {
	size := math.Min(4, radius*1.1)
	return []scene.Element{
		scene.Circle{Centre: at, RadiusMM: radius, Class: scene.Edge},
		scene.Text{At: at.Minus(scene.Point{Y: size * 0.36}), Text: n, SizeMM: size, Face: scene.SansBold, Anchor: scene.Middle},
	}
}

func (o *Overview) openings(l Lid, small func(scene.Point) scene.Point, scale float64) {
	if s := l.Service; s != nil {
		o.Elements = append(o.Elements, numbered(small(s.At()), s.SizeMM/2/scale, "S")...)
	}
	if a := l.AirLine; a != nil {
		at, radius := small(a.At()), math.Max(0.6, a.SizeMM/2/scale)
		o.Elements = append(o.Elements, scene.Circle{Centre: at, RadiusMM: radius, Class: scene.Part, Fill: scene.White})
		o.Elements = append(o.Elements, o.airLabel(at))
	}
}

// airLabel is the letter A beside the air line's hole, where it meets no other
// hole and stays on the lid.
func (o *Overview) airLabel(at scene.Point) scene.Element {
	label := scene.Text{Text: "A", SizeMM: letterMM, Face: scene.SansBold, Anchor: scene.Middle}
	bounds := scene.Bounds(o.Elements)
	best, most := at, math.Inf(-1)
	for turn := 0.0; turn < 360; turn += 45 {
		place := at.Plus(scene.Point{X: 2.6}.Turned(turn))
		free := min(place.X-bounds.Min.X, bounds.Max.X-place.X, place.Y-bounds.Min.Y, bounds.Max.Y-place.Y)
		for _, e := range o.Elements {
			if c, ok := e.(scene.Circle); ok && c.Centre != at {
				free = min(free, place.Distance(c.Centre)-c.RadiusMM)
			}
		}
		if free > most {
			best, most = place, free
		}
	}
	label.At = best.Minus(scene.Point{Y: letterMM * 0.36})
	return label
}

// dimensions are the lid's length over it and its width beside it.
func (o *Overview) dimensions(system garden.System, box scene.Box, scale float64) {
	width, height := box.Width()/scale, box.Height()/scale
	o.Elements = append(o.Elements, Dimension(scene.Point{Y: height}, scene.Point{X: width, Y: height}, 4, Mark(box.Width(), system))...)
	o.Elements = append(o.Elements, Dimension(scene.Point{X: width, Y: height}, scene.Point{X: width}, 5.5, Mark(box.Height(), system))...)
}

// Dimension is a dimension line from a to b with its number, off to the left of
// the way by mm, with oblique strokes at its ends.
func Dimension(a, b scene.Point, off float64, text string) []scene.Element {
	step := b.Minus(a)
	length := math.Hypot(step.X, step.Y)
	along := step.Times(1 / length)
	out := scene.Point{X: -along.Y, Y: along.X}
	from, to := a.Plus(out.Times(off)), b.Plus(out.Times(off))
	stroke := along.Turned(45).Times(1.3)
	turn := math.Atan2(along.Y, along.X) * 180 / math.Pi
	side := out
	if turn > 90 || turn <= -90 {
		turn += 180
	}
	if turn == -90 {
		turn = 90
	}
	if turn == 90 && side.X > 0 {
		// Read from the right: the number stands on the left of its line.
		side = scene.Point{X: -1}
	}
	if turn == 0 {
		side = scene.Point{Y: 1}
	}
	return []scene.Element{
		scene.Line{From: from, To: to},
		scene.Line{From: a.Plus(out), To: from.Plus(out)},
		scene.Line{From: b.Plus(out), To: to.Plus(out)},
		scene.Line{From: from.Minus(stroke), To: from.Plus(stroke), Class: scene.Part},
		scene.Line{From: to.Minus(stroke), To: to.Plus(stroke), Class: scene.Part},
		scene.Text{
			At: from.Plus(to).Times(0.5).Plus(side.Times(0.8)), Text: text, SizeMM: letterMM,
			Anchor: scene.Middle, Turn: turn, Halo: true,
		},
	}
}
