package steering

import (
	"slices"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/reading"
)

// gap is how far apart two readings of a low pH have to be.
const gap = time.Hour

// PH is what to do about the pH of a tub, from its readings by moment.
// good is the band that suits the crop, zero for that of leafy crops; alkalinity
// tells whether the tap's is known. It never gives a dose; where one
// is due it says so, and what has to be known for it. A reading acts only when
// all it leaves open is out, and never within half a day of a correction.
func PH(entries []reading.Entry, now time.Time, good reading.Range[quantity.PH], alkalinity bool) Advice {
	all := pHs(entries)
	if len(all) == 0 {
		return nothing("ph-unread", "The pH is not measured yet.")
	}
	last := all[len(all)-1]
	if good.High <= 0 {
		good = reading.Range[quantity.PH]{Low: quantity.PH(value(factPhGoodLow)), High: quantity.PH(value(factPhGoodHigh))}
	}
	low, high := min(good.Low, quantity.PH(value(factPhLeaveAloneLow))), max(good.High, quantity.PH(value(factPhLeaveAloneHigh)))
	switch {
	case !last.sure.Below(good.Low) && !last.sure.Above(good.High):
		return nothing("ph-well", "pH "+last.text+" is well. Write it down, do nothing.")
	case !last.sure.Below(low) && !last.sure.Above(high):
		return nothing("ph-left-alone", "pH "+last.text+" is a little out of "+sayPH(good.Low)+" to "+sayPH(good.High)+". Write it down, do nothing, look tomorrow.")
	}
	if end, waiting := correcting(entries, now); waiting {
		return Advice{
			Do: Wait, Code: "ph-settling", Source: Facts.Get(factFixPhWait).Says(), Text: "The pH was corrected. It settles over half a day of air.",
			Hint: "read again from " + end.Format("Mon 15:04") + " on, and hold it against what was expected; no second dose before",
		}
	}
	if last.sure.Below(low) {
		return outside(all, alkalinity, "low", func(p pHAt) bool { return p.sure.Below(low) },
			func(p pHAt) bool { return p.sure.Below(quantity.PH(value(factPhActLow))) },
			func(p, q pHAt) bool { return q.at.Sub(p.at) >= gap })
	}
	return outside(all, alkalinity, "high", func(p pHAt) bool { return p.sure.Above(high) },
		func(p pHAt) bool { return p.sure.Above(quantity.PH(value(factPhActHigh))) },
		func(p, q pHAt) bool { return otherDay(p.at, q.at) })
}

func sayPH(p quantity.PH) string {
	return quantity.Format(quantity.PHScale, p.Base(), quantity.Metric)
}

// correcting tells whether a correction of the pH still settles.
func correcting(entries []reading.Entry, now time.Time) (end time.Time, waiting bool) {
	rest := time.Duration(value(factFixPhWait) * float64(time.Hour))
	for _, e := range entries {
		if e.Did(reading.Corrected) && !e.At.After(now) && e.At.Add(rest).After(now) {
			end, waiting = e.At.Add(rest), true
		}
	}
	return end, waiting
}

// outside is the advice for a pH that is out on one side: read again, watch,
// or have an adult correct it.
func outside(all []pHAt, alkalinity bool, side string, out, far func(pHAt) bool, apart func(p, q pHAt) bool) Advice {
	last := all[len(all)-1]
	var twice, twiceFar bool
	for _, p := range slices.Backward(all[:len(all)-1]) {
		if !out(p) {
			break // the row of readings that tell the same ends here
		}
		if apart(p, last) {
			twice = true
			twiceFar = twiceFar || far(p) && far(last)
		}
	}
	again := "an hour later"
	if side == "high" {
		again = "tomorrow"
	}
	switch {
	case !twice:
		return Advice{Do: ReadAgain, Code: "ph-" + side + "-once", Source: practice, Text: "pH " + last.text + " is " + side + ". One reading is not enough to act on.", Hint: "stir, rinse the probe, read again now and " + again}
	case !twiceFar:
		return Advice{Do: Watch, Code: "ph-" + side + "-watch", Source: practice, Text: "pH " + last.text + " is " + side + ", as before. Write it down and look at the newest leaves.", Hint: "pale new leaves: tell the teacher; else look tomorrow"}
	case !alkalinity:
		return Advice{Do: Measure, Code: "alkalinity-unknown", Source: practice, Text: "pH " + last.text + " is " + side + ", twice. No dose is given without the tap's alkalinity.", Hint: "test the tap's alkalinity with a strip or drops, or ask the water company; only an adult corrects pH"}
	}
	return Advice{Do: AskAdult, Code: "ph-" + side + "-act", Source: practice, Text: "pH " + last.text + " is " + side + ", twice. A correction is an adult's, a small step at a time.", Hint: "half of what the sum says, then wait half a day and hold the reading against what was expected"}
}

