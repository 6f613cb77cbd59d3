package sheet

import (
	"fmt"
	"math"

	"rootbell/internal/paper/scene"
)

// Lengths of a numbered ring, mm. How wide a band is handy is common practice
// without a source.
const (
	ringPlayMM = 2 // the ring lies loosely round the cup's rim
	ringGapMM  = 2 // between neighbouring rings on the lid
	ringBandMM = 5 // narrower, it tears and no name can be read on it
	ringTabMM  = 8 // radius of the tab that bears the number
	ringRoomMM = 2 // between rings on the page
	ringSideMM = 8 // border of the page beside the rings
)

// Rings are the numbered rings of one lid: the inner and the outer diameter in
// mm, and whether a tab has room outside; else the number stands on the band.
type Rings struct {
	InnerMM, OuterMM float64
	Tab              bool
}

// RingsOf are the rings that lie round the cups of a lid without touching each
// other or reaching over the lid's edge. The error says why there are none on
// this paper.
func RingsOf(l Lid, paper scene.Size) (Rings, error) {
	if len(l.Holes) == 0 {
		return Rings{}, fmt.Errorf("the lid of %s has no holes, so there is nothing to number", l.Tub)
	}
	r := Rings{InnerMM: l.Cup.RimMM + ringPlayMM}
	r.OuterMM = r.InnerMM + 2*ringBandMM
	apart, edge := l.roomForRings()
	if r.OuterMM > math.Min(apart, 2*edge)-ringGapMM {
		return r, fmt.Errorf("the cups of %s hang too close together, or too close to the lid's edge, for paper rings; write the numbers beside the holes", l.Tub)
	}
	if page := ringPage(paper); r.OuterMM > math.Min(page.Width(), page.Height()) {
		return r, fmt.Errorf("a ring of %s is %s %s across and does not fit on %s; write the numbers beside the holes", l.Tub, l.mark(r.OuterMM), UnitName(l.System), PaperName(paper))
	}
	// Tabs can be turned away from each other and from the edge.
	r.Tab = r.OuterMM+ringTabMM*1.25 <= apart-ringGapMM
	return r, nil
}

// roomForRings is the least distance between two centres, and from a centre to
// the lid's edge, found at points along it.
func (l Lid) roomForRings() (apart, edge float64) {
	apart, edge = math.Inf(1), math.Inf(1)
	line := stepped(l.Outline)
	for i, h := range l.Holes {
		for _, other := range l.Holes[:i] {
			apart = math.Min(apart, h.At().Distance(other.At()))
		}
		for _, p := range line {
			edge = math.Min(edge, h.At().Distance(p))
		}
	}
	return apart, edge
}

// ringPage is where rings may lie on a page: over the bars, under the words.
func ringPage(paper scene.Size) scene.Box {
	return scene.Box{
		Min: scene.Point{X: ringSideMM, Y: marginMM + titleMM + ringBarsMM},
		Max: scene.Point{X: paper.Width - ringSideMM, Y: paper.Height - marginMM - ringWordsMM},
	}
}

const (
	ringBarsMM  = 16
	ringWordsMM = 34
)

// RingsPDF is a lid's hole numbers as rings at true size, to cut out and lay
// round the cups, as many on a page as fit. Where no ring makes sense it is
// one page that says why and what to do instead. It fails when the lid cannot
// be drawn.
func RingsPDF(l Lid, paper scene.Size) ([]byte, error) {
	if err := l.Check(paper); err != nil {
		return nil, err
	}
	press := scene.NewPress("Rings of "+l.Tub, l.On)
	r, none := RingsOf(l, paper)
	if none != nil {
		page := press.Page(paper)
		page.Draw(l.ringFrame(paper, noRings(none))...)
		return press.Bytes()
	}
	box := ringPage(paper)
	step := r.OuterMM + ringRoomMM
	across, down := fitting(box.Width(), step), fitting(box.Height(), step)
	for first := 0; first < len(l.Holes); first += across * down {
		page := press.Page(paper)
		page.Draw(l.ringFrame(paper, l.ringSteps()...)...)
		page.Draw(l.ringBars(paper)...)
		for i, h := range l.Holes[first:min(first+across*down, len(l.Holes))] {
			at := scene.Point{
				X: box.Min.X + r.OuterMM/2 + step*float64(i%across),
				Y: box.Max.Y - r.OuterMM/2 - step*float64(i/across),
			}
			page.Draw(l.ring(r, at, h.N)...)
		}
	}
	return press.Bytes()
}

// fitting is how many steps fit into a length; the last needs no gap after it.
func fitting(length, step float64) int {
	return max(1, int(math.Floor((length+ringRoomMM)/step+1e-9)))
}

