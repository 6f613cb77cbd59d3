package chart_test

import (
	"encoding/xml"
	"io"
	"math"
	"strconv"
	"strings"
	"time"

	"rootbell/internal/paper/chart"
	"rootbell/internal/paper/figure"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// node is one element of a chart as a reader of XML sees it.
type node struct {
	name string
	attr map[string]string
	text string
	kids []*node
}

type fataler interface {
	Helper()
	Fatalf(format string, args ...any)
}

func parsed(t fataler, svg string) *node {
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
			t.Fatalf("not XML: %v\n%s", err, svg)
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

// all are the elements of a name and a class; an empty class stands for any.
func (n *node) all(name, class string) []*node {
	var out []*node
	for _, k := range n.kids {
		if k.name == name && (class == "" || k.has(class)) {
			out = append(out, k)
		}
	}
	return out
}

func (n *node) words() []string {
	var out []string
	for _, k := range n.all("text", "") {
		out = append(out, k.text)
	}
	return out
}

// axis reads a chart as somebody with a ruler does: from two numbers at the
// axis and their level lines to the value at a height.
type axis struct{ y0, v0, y1, v1 float64 }

func axisOf(t fataler, root *node) axis {
	t.Helper()
	type level struct{ y, v float64 }
	var levels []level
	for _, line := range root.all("path", "g5") {
		y := points(line)[0].Y
		for _, text := range root.all("text", "end") {
			v, err := strconv.ParseFloat(strings.ReplaceAll(text.text, "−", "-"), 64)
			if err == nil && text.has("end") && text.num("x") < points(line)[0].X && math.Abs(text.num("y")-y-4) < 0.2 {
				levels = append(levels, level{y, v})
			}
		}
	}
	if n := len(levels); n < 4 || n > 7 {
		t.Fatalf("%d level lines with a number, 4 to 7 are the rule: %v", n, levels)
	}
	first, last := levels[0], levels[len(levels)-1]
	return axis{first.y, first.v, last.y, last.v}
}

func (a axis) value(y float64) float64 { return a.v0 + (y-a.y0)/(a.y1-a.y0)*(a.v1-a.v0) }

// perPX is the value of a pixel.
func (a axis) perPX() float64 { return math.Abs((a.v1 - a.v0) / (a.y1 - a.y0)) }

// points are the places a path of straight lines goes through.
func points(n *node) []scene.Point {
	var out []scene.Point
	for part := range strings.FieldsFuncSeq(n.attr["d"], func(r rune) bool { return r == 'M' || r == 'L' || r == 'Z' }) {
		x, y, ok := strings.Cut(part, " ")
		if !ok {
			continue
		}
		px, _ := strconv.ParseFloat(x, 64)
		py, _ := strconv.ParseFloat(y, 64)
		out = append(out, scene.Point{X: px, Y: py})
	}
	return out
}

// boxOf is the room a text takes at the widest face it may come out in.
func boxOf(n *node) scene.Box {
	face := scene.Sans
	if n.has("b") {
		face = scene.SansBold
	}
	width := face.Width(n.text, 12) / 0.9
	x := n.num("x")
	if n.has("mid") {
		x -= width / 2
	} else if n.has("end") {
		x -= width
	}
	return scene.Box{Min: scene.Point{X: x, Y: n.num("y") - 0.73*12}, Max: scene.Point{X: x + width, Y: n.num("y")}}
}

var dublin = zone("Europe/Dublin")

func zone(name string) *time.Location {
	z, err := time.LoadLocation(name)
	if err != nil {
		panic(err)
	}
	return z
}

func date(text string) term.Date {
	d, err := term.ParseDate(text)
	if err != nil {
		panic(err)
	}
	return d
}

// february is five weeks of a spring term with a break, as on 10 February.
func february() chart.Days {
	calendar := term.New(term.Given{
		Terms:  []term.Span{{From: date("2027-01-11"), To: date("2027-04-02")}},
		Closed: []term.Closure{{Span: term.Span{From: date("2027-02-15"), To: date("2027-02-19")}, Why: "break"}},
	})
	return chart.Days{From: date("2027-01-25"), To: date("2027-02-28"), Zone: dublin, Calendar: calendar, Now: time.Date(2027, 2, 10, 8, 30, 0, 0, dublin)}
}

var bothWidths = []figure.Width{figure.Desk, figure.Hand}
