package jobs

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/finding"
)

// fairest is the best score of all rotas there are, found by writing out every
// one of them: slow, and knowing nothing of bounds. False when there is none.
func fairest(a Ask) (Score, bool) {
	var turns []Turn
	for w := 1; w <= a.Weeks; w++ {
		for j := range a.Jobs {
			turns = append(turns, Turn{Week: w, Job: j, People: make([]int, a.Jobs[j].People)})
		}
	}
	var best Score
	some := false
	var next func(turn, place int)
	next = func(turn, place int) {
		if turn == len(turns) {
			c := count(a, turns)
			if c.twiceInAWeek == 0 && c.forbid == 0 && (!some || c.score.Compare(best) < 0) {
				best, some = c.score, true
			}
			return
		}
		people := turns[turn].People
		if place == len(people) {
			next(turn+1, 0)
			return
		}
		from := 1
		if place > 0 {
			from = people[place-1] + 1
		}
		for p := from; p <= a.Pupils; p++ {
			people[place] = p
			next(turn, place+1)
		}
		people[place] = 0
	}
	next(0, 0)
	return best, some
}

// small are asks whose rotas can all be written out.
func small() map[string]Ask {
	weighty := []Job{{Name: "a", People: 1, Weight: 2}, {Name: "b", People: 1, Weight: 1}}
	return map[string]Ask{
		"4 pupils, a pair, 4 weeks":            {Pupils: 4, Jobs: some(1, 2), Weeks: 4},
		"4 pupils, two pairs, 3 weeks":         {Pupils: 4, Jobs: some(2, 2), Weeks: 3},
		"5 pupils, two pairs, 2 weeks":         {Pupils: 5, Jobs: some(2, 2), Weeks: 2},
		"6 pupils, two trios, 2 weeks":         {Pupils: 6, Jobs: some(2, 3), Weeks: 2},
		"3 pupils, two jobs of weight 2 and 1": {Pupils: 3, Jobs: weighty, Weeks: 4},
		"one who can work with nobody":         {Pupils: 4, Jobs: some(1, 2), Weeks: 4, Never: [][2]int{{1, 2}, {1, 3}, {1, 4}}},
		"one who can work with one":            {Pupils: 4, Jobs: some(1, 2), Weeks: 4, Never: [][2]int{{1, 2}, {1, 3}}},
		"a wanted pair and an unwanted":        {Pupils: 5, Jobs: some(1, 2), Weeks: 3, Wanted: [][2]int{{2, 4}}, Never: [][2]int{{1, 5}}},
		"three wanted, room for two":           {Pupils: 5, Jobs: some(1, 2), Weeks: 2, Wanted: [][2]int{{1, 2}, {3, 4}, {2, 3}}},
		"nobody fits":                          {Pupils: 3, Jobs: some(1, 3), Weeks: 2, Never: [][2]int{{1, 3}}},
	}
}

func TestSmallRotasAgainstAllThereAre(t *testing.T) {
	for name, a := range small() {
		t.Run(name, func(t *testing.T) { againstAll(t, a) })
	}
}

type failing interface{ Fatalf(string, ...any) }

func againstAll(t failing, a Ask) {
	want, can := fairest(a)
	r, found := Make(a)
	if can == (finding.Worst(found) == finding.Stop) {
		t.Fatalf("there is a rota: %v; said %+v", can, found)
	}
	if can && (r.Fairness.Score != want || !r.Fairness.Proved) {
		t.Fatalf("%+v (proved %v), the fairest of all is %+v", r.Fairness.Score, r.Fairness.Proved, want)
	}
}

// The same on small asks drawn at random, wishes and weights among them.
func TestDrawnRotasAgainstAllThereAre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Ask{Pupils: rapid.IntRange(2, 4).Draw(t, "pupils"), Weeks: rapid.IntRange(1, 3).Draw(t, "weeks"), Effort: 2000}
		room := a.Pupils
		for i := range rapid.IntRange(1, 2).Draw(t, "jobs") {
			if room == 0 {
				break
			}
			people := rapid.IntRange(1, min(2, room)).Draw(t, "people")
			room -= people
			a.Jobs = append(a.Jobs, Job{Name: fmt.Sprint("job ", i), People: people, Weight: rapid.IntRange(1, 2).Draw(t, "weight")})
		}
		for x := 1; x <= a.Pupils; x++ {
			for y := x + 1; y <= a.Pupils; y++ {
				switch rapid.IntRange(0, 5).Draw(t, "wish") {
				case 0:
					a.Never = append(a.Never, [2]int{x, y})
				case 1:
					a.Wanted = append(a.Wanted, [2]int{x, y})
				}
			}
		}
		againstAll(t, a)
	})
}

// The proof alone, from the first filling and without the search before it,
// finds the fairest of all: so what it leaves out could not have been fairer.
func TestTheProofLeavesNothingOut(t *testing.T) {
	for name, a := range small() {
		t.Run(name, func(t *testing.T) {
			want, can := fairest(a)
			b, steps := newBoard(a), fillSteps
			if _, _, ok := b.fill(&steps); ok != can {
				t.Fatalf("filled %v, there is a rota %v", ok, can)
			}
			if !can {
				return
			}
			b.roughen()
			if !b.prove(b.bound(), len(a.Wanted)+len(a.Never) > 0) || b.score != want {
				t.Errorf("%+v, the fairest of all is %+v", b.score, want)
			}
		})
	}
}

// roughen makes every week like the first of the same jobs: as unfair as can be.
func (b *board) roughen() {
	who := append([]int(nil), b.who...)
	for _, slots := range b.ofWeek {
		for i, s := range slots {
			who[s] = b.who[b.ofWeek[0][i]]
		}
	}
	b.restore(who)
}
