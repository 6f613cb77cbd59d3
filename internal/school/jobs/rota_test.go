package jobs

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/finding"
)

// some are n jobs for so many people each.
func some(n, people int) []Job {
	var out []Job
	for i := range n {
		out = append(out, Job{Name: fmt.Sprintf("job %c", 'A'+i), People: people})
	}
	return out
}

// tally counts a rota anew, from its turns alone.
type tally struct {
	score                Score
	turns                []int
	twiceInAWeek, forbid int
}

func count(a Ask, turns []Turn) tally {
	n := a.Count()
	t := tally{turns: make([]int, n+1)}
	load, met := make([]int, n+1), map[[2]int]bool{}
	pairs, week := map[[2]int]int{}, map[[2]int]int{}
	for _, turn := range turns {
		weight := max(1, a.Jobs[turn.Job].Weight)
		for i, p := range turn.People {
			t.turns[p]++
			load[p] += weight
			met[[2]int{p, turn.Job}] = true
			if week[[2]int{p, turn.Week}]++; week[[2]int{p, turn.Week}] > 1 {
				t.twiceInAWeek++
			}
			for _, q := range turn.People[:i] {
				if pairs[[2]int{min(p, q), max(p, q)}]++; pairs[[2]int{min(p, q), max(p, q)}] > 1 {
					t.score.PairsAgain++
				}
			}
		}
	}
	for p := 1; p <= n; p++ {
		t.score.TurnsSquared += t.turns[p] * t.turns[p]
		t.score.LoadSquared += load[p] * load[p]
	}
	t.score.JobsUnmet = n*len(a.Jobs) - len(met)
	wanted := map[[2]int]bool{}
	for _, w := range a.Wanted {
		wanted[inOrder(w)] = true
	}
	for w := range wanted {
		if pairs[w] == 0 {
			t.score.WantedMissed++
		}
	}
	for _, p := range a.Never {
		t.forbid += pairs[inOrder(p)]
	}
	return t
}

func made(t *testing.T, a Ask) Rota {
	t.Helper()
	r, found := Make(a)
	for _, f := range found {
		if f.Level == finding.Stop {
			t.Fatalf("%s: %s %s", f.Code, f.Text, f.Hint)
		}
	}
	return r
}

func TestWhatARotaReaches(t *testing.T) {
	for _, row := range []struct {
		name         string
		ask          Ask
		spread       int
		again, unmet int
		proved       bool
	}{
		{"each of four teams does each of four jobs in four weeks", Ask{Teams: []string{"Slate", "Jade", "Amber", "Opal"}, Jobs: some(4, 1), Weeks: 4}, 0, 0, 0, true},
		{"a class of 32 with five jobs in pairs for 14 weeks", Ask{Pupils: 32, Jobs: some(5, 2), Weeks: 14}, 1, 0, 32*5 - 140, true},
		{"26 pupils in pairs, a break in week 6", Ask{Pupils: 26, Jobs: some(4, 2), Weeks: 12, Closed: []int{6}}, 1, 0, 26*4 - 88, true},
		{"trios", Ask{Pupils: 18, Jobs: some(3, 3), Weeks: 6}, 0, 0, 0, true},
		{"two pupils can only meet again", Ask{Pupils: 2, Jobs: some(1, 2), Weeks: 5}, 0, 4, 0, true},
		{"one pupil, one job", Ask{Pupils: 1, Jobs: some(1, 1), Weeks: 3}, 0, 0, 0, true},
		// Each new trio has two of one old trio and one of the other, and that one
		// stays at its job, in both trios.
		{"six in trios must meet again in the second week", Ask{Pupils: 6, Jobs: some(2, 3), Weeks: 2}, 0, 2, 2, true},
	} {
		t.Run(row.name, func(t *testing.T) {
			r := made(t, row.ask)
			f := r.Fairness
			if got := f.TurnsMost - f.TurnsLeast; got != row.spread {
				t.Errorf("turns differ by %d, want %d", got, row.spread)
			}
			if f.Score.PairsAgain != row.again || f.Score.JobsUnmet != row.unmet || f.Proved != row.proved {
				t.Errorf("%+v proved %v after %d moves; bound %+v", f.Score, f.Proved, f.Tried, f.Bound)
			}
		})
	}
}

