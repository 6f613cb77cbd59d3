package garden

import (
	"fmt"
	"math"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/school/season"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/water"
)

// The numbers of a season in the book, under tubs.NAME.season, so that each can
// be followed with a pencil: what many runs gave is counted, and one hour of one
// plant shows the sums that the program does in small steps.

func grams(v float64) float64 { return quantity.Gram.Base(v) }

// usual enters what a tub's plants usually weigh at harvest.
func (t *tubState) usual() (sum working.Number, ok bool) {
	b := t.assessor.book.In("tubs." + Slug(t.name) + ".season")
	for i, g := range t.out.Crops {
		c, known := crop.Find(g.Name)
		if !known || g.Plants == 0 {
			continue
		}
		mass := c.Mass(t.assessor.book)
		if t.typed.HarvestMass.Set() {
			mass = t.book.Typed("harvest_mass", "one plant at harvest, as wanted", "g", quantity.SmallMass, t.typed.HarvestMass.Value.Base(), 0)
		}
		n := b.Typed("planted_"+Slug(strings.ToLower(g.Name)), g.Name+" plants in the tub", "n", quantity.Count, float64(g.Plants), 0)
		one := b.Work(usualLaw, "usual_"+Slug(strings.ToLower(g.Name)), g.Name+" at its usual harvest", n, mass)
		if !ok {
			sum, ok = one, true
			continue
		}
		sum = b.Work(bothLaw, fmt.Sprintf("usual_with_%d", i+1), "the tub's crops at their usual harvest", sum, one)
	}
	return sum, ok
}

// needed is what this tub is to bring for the meal, fresh and untrimmed, in g:
// its share by what its plants usually weigh. It is 0 where nobody says how
// many eat.
func (s *tubSeason) needed() float64 {
	m := s.plan.School.Meal
	own, ok := s.t.usual()
	if !s.meal.Set() || !m.Eaters.Given || !ok {
		return 0
	}
	all := own
	first := true
	for i, t := range s.planner.out.states {
		one, is := t.usual()
		switch {
		case !is:
		case first:
			all, first = one, false
		default:
			all = s.book.In("season").Work(bothLaw, fmt.Sprintf("usual_of_%d", i+1), "the tubs so far at their usual harvest", all, one)
		}
	}
	trim := crop.TrimFact()
	n := s.b.Work(neededLaw, "needed", "what the meal needs of this tub, untrimmed",
		s.book.Typed("school.eaters", "eaters", "e", quantity.Count, float64(m.Eaters.Value), 0),
		s.book.Typed("school.portion", "trimmed leaves for each", "p", quantity.SmallMass, grams(s.portionG()), 0),
		s.book.Fact("season.trim", "trimmed away", "t", quantity.Share, trim.Value/100, trim), own, all)
	return quantity.Gram.From(n.Base)
}

// show enters what the season came to.
func (s *tubSeason) show(a season.Answer, closed []season.Closed) {
	n := a.Followed.Members
	if n == 0 {
		return
	}
	all := s.b.Noted("runs", "runs followed", "n", quantity.Count, float64(n), 0, "as many as are asked for; each has other luck")
	count := func(key, name string, p float64, how string) {
		k := s.b.Found(key+"_runs", name, "k", quantity.Count, math.Round(p*float64(n)), how)
		s.b.Work(partLaw, key, name, k, all)
	}
	by := a.ReadyBy.Words()
	count("ready_chance", "ready by "+by, a.Chance, "runs that were ready by "+by+", counted; growth and thirst of each after the pages of docs/growth.md, with the luck of docs/forecast.md")
	s.b.Found("expected", "all its plants on "+by, "w", quantity.SmallMass, grams(a.MassG.P50), fmt.Sprintf("the middle of %s runs; nine in ten lie from %.0f to %.0f g", thousands(n), a.MassG.P5, a.MassG.P95))
	if a.MoveOn.Set() {
		s.b.Noted("days_in_tub", "from the move into the tub to "+by, "d", quantity.Time, float64(a.ReadyBy.Since(a.MoveOn))*daySeconds, 0, "the school's calendar")
	}
	for i, c := range closed {
		count(closedKey(i), "below the lowest line between "+c.Stretch.Since.Format("2 Jan")+" and "+c.Stretch.Until.Format("2 Jan"), c.Risk,
			"runs whose water fell below the lowest line in those hours, counted")
	}
	s.showThirst(a)
	s.showSeeds(a)
	s.showHour(a)
}

