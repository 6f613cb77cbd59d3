package sheet_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// The sheet's promise: a mark is true to 0.1 mm. A distance has two ends.
const (
	markMM     = 0.1
	distanceMM = 0.15
)

// ruler measures the pages of a printed lid sheet, as a person would who lays
// them cross on cross. The lid only tells it where to look, within 2 mm.
type ruler struct {
	paper   scene.Size
	tiles   []sheet.Tile
	pages   []picture
	offset  []scene.Point // from a page to the first page, as the crosses say
	reports []string
}

const lookMM = 2

func (r *ruler) report(format string, args ...any) {
	r.reports = append(r.reports, fmt.Sprintf(format, args...))
}

func (r *ruler) ink(page int) func(scene.Point) float64 {
	return func(p scene.Point) float64 { return r.pages[page].ink(r.paper, p.X, p.Y) }
}

// onPage is where a place of the drawing should be on a page.
func (r *ruler) onPage(page int, p scene.Point) scene.Point {
	return p.Minus(r.tiles[page].Shows.Min).Plus(r.tiles[page].Window.Min)
}

// cross finds a cross near a place on a page; its lines are read between near
// and far mm from the middle.
func (r *ruler) cross(page int, at scene.Point, near, far float64) scene.Point {
	ink := r.ink(page)
	for range 2 {
		dx := ridge(ink, at, scene.Point{X: 1}, lookMM, near, far)
		dy := ridge(ink, at, scene.Point{Y: 1}, lookMM, near, far)
		at = at.Plus(scene.Point{X: dx, Y: dy})
	}
	return at
}

// join lays the pages together by their crosses, beginning with the first.
func (r *ruler) join() {
	r.offset = make([]scene.Point, len(r.pages))
	joined := make([]bool, len(r.pages))
	joined[0] = true
	for range r.pages {
		for a := range r.pages {
			for b := range r.pages {
				if joined[a] && !joined[b] && r.joinTo(a, b) {
					joined[b] = true
				}
			}
		}
	}
	if i := slices.Index(joined, false); i >= 0 {
		r.report("page %d has no cross in common with the others", i+1)
	}
}

func (r *ruler) joinTo(a, b int) bool {
	var steps []scene.Point
	for name, at := range r.tiles[a].Crosses {
		if _, both := r.tiles[b].Crosses[name]; !both {
			continue
		}
		one := r.cross(a, r.onPage(a, at), 1, 3.5)
		two := r.cross(b, r.onPage(b, at), 1, 3.5)
		steps = append(steps, one.Minus(two))
	}
	if len(steps) < 2 {
		return false
	}
	if d := steps[0].Distance(steps[1]); !(d <= markMM) {
		r.report("pages %d and %d: the two crosses of a seam disagree by %.2f mm", a+1, b+1, d)
	}
	r.offset[b] = r.offset[a].Plus(steps[0].Plus(steps[1]).Times(0.5))
	return true
}

// pageOf is the page that shows a place farthest from its window's edge.
func (r *ruler) pageOf(p scene.Point) int {
	best, most := 0, math.Inf(-1)
	for i, tile := range r.tiles {
		s := tile.Shows
		inside := min(p.X-s.Min.X, s.Max.X-p.X, p.Y-s.Min.Y, s.Max.Y-p.Y)
		if inside > most {
			best, most = i, inside
		}
	}
	return best
}

// circle finds a drawn circle's middle and radius from the points where rays
// meet its line, on every page that shows them.
func (r *ruler) circle(h sheet.Hole) (middle scene.Point, radius float64) {
	var points []scene.Point
	for degrees := 0.0; degrees < 360; degrees += 3 {
		if math.Mod(degrees, 90) < 12 || math.Mod(degrees, 90) > 78 {
			continue // the ticks
		}
		ray := scene.Point{X: 1}.Turned(degrees)
		at := h.At().Plus(ray.Times(h.SizeMM / 2))
		for page, tile := range r.tiles {
			around := (scene.Box{Min: at, Max: at}).Grown(lookMM + 0.5)
			if !tile.Shows.Holds(around, 0) {
				continue
			}
			here := r.onPage(page, at)
			off := ridge(r.ink(page), here, ray, lookMM, 0, 0.2)
			points = append(points, here.Plus(ray.Times(off)).Plus(r.offset[page]))
		}
	}
	return fit(points)
}

