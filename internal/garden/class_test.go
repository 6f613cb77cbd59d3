package garden_test

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"rootbell/internal/base/finding"
	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/term"
	"rootbell/internal/science/lid"
)

// classOf is the class of a plan whose school is the given text.
func classOf(t testing.TB, school string) *garden.Assessment {
	t.Helper()
	return classOn(t, school, plan.Date{})
}

func classOn(t testing.TB, school string, on plan.Date) *garden.Assessment {
	t.Helper()
	p := parsed(t, "class", schoolText(school))
	a, err := garden.Assess(context.Background(), garden.Inputs{Plan: p, On: on, Effort: lid.Quick, Seed: 1, Stages: garden.StageClass})
	if err != nil {
		t.Fatal(err)
	}
	if a.Class == nil {
		t.Fatal("the class was asked for and is not there")
	}
	return a
}

func schoolText(school string) []byte {
	return []byte(`rootbell: 1
garden: test room
school: {` + school + `}
tubs:
  - {name: Heron, crop: leaf lettuce, plants: 8, inside: {top: [52 cm, 36 cm], base: [46 cm, 30 cm], height: 22 cm}, lid: {size: [54 cm, 38 cm], thickness: 2 mm, above_rim: 0 mm}, cup: {body: 72 mm, rim: 83 mm, depth: 65 mm}, hole: 76 mm}
`)
}

const fiveWeeks = "terms: [{from: 2027-01-11, to: 2027-02-12}], "

func TestTheRotaOfATerm(t *testing.T) {
	a := classOf(t, fiveWeeks+"closed: [{from: 2027-01-18, to: 2027-01-22}], pupils: 26, ages: [9, 10]")
	c := a.Class
	if c.By != "pupils" || len(c.Rota) != 5 || c.Rota[1].Open || len(c.Rota[1].Turns) != 0 || c.Rota[0].From != "2027-01-11" {
		t.Fatalf("%+v", c)
	}
	if c.CarryL == nil || *c.CarryL != 2 {
		t.Errorf("the youngest is 9 and carries %v", c.CarryL)
	}
	turns := map[int]int{}
	for _, w := range c.Rota {
		for _, turn := range w.Turns {
			if len(turn.Numbers) != 2 {
				t.Errorf("26 pupils work in pairs, not %v", turn)
			}
			for _, n := range turn.Numbers {
				turns[n]++
			}
		}
	}
	least, most := 99, 0
	for n := 1; n <= 26; n++ {
		least, most = min(least, turns[n]), max(most, turns[n])
	}
	if most-least > 1 || least != c.Fairness.TurnsLeast || most != c.Fairness.TurnsMost {
		t.Errorf("turns %d to %d, told %+v", least, most, c.Fairness)
	}
	if w, ok := c.WeekOn(term.Date{Year: 2027, Month: 1, Day: 27}); !ok || w.Week != 3 {
		t.Errorf("27 January is in week %+v, %v", w.Week, ok)
	}
}

// What a class of any size is given to do: never more places than there are to
// fill them, and never an instrument that it does not have.
func TestUsualJobsFitEveryClass(t *testing.T) {
	for n := 1; n <= 60; n++ {
		a := classOf(t, fiveWeeks+fmt.Sprintf("pupils: %d", n))
		if len(a.Class.Rota) == 0 {
			t.Errorf("%d pupils have no rota: %v", n, codes(a))
		}
	}
}

