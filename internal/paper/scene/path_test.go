package scene_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/plane"
	"rootbell/internal/paper/scene"
)

func TestBoundsOfRoundPaths(t *testing.T) {
	cases := map[string]struct {
		path scene.Path
		want scene.Box
	}{
		"disc":              {scene.Disc(scene.Point{X: 5, Y: 7}, 3), scene.Box{Min: scene.Point{X: 2, Y: 4}, Max: scene.Point{X: 8, Y: 10}}},
		"rounded rectangle": {scene.RoundedRectangle(scene.BoxAt(scene.Point{}, 40, 20), 6), scene.BoxAt(scene.Point{}, 40, 20)},
		"half disc below":   {scene.Path{Vertices: []scene.Vertex{{Bulge: 1}, {Point: scene.Point{X: 4}}}, Closed: true}, scene.Box{Min: scene.Point{Y: -2}, Max: scene.Point{X: 4}}},
	}
	for name, c := range cases {
		got := c.path.Bounds()
		if got.Min.Distance(c.want.Min)+got.Max.Distance(c.want.Max) > 1e-9 {
			t.Errorf("%s: bounds %v, want %v", name, got, c.want)
		}
	}
}

func area(points []scene.Point) float64 {
	sum := 0.0
	for i, p := range points {
		q := points[(i+1)%len(points)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return sum / 2
}

func TestFlatKeepsTheArea(t *testing.T) {
	disc := scene.Disc(scene.Point{X: -3, Y: 8}, 50).Flat(0.001)
	if got := area(disc); math.Abs(got-math.Pi*2500) > 0.4 {
		t.Errorf("a disc of 50 mm has %g mm², want %g", got, math.Pi*2500)
	}
	lid := scene.RoundedRectangle(scene.BoxAt(scene.Point{}, 540, 380), 40).Flat(0.001)
	want := 540*380 - (4-math.Pi)*40*40
	if got := area(lid); math.Abs(got-want) > 1 {
		t.Errorf("a lid has %g mm², want %g", got, want)
	}
}

func TestHatchStaysInsideAndCoversTheArea(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width, height := rapid.Float64Range(5, 60).Draw(t, "width"), rapid.Float64Range(5, 60).Draw(t, "height")
		radius := rapid.Float64Range(0, 30).Draw(t, "radius")
		turn := rapid.Float64Range(-90, 90).Draw(t, "turn")
		path := scene.RoundedRectangle(scene.BoxAt(scene.Point{X: 3, Y: -7}, width, height), radius)
		const spacing = 0.5
		length := 0.0
		for _, e := range scene.Hatch(path, spacing, turn, scene.Thin) {
			line := e.(scene.Line)
			if !path.Bounds().Grown(1e-6).Holds(line.Bounds(), 0) {
				t.Fatalf("a stroke %v leaves the shape", line)
			}
			length += line.From.Distance(line.To)
		}
		// Strokes a spacing apart stand for strips of that width.
		want := area(path.Flat(0.001))
		if math.Abs(length*spacing-want) > spacing*(width+height) {
			t.Fatalf("strokes cover %g mm² of %g", length*spacing, want)
		}
	})
}

func TestPathOfAnOutlineOfThePlane(t *testing.T) {
	outline := plane.Outline{
		plane.Segment{A: plane.Point{X: 0, Y: 0}, B: plane.Point{X: 10, Y: 0}},
		plane.Arc{Centre: plane.Point{X: 10, Y: 5}, Radius: 5, From: -math.Pi / 2, Sweep: math.Pi},
		plane.Segment{A: plane.Point{X: 10, Y: 10}, B: plane.Point{X: 0, Y: 10}},
		plane.Segment{A: plane.Point{X: 0, Y: 10}, B: plane.Point{X: 0, Y: 0}},
	}
	path := scene.PathOf(outline)
	if got := path.Bounds(); math.Abs(got.Max.X-15) > 1e-9 || math.Abs(got.Max.Y-10) > 1e-9 {
		t.Errorf("bounds %v", got)
	}
	if got := area(path.Flat(1e-4)); math.Abs(got-outline.Area()) > 0.01 {
		t.Errorf("area %g, the outline has %g", got, outline.Area())
	}
}

func TestSVGArcRunsTheRightWay(t *testing.T) {
	// Counter-clockwise on paper, y up, is against the clock in SVG: sweep flag 0.
	drawing := scene.Drawing{
		Title: "a", Frame: scene.BoxAt(scene.Point{}, 10, 10),
		Elements: []scene.Element{scene.Shape{Path: scene.Disc(scene.Point{X: 5, Y: 5}, 3), Class: scene.Edge}},
	}
	if svg := string(drawing.SVG()); !strings.Contains(svg, "M8 5A3 3 0 0 0 2 5A3 3 0 0 0 8 5Z") {
		t.Errorf("the disc is drawn as\n%s", svg)
	}
}
