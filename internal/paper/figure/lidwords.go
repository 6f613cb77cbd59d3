package figure

import (
	"math"

	"rootbell/internal/base/plane"
	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// overall are the lid's length and width; of a round lid one is enough.
func (f *lidFigure) overall() {
	b, size := f.box(), f.outline.Bounds()
	long := f.mark(size.Width())
	if _, round := f.outline.(plane.Circle); round {
		long = "⌀ " + long
	} else {
		d := dimension{a: b.Max, b: scene.Point{X: b.Max.X, Y: b.Min.Y}, aside: scene.Point{X: f.frame.sideDim}, words: []string{f.mark(size.Height())}}
		f.measure(d, "")
	}
	d := dimension{a: b.Min, b: scene.Point{X: b.Max.X, Y: b.Min.Y}, aside: scene.Point{Y: -f.frame.topDim}, words: []string{long}}
	f.measure(d, "")
}

// leastDistance is drawn between the two centres that are closest.
func (f *lidFigure) leastDistance() {
	n := len(f.layout.Holes)
	i, j := f.layout.Pair[0], f.layout.Pair[1]
	if n < 2 || i >= n || j >= n || i == j {
		return
	}
	a, b := f.layout.Holes[i], f.layout.Holes[j]
	text := f.mark(f.layout.SpacingMM)
	d := dimension{a: f.centre(a), b: f.centre(b), words: []string{text + ", the least", text}, also: "the least"}
	if !f.frame.words || f.hand {
		d.words, d.also = d.words[1:], ""
	}
	f.measure(d, "halo")
}

// edgeDistance is from the centre nearest to the lid's edge straight to it. Of
// several that are as near the first with room for its number is taken.
func (f *lidFigure) edgeDistance() {
	const as = 0.05 // mm that tell two distances apart
	for _, h := range f.layout.Holes {
		p := plane.Point{X: h.XMM, Y: h.YMM}
		if f.outline.Distance(p) > f.layout.EdgeMM+as {
			continue
		}
		edge := f.outline.Nearest(p)
		a, b := f.centre(h), f.at(scene.PointOf(edge))
		along := b.Minus(a)
		length := math.Hypot(along.X, along.Y)
		if length < 1 {
			continue
		}
		across := along.Times(1 / length).Turned(90)
		for _, off := range []float64{-14, 14, -24, 24, -36, 36, -52, 52} {
			reach := f.radius(h)
			if off < 0 {
				reach = -reach
			}
			d := dimension{a: a, b: b, aside: across.Times(off + reach), words: []string{f.mark(f.layout.EdgeMM)}}
			if f.clearDim(d) && f.measure(d, "halo") {
				return
			}
		}
	}
}

// clearDim says whether a dimension's line and its extension lines run over
// squares alone.
func (f *lidFigure) clearDim(d dimension) bool {
	from, to := d.ends()
	const slack = softPX * 3.5
	return f.crossed(from, to)+f.crossed(d.a, from)-weights["k"]+f.crossed(d.b, to) < slack
}

// sectionLine shows where the section is cut: a chain line with a thick end,
// an arrow in the direction one looks, and a letter.
func (f *lidFigure) sectionLine() {
	if f.lid.Section == nil || f.layout.Name != f.lid.Chosen {
		return
	}
	const pastPX, thickPX, arrowPX = 24.0, 14.0, 16.0
	y := f.at(scene.Point{Y: f.lid.Section.YMM}).Y
	from, end := f.box().Min.X, f.box().Max.X+pastPX
	for _, gap := range f.levelGaps(y) {
		if gap[0] > from {
			f.softLine("cen", scene.Point{X: from, Y: y}, scene.Point{X: gap[0], Y: y})
		}
		from = math.Max(from, gap[1])
	}
	f.softLine("cen", scene.Point{X: from, Y: y}, scene.Point{X: end, Y: y})
	f.line("kk", scene.Point{X: end - thickPX, Y: y}, scene.Point{X: end, Y: y})
	f.line("n", scene.Point{X: end, Y: y}, scene.Point{X: end, Y: y - arrowPX})
	tip := scene.Point{X: end, Y: y - arrowPX}
	f.chain("n solid", true, tip, tip.Plus(scene.Point{X: -3.5, Y: 8}), tip.Plus(scene.Point{X: 3.5, Y: 8}))
	f.place(lettering{words: "A", class: "b", at: scene.Point{X: end + 7, Y: y + 4.5}})
}

// levelGaps are where centre lines of holes lie on a level line already, from
// left to right.
func (f *lidFigure) levelGaps(y float64) [][2]float64 {
	var out [][2]float64
	for _, h := range append(f.unused(), f.layout.Holes...) {
		at := f.centre(h)
		if _, half := f.arm(h); math.Abs(at.Y-y) < 2 {
			out = append(out, [2]float64{at.X - half - 2, at.X + half + 2})
		}
	}
	for i := range out {
		for j := i; j > 0 && out[j][0] < out[j-1][0]; j-- {
			out[j], out[j-1] = out[j-1], out[j]
		}
	}
	return out
}

// softLine is a line that a leader may cross.
func (f *lidFigure) softLine(class string, a, b scene.Point) {
	f.printf(`<line class="%s" x1="%s" y1="%s" x2="%s" y2="%s"/>`, class, px(a.X), px(a.Y), px(b.X), px(b.Y))
	f.room.line(a, b, weight(class), softPX)
}

// words are the captions of all that is drawn.
func (f *lidFigure) words() {
	for _, k := range f.clear {
		f.clearWord(k)
	}
	if !f.laid {
		return
	}
	for _, h := range f.layout.Holes {
		if f.standing(h) && !f.hand {
			f.name(caption{lines: []string{"fixed"}, class: "sm halo", part: scene.Disc(f.centre(h), f.radius(h))})
		}
	}
	if a := f.lid.AirLine; a != nil {
		f.nameOpening(f.at(scene.Point{X: a.XMM, Y: a.YMM}), max(a.DiameterMM/2*f.scale, 4), f.airWords(a)...)
	}
	if s := f.lid.Service; s != nil {
		f.nameOpening(f.at(scene.Point{X: s.XMM, Y: s.YMM}), s.DiameterMM/2*f.scale, "service hole", "⌀ "+sheet.ToolSize(s.DiameterMM, f.system))
	}
	if f.hand || len(f.layout.Holes) == 0 {
		return
	}
	h := f.layout.Holes[len(f.layout.Holes)-1]
	f.name(caption{
		lines: []string{count(len(f.layout.Holes), "hole"), "⌀ " + sheet.ToolSize(f.lid.HoleMM, f.system)}, class: "sm halo", away: true, part: scene.Disc(f.centre(h), f.radius(h)),
	})
}

func (f *lidFigure) airWords(a *garden.AirLine) []string {
	size := "⌀ " + sheet.ToolSize(a.DiameterMM, f.system)
	if a.On == "wall" {
		return []string{"air line " + size, "in the wall, " + f.mark(a.HeightMM) + " up"}
	}
	return []string{"air line", size}
}

// nameOpening names a small hole, in the hand drawing by its first word alone
// where both find no room.
func (f *lidFigure) nameOpening(at scene.Point, radius float64, lines ...string) {
	c := caption{lines: lines, class: "sm halo", part: scene.Disc(at, radius)}
	if !f.name(c) {
		c.lines = lines[:1]
		f.name(c)
	}
}

// clearWord says why a part is kept clear.
func (f *lidFigure) clearWord(k garden.Clear) {
	part := f.pixels(scene.PathOfShape(k.Shape))
	// Beside a shape that does not fill its box a word would seem to belong to
	// nothing.
	_, odd := k.Shape.(plane.Polygon)
	for _, lines := range [][]string{{k.Why + ", kept clear"}, {k.Why + ",", "kept clear"}, {k.Why}} {
		if k.Why == "" {
			lines = []string{"kept clear"}
		}
		if f.name(caption{lines: lines, class: "sm halo", part: part, away: odd}) {
			return
		}
	}
}
