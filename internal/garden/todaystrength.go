package garden

import (
	"fmt"
	"strings"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/steering"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/reading"
)

// strengths settles the band of EC that suits the tub's crops, and what is aimed
// at. Where no EC suits all of them, it lies between theirs.
func (k *deskTub) strengths() {
	var low, high, phLow, phHigh working.Number
	for i, each := range k.t.growth.each {
		c := crop.Named(each.Name)
		l, h := c.EC(k.book)
		pl, ph := c.PH(k.book)
		if i == 0 {
			low, high, phLow, phHigh = l, h, pl, ph
			continue
		}
		low = k.b.Work(higherLaw, fmt.Sprintf("today.ec_low_with_%d", i+1), "weakest solution that suits the crops", low, l)
		high = k.b.Work(lowerLaw, fmt.Sprintf("today.ec_high_with_%d", i+1), "strongest solution that suits the crops", high, h)
		phLow, phHigh = lesser(phLow, pl), greater(phHigh, ph)
	}
	if low.Base > high.Base {
		low, high = high, low
	}
	k.st.Low, k.st.High = quantity.FromBase[quantity.MSPerCM](low.Base), quantity.FromBase[quantity.MSPerCM](high.Base)
	say := func(n working.Number) string { return quantity.FormatNumber(n.Base, n.Kind.Decimals[0]) }
	ec := func(n working.Number) string {
		return quantity.FormatNumber(quantity.MillisiemensPerCM.From(n.Base), 1)
	}
	k.good = reading.Range[quantity.PH]{Low: quantity.PH(phLow.Base), High: quantity.PH(phHigh.Base)}
	k.out.Wants = "EC " + ec(low) + " to " + ec(high) + " mS/cm, pH " + say(phLow) + " to " + say(phHigh)
	if aim := k.feedEC(); aim > 0 {
		k.st.Target = aim
		k.b.Typed("today.target", "EC aimed at", "T", quantity.Conductivity, aim.Base(), 0)
		return
	}
	aim := k.b.Work(middleLaw, "today.target", "EC aimed at", low, high)
	k.st.Target = quantity.FromBase[quantity.MSPerCM](aim.Base)
}

// strengthRead enters the EC as last read.
func (k *deskTub) strengthRead() {
	if k.st.EC.High <= 0 {
		return
	}
	e, ok := k.ecRead()
	if !ok {
		return
	}
	k.b.Noted("today.ec_now", "EC now", "E", quantity.Conductivity, k.st.EC.Mid().Base(), (k.st.EC.High-k.st.EC.Low).Base()/2, "the logbook, "+k.dayOf(e.At).Words())
}

// ecRead is the reading that the EC of the tub comes from.
func (k *deskTub) ecRead() (reading.Entry, bool) {
	return reading.Last(k.entries, reading.FieldEC, k.today.At)
}

// measured tells with what a field is read: the last reading's instrument, else
// what the plan names. Empty is not known.
func (k *deskTub) measured(f reading.Field) reading.Instrument {
	return instrument(k.entries, f, k.today.At, k.Plan.Tools)
}

// instrument is what a field was last read with, else what the plan says of it.
func instrument(entries []reading.Entry, f reading.Field, at time.Time, tools plan.Tools) reading.Instrument {
	if e, ok := reading.Last(entries, f, at); ok {
		with := e.EC.With
		if f == reading.FieldPH {
			with = e.PH.With
		}
		if with != "" {
			return with
		}
	}
	word := tools.PH
	if f == reading.FieldEC {
		word = tools.EC
	}
	return reading.Instrument(strings.TrimSuffix(word, "s"))
}

// meterDue says what has to be done before a meter is believed; empty where the
// field is not read with one, or it is in order.
func (k *deskTub) meterDue(f reading.Field) string {
	if k.measured(f) != reading.Meter {
		return ""
	}
	pass := reading.Passport{Measures: f}
	if e, ok := k.lastWithMeter(f); ok {
		pass = e.PH.Passport()
		if f == reading.FieldEC {
			pass = e.EC.Passport()
		}
	}
	pass.Name = map[reading.Field]string{reading.FieldPH: "the pH meter", reading.FieldEC: "the EC meter"}[f]
	for _, found := range pass.Check(k.today.At) {
		return found.Text + " " + strings.ToUpper(found.Hint[:1]) + found.Hint[1:] + "."
	}
	return ""
}

// lastWithMeter is the last reading of a field, of any tub, that says when its
// meter was calibrated: one meter serves them all.
func (k *deskTub) lastWithMeter(f reading.Field) (out reading.Entry, ok bool) {
	for _, e := range k.desk.entries {
		switch {
		case f == reading.FieldPH && e.PH.With == reading.Meter && !e.PH.Calibrated.IsZero():
			out, ok = e, true
		case f == reading.FieldEC && e.EC.With == reading.Meter && !e.EC.Calibrated.IsZero():
			out, ok = e, true
		}
	}
	return out, ok
}

// checked puts 'calibrate first' before advice that rests on a meter which
// nobody may believe.
func (k *deskTub) checked(a steering.Advice, f reading.Field) steering.Advice {
	acts := a.Do == steering.Thin || a.Do == steering.Strengthen || a.Do == steering.AskAdult
	due := k.meterDue(f)
	if !acts || due == "" {
		return a
	}
	code := "ec-meter-due"
	if f == reading.FieldPH {
		code = "ph-meter-due"
	}
	return steering.Advice{Do: steering.Measure, Code: code, Source: a.Source, Text: due, Hint: "then read again; nothing is poured in or corrected before"}
}
