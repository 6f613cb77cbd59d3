package garden

import (
	"fmt"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/school/jobs"
	"rootbell/internal/school/steering"
	"rootbell/internal/science/reading"
)

var jugLaw = working.Must(working.Law{
	Symbol: "k", Kind: quantity.Count, Formula: "ceil(V/j)",
	Where: []working.Symbol{working.Letter("V", "solution at the fill line", quantity.Volume), working.Letter("j", "what one carries at a time", quantity.Volume)},
	Basis: working.OfTrade, Source: "whole trips",
})

// Carried is how often somebody walks to empty a tub, or to fill it.
type Carried struct {
	Who   string // an adult with a bucket, a pupil of some ages with a jug
	Each  string // litres at a time, in words
	Trips int
	Key   string // of the number of trips
}

// carrying enters the trips that a change of the water takes.
func (k *deskTub) carrying() {
	enter := func(who, key string, each working.Number) {
		trips := k.b.Work(jugLaw, key, "trips with "+k.say(each)+" each", k.fill, each)
		k.out.Carry = append(k.out.Carry, Carried{Who: who, Each: k.say(each), Trips: int(trips.Base), Key: trips.Key})
	}
	if bucket, ok := k.b.Find(k.b.Key("bucket")); ok {
		enter("an adult with a bucket", "today.trips_bucket", bucket)
	}
	for i, c := range jobs.Carries() {
		jug := k.b.Fact(fmt.Sprintf("today.jug_%d", i+1), "what a pupil of "+c.Ages+" carries in a jug", "j", quantity.Volume, quantity.L(c.Litres).Base(), c.Fact)
		enter("a pupil of "+c.Ages+" with a jug", fmt.Sprintf("today.trips_jug_%d", i+1), jug)
	}
}

// Care are the figures of the cards at the tub, in words.
type Care struct {
	RootsOut string // minutes that roots may stay in old solution
	Rescue   string // room in buckets for the roots of one tub
	Towels   int    // for one tub
	Meters   reading.Rules
	Step     string // how far new water may differ from the old
}

// Care of a garden, in its units.
func (a *Assessment) Care() Care {
	return Care{
		RootsOut: fmt.Sprintf("%d minutes", steering.RootsOutMinutes()),
		Rescue:   quantity.Format(quantity.Volume, steering.RescueLitres().Base(), a.Plan.Units),
		Towels:   steering.Towels(), Meters: reading.MeterRules(), Step: steering.WaterStepWords(a.Plan.Units),
	}
}

// tapAllowed says how much may be poured in on one day straight from the tap;
// empty where there is no such limit.
func (k *deskTub) tapAllowed() string {
	if k.t.setup.Still {
		return ""
	}
	st := k.st
	st.PouredL = 0
	b := k.b
	if k.st.PouredL > 0 {
		b = working.NewBook() // today's own limit, with what was poured in, is the one to show
	}
	may, bounded := steering.Allowed(b.In("today"), st)
	if !bounded {
		return ""
	}
	return k.say(may)
}
