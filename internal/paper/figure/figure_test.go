package figure_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/paper/figure"
	"rootbell/internal/paper/scene"
)

// Colours and sizes come from the style sheet alone: the page's content policy
// forbids styles in it, and each class has its rule.
func TestFiguresBringClassesAndNothingElse(t *testing.T) {
	css := read(t, "../../app/web/static/figure.css")
	known := map[string]bool{"lead": true, "dimension": true, "fixed": true}
	for _, m := range regexp.MustCompile(`\.([a-z][a-z0-9-]*)`).FindAllStringSubmatch(css, -1) {
		known[m[1]] = true
	}
	for _, f := range figures(t) {
		root := parsed(t, f.svg)
		if root.name != "svg" || !root.has("fig") || root.attr["aria-label"] == "" {
			t.Errorf("%s: the figure does not say what it is", f.name)
		}
		ids := map[string]bool{}
		root.walk(func(n *node) {
			for _, name := range []string{"style", "fill", "stroke", "stroke-width", "font-size", "color", "opacity"} {
				if _, ok := n.attr[name]; ok {
					t.Errorf("%s: %s has the attribute %s", f.name, n.name, name)
				}
			}
			for class := range strings.FieldsSeq(n.attr["class"]) {
				if !known[class] {
					t.Errorf("%s: class %s has no rule", f.name, class)
				}
			}
			if id := n.attr["id"]; id != "" && ids[id] {
				t.Errorf("%s: id %s stands twice", f.name, id)
			} else {
				ids[id] = true
			}
		})
	}
}

// The number beside a dimension line is its length: what a ruler laid on the
// drawing would read, to half a mark and the hundredth of a pixel it is written in.
func TestDimensionsAreTrue(t *testing.T) {
	seen := 0
	for _, f := range figures(t) {
		root := parsed(t, f.svg)
		scale := root.num("data-scale")
		half := 0.5
		if f.a.Plan.Units == garden.US {
			half = 25.4 / 32
		}
		root.walk(func(n *node) {
			if !n.has("dimension") {
				return
			}
			var line, text *node
			for _, k := range n.kids {
				if k.has("dim") {
					line = k
				}
				if k.name == "text" && text == nil {
					text = k
				}
			}
			written, ok := mark(text.text, f.a.Plan.Units)
			if !ok {
				t.Fatalf("%s: %q is no length", f.name, text.text)
			}
			length := math.Hypot(line.num("x2")-line.num("x1"), line.num("y2")-line.num("y1")) / scale
			if off := math.Abs(written - length); off > half+0.02/scale+1e-6 {
				t.Errorf("%s: %q stands beside a line of %.2f mm", f.name, text.text, length)
			}
			seen++
		})
	}
	if seen < 300 {
		t.Errorf("only %d dimensions were found in all figures", seen)
	}
}

// Every lid says its length over it, and its width beside it unless it is
// round, and the least distance wherever there are two holes.
func TestLidsSayTheirSize(t *testing.T) {
	for _, f := range figures(t) {
		if !strings.Contains(f.name, " lid ") {
			continue
		}
		outline, _, _ := f.a.LidShape(f.tub)
		b := outline.Bounds()
		var words []string
		root := parsed(t, f.svg)
		root.walk(func(n *node) {
			if n.name == "text" {
				words = append(words, strings.TrimPrefix(n.text, "⌀ "))
			}
		})
		for _, mm := range []float64{b.Width(), b.Height()} {
			want, _, _ := strings.Cut(garden.Mark(mm, f.a.Plan.Units), "\u00a0cm")
			want = strings.TrimSuffix(want, "\u00a0in")
			if !slices.Contains(words, want) {
				t.Errorf("%s: %s stands nowhere in %q", f.name, want, words)
			}
		}
	}
}

// A script finds each hole where the assessment put it, and the keyboard meets
// them in the order of their numbers.
func TestHolesStandWhereTheyWereLaid(t *testing.T) {
	for _, f := range figures(t) {
		if !strings.Contains(f.name, " lid ") {
			continue
		}
		root := parsed(t, f.svg)
		layout, _ := f.a.Tubs[f.tub].Lid.Layout(root.attr["data-layout"])
		var holes []*node
		root.walk(func(n *node) {
			if n.has("hole") {
				holes = append(holes, n)
			}
		})
		if len(holes) != len(layout.Holes) || len(holes) == 0 {
			t.Fatalf("%s: %d holes drawn of %d", f.name, len(holes), len(layout.Holes))
		}
		for i, h := range layout.Holes {
			n := holes[i]
			if n.attr["data-n"] != strconv.Itoa(h.N) || n.attr["tabindex"] != "0" || !strings.HasPrefix(n.attr["aria-label"], fmt.Sprintf("Hole %d, ", h.N)) {
				t.Errorf("%s: hole %d has %v", f.name, h.N, n.attr)
			}
			if n.num("data-x") != h.XMM || n.num("data-y") != h.YMM {
				t.Errorf("%s: hole %d at %s, %s", f.name, h.N, n.attr["data-x"], n.attr["data-y"])
			}
			ring := n.kids[0]
			wantX, wantY := root.num("data-x0")+root.num("data-scale")*h.XMM, root.num("data-y0")-root.num("data-scale")*h.YMM
			if math.Abs(ring.num("cx")-wantX) > 0.011 || math.Abs(ring.num("cy")-wantY) > 0.011 || math.Abs(ring.num("r")-root.num("data-scale")*h.DiameterMM/2) > 0.006 {
				t.Errorf("%s: hole %d is drawn at %v", f.name, h.N, ring.attr)
			}
			if got := wordsIn(n); !slices.Contains(got, strconv.Itoa(h.N)) && !crowded(f) {
				t.Errorf("%s: hole %d bears %q", f.name, h.N, got)
			}
		}
	}
}