// pHAt is a pH reading that counts.
type pHAt struct {
	at   time.Time
	sure reading.Range[quantity.PH]
	mid  quantity.PH
	text string
}

// pHs are the readings of pH that are not doubtful, by moment.
func pHs(entries []reading.Entry) []pHAt {
	var out []pHAt
	for _, e := range entries {
		sure, ok := e.PH.Sure(e.At)
		if !ok || e.Doubts(reading.FieldPH) || e.Doubts(reading.FieldTub) || e.Doubts(reading.FieldMoment) {
			continue
		}
		text := quantity.Format(quantity.PHScale, e.PH.Read.Low.Base(), quantity.Metric)
		if e.PH.Read.High != e.PH.Read.Low {
			text += " to " + quantity.Format(quantity.PHScale, e.PH.Read.High.Base(), quantity.Metric)
		}
		out = append(out, pHAt{e.At, sure, e.PH.Read.Mid(), text})
	}
	return out
}

func otherDay(a, b time.Time) bool {
	return a.Format(time.DateOnly) != b.In(a.Location()).Format(time.DateOnly)
}

// Course is which way a series goes.
type Course string

// The courses. NotEnough is an answer.
const (
	Rising    Course = "rising"
	Falling   Course = "falling"
	Steady    Course = "steady"
	NotEnough Course = "not enough to say"
)

// drift is the kind of a change of pH in a day.
var drift = quantity.Kind{
	Name: "a drift", Dim: quantity.None.Over(quantity.TimeDim), Decimals: [2]int{2, 2},
	Metric: perDay, US: perDay,
}

var perDay = quantity.Unit{Symbol: "pH/d", Dim: quantity.None.Over(quantity.TimeDim), Scale: 1.0 / 86400}

var driftLaw = working.Must(working.Law{
	Symbol: "r", Kind: drift, Formula: "(q-p)/t",
	Where: []working.Symbol{
		{Name: "q", Meaning: "pH now", Kind: quantity.PHScale},
		{Name: "p", Meaning: "pH then", Kind: quantity.PHScale},
		{Name: "t", Meaning: "time between", Kind: quantity.Time},
	},
	Basis: working.OfNature, Source: "difference over time",
})

// Trend is which way the pH goes, by how much a day, and what that means.
type Trend struct {
	Course Course
	PerDay working.Number // zero where there is not enough to say
	Text   string
}

// PHTrend looks from the last pH back to the farthest reading of the last two
// weeks, or of this filling: two readings whose open ranges have nothing in
// common, at least a day apart, tell a course.
func PHTrend(b *working.Book, entries []reading.Entry) Trend {
	all := pHs(since(entries, reading.ChangedOut))
	none := Trend{Course: NotEnough, Text: "Not enough to say which way the pH goes: it takes two readings a day or more apart."}
	if len(all) < 2 {
		return none
	}
	last := all[len(all)-1]
	from := last.at.Add(-time.Duration(value(factPhTrendDays) * 24 * float64(time.Hour)))
	i := slices.IndexFunc(all, func(p pHAt) bool { return !p.at.Before(from) })
	first := all[i]
	if last.at.Sub(first.at) < 24*time.Hour {
		return none
	}
	out := Trend{Course: Steady, PerDay: b.Work(driftLaw, "ph_drift", "drift of the pH",
		b.Typed("ph_now", "pH now", "q", quantity.PHScale, last.mid.Base(), 0), b.Typed("ph_then", "pH then", "p", quantity.PHScale, first.mid.Base(), 0),
		b.Typed("ph_between", "time between", "t", quantity.Time, last.at.Sub(first.at).Seconds(), 0))}
	switch {
	case !last.sure.Apart(first.sure):
		out.Text = "The pH is steady, as far as the instrument can tell."
	case last.mid > first.mid:
		out.Course, out.Text = Rising, "The pH rises. That is usual while plants take nitrate, and where the tap water is hard."
	default:
		out.Course, out.Text = Falling, "The pH falls. That is usual while plants take ammonium."
	}
	return out
}

// since gives the entries after the last one with a deed.
func since(entries []reading.Entry, d reading.Deed) []reading.Entry {
	for i, e := range slices.Backward(entries) {
		if e.Did(d) {
			return entries[i+1:]
		}
	}
	return entries
}
