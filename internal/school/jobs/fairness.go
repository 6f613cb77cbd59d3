package jobs

import (
	"fmt"
	"slices"
)

// Fairness says how even a rota is before any absence, and how sure it is that
// none is fairer.
type Fairness struct {
	Score       Score
	Bound       Score // no rota is better than this in any place
	Turns, Load []int // by number, from 1 at place 0
	TurnsLeast  int
	TurnsMost   int
	LoadLeast   int
	LoadMost    int
	Proved      bool // no rota is fairer: the bound is reached or all were looked at
	ByBound     bool // the bound alone proves it
	Sure        int  // how many places of the score, from the first, are proved, 0 to 5
	Tried       int  // moves of the search
}

func (b *board) measure(f *Fairness) {
	f.Score = b.score
	f.Turns, f.Load = slices.Clone(b.turns), slices.Clone(b.load)
	f.TurnsLeast, f.TurnsMost = slices.Min(b.turns), slices.Max(b.turns)
	f.LoadLeast, f.LoadMost = slices.Min(b.load), slices.Max(b.load)
	got, low := f.Score.list(), f.Bound.list()
	for f.Sure < len(got) && (f.Proved || got[f.Sure] == low[f.Sure]) {
		f.Sure++
	}
}

// Says is the fairness in sentences: turns, partners, jobs, weights, and how
// sure that is.
func (f Fairness) Says() []string {
	out := []string{fmt.Sprintf("Turns: least %d, most %d.", f.TurnsLeast, f.TurnsMost)}
	switch n := f.Score.PairsAgain; n {
	case 0:
		out = append(out, "Nobody works twice with the same partner.")
	case 1:
		out = append(out, "Once, two work together who had before.")
	default:
		out = append(out, fmt.Sprintf("%d times, two work together who had before.", n))
	}
	if n := f.Score.JobsUnmet; n > 0 {
		out = append(out, fmt.Sprintf("Some do not meet every job: %d of these meetings are missing.", n))
	} else {
		out = append(out, "Everyone meets every job.")
	}
	out = append(out, fmt.Sprintf("Weights: least %d, most %d.", f.LoadLeast, f.LoadMost))
	switch {
	case f.ByBound:
		return append(out, "No rota is fairer: counting places and pairs shows it.")
	case f.Proved:
		return append(out, "No rota is fairer: all of them were looked at.")
	}
	names := [...]string{"turns", "partners", "wanted pairs", "jobs", "weights"}
	return append(out, fmt.Sprintf("A fairer rota may exist in %s. %d changes were tried.", names[f.Sure], f.Tried))
}
