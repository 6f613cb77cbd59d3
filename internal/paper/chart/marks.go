package chart

import (
	"math"
	"strings"
	"time"

	"rootbell/internal/paper/scene"
)

// Sizes of marks in px. Where many stand close together they are small.
const (
	ringPX      = 3.4
	smallRingPX = 2.4
	crowded     = 7.5 // px for each reading, below which they are small
	barHalf     = 2.6 // half the width of a bar
)

func (f *drawing) ring() float64 {
	if n := len(f.Points); n > 0 && (f.row.right()-f.edge)/float64(n) < crowded {
		return smallRingPX
	}
	return ringPX
}

// joined draws a thin line through the sure readings, as far as somebody read
// every few days.
func (f *drawing) joined() {
	const most = 4*24*time.Hour + 12*time.Hour // over a weekend and a Monday off, not over a break
	var d strings.Builder
	var last scene.Point
	var when time.Time
	first := true
	for _, p := range f.Points {
		x, shown := f.row.at(p.At)
		if p.Kind != Sure || !finite(p.mid()) || !shown {
			continue
		}
		at := scene.Point{X: x, Y: f.y(f.onAxis(p.mid()))}
		switch {
		case first || p.At.Sub(when) > most:
			d.WriteString("M" + px(at.X) + " " + px(at.Y))
		default:
			d.WriteString("L" + px(at.X) + " " + px(at.Y))
			f.lines = append(f.lines, segment{last, at})
		}
		first, last, when = false, at, p.At
	}
	if d.Len() > 0 {
		f.printf(`<path class="n" d="%s"/>`, d.String())
	}
}

// onAxis is the value on the axis that is nearest.
func (f *drawing) onAxis(v float64) float64 { return min(max(v, f.scale.low), f.scale.high) }

// points draws the readings: first those struck through, so that what stands
// lies over them.
func (f *drawing) points() {
	for _, kind := range []Kind{Struck, Doubtful, Sure} {
		for i := range f.Points {
			if f.Points[i].Kind == kind {
				f.point(&f.Points[i])
			}
		}
	}
	for _, choices := range f.beside {
		if !f.place(choices...) {
			f.leave(choices[0].words)
		}
	}
}

func (f *drawing) point(p *Point) {
	x, shown := f.row.at(p.At)
	if !shown || !finite(p.Low) || !finite(p.High) {
		return
	}
	if v := p.mid(); !f.inside(v) {
		f.beyond(p, x)
		return
	}
	r := f.ring()
	top, foot := f.y(f.onAxis(p.High)), f.y(f.onAxis(p.Low))
	middle := scene.Point{X: x, Y: (top + foot) / 2}
	if p.Kind == Struck {
		off := f.aside(p, middle.Y)
		if middle.X-off < f.edge {
			off = -off
		}
		middle.X -= off
	}
	if !near(top, foot) {
		f.bar(p.Kind, middle.X, top, foot)
	} else {
		f.mark(p.Kind, middle, r)
	}
	f.marks = append(f.marks, scene.Box{Min: scene.Point{X: middle.X - r - 1, Y: min(top, middle.Y-r) - 1}, Max: scene.Point{X: middle.X + r + 1, Y: max(foot, middle.Y+r) + 1}})
	if p.Kind == Struck {
		f.stroke(middle)
	}
}

// aside is how far to the side a struck reading stands, so that the one that
// took its place does not cover it.
func (f *drawing) aside(p *Point, y float64) float64 {
	const touch = 2*ringPX + 1
	own, _ := f.row.at(p.At)
	for i := range f.Points {
		q := &f.Points[i]
		if q.Kind == Struck || !finite(q.mid()) {
			continue
		}
		x, shown := f.row.at(q.At)
		if shown && math.Abs(x-own) < touch && math.Abs(f.y(f.onAxis(q.mid()))-y) < touch {
			return touch + 1
		}
	}
	return 0
}

// mark is one value: a ring, a triangle where it is doubtful.
func (f *drawing) mark(kind Kind, at scene.Point, r float64) {
	if kind != Doubtful {
		f.printf(`<circle class="rd" cx="%s" cy="%s" r="%s"/>`, px(at.X), px(at.Y), px(r))
		return
	}
	f.triangle(at, r, 1)
}

// triangle has its middle of area at a place, its tip upwards for up 1,
// downwards for −1.
func (f *drawing) triangle(at scene.Point, r, up float64) {
	r *= 1.45
	f.printf(`<path class="rd" d="M%s %sL%s %sL%s %sZ"/>`, px(at.X), px(at.Y-up*r), px(at.X+0.87*r), px(at.Y+up*r/2), px(at.X-0.87*r), px(at.Y+up*r/2))
}

// bar is a value that lies between two: a bar with flat ends. A doubtful one
// has the triangle on it.
func (f *drawing) bar(kind Kind, x, top, foot float64) {
	f.printf(`<rect class="rd" x="%s" y="%s" width="%s" height="%s"/>`, px(x-barHalf), px(top), px(2*barHalf), px(foot-top))
	if kind == Doubtful {
		f.triangle(scene.Point{X: x, Y: (top + foot) / 2}, ringPX, 1)
	}
}

// stroke strikes a reading through.
func (f *drawing) stroke(at scene.Point) {
	const reach = 6.5
	f.line("tick", scene.Point{X: at.X - reach, Y: at.Y + reach}, scene.Point{X: at.X + reach, Y: at.Y - reach}, false)
}

// beyond draws a reading outside the axis at its edge, with its number: a
// triangle that points on.
func (f *drawing) beyond(p *Point, x float64) {
	up, y := 1.0, f.top+6
	if p.mid() < f.scale.low {
		up, y = -1, f.foot-6
	}
	at := scene.Point{X: x, Y: y}
	f.triangle(at, ringPX, up)
	if p.Kind == Struck {
		f.stroke(at)
	}
	f.marks = append(f.marks, scene.Box{Min: at.Minus(scene.Point{X: 6, Y: 6}), Max: at.Plus(scene.Point{X: 6, Y: 6})})
	words := Figure(*p, f.decimals())
	if p.Kind == Doubtful {
		words += ", doubtful"
	}
	level := at.Y + 4
	f.beside = append(f.beside, []lettering{
		{words: words, class: "halo", at: scene.Point{X: x + 9, Y: level}},
		{words: words, class: "halo", at: scene.Point{X: x - 9, Y: level}, anchor: scene.End},
		{words: words, class: "halo", at: scene.Point{X: x, Y: y + up*18 + 4}, anchor: scene.Middle},
	})
}
