package jobs

import "slices"

// fillSteps is how many trials the first filling may take; a week whose trials
// run out without an answer is said to be 'not found', not 'impossible'.
// giveUpSteps is the same for all fillings that look for a wish to give up.
const (
	fillSteps   = 400_000
	giveUpSteps = 2_000_000
)

// fill gives every slot of every week to somebody, those with the fewest turns
// first, so that no pair that must never be comes about. It returns the place of
// the week that could not be filled, and whether that is proved.
func (b *board) fill(steps *int) (week int, proved, ok bool) {
	for w := range b.weeks {
		if !b.fillFrom(b.ofWeek[w], steps) {
			return w, *steps > 0, false
		}
	}
	return 0, true, true
}

// fillFrom fills these slots in every way until one holds.
func (b *board) fillFrom(slots []int, steps *int) bool {
	if len(slots) == 0 {
		return true
	}
	s := slots[0]
	for _, p := range b.fewestFirst(s) {
		if *steps <= 0 {
			return false
		}
		*steps--
		if b.at[p*len(b.weeks)+b.slots[s].week] >= 0 || !b.fits(s, p) {
			continue
		}
		b.put(s, p)
		if b.fillFrom(slots[1:], steps) {
			return true
		}
		b.take(s)
	}
	return false
}

// fewestFirst are all by their turns, then by how many of the slot's group they
// have worked with, then by how often they had the job.
func (b *board) fewestFirst(s int) []int {
	order, rank := make([]int, b.n), make([][3]int, b.n)
	for p := range order {
		order[p] = p
		rank[p] = [3]int{b.turns[p], b.again(s, p), b.met[p*b.jobs+b.slots[s].job]}
	}
	slices.SortStableFunc(order, func(x, y int) int { return slices.Compare(rank[x][:], rank[y][:]) })
	return order
}

// GiveUp is a set of pairs that must never work together without which every
// week can be filled: one pair if one is enough, otherwise one of which each is
// needed. False when none was found in the trials allowed.
func GiveUp(ask Ask) ([][2]int, bool) {
	steps := giveUpSteps
	for i := range ask.Never {
		if fillable(ask, slices.Delete(slices.Clone(ask.Never), i, i+1), &steps) {
			return ask.Never[i : i+1], true
		}
	}
	var kept, given [][2]int
	for _, p := range ask.Never {
		if fillable(ask, append(slices.Clone(kept), p), &steps) {
			kept = append(kept, p)
		} else {
			given = append(given, p)
		}
	}
	return given, len(given) > 0 && fillable(ask, kept, &steps)
}

func fillable(ask Ask, never [][2]int, steps *int) bool {
	ask.Never = never
	_, _, ok := newBoard(ask).fill(steps)
	return ok
}