// crowded says whether a lid is too full for the narrow drawing to number each
// hole: thirty on 328 px. The note says so then.
func crowded(f drawn) bool {
	layout, _ := f.a.Tubs[f.tub].Lid.Layout(strings.Fields(f.name)[len(strings.Fields(f.name))-2])
	return len(layout.Holes) >= 30 && strings.HasSuffix(f.name, "hand") &&
		strings.Contains(noteOf(f.a, f.tub, layout.Name, figure.Hand), "numbers find no room")
}

func wordsIn(n *node) []string {
	var out []string
	n.walk(func(k *node) {
		if k.name == "text" {
			out = append(out, k.text)
		}
	})
	return out
}

// No text lies on another, and none is cut off at the figure's edge.
func TestWordsKeepApart(t *testing.T) {
	for _, f := range figures(t) {
		root := parsed(t, f.svg)
		words := wordsOf(root)
		width, height := root.num("width"), root.num("height")
		for i, w := range words {
			for _, p := range w.quad {
				if p.X < -0.01 || p.Y < -0.01 || p.X > width+0.01 || p.Y > height+0.01 {
					t.Errorf("%s: %q is cut off", f.name, w.words)
					break
				}
			}
			for _, o := range words[:i] {
				if !apart(w.quad[:], o.quad[:]) {
					t.Errorf("%s: %q and %q overlap", f.name, w.words, o.words)
				}
			}
		}
	}
}

// No word is struck through. Squares, tints and hatching may lie behind one;
// what a hole covers does not show in it.
func TestNoLineRunsThroughAWord(t *testing.T) {
	for _, f := range figures(t) {
		root := parsed(t, f.svg)
		var check func(n, hole *node)
		words := wordsOf(root)
		check = func(n, hole *node) {
			if n.has("hole") {
				hole = n
			}
			for _, l := range linesOf(n) {
				for _, w := range words {
					if w.in != nil && w.in != hole && !n.has("dim") && !n.has("tick") && within(w, w.in.kids[0]) {
						continue
					}
					if !apart(w.quad[:], l[:]) {
						t.Errorf("%s: %q is struck through by %s.%s", f.name, w.words, n.name, n.attr["class"])
					}
				}
			}
			for _, k := range n.kids {
				check(k, hole)
			}
		}
		check(root, nil)
	}
}

// within says whether a text lies in a circle, which covers what is behind it.
func within(w worded, ring *node) bool {
	for _, p := range w.quad {
		if p.Distance(scene.Point{X: ring.num("cx"), Y: ring.num("cy")}) > ring.num("r") {
			return false
		}
	}
	return true
}

// quiet classes may lie behind words.
var quiet = regexp.MustCompile(`\b(g1|g5|wat|watd|sheetfill|lam|laml|halo)\b`)

// linesOf are the straight pieces of an element, a circle as a chain of chords.
func linesOf(n *node) [][2]scene.Point {
	if quiet.MatchString(n.attr["class"]) {
		return nil
	}
	switch n.name {
	case "line":
		return [][2]scene.Point{{{X: n.num("x1"), Y: n.num("y1")}, {X: n.num("x2"), Y: n.num("y2")}}}
	case "circle":
		points := scene.Disc(scene.Point{X: n.num("cx"), Y: n.num("cy")}, n.num("r")).Flat(0.05)
		return chained(append(points, points[0]))
	case "path":
		return straight(n.attr["d"])
	}
	return nil
}

func chained(p []scene.Point) [][2]scene.Point {
	var out [][2]scene.Point
	for i := 1; i < len(p); i++ {
		out = append(out, [2]scene.Point{p[i-1], p[i]})
	}
	return out
}

var command = regexp.MustCompile(`([MLHVAZhv])([^MLHVAZhv]*)`)

