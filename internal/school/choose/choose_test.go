package choose_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"rootbell/internal/base/working"
	"rootbell/internal/base/working/pencil"
	"rootbell/internal/school/choose"
)

// What a list says comes with a kit is found in any usual words.
func TestWhatComesWithAKit(t *testing.T) {
	for _, c := range []struct {
		includes []string
		lacks    string
		there    bool
	}{
		{[]string{"Air pump"}, "air pump", false},
		{[]string{"pump", "air stones"}, "spare air stone", false},
		{[]string{"pump", "air stone"}, "spare air stone", true},
		{[]string{"non-return valve"}, "check valve", false},
		{[]string{"seed plugs"}, "seed", true},
		{[]string{"seeds"}, "seed", false},
		{[]string{"net pots"}, "net cups", false},
		{[]string{"cap"}, "caps for the empty holes", false},
		{nil, "caps for the empty holes", true},
	} {
		b := working.NewBook()
		q := asked(b, 80)
		q.Offers[0].Includes, q.Offers[0].PerCrop = c.includes, nil
		o := choose.Compare(b, q).Options[0]
		if got := slices.ContainsFunc(o.Lacks, func(t choose.Thing) bool { return t.What == c.lacks }); got != c.there {
			t.Errorf("with %q it lacks %s: %v, want %v", c.includes, c.lacks, got, c.there)
		}
	}
}

func TestWhatTheTeacherKnowsToBeMissing(t *testing.T) {
	b := working.NewBook()
	q := asked(b, 80)
	q.Offers[0].Lacks = []string{"lid", "check valve"}
	q.Prices["lid"] = 7
	q.Offers[0].Includes = slices.DeleteFunc(q.Offers[0].Includes, func(s string) bool { return s == "check valve" })
	o := choose.Compare(b, q).Options[0]
	valves := 0
	for _, l := range o.Lacks {
		if l.Item == "check_valve" {
			valves++
		}
	}
	if valves != 1 || o.Costs.First.Base != 80+5+1+7 {
		t.Errorf("%d check valves, first outlay %v of %+v", valves, o.Costs.First.Base, o.Lacks)
	}
}

// Refills are bought when what came with the kit is used up.
func TestRefillsAreBought(t *testing.T) {
	for _, c := range []struct{ months, want int }{{12, 0}, {5, 0}, {4, 1}, {2, 2}, {1, 4}, {0, 5}} { // 5 crops of 30 days are 4.93 months
		b := working.NewBook()
		q := asked(b, 80)
		q.Offers[0].Months, q.Offers[0].Refill = c.months, price(8)
		o := choose.Compare(b, q).Options[0]
		if got := o.Costs.Replace.Base; math.Abs(got-2.50-8*float64(c.want)) > 1e-9 {
			t.Errorf("feed for %d months: %v for a stone and refills, want %d of them at 8", c.months, got, c.want)
		}
	}
}

// What comes for the first crop is bought for the later ones, seed by seed.
func TestWhatComesForOneCropIsBoughtForTheOthers(t *testing.T) {
	b := working.NewBook()
	q := asked(b, 80)
	q.Offers[0].PerCrop = nil
	q.Offers[0].Includes = append(q.Offers[0].Includes, "seeds", "plugs", "feed")
	q.Prices["seed"], q.Prices["seed_plug"] = 0.05, 0.10
	o := choose.Compare(b, q).Options[0]
	// By hand: 6 plants, a quarter more and 0.85 of them reach the tub: 9 cells of
	// two seeds; four later crops: 72 seeds, 36 plugs, feed at 2.00, and a stone.
	if want := 72*0.05 + 36*0.10 + 4*2.00 + 2.50; math.Abs(o.Costs.Replace.Base-want) > 1e-9 {
		t.Errorf("later crops cost %v, want %v: %+v", o.Costs.Replace.Base, want, o.Lines)
	}
}

// One failure costs fewer plants in more tubs, and each tub is lighter.
func TestSeveralSmallTubs(t *testing.T) {
	b := working.NewBook()
	sizes := choose.Compare(b, asked(b, 80)).Sizes
	if len(sizes) != 2 || !sizes[0].Planned || sizes[1].Tubs != 2 || sizes[1].Lost.Base != 4 || sizes[1].Mass.Base >= sizes[0].Mass.Base || sizes[1].Pumps != 2 {
		t.Errorf("sizes %+v", sizes)
	}
}

// However the question is put: more is never fed than there are holes or water,
// a plant harvested costs no less than one moved in, and each sum can be done
// with a pencil.
func TestAnyQuestion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := working.NewBook()
		q := asked(b, float64(rapid.IntRange(0, 100000).Draw(t, "cents"))/100)
		q.Crops = rapid.IntRange(0, 60).Draw(t, "crops")
		o := &q.Offers[0]
		o.Sites, o.Litres = rapid.IntRange(0, 500).Draw(t, "sites"), float64(rapid.IntRange(0, 9000).Draw(t, "litres"))/10
		o.Includes = rapid.SliceOf(rapid.SampledFrom([]string{"pump", "cups", "stones", "=1", "", "valve"})).Draw(t, "includes")
		o.Months = rapid.IntRange(0, 60).Draw(t, "months")
		for _, item := range []string{"cap", "pump", "cup", "tray", "seed", "stone", "electricity"} {
			if rapid.Bool().Draw(t, item) {
				q.Prices[item] = float64(rapid.IntRange(0, 5000).Draw(t, item+" cents")) / 100
			}
		}
		c := choose.Compare(b, q)
		kit := c.Options[0]
		if kit.Plants > o.Sites || float64(kit.Plants)*3 > o.Litres+1e-9 || kit.Plants < 0 {
			t.Fatalf("%d plants in %d holes and %v L", kit.Plants, o.Sites, o.Litres)
		}
		if kit.Costs.PerHarvest.Is && kit.Costs.PerHarvest.Base < kit.Costs.PerPlanted.Base {
			t.Fatalf("harvested %v, moved in %v", kit.Costs.PerHarvest.Base, kit.Costs.PerPlanted.Base)
		}
		for _, n := range b.Numbers() {
			shown := n.Show(0)
			if got, err := pencil.Round(shown.PutIn, shown.Decimals); err != nil || got != shown.Value {
				t.Fatalf("%s is shown as %v, and %s gives %v, %v", n.Key, shown.Value, shown.PutIn, got, err)
			}
		}
	})
}

// Nobody caps holes of a kit before it is known how many plants its water feeds.
func TestCapsWaitForTheWater(t *testing.T) {
	for litres, caps := range map[float64]bool{0: false, 6: true} {
		q := asked(working.NewBook(), 80)
		q.Offers[0].Litres = litres
		o := choose.Compare(working.NewBook(), q).Options[0]
		if has := slices.ContainsFunc(o.Lacks, func(t choose.Thing) bool { return t.Item == "cap" }); has != caps {
			t.Errorf("%v L: lacks %+v", litres, o.Lacks)
		}
	}
}
