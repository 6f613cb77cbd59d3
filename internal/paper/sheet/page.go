package sheet

import (
	"fmt"
	"math"

	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// Lengths of the two check bars: 100 mm, and 4 in of exactly 25.4 mm.
const (
	barMM   = 100
	barInMM = 4 * 25.4

	barWords   = "100 mm"
	barInWords = "4 in = 101.6 mm"
)

// pages prints the tiles of the lid.
func (l Lid) pages(press *scene.Press, t Tiling) {
	d := l.draft()
	content := d.drawing()
	for _, e := range content {
		if label, ok := e.(scene.Text); ok {
			d.room.boxes = append(d.room.boxes, label.Bounds())
		}
	}
	crosses := d.crosses(t)
	for _, c := range crosses {
		content = append(content, c.elements()...)
	}
	for _, p := range t.places() {
		page := press.Page(t.Paper)
		window, shown := t.onPage(), t.shows(p)
		page.Window(window, window.Min.Minus(shown.Min), content)
		page.Draw(scene.Shape{Path: scene.Rectangle(window)})
		page.Draw(d.uprightBars(t, p, crosses)...)
		page.Draw(l.foot(t, p)...)
		if l.Stop != "" {
			page.Draw(StopPlate(window, l.Stop)...)
		}
	}
}

// cross is a registration mark: a cross on a seam with its name on both sides,
// so that both pages show it and the halves match.
type cross struct {
	at   scene.Point
	name string
}

func (c cross) box() scene.Box {
	return (scene.Box{Min: c.at, Max: c.at}).Grown(overlapMM / 2)
}

func (c cross) elements() []scene.Element {
	const arm = overlapMM/2 - 1
	out := []scene.Element{
		scene.Line{From: c.at.Plus(scene.Point{X: -arm}), To: c.at.Plus(scene.Point{X: arm})},
		scene.Line{From: c.at.Plus(scene.Point{Y: -arm}), To: c.at.Plus(scene.Point{Y: arm})},
	}
	for _, corner := range []scene.Point{{X: -arm / 2.0, Y: arm * 0.25}, {X: arm / 2.0, Y: -arm * 0.8}} {
		out = append(out, scene.Text{
			At: c.at.Plus(corner), Text: c.name, SizeMM: 2.4, Face: scene.SansBold, Anchor: scene.Middle,
		})
	}
	return out
}

// crosses are two for each seam.
func (d draft) crosses(t Tiling) []cross {
	var out []cross
	for _, s := range t.seams() {
		for i, share := range []float64{0.2, 0.8} {
			out = append(out, cross{d.crossPlace(s, share), s.letter + itoa(i+1)})
		}
	}
	return out
}

// crossPlace is the free place on the seam's middle line nearest to a share of
// its length; the share itself where nothing is free.
func (d draft) crossPlace(s seam, share float64) scene.Point {
	along, length := scene.Point{X: 1}, s.strip.Width()
	start := scene.Point{X: s.strip.Min.X, Y: s.strip.Centre().Y}
	if s.upright {
		along, length = scene.Point{Y: 1}, s.strip.Height()
		start = scene.Point{X: s.strip.Centre().X, Y: s.strip.Min.Y}
	}
	wanted := length * share
	best, least := wanted, math.Inf(1)
	// Other seams cross in the end strips, and their crosses reach half as far.
	for at := 1.5 * overlapMM; at <= length-1.5*overlapMM; at++ {
		if math.Abs(at-length/2) < length/10 || (at < length/2) != (share < 0.5) {
			continue // the two crosses of a seam stay apart
		}
		centre := start.Plus(along.Times(at))
		cost := math.Abs(at-wanted)/length + d.room.covers((scene.Box{Min: centre, Max: centre}).Grown(overlapMM/2))
		if cost < least {
			best, least = at, cost
		}
	}
	return start.Plus(along.Times(best))
}

// uprightBars are the two check bars along the page's height, where they cover
// least of the drawing.
func (d draft) uprightBars(t Tiling, p place, crosses []cross) []scene.Element {
	const width, height, step = 17, barInMM + 6, 4.0
	window, shown := t.onPage(), t.shows(p)
	free := shown.Grown(-2)
	best, least := free.Min, math.Inf(1)
	for x := free.Min.X; x+width <= free.Max.X; x += step {
		for y := free.Min.Y; y+height <= free.Max.Y; y += step {
			box := scene.BoxAt(scene.Point{X: x, Y: y}, width, height)
			cost := d.room.covers(box)
			for _, c := range crosses {
				if box.Overlaps(c.box()) {
					cost += costCentre
				}
			}
			// A little rather at the edge than in the middle.
			cost += math.Min(x-free.Min.X, free.Max.X-width-x) / 1e4
			if cost < least {
				best, least = box.Min, cost
			}
		}
	}
	at := best.Plus(window.Min).Minus(shown.Min)
	return append(
		bar(at.Plus(scene.Point{X: 6, Y: 3}), 90, barMM, barWords),
		bar(at.Plus(scene.Point{X: 14, Y: 3}), 90, barInMM, barInWords)...,
	)
}

// bar is a check bar from its start, turned by degrees, its words beside it.
func bar(from scene.Point, turn, length float64, words string) []scene.Element {
	along := scene.Point{X: 1}.Turned(turn)
	aside := scene.Point{Y: 1}.Turned(turn)
	to := from.Plus(along.Times(length))
	end := func(at scene.Point) scene.Element {
		return scene.Line{From: at.Minus(aside.Times(1.5)), To: at.Plus(aside.Times(1.5)), Class: scene.Thin}
	}
	return []scene.Element{
		scene.Line{From: from, To: to, Class: scene.Part},
		end(from), end(to),
		scene.Text{
			At: from.Plus(along.Times(length / 2)).Plus(aside.Times(1.2)), Text: words, SizeMM: 3,
			Anchor: scene.Middle, Turn: turn, Halo: true,
		},
	}
}

// foot is what stands under the drawing on each page.
func (l Lid) foot(t Tiling, p place) []scene.Element {
	box := scene.BoxAt(scene.Point{X: marginMM, Y: marginMM}, t.window.Width, footMM)
	out := bar(scene.Point{X: box.Min.X + 1, Y: box.Max.Y - 8}, 0, barMM, barWords)
	out = append(out, bar(scene.Point{X: box.Min.X + 1, Y: box.Max.Y - 15}, 0, barInMM, barInWords)...)
	words := scene.NewColumn(scene.Box{
		Min: scene.Point{X: box.Min.X + barInMM + 6, Y: box.Min.Y + titleMM},
		Max: scene.Point{X: box.Max.X - mapMM - 3, Y: box.Max.Y - 1},
	})
	words.Text(scene.Style{Face: scene.SansBold, SizeMM: 3.1, Leading: 1.2}, l.printWords())
	words.Text(scene.Style{Face: scene.Sans, SizeMM: 2.8, Leading: 1.2}, pageWords(t, p))
	words.Text(scene.Style{Face: scene.Sans, SizeMM: 2.8, Leading: 1.2}, capital(seenFrom)+".")
	out = append(out, words.Elements...)
	out = append(out, t.pageMap(scene.Box{
		Min: scene.Point{X: box.Max.X - mapMM, Y: box.Min.Y + titleMM + 1},
		Max: scene.Point{X: box.Max.X, Y: box.Max.Y - 2},
	}, p)...)
	title := scene.BoxAt(box.Min, box.Width(), titleMM-1)
	return append(out, l.TitleBlock(title, "Lid of "+l.Tub, t.Paper)...)
}

const (
	titleMM = 12 // height of the title block with its gap
	mapMM   = 22 // width of the page map
)

func pageWords(t Tiling, p place) string {
	return fmt.Sprintf("Page %d of %d, row %d column %d.", t.number(p), t.Pages(), p.row+1, p.column+1)
}

// pageMap draws the pages as they lie, this one filled.
func (t Tiling) pageMap(box scene.Box, here place) []scene.Element {
	cell := scene.Size{Width: t.window.Width, Height: t.window.Height}
	scale := math.Min(box.Width()/(cell.Width*float64(t.Columns)), box.Height()/(cell.Height*float64(t.Rows)))
	cell.Width, cell.Height = cell.Width*scale, cell.Height*scale
	var out []scene.Element
	for _, p := range t.places() {
		corner := scene.Point{
			X: box.Max.X - cell.Width*float64(t.Columns-p.column),
			Y: box.Max.Y - cell.Height*float64(p.row+1),
		}
		fill := scene.Open
		if p == here {
			fill = scene.Black
		}
		out = append(out, scene.Shape{Path: scene.Rectangle(scene.BoxAt(corner, cell.Width, cell.Height)), Fill: fill})
		size := math.Min(3, cell.Height*0.8)
		out = append(out, scene.Text{
			At: corner.Plus(scene.Point{X: cell.Width / 2, Y: cell.Height/2 - size*0.35}), Text: itoa(t.number(p)),
			SizeMM: size, Anchor: scene.Middle, Reversed: p == here,
		})
	}
	return out
}

// Block is what the lid's title block says; without a paper that entry is
// empty.
func (l Lid) Block(drawing string, paper scene.Size) content.Block {
	b := content.Block{
		Garden: l.garden(), Invented: l.Invented, Drawing: drawing, Units: UnitName(l.System), Revision: l.Revision, Date: l.On,
	}
	if b.Revision == "" {
		b.Revision = "1"
	}
	if paper != (scene.Size{}) {
		b.Paper = PaperName(paper)
	}
	return b
}

// TitleBlock draws the lid's title block; without a paper that cell is left
// out.
func (l Lid) TitleBlock(box scene.Box, drawing string, paper scene.Size) []scene.Element {
	b := l.Block(drawing, paper)
	cells := []scene.Cell{
		{Label: "garden", Value: b.Garden, Share: 5},
		{Label: "drawing", Value: b.Drawing, Share: 5},
		{Label: "units", Value: b.Units, Share: 1.2},
		{Label: "revision", Value: b.Revision, Share: 1.7},
		{Label: "date", Value: b.Date, Share: 2},
	}
	if b.Paper != "" {
		cells = append(cells, scene.Cell{Label: "paper", Value: b.Paper, Share: 1.4})
	}
	return scene.TitleBlock(box, cells, 2.9)
}

// PaperName is the name of a sheet's size.
func PaperName(size scene.Size) string {
	if size == scene.Letter || size == scene.Letter.Across() {
		return "Letter"
	}
	return "A4"
}
