package scene

import (
	"math"
	"slices"
)

// flatMM is how far a chord may leave its arc where a path is only filled with
// lines: a tenth of the thinnest line.
const flatMM = 0.02

// mostStrokes bounds the strokes of one hatching, so that a wrong size in a
// plan cannot ask for millions; wider hatching is drawn instead.
const mostStrokes = 400

// Hatch fills a closed path with parallel strokes, spacing mm apart and turned
// by degrees from the x axis. Strokes lie on multiples of the spacing from the
// origin, so that neighbours in one drawing match.
func Hatch(area Path, spacing, degrees float64, class Class) []Element {
	if !area.finite() || !(spacing > 0) {
		return nil
	}
	level := area.Mapped(func(p Point) Point { return p.Turned(-degrees) })
	corners := level.Flat(flatMM)
	box := level.Bounds()
	if len(corners) < 3 {
		return nil
	}
	for box.Height()/spacing > mostStrokes {
		spacing *= 2
	}
	var out []Element
	for row := math.Ceil(box.Min.Y / spacing); row*spacing < box.Max.Y; row++ {
		y := row * spacing
		crossings := crossings(corners, y)
		for i := 0; i+1 < len(crossings); i += 2 {
			from, to := Point{crossings[i], y}, Point{crossings[i+1], y}
			out = append(out, Line{From: from.Turned(degrees), To: to.Turned(degrees), Class: class})
		}
	}
	return out
}

// Crossed fills a closed path with strokes both ways at 45°: keep clear.
func Crossed(area Path, spacing float64, class Class) []Element {
	return append(Hatch(area, spacing, 45, class), Hatch(area, spacing, -45, class)...)
}

// crossings are the x at which a level line meets the polygon, in order. Each
// side counts from its lower end up to but without its upper end, so a corner
// is met once.
func crossings(corners []Point, y float64) []float64 {
	var out []float64
	for i, p := range corners {
		q := corners[(i+1)%len(corners)]
		if p.Y > q.Y {
			p, q = q, p
		}
		if p.Y <= y && y < q.Y {
			out = append(out, p.X+(q.X-p.X)*(y-p.Y)/(q.Y-p.Y))
		}
	}
	slices.Sort(out)
	return out
}

// Inside says whether the point lies inside a closed path.
func (p Path) Inside(at Point) bool {
	inside := false
	for _, x := range crossings(p.Flat(flatMM), at.Y) {
		if x > at.X {
			inside = !inside
		}
	}
	return inside
}