// fit is the circle through points, the median of many triples' circles being
// robust against a ray that met another line.
func fit(points []scene.Point) (scene.Point, float64) {
	var xs, ys, rs []float64
	n := len(points)
	for i := range n {
		a, b, c := points[i], points[(i+n/3)%n], points[(i+2*n/3)%n]
		d := 2 * (a.X*(b.Y-c.Y) + b.X*(c.Y-a.Y) + c.X*(a.Y-b.Y))
		a2, b2, c2 := a.X*a.X+a.Y*a.Y, b.X*b.X+b.Y*b.Y, c.X*c.X+c.Y*c.Y
		m := scene.Point{
			X: (a2*(b.Y-c.Y) + b2*(c.Y-a.Y) + c2*(a.Y-b.Y)) / d,
			Y: (a2*(c.X-b.X) + b2*(a.X-c.X) + c2*(b.X-a.X)) / d,
		}
		xs, ys, rs = append(xs, m.X), append(ys, m.Y), append(rs, m.Distance(a))
	}
	return scene.Point{X: median(xs), Y: median(ys)}, median(rs)
}

func median(v []float64) float64 {
	if len(v) == 0 {
		return math.NaN()
	}
	slices.Sort(v)
	return (v[(len(v)-1)/2] + v[len(v)/2]) / 2
}

// bar measures a check bar from its start, along its length.
func (r *ruler) bar(page int, from, along scene.Point, length float64) {
	ends := [2]float64{}
	for i, at := range []scene.Point{from, from.Plus(along.Times(length))} {
		ends[i] = ridge(r.ink(page), at, along, lookMM, 0.4, 1.3)
	}
	got := length + ends[1] - ends[0]
	if !(math.Abs(got-length) <= markMM) {
		r.report("page %d: a bar of %.1f mm measures %.2f mm", page+1, length, got)
	}
}

// measure compares the printed sheet with the lid it should show.
func measure(t *testing.T, pdf []byte, l sheet.Lid, paper scene.Size, dpi float64) []string {
	t.Helper()
	size, tiles := sheet.TilesOf(l, paper)
	pages := rendered(t, pdf, dpi)
	r := ruler{paper: size, tiles: tiles, pages: pages[len(pages)-len(tiles):]}
	r.join()
	for page, tile := range r.tiles {
		foot := scene.Point{X: sheet.MarginMM + 1, Y: sheet.MarginMM + sheet.FootMM - 8}
		r.bar(page, foot, scene.Point{X: 1}, 100)
		r.bar(page, foot.Minus(scene.Point{Y: 7}), scene.Point{X: 1}, 101.6)
		r.bar(page, tile.Upright[0], scene.Point{Y: 1}, 100)
		r.bar(page, tile.Upright[1], scene.Point{Y: 1}, 101.6)
	}
	marks := r.holes(l)
	for i, a := range l.Holes {
		for j, b := range l.Holes[:i] {
			got, want := marks[i].Distance(marks[j]), a.At().Distance(b.At())
			if !(math.Abs(got-want) <= distanceMM) {
				r.report("holes %d and %d: %.2f mm apart, the plan says %.2f", a.N, b.N, got, want)
			}
		}
	}
	r.edges(l, marks)
	return r.reports
}

