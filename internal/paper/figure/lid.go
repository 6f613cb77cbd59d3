package figure

import (
	"fmt"
	"math"
	"strings"

	"rootbell/internal/base/plane"
	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// lidFigure is one lid being drawn.
type lidFigure struct {
	pen
	frame   frame
	hand    bool
	id      string // what ids in it begin with
	tub     string
	system  garden.System
	outline plane.Shape
	clear   []garden.Clear
	laid    bool // whether lid and layout are known
	lid     *garden.Lid
	layout  garden.Layout
	fixed   []plane.Point // centres of the holes that are there already

	unnumbered int // holes whose number found no room
}

// frame is the room round a lid in px, and the most its outline may take.
type frame struct {
	width                    float64
	left, right, above, foot float64
	mostHigh                 float64
	topDim, sideDim          float64 // how far off the lid its overall dimensions stand
	words                    bool    // rulers, numbers and names, not the outline alone
}

// wholeLid leaves room for rulers on the left and below, for dimensions above
// and on the right, and for the words of leaders.
func wholeLid(w Width) frame {
	if w == Hand {
		return frame{width: 328, left: 49, right: 32, above: 34, foot: 42, mostHigh: 420, topDim: 14, sideDim: 20, words: true}
	}
	return frame{width: 806, left: 56, right: 176, above: 66, foot: 42, mostHigh: 560, topDim: 42, sideDim: 158, words: true}
}

func smallLid(w Width) frame {
	return frame{width: w.pick(260, 328), left: 6, right: 6, above: 6, foot: 6, mostHigh: w.pick(300, 360)}
}

func lidOf(a *garden.Assessment, tub int, layout string, w Width, fr frame) (*lidFigure, bool) {
	if tub < 0 || tub >= len(a.Tubs) {
		return nil, false
	}
	t := a.Tubs[tub]
	f := &lidFigure{
		frame: fr, hand: w == Hand, tub: t.Name, system: a.Plan.Units,
		fixed: a.StandingHoles(tub),
	}
	var known bool
	if f.outline, f.clear, known = a.LidShape(tub); !known {
		return nil, false
	}
	if t.Lid != nil && len(t.Lid.Layouts) > 0 {
		if layout == "" {
			layout = t.Lid.Chosen
		}
		f.lid = t.Lid
		if f.layout, f.laid = t.Lid.Layout(layout); !f.laid {
			return nil, false
		}
	}
	kind := "lid"
	if !f.frame.words { // one page shows both
		kind = "layout"
	}
	f.id = strings.Join([]string{kind, garden.Slug(t.Name), f.layout.Name, w.String()}, "-")
	f.setScale()
	return f, true
}

// setScale takes the largest scale at which the outline fits its frame.
func (f *lidFigure) setScale() {
	b := f.outline.Bounds()
	wide := f.frame.width - f.frame.left - f.frame.right
	f.scale = math.Floor(1000*min(wide/b.Width(), f.frame.mostHigh/b.Height())) / 1000
	f.width = f.frame.width
	f.height = math.Ceil(f.frame.above + b.Height()*f.scale + f.frame.foot)
	// A lid that its height limits stands in the middle of its frame.
	aside := (wide - b.Width()*f.scale) / 2
	f.zero = scene.Point{X: f.frame.left + aside - b.Min.X*f.scale, Y: f.frame.above + b.Max.Y*f.scale}
}

// box is the outline's box in px, its Min the upper left.
func (f *lidFigure) box() scene.Box {
	b := f.outline.Bounds()
	return scene.EmptyBox().With(f.at(scene.PointOf(b.Min))).With(f.at(scene.PointOf(b.Max)))
}

func (f *lidFigure) mark(mm float64) string { return sheet.Mark(mm, f.system) }

// draw is the whole drawing. Lines come before the words that keep clear of
// them; dimensions are placed before the holes are drawn, and shown over them.
func (f *lidFigure) draw() {
	f.ground()
	f.inner = f.box()
	f.squares(scene.PathOfShape(f.outline))
	f.rulers()
	f.keepClear()
	f.edge()
	if !f.laid {
		f.overall()
		f.words()
		return
	}
	f.region()
	if !f.hand {
		f.sectionLine()
	}
	f.room.cover()
	f.reserve()
	f.openings()
	f.caps()
	over := f.aside(func() {
		f.overall()
		f.leastDistance()
		if !f.hand {
			f.edgeDistance()
		}
	})
	for _, h := range f.layout.Holes {
		f.hole(h)
	}
	f.out.WriteString(over)
	f.words()
}

func (f *lidFigure) ground() { f.path("sheetfill", scene.PathOfShape(f.outline)) }

// edge is the lid's outline, which leaders may cross.
func (f *lidFigure) edge() {
	path := f.pixels(scene.PathOfShape(f.outline))
	f.printf(`<path class="k" d="%s"/>`, pathData(path))
	f.room.path(path, weights["k"], softPX)
}

func (f *lidFigure) drawSmall() {
	f.ground()
	f.keepClear()
	f.edge()
	f.room.cover()
	f.reserve()
	f.smallHoles()
	f.leastDistance()
}

// svg is the finished figure.
func (f *lidFigure) svg() string {
	role, data := "img", ""
	if f.laid && f.frame.words { // holes in it can have the focus, which no img may hold
		role = "group"
	}
	if f.laid {
		data = fmt.Sprintf(` data-layout="%s"`, escaped(f.layout.Name))
	}
	step := 0.0
	if f.lid != nil {
		step = f.lid.StepMM
	}
	return fmt.Sprintf(`<svg class="fig" id="%s" width="%s" height="%s" viewBox="0 0 %s %s" role="%s" aria-label="%s" data-scale="%s" data-x0="%s" data-y0="%s" data-step="%s"%s>%s</svg>`,
		escaped(f.id), px(f.width), px(f.height), px(f.width), px(f.height), role, escaped(f.label()),
		mm(f.scale), px(f.zero.X), px(f.zero.Y), mm(step), data, f.out.String())
}

// label is what the figure shows, in sentences.
func (f *lidFigure) label() string {
	b := f.outline.Bounds()
	text := fmt.Sprintf("Lid of %s from above, %s by %s", f.tub, f.mark(b.Width()), garden.Mark(b.Height(), f.system))
	if !f.laid {
		return text + ". No holes are laid out yet."
	}
	n := len(f.layout.Holes)
	text += fmt.Sprintf(", with %s of %s.", count(n, "hole"), sheet.ToolSize(f.lid.HoleMM, f.system))
	if n > 1 {
		text += fmt.Sprintf(" The least between two centres is %s.", garden.Mark(f.layout.SpacingMM, f.system))
	}
	return text
}

func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// mm writes millimetres or a scale for a script, to a thousandth.
func mm(v float64) string { return strings.TrimSuffix(fmt.Sprintf("%.3f", v), ".000") }

// note says what the lines of the drawing mean.
func (f *lidFigure) note() string {
	text := "Each square is " + f.squareName() + "."
	if len(f.clear) > 0 {
		text += " Crossed strokes: kept clear, no hole here."
	}
	if !f.laid {
		return text
	}
	if len(f.fixed) > 0 {
		text += " Two rings: a hole that is fixed."
	}
	if len(f.unused()) > 0 {
		text += " Dashed ring: a hole without a cup, to be capped."
	}
	if f.unnumbered > 0 {
		text += " Some numbers find no room here; the table has all."
	}
	if f.lid.EdgeMM > 0 && f.regionShown() {
		text += fmt.Sprintf(" Inside the chain line is room for centres, at least %s from the edge.", garden.Mark(f.lid.EdgeMM, f.system))
	}
	return text
}
