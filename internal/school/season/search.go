package season

import (
	"context"
	"math"

	"rootbell/internal/school/term"
)

// search looks for the day on which the plants of a tub move in. The water is
// held meanwhile: what a closed stretch does to it is for the plan to leave it.
// With the same members each later day gives each plant less time, so the
// chance only falls from one candidate to the next.
type search struct {
	w     Wish
	e     Effort
	first term.Date   // nothing is sown before
	by    term.Date   // the day it is all for
	days  []term.Date // candidates for the move, in order
	seen  map[try]came
	spent int
}

type try struct{ day, members int }

// came is what comes of a candidate.
type came struct {
	ready  float64 // chance of being ready
	picked bool    // half the plants of each stand have their harvest mass
}

// mostTubDays bounds how long before a meal plants move in.
const mostTubDays = 150

// candidates are the days that suit a move, from when the slowest crop can be
// ready for it.
func (s *search) candidates() {
	if s.w.MoveOn.Set() {
		s.days = []term.Date{s.w.MoveOn}
		return
	}
	from, sown, free := s.first, true, false
	for _, c := range s.w.Crops {
		days, grows := c.Nursery()
		if !grows {
			return
		}
		ready := s.first.Add(int(math.Ceil(days)))
		if c.SownOn.Set() {
			ready = c.SownOn.Add(int(math.Ceil(days)))
		} else {
			free = true
		}
		if ready.After(from) {
			from = ready
		}
		sown = sown && c.SownOn.Set()
	}
	if start := s.by.Add(-mostTubDays); from.Before(start) {
		from = start
	}
	for d, ok := settleFrom(s.w.Calendar, from); ok && d.Before(s.by); d, ok = settleFrom(s.w.Calendar, d.Add(1)) {
		if !s.sowable(d) {
			continue
		}
		s.days = append(s.days, d)
		if sown && !free {
			return
		}
	}
}

// sowable tells whether each crop has a day for its sowing before it moves on a
// day.
func (s *search) sowable(move term.Date) bool {
	for _, c := range s.w.Crops {
		if _, ok := c.dates(s.w.Calendar, move, s.first, s.w.Plants(c)); !ok {
			return false
		}
	}
	return true
}

// course is that of a candidate.
func (s *search) course(move term.Date, held bool) Course {
	if s.w.MoveOn.Set() && s.w.Course != nil {
		c := s.w.Course(move, s.by)
		c.NeedG, c.Held = s.w.NeededG, held
		return c
	}
	return Course{Bed: s.w.Bed, MoveOn: move, To: s.by, NeedG: s.w.NeededG, Held: held}
}

// run follows a course with so many members, and counts it.
func (s *search) run(ctx context.Context, c Course, members int) (Followed, error) {
	e := s.e
	e.Members = members
	f, err := follow(ctx, c, e)
	s.spent += len(f.Days) * members
	return f, err
}

// at is what comes of a candidate with so many members.
func (s *search) at(ctx context.Context, day, members int) (came, error) {
	if c, known := s.seen[try{day, members}]; known {
		return c, nil
	}
	f, err := s.run(ctx, s.course(s.days[day], true), members)
	if err != nil {
		return came{}, err
	}
	last := f.Days[len(f.Days)-1]
	c := came{ready: last.Ready, picked: true}
	for j, st := range last.Stands {
		c.picked = c.picked && st.MassG.P50 >= s.w.Tub.Stands[j].PickG
	}
	s.seen[try{day, members}] = c
	return c, nil
}

// latest is the last candidate of which something is true that is true of all
// before it, -1 for none: by halving with few members, then one by one with
// more.
func (s *search) latest(ctx context.Context, is func(came) bool) (int, error) {
	members := s.e.search()
	low, high := -1, len(s.days)
	for high-low > 1 {
		mid := (low + high) / 2
		c, err := s.at(ctx, mid, max(20, members/4))
		if err != nil {
			return 0, err
		}
		if is(c) {
			low = mid
		} else {
			high = mid
		}
	}
	return s.refine(ctx, low, members, is)
}

// refine goes on from a candidate, one by one.
func (s *search) refine(ctx context.Context, day, members int, is func(came) bool) (int, error) {
	if len(s.days) == 0 {
		return -1, nil
	}
	day = max(day, 0)
	c, err := s.at(ctx, day, members)
	up := is(c)
	for err == nil {
		switch {
		case up && day+1 < len(s.days):
			if c, err = s.at(ctx, day+1, members); !is(c) {
				return day, err
			}
			day++
		case up || day < 0 || is(c):
			return day, err
		default:
			if day--; day >= 0 {
				c, err = s.at(ctx, day, members)
			}
		}
	}
	return -1, err
}

// ready tells whether a candidate has a chance wanted.
func ready(wanted float64) func(came) bool {
	return func(c came) bool { return c.ready >= wanted }
}
