package season

import (
	"strings"
	"testing"

	"rootbell/internal/base/quantity"
)

// What keeps the water and costs the meal is told, and not taken while a
// heavier way keeps both. The chance that what stays is enough is counted anew
// from the plants of the meal's day.
func TestThePlantsOfTheMealStay(t *testing.T) {
	c, e := thirsty(t, 14), quick()
	c.Care.Lower = true
	c.Bed = c.moved(c.MoveOn)
	f := follows(t, c, e)
	byHand := func(plants int, needG float64) float64 {
		n := 0
		for _, end := range f.Ends {
			s := c.Tub.Stands[0]
			if s.Model.HarvestG(end.Stands[0], s.PerM2)*float64(plants) >= needG {
				n++
			}
		}
		return float64(n) / float64(len(f.Ends))
	}
	breakOf := func(w Ways) Closed {
		for _, closed := range leaves(t, c, f, w, e) {
			if closed.Stretch.Why == "break" {
				return closed
			}
		}
		t.Fatal("no break")
		return Closed{}
	}
	free := breakOf(Ways{MayVisit: true})
	if free.Take < 0 || free.Options[free.Take].taken() == 0 {
		t.Fatalf("without a need plants go first: %+v", free.Options)
	}
	const needG = 2600 // of 14 plants
	if p := byHand(14, needG); p < 0.8 {
		t.Fatalf("the whole tub brings it in %v", p)
	}
	kept := breakOf(Ways{MayVisit: true, NeedG: needG, Wanted: 0.8})
	short := 0
	for i, o := range kept.Options {
		if o.taken() == 0 {
			continue
		}
		if want := byHand(14-o.taken(), needG); o.Meal != want {
			t.Errorf("%s leaves %v, by hand %v", o.Kind, o.Meal, want)
		}
		if o.Short {
			short++
			if says := o.Do(quantity.Metric); !strings.Contains(says, "enough for the meal in ") {
				t.Errorf("%q", says)
			}
		}
		if o.Short != (o.Meal < 0.8) || i == kept.Take && o.Short {
			t.Errorf("taken %v: %+v", i == kept.Take, o)
		}
	}
	if short == 0 || kept.Take < 0 || !kept.Options[kept.Take].keeps() {
		t.Errorf("%d ways cost the meal; to do: %d of %+v", short, kept.Take, kept.Options)
	}
	// Where no other way is open, the water comes first, and the cost is told.
	alone := breakOf(Ways{NeedG: 1.4 * needG, Wanted: 0.8})
	if alone.Take < 0 || !alone.Options[alone.Take].Short || !strings.Contains(alone.Options[alone.Take].Do(quantity.Metric), "enough for the meal in ") {
		t.Errorf("to do: %d of %+v", alone.Take, alone.Options)
	}
}

// What is picked in the last two days is picked for the meal.
func TestPickedForTheMeal(t *testing.T) {
	c, e := thirsty(t, 14), quick()
	f := follows(t, c, e)
	tr := tryOf(t, c, f, Ways{NeedG: 14 * 60, Wanted: 0.8}, e)
	tr.ends = f.Ends
	o := Option{Kind: "harvest", Plants: []int{13}, Left: 1}
	tr.eaten(&o)
	if !o.Short {
		t.Errorf("thirteen of fourteen picked in February: %+v", o)
	}
	tr.To = tr.Stretch.Before().Add(2)
	tr.eaten(&o)
	if tr.To = tr.Stretch.Before().Add(3); o.Short {
		t.Errorf("picked two days before: %+v", o)
	}
	if tr.eaten(&o); !o.Short {
		t.Errorf("picked three days before: %+v", o)
	}
}
