package season

import (
	"context"
	"math"
	"slices"
	"strings"
)

// kinds are the ways to leave a tub, from the least burden up.
var kinds = []string{"fill", "lamp", "harvest", "fewer", "visit", "still"}

// options are what can be done, each with its own risk: every way alone, and
// the least burdensome ways together where they are enough and what is lighter
// is not. Where nothing is enough, those together that leave the least risk;
// but what keeps the water and costs the meal comes before.
func (t tries) options(ctx context.Context) (out []Option, err error) {
	enough := false
	var closest, costly *Option
	for load := 1; load < 1<<len(kinds); load++ {
		ways := waysOf(load)
		if len(ways) > 1 && (enough || !join(ways, out)) || ways[0] == "fewer" && len(ways) == 1 && serves(out, "harvest") {
			continue
		}
		o, ok, err := t.least(ctx, ways)
		switch {
		case err != nil:
			return nil, err
		case !ok:
			continue
		case len(ways) == 1 || o.enough():
			out = append(out, o)
		case o.keeps() && costly == nil:
			costly = &o
		case closest == nil || o.Risk < closest.Risk:
			closest = &o
		}
		enough = enough || o.enough()
	}
	if costly == nil {
		costly = closest
	}
	if !slices.ContainsFunc(out, Option.keeps) && costly != nil {
		out = append(out, *costly)
	}
	slices.SortStableFunc(out, func(a, b Option) int { return burden(a.Kind) - burden(b.Kind) })
	return out, nil
}

// keeps tells whether an option brings the risk under the most that is let be;
// a visit needs a window.
func (o Option) keeps() bool {
	return o.Risk < MostRisk() && (o.VisitL <= 0 || !o.VisitFrom.IsZero())
}

// enough tells whether it does, and leaves what the meal needs.
func (o Option) enough() bool { return o.keeps() && !o.Short }

// waysOf are the ways of a load, in which each way is one binary digit.
func waysOf(load int) (out []string) {
	for i, kind := range kinds {
		if load&(1<<i) != 0 {
			out = append(out, kind)
		}
	}
	return out
}

// join tells whether it makes sense to try ways together: each can be done,
// none is enough alone, and none makes another needless.
func join(ways []string, alone []Option) bool {
	for _, way := range ways {
		i := slices.IndexFunc(alone, func(o Option) bool { return o.Kind == way })
		if i < 0 || alone[i].enough() {
			return false
		}
	}
	has := func(way string) bool { return slices.Contains(ways, way) }
	needless := has("harvest") && has("fewer") || has("still") && len(ways) > 2
	return !needless
}

// serves tells whether a way alone is enough.
func serves(all []Option, kind string) bool {
	return slices.ContainsFunc(all, func(o Option) bool { return o.Kind == kind && o.keeps() })
}

// burden orders kinds: each way weighs more than all before it together.
func burden(kind string) (n int) {
	for _, way := range strings.Split(kind, "+") {
		n += 1 << slices.Index(kinds, way)
	}
	return n
}

// dose is how much of a way is done, from 1 up to the most; the risk only falls
// with it.
type dose struct {
	most int
	do   func(a *attempt, o *Option, n int)
}

// least is the option of some ways of which the last is done as little as is
// enough, or as much as can be where nothing is; those before it are done in
// full. False where one of them cannot be done.
func (t tries) least(ctx context.Context, ways []string) (Option, bool, error) {
	o := Option{Kind: strings.Join(ways, "+")}
	var doses []dose
	for _, way := range ways {
		if way == "visit" {
			break
		}
		d := t.dose(way)
		if d.most < 1 {
			return o, false, nil
		}
		doses = append(doses, d)
	}
	if ways[len(ways)-1] == "visit" {
		return t.visited(ctx, o, doses)
	}
	full := func(n int) (a attempt, o Option) {
		o.Kind = strings.Join(ways, "+")
		for i, d := range doses {
			if i < len(doses)-1 {
				d.do(&a, &o, d.most)
			} else {
				d.do(&a, &o, n)
			}
		}
		return a, o
	}
	n, err := t.enough(doses[len(doses)-1].most, func(n, members int) (float64, error) {
		a, _ := full(n)
		return t.risk(ctx, a, members, asTheyAre)
	})
	if err != nil {
		return o, false, err
	}
	a, o := full(n)
	o.how = a
	err = t.rate(ctx, a, &o)
	return o, err == nil, err
}

// enough is the least dose that brings the risk under the most that is let be,
// or the most: by halving with few members, then upwards with all.
func (t tries) enough(most int, risk func(n, members int) (float64, error)) (int, error) {
	low, high := 0, most
	for high-low > 1 {
		mid := (low + high) / 2
		p, err := risk(mid, t.e.search())
		if err != nil {
			return 0, err
		}
		if p < MostRisk() {
			high = mid
		} else {
			low = mid
		}
	}
	for ; high < most; high++ {
		if p, err := risk(high, t.e.members()); err != nil || p < MostRisk() {
			return high, err
		}
	}
	return most, nil
}

