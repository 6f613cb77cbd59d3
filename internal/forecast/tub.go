package forecast

import (
	"errors"
	"fmt"
	"math"

	"rootbell/internal/base/facts"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/oxygen"
	"rootbell/internal/science/tub"
	"rootbell/internal/science/water"
)

func value(id facts.ID) float64 { return Facts.Get(id).Value }

// Tub is one tub on the morning that a forecast begins. Heights count from its
// inside floor.
type Tub struct {
	Shape       tub.Shape
	StonesL     float64 // pushed aside by air stones
	CupsL       float64 // pushed aside by cups at the fill line, from their bottom up
	CupBottomMM float64
	LineMM      float64 // fill line of transplant day; a pump's tub is never filled over it
	LowestMM    float64 // never below
	Still       bool    // without an air pump
	Start       water.Solution
	LidM2       float64 // of open water under the lid
	OpenShare   float64 // of it that gaps leave open, 0 to 1
	Fan         bool    // moves the air at the leaves
	PressureKPa float64
	StoneMM     float64    // height of the top of the stone
	Air         oxygen.Air // its DepthMM is worked out from the level
	Stands      []Stand
}

// OpenShare is the part of the water under a usual lid that its gaps leave open,
// 0 to 1.
func OpenShare() float64 { return value(factLidOpen) / 100 }

// Stand is plants of one crop in one light. Plants whose light differs are
// stands of their own.
type Stand struct {
	Crop         crop.Crop // its height; may be the zero crop where no height is read
	Model        crop.Model
	Plants       int
	PerM2        float64
	PPFD         float64 // on its leaves while the lamp is lit, µmol/m²/s
	UmolPerJoule float64 // of that light, see lamp.Source
	PickG        float64 // fresh mass of a plant that is ready, g; 0 for none
	StopG        float64 // fresh mass at which it stops growing, g; 0 for none
	Warmed       float64 // °C·d over 0 °C from the day its seedlings showed to the day it moved in; for Leaves
}

// Span is some hours during which a room stays alike.
type Span struct {
	Hours  float64
	Lit    bool
	Room   water.Room
	CO2PPM float64
	WaterC float64
}

// Day is the spans of one day by the clock, usually 24 hours; one hour more or
// less when the clocks change.
type Day []Span

// Season is what a forecast follows. Hours count from its first midnight,
// along the spans.
type Season struct {
	Tub      Tub
	Days     []Day
	Events   []Event
	Readings []Reading
	Watches  []Watch
	NeedG    float64 // fresh, of all plants together; 0: each plant its PickG
}

// Watch is a stretch of hours in which nobody comes: its answer is how likely
// the water falls below the lowest line, and when.
type Watch struct{ FromHour, ToHour float64 }

// leastHours is a second: shorter spans are mistakes.
const leastHours = 1.0 / 3600

// mostDays bounds a season, so that no input makes a forecast without end.
const mostDays = 1000

// Check tells what keeps a season from being followed.
func (s Season) Check() error {
	if !finite(s.NeedG) || s.NeedG < 0 {
		return errors.New("what is needed is not known")
	}
	if len(s.Days) == 0 || len(s.Days) > mostDays {
		return fmt.Errorf("a season has 1 to %d days, not %d", mostDays, len(s.Days))
	}
	for i, day := range s.Days {
		if err := day.check(); err != nil {
			return fmt.Errorf("day %d: %w", i+1, err)
		}
	}
	if err := s.Tub.check(); err != nil {
		return err
	}
	for i, e := range s.Events {
		if err := e.check(len(s.Tub.Stands)); err != nil {
			return fmt.Errorf("event %d: %w", i+1, err)
		}
	}
	for i, r := range s.Readings {
		if err := r.check(s.Tub.Stands); err != nil {
			return fmt.Errorf("reading %d: %w", i+1, err)
		}
	}
	for i, w := range s.Watches {
		if !finite(w.FromHour, w.ToHour) || w.ToHour < w.FromHour {
			return fmt.Errorf("stretch %d ends before it begins", i+1)
		}
	}
	return nil
}

func (d Day) check() error {
	if len(d) == 0 || len(d) > 96 {
		return fmt.Errorf("a day has 1 to 96 spans, not %d", len(d))
	}
	for _, s := range d {
		switch {
		case !finite(s.Hours, s.CO2PPM, s.WaterC) || s.Hours < leastHours || s.Hours > 48:
			return errors.New("a span lasts a second to 48 hours, in air and water that are known")
		case !s.Room.Valid():
			return fmt.Errorf("the room's air must be 0 to 45 °C with a humidity of 0 to 100 %%, not %g °C and %g %%", s.Room.TempC, 100*s.Room.Humidity)
		}
	}
	return nil
}

