package jobs

// proofSteps is how many people the proof may try in slots: enough for a handful
// of pupils over a few weeks, a moment's work for any class.
const proofSteps = 400_000

// proofSize is the largest product of people and places for which all rotas are
// looked at: beyond it the steps would run out long before the end.
const proofSize = 400

// prover goes through every rota that could still be fairer than the best.
type prover struct {
	b     *board
	bound Score
	best  []int
	score Score
	steps int
	alike bool // no wishes: numbers are interchangeable until they have had a turn
}

// prove looks at all rotas, leaving out those that cannot be fairer than the
// board's. True means that none is; the board then holds the fairest. When there
// are too many or its steps run out it says false and the board holds the fairest it met.
func (b *board) prove(bound Score, wishes bool) bool {
	if b.n*len(b.slots) > proofSize {
		return false
	}
	v := &prover{b: b, bound: bound, best: append([]int(nil), b.who...), score: b.score, steps: proofSteps, alike: !wishes}
	b.clear()
	done := v.from(0, 0)
	b.restore(v.best)
	return done
}

// from tries everybody in slot s. fresh is the first number that has had no turn
// so far, when numbers are alike.
func (v *prover) from(s, fresh int) bool {
	b := v.b
	if s == len(b.slots) {
		if b.score.Compare(v.score) < 0 {
			v.score = b.score
			copy(v.best, b.who)
		}
		return true
	}
	first, last := 0, b.n-1
	if s > 0 && b.slots[s-1].group == b.slots[s].group {
		first = b.who[s-1] + 1 // who works together has no order
	}
	if v.alike {
		last = min(last, fresh)
	}
	for p := first; p <= last; p++ {
		if v.steps <= 0 {
			return false
		}
		v.steps--
		if b.at[p*len(b.weeks)+b.slots[s].week] >= 0 || !b.fits(s, p) {
			continue
		}
		b.put(s, p)
		done := v.hopeless(s+1) || v.from(s+1, max(fresh, p+1))
		b.take(s)
		if !done {
			return false
		}
	}
	return true
}

// hopeless tells whether nothing built on the filled slots can be fairer than
// the best: places where only growth is possible count as they stand, turns as
// if all that is left went to those with the fewest.
func (v *prover) hopeless(filled int) bool {
	b := v.b
	low := v.bound
	low.TurnsSquared = max(low.TurnsSquared, levelled(b.turns, b.score.TurnsSquared, len(b.slots)-filled))
	low.PairsAgain = max(low.PairsAgain, b.score.PairsAgain)
	return low.Compare(v.score) >= 0
}

// levelled is the least sum of squares after so many more turns.
func levelled(turns []int, squared, left int) int {
	level := append([]int(nil), turns...)
	for range left {
		least := 0
		for p, t := range level {
			if t < level[least] {
				least = p
			}
		}
		squared += 2*level[least] + 1
		level[least]++
	}
	return squared
}
