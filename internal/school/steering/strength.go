package steering

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Strength is what to do about the level and the EC of a tub, with its sums in
// the book. One advice: the level alone where the EC is well or not read, else
// a pour that mends both as far as the day's limits let it.
func Strength(b *working.Book, t Tub) Advice {
	t = t.bent()
	d := desk{b, t}
	switch {
	case t.NowL <= 0 || t.FillL <= 0:
		return Advice{Do: Measure, Code: "level-unknown", Text: "The level is not measured yet. Every sum needs it.", Hint: "read the dipstick", Source: practice}
	case t.Leak:
		return Advice{
			Do: SeekLeak, Code: "leak", Source: practice, Text: "More water is gone than thirst explains. Look for a leak before topping up.",
			Hint: "where water is near a plug or socket keep everyone away and fetch an adult",
		}
	case (t.NowL - t.most()).Base() > max(least, t.ErrorL.Base()):
		return d.tooFull()
	case t.off() == 0:
		return d.level()
	case t.Readings < ReadingsBefore():
		return Advice{
			Do: ReadAgain, Code: "ec-once", Source: practice,
			Text: "EC " + sayEC(t.EC.Mid()) + " is out of the band, " + sayEC(t.Low) + " to " + sayEC(t.High) + ". One reading is not enough to act on.",
			Hint: "stir, rinse the probe, read again",
		}
	case float64(t.EC.Mid()-t.target())*float64(t.off()) <= 0:
		return nothing("target-out-of-band", "EC "+sayEC(t.EC.Mid())+" is out of the crop's band, and the plan's target "+sayEC(t.target())+" is further out. Write it down, do nothing.")
	case t.off() > 0:
		return d.thin()
	}
	return d.strengthen()
}

// off tells on which side of the crop's band the whole reading lies, with what
// is left alone on either side: -1 weak, +1 strong, 0 neither or not read.
func (t Tub) off() int {
	leave := quantity.MSPerCM(value(factEcLeaveAlone))
	switch {
	case !t.read() || t.High <= 0:
		return 0
	case t.EC.Above(t.High + leave):
		return 1
	case t.EC.Below(t.Low - leave):
		return -1
	}
	return 0
}

func (d desk) tooFull() Advice {
	a := Advice{Do: TakeOut, Code: "too-full", Source: practice}
	a.TakeOut = d.b.Work(surplusLaw, "surplus", "over the most it may hold", d.now(), d.litres("most", "the most it may hold", "M", d.t.most()))
	a.Mass = d.mass(a.TakeOut)
	a.Text = "The tub holds " + sayL(d.t.NowL, d.t.System) + ", more than it may. Take out " + d.heavy(a) + "."
	a.Hint = "scoop it out with a jug; keep the water off plugs and sockets"
	return a
}

func (d desk) mass(out working.Number) working.Number {
	return d.b.Work(massLaw, "taken_mass", "what is taken out weighs", out,
		d.b.Typed("litre_mass", "density of water", "d", quantity.Density, quantity.KGPerL(1).Base(), 0))
}

// heavy says how much is taken out and how heavy it is.
func (d desk) heavy(a Advice) string {
	return say(a.TakeOut, d.t.System) + ", which weighs " + say(a.Mass, d.t.System)
}

// thin pours in water where the solution is too strong.
func (d desk) thin() Advice {
	t := d.t
	switch {
	case !t.Tap.Told:
		return Advice{Do: Measure, Code: "tap-ec-unknown", Source: d.source(), Text: "EC " + sayEC(t.EC.Mid()) + " is too strong. How far water thins it depends on the water.", Hint: "measure the EC of the tap water"}
	case t.target() <= t.Tap.EC:
		return Advice{
			Do: CannotReach, Code: "tap-too-strong", Source: d.source(),
			Text: "This tap cannot reach the target: its water has EC " + sayEC(t.Tap.EC) + ", and the target is " + sayEC(t.target()) + ".",
			Hint: "rain or deionised water thins it further; else raise the target to what the tap allows",
		}
	}
	a := d.pour(d.salts("target", "target", "T", t.target()), d.water())
	a.Do, a.Code, a.Of = Thin, "too-strong", Water
	return d.worded(a, "too strong")
}

// strengthen pours in solution where it is too weak, by no more than a day's
// step.
func (d desk) strengthen() Advice {
	t := d.t
	step := Facts.Get(factFixEcStepMax)
	aim := d.b.Work(stepLaw, "aim", "EC aimed at today", d.ec("target", "target", "G", t.target()), d.ecNow(),
		d.b.Fact("step", "rise in a day", "u", quantity.Conductivity, quantity.MSPerCM(step.Value).Base(), step))
	reach := quantity.FromBase[quantity.MSPerCM](aim.Base)
	switch {
	case t.FeedEC <= 0:
		return Advice{
			Do: Measure, Code: "feed-ec-unknown", Source: d.source(), Text: "EC " + sayEC(t.EC.Mid()) + " is too weak. How much solution it takes depends on how strong that is.",
			Hint: "make up a bucket of solution by the label, stir, wait and measure its EC",
		}
	case t.FeedEC <= reach:
		return Advice{
			Do: CannotReach, Code: "feed-too-weak", Source: d.source(),
			Text: "Solution of EC " + sayEC(t.FeedEC) + " cannot bring the tub to " + sayEC(reach) + ".", Hint: "make it up stronger than the target, as far as the label allows",
		}
	}
	if t.Curve != nil {
		aim = d.salts("aim", "EC aimed at today", "T", reach)
	}
	a := d.pour(aim, d.salts("feed_ec", "EC of the solution", "W", t.FeedEC))
	a.Do, a.Code, a.Of = Strengthen, "too-weak", Feed
	if reach < t.target() {
		a.Bound = append(a.Bound, ByStep)
	}
	return d.worded(a, "too weak")
}

