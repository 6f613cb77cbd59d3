package figure

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/paper/scene"
)

// A disc's contour is its circle: every point within a cell's error of the
// radius, and the area that πr² says.
func TestContourOfADisc(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(20, 200).Draw(t, "radius")
		c := scene.Point{X: rapid.Float64Range(-50, 50).Draw(t, "x"), Y: rapid.Float64Range(-50, 50).Draw(t, "y")}
		field := func(p scene.Point) float64 { return r - p.Distance(c) }
		paths := contour(field, (scene.Box{Min: c, Max: c}).Grown(r), 2, 0.05)
		if len(paths) != 1 {
			t.Fatalf("%d paths round one disc", len(paths))
		}
		area := 0.0
		v := paths[0].Vertices
		for i, p := range v {
			q := v[(i+1)%len(v)]
			area += (p.X*q.Y - q.X*p.Y) / 2
			// A straight cut across a cell of 2 mm misses the arc by at most
			// 2²·2/8r = 1/r mm.
			if off := math.Abs(p.Distance(c) - r); off > 1/r {
				t.Errorf("a point lies %g off the circle", off)
			}
		}
		// Thinning to 0.05 mm and the cells take off at most that band.
		if want := math.Pi * r * r; math.Abs(math.Abs(area)-want) > 2*math.Pi*r*(0.05+1/r) {
			t.Errorf("area %g, want %g", area, want)
		}
	})
}

// A hole in the middle and two islands are loops of their own, each closed.
func TestContourOfSeveralPieces(t *testing.T) {
	ring := func(p scene.Point) float64 {
		d := p.Distance(scene.Point{})
		return math.Min(40-d, d-15)
	}
	islands := func(p scene.Point) float64 {
		return math.Max(15-p.Distance(scene.Point{X: -20}), 15-p.Distance(scene.Point{X: 20}))
	}
	none := func(scene.Point) float64 { return -1 }
	within := scene.Box{Min: scene.Point{X: -41, Y: -41}, Max: scene.Point{X: 41, Y: 41}}
	for name, c := range map[string]struct {
		field func(scene.Point) float64
		want  int
	}{"ring": {ring, 2}, "islands": {islands, 2}, "nothing": {none, 0}} {
		if got := len(contour(c.field, within, 1, 0.1)); got != c.want {
			t.Errorf("%s: %d loops, want %d", name, got, c.want)
		}
	}
}