func TestWhatStandsInTheWayOfARota(t *testing.T) {
	for name, c := range map[string]struct {
		school, code, field string
		level               finding.Level
		says                string
	}{
		"more jobs than pupils":                   {fiveWeeks + "pupils: 2, jobs: [{name: look}, {name: top up}, {name: log}]", "rota-too-many-jobs", "school.jobs", finding.Stop, "there are 2"},
		"all weeks closed":                        {fiveWeeks + "pupils: 12, closed: [{from: 2027-01-11, to: 2027-02-12}]", "rota-closed", "school.closed", finding.Stop, "Every week"},
		"impossible pairs":                        {fiveWeeks + "pupils: 3, jobs: [{name: look, people: 2}], pairs: {never: [[1, 2], [1, 3], [2, 3]]}", "rota-no-room", "school.pairs.never", finding.Stop, "cannot be filled"},
		"a wish and its opposite":                 {fiveWeeks + "pupils: 9, pairs: {wanted: [[1, 2]], never: [[2, 1]]}", "rota-pair-both", "school.pairs.wanted[0]", finding.Stop, "never"},
		"an adult's duty":                         {fiveWeeks + "pupils: 9, jobs: [{name: look}, {name: pour the acid}]", "rota-adult-job", "school.jobs[1].name", finding.Stop, "adult"},
		"nobody of that number":                   {fiveWeeks + "pupils: 9, absent: [{week: 2027-01-20, number: 12}]", "rota-away", "school.absent[0].number", finding.Stop, "1 to 9"},
		"a job that ends first":                   {fiveWeeks + "pupils: 9, jobs: [{name: look, from: 2027-02-01, to: 2027-01-11}]", "job-backwards", "school.jobs[0].to", finding.Stop, "before it begins"},
		"jobs and nobody":                         {fiveWeeks + "jobs: [{name: look}]", "class-nobody", "school.pupils", finding.Note, "neither"},
		"jobs and no term":                        {"pupils: 9, jobs: [{name: look}]", "class-no-term", "school.terms", finding.Note, "no term"},
		"a pair of pupils where teams take turns": {fiveWeeks + "pupils: 9, teams: [Slate, Jade], pairs: {never: [[3, 7]]}", "rota-pair-number", "school.pairs.never[0]", finding.Stop, "no number 3"},
	} {
		a := classOf(t, c.school)
		f, ok := found(a, c.code)
		if !ok || f.Field != c.field || f.Level != c.level || !strings.Contains(f.Text, c.says) || f.Hint == "" {
			t.Errorf("%s: %+v, of %v", name, f, codes(a))
		}
		if c.level == finding.Stop && (f.Line == 0 || len(a.Class.Rota) > 0) {
			t.Errorf("%s: line %d, %d weeks of a rota that cannot be", name, f.Line, len(a.Class.Rota))
		}
		if a.StopOf(0) != "" {
			t.Errorf("%s: nobody may drill because of a rota", name)
		}
	}
}

// Impossible wishes name the one to give up, and giving it up helps.
func TestTheWishToGiveUpIsTheOneThatHelps(t *testing.T) {
	school := fiveWeeks + "pupils: 4, jobs: [{name: look, people: 2}, {name: log, people: 2}], pairs: {never: [[1, 2], [1, 3], [1, 4]]}"
	f, ok := found(classOf(t, school), "rota-no-room")
	if !ok || !strings.Contains(f.Hint, "1 and ") {
		t.Fatalf("%+v", f)
	}
	var a, b int
	if _, err := fmt.Sscanf(f.Hint[strings.Index(f.Hint, ":")+1:], "%d and %d", &a, &b); err != nil {
		t.Fatalf("%q: %v", f.Hint, err)
	}
	mended := strings.Replace(school, fmt.Sprintf("[%d, %d]", a, b), "[9, 9]", 1)
	mended = strings.NewReplacer("[9, 9], ", "", ", [9, 9]", "").Replace(mended)
	if again := classOf(t, mended); len(again.Class.Rota) == 0 {
		t.Errorf("without %d and %d: %v", a, b, codes(again))
	}
}

