package figure

import (
	"fmt"
	"math"

	"rootbell/internal/garden"
	"rootbell/internal/paper/cutaway"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// The drawing of Today in px: as wide as a phone has room for.
const (
	todayWide  = 328.0
	todayTall  = 150.0 // most, from the floor to the top of the cups
	todayRight = 78.0  // for the dimension of the line
	todayAbove = 18.0
	todayBelow = 26.0
)

// todayFigure is one tub on one morning.
type todayFigure struct {
	pen
	cutaway.Cut
	tub    garden.Tub
	system garden.System
}

// Today is one tub small, cut upright, with the line to fill to and the water as
// it was last read; 328 px wide. ok is false where no lid could be laid out, or
// nothing is known of the tub's morning.
func Today(a *garden.Assessment, tub int) (svg string, ok bool) {
	if tub < 0 || tub >= len(a.Tubs) || a.Tubs[tub].Today == nil {
		return "", false
	}
	cut, ok := cutaway.Of(a, tub)
	if !ok || cut.Check() != nil {
		return "", false
	}
	f := &todayFigure{Cut: cut, tub: a.Tubs[tub], system: a.Plan.Units}
	top := f.LidFaceMM + 6
	f.scale = math.Min((todayWide-todayRight-12)/f.OutsideWidthMM, todayTall/top)
	f.width, f.height = todayWide, math.Ceil(todayAbove+top*f.scale+todayBelow)
	f.zero = scene.Point{X: math.Round(6 + (todayWide-todayRight-12)/2), Y: math.Round(todayAbove + top*f.scale)}
	f.draw()
	return f.svg(), true
}

func (f *todayFigure) draw() {
	now := f.tub.Today
	if now.LevelMM != nil {
		level := math.Min(*now.LevelMM, f.Rim())
		f.path("wat", f.Water(level))
		half := f.HalfInside(level)
		f.line("watl", f.at(scene.Point{X: -half, Y: level}), f.at(scene.Point{X: half, Y: level}))
	}
	class := "kk"
	if f.WallGuessed {
		class = "hid"
	}
	f.path(class, f.Walls())
	for _, piece := range f.Lid() {
		f.path("n solid", scene.Rectangle(piece))
	}
	for _, at := range f.CupsAtMM {
		f.path("n ground", f.CupAt(f.OnLid(at)))
	}
	f.fillLine(*now.LineMM)
	f.words()
}

// fillLine is the line to fill to, with how high it is over the floor.
func (f *todayFigure) fillLine(at float64) {
	half := f.HalfInside(at)
	left, right := f.at(scene.Point{X: -half - 4/f.scale, Y: at}), f.at(scene.Point{X: half + 6/f.scale, Y: at})
	f.line("k", left, right)
	edge := f.at(scene.Point{X: f.OutsideWidthMM / 2})
	x := edge.X + 34
	floor := f.zero.Y
	f.line("n", scene.Point{X: right.X + 3, Y: right.Y}, scene.Point{X: x + 5, Y: right.Y})
	f.line("n", scene.Point{X: f.at(scene.Point{X: f.Profile[0].MM / 2}).X + 4, Y: floor}, scene.Point{X: x + 5, Y: floor})
	f.measure(dimension{a: scene.Point{X: x, Y: floor}, b: scene.Point{X: x, Y: right.Y}, words: []string{sheet.Mark(at, f.system)}}, "sm b")
	f.text(lettering{words: "line", class: "sm b", anchor: scene.Start, at: scene.Point{X: edge.X + 8, Y: right.Y - 5}})
}

// words are the tub's name, and what was last read.
func (f *todayFigure) words() {
	now := f.tub.Today
	foot := f.zero.Y + 18
	f.text(lettering{words: f.tub.Name, class: "b", anchor: scene.Start, at: scene.Point{X: 6, Y: foot}})
	said := "not measured yet"
	if now.LevelMM != nil {
		said = now.Level + " on " + now.ReadOn
	}
	f.text(lettering{words: said, class: "sm", anchor: scene.End, at: scene.Point{X: f.width - todayRight + 60, Y: foot}})
}

func (f *todayFigure) svg() string {
	return fmt.Sprintf(`<svg class="fig" id="today-%s" width="%s" height="%s" viewBox="0 0 %s %s" role="img" aria-label="%s" data-scale="%s">%s</svg>`,
		escaped(garden.Slug(f.tub.Name)), px(f.width), px(f.height), px(f.width), px(f.height), escaped(f.label()), mm(f.scale), f.out.String())
}

func (f *todayFigure) label() string {
	now := f.tub.Today
	text := f.tub.Name + " cut upright. The line to fill to is " + now.Line + " over the floor."
	if now.LevelMM == nil {
		return text + " Its level is not measured yet."
	}
	return text + " The water stood at " + now.Level + " on " + now.ReadOn + "."
}
