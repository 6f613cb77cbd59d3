package season

import (
	"context"
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/school/term"
	"rootbell/internal/science/crop"
)

// The invented spring term: lettuce for the half of a lunch on 24 Mar, four in
// five. What is sown, thinned and moved is so on days that suit, in order, and
// the chance of the latest day is the one wanted while the next day's is not.
func TestBackFromTheLunch(t *testing.T) {
	w, e := wish(t, 6), quick()
	a := backs(t, w, e)
	if !a.Can || a.Chance < 0.95 || a.ReadyBy != w.MealOn || a.Wanted != 0.8 {
		t.Fatalf("%v, %v by %v", a.Can, a.Chance, a.ReadyBy)
	}
	inOrder := []term.Date{w.Today, a.SowFrom, a.SowOn, a.SowLatest, a.MoveLatest, w.MealOn}
	if !slices.IsSortedFunc(inOrder, term.Date.Compare) || a.MoveOn.After(a.MoveLatest) || a.HarvestFrom.After(a.HarvestTo) {
		t.Errorf("%v; harvest %v to %v", inOrder, a.HarvestFrom, a.HarvestTo)
	}
	for _, task := range a.Tasks {
		if slices.Contains([]string{"sow", "thin", "transplant"}, task.Kind) && !Settles(w.Calendar, task.On) || !w.Calendar.Open(task.On) {
			t.Errorf("%s on %s", task.Kind, task.On)
		}
	}
	next, _ := settleFrom(w.Calendar, a.MoveLatest.Add(1))
	for move, want := range map[term.Date]bool{a.MoveLatest: true, next: false} {
		c := Course{Bed: w.Bed, MoveOn: move, To: w.MealOn, NeedG: w.NeededG, Held: true}
		e.Members = e.Search
		f := follows(t, c, e)
		if got := f.Days[len(f.Days)-1].Ready; (got >= 0.8) != want {
			t.Errorf("moved on %s: %v", move, got)
		}
	}
}

// By hand: seedlings that would stand over the break are told, and a tray that
// can be tended is preferred to a later best day. Once it is past it is told no
// more.
func TestSeedlingsOverTheBreak(t *testing.T) {
	w := wish(t, 6)
	a := backs(t, w, quick())
	alone := a.SowOn.Before(day(t, "2027-02-13")) && a.MoveOn.After(day(t, "2027-02-21"))
	told := slices.ContainsFunc(a.Findings, func(f finding.Finding) bool { return f.Code == "season-nursery-closed" })
	if !alone || !told {
		t.Errorf("sown on %s, moved on %s: %v", a.SowOn, a.MoveOn, a.Findings)
	}
	past := w
	past.Today, past.MoveOn = a.MoveOn, a.MoveOn
	if b := backs(t, past, quick()); b.MoveOn != a.MoveOn || slices.ContainsFunc(b.Findings, func(f finding.Finding) bool { return f.Code == "season-nursery-closed" }) {
		t.Errorf("on %s, moved on %s: %v", past.Today, b.MoveOn, b.Findings)
	}
	w.MealOn = day(t, "2027-02-12")
	if a := backs(t, w, quick()); len(a.Findings) > 0 {
		t.Errorf("%v", a.Findings)
	}
}

// The chance is the share of members whose plants together are what is needed,
// counted here from the states in which they end.
func TestChanceIsCounted(t *testing.T) {
	w := wish(t, 6)
	w.MoveOn, w.NeededG = day(t, "2027-03-02"), 800
	a := backs(t, w, quick())
	n := 0
	for _, end := range a.Followed.Ends {
		if 6*w.Tub.Stands[0].Model.HarvestG(end.Stands[0], 25) >= 800 {
			n++
		}
	}
	if want := float64(n) / float64(len(a.Followed.Ends)); a.Chance != want || !(want > 0.1 && want < 0.9) {
		t.Errorf("%v, counted %v", a.Chance, want)
	}
	each := 0
	for _, end := range a.Followed.Ends {
		if w.Tub.Stands[0].Model.HarvestG(end.Stands[0], 25) >= 100 {
			each++
		}
	}
	if got := a.Crops[0].Ready; got != float64(each)/float64(len(a.Followed.Ends)) {
		t.Errorf("%v of the plants are ready, counted %d", got, each)
	}
}

