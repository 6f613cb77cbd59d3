package garden

import (
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/school/steering"
	"rootbell/internal/science/reading"
	"rootbell/internal/science/solution"
)

// feed is what the tub is fed with by the plan: its own feed, else the garden's.
func (k *deskTub) feedEC() quantity.MSPerCM {
	if own := k.typed.Feed; own != nil {
		return own.EC.Value
	}
	return k.Plan.Feed.EC.Value
}

// mix is the solution that the tub was mixed from; nil where it could not be
// worked out, or was not asked for.
func (k *deskTub) mix() *Mix {
	if m := k.Tubs[k.t.index].Mix; m != nil && m.EC != nil {
		return m
	}
	return nil
}

// feeding gives the sums of the morning the EC curve of the tub's own mix, and
// how strong a top-up is in the long run.
func (k *deskTub) feeding() {
	m := k.mix()
	if m == nil {
		return
	}
	k.st.Curve = m.Curve()
	if nitrogen := m.ElementsMgL[solution.Nitrogen.Symbol()]; nitrogen > 0 {
		k.st.Refill = solution.ShowRefill(k.b.In("today"), nitrogen)
	}
}

// uptakeSpan is how far back what the plants drank is looked for.
const uptakeSpan = 14 * 24 * time.Hour

// uptake tells evaporation and uptake apart, from the farthest reading of level
// and EC of this filling up to the last one. What was poured in between has to
// be known by its EC.
func (k *deskTub) uptake() {
	last, first := -1, -1
	for i := len(k.entries) - 1; i >= 0; i-- {
		e := &k.entries[i]
		_, ec := k.bothRead(*e)
		switch {
		case last >= 0 && k.entries[last].At.Sub(e.At) > uptakeSpan:
		case ec && last < 0:
			last = i
		case ec && k.entries[last].At.Sub(e.At) >= 24*time.Hour:
			first = i
		}
		if e.Did(reading.ChangedOut) || e.Did(reading.Planted) {
			break
		}
	}
	if first < 0 {
		return
	}
	span, ok := k.span(k.entries[first : last+1])
	if !ok {
		return
	}
	u := steering.Drank(k.b.In("today.uptake"), span)
	k.out.Uptake, k.st.Drinks = u.Text, u.Of
}

// bothRead is what stood in the tub when its EC was read too, before anything
// was done.
func (k *deskTub) bothRead(e reading.Entry) (water quantity.L, ok bool) {
	before, _, level := e.Litres(k.vessel)
	_, ec := e.AtTwentyFive()
	doubt := e.Doubts(reading.FieldLevel) || e.Doubts(reading.FieldEC) || e.Doubts(reading.FieldTub) || e.Doubts(reading.FieldMoment)
	return before, level && ec && !doubt && before > 0 && !e.At.After(k.today.At) && (!e.Did(reading.ChangedOut) || e.Level.Litres.Set() || e.Level.Depth.Set())
}

// span is the tub between the first and the last of some readings; false where
// it is not known how strong something was that was poured in.
func (k *deskTub) span(entries []reading.Entry) (s steering.Span, ok bool) {
	then, now := entries[0], entries[len(entries)-1]
	thenL, _ := k.bothRead(then)
	nowL, _ := k.bothRead(now)
	// What cups and stones push aside is nearly the same at both lines.
	aside := k.st.Aside
	s.ThenL, s.NowL = thenL-aside, nowL-aside
	salts := 0.0
	for _, e := range entries[:len(entries)-1] {
		l := e.Poured()
		if l <= 0 {
			continue
		}
		ec, known := k.pouredEC(e)
		if !known || e.Doubts(reading.FieldAdded) {
			return s, false
		}
		s.PouredL += l
		salts += float64(l) * float64(ec)
	}
	if s.PouredL > 0 {
		s.PouredEC = quantity.MSPerCM(salts / float64(s.PouredL))
	}
	thenEC, _ := then.AtTwentyFive()
	nowEC, _ := now.AtTwentyFive()
	s.ThenEC, _ = thenEC.Sure()
	s.NowEC, _ = nowEC.Sure()
	deep, inside := k.t.shape.Depth(nowL)
	if !inside {
		return s, false
	}
	by := float64(reading.LevelErrorMM())
	s.ErrorL = (k.t.shape.Volume(min(deep+by, k.t.shape.HeightMM())) - k.t.shape.Volume(max(deep-by, 0))) / 2
	return s, true
}

// pouredEC is how strong what was poured in was: as written down, else the tap's
// where nobody fed.
func (k *deskTub) pouredEC(e reading.Entry) (quantity.MSPerCM, bool) {
	switch {
	case e.Added.EC.Set():
		return e.Added.EC.Value, true
	case e.Did(reading.Fed):
		return 0, false
	}
	return k.st.Tap.EC, k.st.Tap.Told
}

// gathering is what builds up in the tub from the water that it is topped up
// with, because plants leave it.
func (k *deskTub) gathering(usedL quantity.L) []steering.Gathering {
	m := k.mix()
	if m == nil || usedL <= 0 {
		return nil
	}
	var out []steering.Gathering
	b := k.b.In("today.gathered")
	used := b.Noted("used", "topped up since the last change", "u", quantity.Volume, usedL.Base(), 0, "the logbook")
	for _, g := range solution.Gathers(m.chemistry.tap) {
		start := m.ElementsMgL[g.Of.Symbol()]
		out = append(out, steering.Gathering{
			Name: g.Of.String(), Now: solution.ShowBuildUp(b, g.Of, start, g.WaterMgL, used, k.fill),
			Limit: quantity.MilligramPerL.Base(g.Limit(start)),
		})
	}
	return out
}
