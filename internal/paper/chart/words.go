package chart

import (
	"math"

	"rootbell/internal/paper/scene"
)

// levelLines draws the levels that mean something.
func (f *drawing) levelLines() {
	for _, l := range f.Lines {
		if !finite(l.Value) || !f.inside(l.Value) {
			f.leave(l.Words)
			continue
		}
		class := "cen"
		if l.Kind == Lowest {
			class = "lowl"
		}
		y := f.y(l.Value)
		f.line(class, scene.Point{X: f.edge, Y: y}, scene.Point{X: f.row.right(), Y: y}, true)
	}
}

// levelWords writes the levels' words on them, from the left on wherever they
// cover nothing; else by a leader.
func (f *drawing) levelWords() {
	const step = 18.0
	for _, l := range f.Lines {
		if !finite(l.Value) || !f.inside(l.Value) {
			continue
		}
		y := f.y(l.Value)
		class := "halo"
		if l.Kind == Lowest {
			class = "halo b"
		}
		var choices []lettering
		wide := long(l.Words, class)
		for _, base := range []float64{y - 5, y + 14} {
			if base > f.foot-2 || base-over*letterPX < f.top {
				continue
			}
			for x := f.edge + 6; x+wide < f.row.right(); x += step {
				choices = append(choices, lettering{words: l.Words, class: class, at: scene.Point{X: x, Y: base}})
			}
		}
		middle := scene.Point{X: (f.edge + f.row.right()) / 2, Y: y}
		if !f.place(choices...) && !f.lead(l.Words, class, middle, 0) {
			f.leave(l.Words)
		}
	}
}

// kindWords names the marks that are no plain ring, by a leader from the first
// that has room.
func (f *drawing) kindWords() {
	names := map[Kind]string{Doubtful: "doubtful", Struck: "corrected"}
	for _, kind := range []Kind{Doubtful, Struck, Sure} {
		words, some, done := names[kind], false, false
		for i := range f.Points {
			p := &f.Points[i]
			x, shown := f.row.at(p.At)
			if !shown || p.Kind != kind || !finite(p.mid()) || !f.inside(p.mid()) || kind == Sure && near(f.y(p.Low), f.y(p.High)) {
				continue
			}
			if kind == Sure {
				words = "between two colours"
			}
			some = true
			if done = f.lead(words, "halo", scene.Point{X: x, Y: f.y(f.onAxis(p.mid()))}, 8); done {
				break
			}
		}
		if some && !done {
			f.leave(words)
		}
	}
}

// lead writes a word by a leader that begins so far off a place: slanted, then
// level, then the word. ok is false where none finds room within the ground.
func (f *drawing) lead(words, class string, from scene.Point, off float64) (ok bool) {
	const level, gap = 8.0, 4.0
	ground := scene.Box{Min: scene.Point{X: f.edge + 2, Y: f.top}, Max: scene.Point{X: f.row.right(), Y: f.foot}}
	type leader struct {
		from, bend, end scene.Point
		text            lettering
	}
	var best leader
	least := math.Inf(1)
	for length := 12.0; length <= 72; length += 10 {
		for _, angle := range []float64{-40, 40, -140, 140, -65, 65, -115, 115, -20, 20, -160, 160} {
			sin, cos := math.Sincos(angle * math.Pi / 180)
			dir := scene.Point{X: cos, Y: sin}
			start := from.Plus(dir.Times(off))
			bend := start.Plus(dir.Times(length))
			side, anchor := 1.0, scene.Start
			if cos < 0 {
				side, anchor = -1, scene.End
			}
			end := bend.Plus(scene.Point{X: side * level})
			t := lettering{words: words, class: class, anchor: anchor, at: end.Plus(scene.Point{X: side * gap, Y: 4})}
			if length*0.1 >= least || !ground.Holds(t.box(airPX), 0) || !f.free(t) || f.hits(start, bend) || f.hits(bend, end) {
				continue
			}
			if cost := length*0.1 + 4*float64(f.crossed(t)); cost < least {
				best, least = leader{start, bend, end, t}, cost
			}
		}
	}
	if math.IsInf(least, 1) {
		return false
	}
	f.printf(`<path class="n" d="%s"/>`, chain([]scene.Point{best.from, best.bend, best.end}))
	f.lines = append(f.lines, segment{best.from, best.bend}, segment{best.bend, best.end})
	f.text(best.text)
	return true
}

// hits tells whether a line would run over a word or a mark.
func (f *drawing) hits(a, b scene.Point) bool {
	for _, all := range [2][]scene.Box{f.words, f.marks} {
		for _, o := range all {
			if meets(o, a, b) {
				return true
			}
		}
	}
	return false
}