// What is said to do where the date cannot be met does it: asked again with the
// figure that was told, the same runs are ready with the chance told.
func TestMovesDoWhatTheySay(t *testing.T) {
	w := wish(t, 6)
	w.Today, w.NeededG, w.Eaters, w.PortionG = day(t, "2027-02-22"), 700, 35, 20
	e := Effort{Members: 60, Search: 60, Seed: 3}
	a := backs(t, w, e)
	if a.Can || a.SowLatest.Set() {
		t.Fatalf("%v", a.Chance)
	}
	kinds := map[string]bool{}
	for _, m := range a.Moves {
		kinds[m.Kind] = true
		again, want := w, a.Wanted
		again.MoveOn = a.MoveOn
		switch m.Kind {
		case "tubs":
			again.NeededG /= float64(m.Count)
		case "portion":
			again.NeededG = m.G * 35
		case "eaters":
			again.NeededG = float64(m.Count) * 20
		case "later":
			again.MealOn, want = m.On, m.Chance
		case "seedlings":
			again.MoveOn, want = m.On, m.Chance
		case "light":
			want = m.Chance
			again.Tub.Stands = slices.Clone(again.Tub.Stands)
			again.Tub.Stands[0].PPFD *= max(1, m.Times)
			if m.Hours > 0 {
				again.Lamp.ToMin = again.Lamp.FromMin + int(60*m.Hours)
			}
		}
		if got := backs(t, again, e).Chance; got < want-1e-9 {
			t.Errorf("%s: %v, told %v", m.Says(quantity.Metric), got, want)
		}
	}
	for _, kind := range []string{"tubs", "portion", "eaters", "later", "light"} {
		if !kinds[kind] {
			t.Errorf("%s is not among %v", kind, a.Moves)
		}
	}
}

// One plant fewer to feed, one day later, a little more light: none of it makes
// a crop less likely.
func TestMoreTimeNeverLessReady(t *testing.T) {
	w, e := wish(t, 6), Effort{Members: 40, Search: 40}
	w.NeededG = 500
	before := 0.0
	for d := 5; d <= 35; d += 5 {
		w.MoveOn = w.MealOn.Add(-d)
		got := backs(t, w, e).Chance
		if got < before {
			t.Errorf("%d days: %v, with fewer %v", d, got, before)
		}
		before = got
	}
	if before < 0.9 {
		t.Errorf("after 35 days %v", before)
	}
}

// By hand: basil takes 14 days in the nursery and pak choi 15, so that one is
// sown later than the other for the same move.
func TestTwoCrops(t *testing.T) {
	w := wish(t, 3)
	basil, s := stand(t, "basil", 3)
	pak, p := stand(t, "pak choi", 3)
	s.PickG, p.PickG = 20, 60
	w.NeededG, w.Tub.Stands = 0, append(w.Tub.Stands[:0], s, p)
	w.Crops = []Crop{
		{Kind: basil, Stands: []int{0}, Seed: crop.Seed{Germination: 0.8, TempC: 21}},
		{Kind: pak, Stands: []int{1}, Seed: crop.Seed{Germination: 0.8, TempC: 21}},
	}
	w.MoveOn = day(t, "2027-03-09")
	a := backs(t, w, quick())
	if len(a.Crops) != 2 || a.Crops[0].SowOn != day(t, "2027-02-23") || a.Crops[1].SowOn != day(t, "2027-02-22") || a.SowOn != day(t, "2027-02-22") {
		t.Errorf("%+v", a.Crops)
	}
	if both := min(a.Crops[0].Ready, a.Crops[1].Ready); a.Chance > both {
		t.Errorf("both with %v, one with %v", a.Chance, both)
	}
}

// Other sowings fit before and after, one after another, on days that suit.
func TestSuccessions(t *testing.T) {
	w := wish(t, 6)
	w.NeededG = 40
	a := backs(t, w, quick())
	at := w.Today
	if first := a.More[0]; first.SowOn != day(t, "2027-01-11") || first.MoveOn != day(t, "2027-01-25") {
		t.Errorf("the first of the term: %+v", first)
	}
	for _, s := range a.More {
		if s.ReadyOn.Before(a.MoveOn) {
			if !s.SowOn.Before(s.MoveOn) || s.MoveOn.Before(at) || !s.ReadyOn.After(s.MoveOn) || !Settles(w.Calendar, s.MoveOn) || s.Chance < 0.8 {
				t.Errorf("%+v", s)
			}
			at = s.ReadyOn.Add(2)
		} else if !s.MoveOn.After(a.ReadyBy) {
			t.Errorf("%+v while the tub is full", s)
		}
	}
	if len(a.More) < 2 {
		t.Errorf("%v in a term of twelve weeks", a.More)
	}
}

