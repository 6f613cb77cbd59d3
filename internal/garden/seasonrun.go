package garden

import (
	"rootbell/internal/forecast"
	"rootbell/internal/school/season"
	"rootbell/internal/school/term"
)

// seasonWorkers is how many members are followed at once. The answer does not
// rest on it.
const seasonWorkers = 4

func (p *planner) effort() season.Effort {
	e := season.Effort{Members: p.in.Members, Seed: p.in.Seed, Workers: p.in.Workers}
	if e.Workers <= 0 {
		e.Workers = seasonWorkers
	}
	return e
}

// dates says what the plan's days contradict. False where no season follows
// from them.
func (s *tubSeason) dates() bool {
	s.laid()
	log := s.logbook()
	s.log = log[len(log)-1]
	sow, move := term.Date(s.t.typed.Sow), term.Date(s.t.typed.Transplant)
	s.moved = move
	if s.log.moved.Set() {
		s.moved = s.log.moved
	}
	if sow.Set() && move.Set() && !sow.Before(move) {
		s.warn("sow-after-transplant", s.field+".sow", s.t.name+": it is sown on "+sow.Long()+", and the plants move on "+move.Long()+", not after that.", "Swap the two days, or look at their years.")
		return false
	}
	first := sow
	if s.moved.Set() {
		first = s.moved
	}
	if first.Set() && !first.Before(s.end) {
		field := "school.meal.day"
		if !s.meal.Set() {
			field = "school.terms"
		}
		s.warn("meal-before-sowing", field, s.t.name+": "+s.end.Long()+" is the day to be ready by, and sowing or moving is on "+first.Long()+".", "Sow earlier, or choose a later day for the meal.")
		return false
	}
	s.needG = s.needed()
	return true
}

// wish is what is asked of the calendar.
func (s *tubSeason) wish() season.Wish {
	m := s.plan.School.Meal
	w := season.Wish{
		Bed: s.bed, Today: term.DateOf(s.now), MealOn: s.meal, NeededG: s.needG, MoveOn: s.moved,
		Course: func(moveOn, to term.Date) season.Course { return s.course(s.log, moveOn, to) },
	}
	if first, ok := s.place.Calendar.First(); ok && w.Today.Before(first) {
		w.Today = first
	}
	if m.Eaters.Given {
		w.Eaters, w.PortionG = m.Eaters.Value, s.portionG()
	}
	if m.Chance.Set() {
		w.Chance = float64(m.Chance.Value)
	}
	return w
}

// run follows the tub and puts its season together.
func (s *tubSeason) run() error {
	effort := s.effort()
	known, err := s.before(effort)
	if err != nil {
		return err
	}
	effort.Known = known
	w := s.wish()
	answer, err := season.Back(s.ctx, w, effort)
	if err != nil {
		return s.cannot(err)
	}
	var closed []season.Closed
	if answer.MoveOn.Set() {
		c := s.course(s.log, answer.MoveOn, answer.ReadyBy)
		if n := len(answer.Followed.Dates); n > 0 {
			c.To = answer.Followed.Dates[n-1].Date
		}
		s.followed = c
		ways := s.ways()
		ways.NeedG, ways.Wanted = s.needG, answer.Wanted
		if closed, err = season.Leave(s.ctx, c, answer.Followed, ways, effort); err != nil {
			return s.cannot(err)
		}
	}
	s.fill(answer, closed)
	return nil
}

// cannot is the context's own end; what cannot be followed is said.
func (s *tubSeason) cannot(err error) error {
	if s.ctx.Err() != nil {
		return s.ctx.Err()
	}
	s.warn("season-not-followed", s.field, s.t.name+": its season cannot be followed: "+err.Error()+".", "Look at the figures that this names.")
	s.out = nil
	return nil
}

// before is what was learned from the class's crop before this one.
func (s *tubSeason) before(e season.Effort) ([]forecast.Factors, error) {
	log := s.logbook()
	if len(log) < 2 {
		return nil, nil
	}
	earlier, next := log[len(log)-2], log[len(log)-1]
	to := next.moved.Add(-1)
	if !earlier.moved.Before(to) {
		return nil, nil
	}
	c := s.course(earlier, earlier.moved, to)
	if len(c.Readings) == 0 {
		return nil, nil
	}
	f, err := season.Follow(s.ctx, c, e)
	if err != nil {
		return nil, s.ctx.Err() // what cannot be followed teaches nothing
	}
	return f.Factors, nil
}

// ways are what may be done for a closed stretch.
func (s *tubSeason) ways() season.Ways {
	w := season.Ways{MayVisit: s.plan.School.Visits.Value, VisitECmS: s.tapEC, From: s.now}
	if step := s.plan.Tools.RulerStep; step.Set() {
		w.LineStepMM = float64(step.Value)
	}
	if !s.t.setup.Still {
		w.StillLowestMM = s.bed.Tub.LowestMM
	}
	return w
}
