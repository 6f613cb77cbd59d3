package figure

import (
	"fmt"
	"math"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/paper/cutaway"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// sectionFigure is one section being drawn. Places in mm count from the tub's
// middle and its inside floor.
type sectionFigure struct {
	pen
	cutaway.Cut
	w           Width
	id, tub     string
	system      garden.System
	left, right float64 // where the boards end, px
	whole       bool    // whether the boards are drawn from end to end
	top, bottom float64 // of the highest and the lowest thing, mm
	air         cutaway.Air
	aerated     bool
}

func sectionOf(a *garden.Assessment, tub int, w Width) (*sectionFigure, bool) {
	if tub < 0 || tub >= len(a.Tubs) {
		return nil, false
	}
	cut, ok := cutaway.Of(a, tub)
	if !ok || cut.Check() != nil {
		return nil, false
	}
	f := &sectionFigure{Cut: cut, w: w, tub: a.Tubs[tub].Name, system: a.Plan.Units}
	f.id = strings.Join([]string{"section", garden.Slug(f.tub), w.String()}, "-")
	f.air, f.aerated = f.Air()
	f.extent()
	f.setScale()
	return f, true
}

// extent is how far the drawing reaches up and down, in mm.
func (f *sectionFigure) extent() {
	f.bottom = -f.FloorMM - cutaway.ShelfMM
	f.top = f.LidFaceMM + math.Max(f.PlantMM, 40)
	if lamp, ok := f.Lamp(); ok {
		f.top = math.Max(f.top, lamp.Max.Y)
	}
	if f.aerated {
		f.top = math.Max(f.top, f.air.Pump.Max.Y)
	}
	if f.ClearMM > 0 {
		f.top = math.Max(f.top, f.ClearMM-f.FloorMM+cutaway.ShelfMM)
	}
}

// Room round the section, px: for the names of the water's lines and the ruler
// left of the tub, for the chains of dimensions, for the words on the right, for
// the ruler and the dimensions below.
const (
	levelRoomPX = 196.0
	chainRoomPX = 66.0
	wordRoomPX  = 160.0
	aboveRoomPX = 24.0
)

// setScale takes the largest scale at which all has room.
func (f *sectionFigure) setScale() {
	f.width = f.w.pick(1036, 328)
	mostHigh, foot := f.w.pick(720, 470), f.w.pick(106, 74)
	for f.scale = 1.2; f.scale > 0.02; f.scale -= 0.005 {
		l, r := f.sides()
		if l+r <= f.width && (f.top-f.bottom)*f.scale <= mostHigh {
			break
		}
	}
	f.scale = math.Round(f.scale*1000) / 1000
	l, r := f.sides()
	f.height = math.Ceil(aboveRoomPX + (f.top-f.bottom)*f.scale + foot)
	f.zero = scene.Point{X: math.Round(l + (f.width-l-r)/2), Y: math.Round(aboveRoomPX + f.top*f.scale)}
	if f.w == Hand {
		f.left, f.right = 1, f.width-46
		return
	}
	f.left, f.right = f.zero.X-f.board(), f.zero.X+f.board()
	f.whole = f.ShelfWideMM >= f.OutsideWidthMM
}

// board is half of what the shelf takes, px.
func (f *sectionFigure) board() float64 {
	return math.Max(f.ShelfWideMM, f.OutsideWidthMM+160) / 2 * f.scale
}

// sides are what the drawing takes left and right of the tub's middle, px.
func (f *sectionFigure) sides() (left, right float64) {
	tub := f.OutsideWidthMM / 2 * f.scale
	if f.w == Hand {
		left, right = tub+52, tub+16
		if f.aerated {
			right = math.Max(right, (f.air.Pump.Max.X+4)*f.scale)
		}
		return left, right + 48
	}
	left = math.Max(f.board(), tub+levelRoomPX) + chainRoomPX
	right = math.Max(f.board(), tub) + 14
	if f.aerated {
		right = math.Max(right, f.air.Pump.Max.X*f.scale+wordRoomPX)
	}
	return left, right
}

func (f *sectionFigure) mark(mm float64) string { return sheet.Mark(mm, f.system) }

func (f *sectionFigure) mm(x, y float64) scene.Point { return f.at(scene.Point{X: x, Y: y}) }

// draw is the whole drawing. The short dashes of the water are drawn under all
// else, where nothing stands on them, so they come to be known last.
func (f *sectionFigure) draw() {
	f.path("wat", f.Water(f.FillMM))
	f.squaresBehind()
	rest := f.aside(func() {
		f.boards()
		f.plants()
		f.lamp()
		f.levels()
		f.walls()
		for _, x := range f.CupsAtMM {
			f.cup(f.OnLid(x))
		}
		if f.aerated {
			f.blower()
		}
		f.levelSign()
		f.rulers()
		f.chains()
		f.inside()
		f.names()
		if f.w == Hand {
			f.levelNames()
		}
	})
	f.ripples()
	f.out.WriteString(rest)
}

func (f *sectionFigure) svg() string {
	return fmt.Sprintf(`<svg class="fig" id="%s" width="%s" height="%s" viewBox="0 0 %s %s" role="img" aria-label="%s" data-scale="%s">%s</svg>`,
		escaped(f.id), px(f.width), px(f.height), px(f.width), px(f.height), escaped(f.label()), mm(f.scale), f.out.String())
}

// label is what the figure shows, in sentences.
func (f *sectionFigure) label() string {
	text := fmt.Sprintf("%s cut upright. Filled to %s over the inside floor on transplant day.", f.tub, garden.Mark(f.FillMM, f.system))
	if f.LaterFillMM > 0 {
		text += fmt.Sprintf(" Once roots hang, filled to %s.", garden.Mark(f.LaterFillMM, f.system))
	}
	if f.LowestMM > 0 {
		text += fmt.Sprintf(" The lowest safe line is at %s.", garden.Mark(f.LowestMM, f.system))
	}
	if f.aerated {
		text += " The air pump stands outside, above the water line, tied so that it cannot fall in, with a check valve in its line and a drip loop in its lead."
	}
	if f.LampMM > 0 {
		text += fmt.Sprintf(" The lamp hangs %s over the lid.", garden.Mark(f.LampMM, f.system))
	}
	return text
}

// note says what the drawing takes for granted.
func (f *sectionFigure) note() string {
	text := fmt.Sprintf("All numbers are in %s. Lines of the water, over the tub's inside floor:", sheet.UnitWord(f.system))
	for i, l := range f.lines() {
		if i > 0 {
			text += ","
		}
		text += " " + l.words + " " + f.mark(l.height)
	}
	text += fmt.Sprintf(". Cut %s up from the lid's lower edge, where most cups hang.",
		garden.Mark(f.AtMM, f.system))
	if f.PlantMM > 0 {
		text += " Dash and two dots: the plants at harvest."
	}
	if f.aerated {
		text += " The air line is drawn at the right; the lid from above shows where its hole is."
	}
	for _, s := range f.Guessed {
		text += " " + s
	}
	return text
}
