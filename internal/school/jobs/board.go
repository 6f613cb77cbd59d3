package jobs

// slot is one place at one job in one week.
type slot struct{ week, job, group int }

// board is a rota while it is worked on: every slot's holder and, kept in step
// with them, all that fairness is made of. People and weeks count from 0 here.
type board struct {
	n, jobs int
	weight  []int
	slots   []slot
	weeks   []int   // the term's number of each open week
	ofWeek  [][]int // slots of each open week
	ofGroup [][]int // slots of each job in each week
	never   []bool  // n × n
	wanted  []bool  // n × n
	who     []int
	at      []int // n × weeks: the slot held, -1 for none

	turns, load []int
	met, paired []int // n × jobs, n × n
	score       Score
}

// newBoard is an empty board for an ask that Check has let pass.
func newBoard(a Ask) *board {
	b := &board{n: a.Count(), jobs: len(a.Jobs), weeks: a.open()}
	b.ofWeek = make([][]int, len(b.weeks))
	for _, j := range a.Jobs {
		b.weight = append(b.weight, j.normal(a.Weeks).Weight)
	}
	for w, week := range b.weeks {
		for i, j := range a.Jobs {
			if j = j.normal(a.Weeks); week < j.From || week > j.To {
				continue
			}
			var group []int
			for range j.People {
				group = append(group, len(b.slots))
				b.ofWeek[w] = append(b.ofWeek[w], len(b.slots))
				b.slots = append(b.slots, slot{week: w, job: i, group: len(b.ofGroup)})
			}
			b.ofGroup = append(b.ofGroup, group)
		}
	}
	b.never, b.wanted = b.matrix(a.Never), b.matrix(a.Wanted)
	b.who = make([]int, len(b.slots))
	for s := range b.who {
		b.who[s] = -1
	}
	b.at = make([]int, b.n*len(b.weeks))
	for i := range b.at {
		b.at[i] = -1
	}
	b.turns, b.load = make([]int, b.n), make([]int, b.n)
	b.met, b.paired = make([]int, b.n*b.jobs), make([]int, b.n*b.n)
	b.score = Score{JobsUnmet: b.n * b.jobs}
	for i, w := range b.wanted {
		if w && i/b.n < i%b.n {
			b.score.WantedMissed++
		}
	}
	return b
}

func (b *board) matrix(pairs [][2]int) []bool {
	m := make([]bool, b.n*b.n)
	for _, p := range pairs {
		x, y := p[0]-1, p[1]-1
		m[x*b.n+y], m[y*b.n+x] = true, true
	}
	return m
}

// put gives a free slot to one who has no other in its week.
func (b *board) put(s, p int) {
	b.set(s, p, 1)
	b.who[s] = p
	b.at[p*len(b.weeks)+b.slots[s].week] = s
}

// take frees a slot.
func (b *board) take(s int) {
	p := b.who[s]
	b.who[s] = -1
	b.at[p*len(b.weeks)+b.slots[s].week] = -1
	b.set(s, p, -1)
}

// set moves all that is counted by one turn, forwards or back.
func (b *board) set(s, p, by int) {
	job, w := b.slots[s].job, b.weight[b.slots[s].job]
	b.score.TurnsSquared += by*2*b.turns[p] + 1
	b.turns[p] += by
	b.score.LoadSquared += by*2*b.load[p]*w + w*w
	b.load[p] += by * w
	m := &b.met[p*b.jobs+job]
	if *m == 0 || (*m == 1 && by < 0) {
		b.score.JobsUnmet -= by
	}
	*m += by
	for _, other := range b.ofGroup[b.slots[s].group] {
		q := b.who[other]
		if other == s || q < 0 {
			continue
		}
		c := &b.paired[min(p, q)*b.n+max(p, q)]
		first := *c == 0 || (*c == 1 && by < 0)
		*c += by
		if !first {
			b.score.PairsAgain += by
		} else if b.wanted[p*b.n+q] {
			b.score.WantedMissed -= by
		}
	}
}

// fits tells whether p may join the others of a slot's group; the one in the
// slot itself does not count.
func (b *board) fits(s, p int) bool {
	for _, other := range b.ofGroup[b.slots[s].group] {
		if q := b.who[other]; other != s && q >= 0 && b.never[p*b.n+q] {
			return false
		}
	}
	return true
}
