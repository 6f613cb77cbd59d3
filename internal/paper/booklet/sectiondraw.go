package booklet

import (
	"math"
	"slices"

	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

func (d *sectionDraft) draw() {
	d.shelf()
	d.water()
	d.tub()
	d.lid()
	for _, x := range d.CupsAtMM {
		d.cup(d.onLid(x))
	}
	if d.Aerated {
		d.air()
	}
	d.lamp()
	d.rootSpace()
	d.heights()
	d.notes()
}

// onLid is the place of a length along the lid, from its left end.
func (d *sectionDraft) onLid(x float64) float64 { return d.LidShiftMM - d.LidWidthMM/2 + x }

// shelfMM is how thick a board is drawn; its thickness is not asked for.
const shelfMM = 18

func (d *sectionDraft) shelf() {
	half := math.Max(d.ShelfWideMM, d.OutsideWidthMM+160) / 2
	floors := []float64{-d.FloorMM - shelfMM}
	if d.ClearMM > 0 {
		floors = append(floors, -d.FloorMM+d.ClearMM)
	}
	for _, y := range floors {
		board := scene.Rectangle(d.box(-half, y, half, y+shelfMM))
		d.add(scene.Hatch(board, 1.5, 45, scene.Thin)...)
		d.add(scene.Shape{Path: board, Class: scene.Edge})
	}
}

func (d *sectionDraft) tub() {
	var left, right []scene.Point
	for _, w := range d.Profile {
		left = append(left, d.at(-w.MM/2, w.HeightMM))
		right = append(right, d.at(w.MM/2, w.HeightMM))
	}
	slices.Reverse(left)
	// The rim reaches outwards to the outside width.
	rim := d.rim()
	path := append([]scene.Point{d.at(-d.OutsideWidthMM/2, rim)}, left...)
	path = append(append(path, right...), d.at(d.OutsideWidthMM/2, rim))
	d.add(scene.Shape{Path: scene.Polyline(path...), Class: scene.Cut})
	half := d.Profile[0].MM / 2
	for _, x := range []float64{-half, half} {
		d.add(scene.Line{From: d.at(x*0.9, 0), To: d.at(x*0.9, -d.FloorMM), Class: scene.Edge})
	}
}

// water is the level of transplant day with its sign, the later one and the
// lowest safe line.
func (d *sectionDraft) water() {
	for y := d.FillMM - 25; y > 10; y -= 25 {
		half := d.halfInside(y)
		shift := math.Mod(y, 50)
		for x := -half + 20 + shift; x+14 < half; x += 60 {
			d.add(scene.Line{From: d.at(x, y), To: d.at(x+14, y)})
		}
	}
	d.levels()
	sign := d.at(d.halfInside(d.FillMM), d.FillMM).Minus(scene.Point{X: 8})
	d.add(scene.Shape{Path: scene.Polygon(sign, sign.Plus(scene.Point{X: 1.4, Y: 2.4}), sign.Plus(scene.Point{X: -1.4, Y: 2.4}))})
	for i, half := range []float64{1.6, 1, 0.5} {
		y := -0.7 * float64(i+1)
		d.add(scene.Line{From: sign.Plus(scene.Point{X: -half, Y: y}), To: sign.Plus(scene.Point{X: half, Y: y})})
	}
}

// level is one line of the water with its words.
type level struct {
	height float64
	class  scene.Class
	words  string
}

// lines are the lines of the water that are known, from the top down.
func (s Section) lines() []level {
	all := []level{{s.FillMM, scene.Part, "fill"}, {s.LaterFillMM, scene.Hidden, "roots hang"}, {s.LowestMM, scene.Lowest, "lowest safe line"}}
	return slices.DeleteFunc(all, func(l level) bool { return l.height <= 0 })
}

// levels are the lines of the water, named at the left of the tub; words that
// would stand too close are moved down along their leaders.
func (d *sectionDraft) levels() {
	x := d.at(-d.OutsideWidthMM/2, 0).X - 5
	last := math.Inf(1)
	for _, l := range d.lines() {
		half := d.halfInside(l.height)
		d.add(scene.Line{From: d.at(-half, l.height), To: d.at(half, l.height), Class: l.class})
		wall := d.at(-half, l.height)
		y := math.Min(wall.Y, last-letterMM*1.4)
		last = y
		d.add(
			scene.Shape{Path: scene.Polyline(wall, scene.Point{X: x + 2, Y: y}, scene.Point{X: x, Y: y})},
			scene.Text{At: scene.Point{X: x - 1, Y: y - letterMM*0.36}, Text: l.words + " " + d.mark(l.height), SizeMM: letterMM, Anchor: scene.End, Halo: true},
		)
	}
}

// lid is cut where a cup hangs in it.
func (d *sectionDraft) lid() {
	low := d.LidFaceMM - math.Max(d.LidThicknessMM, 1)
	from := d.onLid(0)
	at := slices.Clone(d.CupsAtMM)
	slices.Sort(at)
	for _, x := range append(at, math.Inf(1)) {
		to := math.Min(d.onLid(d.LidWidthMM), d.onLid(x)-d.Cup.BodyMM/2)
		if to > from {
			d.add(scene.Shape{Path: scene.Rectangle(d.box(from, low, to, d.LidFaceMM)), Class: scene.Part, Fill: scene.Black})
		}
		from = math.Max(from, to+d.Cup.BodyMM)
	}
}

// taper is how much narrower a cup is drawn at its bottom.
const taper = 0.75

func (d *sectionDraft) cup(x float64) {
	top, bottom := d.LidFaceMM, d.LidFaceMM-d.Cup.DepthMM
	body, rim := d.Cup.BodyMM/2, d.Cup.RimMM/2
	d.add(
		scene.Shape{Path: scene.Polyline(
			d.at(x-rim, top+1), d.at(x-body, top+1), d.at(x-body*taper, bottom), d.at(x+body*taper, bottom), d.at(x+body, top+1), d.at(x+rim, top+1),
		), Class: scene.Part},
	)
	for _, share := range []float64{-0.5, -0.2, 0.15, 0.45} {
		end := math.Max(d.LowestMM-20, bottom-80+60*math.Abs(share))
		d.add(scene.Shape{Path: scene.Polyline(
			d.at(x+body*share, bottom), d.at(x+body*share*1.3, (bottom+end)/2), d.at(x+body*share*1.2, end),
		)})
	}
	if d.PlantMM > 0 && d.SpreadMM > 0 {
		half, high := d.SpreadMM/2, d.PlantMM
		d.add(scene.Shape{Path: scene.Path{Closed: true, Vertices: []scene.Vertex{
			{Point: d.at(x-body*0.5, top)},
			{Point: d.at(x+body*0.5, top)},
			{Point: d.at(x+half, top+high*0.5), Bulge: 0.4},
			{Point: d.at(x, top+high), Bulge: 0.4},
			{Point: d.at(x-half, top+high*0.5)},
		}}, Class: scene.Phantom})
	}
}

// Sizes of the air pump as it is drawn, mm of the real thing.
const (
	pumpWide, pumpHigh = 70.0, 50.0
	pumpOverWater      = 70.0
)

// air is the stone, its line with the check valve, the pump outside above the
// water line, and its lead with a drip loop.
func (d *sectionDraft) air() {
	half := d.halfInside(0)
	stone := half * 0.55
	if d.StoneMM > 0 {
		path := scene.Rectangle(d.box(stone-30, 2, stone+30, 2+d.StoneMM))
		d.add(scene.Hatch(path, 1, -45, scene.Thin)...)
		// Named outside the tub: within it the dimension of the roots stands.
		from := d.at(stone+30, 2+d.StoneMM/2)
		to := scene.Point{X: d.at(d.OutsideWidthMM/2, 0).X + 3, Y: from.Y}
		d.add(scene.Shape{Path: path, Class: scene.Part}, scene.Line{From: from, To: to}, scene.Text{
			At: to.Plus(scene.Point{X: 1, Y: -letterMM * 0.36}), Text: airStone, SizeMM: letterMM, Halo: true,
		})
	}
	side := d.OutsideWidthMM/2 + 20
	low := d.FillMM + pumpOverWater
	high := math.Max(low+pumpHigh*0.6, d.LidFaceMM+30)
	inlet := d.onLid(d.LidWidthMM) - 25
	d.add(scene.Shape{Path: scene.Polyline(
		d.at(stone+20, 2+d.StoneMM), d.at(inlet, d.FillMM*0.6), d.at(inlet, high), d.at(side+pumpWide*0.4, high), d.at(side+pumpWide*0.4, low+pumpHigh),
	), Class: scene.Part})
	// The check valve: two triangles tip to tip, in the line.
	valve := d.at((inlet+side)/2+12, high)
	d.add(
		scene.Shape{Path: scene.Polygon(valve.Plus(scene.Point{X: -2, Y: 1.3}), valve, valve.Plus(scene.Point{X: -2, Y: -1.3})), Class: scene.Part, Fill: scene.White},
		scene.Shape{Path: scene.Polygon(valve.Plus(scene.Point{X: 2, Y: 1.3}), valve, valve.Plus(scene.Point{X: 2, Y: -1.3})), Class: scene.Part, Fill: scene.White},
		scene.Text{At: valve.Plus(scene.Point{X: 1, Y: 2.4}), Text: checkValve, SizeMM: letterMM, Anchor: scene.End, Halo: true},
	)
	d.add(scene.Shape{Path: scene.Rectangle(d.box(side, low, side+pumpWide, low+pumpHigh)), Class: scene.Part, Fill: scene.White})
	d.lead(side, low)
	words := d.at(side+pumpWide, low+pumpHigh).Plus(scene.Point{X: 2, Y: -1})
	for i, line := range airPump {
		d.add(scene.Text{At: words.Minus(scene.Point{Y: float64(i) * 3.6}), Text: line, SizeMM: letterMM, Halo: true})
	}
}

// lead runs from the pump down into a loop and up again to the socket, so that
// drops fall off at the lowest point.
func (d *sectionDraft) lead(side, low float64) {
	from, loop := d.at(side+pumpWide*0.7, low), d.at(side+pumpWide*1.1, low-120)
	socket := d.at(side+pumpWide*1.6, low-45)
	d.add(
		scene.Shape{Path: scene.Path{Vertices: []scene.Vertex{{Point: from}, {Point: scene.Point{X: from.X, Y: loop.Y}, Bulge: 1}, {Point: scene.Point{X: socket.X, Y: loop.Y}}, {Point: socket}}}, Class: scene.Thin},
		scene.Shape{Path: scene.Rectangle((scene.Box{Min: socket, Max: socket}).Grown(2)), Class: scene.Part, Fill: scene.White},
	)
	d.add(
		scene.Text{At: socket.Plus(scene.Point{X: 3, Y: -1}), Text: socketWord, SizeMM: letterMM, Halo: true},
		scene.Text{At: scene.Point{X: socket.X + 3, Y: loop.Y - 3}, Text: dripLoop, SizeMM: letterMM, Halo: true},
	)
}

func (d *sectionDraft) lamp() {
	if d.LampMM <= 0 {
		return
	}
	half := math.Max(d.LampWideMM, 40) / 2
	low := d.LidFaceMM + d.LampMM
	d.add(scene.Shape{Path: scene.Rectangle(d.box(-half, low, half, low+25)), Class: scene.Edge})
	for x := -half + 10; x < half; x += 40 {
		d.add(scene.Line{From: d.at(x, low).Minus(scene.Point{Y: 0.8}), To: d.at(x, low).Minus(scene.Point{Y: 2.4})})
	}
	d.add(scene.Text{At: d.at(0, low+25).Plus(scene.Point{Y: 1}), Text: lampWords, SizeMM: letterMM, Anchor: scene.Middle, Halo: true})
}

// rootSpace is from the inside floor to the cups' bottom, between two cups.
func (d *sectionDraft) rootSpace() {
	bottom := d.LidFaceMM - d.Cup.DepthMM
	if d.Cup.DepthMM <= 0 || bottom <= 0 || len(d.CupsAtMM) == 0 {
		return
	}
	x := d.onLid(slices.Min(d.CupsAtMM)) + d.Cup.RimMM/2 + 3*d.scale
	d.add(sheet.Dimension(d.at(x, 0), d.at(x, bottom), 0, d.mark(bottom)+" "+rootSpace)...)
}

// heights are the chains of dimensions on the left: the bay, then the parts.
func (d *sectionDraft) heights() {
	// The names of the water's lines stand between the tub and the chains.
	x := -math.Max(math.Max(d.ShelfWideMM, d.OutsideWidthMM+160)/2+2*d.scale, d.OutsideWidthMM/2+36*d.scale)
	left := func(from, to float64, off float64, words string) {
		if to-from > 0 {
			d.add(sheet.Dimension(d.at(x, from), d.at(x, to), off, words)...)
		}
	}
	left(-d.FloorMM, d.LidFaceMM, 4, d.mark(d.FloorMM+d.LidFaceMM)+" "+toTheLid)
	if d.LampMM > 0 {
		left(d.LidFaceMM, d.LidFaceMM+d.LampMM, 4, d.mark(d.LampMM)+" "+lidToLamp)
	}
	if d.ClearMM > 0 {
		left(-d.FloorMM, d.ClearMM-d.FloorMM, 12, d.mark(d.ClearMM)+" "+clearHeight)
	}
	if d.PlantMM > 0 && len(d.CupsAtMM) > 0 {
		at := d.onLid(slices.Min(d.CupsAtMM)) - d.SpreadMM/2 - 12
		d.add(sheet.Dimension(d.at(at, d.LidFaceMM), d.at(at, d.LidFaceMM+d.PlantMM), 3, d.mark(d.PlantMM)+" "+atHarvest)...)
	}
	bottom := -d.FloorMM - shelfMM
	half := d.OutsideWidthMM / 2
	d.add(sheet.Dimension(d.at(-half, bottom), d.at(half, bottom), -5, d.mark(d.OutsideWidthMM)+" "+d.Tub)...)
}

// notes stand under the drawing.
func (d *sectionDraft) notes() {
	at := d.at(-d.OutsideWidthMM/2, -d.FloorMM-shelfMM).Minus(scene.Point{Y: 11})
	for i, note := range d.Notes {
		d.add(scene.Text{At: at.Minus(scene.Point{Y: float64(i) * letterMM * 1.4}), Text: note, SizeMM: letterMM})
	}
}
