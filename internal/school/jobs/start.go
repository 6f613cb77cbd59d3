package jobs

import (
	"cmp"
	"slices"
)

// fillSteps is how many trials one week's first filling may take; a week whose
// tries run out without an answer is said to be 'not found', not 'impossible'.
const fillSteps = 200_000

// fill gives every slot of every week to somebody, those with the fewest turns
// first, so that no pair that must never be comes about. It returns the place of
// the week that could not be filled, and whether that is proved.
func (b *board) fill() (week int, proved, ok bool) {
	for w := range b.weeks {
		steps := fillSteps
		if !b.fillFrom(b.ofWeek[w], &steps) {
			return w, steps > 0, false
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
	for _, p := range b.fewestFirst() {
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

func (b *board) fewestFirst() []int {
	order := make([]int, b.n)
	for p := range order {
		order[p] = p
	}
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(b.turns[x], b.turns[y]) })
	return order
}

// GiveUp is the smallest set it finds of pairs that must never work together
// without which every week can be filled; each of them is needed. False when the
// other wishes alone already could not be filled in the trials allowed.
func GiveUp(ask Ask) ([][2]int, bool) {
	for i := range ask.Never {
		if fillable(ask, slices.Delete(slices.Clone(ask.Never), i, i+1)) {
			return ask.Never[i : i+1], true
		}
	}
	var kept, given [][2]int
	for _, p := range ask.Never {
		if fillable(ask, append(slices.Clone(kept), p)) {
			kept = append(kept, p)
		} else {
			given = append(given, p)
		}
	}
	return given, len(given) > 0 && fillable(ask, kept)
}

func fillable(ask Ask, never [][2]int) bool {
	ask.Never = never
	_, _, ok := newBoard(ask).fill()
	return ok
}
