package figure

import (
	"math"
	"slices"

	"rootbell/internal/paper/cutaway"
	"rootbell/internal/paper/scene"
)

// level is one line of the water.
type level struct {
	height float64
	class  string
	words  string
}

// lines are the lines of the water that are known, from the top down.
func (f *sectionFigure) lines() []level {
	all := []level{{f.FillMM, "watl", "fill"}, {f.LaterFillMM, "hid", "roots hang"}, {f.LowestMM, "lowl", "lowest safe line"}}
	return slices.DeleteFunc(all, func(l level) bool { return l.height <= 0 })
}

// levels are the lines across the water. On a desk each runs on to the ruler
// and, beyond it, to its name; names that would stand too close move down.
func (f *sectionFigure) levels() {
	const apart = 17.0
	inner := f.rulerEdge()
	outer, last := inner-rulerPX, math.Inf(-1)
	for _, l := range f.lines() {
		half := f.HalfInside(l.height)
		a, b := f.mm(-half, l.height), f.mm(half, l.height)
		f.line(l.class, a, b)
		f.line("n", scene.Point{X: inner, Y: a.Y}, a)
		if f.w == Hand {
			continue
		}
		y := math.Max(a.Y, last+apart)
		last = y
		bend, end := scene.Point{X: outer - 30, Y: y}, scene.Point{X: outer - 38, Y: y}
		f.printf(`<path class="n lead" d="%s"/>`, pathData(scene.Polyline(scene.Point{X: outer, Y: a.Y}, bend, end)))
		f.room.line(scene.Point{X: outer, Y: a.Y}, bend, weights["n"], weights["n"])
		f.text(lettering{words: l.words + " " + f.mark(l.height), class: "sm", anchor: scene.End, at: end.Plus(scene.Point{X: -4, Y: smallPX * 0.36})})
	}
}

// levelNames stand on the lines in the hand drawing, where they find room.
func (f *sectionFigure) levelNames() {
	for _, l := range f.lines() {
		y, half := f.mm(0, l.height).Y, f.HalfInside(l.height)*f.scale
		var choices []lettering
		for _, words := range []string{l.words + " " + f.mark(l.height), f.mark(l.height)} {
			for _, lift := range []float64{-3.5, smallPX} {
				for _, share := range []float64{0, -0.2, 0.2, -0.4, 0.4, -0.6, 0.6} {
					at := scene.Point{X: f.zero.X + share*half, Y: y + lift}
					choices = append(choices, lettering{words: words, class: "sm halo-w", anchor: scene.Middle, at: at})
				}
			}
		}
		f.place(choices...)
	}
}

// rulerEdge is where the upright ruler lies, px.
func (f *sectionFigure) rulerEdge() float64 { return f.mm(-f.OutsideWidthMM/2, 0).X - rulerOffPX }

// levelSign is the triangle on the water with three shrinking strokes under it,
// where no cup hangs.
func (f *sectionFigure) levelSign() {
	y, half := f.mm(0, f.FillMM).Y, f.HalfInside(f.FillMM)*f.scale
	for x := f.zero.X + half - 14; x > f.zero.X-half+14; x -= 4 {
		own := scene.Box{Min: scene.Point{X: x - 9, Y: y - 12}, Max: scene.Point{X: x + 9, Y: y - 2}}
		below := scene.Box{Min: scene.Point{X: x - 9, Y: y + 2}, Max: scene.Point{X: x + 9, Y: y + 12}}
		if !f.empty(upright(own)) || !f.empty(upright(below)) {
			continue
		}
		tip := scene.Point{X: x, Y: y}
		f.chain("mm ground", true, tip, tip.Plus(scene.Point{X: -6, Y: -10}), tip.Plus(scene.Point{X: 6, Y: -10}))
		for i, reach := range []float64{6, 4, 2} {
			under := y + 4 + 3*float64(i)
			f.line("watl", scene.Point{X: x - reach, Y: under}, scene.Point{X: x + reach, Y: under})
		}
		return
	}
}

