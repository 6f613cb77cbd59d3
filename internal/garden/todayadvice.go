package garden

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/school/steering"
	"rootbell/internal/school/term"
	"rootbell/internal/science/reading"
)

// advise puts together what is due at the tub. No two of its answers change the
// water on one day.
func (k *deskTub) advise() {
	var due []steering.Advice
	settling := steering.Advice{}
	if _, a := steering.Settling(k.entries, k.today.At); a.Do != "" {
		settling = a
	}
	water, pH, change := k.waterAdvice(), k.pHAdvice(), k.changeAdvice()
	switch {
	case water.Do == steering.SeekLeak:
		due = []steering.Advice{water}
	case change.Do == steering.ChangeOut:
		due = []steering.Advice{change}
	default:
		if pours(water) && (pH.Do == steering.AskAdult) {
			pH = steering.Advice{Do: steering.Watch, Code: "ph-after-water", Source: pH.Source, Text: "First the water is put right. The pH is read again tomorrow.", Hint: "one change a day, so that it shows which one helped"}
		}
		due = []steering.Advice{settling, water, pH, change}
	}
	for _, a := range due {
		if a.Do != "" {
			k.due = append(k.due, a)
			k.out.Advice = append(k.out.Advice, k.advised(a))
		}
	}
	if len(k.due) == 0 {
		k.out.Advice = []Advised{k.advised(steering.Advice{Do: steering.Measure, Code: "not-measured", Text: "Not measured yet.", Hint: "read the level and write it down", Source: practice})}
	}
}

const practice = "common practice, no source"

// pours tells whether advice changes the water.
func pours(a steering.Advice) bool {
	switch a.Do {
	case steering.TakeOut, steering.TopUp, steering.Thin, steering.Strengthen, steering.ChangeOut:
		return true
	}
	return false
}

// waterAdvice is about the level and the EC. A level that was not read today or
// yesterday decides nothing: reading it is a step of every morning.
func (k *deskTub) waterAdvice() steering.Advice {
	if k.st.NowL <= 0 || k.today.On.Since(k.readOn) > 1 {
		return k.fillUp()
	}
	st := k.st
	if loss, asked := k.leak(); asked && loss.Leak {
		st.Leak = true
		a := steering.Strength(k.b.In("today"), st)
		a.Text = k.say(loss.Lost) + " are gone since the reading before. Thirst does not explain more than " + k.say(loss.Suspect) + "."
		return a
	}
	old := false
	if e, ok := k.ecRead(); ok && st.EC.High > 0 {
		on := k.dayOf(e.At)
		if k.today.On.Since(on) > steering.CheckDays(reading.FieldEC) {
			st.EC = reading.Range[quantity.MSPerCM]{}
		} else {
			old = !k.fresh(on)
		}
	}
	tried := steering.Strength(working.NewBook(), st)
	switch {
	case old && !levelOnly(tried):
		e, _ := k.ecRead()
		return steering.Advice{
			Do: steering.ReadAgain, Code: "ec-old", Source: tried.Source, Text: "The EC was out of the band on " + k.dayOf(e.At).Words() + ". That is too long ago to act on.",
			Hint: "stir, rinse the probe, read again; nothing is poured in before",
		}
	case k.checked(tried, reading.FieldEC).Code != tried.Code:
		return k.checked(tried, reading.FieldEC)
	}
	return steering.Strength(k.b.In("today"), st)
}

// levelOnly tells whether advice rests on the level and not on an EC out of its
// band.
func levelOnly(a steering.Advice) bool {
	switch a.Do {
	case steering.Nothing, steering.TopUp, steering.TakeOut, steering.SeekLeak:
		return true
	}
	return a.Code == "poured-enough" || a.Code == "level-unknown"
}

// fresh tells whether a day is this one or the school day before.
func (d *desk) fresh(day term.Date) bool {
	before, ok := d.Term.Previous(d.today.On)
	return !day.Before(d.today.On) || ok && !day.Before(before)
}

