package jobs

import (
	"slices"
	"testing"
)

// Arrangements that mathematics has long known to exist: the search finds one
// as good, and says that none is better.
func TestPublishedArrangements(t *testing.T) {
	for _, row := range []struct {
		name   string
		ask    Ask
		least  int // turns
		most   int
		source string
	}{
		{"six play all in five rounds", Ask{Pupils: 6, Jobs: some(3, 2), Weeks: 5}, 5, 5, "round robin by the circle method: n-1 rounds for n even (perlmonks.org node 301370)"},
		{"eight play all in seven rounds", Ask{Pupils: 8, Jobs: some(4, 2), Weeks: 7}, 7, 7, "round robin by the circle method: n-1 rounds for n even (perlmonks.org node 301370)"},
		{"seven play all in seven rounds, one rests", Ask{Pupils: 7, Jobs: some(3, 2), Weeks: 7}, 6, 6, "round robin by the circle method: an odd number adds a bye (perlmonks.org node 301370)"},
		{"a Latin square of five", Ask{Pupils: 5, Jobs: some(5, 1), Weeks: 5}, 5, 5, "Latin squares exist for every order: shift each row by one (from memory)"},
		{"a Latin square of nine", Ask{Pupils: 9, Jobs: some(9, 1), Weeks: 9}, 9, 9, "Latin squares exist for every order: shift each row by one (from memory)"},
		{"seven, one trio a week", Ask{Pupils: 7, Jobs: some(1, 3), Weeks: 7}, 3, 3, "the projective plane of order 2 (from memory)"},
		{"fifteen in trios for seven days", Ask{Pupils: 15, Jobs: some(5, 3), Weeks: 7}, 7, 7, "T. P. Kirkman, The Lady's and Gentleman's Diary, 1850, Query VI (from memory)"},
		{"seventeen pupils, four jobs in pairs, ten weeks", Ask{Pupils: 17, Jobs: some(4, 2), Weeks: 10}, 4, 5, "80 places: 12 have five turns and 5 have four (computed: 12*5+5*4)"},
	} {
		t.Run(row.name, func(t *testing.T) {
			r := made(t, row.ask)
			c := count(row.ask, r.Turns)
			if c.twiceInAWeek > 0 || c.score.PairsAgain > 0 {
				t.Errorf("%+v after %d moves (%s)", c, r.Fairness.Tried, row.source)
			}
			if slices.Min(c.turns[1:]) != row.least || slices.Max(c.turns[1:]) != row.most {
				t.Errorf("turns %v (%s)", c.turns[1:], row.source)
			}
			if c.score.JobsUnmet > 0 || !r.Fairness.Proved {
				t.Errorf("%d unmet, proved %v", c.score.JobsUnmet, r.Fairness.Proved)
			}
		})
	}
}

// The circle method as it is taught: one stays, the others move on by one. No
// rota of ours repeats more pairs than it does, for any even number and weeks.
func TestPublishedCircleMethod(t *testing.T) {
	for n := 4; n <= 10; n += 2 {
		for weeks := 1; weeks <= n-1; weeks++ {
			ask := Ask{Pupils: n, Jobs: some(n/2, 2), Weeks: weeks}
			var circle []Turn
			ring := make([]int, n-1)
			for i := range ring {
				ring[i] = i + 1
			}
			for w := 1; w <= weeks; w++ {
				circle = append(circle, Turn{Week: w, People: []int{n, ring[0]}})
				for i := 1; i < n/2; i++ {
					circle = append(circle, Turn{Week: w, Job: i, People: []int{ring[i], ring[n-1-i]}})
				}
				ring = append(ring[1:], ring[0])
			}
			theirs := count(ask, circle).score
			if theirs.PairsAgain != 0 {
				t.Fatalf("the circle method of %d repeats pairs: %+v", n, theirs)
			}
			if ours := made(t, ask).Fairness.Score; ours.Compare(theirs) > 0 {
				t.Errorf("%d pupils, %d weeks: %+v, the circle has %+v", n, weeks, ours, theirs)
			}
		}
	}
}
