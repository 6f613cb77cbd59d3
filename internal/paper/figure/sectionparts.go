package figure

import (
	"math"
	"slices"

	"rootbell/internal/paper/scene"
)

// squaresBehind lie behind the tub, counted from its left side and its inside
// floor.
func (f *sectionFigure) squaresBehind() {
	zero := f.zero
	f.zero.X -= f.OutsideWidthMM / 2 * f.scale
	f.squares(scene.Rectangle(scene.BoxAt(scene.Point{}, f.OutsideWidthMM, f.LidFaceMM)), graduationOf(f.system, f.scale))
	f.zero = zero
}

// boards are cut: hatched. Where a board goes on beyond the drawing it has no
// end.
func (f *sectionFigure) boards() {
	for _, b := range f.Boards(1) {
		y0, y1 := f.mm(0, b.Max.Y).Y, f.mm(0, b.Min.Y).Y
		board := scene.Box{
			Min: scene.Point{X: (f.left - f.zero.X) / f.scale, Y: b.Min.Y},
			Max: scene.Point{X: (f.right - f.zero.X) / f.scale, Y: b.Max.Y},
		}
		f.strokes("n", scene.Hatch(scene.Rectangle(board), 6/f.scale, 45, scene.Thin))
		f.room.block(scene.Box{Min: scene.Point{X: f.left, Y: y0}, Max: scene.Point{X: f.right, Y: y1}})
		if f.whole {
			f.path("mm", scene.Rectangle(board))
			continue
		}
		f.line("mm", scene.Point{X: f.left, Y: y0}, scene.Point{X: f.right, Y: y0})
		f.line("mm", scene.Point{X: f.left, Y: y1}, scene.Point{X: f.right, Y: y1})
	}
}

// walls are cut plastic, or dashed where nobody measured them.
func (f *sectionFigure) walls() {
	class := "kk"
	if f.WallGuessed {
		class = "hid"
	}
	f.path(class, f.Walls())
	for _, foot := range f.Feet() {
		f.path("k", foot)
	}
	for _, piece := range f.Lid() {
		f.path("n solid", scene.Rectangle(piece))
	}
}

func (f *sectionFigure) cup(x float64) {
	f.path("mm ground", f.CupAt(x))
	for _, root := range f.Roots(x) {
		f.path("plal", root)
	}
}

// plants stand as they will be at harvest, with veins.
func (f *sectionFigure) plants() {
	for _, at := range f.CupsAtMM {
		x := f.OnLid(at)
		path, ok := f.PlantAt(x)
		if !ok {
			return
		}
		f.path("plaf", path)
		var veins string
		base := f.mm(x, f.LidFaceMM)
		for _, tip := range []scene.Point{{X: 0, Y: 0.85}, {X: -0.3, Y: 0.7}, {X: 0.3, Y: 0.7}, {X: -0.34, Y: 0.45}, {X: 0.34, Y: 0.45}} {
			to := f.mm(x+tip.X*f.SpreadMM, f.LidFaceMM+tip.Y*f.PlantMM)
			veins += "M" + px(base.X) + " " + px(base.Y) + "L" + px(to.X) + " " + px(to.Y)
			f.room.line(base, to, weights["plal"], softPX)
		}
		f.printf(`<path class="plal" d="%s"/>`, veins)
	}
}

// lamp hangs as far over the lid as on transplant day, with short strokes of
// light.
func (f *sectionFigure) lamp() {
	lamp, ok := f.Lamp()
	if !ok {
		return
	}
	lamp.Min.X = math.Max(lamp.Min.X, (f.left+3-f.zero.X)/f.scale)
	lamp.Max.X = math.Min(lamp.Max.X, (f.right-3-f.zero.X)/f.scale)
	f.path("lam mm", scene.Rectangle(lamp))
	low, high := f.at(lamp.Min), f.at(lamp.Max)
	var strokes string
	for x := low.X + 12; x < high.X-4; x += 36 {
		strokes += "M" + px(x) + " " + px(low.Y+4) + "v9"
	}
	f.printf(`<path class="laml" d="%s"/>`, strokes)
	f.room.block(scene.Box{Min: scene.Point{X: low.X, Y: high.Y}, Max: scene.Point{X: high.X, Y: low.Y + 14}})
}

// blower is the air stone, its line with the check valve, and the pump with its
// lead.
func (f *sectionFigure) blower() {
	a := f.air
	if a.HasStone {
		stone := scene.Rectangle(a.Stone)
		f.path("mm ground", stone)
		f.strokes("n", scene.Hatch(stone, 4/f.scale, -45, scene.Thin))
	}
	f.path("mm", a.Line)
	valve := f.at(a.Valve)
	for _, side := range []float64{-1, 1} {
		f.chain("mm ground", true, valve.Plus(scene.Point{X: side * 8, Y: 5}), valve, valve.Plus(scene.Point{X: side * 8, Y: -5}))
	}
	f.path("mm ground", scene.Rectangle(a.Pump))
	if f.w == Hand {
		return
	}
	f.path("n", a.Lead)
	socket := f.at(a.Socket)
	f.chain("mm ground", true, socket.Plus(scene.Point{X: -6, Y: -6}), socket.Plus(scene.Point{X: 6, Y: -6}), socket.Plus(scene.Point{X: 6, Y: 6}), socket.Plus(scene.Point{X: -6, Y: 6}))
}

// ripples are the short dashes that mark water, where nothing stands.
func (f *sectionFigure) ripples() {
	const dash, gap, row = 18.0, 40.0, 16.0
	d := ""
	bottom := f.mm(0, 0).Y - 8
	for i, y := 0, f.mm(0, f.FillMM).Y+row; y < bottom; i, y = i+1, y+row {
		half := f.HalfInside((f.zero.Y-y)/f.scale) * f.scale
		for x := f.zero.X - half + 10 + float64(i%3)*19; x+dash < f.zero.X+half-6; x += dash + gap {
			a, b := scene.Point{X: x, Y: y}, scene.Point{X: x + dash, Y: y}
			own := upright(scene.EmptyBox().With(a).With(b).Grown(4))
			if f.empty(own) {
				d += "M" + px(a.X) + " " + px(a.Y) + "h" + px(dash)
			}
		}
	}
	f.printf(`<path class="watd" d="%s"/>`, d)
}

// empty says whether no line and no word meets a box.
func (p *pen) empty(b box) bool {
	for _, taken := range slices.Concat(p.room.taken, p.room.blocked) {
		if b.overlaps(taken) {
			return false
		}
	}
	for _, l := range p.room.lines {
		if b.meets(l.from, l.to) {
			return false
		}
	}
	return true
}
