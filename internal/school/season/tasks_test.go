package season

import (
	"slices"
	"testing"

	"rootbell/internal/school/term"
)

// taskOf is the first task of a kind.
func taskOf(a Answer, kind string) (Task, bool) {
	for _, k := range a.Tasks {
		if k.Kind == kind {
			return k, true
		}
	}
	return Task{}, false
}

// An order is given three weeks before (common practice, no source), on the last
// open day that is; where that is past or before the first term, as soon as
// somebody is there.
func TestOrders(t *testing.T) {
	w := wish(t, 6)
	for today, want := range map[string]string{
		"2026-11-25": "", // the term begins on 11 Jan: three weeks before the sowing are in the holidays
		"2027-01-11": "2027-01-11",
		"2027-01-20": "2027-01-20",
		"2027-01-23": "2027-01-25", // a Saturday
	} {
		w.Today, w.Crops[0].SownOn = day(t, today), day(t, "2027-01-26")
		a := backs(t, w, Effort{Members: 20, Search: 20})
		k, ok := taskOf(a, "order")
		if want == "" {
			if first, _ := w.Calendar.OpenFrom(w.Today); !ok || k.On != first {
				t.Errorf("asked on %s: %v on %v", today, ok, k.On)
			}
			continue
		}
		if !ok || k.On != day(t, want) || k.Before != day(t, "2027-01-26") {
			t.Errorf("asked on %s: %v, %+v", today, ok, k)
		}
	}
	w.Today, w.Crops[0].SownOn = day(t, "2027-01-12"), day(t, "2027-02-23")
	if k, ok := taskOf(backs(t, w, Effort{Members: 20, Search: 20}), "order"); !ok || k.On != day(t, "2027-02-02") {
		t.Errorf("sown on Tue 23 Feb: %v, %+v", ok, k)
	}
}

// A line that comes down at once is a task of the first open day from then on;
// one that stays is none.
func TestTheLineComesDown(t *testing.T) {
	w := wish(t, 6)
	w.MoveOn = day(t, "2027-02-05")
	w.Care.LowerDays, w.Care.LoweredMM = 10, 130
	k, ok := taskOf(backs(t, w, Effort{Members: 20, Search: 20}), "lower")
	if !ok || k.On != day(t, "2027-02-22") || k.MM != 130 { // ten days on is in the break
		t.Errorf("%v, %+v", ok, k)
	}
	for _, mm := range []float64{0, w.Tub.LineMM} {
		w.Care.LoweredMM = mm
		if k, ok := taskOf(backs(t, w, Effort{Members: 20, Search: 20}), "lower"); ok {
			t.Errorf("lowered to %v: %+v", mm, k)
		}
	}
}

// Without a meal nobody is told of one.
func TestNoMealWithoutOne(t *testing.T) {
	w := wish(t, 6)
	w.MealOn, w.NeededG = term.Date{}, 0
	for _, grams := range []float64{30, 200} { // picked small, and larger than the usual days bring
		w.Tub.Stands[0].PickG = grams
		w.MoveOn = day(t, "2027-01-19")
		a := backs(t, w, Effort{Members: 60, Search: 20})
		if k, ok := taskOf(a, "meal"); ok {
			t.Errorf("%+v", k)
		}
		// By hand: 28 days and two weeks after 19 Jan is 2 Mar.
		if early := a.HarvestTo == day(t, "2027-03-02"); early != (a.Followed.readyOn(day(t, "2027-03-02")) >= a.Wanted) || !early && a.HarvestTo != a.ReadyBy {
			t.Errorf("%v g: harvest to %v, ready then in %v", grams, a.HarvestTo, a.Followed.readyOn(a.HarvestTo))
		}
		for _, k := range a.Tasks {
			if k.On.After(a.HarvestTo) {
				t.Errorf("after the harvest on %v: %+v", a.HarvestTo, k)
			}
		}
	}
}

// A crop after the meal does not begin with a tray that nobody looks after for
// nine days of the break. By hand: sown on Tue 23 Feb it moves a fortnight later,
// and is left for the three days from Sat 6 Mar to the staff day.
func TestNoTrayIsLeftOverTheBreak(t *testing.T) {
	w := wish(t, 6)
	w.MealOn, w.NeededG = day(t, "2027-02-12"), 40
	a := backs(t, w, Effort{Members: 40, Search: 20})
	after := slices.IndexFunc(a.More, func(s Sowing) bool { return s.MoveOn.After(a.ReadyBy) })
	if after < 0 || a.More[after].SowOn != day(t, "2027-02-23") || a.More[after].MoveOn != day(t, "2027-03-09") {
		t.Errorf("the next one is %d of %+v", after, a.More)
	}
}
