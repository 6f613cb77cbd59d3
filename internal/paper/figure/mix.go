package figure

import (
	"fmt"
	"math"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
)

// The drawings of Mix in px: as wide as a phone has room for.
const (
	mixWide  = 328.0
	barRow   = 22.0
	barLeft  = 34.0 // for the symbols
	barRight = 96.0 // for the figures
	mostPart = 2.0  // of what is aimed at; what is more ends in an arrow
)

// Bars is a bar for each nutrient that is aimed at: what is in the tub beside
// what is wanted, and the band that plants bear; 328 px wide. ok is false where
// nothing is aimed at.
func Bars(m *garden.Mix) (svg string, ok bool) {
	p := &pen{width: mixWide}
	said := ""
	for _, e := range m.Elements {
		if e.WantMgL <= 0 {
			continue
		}
		y := 8 + p.height
		p.bar(e, y)
		p.height += barRow
		said += fmt.Sprintf(" %s %s of %s.", e.Word, contents(e.HaveMgL), contents(e.WantMgL))
	}
	if p.height == 0 {
		return "", false
	}
	p.height += 12
	return p.named("mix-bars", "Each nutrient in mg/L, in the tub and aimed at."+said+" The same values are in the table."), true
}

// bar is one nutrient, as parts of what is aimed at.
func (p *pen) bar(e garden.MixElement, y float64) {
	long := mixWide - barLeft - barRight
	x := func(mgL float64) float64 {
		return barLeft + long*math.Min(mgL/e.WantMgL, mostPart)/mostPart
	}
	box := func(class string, from, to, top, bottom float64) {
		p.chain(class, true, scene.Point{X: from, Y: top}, scene.Point{X: to, Y: top}, scene.Point{X: to, Y: bottom}, scene.Point{X: from, Y: bottom})
	}
	box("b9", x(e.LowMgL), x(e.HighMgL), y, y+14)
	for _, edge := range []float64{x(e.LowMgL), x(e.HighMgL)} {
		p.line("be", scene.Point{X: edge, Y: y}, scene.Point{X: edge, Y: y + 14})
	}
	box("solid", barLeft, x(e.HaveMgL), y+4, y+10)
	p.line("n", scene.Point{X: barLeft, Y: y - 2}, scene.Point{X: barLeft, Y: y + 16})
	p.line("k", scene.Point{X: x(e.WantMgL), Y: y - 1}, scene.Point{X: x(e.WantMgL), Y: y + 15})
	if e.HaveMgL > mostPart*e.WantMgL {
		tip := scene.Point{X: x(e.HaveMgL) + 8, Y: y + 7}
		p.chain("mm", false, scene.Point{X: tip.X - 6, Y: tip.Y - 5}, tip, scene.Point{X: tip.X - 6, Y: tip.Y + 5})
	}
	p.text(lettering{words: e.Symbol, class: "sm b", anchor: scene.Start, at: scene.Point{X: 2, Y: y + 11}})
	p.text(lettering{words: contents(e.HaveMgL) + " of " + contents(e.WantMgL), class: "sm", anchor: scene.End, at: scene.Point{X: mixWide - 2, Y: y + 11}})
}

// contents writes mg/L with as many places as the traces need.
func contents(mgL float64) string {
	switch {
	case mgL < 1:
		return quantity.FormatNumber(mgL, 2)
	case mgL < 10:
		return quantity.FormatNumber(mgL, 1)
	}
	return quantity.FormatNumber(mgL, 0)
}

// named closes a drawing without a tub.
func (p *pen) named(id, label string) string {
	return fmt.Sprintf(`<svg class="fig chart" id="%s" width="%s" height="%s" viewBox="0 0 %s %s" role="img" aria-label="%s">%s</svg>`,
		id, px(p.width), px(p.height), px(p.width), px(p.height), escaped(label), p.out.String())
}

// plot is a curve's frame: values to pixels, a grid and its numbers.
type plot struct {
	*pen
	left, top, right, bottom float64
	maxX, lowY, highY        float64
}

func newPlot(maxX, lowY, highY float64) plot {
	return plot{&pen{width: mixWide, height: 220}, 40, 22, mixWide - 20, 184, maxX, lowY, highY}
}

func (f plot) at(x, y float64) scene.Point {
	return scene.Point{X: f.left + (f.right-f.left)*x/f.maxX, Y: f.bottom - (f.bottom-f.top)*(y-f.lowY)/(f.highY-f.lowY)}
}

// axes draws level lines with their numbers, and marks along the foot.
func (f plot) axes(stepY float64, decimals int, unit string, marks []float64, words []string, under string) {
	for y := f.lowY; y <= f.highY+stepY/1000; y += stepY {
		f.line("g5", f.at(0, y), f.at(f.maxX, y))
		at := f.at(0, y)
		f.text(lettering{words: quantity.FormatNumber(y, decimals), class: "sm", anchor: scene.End, at: scene.Point{X: at.X - 5, Y: at.Y + 4}})
	}
	f.text(lettering{words: unit, class: "sm b", anchor: scene.Start, at: scene.Point{X: 2, Y: 12}})
	f.line("n", f.at(0, f.lowY), f.at(f.maxX, f.lowY))
	for i, x := range marks {
		at := f.at(x, f.lowY)
		f.line("n", at, scene.Point{X: at.X, Y: at.Y + 5})
		f.text(lettering{words: words[i], class: "sm", anchor: scene.Middle, at: scene.Point{X: at.X, Y: at.Y + 18}})
	}
	f.text(lettering{words: under, class: "sm b", anchor: scene.End, at: scene.Point{X: f.right, Y: f.bottom + 33}})
}