func (l Lid) ringSteps() []string {
	return []string{
		"Print at 100 %. Measure the bars below. Off by more than 0.5 mm: the rings will not fit, print again.",
		"Cut along the outline, along the inner circle and along the short dashed line, which opens the ring.",
		"Lay each ring round the cup with its number. Laminate the rings, or change them when they are wet.",
	}
}

// ringFrame is what stands round the rings.
func (l Lid) ringFrame(paper scene.Size, words ...string) []scene.Element {
	column := scene.NewColumn(scene.Box{
		Min: scene.Point{X: marginMM, Y: marginMM + titleMM},
		Max: scene.Point{X: paper.Width - marginMM, Y: paper.Height - marginMM},
	})
	head := 16 * scene.PointMM
	column.Text(scene.Style{Face: scene.Serif, SizeMM: head}, scene.Serif.Fitted(l.ringTitle(), head, column.Box.Width()))
	column.Rule(scene.Part, 2)
	style := scene.Style{Face: scene.Serif, SizeMM: tableMM, Leading: 1.25, Indent: 7}
	for i, step := range words {
		label := ""
		if len(words) > 1 {
			label = itoa(i+1) + "."
		}
		column.Step(style, label, scene.SansBold, step)
		column.Gap(0.6)
	}
	title := scene.BoxAt(scene.Point{X: marginMM, Y: marginMM}, paper.Width-2*marginMM, titleMM-1)
	return append(column.Elements, l.TitleBlock(title, l.ringTitle(), paper)...)
}

func (l Lid) ringBars(paper scene.Size) []scene.Element {
	from := scene.Point{X: marginMM + 1, Y: marginMM + titleMM + 9}
	out := bar(from, 0, barMM, barWords)
	return append(out, bar(from.Minus(scene.Point{Y: 6}), 0, barInMM, barInWords)...)
}

// ring is one ring with its number, the tub's name and a cut to open it. The
// tab points into the corner between four rings, where it takes no room.
func (l Lid) ring(r Rings, at scene.Point, n int) []scene.Element {
	inner, outer := r.InnerMM/2, r.OuterMM/2
	middle := (inner + outer) / 2
	outline, number, size := scene.Disc(at, outer), at.Plus(scene.Point{Y: middle}), ringBandMM*0.8
	if r.Tab {
		const corner = 45
		number, size = at.Plus(scene.Point{X: outer + ringTabMM/4}.Turned(corner)), ringTabMM
		outline = tabbed(at, outer, corner)
	}
	const nameMM = 2.8
	name := scene.Sans.Fitted(l.Tub, nameMM, ringNameMM(inner, nameMM))
	return []scene.Element{
		scene.Shape{Path: outline, Class: scene.Part},
		scene.Circle{Centre: at, RadiusMM: inner, Class: scene.Part},
		scene.Line{From: at.Minus(scene.Point{X: outer}), To: at.Minus(scene.Point{X: inner}), Class: scene.Hidden},
		scene.Text{At: number.Minus(scene.Point{Y: size * 0.36}), Text: itoa(n), SizeMM: size, Face: scene.SansBold, Anchor: scene.Middle},
		scene.Text{At: at.Minus(scene.Point{Y: middle + nameMM*0.36}), Text: name, SizeMM: nameMM, Anchor: scene.Middle},
	}
}

// ringNameMM is how long a straight name on a bent band may be: half its
// length reaches as far as the band, less the type, falls away from it.
func ringNameMM(inner, size float64) float64 {
	return 2 * math.Sqrt(2*inner*(ringBandMM-size)) * 0.9
}

// tabbed is a circle with the outline of a round tab in a direction.
func tabbed(at scene.Point, radius, degrees float64) scene.Path {
	const tab = ringTabMM
	out := radius + tab/4.0
	// Where both circles meet, as angles at either centre (law of cosines).
	big := math.Acos((radius*radius + out*out - tab*tab) / (2 * radius * out))
	small := math.Acos((out*out + tab*tab - radius*radius) / (2 * out * tab))
	bulge := func(angle float64) float64 { return math.Tan(angle / 4) }
	edge := func(turn float64) scene.Point {
		return at.Plus(scene.Point{X: radius}.Turned(degrees + turn))
	}
	meet := big * 180 / math.Pi
	return scene.Path{Closed: true, Vertices: []scene.Vertex{
		{Point: edge(meet), Bulge: bulge(math.Pi - big)},
		{Point: edge(180), Bulge: bulge(math.Pi - big)},
		{Point: edge(-meet), Bulge: bulge(2*math.Pi - 2*small)},
	}}
}
