package stations

import (
	"testing"

	"pgregory.net/rapid"
)

func tubs(n, holes int) []Tub {
	var out []Tub
	for range n {
		t := Tub{Name: "tub"}
		for h := range holes {
			t.Holes = append(t.Holes, h+1)
		}
		out = append(out, t)
	}
	return out
}

// Thirty at one tub with eight holes: the sum that a teacher does on paper.
func TestThirtyAtOneTub(t *testing.T) {
	l, ok := Plan(Given{Pupils: 30, Tubs: tubs(1, 8)})
	if !ok || l.Parts != 1 || len(l.Groups) != 5 || l.Each != 2 || l.Rest != 0 {
		t.Fatalf("%+v", l)
	}
	holes, jars := 0, 0
	for _, a := range l.Adopted {
		if a.Jar > 0 {
			jars++
		} else {
			holes++
		}
	}
	if holes != 8 || jars != 7 {
		t.Errorf("15 pairs at 8 holes: %d holes and %d jars", holes, jars)
	}
}

func TestTeamsAreTheGroupsWhereTheyAreSmallEnough(t *testing.T) {
	for _, c := range []struct {
		pupils, teams int
		byTeams       bool
	}{{26, 4, true}, {40, 4, false}, {26, 1, false}, {60, 4, false}, {3, 4, false}} {
		g := Given{Pupils: c.pupils, Tubs: tubs(2, 6)}
		g.Teams = append(g.Teams, []string{"Slate", "Jade", "Amber", "Opal"}[:c.teams]...)
		l, _ := Plan(g)
		if got := l.Groups[0].Name == "Slate"; got != c.byTeams {
			t.Errorf("%d pupils in %d teams: groups %+v", c.pupils, c.teams, l.Groups)
		}
	}
}

func TestNobodyOrNowhereIsNoLesson(t *testing.T) {
	for _, g := range []Given{{}, {Pupils: 20}, {Tubs: tubs(1, 8)}, {Pupils: MostPupils + 1, Tubs: tubs(1, 8)}} {
		if _, ok := Plan(g); ok {
			t.Errorf("%+v gives a lesson", g)
		}
	}
}

// A lesson is a cyclic Latin square (each group once at each station, each
// station with one group at a time), everybody is in one group, and every pupil
// adopts one thing that nobody else has.
func TestALessonIsALatinSquare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := Given{Pupils: rapid.IntRange(1, MostPupils).Draw(t, "pupils"), Tubs: tubs(rapid.IntRange(1, 4).Draw(t, "tubs"), rapid.IntRange(0, 20).Draw(t, "holes"))}
		for i := range rapid.IntRange(0, 9).Draw(t, "teams") {
			g.Teams = append(g.Teams, string(rune('A'+i)))
		}
		l, ok := Plan(g)
		if !ok {
			t.Fatal("no lesson")
		}
		if len(l.Groups) != len(l.Stations) || l.Each*len(l.Groups)+l.Rest != l.Minutes || l.Each < 2 {
			t.Fatalf("%+v", l)
		}
		sum := 0
		for i, group := range l.Groups {
			sum += group.Pupils
			if group.Pupils < 1 || group.Pupils > 8 {
				t.Fatalf("a group of %d", group.Pupils)
			}
			seen := map[int]bool{}
			for round := range l.Groups {
				seen[l.At(i, round)] = true
				for j := range i {
					if l.At(i, round) == l.At(j, round) {
						t.Fatalf("groups %d and %d meet in round %d", i, j, round)
					}
				}
			}
			if len(seen) != len(l.Stations) {
				t.Fatalf("group %d is at %d stations of %d", i, len(seen), len(l.Stations))
			}
		}
		if sum != l.Pupils || l.Pupils*l.Parts < g.Pupils {
			t.Fatalf("%d of %d pupils in groups", sum, l.Pupils)
		}
		next, taken := 1, map[Adopted]bool{}
		for _, a := range l.Adopted {
			if a.From != next || a.To < a.From || a.To-a.From > 2 {
				t.Fatalf("pair %+v, expected from %d", a, next)
			}
			next = a.To + 1
			what := Adopted{Tub: a.Tub, Hole: a.Hole, Jar: a.Jar}
			if taken[what] {
				t.Fatalf("%+v is adopted twice", what)
			}
			taken[what] = true
		}
		if next != g.Pupils+1 {
			t.Fatalf("pupils up to %d of %d adopt", next-1, g.Pupils)
		}
	})
}
