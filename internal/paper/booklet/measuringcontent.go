package booklet

import (
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

const (
	measuringTitle = "Measuring sheet: one tub, tape and pencil"
	measureWords   = "Measure inside where it says inside. Write what the tape shows, not what the label says."
	heldWords      = "If nobody knows what a second-hand tub has held, do not grow food in it."
	rimLabel       = "height of the tub's rim"
	tubLine        = content.Line("Tub's name ______________________   What it has held before ________________________________")
)

var bodyLabel = []string{"body: just", "under the rim"}

// MeasuringContent is what the measuring sheet says.
func MeasuringContent(c Cover, paper scene.Size) content.Sheet {
	s := content.Sheet{Title: measuringTitle, Block: c.block("Measuring sheet", paper), Sections: []content.Section{{
		Heading: "First", Cautions: []string{heldWords}, Paragraphs: []string{measureWords}, Lines: []content.Line{tubLine},
	}}}
	f := c.measured()
	for _, part := range []form{f.tub, f.lid, f.cup, f.shelf} {
		s.Sections = append(s.Sections, part.section())
	}
	return s
}

// form is one thing to measure: a drawing with ringed letters and what to fill
// in.
type form struct {
	head    string
	draw    func(scene.Box) []scene.Element
	share   float64 // of the column's height that the drawing takes
	asks    []content.Ask
	table   content.Table
	lines   []content.Line
	words   []string
	labels  []string // what the drawing says besides its letters
	leading float64  // of lines and words on paper
}

func (f form) section() content.Section {
	s := content.Section{Heading: f.head, Asks: f.asks, Lines: f.lines, Paragraphs: f.words}
	if len(f.table.Rows) > 0 {
		s.Tables = []content.Table{f.table}
	}
	frame := scene.BoxAt(scene.Point{}, 90, 90*f.share/largeFigure*0.5)
	caption := "The letters " + strings.Join(f.letters(), ", ") + " stand at what to measure."
	if len(f.labels) > 0 {
		caption += " Also on the drawing: " + strings.Join(f.labels, " ") + "."
	}
	s.Figures = []content.Figure{content.FigureOf(f.head, caption, f.head+". "+caption, frame.Grown(4), f.draw(frame))}
	return s
}

// letters are those on the drawing.
func (f form) letters() []string {
	var out []string
	for _, a := range f.asks {
		out = append(out, a.Letter)
	}
	if len(f.table.Columns) > 0 {
		for _, c := range f.table.Columns[1:] {
			letter, _, _ := strings.Cut(c.Head, " ")
			out = append(out, letter)
		}
	}
	return out
}

// forms are what is measured of a tub.
type forms struct{ tub, lid, cup, shelf form }

func (c Cover) measured() forms {
	long, short := "cm", "mm"
	if c.System == garden.US {
		long, short = "in", "in"
	}
	cups := content.Table{
		Caption: "Each cup's measures, " + short,
		Columns: []content.Column{{Head: "cup, " + short}, {Head: "m body"}, {Head: "n rim"}, {Head: "o depth"}},
	}
	for _, n := range []string{"1", "2", "3", "4", "5"} {
		cups.Rows = append(cups.Rows, []string{n, content.Blank, content.Blank, content.Blank})
	}
	return forms{
		tub: form{
			head: "The tub, cut through, without its lid", draw: drawTub, share: largeFigure, asks: []content.Ask{
				{Letter: "a", Words: "inside, top: long", Unit: long},
				{Letter: "b", Words: "inside, top: wide", Unit: long},
				{Letter: "c", Words: "inside, floor: long", Unit: long},
				{Letter: "d", Words: "inside, floor: wide", Unit: long},
				{Letter: "e", Words: "inside height to the rim", Unit: long},
				{Letter: "f", Words: "radius of the inside corners", Unit: long},
			},
			lines: []content.Line{"Outside, lid on: long ________ wide ________ high ________ ; empty tub weighs ________"},
		},
		lid: form{
			head: "The lid, from above and from the side", draw: drawLid, share: largeFigure, asks: []content.Ask{
				{Letter: "g", Words: "flat part: long", Unit: long},
				{Letter: "h", Words: "flat part: wide", Unit: long},
				{Letter: "i", Words: "radius of its corners", Unit: long},
				{Letter: "j", Words: "thickness", Unit: long},
				{Letter: "k", Words: "face over (+), under (−) rim", Unit: long},
			},
			labels: []string{rimLabel},
			words:  []string{"Draw handles, vents, ribs and folds into the drawing, each with its distances from the lower left corner."}, leading: 1.5,
		},
		cup: form{
			head: "Five cups of one pack", draw: drawCup, share: smallFigure, table: cups,
			labels: bodyLabel,
			words:  []string{"The largest body and the smallest rim count."}, leading: 1.25,
		},
		shelf: form{
			head: "The shelf and the tap", draw: drawShelf, share: smallFigure, asks: []content.Ask{
				{Letter: "p", Words: "shelf between its posts", Unit: long},
				{Letter: "q", Words: "depth, front to back", Unit: long},
				{Letter: "r", Words: "clear height", Unit: long},
			},
			lines: []content.Line{
				"Load the maker allows, spread evenly: ________ for each shelf",
				"Tap: distance to the shelf ________ ; bucket holds ________ ; pH strip ________ ; EC ________",
				"Socket: above the water line, away from splashes? ________ Residual-current protection (RCD, GFCI)? ________",
			}, leading: 1.7,
		},
	}
}
