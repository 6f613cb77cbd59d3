package figure_test

import (
	"context"
	"encoding/xml"
	"io"
	"math"
	"os"
	"strconv"
	"strings"
	"sync"
	"testing"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/paper/figure"
	"rootbell/internal/paper/scene"
	"rootbell/internal/science/lid"
)

// node is one element of a figure as a reader of XML sees it.
type node struct {
	name string
	attr map[string]string
	text string
	kids []*node
}

func parsed(t *testing.T, svg string) *node {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(svg))
	root := &node{}
	stack := []*node{root}
	for {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("not XML: %v", err)
		}
		top := stack[len(stack)-1]
		switch e := token.(type) {
		case xml.StartElement:
			n := &node{name: e.Name.Local, attr: map[string]string{}}
			for _, a := range e.Attr {
				n.attr[a.Name.Local] = a.Value
			}
			top.kids = append(top.kids, n)
			stack = append(stack, n)
		case xml.EndElement:
			stack = stack[:len(stack)-1]
		case xml.CharData:
			top.text += string(e)
		}
	}
	if len(root.kids) != 1 {
		t.Fatalf("%d roots", len(root.kids))
	}
	return root.kids[0]
}

func (n *node) walk(see func(*node)) {
	see(n)
	for _, k := range n.kids {
		k.walk(see)
	}
}

func (n *node) has(class string) bool {
	return strings.Contains(" "+n.attr["class"]+" ", " "+class+" ")
}

func (n *node) num(name string) float64 {
	v, err := strconv.ParseFloat(n.attr[name], 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

// mark reads a length as it is written on a drawing, in mm: '16.3' in cm, or
// '9 1/4' in inches of 25.4 mm.
func mark(words string, system garden.System) (mm float64, ok bool) {
	words = strings.TrimPrefix(words, "⌀ ")
	words, _, _ = strings.Cut(words, ",")
	words, _, _ = strings.Cut(words, " ")
	sum := 0.0
	for part := range strings.SplitSeq(words, "\u00a0") {
		over, under, fraction := strings.Cut(part, "/")
		v, err := strconv.ParseFloat(over, 64)
		if err != nil {
			return 0, false
		}
		if fraction {
			u, err := strconv.ParseFloat(under, 64)
			if err != nil {
				return 0, false
			}
			v /= u
		}
		sum += v
	}
	if system == garden.US {
		return sum * 25.4, true
	}
	return sum * 10, true
}

// drawn is one figure of one plan.
type drawn struct {
	name string
	a    *garden.Assessment
	tub  int
	svg  string
}

var plans = []string{
	"../../../examples/fernhollow.yaml", "../../../examples/saltbrook.yaml", "testdata/thirty.yaml",
	"../../garden/testdata/clean.yaml", "../../garden/testdata/crammed.yaml", "../../garden/testdata/foam.yaml",
	"../../garden/testdata/fractions.yaml", "../../garden/testdata/kit.yaml", "../../garden/testdata/polygon-rib.yaml",
	"../../garden/testdata/poured.yaml", "../../garden/testdata/round-still.yaml", "../../garden/testdata/several.yaml",
}

func assess(t *testing.T, name, text string) *garden.Assessment {
	t.Helper()
	p, problems := plan.Parse(name, []byte(text))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, Effort: lid.Quick})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func read(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

var (
	once sync.Once
	all  []drawn
)

// figures are all figures of all plans, at both widths.
func figures(t *testing.T) []drawn {
	t.Helper()
	once.Do(func() {
		for _, name := range plans {
			a := assess(t, name, read(t, name))
			for tub := range a.Tubs {
				all = append(all, of(a, tub)...)
			}
		}
	})
	return all
}

func of(a *garden.Assessment, tub int) []drawn {
	var out []drawn
	add := func(kind string, svg string, ok bool) {
		if ok {
			out = append(out, drawn{a.Garden + ": " + a.Tubs[tub].Name + " " + kind, a, tub, svg})
		}
	}
	for _, w := range []figure.Width{figure.Desk, figure.Hand} {
		for _, layout := range []string{"widest", "rows", "ruler"} {
			svg, ok := figure.Lid(a, tub, layout, w)
			add("lid "+layout+" "+w.String(), svg, ok)
			svg, ok = figure.Layout(a, tub, layout, w)
			add("layout "+layout+" "+w.String(), svg, ok)
		}
		svg, ok := figure.Section(a, tub, w)
		add("section "+w.String(), svg, ok)
	}
	svg, ok := figure.Today(a, tub)
	add("today", svg, ok)
	return out
}

// worded is a text with the box it takes at the widest face it may come out in:
// DejaVu Sans, which is its condensed cut stretched by ten ninths.
type worded struct {
	words string
	in    *node // the hole it belongs to, or nil
	quad  [4]scene.Point
}

func wordsOf(root *node) []worded {
	var out []worded
	var see func(n, hole *node)
	see = func(n, hole *node) {
		if n.has("hole") {
			hole = n
		}
		if n.name == "text" {
			out = append(out, worded{n.text, hole, quadOf(n)})
		}
		for _, k := range n.kids {
			see(k, hole)
		}
	}
	see(root, nil)
	return out
}

func quadOf(n *node) [4]scene.Point {
	size, face := 13.0, scene.Sans
	if n.has("sm") {
		size = 12
	}
	if n.has("b") {
		face = scene.SansBold
	}
	width := face.Width(n.text, size) / 0.9
	left := 0.0
	if n.has("mid") {
		left = -width / 2
	} else if n.has("end") {
		left = -width
	}
	at, turn := scene.Point{X: n.num("x"), Y: n.num("y")}, 0.0
	if move := n.attr["transform"]; move != "" {
		fields := strings.FieldsFunc(move, func(r rune) bool { return strings.ContainsRune("translateo() ", r) })
		at.X, _ = strconv.ParseFloat(fields[0], 64)
		at.Y, _ = strconv.ParseFloat(fields[1], 64)
		turn, _ = strconv.ParseFloat(fields[2], 64)
	}
	// Figures and capitals reach 0.73 em up; descenders are let go.
	quad := [4]scene.Point{{X: left}, {X: left + width}, {X: left + width, Y: -0.73 * size}, {X: left, Y: -0.73 * size}}
	for i := range quad {
		quad[i] = quad[i].Turned(turn).Plus(at)
	}
	return quad
}

// apart says whether a line parts two convex shapes (separating axes).
func apart(a, b []scene.Point) bool {
	for _, pair := range [2][2][]scene.Point{{a, b}, {b, a}} {
		p := pair[0]
		for i := range p {
			side := p[(i+1)%len(p)].Minus(p[i])
			axis := scene.Point{X: -side.Y, Y: side.X}
			if axis == (scene.Point{}) {
				continue
			}
			l0, h0 := span(pair[0], axis)
			l1, h1 := span(pair[1], axis)
			const slack = 0.05
			length := math.Hypot(axis.X, axis.Y)
			if h0 <= l1+slack*length || h1 <= l0+slack*length {
				return true
			}
		}
	}
	return false
}

func span(p []scene.Point, axis scene.Point) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, q := range p {
		v := q.X*axis.X + q.Y*axis.Y
		low, high = math.Min(low, v), math.Max(high, v)
	}
	return low, high
}