// What keeps a season from being worked out is said in words, with what to do.
func TestWhatIsSaid(t *testing.T) {
	for code, spoil := range map[string]func(w *Wish){
		"season-no-open-day": func(w *Wish) { w.Today = day(t, "2028-01-01") },
		"season-meal-past":   func(w *Wish) { w.Today = day(t, "2027-03-30") },
		"season-meal-closed": func(w *Wish) { w.MealOn = day(t, "2027-03-20") },
		"season-too-late":    func(w *Wish) { w.Today = day(t, "2027-03-19") },
		"season-no-plants":   func(w *Wish) { w.Tub.Stands, w.Crops = nil, nil },
		"season-no-seedlings": func(w *Wish) {
			w.Crops = []Crop{{Kind: w.Crops[0].Kind, Stands: []int{0}, Seed: crop.Seed{Germination: 0.9, TempC: 36}}}
		},
		"season-dark": func(w *Wish) { w.Lamp.ToMin = w.Lamp.FromMin },
		"season-no-end": func(w *Wish) {
			w.MealOn, w.Calendar = term.Date{}, term.New(term.Given{ArriveMin: 510, LeaveMin: 930})
		},
		"season-seeds": func(w *Wish) { w.Crops[0].Seed.YearsOld = 20 },
	} {
		w := wish(t, 6)
		spoil(&w)
		a := backs(t, w, Effort{Members: 20, Search: 20})
		i := slices.IndexFunc(a.Findings, func(f finding.Finding) bool { return f.Code == code })
		if i < 0 {
			t.Errorf("%s is not among %v", code, a.Findings)
			continue
		}
		if f := a.Findings[i]; f.Text == "" || f.Hint == "" || f.Field != "" || strings.Contains(f.Text+f.Hint, "!") {
			t.Errorf("%+v", f)
		}
	}
}

// A meal outside the terms is one on a closed day: it is worked back from the
// last open day before.
func TestMealOutsideTheTerms(t *testing.T) {
	w := wish(t, 6)
	w.MealOn = day(t, "2027-04-10")
	if a := backs(t, w, quick()); a.ReadyBy != day(t, "2027-04-02") || len(a.Findings) == 0 {
		t.Errorf("%v %v", a.ReadyBy, a.Findings)
	}
	w.MealOn = term.Date{}
	if a := backs(t, w, quick()); a.ReadyBy != day(t, "2027-04-02") {
		t.Errorf("%v", a.ReadyBy)
	}
}

// By hand: leaf lettuce stands for 28 days and two weeks; with a meal it stands
// until then and that is told, without one the harvest ends on the last open day
// before it is past its best.
func TestLongStanding(t *testing.T) {
	w := wish(t, 6)
	w.MoveOn = day(t, "2027-01-19")
	a := backs(t, w, quick())
	if a.HarvestTo != w.MealOn || !slices.ContainsFunc(a.Findings, func(f finding.Finding) bool { return f.Code == "season-stands-long" }) {
		t.Errorf("harvest to %v: %v", a.HarvestTo, a.Findings)
	}
	w.MealOn = term.Date{}
	if a := backs(t, w, quick()); a.HarvestTo != day(t, "2027-03-02") {
		t.Errorf("harvest to %v", a.HarvestTo)
	}
}

// A stretch that the course does not outlast is not told: its end is not known.
func TestStretchBeyondTheCourse(t *testing.T) {
	c := thirsty(t, 12)
	c.To = day(t, "2027-02-18")
	f := follows(t, c, quick())
	if last := f.Standing[len(f.Standing)-1]; last.Stretch.From != day(t, "2027-02-06") {
		t.Errorf("%v", last.Stretch)
	}
}

// A crop that is sure only after standing past its best is moved on the first
// day on which it does not, where that leaves the chance wanted.
func TestBestIsNotPastItsBest(t *testing.T) {
	w := wish(t, 6)
	w.NeededG = 900
	a := backs(t, w, quick())
	if !a.Can || a.Chance >= 0.95 || a.MoveOn != day(t, "2027-02-22") { // 10 Feb, six weeks before the lunch, does not suit
		t.Errorf("moved on %v with %v", a.MoveOn, a.Chance)
	}
}

