package sheet

import (
	"fmt"
	"math"

	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
)

// Dipstick is all that the dipstick strip of one tub shows. Depths count in mm
// from the tub's inside floor.
type Dipstick struct {
	Garden   string
	Tub      string
	Invented bool
	System   garden.System
	TopMM    float64 // how far up the strip is marked: the tub's inside height
	// Volumes are the marks of the scale, from the floor up: what the tub holds
	// inside at that depth, in the plan's unit. Every mark gets a tick; those
	// with words get a number.
	Volumes  []VolumeMark
	Lines    []LineMark // fill lines by stage, top-up, lowest safe line
	On       string
	Revision string
}

// VolumeMark is a tick of the scale of volumes.
type VolumeMark struct {
	DepthMM float64
	Words   string // '5', or empty for a tick alone
}

// LineMark is a named level.
type LineMark struct {
	DepthMM float64
	Words   string
	Lowest  bool // drawn as the lowest safe line
}

// Lengths of the strip, mm.
const (
	stripMM   = 56
	stripGap  = 12
	glueMM    = 15  // how much two pieces share
	mostTopMM = 900 // deeper than any tub a child can reach into
	levelMM   = 3.0 // lettering on the strip
)

// DipstickPDF is the strip at true scale with check bars both ways; a strip
// longer than the page comes in pieces that are glued cross on cross. It fails
// when the depths are no depths of a tub.
func DipstickPDF(d Dipstick, paper scene.Size) ([]byte, error) {
	if err := d.check(); err != nil {
		return nil, err
	}
	press := scene.NewPress(d.title(), d.On)
	pieces := d.pieces(paper)
	across := int((paper.Width - 2*marginMM - dipTextMM) / (stripMM + stripGap))
	for first := 0; first < len(pieces); first += across {
		page := press.Page(paper)
		part := pieces[first:min(first+across, len(pieces))]
		for i, p := range part {
			corner := scene.Point{X: marginMM + float64(i)*(stripMM+stripGap), Y: marginMM + titleMM}
			window := scene.BoxAt(corner, stripMM, p.to-p.from)
			page.Window(window, corner.Minus(scene.Point{Y: p.from}), d.strip(pieces))
			page.Draw(scene.Shape{Path: scene.Rectangle(window), Class: scene.Part})
			page.Draw(scene.Text{
				At: corner.Plus(scene.Point{X: stripMM + 3, Y: 6}), Text: p.words(first+i, len(pieces)), SizeMM: 3, Turn: 90,
			})
		}
		page.Draw(d.besides(paper)...)
	}
	return press.Bytes()
}

func (d Dipstick) check() error {
	// Written so that a height that is not a number fails too.
	if !(d.TopMM >= 10 && d.TopMM <= mostTopMM) {
		return fmt.Errorf("a dipstick of %g mm cannot be drawn; the tub's inside height must be 10 to %d mm", d.TopMM, mostTopMM)
	}
	return nil
}

// piece is a part of the strip, from one depth to another.
type stripPiece struct{ from, to float64 }

func (p stripPiece) words(i, n int) string {
	if n == 1 {
		return "cut along the frame; the lower end stands on the tub's floor"
	}
	if i == 0 {
		return "piece 1: its lower end stands on the tub's floor"
	}
	return fmt.Sprintf("piece %d: glue on piece %d, cross on cross", i+1, i)
}

func (d Dipstick) pieces(paper scene.Size) []stripPiece {
	length := paper.Height - 2*marginMM - titleMM
	n := TileCount(d.TopMM, length, glueMM)
	out := make([]stripPiece, n)
	for i := range out {
		from := float64(i) * (length - glueMM)
		out[i] = stripPiece{from, math.Min(d.TopMM, from+length)}
	}
	return out
}

