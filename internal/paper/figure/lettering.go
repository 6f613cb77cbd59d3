package figure

import (
	"math"
	"strings"

	"rootbell/internal/paper/scene"
)

// Sizes of lettering in px, as the style sheet sets them.
const (
	letterPX = 13.0
	smallPX  = 12.0
)

// lettering is one line of text. at is on its base line, in px; turn is in
// degrees, clockwise as it is seen.
type lettering struct {
	words  string
	class  string // sm, b, halo, lt
	at     scene.Point
	anchor scene.Anchor
	turn   float64
	wide   float64 // how far the words run, where that was measured already
}

func (t lettering) anchorClass() string {
	return [...]string{"", "mid", "end"}[t.anchor]
}

func (t lettering) size() float64 {
	if strings.Contains(" "+t.class+" ", " sm ") {
		return smallPX
	}
	return letterPX
}

// long is how far the words run, in px.
func (t lettering) long() float64 {
	if t.wide > 0 {
		return t.wide
	}
	face := scene.Sans
	if strings.Contains(" "+t.class+" ", " b ") {
		face = scene.SansBold
	}
	return face.Width(t.words, t.size()) * wider
}

// wider is how much wider than the condensed face that measures it lettering
// may come out: the widest face that the style sheet can end in is that face
// before it was condensed to nine tenths.
const wider = 1 / 0.9

// Shares of the type size that lettering reaches over and under its base line.
const (
	over  = 0.74
	under = 0.22
)

// below is how far the words reach under their base line: figures do not.
func (t lettering) below() float64 {
	if strings.Trim(t.words, "0123456789.") == "" {
		return 0.02
	}
	return under
}

// box is the room the text takes, with gap px round it.
func (t lettering) box(gap float64) box {
	left := [...]float64{0, -0.5, -1}[t.anchor] * t.long()
	return box{
		at: t.at, turn: t.turn,
		low:  scene.Point{X: left - gap, Y: -over*t.size() - gap},
		high: scene.Point{X: left + t.long() + gap, Y: t.below()*t.size() + gap},
	}
}

// box is a rectangle that may be turned: low and high count from at, along the
// turned axes.
type box struct {
	at        scene.Point
	turn      float64 // degrees, clockwise as seen
	low, high scene.Point
	around    scene.Box // its bounds, once known
}

// known is the box with its bounds worked out.
func (b box) known() box {
	b.around = b.bounds()
	return b
}

func upright(b scene.Box) box { return box{low: b.Min, high: b.Max} }

// local is a point in the box's own axes.
func (b box) local(p scene.Point) scene.Point {
	if b.turn == 0 {
		return p.Minus(b.at)
	}
	return p.Minus(b.at).Turned(-b.turn)
}

func (b box) corners() [4]scene.Point {
	c := [4]scene.Point{b.low, {X: b.high.X, Y: b.low.Y}, b.high, {X: b.low.X, Y: b.high.Y}}
	for i := range c {
		c[i] = c[i].Turned(b.turn).Plus(b.at)
	}
	return c
}

// bounds is the upright box round it.
func (b box) bounds() scene.Box {
	if b.turn == 0 {
		return scene.Box{Min: b.at.Plus(b.low), Max: b.at.Plus(b.high)}
	}
	out := scene.EmptyBox()
	for _, c := range b.corners() {
		out = out.With(c)
	}
	return out
}

// overlaps says whether two boxes share more than an edge: no side of either
// parts them.
func (b box) overlaps(o box) bool { return !b.parts(o) && !o.parts(b) }

// parts says whether one of the box's sides has the whole of o beyond it.
func (b box) parts(o box) bool {
	around := scene.EmptyBox()
	for _, c := range o.corners() {
		around = around.With(b.local(c))
	}
	return around.Min.X >= b.high.X || around.Max.X <= b.low.X || around.Min.Y >= b.high.Y || around.Max.Y <= b.low.Y
}

// meets says whether a straight line runs through the box (Liang and Barsky's
// clipping, 1984).
func (b box) meets(from, to scene.Point) bool {
	p, q := b.local(from), b.local(to)
	step := q.Minus(p)
	first, last := 0.0, 1.0
	for _, edge := range [4][2]float64{
		{-step.X, p.X - b.low.X}, {step.X, b.high.X - p.X}, {-step.Y, p.Y - b.low.Y}, {step.Y, b.high.Y - p.Y},
	} {
		switch {
		case edge[0] == 0 && edge[1] < 0:
			return false
		case edge[0] < 0:
			first = math.Max(first, edge[1]/edge[0])
		case edge[0] > 0:
			last = math.Min(last, edge[1]/edge[0])
		}
	}
	return first < last
}
