package season

import (
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
	if k, ok := taskOf(backs(t, w, Effort{Members: 20, Search: 20}), "meal"); ok {
		t.Errorf("%+v", k)
	}
}