// rate enters the risks of an option: as things go with all members, and where
// the class is thirstier with fewer.
func (t tries) rate(ctx context.Context, a attempt, o *Option) (err error) {
	if o.Risk, err = t.risk(ctx, a, t.e.members(), asTheyAre); err != nil {
		return err
	}
	t.eaten(o)
	o.RiskHigh, err = t.risk(ctx, a, t.e.search(), high)
	return err
}

// eaten enters what an option that takes plants out leaves for the meal. What is
// picked on the last days before is picked for it.
func (t tries) eaten(o *Option) {
	if t.ways.NeedG <= 0 || o.taken() == 0 || len(t.ends) == 0 {
		return
	}
	all := t.fed(nil)
	o.Meal = t.fed(o.Plants)
	if t.Stretch.Before().Since(t.To) >= -MealKeepsDays() {
		o.Meal = all
	}
	o.Short = o.Meal < min(t.ways.Wanted, all-helps)
}

// fed is the share of members whose plants on the day of the meal are enough
// for it without some of each stand.
func (t tries) fed(out []int) float64 {
	n := 0
	for _, end := range t.ends {
		g := 0.0
		for j := range t.Tub.Stands {
			s, plants := &t.Tub.Stands[j], end.Plants[j]
			if j < len(out) {
				plants = max(0, plants-out[j])
			}
			g += s.Model.HarvestG(end.Stands[j], s.PerM2) * float64(plants)
		}
		if g >= t.ways.NeedG {
			n++
		}
	}
	return float64(n) / float64(len(t.ends))
}

// dose is how a way is done; its most is 0 where it cannot be.
func (t tries) dose(way string) dose {
	switch way {
	case "fill":
		return t.fills()
	case "lamp":
		return t.shorter()
	case "harvest":
		return t.picks(true)
	case "fewer":
		return t.picks(false)
	case "still":
		return t.stills()
	}
	return dose{}
}

// present is the line at which the tub stands at the stretch's first hour, in
// the middle of the members.
func (t tries) present() (mm, litres float64) {
	var all []float64
	for _, end := range t.State.Ends {
		all = append(all, end.Litres)
	}
	litres = bandOf(all).P50
	return t.Tub.LevelMM(litres), litres
}

// fills are lines over the present one in steps of a ruler: with a pump up to
// the line of transplant day, without one as far as roots in the air gap bear.
func (t tries) fills() dose {
	now, litres := t.present()
	most := t.Tub.LineMM
	if t.Tub.Still {
		most = min(most, now+value(factStillRaise))
	}
	step := t.ways.LineStepMM
	start := math.Ceil((now+leastRaiseMM)/step)*step - step
	n := max(0, int(math.Ceil((most-start)/step-1e-9)))
	if most-now < leastRaiseMM {
		n = 0
	}
	return dose{n, func(a *attempt, o *Option, n int) {
		a.lineMM = min(most, start+float64(n)*step)
		o.LineMM, o.PourL = a.lineMM, max(0, t.Tub.LitresAt(a.lineMM)-litres)
	}}
}

// leastRaiseMM is a raise that a ruler does not show.
const leastRaiseMM = 2

// shorter are hours of lamp fewer than usual, down to the least that leafy
// crops are left with.
func (t tries) shorter() dose {
	usual := t.Lamp.Hours()
	if t.NoLamp {
		return dose{}
	}
	n := int(math.Ceil(usual - value(factLeaveLampLeast) - 1e-9))
	return dose{n, func(a *attempt, o *Option, n int) {
		off := t.Lamp.Shorter(max(value(factLeaveLampLeast), usual-float64(n)))
		a.lamp, o.Off, o.LampHours = &off, off, off.Hours()
	}}
}

// picks are plants taken out before the stretch: those that are ready in half
// the runs, or any; one at least stays.
func (t tries) picks(ready bool) dose {
	var free []int // how many of each stand
	all, stand := 0, 0
	for j := range t.Tub.Stands {
		s := &t.Tub.Stands[j]
		var mass []float64
		for _, end := range t.State.Ends {
			mass = append(mass, s.Model.HarvestG(end.Stands[j], s.PerM2))
		}
		plants := t.State.Ends[0].Plants[j]
		stand += plants
		if ready && (s.PickG <= 0 || bandOf(mass).P50 < s.PickG) {
			plants = 0
		}
		free, all = append(free, plants), all+plants
	}
	return dose{min(all, stand-1), func(a *attempt, o *Option, n int) {
		a.out = spread(free, n)
		o.Plants, o.Left = a.out, stand-n
	}}
}

// spread takes so many out of stands in turn, the fullest first.
func spread(free []int, n int) []int {
	out := make([]int, len(free))
	for range n {
		most := 0
		for j := range free {
			if free[j]-out[j] > free[most]-out[most] {
				most = j
			}
		}
		out[most]++
	}
	return out
}

// stills is the still way: only where the line was lowered by stages long
// enough before for roots to have grown in the air gap.
func (t tries) stills() dose {
	on := t.ways.LoweredOn
	if t.Tub.Still || !on.Set() || t.Stretch.Before().Since(on) < int(value(factStillRoots)) {
		return dose{}
	}
	return dose{1, func(a *attempt, _ *Option, _ int) { a.still = true }}
}
