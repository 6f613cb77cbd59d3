package figure

import (
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"

	"rootbell/internal/paper/scene"
)

// pen writes one figure. Its points are pixels with y downwards; the plan's
// millimetres become pixels by at. What is drawn is remembered, so that
// lettering can keep clear of it.
type pen struct {
	width, height float64 // of the whole figure, px
	scale         float64 // px per mm
	zero          scene.Point
	out           strings.Builder
	room          room
	inner         scene.Box // what lies on squares
}

// at is the pixel of a place in mm.
func (p *pen) at(mm scene.Point) scene.Point {
	return scene.Point{X: p.zero.X + mm.X*p.scale, Y: p.zero.Y - mm.Y*p.scale}
}

func (p *pen) printf(format string, args ...any) {
	_, _ = fmt.Fprintf(&p.out, format, args...) // a strings.Builder never fails
}

// weights are how much it harms a text to lie on a line of a class. Lines that
// are not named carry none: squares and tints may lie behind text.
var weights = map[string]float64{
	"k": 100, "kk": 100, "mm": 100, "n": 80, "dim": 80, "tick": 80, "hid": 60, "lowl": 60, "cen": 40, "pha": 30, "plaf": 30, "plal": 30, "watl": 60,
}

// weight is that of the heaviest of the classes of an element.
func weight(class string) float64 {
	most := 0.0
	for name := range strings.FieldsSeq(class) {
		most = max(most, weights[name])
	}
	return most
}

func (p *pen) line(class string, a, b scene.Point) {
	p.printf(`<line class="%s" x1="%s" y1="%s" x2="%s" y2="%s"/>`, class, px(a.X), px(a.Y), px(b.X), px(b.Y))
	p.room.line(a, b, weight(class), weight(class))
}

// chain is an open or closed line through pixels.
func (p *pen) chain(class string, closed bool, points ...scene.Point) {
	p.drawn(class, scene.Path{Vertices: scene.Polyline(points...).Vertices, Closed: closed})
}

// path is a path in mm; its arcs stay arcs.
func (p *pen) path(class string, mm scene.Path) { p.drawn(class, p.pixels(mm)) }

// pixels is a path in mm as pixels. The y axis turns over, so arcs turn the
// other way.
func (p *pen) pixels(mm scene.Path) scene.Path {
	path := mm.Mapped(p.at)
	for i := range path.Vertices {
		path.Vertices[i].Bulge = -path.Vertices[i].Bulge
	}
	return path
}

func (p *pen) drawn(class string, path scene.Path) {
	if len(path.Vertices) == 0 {
		return
	}
	p.printf(`<path class="%s" d="%s"/>`, class, pathData(path))
	if w := weight(class); w > 0 {
		p.room.path(path, w, w)
	}
}

// pathData writes a path in pixels.
func pathData(path scene.Path) string {
	var d strings.Builder
	for i, v := range path.Vertices {
		if i == 0 {
			d.WriteString("M" + px(v.X) + " " + px(v.Y))
		}
		next := i + 1
		if next == len(path.Vertices) {
			if !path.Closed {
				break
			}
			next = 0
		}
		to := path.Vertices[next].Point
		switch {
		case v.Bulge != 0:
			d.WriteString(arcTo(v, to))
		case next != 0:
			d.WriteString("L" + px(to.X) + " " + px(to.Y))
		}
	}
	if path.Closed {
		d.WriteString("Z")
	}
	return d.String()
}

// arcTo is the round piece that a bulge stands for: the tangent of a quarter of
// its angle, here positive where it turns clockwise as it is seen.
func arcTo(from scene.Vertex, to scene.Point) string {
	b := from.Bulge
	radius := px(from.Distance(to) * (1 + b*b) / (4 * math.Abs(b)))
	large, sweep := 0, 0
	if math.Abs(b) > 1 {
		large = 1
	}
	if b > 0 {
		sweep = 1
	}
	return fmt.Sprintf("A%s %s 0 %d %d %s %s", radius, radius, large, sweep, px(to.X), px(to.Y))
}

// stroke is a straight line of a path, in the shortest way to write it: a page
// of drawings has thousands.
func stroke(a, b scene.Point) string {
	x, y, to := px(a.X), px(a.Y), px(b.X)
	switch up := px(b.Y); {
	case to == x:
		return "M" + x + " " + y + "V" + up
	case up == y:
		return "M" + x + " " + y + "H" + to
	default:
		return "M" + x + " " + y + "L" + to + " " + up
	}
}

// strokes writes many straight lines as one path: squares and hatching. They
// are no hindrance to lettering.
func (p *pen) strokes(class string, mm []scene.Element) {
	var d strings.Builder
	for _, e := range mm {
		if l, ok := e.(scene.Line); ok {
			a, b := p.at(l.From), p.at(l.To)
			d.WriteString(stroke(a, b))
		}
	}
	if d.Len() > 0 {
		p.printf(`<path class="%s" d="%s"/>`, class, d.String())
	}
}

func (p *pen) circle(class string, at scene.Point, radius float64) {
	p.printf(`<circle class="%s" cx="%s" cy="%s" r="%s"/>`, class, px(at.X), px(at.Y), px(radius))
	if w := weight(class); w > 0 {
		p.room.path(scene.Disc(at, radius), w, w)
	}
}

func (p *pen) text(t lettering) {
	p.printf(`<text class="%s" `, strings.TrimSpace(t.anchorClass()+" "+t.class))
	if t.turn == 0 {
		p.printf(`x="%s" y="%s"`, px(t.at.X), px(t.at.Y))
	} else {
		p.printf(`transform="translate(%s %s) rotate(%s)"`, px(t.at.X), px(t.at.Y), px(t.turn))
	}
	p.printf(`>%s</text>`, escaped(t.words))
	p.room.take(t)
}

// aside draws into a text of its own.
func (p *pen) aside(draw func()) string {
	kept := p.out.String()
	p.out.Reset()
	draw()
	over := p.out.String()
	p.out.Reset()
	p.out.WriteString(kept)
	return over
}

// px writes pixels to a hundredth, the same on every machine.
func px(v float64) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "0"
	}
	text := strings.TrimRight(strings.TrimRight(strconv.FormatFloat(v, 'f', 2, 64), "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}

func escaped(text string) string {
	var out strings.Builder
	_ = xml.EscapeText(&out, []byte(text)) // a strings.Builder never fails
	return out.String()
}
