package jobs

import (
	"cmp"
	"slices"
)

// Change is one place that went from one to another because of an absence.
type Change struct {
	Week, Job int
	Out, In   int // numbers
	GoodFor   int // 0 for the week of an absence; else the week whose missed turn this makes good
}

// Owed is a turn missed in a week that no later week makes good, and who stood
// in for it; By is 0 when nobody could.
type Owed struct{ Week, Who, By int }

// Short is a place that nobody could take.
type Short struct{ Week, Job, Who int }

// absences changes the weeks in which somebody is away and nothing else, but for
// one place later on for each: there the one who was away takes a turn of the one
// who stood in. They are taken week by week, and what is to come is not looked
// at, so an absence reported later never changes a week that is over.
func (r *Rota) absences(b *board, away []Absence) {
	inWeek := map[int][]int{}
	for _, a := range away {
		inWeek[a.Week] = append(inWeek[a.Week], a.Who-1)
	}
	for w, week := range b.weeks {
		gone := inWeek[week]
		slices.Sort(gone)
		for _, p := range slices.Compact(gone) {
			if s := b.at[p*len(b.weeks)+w]; s >= 0 {
				r.standIn(b, s, p, gone)
			}
		}
	}
}

// standIn finds who takes a slot for the week, and where it is made good.
func (r *Rota) standIn(b *board, s, p int, gone []int) {
	w, job := b.slots[s].week, b.slots[s].job
	b.take(s)
	best, bestBack, found := -1, -1, [4]int{}
	for q := range b.n {
		if b.at[q*len(b.weeks)+w] >= 0 || slices.Contains(gone, q) || !b.fits(s, q) {
			continue
		}
		again := b.again(s, q)
		back := b.payBack(w, p, q)
		rank := [4]int{0, again, b.turns[q], q}
		if back < 0 {
			rank[0] = 1
		}
		if best < 0 || slices.Compare(rank[:], found[:]) < 0 {
			best, bestBack, found = q, back, rank
		}
	}
	week := b.weeks[w]
	if best < 0 {
		r.Short = append(r.Short, Short{Week: week, Job: job, Who: p + 1})
		r.Owed = append(r.Owed, Owed{Week: week, Who: p + 1})
		return
	}
	b.put(s, best)
	r.change(Change{Week: week, Job: job, Out: p + 1, In: best + 1})
	if bestBack < 0 {
		r.Owed = append(r.Owed, Owed{Week: week, Who: p + 1, By: best + 1})
		return
	}
	b.take(bestBack)
	b.put(bestBack, p)
	later := b.slots[bestBack]
	r.change(Change{Week: b.weeks[later.week], Job: later.job, Out: best + 1, In: p + 1, GoodFor: week})
}

func (r *Rota) change(c Change) {
	r.Changes = append(r.Changes, c)
	slices.SortStableFunc(r.Changes, func(x, y Change) int { return cmp.Compare(x.Week, y.Week) })
}

// again is how many of a slot's group q has worked with already.
func (b *board) again(s, q int) int {
	n := 0
	for _, other := range b.ofGroup[b.slots[s].group] {
		if m := b.who[other]; other != s && m >= 0 && b.paired[min(m, q)*b.n+max(m, q)] > 0 {
			n++
		}
	}
	return n
}

// payBack is the slot after week w in which p can take a turn of q: the soonest
// that makes no pair again, otherwise the soonest; -1 for none.
func (b *board) payBack(w, p, q int) int {
	soonest := -1
	for later := w + 1; later < len(b.weeks); later++ {
		s := b.at[q*len(b.weeks)+later]
		if s < 0 || b.at[p*len(b.weeks)+later] >= 0 || !b.fits(s, p) {
			continue
		}
		if b.again(s, p) == 0 {
			return s
		}
		if soonest < 0 {
			soonest = s
		}
	}
	return soonest
}
