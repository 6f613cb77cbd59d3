package season

import (
	"context"

	"rootbell/internal/base/finding"
	"rootbell/internal/forecast"
	"rootbell/internal/school/term"
)

// Wish is what a tub is to bring, and by when.
type Wish struct {
	Bed
	Today    term.Date // nothing is done before
	MealOn   term.Date // the zero date: ready by the last open day of the term
	NeededG  float64   // of this tub, fresh; 0 where nobody says: then every plant is to have its harvest mass
	Eaters   int       // behind NeededG, for what else could be done; 0 for unknown
	PortionG float64
	Chance   float64                           // wanted, 0 to 1; 0 for the usual four in five
	LeadDays int                               // from an order to its coming; 0 for the usual
	MoveOn   term.Date                         // a move that is settled or done; the zero date is free
	Course   func(moveOn, to term.Date) Course // what was done and read since, where MoveOn is set; nil for none
}

// Answer is when to sow and what comes of it.
type Answer struct {
	Can         bool // the wish can be met with the chance wanted
	SowFrom     term.Date
	SowOn       term.Date // best
	SowLatest   term.Date // the zero date where it cannot be met
	MoveOn      term.Date
	MoveLatest  term.Date
	HarvestFrom term.Date // half the runs are ready; the zero date where that does not come
	HarvestTo   term.Date // the meal; without one, the last day on which plants are at their best
	ReadyBy     term.Date // the day that Chance is of: the meal or the last open day
	Chance      float64   // of being ready by then when sown on SowOn
	Wanted      float64
	MassG       forecast.Band // of all plants on that day
	Crops       []CropDates
	Tasks       []Task
	Moves       []Move            // what else could be done where it cannot be met
	More        []Sowing          // other sowings that the term has room for, before and after
	Followed    Followed          // of the sowing chosen, to ReadyBy and on to the term's end
	Findings    []finding.Finding // Field is left to the caller
	Spent       int               // members times days followed
}

// CropDates are those of one crop.
type CropDates struct {
	Crop   int // its place among Bed.Crops
	SowOn  term.Date
	UpOn   term.Date // seedlings show
	ThinOn term.Date // the zero date where one seed is sown in a cell
	MoveOn term.Date
	Cells  int
	Seeds  int
	Enough float64       // chance of enough seedlings
	MassG  forecast.Band // of one plant on the day of the answer
	Ready  float64       // chance that its plants have their harvest mass by then
}

// Sowing is one more crop in the same tub.
type Sowing struct {
	SowOn, MoveOn, ReadyOn term.Date
	Chance                 float64
}

// Back works back from the meal. The error is the context's or of what cannot
// be followed at all; what keeps a crop from being ready is in Findings and
// Moves.
func Back(ctx context.Context, w Wish, e Effort) (Answer, error) {
	if err := w.check(); err != nil {
		return Answer{}, err
	}
	out := Answer{Wanted: w.Chance}
	if out.Wanted <= 0 || out.Wanted > 1 {
		out.Wanted = UsualChance()
	}
	s, ok := out.ask(w, e)
	if !ok {
		return out, nil
	}
	best, err := out.choose(ctx, s)
	if err != nil {
		return out, err
	}
	if err := out.tell(ctx, s, best); err != nil {
		return out, err
	}
	if !out.Can {
		out.Moves, err = s.moves(ctx, best, &out)
	} else {
		out.More, err = s.more(ctx, &out)
	}
	out.Tasks = out.tasks(w)
	out.Spent = s.spent
	return out, err
}