// rung is a level step of 1, 2 or 5 that gives four to seven lines.
func rung(span float64) float64 {
	unit := math.Pow(10, math.Floor(math.Log10(span)))
	for _, s := range []float64{0.1, 0.2, 0.5, 1, 2, 5} {
		if n := span / (s * unit); n <= 6 {
			return s * unit
		}
	}
	return unit
}

// ECCurve is the EC against the part of the dose, to be read by hand; 328 px
// wide. ok is false where the EC is not known.
func ECCurve(m *garden.Mix) (svg string, ok bool) {
	if m.EC == nil || *m.EC <= 0 {
		return "", false
	}
	const most = 1.5
	curve := m.Curve()
	points := spots(curve.Points(most, 31))
	high := points[len(points)-1].Y
	s := rung(high)
	f := newPlot(most, 0, math.Ceil(high/s)*s)
	f.axes(s, decimalsOf(s), "mS/cm", []float64{0, 0.25, 0.5, 0.75, 1, 1.25, 1.5}, []string{"0", "1/4", "1/2", "3/4", "1", "", "1 1/2"}, "of the dose")
	f.curve("mm", points)
	whole := f.at(1, curve.EC(1))
	f.circle("rd", whole, 4)
	f.text(lettering{words: quantity.FormatNumber(*m.EC, 2), class: "sm b halo", anchor: scene.End, at: scene.Point{X: whole.X - 8, Y: whole.Y - 6}})
	return f.named("mix-curve", fmt.Sprintf("EC against the part of the dose: from %s in the water alone to %s at the whole dose. The same values are in the table.",
		quantity.FormatNumber(points[0].Y, 2), quantity.FormatNumber(*m.EC, 2))), true
}

func decimalsOf(step float64) int {
	switch {
	case step >= 1:
		return 0
	case step >= 0.1:
		return 1
	}
	return 2
}

// spots are points of a curve of the chemistry as the pen takes them.
func spots[P ~struct{ X, Y float64 }](points []P) []scene.Point {
	out := make([]scene.Point, len(points))
	for i, p := range points {
		out[i] = scene.Point(p)
	}
	return out
}

// curve is a line through points.
func (f plot) curve(class string, points []scene.Point) {
	var at []scene.Point
	for _, p := range points {
		at = append(at, f.at(p.X, math.Max(f.lowY, math.Min(p.Y, f.highY))))
	}
	f.chain(class, false, at...)
}

// Titration is the pH at once and after air against the acid in mmol/L; 328 px
// wide. ok is false where no acid is dosed.
func Titration(m *garden.Mix) (svg string, ok bool) {
	const count = 31
	first, last, ok := m.Titration(count)
	atOnce, aired := spots(first), spots(last)
	if !ok || len(atOnce) < 2 || m.Acid == nil || m.Acid.MmolLOpen == nil {
		return "", false
	}
	most := atOnce[len(atOnce)-1].X
	f := newPlot(most, 3, 9)
	s := rung(most)
	var marks []float64
	var words []string
	for x := 0.0; x <= most; x += s {
		marks, words = append(marks, x), append(words, quantity.FormatNumber(x, decimalsOf(s)))
	}
	f.axes(1, 0, "pH", marks, words, "acid, mmol/L")
	f.curve("hid", atOnce)
	f.curve("mm", aired)
	f.text(lettering{words: "after a night of air", class: "sm halo", anchor: scene.Start, at: f.beside(aired, 0.3, -8)})
	f.text(lettering{words: "at once", class: "sm halo", anchor: scene.End, at: f.beside(atOnce, 0.4, 16)})
	at := f.at(*m.Acid.MmolLOpen, f.lowY)
	f.line("lowl", at, f.at(*m.Acid.MmolLOpen, f.highY))
	f.text(lettering{words: "the dose", class: "sm b halo", anchor: scene.End, at: scene.Point{X: at.X - 5, Y: f.bottom - 8}})
	return f.named("mix-titration", fmt.Sprintf("pH against the acid. At %s mmol/L, the dose, it reads about %s at once and %s after a night of air.",
		quantity.FormatNumber(*m.Acid.MmolLOpen, 2), said(m.Acid.PHAtOnce), said(m.Acid.PHAfterAir))), true
}

func said(ph *float64) string {
	if ph == nil {
		return "an unknown pH"
	}
	return quantity.FormatNumber(*ph, 1)
}

// beside is a place at a part of a curve, so many px lower.
func (f plot) beside(points []scene.Point, part, lower float64) scene.Point {
	p := points[int(part*float64(len(points)-1))]
	at := f.at(p.X, p.Y)
	return scene.Point{X: at.X, Y: at.Y + lower}
}
