package steering

import (
	"strings"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/reading"
)

var usedLaw = working.Must(working.Law{
	Symbol: "k", Kind: quantity.Share, Formula: "q/V",
	Where: []working.Symbol{litres("q", "topped up since the last change"), litres("V", "the tub's fill")},
	Basis: working.OfNature, Source: "share",
})

// Filling is a tub since its water was last changed.
type Filling struct {
	Since time.Time  // the last change, or the first filling
	First bool       // nothing but the first filling so far
	Meter bool       // somebody measures EC
	UsedL quantity.L // topped up since
	FillL quantity.L
	Still bool // no pump: filled once

	Gathers []Gathering // what plants leave of the water that is topped up
}

// Gathering is something that every top-up brings and no plant takes.
type Gathering struct {
	Name  string
	Now   working.Number // what has built up
	Limit float64        // at which the water is changed, as Now counts
}

// over names the first that has built up to its limit.
func (f Filling) over() string {
	for _, g := range f.Gathers {
		if g.Now.Base >= g.Limit {
			return strings.ToUpper(g.Name[:1]) + g.Name[1:] + " from the tap has built up to " + say(g.Now, quantity.Metric) + "."
		}
	}
	return ""
}

// Change is when the water is due to be changed.
type Change struct {
	Advice
	On   time.Time      // the day by which it is due by days alone, at midnight of Since's zone
	Used working.Number // share of the fill that was topped up since
}

// DueOut says whether the water is due to be changed: by days, sooner where
// nobody measures EC, or by what was topped up, whichever comes first.
func DueOut(b *working.Book, f Filling, now time.Time) Change {
	if f.Still {
		return Change{Advice: nothing("still-once", "A still tub is filled once. Its water is not changed.")}
	}
	if f.Since.IsZero() || f.FillL <= 0 {
		return Change{Advice: Advice{Do: Measure, Code: "filling-unknown", Source: practice, Text: "Nobody wrote down when the tub was filled.", Hint: "write down the day it was last filled or changed"}}
	}
	id, why := factChangeoutDays, "the water is changed every 14 days"
	switch {
	case !f.Meter:
		id, why = factChangeoutDaysNoMeter, "without an EC meter the water is changed every 10 days"
	case f.First:
		id, why = factChangeoutDaysYoung, "the first filling lasts 21 days"
	}
	y, m, d := f.Since.Date()
	out := Change{On: time.Date(y, m, d+int(value(id)), 0, 0, 0, 0, f.Since.Location())}
	out.Used = b.Work(usedLaw, "changed_share", "share topped up since the last change",
		b.Typed("used", "topped up since the last change", "q", quantity.Volume, f.UsedL.Base(), 0),
		b.Typed("fill", "the tub's fill", "V", quantity.Volume, f.FillL.Base(), 0))
	over := f.over()
	switch {
	case float64(f.UsedL) >= value(factChangeoutUsedVolume)*float64(f.FillL):
		out.Advice = due("changeout-litres", "As much was topped up as the tub holds. Salts that the plants leave have built up.")
	case over != "":
		out.Advice = due("changeout-build-up", over+" The plants leave it, and the EC no longer tells what they can eat.")
	case !now.Before(out.On):
		out.Advice = due("changeout-days", "Change the water: "+why+". It was due on "+out.On.Format("Mon 2 Jan")+".")
	default:
		out.Advice = nothing("changeout-later", "The water is good until "+out.On.Format("Mon 2 Jan")+": "+why+".")
	}
	return out
}

func due(code, text string) Advice {
	return Advice{
		Do: ChangeOut, Code: code, Text: text, Source: practice,
		Hint: "lid and plants on a second tub, roots in old solution, 20 minutes at most; a siphon is filled with water and never started by mouth",
	}
}

// Settling says whether to wait before the EC is measured, and until when:
// solution that was poured in has to mix first.
func Settling(entries []reading.Entry, now time.Time) (until time.Time, a Advice) {
	rest := time.Duration(value(factFixEcWait)) * time.Minute
	for _, e := range entries {
		if end := e.At.Add(rest); e.Did(reading.Fed) && !e.At.After(now) && end.After(now) && end.After(until) {
			until = end
		}
	}
	if until.IsZero() {
		return until, Advice{}
	}
	return until, Advice{
		Do: Wait, Code: "settling", Source: practice, Text: "Solution was poured in. It takes half an hour to mix.",
		Hint: "stir, and measure from " + until.Format("15:04") + " on",
	}
}
