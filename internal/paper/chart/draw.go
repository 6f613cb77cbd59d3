package chart

import (
	"fmt"
	"math"
	"strings"

	"rootbell/internal/paper/figure"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// drawing is one chart being drawn.
type drawing struct {
	pen
	Chart
	row    row
	scale  scale
	top    float64 // of the ground of the values
	foot   float64
	lane   float64       // base line of what was done, over the ground
	head   float64       // base line of the numbers of the days; 0: none
	edge   float64       // left of the ground
	beside [][]lettering // where numbers of readings at the edge may stand
	left   []string      // words that found no room
}

// Sizes in px.
const (
	deskPX, handPX   = 728.0, 328.0
	leftPX, rightPX  = 44.0, 2.0 // beside the ground; more where a number needs it
	deskHigh         = 150.0     // of the ground
	handHigh         = 132.0
	lanePX           = 24.0 // for what was done, and the unit
	headPX           = 30.0 // for the numbers and letters of the days
	footPX           = 20.0 // for the dates
	numberGap        = 6.0  // between a number and the ground
	widthOfDayNumber = 15.0 // a day this wide bears its number
)

func frameOf(c Chart, d Days, w figure.Width, head bool) *drawing {
	f := &drawing{Chart: c}
	high := deskHigh
	f.width = deskPX
	if w == figure.Hand {
		f.width, high = handPX, handHigh
	}
	f.scale = scaleOf(&f.Chart)
	f.edge = leftPX
	for _, v := range f.scale.values() {
		f.edge = max(f.edge, long(f.scale.label(v), "")+numberGap+1)
	}
	f.row = rowOf(d, f.edge, f.width-f.edge-rightPX)
	if head && f.row.day >= widthOfDayNumber {
		f.head = 12
		f.top = headPX
	}
	f.lane = f.top + lanePX - 7
	f.top += lanePX
	f.foot = f.top + high
	f.height = f.foot + footPX
	return f
}

// y is where a value lies.
func (f *drawing) y(v float64) float64 {
	return f.foot - (v-f.scale.low)/(f.scale.high-f.scale.low)*(f.foot-f.top)
}

// inside tells whether a value lies on the axis.
func (f *drawing) inside(v float64) bool { return v >= f.scale.low && v <= f.scale.high }

func (f *drawing) draw() {
	f.hatching()
	f.levels()
	f.dates()
	f.bands()
	f.levelLines()
	f.todayLine()
	f.done()
	f.joined()
	f.points()
	f.levelWords()
	f.bandWords()
	f.kindWords()
}

// hatching marks the closed days from top to bottom: all of them as one path,
// because a club that meets twice a week has many.
func (f *drawing) hatching() {
	const least = 3 // px: less is no hatching
	var d strings.Builder
	for _, s := range f.row.closed() {
		from, to := f.row.start(s.From), f.row.start(s.To.Add(1))
		if to-from < least {
			continue
		}
		d.WriteString("M" + px(from) + " " + px(f.top) + "H" + px(to) + "V" + px(f.foot) + "H" + px(from) + "Z")
	}
	if d.Len() > 0 {
		f.printf(`<path class="off" fill="url(#hatch)" d="%s"/>`, d.String())
	}
}

// levels draws the level lines and their numbers.
func (f *drawing) levels() {
	right := f.row.right()
	for _, v := range f.scale.values() {
		y := f.y(v)
		f.line("g5", scene.Point{X: f.edge, Y: y}, scene.Point{X: right, Y: y}, false)
		f.text(lettering{words: f.scale.label(v), anchor: scene.End, at: scene.Point{X: f.edge - numberGap, Y: y + 4}})
	}
	if f.Unit != "" {
		f.place(lettering{words: f.Unit, class: "lt", at: scene.Point{X: 2, Y: f.lane - 6}})
	}
	f.line("n", scene.Point{X: f.edge, Y: f.top}, scene.Point{X: f.edge, Y: f.foot}, true)
	f.line("n", scene.Point{X: f.edge, Y: f.foot}, scene.Point{X: right, Y: f.foot}, true)
}

// dates writes the days over the first chart, and dates at the foot.
func (f *drawing) dates() {
	if f.head > 0 {
		for i := range f.row.count() {
			f.dayHead(f.row.From.Add(i))
		}
	}
	var ticks strings.Builder
	if f.row.day >= 4 {
		for i := 1; i <= f.row.count(); i++ {
			ticks.WriteString("M" + px(f.edge+float64(i)*f.row.day) + " " + px(f.foot) + "v3")
		}
	}
	for _, d := range f.row.dates(func(words string) float64 { return long(words, "") }) {
		x := f.row.start(d.day)
		ticks.WriteString("M" + px(x) + " " + px(f.foot) + "v7")
		f.place(lettering{words: d.words, at: scene.Point{X: x + 3, Y: f.foot + 15}},
			lettering{words: d.words, anchor: scene.End, at: scene.Point{X: x - 3, Y: f.foot + 15}})
	}
	f.printf(`<path class="n" d="%s"/>`, ticks.String())
}

// dayHead is a day's number and the letter of its weekday.
func (f *drawing) dayHead(d term.Date) {
	class := ""
	switch {
	case d == f.row.today():
		class = "b"
	case f.row.shut(d):
		class = "lt"
	}
	x := f.row.start(d) + f.row.day/2
	f.text(lettering{words: fmt.Sprint(d.Day), class: class, anchor: scene.Middle, at: scene.Point{X: x, Y: f.head}})
	f.text(lettering{words: d.Weekday().String()[:1], class: class, anchor: scene.Middle, at: scene.Point{X: x, Y: f.head + 14}})
}

// todayLine is a thin upright line through this moment.
func (f *drawing) todayLine() {
	x, shown := f.row.at(f.row.Now)
	if f.row.Now.IsZero() || !shown {
		return
	}
	f.line("n now-line", scene.Point{X: x, Y: f.lane + 2}, scene.Point{X: x, Y: f.foot}, true)
	f.lettered("today", "b", x)
}

// lettered writes a word in the lane over the ground, beside a place.
func (f *drawing) lettered(words, class string, x float64) bool {
	at := scene.Point{X: x, Y: f.lane}
	var choices []lettering
	for _, anchor := range []scene.Anchor{scene.Middle, scene.Start, scene.End} {
		choices = append(choices, lettering{words: words, class: class, at: at, anchor: anchor})
	}
	return f.place(choices...)
}

// done writes what was done over the ground, with a stroke down to its top.
func (f *drawing) done() {
	told := map[string]bool{}
	for _, m := range f.Marks {
		x, shown := f.row.at(m.At)
		if !shown {
			continue
		}
		f.line("tick", scene.Point{X: x, Y: f.top - 4}, scene.Point{X: x, Y: f.top + 5}, false)
		if !f.lettered(m.Words, "", x) && !told[m.Words] {
			f.leave(m.Words)
		}
		told[m.Words] = true
	}
}

// mostLeft is how many words that found no room the label says.
const mostLeft = 8

// leave keeps a word that found no room for the label.
func (f *drawing) leave(words string) {
	if len(f.left) == mostLeft {
		return
	}
	for _, w := range f.left {
		if w == words {
			return
		}
	}
	f.left = append(f.left, words)
}

// label is what the chart says to those who do not see it.
func (f *drawing) label() string {
	parts := []string{f.Name + ", " + f.row.From.Words() + " to " + f.row.To.Long() + "."}
	if f.Says != "" {
		parts = append(parts, f.Says)
	}
	if len(f.left) > 0 {
		parts = append(parts, "Also: "+strings.Join(f.left, "; ")+".")
	}
	return strings.Join(append(parts, "The same values are in the table."), " ")
}

func (f *drawing) svg(w figure.Width) string {
	return fmt.Sprintf(`<svg class="%s" id="chart-%s-%s" width="%s" height="%s" viewBox="0 0 %s %s" role="img" aria-label="%s">%s</svg>`,
		strings.TrimSpace("fig chart "+f.Tint), escaped(f.Key), w, px(f.width), px(f.height), px(f.width), px(f.height), escaped(f.label()), f.out.String())
}

// Note says of a chart how its readings were thinned; empty where all are drawn.
func Note(c Chart) string {
	drawn := 0
	for _, p := range c.Points {
		if p.Kind != Struck {
			drawn++
		}
	}
	if c.Of <= drawn {
		return ""
	}
	return fmt.Sprintf("%s readings, thinned for the drawing; highest and lowest are kept.", grouped(c.Of))
}

// grouped writes a count with its thousands parted.
func grouped(n int) string {
	text := fmt.Sprint(n)
	for i := len(text) - 3; i > 0; i -= 3 {
		text = text[:i] + "," + text[i:]
	}
	return text
}

// near tells whether two px are the same on any screen.
func near(a, b float64) bool { return math.Abs(a-b) < 0.05 }
