package booklet

import (
	"math"
	"slices"

	"rootbell/internal/paper/cutaway"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

func (d *sectionDraft) draw() {
	d.shelf()
	d.water()
	d.tub()
	d.lid()
	for _, x := range d.CupsAtMM {
		d.cup(d.OnLid(x))
	}
	if air, ok := d.Air(); ok {
		d.air(air)
	}
	d.lamp()
	d.rootSpace()
	d.heights()
	d.notes()
}

func (d *sectionDraft) shelf() {
	for _, board := range d.Boards(math.Max(d.ShelfWideMM, d.OutsideWidthMM+160) / 2) {
		path := d.rectangle(board)
		d.add(scene.Hatch(path, 1.5, 45, scene.Thin)...)
		d.add(scene.Shape{Path: path, Class: scene.Edge})
	}
}

func (d *sectionDraft) tub() {
	d.add(scene.Shape{Path: d.path(d.Walls()), Class: scene.Cut})
	for _, foot := range d.Feet() {
		d.add(scene.Shape{Path: d.path(foot), Class: scene.Edge})
	}
}

// water is the level of transplant day with its sign, the later one and the
// lowest safe line.
func (d *sectionDraft) water() {
	for y := d.FillMM - 25; y > 10; y -= 25 {
		half := d.HalfInside(y)
		shift := math.Mod(y, 50)
		for x := -half + 20 + shift; x+14 < half; x += 60 {
			d.add(scene.Line{From: d.at(x, y), To: d.at(x+14, y)})
		}
	}
	d.levels()
	sign := d.at(d.HalfInside(d.FillMM), d.FillMM).Minus(scene.Point{X: 8})
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
		half := d.HalfInside(l.height)
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
	for _, piece := range d.Lid() {
		d.add(scene.Shape{Path: d.rectangle(piece), Class: scene.Part, Fill: scene.Black})
	}
}

func (d *sectionDraft) cup(x float64) {
	d.add(scene.Shape{Path: d.path(d.CupAt(x)), Class: scene.Part})
	for _, root := range d.Roots(x) {
		d.add(scene.Shape{Path: d.path(root)})
	}
	if plant, ok := d.PlantAt(x); ok {
		d.add(scene.Shape{Path: d.path(plant), Class: scene.Phantom})
	}
}

// air is the stone, its line with the check valve, the pump outside above the
// water line, and its lead with a drip loop.
func (d *sectionDraft) air(a cutaway.Air) {
	if a.HasStone {
		path := d.rectangle(a.Stone)
		d.add(scene.Hatch(path, 1, -45, scene.Thin)...)
		// Named outside the tub: within it the dimension of the roots stands.
		from := d.at(a.Stone.Max.X, a.Stone.Centre().Y)
		to := scene.Point{X: d.at(d.OutsideWidthMM/2, 0).X + 3, Y: from.Y}
		d.add(scene.Shape{Path: path, Class: scene.Part}, scene.Line{From: from, To: to}, scene.Text{
			At: to.Plus(scene.Point{X: 1, Y: -letterMM * 0.36}), Text: airStone, SizeMM: letterMM, Halo: true,
		})
	}
	d.add(scene.Shape{Path: d.path(a.Line), Class: scene.Part})
	// The check valve: two triangles tip to tip, in the line.
	valve := d.small(a.Valve)
	d.add(
		scene.Shape{Path: scene.Polygon(valve.Plus(scene.Point{X: -2, Y: 1.3}), valve, valve.Plus(scene.Point{X: -2, Y: -1.3})), Class: scene.Part, Fill: scene.White},
		scene.Shape{Path: scene.Polygon(valve.Plus(scene.Point{X: 2, Y: 1.3}), valve, valve.Plus(scene.Point{X: 2, Y: -1.3})), Class: scene.Part, Fill: scene.White},
		scene.Text{At: valve.Plus(scene.Point{X: 1, Y: 2.4}), Text: checkValve, SizeMM: letterMM, Anchor: scene.End, Halo: true},
	)
	d.add(scene.Shape{Path: d.rectangle(a.Pump), Class: scene.Part, Fill: scene.White})
	d.lead(a)
	words := d.small(a.Pump.Max).Plus(scene.Point{X: 2, Y: -1})
	for i, line := range airPump {
		d.add(scene.Text{At: words.Minus(scene.Point{Y: float64(i) * 3.6}), Text: line, SizeMM: letterMM, Halo: true})
	}
}

// lead runs from the pump down into a loop and up again to the socket.
func (d *sectionDraft) lead(a cutaway.Air) {
	socket, loop := d.small(a.Socket), d.path(a.Lead).Vertices[1].Y
	d.add(
		scene.Shape{Path: d.path(a.Lead), Class: scene.Thin},
		scene.Shape{Path: scene.Rectangle((scene.Box{Min: socket, Max: socket}).Grown(2)), Class: scene.Part, Fill: scene.White},
	)
	d.add(
		scene.Text{At: socket.Plus(scene.Point{X: 3, Y: -1}), Text: socketWord, SizeMM: letterMM, Halo: true},
		scene.Text{At: scene.Point{X: socket.X + 3, Y: loop - 3}, Text: dripLoop, SizeMM: letterMM, Halo: true},
	)
}

func (d *sectionDraft) lamp() {
	lamp, ok := d.Lamp()
	if !ok {
		return
	}
	d.add(scene.Shape{Path: d.rectangle(lamp), Class: scene.Edge})
	for x := lamp.Min.X + 10; x < lamp.Max.X; x += 40 {
		under := d.at(x, lamp.Min.Y)
		d.add(scene.Line{From: under.Minus(scene.Point{Y: 0.8}), To: under.Minus(scene.Point{Y: 2.4})})
	}
	d.add(scene.Text{At: d.at(0, lamp.Max.Y).Plus(scene.Point{Y: 1}), Text: lampWords, SizeMM: letterMM, Anchor: scene.Middle, Halo: true})
}

// rootSpace is from the inside floor to the cups' bottom, between two cups.
func (d *sectionDraft) rootSpace() {
	bottom := d.LidFaceMM - d.Cup.DepthMM
	if d.Cup.DepthMM <= 0 || bottom <= 0 || len(d.CupsAtMM) == 0 {
		return
	}
	x := d.OnLid(slices.Min(d.CupsAtMM)) + d.Cup.RimMM/2 + 3*d.scale
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
		at := d.OnLid(slices.Min(d.CupsAtMM)) - d.SpreadMM/2 - 12
		d.add(sheet.Dimension(d.at(at, d.LidFaceMM), d.at(at, d.LidFaceMM+d.PlantMM), 3, d.mark(d.PlantMM)+" "+atHarvest)...)
	}
	bottom := -d.FloorMM - cutaway.ShelfMM
	half := d.OutsideWidthMM / 2
	d.add(sheet.Dimension(d.at(-half, bottom), d.at(half, bottom), -5, d.mark(d.OutsideWidthMM)+" "+d.Tub)...)
}

// notes stand under the drawing.
func (d *sectionDraft) notes() {
	at := d.at(-d.OutsideWidthMM/2, -d.FloorMM-cutaway.ShelfMM).Minus(scene.Point{Y: 11})
	for i, note := range d.Notes {
		d.add(scene.Text{At: at.Minus(scene.Point{Y: float64(i) * letterMM * 1.4}), Text: note, SizeMM: letterMM})
	}
}
