package jobs

import "cmp"

// Score is how fair a rota is, each the better the smaller, the first deciding
// before the second and so on. Two in a week and pairs that must never be do not
// occur at all, so they have no place here.
type Score struct {
	TurnsSquared int // sum over people of turns squared: least when turns differ by at most 1
	PairsAgain   int // times two worked together who had before
	WantedMissed int // wanted pairs that never came about
	JobsUnmet    int // person and job that never met
	LoadSquared  int // sum over people of weights squared
}

func (s Score) list() [5]int {
	return [5]int{s.TurnsSquared, s.PairsAgain, s.WantedMissed, s.JobsUnmet, s.LoadSquared}
}

// Compare is -1 when s is fairer, 1 when t is, 0 when they are equal.
func (s Score) Compare(t Score) int {
	a, b := s.list(), t.list()
	for i := range a {
		if c := cmp.Compare(a[i], b[i]); c != 0 {
			return c
		}
	}
	return 0
}

// evenly is the least sum of squares of n whole numbers with this total, times
// unit squared.
func evenly(total, n, unit int) int {
	t := total / unit
	q, r := t/n, t%n
	return ((n-r)*q*q + r*(q+1)*(q+1)) * unit * unit
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// bound is a score that no rota beats in any place, by counting alone: turns and
// weights shared evenly, no more pairs than there are, and nobody meeting more
// jobs than turns nor a job more people than its places.
func (b *board) bound() Score {
	var out Score
	out.TurnsSquared = evenly(len(b.slots), b.n, 1)
	unit, total := 0, 0
	places := make([]int, b.jobs)
	for _, s := range b.slots {
		unit = gcd(unit, b.weight[s.job])
		total += b.weight[s.job]
		places[s.job]++
	}
	out.LoadSquared = evenly(total, b.n, unit)
	events := 0
	for _, g := range b.ofGroup {
		events += len(g) * (len(g) - 1) / 2
	}
	allowed, wanted := 0, 0
	for i := range b.never {
		if i/b.n < i%b.n && !b.never[i] {
			allowed++
		}
		if i/b.n < i%b.n && b.wanted[i] {
			wanted++
		}
	}
	out.PairsAgain = max(0, events-allowed)
	out.WantedMissed = max(0, wanted-events)
	byJobs := 0
	for _, p := range places {
		byJobs += min(p, b.n)
	}
	out.JobsUnmet = b.n*b.jobs - min(byJobs, len(b.slots), b.n*b.jobs)
	if q := len(b.slots) / b.n; q < b.jobs {
		// Even turns: so many have one turn more than the others.
		r := len(b.slots) % b.n
		out.JobsUnmet = max(out.JobsUnmet, b.n*b.jobs-(b.n-r)*q-r*min(q+1, b.jobs))
	}
	return out
}