// rulers count from the tub's inside floor up, and from its left side.
func (f *sectionFigure) rulers() {
	g := graduationOf(f.system, f.scale)
	var levels []float64
	if f.w == Desk {
		for _, l := range f.lines() {
			levels = append(levels, f.mm(0, l.height).Y)
		}
	}
	f.rulerBut(g, scene.Point{X: f.rulerEdge(), Y: f.zero.Y}, f.LidFaceMM*f.scale, true, levels)
	left := f.mm(-f.OutsideWidthMM/2, f.bottom)
	f.ruler(g, left.Plus(scene.Point{Y: rulerOffPX}), f.OutsideWidthMM*f.scale, false)
}

// chains are the dimensions of the bay: heights beside it, widths below.
func (f *sectionFigure) chains() {
	lid, lamp := f.FloorMM+f.LidFaceMM, f.LampMM
	first := f.zero.X - math.Max(f.board(), f.OutsideWidthMM/2*f.scale+levelRoomPX) - 22
	second := first - 30
	if f.w == Hand {
		first, second = f.right+14, f.right+34
	}
	at := 0.0
	add := func(length float64, words ...string) {
		if length*f.scale >= 8 {
			f.upright(first, at-f.FloorMM, length, words...)
		}
		at += length
	}
	add(lid, f.mark(lid)+" to the lid", f.mark(lid))
	if lamp > 0 {
		add(lamp, f.mark(lamp)+" lid to lamp", f.mark(lamp))
	}
	if f.ClearMM > 0 {
		// The last link stands only where the chain adds up as it is written.
		if rest := f.ClearMM - at; lamp > 0 && whole(lid, f.step()) && whole(lamp, f.step()) && whole(rest, f.step()) {
			add(rest, f.mark(rest)+" lamp to board", f.mark(rest))
		}
		f.upright(second, -f.FloorMM, f.ClearMM, f.mark(f.ClearMM)+" clear height", f.mark(f.ClearMM))
	}
	f.widths()
}

func (f *sectionFigure) step() float64 {
	if f.system == 0 {
		return 1
	}
	return 25.4 / 16
}

// whole says whether a length lies on the marks of a ruler.
func whole(mm, step float64) bool { return math.Abs(mm-step*math.Round(mm/step)) < 0.01 }

// upright is a height in mm beside the bay, at so many pixels.
func (f *sectionFigure) upright(x, from, length float64, words ...string) {
	a, b := scene.Point{X: x, Y: f.mm(0, from).Y}, scene.Point{X: x, Y: f.mm(0, from+length).Y}
	f.measure(dimension{a: a, b: b, words: words, kept: true}, "")
}

// widths are the tub's and, where all of it is drawn, the shelf's.
func (f *sectionFigure) widths() {
	below := f.mm(0, f.bottom).Y + rulerOffPX + rulerPX + 34
	half := f.OutsideWidthMM / 2
	wide := f.mark(f.OutsideWidthMM)
	f.measure(dimension{a: scene.Point{X: f.mm(-half, 0).X, Y: below}, b: scene.Point{X: f.mm(half, 0).X, Y: below}, words: []string{wide + " " + f.tub, wide}}, "")
	if f.whole {
		shelf := f.mark(f.ShelfWideMM)
		f.measure(dimension{a: scene.Point{X: f.left, Y: below + 30}, b: scene.Point{X: f.right, Y: below + 30}, words: []string{shelf + " shelf", shelf}}, "")
	}
}

