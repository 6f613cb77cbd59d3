package sheet

import (
	"math"

	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
)

// rulerRoomMM is the room for the rulers beside the lid.
const rulerRoomMM = 14

// graduation is how a ruler is divided: a tick a step, longer ones and numbers
// each so many steps.
type graduation struct {
	stepMM          float64
	middle, longest int
	perNumber       float64 // what the number counts, in mm
}

func (l Lid) graduation() graduation {
	if l.System == garden.US {
		return graduation{25.4 / 4, 2, 4, 25.4}
	}
	return graduation{5, 2, 10, 10}
}

// rulers lie along the lower and the left edge, from the lower left corner.
func (l Lid) rulers() []scene.Element {
	box := l.Outline.Bounds()
	out := l.ruler(box.Min.Minus(scene.Point{Y: 2}), 0, box.Width())
	return append(out, l.ruler(box.Min.Minus(scene.Point{X: 2}), 90, box.Height())...)
}

func (l Lid) ruler(from scene.Point, turn, length float64) []scene.Element {
	g := l.graduation()
	along, out := scene.Point{X: 1}.Turned(turn), scene.Point{Y: -1}
	if turn != 0 {
		out = scene.Point{X: -1}
	}
	elements := []scene.Element{scene.Line{From: from, To: from.Plus(along.Times(length))}}
	for i := range int(math.Floor(length/g.stepMM+1e-9)) + 1 {
		tick := 1.5
		switch {
		case i%g.longest == 0:
			tick = 4
		case i%g.middle == 0:
			tick = 2.5
		}
		at := from.Plus(along.Times(float64(i) * g.stepMM))
		elements = append(elements, scene.Line{From: at, To: at.Plus(out.Times(tick))})
		if i%g.longest == 0 {
			elements = append(elements, scene.Text{
				At: at.Plus(out.Times(5)).Plus(numberOffset(turn)), Text: itoa(int(math.Round(float64(i) * g.stepMM / g.perNumber))),
				SizeMM: 3, Anchor: scene.Middle, Turn: turn,
			})
		}
	}
	return elements
}

// numberOffset brings a ruler's number clear of its tick.
func numberOffset(turn float64) scene.Point {
	if turn != 0 {
		return scene.Point{}
	}
	return scene.Point{Y: -2.4}
}
