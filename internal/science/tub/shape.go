package tub

import (
	"fmt"
	"math"
	"sort"

	"rootbell/internal/base/quantity"
)

// Shape is the inside of a tub. The zero value holds nothing; make one with
// NewRect, NewRound or NewPoured. Heights count from the inside floor.
type Shape struct {
	form     form
	heightMM float64
	// A rectangle's measures at the floor and at the rim; a round tub keeps its
	// diameters in length.
	length, width, radius [2]float64
	poured                []Pour
}

type form int

const (
	rect form = iota
	round
	poured
)

// Pour is one step of a tub measured by pouring: so much water stands so deep.
type Pour struct {
	Volume  quantity.L
	DepthMM float64
}

// NewRect is a rectangular tub, tapered, with rounded corners: length, width
// and corner radius at the top and at the base, in mm, linear between.
func NewRect(top, base [2]float64, heightMM float64, radiusTop, radiusBase float64) (Shape, error) {
	s := Shape{
		form: rect, heightMM: heightMM, length: [2]float64{base[0], top[0]},
		width: [2]float64{base[1], top[1]}, radius: [2]float64{radiusBase, radiusTop},
	}
	if err := checkMeasures(top[0], top[1], base[0], base[1], heightMM); err != nil {
		return Shape{}, err
	}
	for i, where := range []string{"base", "top"} {
		if !(s.radius[i] >= 0) {
			return Shape{}, fmt.Errorf("the corner radius at the %s is less than nought", where)
		}
		if 2*s.radius[i] > min(s.length[i], s.width[i]) {
			return Shape{}, fmt.Errorf("the corner radius at the %s is more than half the shorter side", where)
		}
	}
	return s, nil
}

// mostMM is longer than any tub, and short enough for every product of three.
const mostMM = 100_000

// mostL is the cube of that in litres.
const mostL = 1e9

// checkMeasures refuses a length that is none, NaN included.
func checkMeasures(lengthsMM ...float64) error {
	for _, l := range lengthsMM {
		if !(l > 0) {
			return fmt.Errorf("the tub's inside measures must all be more than nought")
		}
		if l > mostMM {
			return fmt.Errorf("the tub's inside measures must be below 100 m: look at their units")
		}
	}
	return nil
}

// NewRound is a round tub by its diameters at the top and at the base, in mm.
func NewRound(top, base, heightMM float64) (Shape, error) {
	if err := checkMeasures(top, base, heightMM); err != nil {
		return Shape{}, err
	}
	return Shape{form: round, heightMM: heightMM, length: [2]float64{base, top}}, nil
}

// NewPoured is a tub of any shape measured by pouring known volumes and reading
// the depth. Both must rise from step to step; between steps the water is taken
// as rising evenly.
func NewPoured(steps []Pour) (Shape, error) {
	for _, p := range steps {
		if err := checkMeasures(p.DepthMM); err != nil {
			return Shape{}, err
		}
		if !(p.Volume > 0 && p.Volume < mostL) {
			return Shape{}, fmt.Errorf("a pouring of %g L is none: give what the tub held in all at that depth", float64(p.Volume))
		}
	}
	all := append([]Pour{{}}, steps...)
	sort.SliceStable(all, func(i, j int) bool { return all[i].Volume < all[j].Volume })
	if len(all) < 2 {
		return Shape{}, fmt.Errorf("a poured tub needs at least one step, such as {volume: 5 L, depth: 4.1 cm}")
	}
	for i := 1; i < len(all); i++ {
		if !(all[i].Volume > all[i-1].Volume && all[i].DepthMM > all[i-1].DepthMM) {
			return Shape{}, fmt.Errorf("the pouring at %g L does not stand deeper than the one before: measure it again", float64(all[i].Volume))
		}
	}
	return Shape{form: poured, heightMM: all[len(all)-1].DepthMM, poured: all}, nil
}

// HeightMM is the inside height: floor to rim, or to the last pouring.
func (s Shape) HeightMM() float64 { return s.heightMM }

// AreaMM2 is the area of the water at a depth, in mm². A poured tub has the
// mean area of the step the depth lies in.
func (s Shape) AreaMM2(depthMM float64) float64 {
	if s.heightMM == 0 {
		return 0
	}
	switch s.form {
	case round:
		d := s.at(s.length, depthMM)
		return math.Pi / 4 * d * d
	case poured:
		lo, hi := s.step(depthMM)
		return quantity.Litre.Base(float64(hi.Volume-lo.Volume)) / (hi.DepthMM - lo.DepthMM)
	}
	r := s.at(s.radius, depthMM)
	return s.at(s.length, depthMM)*s.at(s.width, depthMM) - (4-math.Pi)*r*r
}

// Volume is the water up to a depth between the floor and the rim; beyond
// either it is that of the floor or the rim. Exact for tapered tubs: their area
// is quadratic in the depth, so the prismoidal formula holds.
func (s Shape) Volume(depthMM float64) quantity.L {
	h := min(max(depthMM, 0), s.heightMM)
	if s.heightMM == 0 {
		return 0
	}
	if s.form == poured {
		lo, hi := s.step(h)
		return lo.Volume + (hi.Volume-lo.Volume)*quantity.L((h-lo.DepthMM)/(hi.DepthMM-lo.DepthMM))
	}
	return quantity.L(quantity.Litre.From(h / 6 * (s.AreaMM2(0) + 4*s.AreaMM2(h/2) + s.AreaMM2(h))))
}

// Depth is the depth at which so much water stands, in mm; ok is false when it
// is more than the tub holds or less than none. Found by bisection, which
// cannot miss on a volume that only rises.
func (s Shape) Depth(v quantity.L) (depthMM float64, ok bool) {
	if v < 0 || v > s.Volume(s.heightMM) || math.IsNaN(float64(v)) {
		return 0, false
	}
	lo, hi := 0.0, s.heightMM
	for range 100 {
		mid := (lo + hi) / 2
		if s.Volume(mid) < v {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2, true
}

// Wall is the inner wall seen from above at a height: length, width and corner
// radius in mm. A round tub has equal length and width and half of that as
// radius. A poured tub's wall is not known, and ok is false.
func (s Shape) Wall(heightMM float64) (length, width, radius float64, ok bool) {
	switch {
	case s.form == poured || s.heightMM == 0:
		return 0, 0, 0, false
	case s.form == round:
		d := s.at(s.length, heightMM)
		return d, d, d / 2, true
	}
	return s.at(s.length, heightMM), s.at(s.width, heightMM), s.at(s.radius, heightMM), true
}

// IsRound tells a round tub from the others.
func (s Shape) IsRound() bool { return s.form == round }

// at is a measure that runs straight from the floor to the rim.
func (s Shape) at(ends [2]float64, depthMM float64) float64 {
	return ends[0] + (ends[1]-ends[0])*(depthMM/s.heightMM)
}

// step is the pair of pourings a depth lies between.
func (s Shape) step(depthMM float64) (lo, hi Pour) {
	for i := 1; i < len(s.poured)-1; i++ {
		if depthMM < s.poured[i].DepthMM {
			return s.poured[i-1], s.poured[i]
		}
	}
	n := len(s.poured)
	return s.poured[n-2], s.poured[n-1]
}
