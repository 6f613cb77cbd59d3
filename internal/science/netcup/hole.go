package netcup

import (
	"math"
	"strconv"
	"strings"
)

// Cup is a net cup by its measures in mm: Body is the diameter just below the
// lip, Rim the diameter over the lip, Depth from under the lip to the outside
// of the bottom.
type Cup struct {
	BodyMM, RimMM, DepthMM float64
}

// lipMM is how much plastic the lip must rest on, both sides together.
func lipMM() float64 { return 2 * Facts.Get(factCupLipBearingMin).Value }

// Fits tells whether a hole is right for the cup: the body drops in and the
// lip bears all round.
func (c Cup) Fits(holeMM float64) bool { return c.BodyMM < holeMM && holeMM < c.RimMM-lipMM() }

// Saws are the hole saws most shops keep, in mm, rising.
func Saws() []float64 {
	var out []float64
	for _, word := range strings.Fields(Facts.Get(factSawSizes).Word) {
		if v, err := strconv.ParseFloat(word, 64); err == nil {
			out = append(out, v)
		}
	}
	return out
}

// sawTolerance tells a saw of 3 in (76.2 mm) from one of 76 mm no better than
// the shops do.
const sawTolerance = 0.6

// Common tells whether a shop is likely to have a saw of this size.
func Common(holeMM float64) bool {
	for _, s := range Saws() {
		if math.Abs(s-holeMM) <= sawTolerance {
			return true
		}
	}
	return false
}

// SawsFor are the common saws that are right for the cup.
func (c Cup) SawsFor() []float64 {
	var out []float64
	for _, s := range Saws() {
		if c.Fits(s) {
			out = append(out, s)
		}
	}
	return out
}

// Hole is the hole to cut where the plan names none: of the common saws that
// are right the one nearest the middle of what would do, the smaller of two;
// where none is, the middle itself to half a millimetre. ok is false when no
// hole can be right, because the lip is too narrow.
func (c Cup) Hole() (holeMM float64, ok bool) {
	least, most := c.BodyMM, c.RimMM-lipMM()
	if !(least < most) {
		return 0, false
	}
	middle := (least + most) / 2
	best := math.Floor(2*middle+0.5) / 2
	if !c.Fits(best) {
		best = middle
	}
	found := false
	for _, s := range c.SawsFor() {
		if !found || math.Abs(s-middle) < math.Abs(best-middle) {
			best, found = s, true
		}
	}
	return best, true
}
