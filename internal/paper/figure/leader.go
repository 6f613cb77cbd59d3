package figure

import (
	"math"

	"rootbell/internal/paper/scene"
)

// caption is a word or two that belong to a part of a figure.
type caption struct {
	lines []string
	part  scene.Path // the part in px, closed
	class string
	only  *scene.Box // where alone the words may stand; nil for anywhere
	away  bool       // only by a leader, never right beside the part

	lettered []lettering // the lines with their lengths, not placed yet
}

// linePX is from one line of a caption to the next.
const linePX = 15.0

// name writes a caption beside its part, or by a leader where it finds room. ok
// is false, and nothing is written, where there is none.
func (p *pen) name(c caption) (ok bool) {
	for _, words := range c.lines {
		t := lettering{words: words, class: c.class}
		t.wide = t.long()
		c.lettered = append(c.lettered, t)
	}
	if !c.away {
		for _, lines := range c.beside() {
			if c.may(lines) && p.allFree(lines) {
				p.write(lines)
				return true
			}
		}
	}
	best, least := leader{}, math.Inf(1)
	for _, l := range c.leaders() {
		if !c.may(l.lines) {
			continue
		}
		if cost := p.costs(l, least); cost < least {
			best, least = l, cost
		}
	}
	if least > mostLeaderCost {
		return false
	}
	p.printf(`<path class="n lead" d="%s"/>`, pathData(scene.Polyline(best.from, best.bend, best.end)))
	p.room.line(best.from, best.bend, weights["n"], weights["n"])
	p.room.line(best.bend, best.end, weights["n"], weights["n"])
	p.write(best.lines)
	return true
}

// insideCost is what words on the squares cost a leader: outside they are read
// with more ease.
const insideCost = 10.0

// may says whether the words stand where they may.
func (c caption) may(lines []lettering) bool {
	for _, t := range lines {
		if c.only != nil && !c.only.Holds(t.box(airPX).bounds(), 0) {
			return false
		}
	}
	return true
}

// A leader may cross an outline and the chain line, but no hole, no dimension
// and no word.
const mostLeaderCost = 45.0

func (p *pen) allFree(lines []lettering) bool {
	for _, t := range lines {
		if !p.free(t, false) {
			return false
		}
	}
	return true
}

func (p *pen) write(lines []lettering) {
	for _, t := range lines {
		p.text(t)
	}
}

// stacked are the lines of a caption, the first on the given base line.
func (c caption) stacked(at scene.Point, anchor scene.Anchor) []lettering {
	var out []lettering
	for i, t := range c.lettered {
		t.at, t.anchor = at.Plus(scene.Point{Y: linePX * float64(i)}), anchor
		out = append(out, t)
	}
	return out
}

// beside are the places right, left, under and over the part.
func (c caption) beside() [][]lettering {
	const gap = 5.0
	around := c.part.Bounds()
	middle := around.Centre()
	high := linePX * float64(len(c.lines)-1)
	level := middle.Y + smallPX*0.36 - high/2
	return [][]lettering{
		c.stacked(scene.Point{X: around.Max.X + gap, Y: level}, scene.Start),
		c.stacked(scene.Point{X: around.Min.X - gap, Y: level}, scene.End),
		c.stacked(scene.Point{X: middle.X, Y: around.Max.Y + gap + smallPX*0.74}, scene.Middle),
		c.stacked(scene.Point{X: middle.X, Y: around.Min.Y - gap - high}, scene.Middle),
	}
}

// leader is a slanted line, then a level one, then the words.
type leader struct {
	from, bend, end scene.Point
	lines           []lettering
}

// leaders are tried in every direction but the level and upright ones, short
// ones first.
func (c caption) leaders() []leader {
	const level, gap = 9.0, 4.0
	part := c.part.Flat(flatPX)
	middle := centroid(part)
	var out []leader
	for length := 12.0; length <= 170; length += 7 {
		for angle := 15; angle < 360; angle += 15 {
			if angle%90 == 0 {
				continue
			}
			sin, cos := math.Sincos(float64(angle) * math.Pi / 180)
			dir := scene.Point{X: cos, Y: sin}
			from := edgeOf(part, middle, dir)
			bend := from.Plus(dir.Times(length))
			side, anchor := 1.0, scene.Start
			if dir.X < 0 {
				side, anchor = -1, scene.End
			}
			end := bend.Plus(scene.Point{X: side * level})
			text := end.Plus(scene.Point{X: side * gap, Y: smallPX * 0.36})
			out = append(out, leader{from, bend, end, c.stacked(text, anchor)})
		}
	}
	return out
}

// edgeOf is where a ray from inside a part leaves it for good.
func edgeOf(part []scene.Point, from, dir scene.Point) scene.Point {
	far := 0.0
	for i, a := range part {
		side := part[(i+1)%len(part)].Minus(a)
		det := dir.X*-side.Y + side.X*dir.Y
		if det == 0 {
			continue
		}
		to := a.Minus(from)
		along := (to.X*-side.Y + side.X*to.Y) / det
		at := (dir.X*to.Y - to.X*dir.Y) / det
		if at >= 0 && at <= 1 {
			far = math.Max(far, along)
		}
	}
	return from.Plus(dir.Times(far))
}

// centroid is a polygon's centre of area.
func centroid(corners []scene.Point) scene.Point {
	var sum scene.Point
	area := 0.0
	for i, p := range corners {
		q := corners[(i+1)%len(corners)]
		cross := (p.X-corners[0].X)*(q.Y-corners[0].Y) - (p.Y-corners[0].Y)*(q.X-corners[0].X)
		area += cross
		sum = sum.Plus(p.Plus(q).Plus(corners[0]).Times(cross / 3))
	}
	if area == 0 {
		return corners[0]
	}
	return sum.Times(1 / area)
}

// costs is how much a leader disturbs: its length a little, what it crosses
// more. It stops once that is no less than most.
func (p *pen) costs(l leader, most float64) float64 {
	length := l.from.Distance(l.bend)
	cost := length * 0.15
	if cost >= most {
		return cost
	}
	if !p.allFree(l.lines) {
		return math.Inf(1)
	}
	if p.inner.Holds(l.lines[0].box(0).bounds(), 0) {
		cost += insideCost
	}
	off := l.bend.Minus(l.from).Times(1.5 / length) // clear of its own part
	return cost + p.crossed(l.from.Plus(off), l.bend) + p.crossed(l.bend, l.end)
}
