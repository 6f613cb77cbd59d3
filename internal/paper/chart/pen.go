package chart

import (
	"encoding/xml"
	"fmt"
	"strconv"
	"strings"

	"rootbell/internal/paper/scene"
)

// pen writes one chart in px, y downwards, and remembers what stands where so
// that words can keep clear of it.
type pen struct {
	width, height float64
	out           strings.Builder
	words         []scene.Box // lettering
	marks         []scene.Box // readings and whatever else no word may cover
	lines         []segment
}

type segment struct{ from, to scene.Point }

// letterPX is the size of lettering, as the style sheet sets it for class sm.
const letterPX = 12.0

// wider is how much wider than the condensed face that measures it lettering
// may come out: the widest face that the style sheet can end in is that face
// before it was condensed to nine tenths.
const wider = 1 / 0.9

// Shares of the type size that lettering reaches over and under its base line.
const (
	over  = 0.74
	under = 0.22
)

// lettering is one level line of text, at on its base line.
type lettering struct {
	words  string
	class  string // lt, b, halo
	at     scene.Point
	anchor scene.Anchor
}

func long(words, class string) float64 {
	face := scene.Sans
	if strings.Contains(" "+class+" ", " b ") {
		face = scene.SansBold
	}
	return face.Width(words, letterPX) * wider
}

// box is the room the text takes, with gap px round it.
func (t lettering) box(gap float64) scene.Box {
	wide := long(t.words, t.class)
	left := t.at.X + [...]float64{0, -0.5, -1}[t.anchor]*wide
	return scene.Box{
		Min: scene.Point{X: left - gap, Y: t.at.Y - over*letterPX - gap},
		Max: scene.Point{X: left + wide + gap, Y: t.at.Y + under*letterPX + gap},
	}
}

// airPX is kept between lettering and everything else.
const airPX = 2.0

// free tells whether a text stands within the chart, on no word and no mark.
func (p *pen) free(t lettering) bool {
	b := t.box(airPX)
	if !(b.Min.X >= 0 && b.Min.Y >= 0 && b.Max.X <= p.width && b.Max.Y <= p.height) {
		return false
	}
	return !p.taken(b)
}

func (p *pen) taken(b scene.Box) bool {
	for _, all := range [2][]scene.Box{p.words, p.marks} {
		for _, o := range all {
			if b.Overlaps(o) {
				return true
			}
		}
	}
	return false
}

// crossed counts the lines that run through a text.
func (p *pen) crossed(t lettering) int {
	b, n := t.box(airPX), 0
	for _, l := range p.lines {
		if meets(b, l.from, l.to) {
			n++
		}
	}
	return n
}

// meets says whether a straight line runs through a box (Liang and Barsky's
// clipping, 1984).
func meets(b scene.Box, p, q scene.Point) bool {
	if max(p.X, q.X) < b.Min.X || min(p.X, q.X) > b.Max.X || max(p.Y, q.Y) < b.Min.Y || min(p.Y, q.Y) > b.Max.Y {
		return false
	}
	step := q.Minus(p)
	first, last := 0.0, 1.0
	for _, edge := range [4][2]float64{
		{-step.X, p.X - b.Min.X}, {step.X, b.Max.X - p.X}, {-step.Y, p.Y - b.Min.Y}, {step.Y, b.Max.Y - p.Y},
	} {
		switch {
		case edge[0] == 0 && edge[1] < 0:
			return false
		case edge[0] < 0:
			first = max(first, edge[1]/edge[0])
		case edge[0] > 0:
			last = min(last, edge[1]/edge[0])
		}
	}
	return first <= last
}

func (p *pen) printf(format string, args ...any) {
	_, _ = fmt.Fprintf(&p.out, format, args...) // a strings.Builder never fails
}

// line draws a line; hinders keeps words off it where that can be had.
func (p *pen) line(class string, a, b scene.Point, hinders bool) {
	p.printf(`<path class="%s" d="M%s %sL%s %s"/>`, class, px(a.X), px(a.Y), px(b.X), px(b.Y))
	if hinders {
		p.lines = append(p.lines, segment{a, b})
	}
}

// chain is the data of a line through points.
func chain(points []scene.Point) string {
	var d strings.Builder
	for i, q := range points {
		d.WriteByte("ML"[min(i, 1)])
		d.WriteString(px(q.X) + " " + px(q.Y))
	}
	return d.String()
}

func (p *pen) text(t lettering) {
	class := strings.TrimSpace("sm " + t.class + [...]string{"", " mid", " end"}[t.anchor])
	p.printf(`<text class="%s" x="%s" y="%s">%s</text>`, class, px(t.at.X), px(t.at.Y), escaped(t.words))
	p.words = append(p.words, t.box(0))
}

// place writes the first of the choices that is free and crosses the fewest
// lines. ok is false, and nothing is written, where none is free.
func (p *pen) place(choices ...lettering) (ok bool) {
	best, least := lettering{}, -1
	for _, t := range choices {
		if !p.free(t) {
			continue
		}
		if n := p.crossed(t); least < 0 || n < least {
			best, least = t, n
		}
		if least == 0 {
			break
		}
	}
	if least >= 0 {
		p.text(best)
	}
	return least >= 0
}

// px writes pixels to a tenth, the same on every machine.
func px(v float64) string {
	if !finite(v) {
		return "0"
	}
	text := strings.TrimSuffix(strconv.FormatFloat(v, 'f', 1, 64), ".0")
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
