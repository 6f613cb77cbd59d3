package lessons

import (
	"fmt"
	"math"

	"rootbell/internal/base/quantity"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/lesson"
)

// Lengths of a graph in mm.
const (
	squareMM   = 5.0
	wideMM     = 150.0
	highMM     = 75.0
	sameHighMM = 95.0 // of one with one scale both ways
	letterMM   = 13 * scene.PointMM
	marginMM   = 20.0 // for the numbers at the side
	underMM    = 15.0 // for the numbers below
	crossMM    = 1.6
)

// figure is a sheet's graph on squared paper, or its drawing at true scale.
func figure(s lesson.Sheet, filled, key bool) content.Figure {
	g := s.Graph
	if g.Scale > 0 {
		return drawn(g)
	}
	p := paperOf(g)
	p.grid()
	p.axes()
	if filled {
		p.marks()
	}
	if key && g.Line != nil {
		p.line()
	}
	caption := "Squares of 5 mm on paper, numbers at the sides. " + content.NotToScale
	return content.PrintedOf(g.Title, caption, p.says(filled), p.frame(), p.out)
}

// squared is a graph under way.
type squared struct {
	g      *lesson.Graph
	dx, dy float64 // mm for a step
	nx, ny int
	out    []scene.Element
}

func paperOf(g *lesson.Graph) *squared {
	p := &squared{g: g, nx: steps(g.X), ny: steps(g.Y)}
	high := highMM
	if g.Same {
		high = sameHighMM
	}
	p.dx = squareMM * math.Max(math.Floor(wideMM/squareMM/float64(p.nx)), 1)
	p.dy = squareMM * math.Max(math.Floor(high/squareMM/float64(p.ny)), 1)
	if g.Same {
		p.dx = min(p.dx, p.dy)
		p.dy = p.dx
	} else {
		p.dx = min(p.dx, 5*squareMM)
	}
	return p
}

func steps(a lesson.Axis) int { return max(int(math.Round(a.To/a.Step)), 1) }

func (p *squared) wide() float64 { return p.dx * float64(p.nx) }
func (p *squared) high() float64 { return p.dy * float64(p.ny) }

func (p *squared) at(x, y float64) scene.Point {
	return scene.Point{X: x / p.g.X.Step * p.dx, Y: y / p.g.Y.Step * p.dy}
}

func (p *squared) frame() scene.Box {
	under := underMM
	if p.g.Bars {
		under = 8 // no name stands under the bars
	}
	return scene.Box{Min: scene.Point{X: -marginMM, Y: -under}, Max: scene.Point{X: p.wide() + 6, Y: p.high() + 9}}
}

func (p *squared) grid() {
	for x := 0.0; x <= p.wide()+1e-6; x += squareMM {
		p.out = append(p.out, scene.Line{From: scene.Point{X: x}, To: scene.Point{X: x, Y: p.high()}})
	}
	for y := 0.0; y <= p.high()+1e-6; y += squareMM {
		p.out = append(p.out, scene.Line{From: scene.Point{Y: y}, To: scene.Point{X: p.wide(), Y: y}})
	}
}

func (p *squared) text(x, y float64, words string, anchor scene.Anchor) {
	p.out = append(p.out, scene.Text{At: scene.Point{X: x, Y: y}, Text: words, SizeMM: letterMM, Face: scene.Sans, Anchor: anchor})
}

// axes are the two thick sides with their numbers and what they are.
func (p *squared) axes() {
	p.out = append(
		p.out,
		scene.Line{From: scene.Point{}, To: scene.Point{X: p.wide()}, Class: scene.Edge},
		scene.Line{From: scene.Point{}, To: scene.Point{Y: p.high()}, Class: scene.Edge},
	)
	every := 1
	for float64(every)*p.dy < 2*squareMM-1 {
		every++
	}
	for i := 0; i <= p.ny; i += every {
		v := float64(i) * p.g.Y.Step
		p.text(-2, float64(i)*p.dy-1.3, number(v, p.g.Y.Step), scene.End)
	}
	p.text(-marginMM+1, p.high()+4.5, named(p.g.Y), scene.Start)
	if p.g.Bars {
		p.barNames()
		return
	}
	every = 1
	for float64(every)*p.dx < 10 {
		every++
	}
	for i := 0; i <= p.nx; i += every {
		p.text(float64(i)*p.dx, -5, number(float64(i)*p.g.X.Step, p.g.X.Step), scene.Middle)
	}
	p.text(p.wide(), -11, named(p.g.X), scene.End)
}

func (p *squared) barNames() {
	for _, q := range p.g.Points {
		x := p.at(q.X, 0).X
		words := scene.Sans.Fitted(q.Label, letterMM, p.dx-1)
		p.out = append(p.out, scene.Text{At: scene.Point{X: x, Y: -5}, Text: words, SizeMM: letterMM, Face: scene.Sans, Anchor: scene.Middle})
	}
}

