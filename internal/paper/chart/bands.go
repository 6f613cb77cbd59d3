package chart

import (
	"slices"

	"rootbell/internal/paper/scene"
)

// bands draws what may come: pale for 9 in 10 cases with fine dashes at both
// edges, deeper for 5 in 10, a line through the middle.
func (f *drawing) bands() {
	for _, run := range f.Bands {
		at := func(value func(Band) float64) []scene.Point {
			var out []scene.Point
			for _, b := range run {
				x, shown := f.row.at(b.At)
				if !shown || !b.whole() {
					continue
				}
				out = append(out, scene.Point{X: x, Y: f.y(f.onAxis(value(b)))})
			}
			return out
		}
		low90, high90 := at(func(b Band) float64 { return b.Low90 }), at(func(b Band) float64 { return b.High90 })
		low50, high50 := at(func(b Band) float64 { return b.Low50 }), at(func(b Band) float64 { return b.High50 })
		middle := at(func(b Band) float64 { return b.Mid })
		if len(middle) < 2 {
			continue
		}
		f.printf(`<path class="b9" d="%sZ"/><path class="b5" d="%sZ"/>`, chain(around(low90, high90)), chain(around(low50, high50)))
		f.printf(`<path class="be" d="%s%s"/><path class="mm" d="%s"/>`, chain(low90), chain(high90), chain(middle))
		for i := 1; i < len(middle); i++ {
			for _, line := range [][]scene.Point{low90, high90, middle} {
				f.lines = append(f.lines, segment{line[i-1], line[i]})
			}
		}
	}
}

func (b Band) whole() bool {
	for _, v := range []float64{b.Low90, b.Low50, b.Mid, b.High50, b.High90} {
		if !finite(v) {
			return false
		}
	}
	return true
}

// around is a band's outline.
func around(low, high []scene.Point) []scene.Point {
	back := slices.Clone(high)
	slices.Reverse(back)
	return append(slices.Clone(low), back...)
}

// bandWords names the parts of the last band, by leaders.
func (f *drawing) bandWords() {
	for _, run := range slices.Backward(f.Bands) {
		if len(run) < 2 {
			continue
		}
		for _, part := range []struct {
			words string
			from  int // sixths of the run
			value func(Band) float64
		}{
			{"9 in 10 cases", 4, func(b Band) float64 { return (b.High90 + b.High50) / 2 }},
			{"5 in 10", 3, func(b Band) float64 { return (b.Low50 + b.Mid) / 2 }},
			{"middle", 2, func(b Band) float64 { return b.Mid }},
		} {
			if !f.leadFrom(part.words, run, part.from, part.value) {
				f.leave(part.words)
			}
		}
		return
	}
}

// leadFrom writes a word by a leader from somewhere along a run.
func (f *drawing) leadFrom(words string, run []Band, from int, value func(Band) float64) bool {
	for _, k := range []int{from, 2, 3, 4, 5} {
		b := run[len(run)*k/6]
		x, shown := f.row.at(b.At)
		if shown && b.whole() && f.inside(value(b)) && f.lead(words, "halo", scene.Point{X: x, Y: f.y(value(b))}, 0) {
			return true
		}
	}
	return false
}
