package sheet

import (
	"math"

	"rootbell/internal/paper/scene"
)

// Lengths of the marks, mm.
const (
	crossMM    = 8   // half a hole's crosshair at its centre
	tickMM     = 3   // how far a centre tick reaches over the circle
	clearGapMM = 3   // between the strokes of a keep-clear
	labelMM    = 3.2 // lettering on the drawing
	numberMM   = 8   // a hole's number
)

// drawing is the lid in the plan's coordinates, as every page shows it.
func (d draft) drawing() []scene.Element {
	var out []scene.Element
	for _, k := range d.KeepClear {
		out = append(out, d.keepClear(k)...)
	}
	for _, region := range d.CentresIn {
		out = append(out, scene.Shape{Path: region, Class: scene.Centre})
	}
	out = append(out, scene.Shape{Path: d.Outline, Class: scene.Cut, Mark: scene.Mark{ID: "lid", Title: "lid", Layer: "LID"}})
	out = append(out, d.corner()...)
	for _, h := range d.Holes {
		out = append(out, d.hole(h)...)
	}
	out = append(out, d.openings()...)
	return out
}

// corner marks where all distances are measured from: the two edge lines, in
// full where the lid's outline does not run along them.
func (d draft) corner() []scene.Element {
	box := d.Outline.Bounds()
	right, up := d.cornerArms()
	out := []scene.Element{
		scene.Line{From: box.Min, To: box.Min.Plus(scene.Point{X: right}), Class: scene.Centre},
		scene.Line{From: box.Min, To: box.Min.Plus(scene.Point{Y: up}), Class: scene.Centre},
	}
	if right > cornerMM || up > cornerMM {
		at := box.Min.Plus(scene.Point{X: 2, Y: 2})
		out = append(out, scene.Text{At: at, Text: cornerWords, SizeMM: labelMM, Halo: true})
	}
	return out
}

// cornerMM is how long the edge lines are where the outline runs along them.
const cornerMM = 12.0

const cornerWords = "measure from these two lines"

// cornerArms are the lengths of the two edge lines.
func (l Lid) cornerArms() (right, up float64) {
	box := l.Outline.Bounds()
	right, up = box.Width(), box.Height()
	if runsAlong(l.Outline, func(p scene.Point) float64 { return p.Y - box.Min.Y }) > right/3 {
		right = cornerMM
	}
	if runsAlong(l.Outline, func(p scene.Point) float64 { return p.X - box.Min.X }) > up/3 {
		up = cornerMM
	}
	return right, up
}

// runsAlong is the length of an outline's straight pieces on the line where off
// is 0.
func runsAlong(path scene.Path, off func(scene.Point) float64) float64 {
	const onLine = 0.05
	sum := 0.0
	for i, v := range path.Vertices {
		next := path.Vertices[(i+1)%len(path.Vertices)]
		if v.Bulge == 0 && math.Abs(off(v.Point)) < onLine && math.Abs(off(next.Point)) < onLine {
			sum += v.Distance(next.Point)
		}
	}
	return sum
}

func (d draft) keepClear(k KeepClear) []scene.Element {
	out := scene.Crossed(k.Shape, clearGapMM, scene.Thin)
	mark := scene.Mark{Title: "keep clear: " + k.Why, Layer: "CLEAR"}
	out = append(out, scene.Shape{Path: k.Shape, Class: scene.Part, Mark: mark})
	return append(out, d.clearLabel(k.Shape.Bounds(), k.words()))
}

// clearLabel stands in the shape, along its longer side, or beside it.
func (d draft) clearLabel(box scene.Box, text string) scene.Element {
	label := scene.Text{Text: text, SizeMM: labelMM, Anchor: scene.Middle, Halo: true}
	width := scene.Sans.Width(text, labelMM)
	middle := box.Centre()
	switch {
	case width <= box.Height() && box.Height() > box.Width():
		label.Turn = 90
		label.At = middle.Plus(scene.Point{X: labelMM * 0.35})
		return label
	case width <= box.Width():
		label.At = middle.Minus(scene.Point{Y: labelMM * 0.35})
		return label
	}
	return d.beside(middle, box.Width()/2, box.Height()/2, text)
}

