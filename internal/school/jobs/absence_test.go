package jobs

import (
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/finding"
)

// One pupil away for one week: two turns change, that week's and the one that
// makes it good, and both pupils end with as many turns as before.
func TestAnAbsenceChangesItsWeekAndIsMadeGood(t *testing.T) {
	ask := Ask{Pupils: 12, Jobs: some(3, 2), Weeks: 10}
	before := made(t, ask)
	gone := before.Turns[6] // a turn of week 3
	ask.Away = []Absence{{Week: gone.Week, Who: gone.People[0]}}
	after := made(t, ask)
	if len(after.Changes) != 2 || len(after.Owed) > 0 || len(after.Short) > 0 {
		t.Fatalf("%+v owed %+v short %+v", after.Changes, after.Owed, after.Short)
	}
	first, second := after.Changes[0], after.Changes[1]
	if first.Week != gone.Week || first.Out != gone.People[0] || first.GoodFor != 0 {
		t.Errorf("%+v", first)
	}
	if second.Week <= gone.Week || second.In != first.Out || second.Out != first.In || second.GoodFor != gone.Week {
		t.Errorf("%+v", second)
	}
	differ := 0
	for i := range before.Turns {
		if !reflect.DeepEqual(before.Turns[i], after.Turns[i]) {
			differ++
		}
	}
	if differ != 2 {
		t.Errorf("%d turns changed", differ)
	}
	if got := count(ask, after.Turns).turns[1:]; !slices.Equal(got, before.Fairness.Turns) {
		t.Errorf("turns %v, were %v", got, before.Fairness.Turns)
	}
}

func TestAnAbsenceThatNothingMakesGood(t *testing.T) {
	for _, row := range []struct {
		name        string
		ask         Ask
		owed, short int
	}{
		{"the last week", Ask{Pupils: 6, Jobs: some(1, 6), Weeks: 1, Away: []Absence{{1, 3}}}, 1, 1},
		{"the last week, one is free", Ask{Pupils: 3, Jobs: some(2, 1), Weeks: 1, Away: []Absence{{1, 1}}}, 1, 0},
		{"a closed week", Ask{Pupils: 3, Jobs: some(2, 1), Weeks: 2, Closed: []int{2}, Away: []Absence{{2, 1}}}, 0, 0},
		{"said twice", Ask{Pupils: 3, Jobs: some(2, 1), Weeks: 1, Away: []Absence{{1, 1}, {1, 1}}}, 1, 0},
		{"everybody", Ask{Pupils: 2, Jobs: some(1, 2), Weeks: 2, Away: []Absence{{1, 1}, {1, 2}}}, 2, 2},
	} {
		r := made(t, row.ask)
		if len(r.Owed) != row.owed || len(r.Short) != row.short {
			t.Errorf("%s: owed %+v, short %+v", row.name, r.Owed, r.Short)
		}
	}
}

// Whoever is away: nobody works in a week of absence, a turn that changed is
// named, what is made good restores the turns, and an absence more in the last
// of these weeks leaves every week before it as it was.
func TestAbsencesKeepTheirWord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawAsk(t, 9)
		a.Effort = 500
		before, found := Make(a)
		if finding.Worst(found) == finding.Stop {
			return
		}
		for range rapid.IntRange(1, 5).Draw(t, "absences") {
			a.Away = append(a.Away, Absence{Week: rapid.IntRange(1, a.Weeks).Draw(t, "week"), Who: rapid.IntRange(1, a.Pupils).Draw(t, "who")})
		}
		after, _ := Make(a)
		checkAway(t, a, before, after)
		last := a.Away[0].Week
		for _, x := range a.Away {
			last = max(last, x.Week)
		}
		more := a
		more.Away = append(slices.Clone(a.Away), Absence{Week: last, Who: rapid.IntRange(1, a.Pupils).Draw(t, "one more")})
		later, _ := Make(more)
		for i, turn := range after.Turns {
			if turn.Week < last && !reflect.DeepEqual(turn, later.Turns[i]) {
				t.Fatalf("week %d is over and changed", turn.Week)
			}
		}
	})
}

func checkAway(t *rapid.T, a Ask, before, after Rota) {
	c := count(a, after.Turns)
	if c.twiceInAWeek > 0 || c.forbid > 0 {
		t.Fatalf("%+v", c)
	}
	if before.Fairness.Score != after.Fairness.Score {
		t.Fatal("an absence changed what the rota was made with")
	}
	named := map[[2]int]bool{}
	for _, x := range after.Changes {
		named[[2]int{x.Week, x.Job}] = true
	}
	for _, x := range after.Short {
		named[[2]int{x.Week, x.Job}] = true
	}
	for i, turn := range after.Turns {
		if !reflect.DeepEqual(turn, before.Turns[i]) && !named[[2]int{turn.Week, turn.Job}] {
			t.Fatalf("week %d job %d changed unsaid", turn.Week, turn.Job)
		}
		for _, x := range a.Away {
			if x.Week == turn.Week && slices.Contains(turn.People, x.Who) {
				t.Fatalf("%d is away in week %d and works", x.Who, x.Week)
			}
		}
	}
	for p, turns := range before.Fairness.Turns {
		want := turns
		for _, o := range after.Owed {
			if o.Who == p+1 {
				want--
			}
			if o.By == p+1 {
				want++
			}
		}
		if c.turns[p+1] != want {
			t.Fatalf("%d has %d turns, had %d, owed %+v", p+1, c.turns[p+1], turns, after.Owed)
		}
	}
}