// fillUp is the answer before a closed day where the level is not known: up to
// the line.
func (k *deskTub) fillUp() steering.Advice {
	if !k.st.Closing || k.t.setup.Still {
		return steering.Advice{}
	}
	a := steering.Advice{
		Do: steering.TopUp, Code: "fill-to-line", Of: steering.Water, Why: "Nobody comes tomorrow.",
		Text: "Nobody comes tomorrow. Fill it up to the line, " + k.lineWords() + ".", Source: practice,
	}
	if may, bounded := steering.Allowed(k.b.In("today"), k.st); bounded {
		a.Hint = "no more than " + k.say(may) + " straight from the tap; water that has stood for a day or is treated has no such limit"
	}
	return a
}

func (k *deskTub) lineWords() string { return Mark(k.line.Base, k.Plan.Units) }

// pHAdvice is about the pH, as far as it was read lately.
func (k *deskTub) pHAdvice() steering.Advice {
	e, ok := reading.Last(k.entries, reading.FieldPH, k.today.At)
	if !ok || k.today.On.Since(k.dayOf(e.At)) > steering.CheckDays(reading.FieldPH) {
		return steering.Advice{}
	}
	k.out.Course = steering.PHTrend(k.b.In("today.ph"), k.entries).Text
	tap := k.Plan.Tap
	a := steering.PH(k.entries, k.today.At, k.good, tap.Alkalinity.Set() && !tap.Unknown)
	if a.Do != steering.Nothing && a.Do != steering.Wait && !k.fresh(k.dayOf(e.At)) {
		return steering.Advice{
			Do: steering.ReadAgain, Code: "ph-old", Source: a.Source, Text: "The pH was out of its band on " + k.dayOf(e.At).Words() + ". That is too long ago to act on.",
			Hint: "rinse the probe, or take a new strip, and read again",
		}
	}
	return k.checked(a, reading.FieldPH)
}

// changeAdvice is about changing the water, once something was written down.
func (k *deskTub) changeAdvice() steering.Advice {
	at, first := k.since()
	if at.IsZero() {
		return steering.Advice{}
	}
	used := reading.PouredBetween(k.entries, at, k.today.At.Add(1))
	f := steering.Filling{
		Since: at.In(k.today.At.Location()), First: first, Meter: k.measured(reading.FieldEC) == reading.Meter, Still: k.t.setup.Still,
		FillL: litresOf(k.fill), UsedL: used,
		Gathers: k.gathering(used),
	}
	c := steering.DueOut(k.b.In("today.change"), f, k.today.At)
	return c.Advice
}

// advised is advice with its amounts in fixed units.
func (k *deskTub) advised(a steering.Advice) Advised {
	out := Advised{Do: a.Do, Code: a.Code, Text: a.Text, Hint: a.Hint, Source: a.Source}
	amount := func(n working.Number, u quantity.Unit) *float64 {
		if !steering.Has(n) {
			return nil
		}
		return in(n, u, 2)
	}
	out.TakeOutL, out.MassKG = amount(a.TakeOut, quantity.Litre), amount(a.Mass, quantity.Kilogram)
	out.PourInL, out.RestL = amount(a.PourIn, quantity.Litre), amount(a.Rest, quantity.Litre)
	out.ECAfter = amount(a.After, quantity.MillisiemensPerCM)
	return out
}

// describe says in words where the tub stands.
func (k *deskTub) describe() {
	o := k.out
	at := k.line.Base
	o.LineMM, o.Line = &at, k.lineWords()
	if !k.t.setup.Still && k.line.Base-float64(k.st.TriggerMM) > k.t.lines.Lowest.Base {
		o.TopUpMM = k.line.Base - float64(k.st.TriggerMM)
		o.TopUp = Mark(o.TopUpMM, k.Plan.Units)
	}
	if k.lowest.Symbol != "" {
		o.Lowest = Mark(k.t.lines.Lowest.Base, k.Plan.Units)
	}
	if k.t.mass.Symbol != "" {
		o.Mass = k.say(k.t.mass)
	}
	o.Fills, o.Still, o.FromTap = k.say(k.fill), k.t.setup.Still, k.tapAllowed()
	k.carrying()
	if o.LevelMM == nil {
		return
	}
	o.ReadOn, o.Level = k.readOn.Words(), Mark(*o.LevelMM, k.Plan.Units)
	o.Litres = k.say(k.now)
}
