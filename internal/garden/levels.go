package garden

import (
	"math"
	"strconv"

	"rootbell/internal/base/quantity"
	"rootbell/internal/science/tub"
)

// Level is a named height above a tub's inside floor.
type Level struct {
	DepthMM float64
	Words   string
	Lowest  bool // never below
}

// VolumeMark is a depth at which a tub holds a whole step of litres or
// gallons; Words is empty for a step without a number.
type VolumeMark struct {
	DepthMM float64
	Words   string
}

// fillLater names the fill line of the days after roots hang.
const fillLater = "fill, once roots hang"

// Levels are the lines of a tub from the top down: fill lines by stage, where
// to top up, and the lowest.
func (t *tubState) levels() []Level {
	l := t.lines
	drop := tub.TopUpDropMM()
	out := []Level{{DepthMM: l.Fill.Base, Words: "fill, transplant day"}}
	if !t.setup.Still && l.Lowered.Base > l.Lowest.Base && l.Lowered.Base < l.Fill.Base {
		out = append(out, Level{DepthMM: l.Lowered.Base, Words: fillLater})
		if l.Lowered.Base-drop > l.Lowest.Base {
			out = append(out, Level{DepthMM: l.Lowered.Base - drop, Words: "top up"})
		}
	}
	if l.Lowest.Base < l.Fill.Base {
		out = append(out, Level{DepthMM: l.Lowest.Base, Words: "never lower", Lowest: true})
	}
	return out
}

// VolumeMarks are the depths of whole steps of volume up to the rim, from the
// tub's real shape: a litre or a quarter of a gallon, numbered each fifth.
func (t Tub) VolumeMarks(s quantity.System) []VolumeMark {
	unit, step, numbered := quantity.Litre, 1.0, 5
	if s == quantity.US {
		unit, step, numbered = quantity.USGallon, 0.25, 4
	}
	var out []VolumeMark
	full := unit.From(t.Shape.Volume(t.Shape.HeightMM()).Base())
	if full > 120*step {
		step *= math.Ceil(full / (120 * step))
	}
	for k := 1; float64(k)*step <= full; k++ {
		v := float64(k) * step
		depth, ok := t.Shape.Depth(quantity.L(quantity.Litre.From(unit.Base(v))))
		if !ok {
			break
		}
		words := ""
		if k%numbered == 0 {
			words = strconv.FormatFloat(v, 'f', -1, 64)
		}
		out = append(out, VolumeMark{DepthMM: depth, Words: words})
	}
	return out
}