const daySeconds = 24 * 60 * 60

// closedKey is the key of a closed stretch's risk, within the season's.
func closedKey(i int) string { return fmt.Sprintf("closed_%d", i+1) }

// showThirst enters what a plant drinks on the day of the answer.
func (s *tubSeason) showThirst(a season.Answer) {
	for i, d := range a.Followed.Dates {
		if d.Date != a.ReadyBy || i == 0 {
			continue
		}
		gone := a.Followed.Days[i].DrunkL.P50 - a.Followed.Days[i-1].DrunkL.P50
		w := s.b.Found("gone_that_day", "gone from the tub on "+d.Date.Words(), "W", quantity.Volume.WithDecimals(2, 2), quantity.Litre.Base(max(0, gone)), "the middle of the runs on that day, less that on the day before")
		s.b.Work(thirstOfLaw, "thirst", "a plant drinks on "+d.Date.Words(), w, s.b.Typed("plants_all", "plants in the tub", "n", quantity.Count, float64(max(1, s.plants())), 0))
	}
}

// showSeeds enters how likely a seed and a cell become a plant, and the seeds.
func (s *tubSeason) showSeeds(a season.Answer) {
	for _, c := range a.Crops {
		if c.Cells == 0 {
			continue
		}
		bed := s.bed.Crops[c.Crop]
		name := bed.Kind.Name
		each := max(1, int(math.Round(float64(c.Seeds)/float64(c.Cells))))
		b := s.b.In(Slug(name))
		bed.Kind.ShowChance(b, bed.Seed, each)
		cells := b.Found("cells", "cells to sow", "c", quantity.Count, float64(c.Cells), fmt.Sprintf("the least number of which enough fill with a chance of %.0f in 100, by the binomial; with %d it is %.1f", 100*crop.UsualChance(), c.Cells, 100*c.Enough))
		b.Work(sownLaw, "seeds", name+" seeds to sow", cells, b.Noted("seeds_in_a_cell", "seeds in a cell", "k", quantity.Count, float64(each), 0, "as is usual for the crop"))
	}
}

// showHour enters one lit hour of the first crop in the middle of its time in
// the tub, without any luck: the sums behind every step.
func (s *tubSeason) showHour(a season.Answer) {
	half := a.ReadyBy.Since(a.MoveOn) / 2
	if !a.MoveOn.Set() || half < 1 {
		return
	}
	c := s.course(written{}, a.MoveOn, a.MoveOn.Add(half))
	f, err := season.Follow(s.ctx, c, season.Effort{Members: 1, Workers: 1})
	if err != nil || len(f.Ends) != 1 {
		return
	}
	one, room := s.bed.Tub.Stands[0], s.place.Open
	state := f.Ends[0].Stands[0]
	b := s.b.In("hour")
	watts := one.PPFD / one.UmolPerJoule
	one.Model.Show(b.In("growth"), state, crop.Air{TempC: room.Room.TempC, CO2PPM: room.CO2PPM, WattsM2: watts}, one.PerM2)
	canopy := water.NewCanopy(room.Room, one.PPFD, watts, water.AirResistance(s.bed.Tub.Fan))
	if leaf := one.Model.LeafIndex(state); leaf > 0 {
		canopy.Show(b.In("leaves"), room.Room, one.PPFD, leaf)
	}
	deficit := room.Room.ShowDeficit(b.In("air"))
	water.ShowLid(b.In("lid"), deficit, water.StillAirMS(), s.bed.Tub.LidM2, s.bed.Tub.OpenShare)
}

// keyed is the key of a closed stretch's risk for whoever shows it.
func (s *tubSeason) keyed(i int) string { return s.out.Key + "." + closedKey(i) }