func (r *ruler) holes(l sheet.Lid) []scene.Point {
	marks := make([]scene.Point, len(l.Holes))
	for i, h := range l.Holes {
		page := r.pageOf(h.At())
		marks[i] = r.cross(page, r.onPage(page, h.At()), 1, 4).Plus(r.offset[page])
		middle, radius := r.circle(h)
		if d := middle.Distance(marks[i]); !(d <= markMM) {
			r.report("hole %d: its circle stands %.2f mm off its cross", h.N, d)
		}
		if !(math.Abs(radius-h.SizeMM/2) <= markMM) {
			r.report("hole %d: its circle has a radius of %.2f mm, the plan says %.2f", h.N, radius, h.SizeMM/2)
		}
	}
	return marks
}

// edges measures from the middle of the lower and the left edge to each hole.
func (r *ruler) edges(l sheet.Lid, marks []scene.Point) {
	box := l.Outline.Bounds()
	left := scene.Point{X: box.Min.X, Y: box.Min.Y + box.Height()*0.3}
	low := scene.Point{X: box.Min.X + box.Width()*0.5, Y: box.Min.Y}
	page := r.pageOf(left)
	x := r.onPage(page, left).X + ridge(r.ink(page), r.onPage(page, left), scene.Point{X: 1}, lookMM, 0, 3) + r.offset[page].X
	page = r.pageOf(low)
	y := r.onPage(page, low).Y + ridge(r.ink(page), r.onPage(page, low), scene.Point{Y: 1}, lookMM, 0, 3) + r.offset[page].Y
	for i, h := range l.Holes {
		if got := marks[i].X - x; !(math.Abs(got-(h.XMM-box.Min.X)) <= distanceMM) {
			r.report("hole %d: %.2f mm from the left edge, the plan says %.2f", h.N, got, h.XMM)
		}
		if got := marks[i].Y - y; !(math.Abs(got-(h.YMM-box.Min.Y)) <= distanceMM) {
			r.report("hole %d: %.2f mm from the lower edge, the plan says %.2f", h.N, got, h.YMM)
		}
	}
}

const trueDPI = perMM * 25.4

func papers() map[string]scene.Size {
	return map[string]scene.Size{"A4": scene.A4, "Letter": scene.Letter}
}

func printed(t *testing.T, l sheet.Lid, paper scene.Size) []byte {
	t.Helper()
	pdf, err := sheet.LidPDF(l, paper)
	if err != nil {
		t.Fatal(err)
	}
	return pdf
}

func TestLidSheetIsTrueToATenthOfAMillimetre(t *testing.T) {
	for name, paper := range papers() {
		t.Run(name, func(t *testing.T) {
			for _, l := range []sheet.Lid{heron(), wren()} {
				for _, report := range measure(t, printed(t, l, paper), l, paper, trueDPI) {
					t.Errorf("%s: %s", l.Tub, report)
				}
			}
		})
	}
}

// The check above is worth something only if it finds an error.
func TestMeasuringFindsHalfAMillimetre(t *testing.T) {
	cases := map[string]func(*sheet.Lid){
		"a hole to the right": func(l *sheet.Lid) { l.Holes[2].XMM += 0.5 },
		"a hole up":           func(l *sheet.Lid) { l.Holes[1].YMM += 0.5 },
		"a hole too wide":     func(l *sheet.Lid) { l.Holes[0].SizeMM += 0.5 },
		"the lid's edge":      func(l *sheet.Lid) { l.Outline.Vertices[0].Y -= 0.5; l.Outline.Vertices[1].Y -= 0.5 },
	}
	for name, plant := range cases {
		t.Run(name, func(t *testing.T) {
			wrong := wren()
			plant(&wrong)
			if len(measure(t, printed(t, wrong, scene.A4), wren(), scene.A4, trueDPI)) == 0 {
				t.Error("an error of 0.5 mm was not found")
			}
		})
	}
	t.Run("printed at 99.5 %", func(t *testing.T) {
		reports := measure(t, printed(t, wren(), scene.A4), wren(), scene.A4, trueDPI*0.995)
		if len(reports) == 0 {
			t.Error("a sheet printed too small was not found")
		}
	})
}