// An absence changes its own week, and is made good later.
func TestAnAbsenceChangesOnlyItsWeek(t *testing.T) {
	school := fiveWeeks + "pupils: 6, jobs: [{name: look}, {name: log}]"
	before := classOf(t, school)
	first := before.Class.Rota[0].Turns[0]
	after := classOf(t, school+fmt.Sprintf(", absent: [{week: 2027-01-13, number: %d}]", first.Numbers[0]))
	if now := after.Class.Rota[0].Turns[0]; now.Numbers[0] == first.Numbers[0] {
		t.Fatalf("number %d is away and still has '%s'", first.Numbers[0], first.Job)
	}
	text := strings.Join(after.Class.Fairness.Says, " ")
	if !strings.Contains(text, "Week 1: number") || !strings.Contains(text, "makes week 1 good") {
		t.Errorf("what the absence changed is not told: %s", text)
	}
	count := func(a *garden.Assessment) map[int]int {
		out := map[int]int{}
		for _, w := range a.Class.Rota {
			for _, turn := range w.Turns {
				out[turn.Numbers[0]]++
			}
		}
		return out
	}
	if was, is := fmt.Sprint(count(before)), fmt.Sprint(count(after)); was != is {
		t.Errorf("turns were %s and are %s", was, is)
	}
}

// A turn that nothing makes good is told with its number and its week. What is
// said of a class is said once, however often a day of it is asked for.
func TestWhatARotaSaysIsSaidOnce(t *testing.T) {
	a := classOf(t, fiveWeeks+"pupils: 6, jobs: [{name: look, people: 3}], absent: ["+everyoneAway+"]")
	again := a.Asked(garden.Morning{On: plan.Date{Year: 2027, Month: 1, Day: 20}})
	again = again.Asked(garden.Morning{On: plan.Date{Year: 2027, Month: 1, Day: 21}})
	for _, one := range []*garden.Assessment{a, again} {
		n := 0
		for _, f := range one.Findings {
			if f.Code == "rota-owed" {
				n++
				if !strings.Contains(f.Text, "number ") || !strings.Contains(f.Text, " in week 5") {
					t.Errorf("nobody is named by a number and a week: %s", f.Text)
				}
			}
		}
		if n != 1 {
			t.Errorf("said %d times", n)
		}
	}
}

// everyoneAway is the term's last week without anybody.
const everyoneAway = "{week: 2027-02-10, number: 1}, {week: 2027-02-10, number: 2}, {week: 2027-02-10, number: 3}, {week: 2027-02-10, number: 4}, {week: 2027-02-10, number: 5}, {week: 2027-02-10, number: 6}"

// The rota is that of the term of the day, and the same for every morning of it.
func TestEachTermHasItsRota(t *testing.T) {
	school := "terms: [{from: 2027-01-11, to: 2027-02-12}, {from: 2027-04-12, to: 2027-07-02}], pupils: 20"
	first := classOn(t, school, plan.Date{Year: 2027, Month: 1, Day: 20})
	second := classOn(t, school, plan.Date{Year: 2027, Month: 5, Day: 20})
	if len(first.Class.Rota) != 5 || len(second.Class.Rota) != 12 || second.Class.Rota[0].From != "2027-04-12" {
		t.Fatalf("%d and %d weeks", len(first.Class.Rota), len(second.Class.Rota))
	}
	again := first.Asked(garden.Morning{On: plan.Date{Year: 2027, Month: 5, Day: 20}})
	a, _ := json.Marshal(again.Class)
	b, _ := json.Marshal(second.Class)
	if string(a) != string(b) {
		t.Error("the same term has two rotas")
	}
}

// A class that was not asked for has no key and no finding.
func TestAClassIsOnlyThereWhenAskedFor(t *testing.T) {
	a := assessed(t, parsed(t, "class", schoolText(fiveWeeks+"pupils: 1, jobs: [{name: look}, {name: log}]")))
	text, err := json.Marshal(a)
	if err != nil || strings.Contains(string(text), `"class"`) || a.Class != nil {
		t.Errorf("%v, %s", err, text)
	}
	if _, ok := found(a, "rota-too-many-jobs"); ok {
		t.Error("a rota's stop without a rota")
	}
}