// strip is the whole scale from the floor at y 0: lengths on the left, volumes
// on the right, named lines across.
func (d Dipstick) strip(pieces []stripPiece) []scene.Element {
	length, volume := d.units()
	out := append(
		d.lengths(),
		scene.Text{At: scene.Point{X: 2, Y: 2}, Text: length, SizeMM: levelMM},
		scene.Text{At: scene.Point{X: stripMM - 2, Y: 2}, Text: volume, SizeMM: levelMM, Anchor: scene.End},
	)
	for _, v := range d.Volumes {
		if !d.shows(v.DepthMM) {
			continue
		}
		tick := 3.0
		if v.Words != "" {
			tick = 6
			out = append(out, scene.Text{
				At: scene.Point{X: stripMM - tick - 0.8, Y: v.DepthMM - levelMM*0.36}, Text: v.Words, SizeMM: levelMM, Face: scene.SansBold, Anchor: scene.End,
			})
		}
		out = append(out, scene.Line{From: scene.Point{X: stripMM - tick, Y: v.DepthMM}, To: scene.Point{X: stripMM, Y: v.DepthMM}})
	}
	for _, l := range d.Lines {
		out = append(out, d.line(l)...)
	}
	for i, p := range pieces[1:] {
		name := letters(i)
		for j, x := range []float64{stripMM * 0.3, stripMM * 0.7} {
			out = append(out, cross{scene.Point{X: x, Y: d.crossHeight(p.from)}, name + itoa(j+1)}.elements()...)
		}
	}
	return out
}

// crossHeight is where in the strip that two pieces share the crosses stand
// clearest of the named lines.
func (d Dipstick) crossHeight(from float64) float64 {
	best, most := from+glueMM/2, -1.0
	for _, share := range []float64{0.5, 0.3, 0.7} {
		y, free := from+glueMM*share, math.Inf(1)
		for _, l := range d.Lines {
			free = math.Min(free, math.Abs(y-(l.DepthMM+levelMM/2)))
		}
		if free > most+1e-9 {
			best, most = y, free
		}
	}
	return best
}

func (d Dipstick) line(l LineMark) []scene.Element {
	class := scene.Edge
	if l.Lowest {
		class = scene.Lowest
	}
	return []scene.Element{
		scene.Line{From: scene.Point{X: 9, Y: l.DepthMM}, To: scene.Point{X: stripMM - 12, Y: l.DepthMM}, Class: class},
		scene.Text{
			At: scene.Point{X: 10, Y: l.DepthMM + 0.9}, Text: scene.Sans.Fitted(l.Words, levelMM, stripMM-22), SizeMM: levelMM, Halo: true,
		},
	}
}

// lengths are the cm or inches from the floor.
func (d Dipstick) lengths() []scene.Element {
	var out []scene.Element
	g := Lid{System: d.System}.graduation()
	for i := range int(d.TopMM/g.stepMM+1e-9) + 1 {
		y, tick := float64(i)*g.stepMM, 1.5
		if i%g.middle == 0 {
			tick = 3
		}
		if i%g.longest == 0 {
			tick = 5
		}
		out = append(out, scene.Line{From: scene.Point{Y: y}, To: scene.Point{X: tick, Y: y}})
		if n := int(math.Round(y / g.perNumber)); i%g.longest == 0 && n > 0 {
			out = append(out, scene.Text{At: scene.Point{X: 5.4, Y: y - levelMM*0.36}, Text: itoa(n), SizeMM: levelMM})
		}
	}
	return out
}

// dipTextMM is the width beside the strips for words and bars.
const dipTextMM = 106

// besides are the words and the check bars at the right of the page.
func (d Dipstick) besides(paper scene.Size) []scene.Element {
	box := scene.Box{
		Min: scene.Point{X: paper.Width - marginMM - dipTextMM, Y: marginMM + titleMM},
		Max: scene.Point{X: paper.Width - marginMM, Y: paper.Height - marginMM},
	}
	column := scene.NewColumn(box)
	column.Text(scene.Style{Face: scene.Serif, SizeMM: 18 * scene.PointMM}, d.title())
	column.Rule(scene.Part, 3)
	for i, step := range d.steps() {
		column.Step(scene.Style{Face: scene.Serif, SizeMM: textMM, Leading: 1.25, Indent: 8}, itoa(i+1)+".", scene.SansBold, step)
		column.Gap(1)
	}
	low := box.Min.Plus(scene.Point{X: 2, Y: 5})
	out := append(column.Elements, bar(low, 0, barMM, barWords)...)
	out = append(out, bar(low.Plus(scene.Point{Y: 7}), 0, barInMM, barInWords)...)
	out = append(out, bar(low.Plus(scene.Point{X: 8, Y: 16}), 90, barMM, barWords)...)
	out = append(out, bar(low.Plus(scene.Point{X: 16, Y: 16}), 90, barInMM, barInWords)...)
	title := scene.BoxAt(scene.Point{X: marginMM, Y: marginMM}, paper.Width-2*marginMM, titleMM-1)
	return append(out, d.lid().TitleBlock(title, d.title(), paper)...)
}
