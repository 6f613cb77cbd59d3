package season

import (
	"context"
	"math"
	"time"

	"rootbell/internal/forecast"
)

// visits are the first and the last moment of each closed day at which somebody
// can come.
func (t tries) visits() (out [][2]time.Time) {
	for _, d := range t.dates() {
		from, to := t.Calendar.Arrives(d, t.zone()), t.leaves(d)
		if t.ways.VisitToMin > t.ways.VisitFromMin {
			from, to = d.At(t.ways.VisitFromMin, t.zone()), d.At(t.ways.VisitToMin, t.zone())
		}
		out = append(out, [2]time.Time{from, to})
	}
	return out
}

// visited is one visit with as much water as one may bring, after the ways
// given are done in full. Its window serves thirst as it is and a good deal
// more; where there is none, the risk is that of a visit in the middle.
func (t tries) visited(ctx context.Context, o Option, doses []dose) (Option, bool, error) {
	days := t.visits()
	if !t.ways.MayVisit || len(days) == 0 {
		return o, false, nil
	}
	a := attempt{}
	for _, d := range doses {
		d.do(&a, &o, d.most)
	}
	first, last, err := t.window(ctx, a)
	if err != nil {
		return o, false, err
	}
	without, err := t.run(ctx, a, t.e.search(), asTheyAre)
	if err != nil {
		return o, false, err
	}
	a.visit, a.visitL = days[len(days)/2][0], VisitLitres()
	if first <= last {
		o.VisitFrom, o.VisitTo = days[first][0], days[last][1]
		a.visit = o.VisitTo
	}
	with, err := t.run(ctx, a, t.e.search(), asTheyAre)
	if err != nil {
		return o, false, err
	}
	o.VisitL = carried(without, with)
	if o.VisitL <= 0 {
		return o, false, nil
	}
	o.how = a
	err = t.rateVisit(ctx, a, &o)
	return o, err == nil, err
}

// rateVisit enters the risks of a visit: the greater of those at both ends of
// its window.
func (t tries) rateVisit(ctx context.Context, a attempt, o *Option) error {
	if err := t.rate(ctx, a, o); err != nil || o.VisitFrom.IsZero() {
		return err
	}
	other := *o
	a.visit = o.VisitFrom
	if err := t.rate(ctx, a, &other); err != nil {
		return err
	}
	o.Risk, o.RiskHigh = max(o.Risk, other.Risk), max(o.RiskHigh, other.RiskHigh)
	return nil
}

// carried is the whole litres that serve nineteen visits in twenty, at most
// what one may bring.
func carried(without, with forecast.Forecast) float64 {
	var all []float64
	for i := range with.Ends {
		all = append(all, with.Ends[i].Ledger.PouredL-without.Ends[i].Ledger.PouredL)
	}
	return min(VisitLitres(), math.Ceil(bandOf(all).P95-1e-6))
}

// window is the first and the last closed day of those on which a visit serves
// even where the class is a good deal thirstier. The later a visit, the more
// water there is at the end, and the likelier that it comes too late: so the
// last day is looked for by when the tub falls without a visit, and then the
// first by halving. first is over last where no day serves.
func (t tries) window(ctx context.Context, a attempt) (first, last int, err error) {
	thirsty := more(1 + value(factVisitThirst)/100)
	days := t.visits()
	last, err = t.inTime(ctx, a, days, thirsty)
	if err != nil {
		return 1, 0, err
	}
	serves := func(day, end int) bool {
		a.visit, a.visitL = days[day][end], VisitLitres()
		var p float64
		if err == nil {
			p, err = t.risk(ctx, a, t.e.search(), thirsty)
		}
		return err == nil && p < MostRisk()
	}
	for tried := 0; last >= 0 && !serves(last, 1); last-- {
		if tried++; tried > 1 || err != nil {
			return 1, 0, err
		}
	}
	if last < 0 || !serves(last, 0) {
		return 1, 0, err
	}
	low, high := -1, last
	for high-low > 1 {
		if mid := (low + high) / 2; serves(mid, 0) {
			high = mid
		} else {
			low = mid
		}
	}
	return high, last, err
}

// inTime is the last closed day on which a visit comes before the water falls
// too far; -1 for none.
func (t tries) inTime(ctx context.Context, a attempt, days [][2]time.Time, as thirst) (int, error) {
	s := t.season(a)
	s.Watches = nil
	for _, day := range days {
		s.Watches = append(s.Watches, forecast.Watch{ToHour: day[1].Sub(t.Stretch.Since).Hours()})
	}
	f, err := forecast.Run(ctx, s, t.from(t.e.search(), as))
	if err != nil {
		return -1, err
	}
	last := -1
	for i, w := range f.Stretches {
		if w.Risk < MostRisk() {
			last = i
		}
	}
	return last, nil
}
