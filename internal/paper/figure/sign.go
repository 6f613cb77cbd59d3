package figure

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"rootbell/internal/paper/scene"
)

// The drawings of signs in px.
const (
	signWide = 88.0
	signHigh = 64.0
)

// Sign is a small drawing of a thing that may be seen at a tub, by its id; ok is
// false for an id without one. It is an aid beside the sign's words, so it is
// hidden from readers of the screen.
func Sign(id string) (svg string, ok bool) {
	draw, ok := signs[id]
	if !ok {
		return "", false
	}
	s := &sketch{pen{width: signWide, height: signHigh}}
	draw(s)
	return fmt.Sprintf(`<svg class="fig sign" width="%s" height="%s" viewBox="0 0 %s %s" aria-hidden="true" focusable="false">%s</svg>`,
		px(signWide), px(signHigh), px(signWide), px(signHigh), s.out.String()), true
}

// Signs are the ids that have a drawing.
func Signs() []string { return slices.Sorted(maps.Keys(signs)) }

// signs are the drawings by id.
var signs = map[string]func(*sketch){
	"hot-plug": (*sketch).hotPlug, "wet-floor": (*sketch).wetFloor, "splash": (*sketch).splash, "unknown-liquid": (*sketch).unknownLiquid,
	"edges-old": (*sketch).edgesOld, "edges-new": (*sketch).edgesNew, "pale-all": (*sketch).paleAll, "pale-old": (*sketch).paleOld,
	"pale-new": (*sketch).paleNew, "stripes-old": (*sketch).stripesOld, "purple": (*sketch).purple, "bleached": (*sketch).bleached,
	"bitten": (*sketch).bitten, "insects": (*sketch).insects, "powder": (*sketch).powder,
	"hang": (*sketch).hang, "hang-dry": (*sketch).hangDry, "leggy": (*sketch).leggy, "bolt": (*sketch).bolt, "small": (*sketch).small, "crowded": (*sketch).crowded,
	"roots-slimy": (*sketch).rootsSlimy, "roots-tan": (*sketch).rootsTan, "roots-short": (*sketch).rootsShort, "smell": (*sketch).smell,
	"green": (*sketch).green, "cloudy": (*sketch).cloudy, "foam": (*sketch).foam, "falls-fast": (*sketch).fallsFast, "low": (*sketch).low, "raised": (*sketch).raised,
	"no-seedlings": (*sketch).noSeedlings, "fall-over": (*sketch).fallOver, "after-move": (*sketch).afterMove,
	"no-bubbles": (*sketch).noBubbles, "lamp-off": (*sketch).lampOff, "mould": (*sketch).mould,
}

// sketch is one small drawing.
type sketch struct{ pen }

func at(x, y float64) scene.Point { return scene.Point{X: x, Y: y} }

// curve is a line through points that a function gives for 0 to 1.
func (s *sketch) curve(class string, closed bool, steps int, f func(t float64) scene.Point) {
	points := make([]scene.Point, steps+1)
	for i := range points {
		points[i] = f(float64(i) / float64(steps))
	}
	if closed {
		points = points[:steps]
	}
	s.chain(class, closed, points...)
}

// leaf is a leaf from its foot, so long, so wide and turned by degrees from
// upright, clockwise; inset makes it smaller all round.
func leaf(foot scene.Point, long, wide, turn, inset float64) func(t float64) scene.Point {
	sin, cos := math.Sincos(turn * math.Pi / 180)
	return func(t float64) scene.Point {
		along, side := t*2, 1.0
		if along > 1 {
			along, side = 2-along, -1
		}
		across := side * math.Max(wide/2*math.Sin(math.Pi*math.Pow(along, 0.8))-inset, 0)
		up := math.Min(math.Max(along*long, inset), long-inset)
		return at(foot.X+up*sin+across*cos, foot.Y-up*cos+across*sin)
	}
}

// leafed draws a leaf with its middle rib.
func (s *sketch) leafed(class string, foot scene.Point, long, wide, turn float64) {
	s.curve(class, true, 32, leaf(foot, long, wide, turn, 0))
	sin, cos := math.Sincos(turn * math.Pi / 180)
	s.line("n", foot, at(foot.X+0.85*long*sin, foot.Y-0.85*long*cos))
}

// veins are side ribs of an upright leaf.
func (s *sketch) veins(class string, foot scene.Point, long, wide float64) {
	for k := 1; k <= 4; k++ {
		y := foot.Y - long*float64(k)/6
		s.line(class, at(foot.X, y), at(foot.X-wide*0.3, y-6))
		s.line(class, at(foot.X, y), at(foot.X+wide*0.3, y-6))
	}
}

// dots are so many small rings by a fixed pattern within a box.
func (s *sketch) dots(class string, count int, x0, y0, x1, y1, radius float64) {
	for k := range count {
		// Two steps that share no factor with the count spread them evenly.
		s.circle(class, at(x0+(x1-x0)*frac(float64(k)*0.618), y0+(y1-y0)*frac(float64(k)*0.414+0.2)), radius)
	}
}

func frac(v float64) float64 { return v - math.Floor(v) }

// wave is a wavy line upright from a point.
func (s *sketch) wave(class string, from scene.Point, high, swing float64) {
	s.curve(class, false, 16, func(t float64) scene.Point {
		return at(from.X+swing*math.Sin(t*2.5*math.Pi), from.Y-t*high)
	})
}

// water is a tub's lower part with the line at a height.
func (s *sketch) water(line float64) {
	s.chain("k", false, at(8, 12), at(14, 60), at(74, 60), at(80, 12))
	s.line("watl", at(14-(60-line)/8, line), at(74+(60-line)/8, line))
}

// rooted is a cup in a lid with roots of a class.
func (s *sketch) rooted(class string, count int, long, swing float64) {
	s.line("k", at(4, 14), at(84, 14))
	s.chain("mm", false, at(34, 14), at(37, 26), at(51, 26), at(54, 14))
	for k := range count {
		x := 38 + 12*float64(k)/float64(max(count-1, 1))
		lean := (x - 44) * 1.2
		s.curve(class, false, 14, func(t float64) scene.Point {
			return at(x+lean*t+swing*math.Sin(t*7+float64(k)), 26+long*t)
		})
	}
}

// arrow points straight down or up.
func (s *sketch) arrow(x, from, to float64) {
	s.line("k", at(x, from), at(x, to))
	d := math.Copysign(7, from-to)
	s.chain("k", false, at(x-5, to+d), at(x, to), at(x+5, to+d))
}