func named(a lesson.Axis) string {
	if a.Unit == "" {
		return a.Name
	}
	return a.Name + ", " + a.Unit
}

func number(v, step float64) string {
	d := 0
	for d < 3 && math.Abs(step*math.Pow(10, float64(d))-math.Round(step*math.Pow(10, float64(d)))) > 1e-9 {
		d++
	}
	return quantity.FormatNumber(v, d)
}

// marks are the bars, or a cross for each point.
func (p *squared) marks() {
	last := scene.Point{}
	for i, q := range p.g.Points {
		at := p.at(q.X, q.Y)
		switch {
		case p.g.Bars:
			box := scene.Box{Min: scene.Point{X: at.X - p.dx*0.3}, Max: scene.Point{X: at.X + p.dx*0.3, Y: at.Y}}
			p.out = append(p.out, scene.Hatch(scene.Rectangle(box), 2, 45, scene.Thin)...)
			p.out = append(p.out, scene.Shape{Path: scene.Rectangle(box), Class: scene.Part})
		default:
			p.cross(at)
			if q.Label != "" {
				p.out = append(p.out, scene.Text{At: at.Plus(scene.Point{X: 2, Y: 1.4}), Text: q.Label, SizeMM: letterMM, Face: scene.SansBold, Halo: true})
			}
		}
		if p.g.Discs > 0 {
			p.out = append(p.out, scene.Circle{Centre: at, RadiusMM: p.g.Discs / 2 / p.g.X.Step * p.dx, Class: scene.Part})
		}
		if p.g.Joined && i > 0 {
			p.out = append(p.out, scene.Line{From: last, To: at, Class: scene.Part})
		}
		last = at
	}
}

func (p *squared) cross(at scene.Point) {
	for _, d := range []scene.Point{{X: crossMM, Y: crossMM}, {X: crossMM, Y: -crossMM}} {
		p.out = append(p.out, scene.Line{From: at.Minus(d), To: at.Plus(d), Class: scene.Edge})
	}
}

// line is the fitted line from one side to the other, where it is on the paper.
func (p *squared) line() {
	a, b := p.g.Line[0], p.g.Line[1]
	x0, x1 := 0.0, p.g.X.To
	if b != 0 {
		u, v := -a/b, (p.g.Y.To-a)/b
		x0, x1 = max(x0, min(u, v)), min(x1, max(u, v))
	}
	if x1 > x0 {
		p.out = append(p.out, scene.Line{From: p.at(x0, a+b*x0), To: p.at(x1, a+b*x1), Class: scene.Part})
	}
}

// says is the graph for who cannot see it.
func (p *squared) says(filled bool) string {
	text := fmt.Sprintf("Squared paper. Upwards: %s, 0 to %s.", named(p.g.Y), number(p.g.Y.To, p.g.Y.Step))
	if !p.g.Bars {
		text += fmt.Sprintf(" To the right: %s, 0 to %s.", named(p.g.X), number(p.g.X.To, p.g.X.Step))
	}
	if !filled {
		return text + " It is empty, to be filled in."
	}
	return text + fmt.Sprintf(" %d marks are on it; the table has their numbers.", len(p.g.Points))
}

// drawn is a lid at true scale.
func drawn(g *lesson.Graph) content.Figure {
	wide, high := g.X.To/g.Scale, g.Y.To/g.Scale
	frame := scene.Box{Min: scene.Point{X: -2, Y: -2}, Max: scene.Point{X: wide + 2, Y: high + 2}}
	out := []scene.Element{scene.Shape{Path: scene.Rectangle(scene.BoxAt(scene.Point{}, wide, high)), Class: scene.Edge}}
	if g.Round {
		out = []scene.Element{scene.Circle{Centre: scene.Point{X: wide / 2, Y: high / 2}, RadiusMM: wide / 2, Class: scene.Edge}}
	}
	for _, q := range g.Points {
		at := scene.Point{X: q.X / g.Scale, Y: q.Y / g.Scale}
		out = append(out, scene.Circle{Centre: at, RadiusMM: g.Discs / 2 / g.Scale, Class: scene.Part})
		out = append(out, scene.Line{From: at.Minus(scene.Point{X: 1}), To: at.Plus(scene.Point{X: 1})}, scene.Line{From: at.Minus(scene.Point{Y: 1}), To: at.Plus(scene.Point{Y: 1})})
		out = append(out, scene.Text{At: at.Plus(scene.Point{X: 1.2, Y: 1.2}), Text: q.Label, SizeMM: letterMM, Face: scene.SansBold})
	}
	caption := fmt.Sprintf("The lid at 1 to %.0f, if the paper is printed at 100 %%. On a screen: %s", g.Scale, "this picture is not to scale.")
	return content.PrintedOf(g.Title, caption, fmt.Sprintf("The lid seen from above with %d numbered holes.", len(g.Points)), frame, out)
}