// crosshair marks a centre: a solid cross, and ticks over the circle.
func crosshair(at scene.Point, radius float64) []scene.Element {
	half := math.Min(crossMM, radius+tickMM)
	var out []scene.Element
	for _, turn := range []float64{0, 90, 180, 270} {
		arm := scene.Point{X: 1}.Turned(turn)
		if turn < 180 {
			out = append(out, scene.Line{From: at.Minus(arm.Times(half)), To: at.Plus(arm.Times(half))})
		}
		if radius-2 > half {
			out = append(out, scene.Line{From: at.Plus(arm.Times(radius - 2)), To: at.Plus(arm.Times(radius + tickMM))})
		}
	}
	return out
}

func (d draft) hole(h Hole) []scene.Element {
	at, radius := h.At(), h.SizeMM/2
	n := itoa(h.N)
	out := []scene.Element{scene.Circle{
		Centre: at, RadiusMM: radius, Class: scene.Edge,
		Mark: scene.Mark{ID: "hole-" + n, Title: "hole " + n, Layer: "HOLES", At: &at},
	}}
	out = append(out, crosshair(at, radius)...)
	words := []string{d.mark(h.XMM) + " from left", d.mark(h.YMM) + " from bottom"}
	if radius < roomyMM {
		return append(out, d.beside(at, radius+tickMM, radius+tickMM, n+": "+words[0]+", "+words[1]))
	}
	size := math.Min(numberMM, radius*0.4)
	out = append(out, scene.Text{
		At: at.Plus(scene.Point{X: -radius * 0.4, Y: radius * 0.25}), Text: n, SizeMM: size, Face: scene.SansBold, Anchor: scene.Middle,
	})
	for i, text := range words {
		out = append(out, scene.Text{
			At:   at.Minus(scene.Point{Y: crossMM + labelMM*1.3*float64(i) + labelMM}),
			Text: text, SizeMM: labelMM, Anchor: scene.Middle, Halo: true,
		})
	}
	return out
}

// roomyMM is the least radius of a hole that takes its own lettering.
const roomyMM = 24

func (d draft) openings() []scene.Element {
	var out []scene.Element
	if a := d.AirLine; a != nil {
		out = append(out, d.airLine(*a)...)
	}
	if s := d.Service; s != nil {
		at := s.At()
		out = append(out, scene.Circle{
			Centre: at, RadiusMM: s.SizeMM / 2, Class: scene.Edge,
			Mark: scene.Mark{ID: "service", Title: "service hole", Layer: "SERVICE", At: &at},
		})
		out = append(out, crosshair(at, s.SizeMM/2)...)
		out = append(out, d.beside(at, s.SizeMM/2+tickMM, s.SizeMM/2+tickMM, d.serviceWords(*s)))
	}
	return out
}

func (d draft) airLine(a AirLine) []scene.Element {
	at := a.At()
	mark := scene.Mark{ID: "air-line", Title: "air line", Layer: "AIR", At: &at}
	if !a.OnWall {
		out := []scene.Element{scene.Circle{Centre: at, RadiusMM: a.SizeMM / 2, Class: scene.Edge, Mark: mark}}
		out = append(out, crosshair(at, a.SizeMM/2)...)
		return append(out, d.beside(at, a.SizeMM/2+tickMM, a.SizeMM/2+tickMM, d.airWords(a)))
	}
	// An open square on the outline: nothing is drilled in the lid there.
	half := scene.Point{X: 2, Y: 2}
	out := []scene.Element{scene.Shape{Path: scene.Rectangle(scene.Box{Min: at.Minus(half), Max: at.Plus(half)}), Class: scene.Part, Mark: mark}}
	return append(out, d.beside(at, 4, 4, d.airWords(a)))
}

func (l Lid) mark(mm float64) string { return Mark(mm, l.System) }
