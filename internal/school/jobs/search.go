package jobs

import (
	"math"
	"math/rand/v2"
)

// What a step towards unfairness costs while the search roams, and how warm it
// begins and ends. They steer it only: what is kept is decided by Score.Compare.
const (
	costTurns  = 6.0
	costPairs  = 8.0
	costWanted = 5.0
	costUnmet  = 2.5
	costLoad   = 0.8
	warmStart  = 4.0
	warmEnd    = 0.2
	roams      = 4 // times it begins again from the best so far
	tradeEvery = 8 // one move in so many lets whole groups change jobs
)

func (s Score) cost() float64 {
	return costTurns*float64(s.TurnsSquared) + costPairs*float64(s.PairsAgain) +
		costWanted*float64(s.WantedMissed) + costUnmet*float64(s.JobsUnmet) + costLoad*float64(s.LoadSquared)
}

// search betters a filled board by simulated annealing: one slot to somebody
// free, or two slots of a week exchanged. It stops when the bound is reached or
// the effort is spent, leaves the board at the best it met, and says how many
// moves it tried. The same board, bound, seed and effort give the same end.
func (b *board) search(bound Score, seed uint64, effort int) (tried int) {
	best := append([]int(nil), b.who...)
	bestScore := b.score
	r := rand.New(rand.NewPCG(seed, 0x6a6f6273)) // the second word is only a name
	per := max(1, effort/roams)
	for tried < effort && bestScore.Compare(bound) > 0 && b.n > 1 && len(b.slots) > 0 {
		part := float64(tried%per) / float64(per)
		if tried%per == 0 {
			b.restore(best)
		}
		tried++
		if !b.step(r, warmStart*math.Pow(warmEnd/warmStart, part)) {
			continue
		}
		if b.score.Compare(bestScore) < 0 {
			bestScore = b.score
			copy(best, b.who)
		}
	}
	b.restore(best)
	return tried
}

// step tries one move and tells whether it stands.
func (b *board) step(r *rand.Rand, warm float64) bool {
	if r.IntN(tradeEvery) == 0 {
		return b.trade(r, warm)
	}
	s, q := r.IntN(len(b.slots)), r.IntN(b.n)
	p := b.who[s]
	other := b.at[q*len(b.weeks)+b.slots[s].week]
	if p == q || (other >= 0 && b.slots[other].group == b.slots[s].group) {
		return false
	}
	if !b.fits(s, q) || (other >= 0 && !b.fits(other, p)) {
		return false
	}
	before := b.score.cost()
	b.exchange(s, p, other, q)
	if b.stands(r, before, warm) {
		return true
	}
	b.exchange(s, q, other, p)
	return false
}

// stands tells whether a move that is made is kept: always when it costs
// nothing, otherwise the less likely the more it costs and the cooler it is.
func (b *board) stands(r *rand.Rand, before, warm float64) bool {
	rise := b.score.cost() - before
	return rise <= 0 || r.Float64() < math.Exp(-rise/warm)
}

// trade tries to let two groups of a week, of one size, change jobs: who works
// with whom stays.
func (b *board) trade(r *rand.Rand, warm float64) bool {
	s := r.IntN(len(b.slots))
	week := b.ofWeek[b.slots[s].week]
	t := week[r.IntN(len(week))]
	x, y := b.ofGroup[b.slots[s].group], b.ofGroup[b.slots[t].group]
	if b.slots[s].group == b.slots[t].group || len(x) != len(y) {
		return false
	}
	before := b.score.cost()
	b.swapGroups(x, y)
	if b.stands(r, before, warm) {
		return true
	}
	b.swapGroups(x, y)
	return false
}

func (b *board) swapGroups(x, y []int) {
	var px, py [MostPeople]int
	for i := range x {
		px[i], py[i] = b.who[x[i]], b.who[y[i]]
		b.take(x[i])
		b.take(y[i])
	}
	for i := range x {
		b.put(x[i], py[i])
		b.put(y[i], px[i])
	}
}

// exchange gives slot s from p to q, and q's slot of that week, if any, to p.
func (b *board) exchange(s, p, other, q int) {
	b.take(s)
	if other >= 0 {
		b.take(other)
		b.put(other, p)
	}
	b.put(s, q)
}

// restore puts a whole assignment back.
func (b *board) restore(who []int) {
	b.clear()
	for s, p := range who {
		if p >= 0 {
			b.put(s, p)
		}
	}
}

// clear frees every slot.
func (b *board) clear() {
	for s := range b.slots {
		if b.who[s] >= 0 {
			b.take(s)
		}
	}
}
