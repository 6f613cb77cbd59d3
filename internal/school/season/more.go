package season

import (
	"context"
	"math"

	"rootbell/internal/school/term"
)

// more are the other sowings that the term has room for in the same tub: crops
// that are out before the meal's plants move in, and crops after the meal. The
// water is held, and the day between is for cleaning the tub.
func (s *search) more(ctx context.Context, a *Answer) ([]Sowing, error) {
	if s.w.MoveOn.Set() && !s.w.MoveOn.After(s.w.Today) {
		return s.inTurn(ctx, s.by.Add(1), s.termEnd(), a.Wanted)
	}
	before, err := s.inTurn(ctx, s.days[0], a.MoveOn.Add(-2), a.Wanted)
	if err != nil {
		return nil, err
	}
	after, err := s.inTurn(ctx, s.by.Add(1), s.termEnd(), a.Wanted)
	return append(before, after...), err
}

// termEnd is the last open day of the term that the answer's day is in.
func (s *search) termEnd() term.Date {
	i, ok := s.w.Calendar.TermAt(s.by)
	if !ok {
		return s.by
	}
	d, _ := s.w.Calendar.OpenUntil(s.w.Calendar.Terms()[i].To)
	return d
}

// inTurn are crops one after another that are ready by a day.
func (s *search) inTurn(ctx context.Context, from, to term.Date, wanted float64) (out []Sowing, err error) {
	for len(out) < mostSowings {
		move, sow, ok := s.nextMove(from, to)
		if !ok {
			return out, nil
		}
		c := Course{Bed: s.w.Bed, MoveOn: move, NeedG: s.w.NeededG, Held: true}
		on, p, ready, err := s.readyOn(ctx, c, move.Add(1), to, wanted)
		if err != nil || !ready {
			return out, err
		}
		out = append(out, Sowing{SowOn: sow, MoveOn: move, ReadyOn: on, Chance: p})
		from = on.Add(2)
	}
	return out, nil
}

// nextMove is the first day from one on, before another, on which plants can move
// in whose seedlings were not left alone for long; where there is none within
// some weeks, that of those left alone for the shortest.
func (s *search) nextMove(from, to term.Date) (move, sow term.Date, ok bool) {
	shortest := 0
	for d, open := settleFrom(s.w.Calendar, from); open && d.Before(to) && d.Since(from) <= mostWait; d, open = settleFrom(s.w.Calendar, d.Add(1)) {
		first, can := s.sowFree(d)
		if !can {
			continue
		}
		left := s.w.longestAlone(CropDates{SowOn: first, MoveOn: d})
		if !ok || left < shortest {
			move, sow, ok, shortest = d, first, true, left
		}
		if left == 0 {
			break
		}
	}
	return move, sow, ok
}

// mostWait is how long a tub waits empty for seedlings that somebody looked
// after, in days.
const mostWait = 28

// mostSowings bounds how many crops of one tub are looked for in turn.
const mostSowings = 6

// sowFree is the first sowing day for crops that move on a day, whatever was
// sown already; false where one would have to be sown before today.
func (s *search) sowFree(move term.Date) (first term.Date, ok bool) {
	for _, c := range s.w.Crops {
		days, grows := c.Nursery()
		d := move
		if days > 0 && grows {
			d, grows = settleUntil(s.w.Calendar, move.Add(-int(math.Ceil(days))), s.w.Today)
		}
		if !grows {
			return d, false
		}
		if !ok || d.Before(first) {
			first, ok = d, true
		}
	}
	return first, ok
}

func (w Wish) lead() int {
	if w.LeadDays > 0 {
		return w.LeadDays
	}
	return int(value(factOrderLead))
}