// By the bands of the forecast: until the next open day the lamp hangs as far over
// the tallest plants as it should, in three runs of four, and it is raised in
// whole steps and only where it must be.
func TestRaisingTheLamp(t *testing.T) {
	w := wish(t, 6)
	w.MoveOn = day(t, "2027-02-09")
	a := backs(t, w, quick())
	f, hang, at := a.Followed, 300.0, 0
	raise := slices.DeleteFunc(slices.Clone(a.Tasks), func(k Task) bool { return k.Kind != "lamp" })
	for i, d := range f.Dates {
		tall := f.Days[i].Stands[0].HeightMM.P75
		if i > 1 && tall+150 > hang+1e-9 {
			t.Errorf("%s: %v mm tall under a lamp at %v mm", d.Date, tall, hang)
		}
		if at < len(raise) && raise[at].On == d.Date {
			if step := (raise[at].MM - hang) / 50; step < 1 || step != math.Trunc(step) {
				t.Errorf("%s: from %v to %v mm", d.Date, hang, raise[at].MM)
			}
			hang, at = raise[at].MM, at+1
		}
	}
	if last := f.Days[len(f.Days)-1].Stands[0].HeightMM.P75; at < 3 || hang-last-150 > 50 {
		t.Errorf("raised %d times to %v mm over plants of %v mm", at, hang, last)
	}
	w.Hang.MostMM = 400
	if a := backs(t, w, quick()); !slices.ContainsFunc(a.Findings, func(f finding.Finding) bool { return f.Code == "season-lamp-low" }) {
		t.Errorf("a lamp that cannot be raised is not told: %v", a.Findings)
	}
}

// Every sentence is one, in both systems of units.
func TestSentences(t *testing.T) {
	w := wish(t, 6)
	w.Today, w.NeededG = day(t, "2027-02-22"), 900
	w.Care.Lower = true
	a := backs(t, w, Effort{Members: 40, Search: 40})
	c, e := thirsty(t, 14), quick()
	c.Care.Lower = true
	var all []string
	for _, s := range []quantity.System{quantity.Metric, quantity.US} {
		for _, k := range a.Tasks {
			all = append(all, k.Do(s))
			if why := k.Why(s); why != "" {
				all = append(all, why)
			}
		}
		for _, m := range a.Moves {
			all = append(all, m.Says(s))
		}
		for _, x := range leaves(t, c, follows(t, c, e), Ways{MayVisit: true}, e) {
			for _, o := range x.Options {
				all = append(all, o.Do(s))
			}
		}
	}
	for _, text := range all {
		if !strings.HasSuffix(text, ".") || strings.ContainsAny(text, "!\n") || strings.Contains(text, "  ") || strings.Contains(text, "NaN") || text[0] < 'A' || text[0] > 'Z' {
			t.Errorf("%q", text)
		}
	}
}

// No input stops the program: it gets an answer, a finding or an error.
func TestAnyWish(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		w := wish(t, rapid.IntRange(0, 3).Draw(rt, "plants"))
		w.Calendar = drawCalendar(rt)
		anyDay := func(name string) term.Date {
			d := term.Date{Year: 2026, Month: 1, Day: 1}.Add(rapid.IntRange(0, 600).Draw(rt, name))
			if rapid.IntRange(0, 3).Draw(rt, name+" set") == 0 {
				return term.Date{}
			}
			return d
		}
		w.Today, w.MealOn, w.MoveOn = anyDay("today"), anyDay("meal"), anyDay("move")
		w.Crops[0].SownOn = anyDay("sown")
		w.Crops[0].Seed.TempC = rapid.Float64Range(-10, 50).Draw(rt, "temperature")
		w.NeededG = rapid.Float64Range(0, 400).Draw(rt, "needed")
		w.Care.ChangeDays = rapid.IntRange(-3, 30).Draw(rt, "change")
		w.Care.Lower = rapid.Bool().Draw(rt, "lower")
		w.LeadDays = rapid.IntRange(-5, 50).Draw(rt, "lead")
		a, err := Back(context.Background(), w, Effort{Members: 2, Search: 2})
		if err != nil && err.Error() == "" {
			rt.Fatal("an error without words")
		}
		if math.IsNaN(a.Chance) || a.Chance < 0 || a.Chance > 1 {
			rt.Fatalf("a chance of %v", a.Chance)
		}
		for _, task := range a.Tasks {
			if !task.On.Set() {
				rt.Fatalf("%+v has no day", task)
			}
		}
	})
}

// An end that is asked for is an end.
func TestGivesUp(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := Back(ctx, wish(t, 6), quick()); !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
}

// The same wish has the same answer with any number of workers.
func TestBackIsTheSameForAnyWorkers(t *testing.T) {
	e := quick()
	e.Workers = 1
	one := backs(t, wish(t, 6), e)
	e.Workers = 5
	if other := backs(t, wish(t, 6), e); !reflect.DeepEqual(fmt.Sprint(one), fmt.Sprint(other)) {
		t.Error("five workers give another answer")
	}
}
