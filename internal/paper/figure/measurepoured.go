package figure

import (
	"fmt"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// Pouring is what was poured in so far and how deep it then stood. What was not
// typed is 0, or empty.
type Pouring struct {
	Volume  string // with its unit, as it is shown: '5 L'
	DepthMM float64
}

// MeasurePoured shows how a tub of any shape is measured by pouring: water is
// poured in, and after each pouring the depth is read on a ruler that stands on
// the floor. What was typed stands at the water's line, as far as each pouring
// stands higher than the one before.
func MeasurePoured(v []Pouring, s garden.System, w Width) string {
	f := newMeasure("poured", "A tub of any shape, cut upright, with water poured in and a ruler on its floor", s, w)
	const high, floor = 150.0, 26.0 + 150.0
	wide := w.pick(250, 190)
	left := (f.width-wide)/2 - 20
	f.height = floor + 14
	at := func(x, y float64) scene.Point { return scene.Point{X: left + x*wide, Y: floor - y*high} }
	side := []scene.Point{at(0, 1), at(0.05, 0.62), at(0.02, 0.3), at(0.12, 0), at(0.9, 0), at(0.97, 0.45), at(1, 1)}
	f.chain("sheetfill", true, side...)
	levels := f.levels(v)
	top := levels[len(levels)-1].share
	f.chain("wat", true, waterIn(side, at, top)...)
	for _, l := range levels {
		from, to := waterLine(side, at, l.share)
		f.line("watl", from, to)
	}
	f.chain("kk", false, side...)
	f.standingRuler(at(0.34, 0), high)
	f.pouredWords(levels, at)
	return f.svg()
}

// poured is one water's line: share of the tub's height, and what was typed.
type poured struct {
	share         float64
	volume, depth string
}

// levels are the lines drawn: those typed, as long as they rise, else one
// without numbers.
func (f *measureFigure) levels(v []Pouring) []poured {
	var out []poured
	last := 0.0
	for _, p := range v {
		if !(measured{mm: p.DepthMM}).typed() || p.DepthMM <= last {
			continue
		}
		last = p.DepthMM
		out = append(out, poured{share: p.DepthMM, volume: p.Volume, depth: sheet.Mark(p.DepthMM, f.system)})
	}
	if len(out) == 0 {
		return []poured{{share: 0.55}}
	}
	const full = 0.82 // of the height, for the deepest line
	for i := range out {
		out[i].share *= full / last
	}
	return out
}

// waterLine is the line of the water at a share of the height.
func waterLine(side []scene.Point, at func(x, y float64) scene.Point, share float64) (from, to scene.Point) {
	y := at(0, share).Y
	cut := func(a, b scene.Point) scene.Point {
		return scene.Point{X: a.X + (b.X-a.X)*(y-a.Y)/(b.Y-a.Y), Y: y}
	}
	for i := 1; i < len(side); i++ {
		a, b := side[i-1], side[i]
		switch {
		case a.Y < y && b.Y >= y:
			from = cut(a, b)
		case a.Y >= y && b.Y < y:
			to = cut(a, b)
		}
	}
	return from, to
}

func waterIn(side []scene.Point, at func(x, y float64) scene.Point, share float64) []scene.Point {
	from, to := waterLine(side, at, share)
	out := []scene.Point{from}
	for _, p := range side {
		if p.Y > from.Y {
			out = append(out, p)
		}
	}
	return append(out, to)
}

// rulerWidePX is how wide the ruler in the water is.
const rulerWidePX = 14.0

// standingRuler draws a ruler that stands on the floor.
func (f *measureFigure) standingRuler(foot scene.Point, high float64) {
	const wide = rulerWidePX
	f.chain("mm sheetfill", true, foot, foot.Plus(scene.Point{Y: -high - 14}), foot.Plus(scene.Point{X: wide, Y: -high - 14}), foot.Plus(scene.Point{X: wide}))
	for i := 1; i <= 18; i++ {
		y := foot.Y - float64(i)*high/18
		long := 4.0
		if i%5 == 0 {
			long = 8
		}
		f.line("n", scene.Point{X: foot.X, Y: y}, scene.Point{X: foot.X + long, Y: y})
	}
}

// pouredWords write the rings at the highest line, and at each line what was
// typed, from the top down as far as there is room.
func (f *measureFigure) pouredWords(levels []poured, at func(x, y float64) scene.Point) {
	top := levels[len(levels)-1]
	ruler := at(0.34, 0)
	floor, surface := ruler.Minus(scene.Point{X: 18, Y: 1.7}), scene.Point{X: ruler.X - 18, Y: at(0, top.share).Y}
	f.ask(measured{letter: LetterDeep, name: "how deep it stands"}, floor, surface, scene.Point{})
	volume := scene.Point{X: at(1, 0).X + 24, Y: surface.Y}
	f.line("n", at(1, top.share).Plus(scene.Point{X: 4}), volume.Minus(scene.Point{X: ringPX}))
	f.ring(LetterPoured, volume)
	f.asked = append(f.asked, measured{letter: LetterPoured, name: "how much was poured in so far"})
	var said []string
	for i := len(levels) - 1; i >= 0; i-- {
		l := levels[i]
		if l.depth == "" {
			continue
		}
		y := at(0, l.share).Y
		f.place(lettering{words: l.depth, class: "sm", at: scene.Point{X: ruler.X + rulerWidePX + 5, Y: y - liftPX}})
		if l.volume != "" {
			f.place(lettering{words: l.volume, class: "sm", at: scene.Point{X: volume.X + ringPX + ringGap, Y: y + digitHalfPX}})
		}
		said = append(said, strings.TrimSpace(fmt.Sprintf("%s stand %s %s deep", l.volume, l.depth, sheet.UnitName(f.system))))
	}
	if len(said) > 0 {
		f.title += ". " + strings.Join(said, "; ")
	}
}