// inside are the dimensions among the cups and the plants: the roots' room and
// the height at harvest.
func (f *sectionFigure) inside() {
	if len(f.CupsAtMM) == 0 {
		return
	}
	bottom := f.CupBottom()
	if f.w == Desk && f.Cup.DepthMM > 0 && bottom > 0 {
		f.rootRoom(bottom)
	}
	if f.PlantMM > 0 {
		at := f.OnLid(slices.Min(f.CupsAtMM)) - f.SpreadMM/2
		a, b := f.mm(at, f.LidFaceMM), f.mm(at, f.LidFaceMM+f.PlantMM)
		words := []string{f.mark(f.PlantMM) + " at harvest", f.mark(f.PlantMM)}
		for off := -20.0; f.w == Desk && off > -90; off -= 8 {
			if f.measure(dimension{a: a, b: b, aside: scene.Point{X: off}, words: words}, "") {
				return
			}
		}
	}
}

// rootRoom is from the inside floor to the cups' bottom, where nothing hangs.
func (f *sectionFigure) rootRoom(bottom float64) {
	for _, at := range f.CupsAtMM {
		for _, off := range []float64{0.3, 0.4, 0.5, 0.7, 0.9, 1.2} {
			edge := f.OnLid(at) + f.Cup.BodyMM/2*cutaway.Taper
			d := dimension{a: f.mm(edge, 0), b: f.mm(edge, bottom), aside: scene.Point{X: f.Cup.RimMM * off * f.scale}}
			d.words, d.also = []string{f.mark(bottom) + " roots", f.mark(bottom)}, "roots"
			if from, to := d.ends(); to.X < f.mm(f.HalfInside(0), 0).X-8 && f.alone(from, to) && f.measure(d, "halo-w") {
				return
			}
		}
	}
}

// wet is the box of the water, px.
func (f *sectionFigure) wet() *scene.Box {
	half := f.HalfInside(0)
	return &scene.Box{Min: f.mm(-half, f.FillMM), Max: f.mm(half, 0)}
}

// alone says whether an upright line meets only the lines of the water.
func (f *sectionFigure) alone(a, b scene.Point) bool {
	off := scene.Point{Y: -3}
	return f.crossed(a.Plus(off), b) <= 3*weights["lowl"]
}

// names are the words for the parts.
func (f *sectionFigure) names() {
	if lamp, ok := f.Lamp(); ok {
		var choices []lettering
		for _, words := range []string{"lamp, as it hangs on transplant day", "lamp"} {
			for _, y := range []float64{f.at(lamp.Max).Y - 6, f.at(lamp.Min).Y + 27} {
				for _, share := range []float64{0.5, 0.3, 0.7, 0.15, 0.85} {
					at := scene.Point{X: f.left + share*(f.right-f.left), Y: y}
					choices = append(choices, lettering{words: words, class: "sm", anchor: scene.Middle, at: at})
				}
			}
		}
		f.place(choices...)
	}
	if !f.aerated {
		return
	}
	part := func(b scene.Box) scene.Path { return f.pixels(scene.Rectangle(b)) }
	pump := []string{"air pump, above the", "water line, tied up"}
	if f.w == Hand {
		pump = []string{"air pump"}
	}
	f.name(caption{lines: pump, class: "sm", part: part(f.air.Pump)})
	valve := f.at(f.air.Valve)
	f.name(caption{lines: []string{"check valve"}, class: "sm", part: scene.Rectangle((scene.Box{Min: valve, Max: valve}).Grown(8))})
	if f.air.HasStone {
		stone := caption{lines: []string{"air stone"}, class: "sm halo-w", part: part(f.air.Stone), only: f.wet()}
		if !f.name(stone) {
			stone.class, stone.only = "sm", nil
			f.name(stone)
		}
	}
	if f.w == Hand {
		return
	}
	socket := f.at(f.air.Socket)
	f.name(caption{lines: []string{"socket"}, class: "sm", part: scene.Rectangle((scene.Box{Min: socket, Max: socket}).Grown(6))})
	loop := f.mm((f.air.Lead.Vertices[0].X+f.air.Socket.X)/2, f.air.LoopLow)
	f.name(caption{lines: []string{"drip loop"}, class: "sm", part: scene.Rectangle((scene.Box{Min: loop, Max: loop}).Grown(2))})
}