func TestWhatStopsARota(t *testing.T) {
	for _, row := range []struct {
		name string
		ask  Ask
		code string
		says string
	}{
		{"nobody", Ask{Jobs: some(1, 1), Weeks: 3}, "rota-nobody", "0"},
		{"no jobs", Ask{Pupils: 3, Weeks: 3}, "rota-jobs", "0"},
		{"all closed", Ask{Pupils: 3, Jobs: some(1, 1), Weeks: 2, Closed: []int{1, 2}}, "rota-closed", "closed"},
		{"one pupil for a pair", Ask{Pupils: 1, Jobs: some(1, 2), Weeks: 2}, "rota-too-many-jobs", "take 2; there are 1"},
		{"more jobs than pupils", Ask{Pupils: 3, Jobs: some(4, 1), Weeks: 2}, "rota-too-many-jobs", "take 4; there are 3"},
		{"a job in a closed week", Ask{Pupils: 3, Jobs: []Job{{Name: "x", From: 2, To: 2}}, Weeks: 3, Closed: []int{2}}, "rota-job-closed", "closed"},
		{"wanted and never", Ask{Pupils: 4, Jobs: some(1, 2), Weeks: 3, Wanted: [][2]int{{1, 2}}, Never: [][2]int{{2, 1}}}, "rota-pair-both", "1 and 2"},
		{"a number not there", Ask{Pupils: 4, Jobs: some(1, 2), Weeks: 3, Never: [][2]int{{4, 9}}}, "rota-pair-number", "9"},
		{"an adult's job", Ask{Pupils: 4, Jobs: []Job{{Name: "Unplug the pump"}}, Weeks: 3}, "rota-adult-job", "adult"},
		{"two who must not be the pair", Ask{Pupils: 2, Jobs: some(1, 2), Weeks: 3, Never: [][2]int{{1, 2}}}, "rota-no-room", "cannot be filled"},
	} {
		t.Run(row.name, func(t *testing.T) {
			r, found := Make(row.ask)
			if len(found) != 1 || found[0].Code != row.code || found[0].Level != finding.Stop || !strings.Contains(found[0].Text, row.says) {
				t.Fatalf("%+v", found)
			}
			if found[0].Hint == "" || found[0].Field == "" || len(r.Turns) > 0 {
				t.Errorf("a stop has a hint, a field and no rota: %+v", found[0])
			}
		})
	}
}

// Four in two pairs, and 1 must never work with any of the others: giving up any
// one of the three wishes is enough; giving up 3 and 4, which is no matter, is not.
func TestWhichWishToGiveUp(t *testing.T) {
	ask := Ask{Pupils: 4, Jobs: some(2, 2), Weeks: 2, Never: [][2]int{{3, 4}, {1, 2}, {1, 3}, {1, 4}}}
	got, ok := GiveUp(ask)
	if !ok || !reflect.DeepEqual(got, [][2]int{{1, 3}}) {
		// Without 1-2 the rest is 3-4, which is unwanted; without 1-3 it is 2-4.
		t.Fatalf("%v %v", got, ok)
	}
}