// pour is the sum behind thinning and strengthening: take out X, then pour in y.
func (d desk) pour(aim, of working.Number) Advice {
	var a Advice
	now, ec, top := d.now(), d.salts("ec_now", "EC now", "E", d.t.EC.Mid()), d.ceiling()
	may, bounded := d.allowed()
	nought := d.litres("no_water", "nought", "z", 0)
	need := d.b.Work(d.sums().need, "needed", "needed where there is room", now, ec, aim, of)
	swap := d.b.Work(d.sums().swap, "swap", "to be taken out by the sum", now, top, aim, of, ec)
	a.TakeOut = d.b.Work(takeLaw, "take_out", "taken out first", swap,
		d.share("swap_share", "share of the water at once", "s", factFixSwapMax), now, may, top, nought)
	a.PourIn = d.b.Work(pourLaw, "pour_in", "poured in", need, may, top, now, a.TakeOut, nought)
	a.After = d.expected(now, a.TakeOut, ec, a.PourIn, of)
	if _, due := d.t.due(); due {
		rest := []working.Number{d.litres("fill", "at the fill line", "F", d.t.FillL), top, now, a.PourIn}
		if bounded {
			a.Rest = d.b.Work(restAllowedLaw, "rest", "to the line after that", append(rest, may, nought)...)
		} else {
			a.Rest = d.b.Work(restLaw, "rest", "to the line after that", append(rest, nought)...)
		}
	}
	a.Bound, a.wanted = d.bounds(a, need, swap, may, bounded), need.Base
	if a.TakeOut.Base > 0 {
		a.Mass = d.mass(a.TakeOut)
	} else {
		a.TakeOut = working.Number{}
	}
	if a.Rest.Base < least {
		a.Rest = working.Number{}
	} else {
		// Never stronger than the day's step has made the tub.
		a.RestEC = min(d.t.target(), quantity.FromBase[quantity.MSPerCM](a.After.Base))
	}
	a.Source = d.source()
	return a
}

// hair is how near to a limit counts as on it, in mm³: a thousandth of a drop.
const hair = 1e-2

// least is what a jug can pour, 0.05 L in mm³: less is shown as nothing.
const least = 5e4

// bounds tells which limits keep the pour below what the sum asks for.
func (d desk) bounds(a Advice, need, swap, may working.Number, bounded bool) []Limit {
	var out []Limit
	short := a.PourIn.Base < need.Base-hair && a.TakeOut.Base < swap.Base-hair
	if bounded && short && a.PourIn.Base > may.Base-hair {
		out = append(out, ByChlorine)
	}
	if half := d.t.NowL.Base() * value(factFixSwapMax) / 100; short && a.TakeOut.Base > half-hair {
		out = append(out, BySwap)
	}
	if d.t.Still && d.t.NowL+d.t.StillRoomL < d.t.most() && a.TakeOut.Base > 0 {
		out = append(out, ByStill)
	}
	return out
}

func (d desk) worded(a Advice, how string) Advice {
	s := d.t.System
	if a.PourIn.Base < least && (a.wanted >= least || a.PourIn.Base <= hair) {
		a.Do, a.Code = Wait, "poured-enough"
		a.Text = "EC " + sayEC(d.t.EC.Mid()) + " is " + how + ", but as much as may be was poured in today."
		a.Hint = "go on tomorrow, or use water that has stood for a day or is treated"
		return a
	}
	a.Why = "EC " + sayEC(d.t.EC.Mid()) + " is " + how + "; the target is " + sayEC(d.t.target()) + "."
	a.Text = a.Why + " "
	if Has(a.TakeOut) {
		a.Text += "Take out " + d.heavy(a) + ". Then pour in "
	} else {
		a.Text += "Pour in "
	}
	a.Text += sayPour(a.PourIn, s) + " of " + string(a.Of) + "."
	if Has(a.Rest) {
		a.Text += " Fill up with " + say(a.Rest, s) + " of solution at EC " + sayEC(a.RestEC) + "."
	}
	a.Text += " Expect EC " + say(a.After, quantity.Metric) + "."
	a.Hint = "stir, wait half an hour, read again and hold it against what was expected; " + likeOld(s)
	if len(a.Bound) > 0 {
		a.Hint = d.t.limitWords(a.Bound[0]) + "; " + a.Hint
	}
	return a
}

// sayPour writes litres, and what is less than a jug's mark in millilitres.
func sayPour(n working.Number, s quantity.System) string {
	if n.Base < least {
		return quantity.Format(quantity.SmallVolume, n.Base, s)
	}
	return say(n, s)
}

// likeOld says how near new water has to be to the old.
func likeOld(s quantity.System) string {
	return "keep new water within " + WaterStepWords(s) + " of the old"
}

func (t Tub) limitWords(l Limit) string {
	switch l {
	case ByChlorine:
		if t.Tap.Some {
			return "no more today, as the tap has chlorine: water that has stood for a day or is treated has no such limit"
		}
		return "no more today, as the tap's chlorine is not known: water that has stood for a day or is treated has no such limit"
	case ByStep:
		return "the rest tomorrow: no more than 0.3 mS/cm stronger a day"
	case BySwap:
		return "the rest tomorrow: no more than half the water at once"
	}
	return "the line of a still tub may rise by 20 mm at most"
}
