package figure

import (
	"math"
	"strconv"

	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// graduation is how rulers and squares are divided.
type graduation struct {
	squareMM float64 // side of a square
	bold     int     // every so many squares a stronger line
	tickMM   float64 // the shortest division of a ruler
	middle   int     // ticks to a middle one
	long     int     // ticks to a long one
	number   int     // ticks to a number
	countMM  float64 // what a number counts
}

// leastTickPX is how close two ticks may stand, leastNumberPX two numbers.
const (
	leastTickPX   = 3.0
	leastSquarePX = 4.0
	leastNumberPX = 26.0
)

// graduationOf is 1 cm squares and a ruler with half centimetres, or 1/2 in and
// quarters. Where these would run together, only the wider ones are drawn.
func graduationOf(system garden.System, scale float64) graduation {
	g := graduation{squareMM: 10, bold: 5, tickMM: 5, middle: 2, long: 10, number: 10, countMM: 10}
	if system == garden.US {
		g = graduation{squareMM: 12.7, bold: 2, tickMM: 25.4 / 4, middle: 2, long: 4, number: 4, countMM: 25.4}
	}
	if g.squareMM*scale < leastSquarePX {
		g.squareMM, g.bold = g.squareMM*float64(g.bold), 2
	}
	for g.tickMM*scale < leastTickPX && g.long > 1 {
		every := g.middle
		if every == 1 {
			every = g.long
		}
		g.tickMM, g.long, g.number, g.middle = g.tickMM*float64(every), g.long/every, g.number/every, 1
	}
	each := float64(g.number) * g.tickMM * scale
	for _, times := range []int{1, 2, 4, 10, 20, 40, 100} {
		if each*float64(times) >= leastNumberPX {
			g.number *= times
			break
		}
	}
	return g
}

// squareName is the side of a square in words.
func (f *lidFigure) squareName() string {
	g := graduationOf(f.system, f.scale)
	if f.system == garden.US && g.squareMM < 25 {
		return "1/2\u00a0in"
	}
	return strconv.Itoa(int(math.Round(g.squareMM/g.countMM))) + "\u00a0" + sheet.UnitName(f.system)
}

// squares lie behind a closed path, counted from its origin.
func (f *lidFigure) squares(within scene.Path) {
	f.pen.squares(within, graduationOf(f.system, f.scale))
}

func (p *pen) squares(within scene.Path, g graduation) {
	var fine, bold []scene.Element
	for _, turn := range []float64{0, 90} {
		for _, e := range scene.Hatch(within, g.squareMM, turn, scene.Thin) {
			l := e.(scene.Line)
			across := l.From.Turned(-turn).Y
			if int(math.Round(across/g.squareMM))%g.bold == 0 {
				bold = append(bold, e)
			} else {
				fine = append(fine, e)
			}
		}
	}
	p.strokes("g1", fine)
	p.strokes("g5", bold)
}

// rulerPX is how deep a ruler is, rulerOffPX how far it lies off the part.
const (
	rulerPX    = 20.0
	rulerOffPX = 6.0
)

// rulers lie along the lower and the left edge, from the lower left corner.
func (f *lidFigure) rulers() {
	g, b := graduationOf(f.system, f.scale), f.box()
	corner := scene.Point{X: b.Min.X, Y: b.Max.Y}
	f.ruler(g, corner.Plus(scene.Point{Y: rulerOffPX}), b.Width(), false)
	f.ruler(g, corner.Minus(scene.Point{X: rulerOffPX}), b.Height(), true)
}

// ruler runs from its zero to the right, or up, for so many pixels.
func (p *pen) ruler(g graduation, from scene.Point, length float64, up bool) {
	p.rulerBut(g, from, length, up, nil)
}

// rulerBut leaves out the numbers that would stand in the way of a level line,
// which says its own height.
func (p *pen) rulerBut(g graduation, from scene.Point, length float64, up bool, levels []float64) {
	along, out := scene.Point{X: 1}, scene.Point{Y: 1}
	if up {
		along, out = scene.Point{Y: -1}, scene.Point{X: -1}
	}
	end := from.Plus(along.Times(length))
	p.chain("n sheetfill", true, from, end, end.Plus(out.Times(rulerPX)), from.Plus(out.Times(rulerPX)))
	ticks := ""
	for i := range int(math.Floor(length/(g.tickMM*p.scale)+1e-6)) + 1 {
		deep := 4.0
		switch {
		case i%g.long == 0:
			deep = 11
		case i%g.middle == 0:
			deep = 7
		}
		at := from.Plus(along.Times(float64(i) * g.tickMM * p.scale))
		to := at.Plus(out.Times(deep))
		ticks += stroke(at, to)
		if i%g.number == 0 && !closeBy(at.Y, levels) {
			p.place(rulerNumber(at, strconv.Itoa(int(math.Round(float64(i)*g.tickMM/g.countMM))), up))
		}
	}
	p.printf(`<path class="n" d="%s"/>`, ticks)
}

// closeBy says whether a height is within a line of lettering of one of the levels.
func closeBy(y float64, levels []float64) bool {
	for _, l := range levels {
		if math.Abs(y-l) < smallPX {
			return true
		}
	}
	return false
}

func rulerNumber(tick scene.Point, words string, up bool) lettering {
	if up {
		return lettering{words: words, class: "sm", at: tick.Plus(scene.Point{X: -rulerPX - 4, Y: smallPX * 0.36}), anchor: scene.End}
	}
	return lettering{words: words, class: "sm", at: tick.Plus(scene.Point{Y: rulerPX + smallPX}), anchor: scene.Middle}
}
