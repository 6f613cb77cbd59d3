package season

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/school/term"
)

// Task is something to do on a day of the season.
type Task struct {
	Kind   string // sow, thin, transplant, lamp, change-out, lower, order, harvest, meal
	On     term.Date
	Crop   string    // its name, where it is one crop's
	Count  int       // seeds, plants, cells to thin, eaters
	Cells  int       // that seeds are sown into
	MM     float64   // new height of the lamp over the lid, or new line over the floor
	What   string    // that is ordered; of a line, whether it comes down by stages
	Before term.Date // by which it must be there
}

// Do is the task in one sentence, in a system of units.
func (t Task) Do(s quantity.System) string { return taskWords(t, s) }

// Why is its reason in one sentence; it may be empty.
func (t Task) Why(s quantity.System) string { return taskWhy(t, s) }

// Move is one thing that could be done where a date cannot be met, with the
// figure that would do.
type Move struct {
	Kind   string    // tubs, portion, later, eaters, smaller, seedlings, light
	Count  int       // tubs like this one in all, or eaters
	G      float64   // portion, or harvest mass of one plant
	On     term.Date // meal, or day on which seedlings are bought
	Times  float64   // light beside the present
	Hours  float64   // of lamp a day
	Chance float64   // of being ready then
}

// Says is the move in one sentence, in a system of units.
func (m Move) Says(s quantity.System) string { return moveWords(m, s) }