// straight are the straight pieces of a path; round ones are left out.
func straight(d string) [][2]scene.Point {
	var out [][2]scene.Point
	var at, start scene.Point
	for _, m := range command.FindAllStringSubmatch(d, -1) {
		var v []float64
		for field := range strings.FieldsSeq(m[2]) {
			x, _ := strconv.ParseFloat(field, 64)
			v = append(v, x)
		}
		to := at
		switch m[1] {
		case "M":
			at = scene.Point{X: v[0], Y: v[1]}
			start = at
			continue
		case "A":
			at = scene.Point{X: v[5], Y: v[6]}
			continue
		case "L":
			to = scene.Point{X: v[0], Y: v[1]}
		case "H":
			to.X = v[0]
		case "V":
			to.Y = v[0]
		case "h":
			to.X += v[0]
		case "v":
			to.Y += v[0]
		case "Z":
			to = start
		}
		out = append(out, [2]scene.Point{at, to})
		at = to
	}
	return out
}

func TestSameAssessmentSameBytes(t *testing.T) {
	const name = "../../../examples/fernhollow.yaml"
	again := assess(t, name, read(t, name))
	for tub := range again.Tubs {
		for _, f := range of(again, tub) {
			for _, before := range figures(t) {
				if before.name == f.name && before.svg != f.svg {
					t.Errorf("%s came out twice in two ways", f.name)
				}
			}
		}
	}
}

// What cannot be drawn is refused or drawn as far as it is known.
func TestFiguresOfWhatIsNotThereYet(t *testing.T) {
	text := read(t, "../../garden/testdata/clean.yaml")
	whole := assess(t, "plan.yaml", text)
	crossed := assess(t, "plan.yaml", strings.Replace(text, "size: [54 cm, 38 cm]\n      corner_radius: 4 cm", "outline: [[0 cm, 0 cm], [40 cm, 30 cm], [40 cm, 0 cm], [0 cm, 30 cm]]", 1))
	narrow := strings.NewReplacer("rim: 83 mm", "rim: 76 mm", "    hole: 76 mm\n", "").Replace(text)
	noHole := assess(t, "plan.yaml", narrow)
	if noHole.Tubs[0].Lid != nil {
		t.Fatal("a cup whose lip no hole bears was laid out")
	}
	for _, w := range []figure.Width{figure.Desk, figure.Hand} {
		svg, ok := figure.Lid(noHole, 0, "", w)
		root := parsed(t, svg)
		words := strings.Join(wordsIn(root), "|")
		if !ok || strings.Contains(svg, "hole-1") || !strings.Contains(words, "54.0") || !strings.Contains(words, "handle") || root.attr["role"] != "img" {
			t.Errorf("the lid before its holes are known: %v, %s", ok, words)
		}
		if _, ok := figure.Layout(noHole, 0, "", w); ok {
			t.Error("a layout that is not there was drawn")
		}
		if _, ok := figure.Section(noHole, 0, w); ok {
			t.Error("a section without cups was drawn")
		}
		if note := noteOf(noHole, 0, "", w); !strings.Contains(note, "square") || strings.Contains(note, "chain") {
			t.Errorf("the note explains lines that are not drawn: %s", note)
		}
	}
	for name, c := range map[string]struct {
		a      *garden.Assessment
		tub    int
		layout string
	}{
		"an outline that crosses itself": {crossed, 0, ""},
		"a tub that is not there":        {whole, 1, ""},
		"a tub below the first":          {whole, -1, ""},
		"a layout that is not there":     {whole, 0, "spiral"},
	} {
		if svg, ok := figure.Lid(c.a, c.tub, c.layout, figure.Hand); ok {
			t.Errorf("%s was drawn: %.100s", name, svg)
		}
		if _, ok := figure.Layout(c.a, c.tub, c.layout, figure.Hand); ok {
			t.Errorf("%s was drawn small", name)
		}
	}
	if _, ok := figure.Section(crossed, 0, figure.Desk); ok {
		t.Error("the section of a lid that cannot be was drawn")
	}
}

// A hole that is there is marked by a second ring and the word; one without a
// cup is dashed, with the word.
func TestStandingHolesAreMarked(t *testing.T) {
	a := assess(t, "kit", read(t, "../../garden/testdata/kit.yaml"))
	svg, _ := figure.Lid(a, 0, "", figure.Desk)
	root := parsed(t, svg)
	fixed, dashed, caps, words := 0, 0, 0, 0
	root.walk(func(n *node) {
		if n.has("fixed") && n.attr["data-fixed"] == "yes" {
			rings := 0
			for _, k := range n.kids {
				if k.name == "circle" {
					rings++
				}
			}
			if rings == 2 && strings.HasSuffix(n.attr["aria-label"], "fixed") {
				fixed++
			}
		}
		if n.name == "circle" && n.has("hid") {
			dashed++
		}
		if n.text == "cap" {
			caps++
		}
		if n.text == "fixed" {
			words++
		}
	})
	if fixed != 4 || dashed != 4 || caps != 4 || words != 4 {
		t.Errorf("%d fixed with %d words, %d dashed with %d words, want 4 each", fixed, words, dashed, caps)
	}
}

// noteOf is what stands under the drawing of a lid.
func noteOf(a *garden.Assessment, tub int, layout string, w figure.Width) string {
	_, note, _ := figure.LidNoted(a, tub, layout, w)
	return note
}