func drawAsk(t *rapid.T, most int) Ask {
	a := Ask{Pupils: rapid.IntRange(1, most).Draw(t, "pupils"), Weeks: rapid.IntRange(1, 8).Draw(t, "weeks"), Seed: rapid.Uint64().Draw(t, "seed"), Effort: 3000}
	for i := range rapid.IntRange(1, 4).Draw(t, "jobs") {
		from := rapid.IntRange(1, a.Weeks).Draw(t, "from")
		a.Jobs = append(a.Jobs, Job{
			Name: fmt.Sprintf("job %d", i), People: rapid.IntRange(1, 3).Draw(t, "people"), Weight: rapid.IntRange(0, 3).Draw(t, "weight"),
			From: from, To: rapid.IntRange(from, a.Weeks).Draw(t, "to"),
		})
	}
	who := rapid.IntRange(1, a.Pupils)
	for range rapid.IntRange(0, 3).Draw(t, "pairs") {
		p := [2]int{who.Draw(t, "x"), who.Draw(t, "y")}
		if rapid.Bool().Draw(t, "never") {
			a.Never = append(a.Never, p)
		} else {
			a.Wanted = append(a.Wanted, p)
		}
	}
	for range rapid.IntRange(0, 2).Draw(t, "closed") {
		a.Closed = append(a.Closed, rapid.IntRange(1, a.Weeks).Draw(t, "closed week"))
	}
	return a
}

// Whatever is asked: either a stop in words or a rota in which every place of
// every open week is taken, nobody has two jobs in a week, no unwanted pair
// works, and the score is what an independent count says, not under the bound.
func TestARotaKeepsItsWord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAsk(t, 16)
		r, found := Make(a)
		if finding.Worst(found) == finding.Stop {
			if len(r.Turns) > 0 {
				t.Fatal("a rota beside a stop")
			}
			return
		}
		c := count(a, r.Turns)
		if c.twiceInAWeek > 0 || c.forbid > 0 || c.score != r.Fairness.Score {
			t.Fatalf("%+v, said %+v", c, r.Fairness.Score)
		}
		places := map[[2]int]int{}
		for _, turn := range r.Turns {
			if slices.Contains(a.Closed, turn.Week) {
				t.Fatalf("a turn in closed week %d", turn.Week)
			}
			places[[2]int{turn.Week, turn.Job}] += len(turn.People)
		}
		for w := 1; w <= a.Weeks; w++ {
			for j, job := range a.Jobs {
				want := job.People
				if w < job.From || w > job.To || slices.Contains(a.Closed, w) {
					want = 0
				}
				if places[[2]int{w, j}] != want {
					t.Fatalf("week %d job %d: %d people", w, j, places[[2]int{w, j}])
				}
			}
		}
		got, low := r.Fairness.Score.list(), r.Fairness.Bound.list()
		for i := range got {
			if got[i] < low[i] {
				t.Fatalf("score %v is under its bound %v", got, low)
			}
		}
		if len(a.Never) == 0 && r.Fairness.TurnsMost-r.Fairness.TurnsLeast > 1 {
			t.Fatalf("turns from %d to %d", r.Fairness.TurnsLeast, r.Fairness.TurnsMost)
		}
		if again, _ := Make(a); !reflect.DeepEqual(r, again) {
			t.Fatal("the same ask gave another rota")
		}
	})
}

// Numbers that make no sense are answered in words, never by a panic or an
// endless search.
func TestAnyNumbersAreAnswered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.OneOf(rapid.IntRange(-3, 12), rapid.SampledFrom([]int{-1 << 62, 1 << 62, 201, 61}))
		a := Ask{Pupils: number.Draw(t, "pupils"), Weeks: number.Draw(t, "weeks"), Effort: 200}
		for range rapid.IntRange(0, 3).Draw(t, "jobs") {
			a.Jobs = append(a.Jobs, Job{
				Name: rapid.StringN(0, 9, -1).Draw(t, "name"), People: number.Draw(t, "people"),
				Weight: number.Draw(t, "weight"), From: number.Draw(t, "from"), To: number.Draw(t, "to"),
			})
		}
		for range rapid.IntRange(0, 3).Draw(t, "pairs") {
			a.Never = append(a.Never, [2]int{number.Draw(t, "x"), number.Draw(t, "y")})
			a.Closed = append(a.Closed, number.Draw(t, "closed"))
			a.Away = append(a.Away, Absence{number.Draw(t, "week"), number.Draw(t, "who")})
		}
		r, found := Make(a)
		if (finding.Worst(found) == finding.Stop) == (len(r.Turns) > 0) {
			t.Fatalf("%d turns, said %+v", len(r.Turns), found)
		}
	})
}
