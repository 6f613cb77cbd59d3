package season

import (
	"errors"
	"fmt"
	"slices"

	"rootbell/internal/forecast"
	"rootbell/internal/school/term"
	"rootbell/internal/science/crop"
)

// Bed is one tub in its place, with its crops and the care it gets.
type Bed struct {
	Place
	Tub   forecast.Tub // on the day its plants move in; LineMM is the transplant line
	Crops []Crop       // each stand of the tub belongs to one
	Care  Care
	Hang  Hang
}

// Crop is one crop of a tub, from its seed on.
type Crop struct {
	Kind         crop.Crop
	Stands       []int     // its places among Tub.Stands
	Seed         crop.Seed // TempC is that of the plugs
	NurseryDays  float64   // 0 for the crop's own at that temperature
	SeedsInACell int       // 0 for the crop's own
	SownOn       term.Date // a day that is settled; the zero date is free
}

// Plants is how many of the crop stand in the tub.
func (b Bed) Plants(c Crop) (n int) {
	for _, j := range c.Stands {
		if j >= 0 && j < len(b.Tub.Stands) {
			n += b.Tub.Stands[j].Plants
		}
	}
	return n
}

// Care is what the class does as a matter of course.
type Care struct {
	Lines           []Line // fill lines by the day each holds from, in order; before the first it is Tub.LineMM
	LowerDays       int    // from the move to the first open day with LoweredMM as fill line, as roots hang then; 0 for never
	LoweredMM       float64
	Lower           bool    // with no Lines: the line is lowered by stages once roots hang, see Lowering
	TopUpDropMM     float64 // on an open day the tub is filled when it stands so far under its line; before a closed day always
	TopUpECmS       float64
	FirstChangeDays int // from the move to the first change of water; 0 for never
	ChangeDays      int // from one change to the next; 0 for never again
	ChangeECmS      float64
}

// Line is a fill line and the day it holds from.
type Line struct {
	From term.Date
	MM   float64
}

// check tells what keeps a bed from being followed.
func (b Bed) check() error {
	if b.Calendar == nil {
		return errors.New("a season needs the school's calendar")
	}
	if b.Lamp.FromMin < 0 || b.Lamp.FromMin > dayMinutes || b.Lamp.ToMin < 0 || b.Lamp.ToMin > dayMinutes {
		return errors.New("the lamp is lit between two times of one day")
	}
	of := make([]int, len(b.Tub.Stands))
	for _, c := range b.Crops {
		for _, j := range c.Stands {
			if j < 0 || j >= len(of) {
				return fmt.Errorf("%s has a stand that is not in the tub", c.Kind.Name)
			}
			of[j]++
		}
	}
	if slices.Max(append(of, 0)) > 1 {
		return errors.New("a stand belongs to two crops")
	}
	return nil
}

// moved is the bed with the lines that hold when its plants move in on a day.
func (b Bed) moved(on term.Date) Bed {
	if b.Care.Lower && len(b.Care.Lines) == 0 {
		b.Care.Lines = Lowering(b, on)
	}
	return b
}

// Line is the fill line that holds on a day.
func (b Bed) Line(d term.Date) float64 {
	line := b.Tub.LineMM
	for _, l := range b.Care.Lines {
		if !d.Before(l.From) {
			line = min(l.MM, b.Tub.LineMM)
		}
	}
	return line
}

// Hang is how the lamp hangs. The zero Hang is a lamp that stays where it is.
type Hang struct {
	OverLidMM  float64 // on the day the plants move in
	OverLeafMM float64 // never nearer to the leaves
	StepMM     float64 // that it is raised by
	MostMM     float64 // over the lid, that the place allows; 0 for no limit
}

// Effort is how much is followed: it is counted, never timed.
type Effort struct {
	Members int // of the answer; 0 for forecast.DefaultMembers
	Search  int // of each try on the way to it; 0 for a fifth of Members
	Seed    uint64
	Workers int
	Known   []forecast.Factors // of an earlier crop of the class
}
