package figure

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
)

// Measures of the drawing of the dipstick, in px.
const (
	stickDesk  = 560.0
	stickHand  = 328.0
	stickHigh  = 180.0 // the tub's inside height
	stickWide  = 26.0
	stickOver  = 12.0  // the stick stands out of the tub
	stickSide  = 8.0   // left of the tub
	stickWords = 152.0 // right of the tub: the line that is read, in bold
	stickApart = 16.0  // between two words one above the other
)

// stickFigure is how a dipstick is read in one tub.
type stickFigure struct {
	pen
	w      Width
	tub    garden.Tub
	system garden.System
	half   func(mm float64) float64 // half of the inside width, mm
	readMM float64                  // where the water stands in the drawing
	read   string                   // what is read there
}

// Stick shows how a tub's dipstick is read: it stands on the floor, and the
// mark at the water counts. The level in it is an example, a whole step of the
// stick. ok is false where the tub's shape or its lines are not known.
func Stick(a *garden.Assessment, tub int, w Width) (svg string, ok bool) {
	if tub < 0 || tub >= len(a.Tubs) || len(a.Tubs[tub].Levels) == 0 || a.Tubs[tub].Shape.HeightMM() <= 0 {
		return "", false
	}
	f := &stickFigure{w: w, tub: a.Tubs[tub], system: a.Plan.Units}
	if !f.findLevel() {
		return "", false
	}
	f.setScale()
	f.draw()
	label := fmt.Sprintf("How to read the dipstick of %s: stand it on the floor of the tub and read the mark where the water stands, here %s.", f.tub.Name, f.read)
	return fmt.Sprintf(`<svg class="fig" id="stick-%s-%s" width="%s" height="%s" viewBox="0 0 %s %s" role="img" aria-label="%s">%s</svg>`,
		garden.Slug(f.tub.Name), w, px(f.width), px(f.height), px(f.width), px(f.height), escaped(label), f.out.String()), true
}

// findLevel takes the whole step of the stick nearest to the middle of the
// water between its first line and its last.
func (f *stickFigure) findLevel() bool {
	lines := f.tub.Levels
	fill, least := lines[0].DepthMM, 0.0
	if last := lines[len(lines)-1]; last.Lowest {
		least = last.DepthMM
	}
	wanted := least + (fill-least)*0.55
	best := math.Inf(1)
	for _, m := range f.tub.VolumeMarks(f.system) {
		if d := math.Abs(m.DepthMM - wanted); d < best && m.DepthMM < fill && m.DepthMM > least {
			best, f.readMM = d, m.DepthMM
		}
	}
	v := f.tub.Shape.Volume(f.readMM)
	unit := v.Kind().Unit(f.system)
	const finest = 100 // no stick has finer steps than hundredths
	f.read = strconv.FormatFloat(math.Round(unit.From(v.Base())*finest)/finest, 'f', -1, 64) + "\u00a0" + unit.Symbol
	return f.readMM > 0
}

func (f *stickFigure) setScale() {
	high := f.tub.Shape.HeightMM()
	f.width = f.w.pick(stickDesk, stickHand)
	room := f.width - 2*stickSide - stickWords
	const usual = 0.9 // of the height, half of a tub whose walls are not known
	f.half = func(float64) float64 { return usual * high }
	if _, _, _, ok := f.tub.Shape.Wall(high); ok {
		f.half = func(mm float64) float64 {
			long, _, _, _ := f.tub.Shape.Wall(mm)
			return long / 2
		}
	}
	f.scale = math.Min(stickHigh/high, room/(2*f.half(high)))
	f.height = stickOver + 14 + high*f.scale + 14
	f.zero = scene.Point{X: stickSide + f.half(high)*f.scale, Y: f.height - 10}
}

func (f *stickFigure) mm(x, y float64) scene.Point { return f.at(scene.Point{X: x, Y: y}) }

func (f *stickFigure) draw() {
	high := f.tub.Shape.HeightMM()
	water := []scene.Point{f.mm(-f.half(f.readMM), f.readMM), f.mm(-f.half(0), 0), f.mm(f.half(0), 0), f.mm(f.half(f.readMM), f.readMM)}
	f.chain("wat", true, water...)
	f.line("watl", water[0], water[3])
	f.words()
	f.stick()
	f.chain("kk", false, f.mm(-f.half(high), high), f.mm(-f.half(0), 0), f.mm(f.half(0), 0), f.mm(f.half(high), high))
}

// stick stands on the floor with its marks of volume, the numbers beside it.
func (f *stickFigure) stick() {
	high := f.tub.Shape.HeightMM()
	foot := f.mm(0, 0)
	left, right := foot.X-stickWide/2, foot.X+stickWide/2
	top := f.mm(0, high).Y - stickOver
	f.chain("mm sheetfill", true, scene.Point{X: left, Y: foot.Y}, scene.Point{X: right, Y: foot.Y}, scene.Point{X: right, Y: top}, scene.Point{X: left, Y: top})
	last := math.Inf(1)
	for _, m := range f.tub.VolumeMarks(f.system) {
		y := f.mm(0, m.DepthMM).Y
		tick := 5.0
		if m.Words != "" {
			tick = 9
		} else if last-y < leastTickPX {
			continue
		}
		last = y
		f.line("n", scene.Point{X: right - tick, Y: y}, scene.Point{X: right, Y: y})
		if m.Words != "" && y < foot.Y-smallPX {
			class := "sm"
			if m.DepthMM < f.readMM {
				class += " halo-w"
			}
			f.place(lettering{words: m.Words, class: class, anchor: scene.End, at: scene.Point{X: left - 5, Y: y + smallPX*0.36}})
		}
	}
}

// words name the lines of the water to the right of the tub, the one that is
// read in bold.
func (f *stickFigure) words() {
	type named struct {
		mm           float64
		line, words  string
		class, solid string
	}
	all := []named{{f.readMM, "n", "read here: " + f.read, "sm b", "n"}}
	for _, l := range f.tub.Levels {
		switch {
		case l.Lowest:
			all = append(all, named{l.DepthMM, "lowl", "never lower", "sm", ""})
		case strings.HasPrefix(l.Words, "fill"):
			all = append(all, named{l.DepthMM, "cen", l.Words, "sm", ""})
		}
	}
	slices.SortStableFunc(all, func(a, b named) int { return cmp.Compare(b.mm, a.mm) })
	below := math.Inf(-1)
	side := f.mm(f.half(f.tub.Shape.HeightMM()), 0).X + 10
	for _, n := range all {
		y := f.mm(0, n.mm).Y
		if n.solid == "" {
			f.line(n.line, f.mm(-f.half(n.mm)+4/f.scale, n.mm), f.mm(f.half(n.mm)-4/f.scale, n.mm))
		} else {
			f.line(n.line, scene.Point{X: f.zero.X + stickWide/2, Y: y}, scene.Point{X: side, Y: y})
		}
		below = math.Max(y, below+stickApart)
		if below != y {
			f.line("n", scene.Point{X: side - 6, Y: y}, scene.Point{X: side, Y: below})
		}
		f.text(lettering{words: n.words, class: n.class, at: scene.Point{X: side + 4, Y: below + smallPX*0.36}})
	}
}
