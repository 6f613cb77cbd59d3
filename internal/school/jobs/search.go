package jobs

import "math/rand/v2"

// What a step towards unfairness costs while the search roams, and how warm it
// begins and how it cools. They steer it only: what is kept is decided by
// Score.Compare. All is in whole numbers, so that every machine takes one way.
const (
	costTurns  = 60_000
	costPairs  = 80_000
	costWanted = 50_000
	costUnmet  = 25_000
	costLoad   = 8_000
	warmStart  = 27_700 // a step that costs so much is taken every second time
	coolTo     = 9_544  // of 10,000, from stage to stage
	stages     = 64
	roams      = 4 // times it begins again from the best so far
	tradeEvery = 8 // one move in so many lets whole groups change jobs
)

// halves are 2^(-i/16), times 2^32.
var halves = [16]uint64{
	0x100000000, 0xf5257d15, 0xeac0c6e8, 0xe0ccdeec,
	0xd744fccb, 0xce248c15, 0xc5672a11, 0xbd08a39f,
	0xb504f334, 0xad583eea, 0xa5fed6aa, 0x9ef53261,
	0x9837f052, 0x91c3d374, 0x8b95c1e4, 0x85aac368,
}

func (s Score) cost() int {
	return costTurns*s.TurnsSquared + costPairs*s.PairsAgain + costWanted*s.WantedMissed + costUnmet*s.JobsUnmet + costLoad*s.LoadSquared
}

// search betters a filled board by simulated annealing: one slot to somebody
// free, or two slots of a week exchanged. It stops when the bound is reached or
// the effort is spent, leaves the board at the best it met, and says how many
// moves it tried. The same board, bound, seed and effort give the same end.
func (b *board) search(bound Score, seed uint64, effort int) (tried int) {
	best := append([]int(nil), b.who...)
	bestScore := b.score
	r := rand.New(rand.NewPCG(seed, 0x6a6f6273)) // the second word is only a name
	per := max(stages, effort/roams)
	warm := warmStart
	for tried < effort && bestScore.Compare(bound) > 0 {
		if tried%per == 0 {
			b.restore(best)
			warm = warmStart
		} else if tried%per%(per/stages) == 0 {
			warm = max(1, warm*coolTo/10_000)
		}
		tried++
		if !b.step(r, warm) {
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
func (b *board) step(r *rand.Rand, warm int) bool {
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
func (b *board) stands(r *rand.Rand, before, warm int) bool {
	rise := b.score.cost() - before
	if rise <= 0 {
		return true
	}
	k := rise * len(halves) / warm
	return k/len(halves) < 32 && uint64(r.Uint32()) < halves[k%len(halves)]>>(k/len(halves))
}

// trade tries to let two groups of a week, of one size, change jobs: who works
// with whom stays.
func (b *board) trade(r *rand.Rand, warm int) bool {
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
