package garden

import (
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/season"
	"rootbell/internal/school/steering"
	"rootbell/internal/school/term"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/lamp"
	"rootbell/internal/science/reading"
	"rootbell/internal/science/tub"
)

// laid fills the bed: its place, its crops from their seed on, what the class
// does as a matter of course, and how the lamp hangs.
func (s *tubSeason) laid() {
	s.bed.Place = s.place
	if len(s.plan.Lamps) == 0 {
		s.bed.Lamp, s.bed.NoLamp = s.readHours(), true
	}
	for k, g := range s.t.out.Crops {
		s.bed.Crops = append(s.bed.Crops, s.cropOf(k, g))
	}
	s.bed.Care = s.care()
	s.bed.Hang = s.hang()
}

// readHours are those of light that was read where the plan has no lamp: round
// noon by a window, else from when a lamp usually goes on.
func (s *tubSeason) readHours() season.Lamp {
	light := s.t.lightOf(s.t.index)
	minutes, from := int(60*light.hours), usualOnMin
	if ofWindow(light.source) {
		from = noonMin - minutes/2
	}
	return season.Lamp{FromMin: from, ToMin: from + minutes}
}

const noonMin = 12 * 60

func (s *tubSeason) cropOf(k int, g Growing) season.Crop {
	kind := crop.Named(g.Name)
	c := season.Crop{Kind: kind, SownOn: term.Date(s.t.typed.Sow), Seed: s.seedOf(kind)}
	for j, one := range s.stood {
		if one.grows == k {
			c.Stands = append(c.Stands, j)
		}
	}
	return c
}

// seedOf is the packet as the plan gives it, sown where the nursery stands.
func (s *tubSeason) seedOf(kind crop.Crop) crop.Seed {
	t := s.t.typed
	seed := crop.Seed{Germination: kind.Germination(), TempC: float64(s.plan.Place.AirTemperature.Or(roomC))}
	if t.Seed.Germination.Set() {
		seed.Germination = float64(t.Seed.Germination.Value)
	}
	if t.Seed.PacketYear.Given {
		year := s.now.Year()
		if t.Sow.Set() {
			year = t.Sow.Year
		}
		seed.YearsOld = float64(max(0, year-t.Seed.PacketYear.Value))
	}
	if t.Nursery.Temperature.Set() {
		seed.TempC = float64(t.Nursery.Temperature.Value)
	}
	return seed
}

// care is what the class does as a matter of course: up to the line where it
// has fallen by so much and before each closed day, with half-strength solution,
// and the water changed when it is due. A still tub is filled once.
func (s *tubSeason) care() season.Care {
	c := season.Care{TopUpDropMM: tub.TopUpDropMM(), TopUpECmS: s.halfEC(), ChangeECmS: s.feedEC}
	if s.t.setup.Still {
		return c
	}
	if l := s.t.lines; l.Lowered.Base > l.Lowest.Base && l.Lowered.Base < l.Fill.Base {
		c.LowerDays, c.LoweredMM = tub.LowerAfterDays(), l.Lowered.Base
	}
	meter := instrument(reading.Of(s.entries, s.t.name), reading.FieldEC, s.now, s.plan.Tools) == reading.Meter
	c.FirstChangeDays, c.ChangeDays = changeDays(true, meter), changeDays(false, meter)
	return c
}

// changeDays is how long water is good for, by the rule of a morning.
func changeDays(first, meter bool) int {
	since := time.Date(2001, time.January, 1, 0, 0, 0, 0, time.UTC)
	due := steering.DueOut(working.NewBook(), steering.Filling{Since: since, First: first, Meter: meter, FillL: 1}, since)
	return int(due.On.Sub(since).Hours() / 24)
}

// The steps by which a lamp on a chain is raised (common practice, no source).
const (
	chainMM     = 50.0
	chainInchMM = 50.8 // 2 in
)

// hang is how the first lamp hangs, and how far the bay lets it be raised.
func (s *tubSeason) hang() season.Hang {
	if len(s.plan.Lamps) == 0 {
		return season.Hang{}
	}
	h := season.Hang{OverLidMM: s.overLidMM(), OverLeafMM: lamp.LeafClearMM(), StepMM: chainMM}
	if s.plan.Units == quantity.US {
		h.StepMM = chainInchMM
	}
	if bay := s.plan.Shelf; bay != nil && bay.ClearHeight.Set() {
		h.MostMM = max(h.OverLidMM, float64(bay.ClearHeight.Value)-s.t.lidMM())
	}
	return h
}

// overLidMM is how high the first lamp hangs over a lid on the day of the move.
func (p *planner) overLidMM() float64 {
	if up := p.plan.Lamps[0].AboveLid; up.Set() {
		return float64(up.Value)
	}
	return lamp.StartClearMM()
}

// usualPortionG is what each eats, trimmed, where the plan does not say (common
// practice, no source).
const usualPortionG = 20

// portionG is what each eats, trimmed, in g.
func (s *tubSeason) portionG() float64 {
	return 1000 * float64(s.plan.School.Meal.Portion.Or(usualPortionG/1000.0))
}

// pickG is the mass of a plant that is picked, in g.
func pickG(t *plan.Tub, c crop.Crop) float64 {
	if m := t.HarvestMass; m.Set() {
		return 1000 * float64(m.Value)
	}
	return quantity.Gram.From(c.Mass(working.NewBook()).Base)
}