func (t Tub) check() error {
	if !finite(t.StonesL, t.CupsL, t.CupBottomMM, t.LineMM, t.LowestMM, t.Start.Litres, t.Start.ECmS, t.LidM2, t.OpenShare, t.PressureKPa, t.StoneMM, t.Air.FlowLMin, t.Air.Transfer) {
		return errors.New("a figure of the tub is not known")
	}
	if min(t.StonesL, t.CupsL, t.LidM2, t.OpenShare, t.Start.ECmS, t.Air.FlowLMin, t.Air.Transfer, t.LowestMM) < 0 {
		return errors.New("a figure of the tub is under nought")
	}
	if !(t.LineMM > t.LowestMM) || t.LineMM > t.Shape.HeightMM() {
		return errors.New("the fill line lies over the lowest line and under the rim")
	}
	if !(t.Start.Litres > 0) || t.Start.Litres > float64(t.Shape.Volume(t.Shape.HeightMM())) {
		return fmt.Errorf("%.1f L do not stand in this tub", t.Start.Litres)
	}
	if !t.Still && !(t.PressureKPa > 0) {
		return errors.New("the air's pressure must be over nought")
	}
	for i, s := range t.Stands {
		m := s.Model
		if !finite(m.Tempo, m.Vigour, m.RootShare, m.LeafPerG, m.FreshPerDry, m.FruitShare, m.StartG, m.LeafMost, m.ColdC) || m.StartG < 0 {
			return fmt.Errorf("stand %d: how it grows must be known", i+1)
		}
		if !finite(s.PerM2, s.PPFD, s.UmolPerJoule, s.PickG, s.StopG, s.Warmed) || s.Warmed < 0 || s.Plants < 0 || s.Plants > 10000 || !(s.PerM2 > 0) || s.PPFD < 0 || !(s.UmolPerJoule > 0) {
			return fmt.Errorf("stand %d: plants, density and light must be known", i+1)
		}
	}
	return nil
}

func finite(all ...float64) bool {
	for _, v := range all {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// LitresAt is the solution that stands in the tub up to a depth: the water up
// to there less what stones and cups push aside.
func (t Tub) LitresAt(depthMM float64) float64 {
	cups := 0.0
	if depthMM > t.CupBottomMM && t.LineMM > t.CupBottomMM {
		cups = t.CupsL * min(1, (depthMM-t.CupBottomMM)/(t.LineMM-t.CupBottomMM))
	}
	return max(0, float64(t.Shape.Volume(depthMM))-t.StonesL-cups)
}

// BeforeFill is the level at which a tub stood that took so many litres up to a
// line: litres added are a reading of the level, whose error is that of the
// jug and of the line.
func (t Tub) BeforeFill(lineMM, addedL float64) (levelMM float64) {
	return t.LevelMM(t.LitresAt(lineMM) - addedL)
}

// LevelMM is the depth at which so much solution stands, at most the tub's
// height. Found by halving, which cannot miss on a volume that only rises.
func (t Tub) LevelMM(litres float64) float64 {
	low, high := 0.0, t.Shape.HeightMM()
	for range 50 {
		mid := low + (high-low)/2
		if t.LitresAt(mid) < litres {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

// gaugeError is how precise a depth of the gauge is, in mm.
const gaugeError = 1e-9

// depthFrom is the depth at which so much solution stands, from one at which
// less does: by false position with the weight of a stale end halved (Illinois;
// from memory), a tenth of the work of halving for the hundreds of depths of a
// gauge.
func (t Tub) depthFrom(low, litres float64) float64 {
	most := t.Shape.HeightMM()
	step := most / gaugeSteps
	atLow := t.LitresAt(low) - litres
	high := min(most, low+step)
	atHigh := t.LitresAt(high) - litres
	for atHigh < 0 && high < most {
		low, atLow = high, atHigh
		high = min(most, high+step)
		atHigh = t.LitresAt(high) - litres
	}
	for step, kept := 0, 0; atLow < 0 && atHigh > 0 && high-low > gaugeError && step < 100; step++ {
		mid := low - atLow*(high-low)/(atHigh-atLow)
		if at := t.LitresAt(mid) - litres; at < 0 {
			if low, atLow = mid, at; kept > 0 {
				atHigh /= 2
			}
			kept = 1
		} else {
			if high, atHigh = mid, at; kept < 0 {
				atLow /= 2
			}
			kept = -1
		}
	}
	if atLow >= 0 {
		return low
	}
	return high
}
