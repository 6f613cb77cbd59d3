// Package chart draws one quantity over days for a page on a screen: readings
// as marks, bands of what may come, closed days hatched, with its table.
//
// A chart is inline SVG in pixels with the classes of the page's style sheet
// alone. Each kind of mark has a shape of its own, so that it can be told apart
// on a copy of a copy. Charts under one another that are given the same Days
// share one row of days. Lettering keeps its size and stands on no other
// lettering and no mark; a word that finds no room is left out, and the chart's
// label says it.
package chart

import (
	"time"

	"rootbell/internal/paper/figure"
	"rootbell/internal/school/term"
)

// Chart is one quantity of one thing over days, in one unit.
type Chart struct {
	Key      string // lower-case letters: part of the id
	Name     string // what is drawn: 'pH'
	Unit     string // as it stands at the axis; empty for pH
	Says     string // one sentence: what to see
	Decimals int    // that the instrument can read, 0 to 3

	// Tint is the class of the bands' colour: water, plant or none.
	Tint string
	// Points are the readings by moment, thinned to Room where there were more;
	// Of is how many readings they come from, no less than len(Points) where
	// nothing was thinned.
	Points []Point
	Of     int
	// Bands are runs of a forecast by moment; each begins anew where the tub
	// was filled.
	Bands [][]Band
	Lines []Line
	Marks []Mark

	// Shown is what the axis shows at least; Possible is what it never leaves,
	// and what lies beyond is drawn at its edge with its number. Each is not
	// known where High is not over Low.
	Shown, Possible Range
}

// Range is from a value to a higher one.
type Range struct{ Low, High float64 }

func (r Range) known() bool { return r.High > r.Low }

// Point is one value as read; Low and High differ where it was read as lying
// between two colours.
type Point struct {
	At        time.Time
	Low, High float64
	Kind      Kind
}

// Kind is how a reading stands.
type Kind int

// The kinds. Only what is Sure is joined by a line.
const (
	Sure     Kind = iota
	Doubtful      // kept as doubtful
	Struck        // another reading took its place
)

func (p Point) mid() float64 { return (p.Low + p.High) / 2 }

// Band is what may come at a moment: 9 in 10 cases lie between Low90 and High90,
// 5 in 10 between Low50 and High50.
type Band struct {
	At                                time.Time
	Low90, Low50, Mid, High50, High90 float64
}

// Line is a level that means something, such as the lowest one.
type Line struct {
	Value float64
	Words string // with its number: 'lowest line, 8.2'
	Kind  LineKind
}

// LineKind is how a level line is drawn.
type LineKind int

// The kinds of level lines.
const (
	Aim    LineKind = iota // a line to come to, thin
	Lowest                 // a line never to fall below, thick and broken
)

// Mark is what was done at a moment: 'filled', 'changed out'.
type Mark struct {
	At    time.Time
	Words string
}

// Days is the row of days that charts share. Its zero Calendar closes no day.
type Days struct {
	From, To term.Date // both shown
	Zone     *time.Location
	Calendar *term.Calendar
	Now      time.Time // zero: today is not shown
}

// MostDays is how many days a row may have; a longer one begins later.
const MostDays = 40 * 366

// Room is how many readings a drawing has room for; more are to be thinned.
func Room(w figure.Width) int {
	if w == figure.Hand {
		return 60
	}
	return 140
}

// Draw is the chart as SVG, 728 px wide for a desk, 328 for a hand. head writes
// the row of days over it where a day is wide enough: for the first of several
// charts. A row of days that ends before it begins is drawn as its first day.
func Draw(c Chart, d Days, w figure.Width, head bool) string {
	f := frameOf(c, d, w, head)
	f.draw()
	return f.svg(w)
}
