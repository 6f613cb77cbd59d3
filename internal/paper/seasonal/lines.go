package seasonal

import (
	"strings"

	"rootbell/internal/school/term"
)

// still tells whether a tub has no pump.
func (p papers) still(tub int) bool { return p.a.Plan.Tubs[tub].Method == "still" }

// top is the fill line of the day of the move: the highest.
func (p papers) top(tub int) (mm float64, ok bool) {
	levels := p.a.Tubs[tub].Levels
	if len(levels) == 0 {
		return 0, false
	}
	return levels[0].DepthMM, true
}

// lowest is the line below which the water never falls.
func (p papers) lowest(tub int) (mm float64, ok bool) {
	for _, l := range p.a.Tubs[tub].Levels {
		if l.Lowest {
			return l.DepthMM, true
		}
	}
	return 0, false
}

// lineOn is the fill line of a day: that of the day of the move, until the line
// is lowered as roots hang.
func (p papers) lineOn(tub int, d term.Date) float64 {
	mm, _ := p.top(tub)
	for _, task := range p.a.Tubs[tub].Season.Tasks {
		on, ok := date(task.On)
		if task.Kind != "lower" || !ok || d.Before(on) {
			continue
		}
		for _, l := range p.a.Tubs[tub].Levels {
			if !l.Lowest && strings.HasPrefix(l.Words, "fill,") && l.DepthMM < mm {
				mm = l.DepthMM
			}
		}
	}
	return mm
}
