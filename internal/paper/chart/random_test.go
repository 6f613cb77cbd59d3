package chart_test

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"rootbell/internal/paper/chart"
	"rootbell/internal/paper/figure"
	"rootbell/internal/paper/scene"
)

// anyRow is any row of days: of a day, of a term, of years.
func anyRow(t *rapid.T) chart.Days {
	d := february()
	d.From = d.From.Add(rapid.IntRange(-400, 400).Draw(t, "first day"))
	n := rapid.SampledFrom([]int{1, 2, 7, 14, 35, 35, 84, 182, 400, 4000}).Draw(t, "days")
	d.To = d.From.Add(n - 1)
	d.Now = d.From.At(0, dublin).Add(time.Duration(rapid.IntRange(-24, 24*(n+1)).Draw(t, "hours to now")) * time.Hour)
	return d
}

// anyChart is a series as a class may write it, with slips of the pen.
func anyChart(t *rapid.T, d chart.Days) chart.Chart {
	c := chart.Chart{Key: "x", Name: "pH", Decimals: rapid.IntRange(0, 3).Draw(t, "decimals"), Unit: rapid.SampledFrom([]string{"", "L", "mS/cm", "°F"}).Draw(t, "unit")}
	scale := rapid.SampledFrom([]float64{0.01, 0.3, 1, 20, 400, 30000}).Draw(t, "scale")
	if rapid.Bool().Draw(t, "limits") {
		c.Possible = chart.Range{Low: 0, High: 3 * scale}
		c.Shown = chart.Range{Low: scale / 2, High: scale}
	}
	span := d.To.Since(d.From) + 1
	n := rapid.SampledFrom([]int{0, 1, 2, 5, 20, 60, 140}).Draw(t, "readings")
	moments := make([]int, n)
	for i := range moments {
		moments[i] = rapid.IntRange(0, span*24*60-121).Draw(t, "minute")
	}
	slices.Sort(moments)
	for _, m := range moments {
		low := scale * float64(rapid.IntRange(-50, 200).Draw(t, "value")) / 100
		p := chart.Point{At: d.From.At(0, dublin).Add(time.Duration(m) * time.Minute), Low: low, High: low}
		switch rapid.IntRange(0, 12).Draw(t, "kind") {
		case 0:
			p.High += scale / 4
		case 1:
			p.Kind = chart.Doubtful
		case 2:
			p.Kind, p.Low, p.High = chart.Doubtful, p.Low*10, p.High*10
		case 3:
			p.Kind = chart.Struck
		}
		c.Points = append(c.Points, p)
		if rapid.IntRange(0, 6).Draw(t, "done") == 0 {
			c.Marks = append(c.Marks, chart.Mark{At: p.At, Words: rapid.SampledFrom([]string{"filled", "changed out", "fed"}).Draw(t, "deed")})
		}
	}
	c.Of = n
	for i := range rapid.IntRange(0, 3).Draw(t, "lines") {
		c.Lines = append(c.Lines, chart.Line{Value: scale * float64(rapid.IntRange(0, 100).Draw(t, "line")) / 100, Words: fmt.Sprintf("lowest line & < %d", i), Kind: chart.LineKind(i % 2)})
	}
	if rapid.IntRange(0, 3).Draw(t, "forecast") == 0 {
		c.Bands = append(c.Bands, anyBand(t, d, scale))
	}
	return c
}

func anyBand(t *rapid.T, d chart.Days, scale float64) []chart.Band {
	var run []chart.Band
	mid := scale
	for h := 0; h < 24*14; h += 12 {
		wide := scale * float64(h) / 600
		mid -= scale * float64(rapid.IntRange(0, 4).Draw(t, "fall")) / 100
		run = append(run, chart.Band{At: d.From.At(0, dublin).Add(time.Duration(h) * time.Hour), Low90: mid - 2*wide, Low50: mid - wide, Mid: mid, High50: mid + wide, High90: mid + 2*wide})
	}
	return run
}

// classes is every class that a chart may carry; the page's style sheet knows
// them all.
var classes = strings.Fields("fig chart water plant sm b lt mid end halo rd off g5 n tick cen lowl now-line b9 b5 be mm")

var classPattern = regexp.MustCompile(`class="([^"]*)"`)

// seriesPerCheck makes a thousand series of rapid's hundred checks.
const seriesPerCheck = 10

// Whatever is drawn: it is XML, the same each time, carries classes and no
// style, has 4 to 7 numbered level lines, and no text of it runs over another
// text, over a mark or out of the picture.
func TestAnySeriesIsDrawnCleanly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for range seriesPerCheck {
			d := anyRow(t)
			c := anyChart(t, d)
			for _, w := range bothWidths {
				drawnCleanly(t, c, d, w, rapid.Bool().Draw(t, "head"))
			}
		}
	})
}

func drawnCleanly(t *rapid.T, c chart.Chart, d chart.Days, w figure.Width, head bool) {
	svg := chart.Draw(c, d, w, head)
	if svg != chart.Draw(c, d, w, head) {
		t.Fatal("drawn otherwise the second time")
	}
	if strings.Contains(svg, "style=") || strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
		t.Fatal(svg)
	}
	for _, m := range classPattern.FindAllStringSubmatch(svg, -1) {
		for _, class := range strings.Fields(m[1]) {
			if !slices.Contains(classes, class) {
				t.Fatalf("class %q", class)
			}
		}
	}
	root := parsed(t, svg)
	axisOf(t, root)
	textKeepsClear(t, root)
}

func textKeepsClear(t fataler, root *node) {
	t.Helper()
	texts := root.all("text", "")
	boxes := make([]scene.Box, len(texts))
	for i, n := range texts {
		boxes[i] = boxOf(n)
		b := boxes[i]
		if b.Min.X < 0 || b.Min.Y < 0 || b.Max.X > root.num("width") || b.Max.Y > root.num("height") {
			t.Fatalf("%q is cut off: %v", n.text, b)
		}
		for j := range i {
			if b.Overlaps(boxes[j]) {
				t.Fatalf("%q runs over %q", n.text, texts[j].text)
			}
		}
		for _, ring := range root.all("circle", "rd") {
			at, r := scene.Point{X: ring.num("cx"), Y: ring.num("cy")}, ring.num("r")
			if near := (scene.Point{X: min(max(at.X, b.Min.X), b.Max.X), Y: min(max(at.Y, b.Min.Y), b.Max.Y)}); near.Distance(at) < r {
				t.Fatalf("%q runs over the reading at %v", n.text, at)
			}
		}
	}
}

// Every sure reading on the days shown is drawn, and lies where the axis says.
func TestEveryReadingIsDrawn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyRow(t)
		c := anyChart(t, d)
		root := parsed(t, chart.Draw(c, d, figure.Desk, false))
		a := axisOf(t, root)
		if n := len(root.all("circle", "rd")) + len(root.all("rect", "rd")) + len(root.all("path", "rd")); n < len(c.Points) {
			t.Fatalf("%d marks for %d readings", n, len(c.Points))
		}
		var drawn []float64
		for _, ring := range root.all("circle", "rd") {
			drawn = append(drawn, a.value(ring.num("cy")))
		}
		for _, p := range c.Points {
			if p.Kind != chart.Sure || p.High != p.Low || p.Low < math.Min(a.v0, a.v1) || p.Low > math.Max(a.v0, a.v1) {
				continue
			}
			if !slices.ContainsFunc(drawn, func(v float64) bool { return math.Abs(v-p.Low) <= a.perPX() }) {
				t.Fatalf("%v is not drawn", p.Low)
			}
		}
	})
}
