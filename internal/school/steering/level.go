package steering

import (
	"fmt"
	"math"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// level is what to do about the level alone.
func (d desk) level() Advice {
	why, due := d.t.due()
	if !due {
		return d.leave()
	}
	a := Advice{Do: TopUp, Code: "top-up", Why: why, Source: practice, Of: d.t.liquid()}
	now, top, nought := d.now(), d.ceiling(), d.litres("no_water", "nought", "z", 0)
	may, bounded := d.allowed()
	need := d.b.Work(roomLaw, "to_line", "to the fill line", d.litres("fill", "at the fill line", "F", d.t.FillL), now, nought)
	if need.Base < least {
		return d.leave()
	}
	a.PourIn = d.b.Work(pourLaw, "pour_in", "poured in", need, may, top, now, nought, nought)
	made := string(a.Of)
	of, ec, known := d.of(a.Of)
	if known && a.Of != Water {
		made += " (EC " + sayEC(ec) + ")"
		a.PourEC = ec
	}
	if known && d.t.read() {
		a.After = d.expected(now, nought, d.salts("ec_now", "EC now", "E", d.t.EC.Mid()), a.PourIn, of)
	}
	if bounded && a.PourIn.Base < need.Base-hair && a.PourIn.Base > may.Base-hair {
		a.Bound = append(a.Bound, ByChlorine)
	}
	if d.t.Still && a.PourIn.Base < need.Base-hair {
		a.Bound = append(a.Bound, ByStill)
	}
	if a.PourIn.Base < least {
		a.Do, a.Code, a.Text = Wait, "poured-enough", why+" As much as may be was poured in today."
		a.Hint = "go on tomorrow, or use water that has stood for a day or is treated"
		return a
	}
	a.Text = why + " Pour in " + say(a.PourIn, d.t.System) + " of " + made + "."
	a.Hint = likeOld(d.t.System)
	if a.Of == Refill {
		a.Hint = tenths(d.t.Refill.Base) + "; " + a.Hint
	}
	if len(a.Bound) > 0 {
		a.Hint = d.t.limitWords(a.Bound[0]) + "; " + a.Hint
	}
	return a
}

// due says why the tub is topped up today, if it is.
func (t Tub) due() (why string, due bool) {
	share := value(factWaterDropBeforeAct) / 100
	switch {
	case t.LowestL > 0 && t.NowL < t.LowestL:
		return "The water is under the lowest safe line.", true
	case t.Still || t.NowL >= t.FillL:
		return "", false
	case float64(t.NowL) < float64(t.FillL)*(1-share):
		return "The tub is under two thirds of its fill.", true
	case t.TriggerMM > 0 && t.DropMM >= t.TriggerMM:
		return "The line has fallen by " + quantity.FormatMark(t.DropMM.Base(), t.System) + ".", true
	case t.Closing:
		return "Nobody comes tomorrow.", true
	}
	return "", false
}

// leave is the answer where nothing is due.
func (d desk) leave() Advice {
	switch {
	case d.t.Still:
		return nothing("still-falls", "The line of a still tub is meant to fall. Write it down, do nothing.")
	case !d.t.read():
		return nothing("level-well", "The level is well. Write it down, do nothing.")
	case d.t.EC.High > d.t.High || d.t.EC.Low < d.t.Low:
		return nothing("ec-left-alone", "EC "+sayEC(d.t.EC.Mid())+" may be just out of the band. Write it down, do nothing, look tomorrow.")
	}
	return nothing("all-well", "Level and EC are well. Write it down, do nothing.")
}

// liquid is what a top-up is made with: water where the solution is in the
// upper half of its band or nobody measured it, full strength under it. In the
// lower half it is what the plants take with their water, where the feed is
// known, else half strength. What the class's own readings say goes first.
func (t Tub) liquid() Liquid {
	switch ec := t.EC.Mid(); {
	case !t.read() || t.High <= 0:
		return Water
	case ec < t.Low:
		return Feed
	case ec >= (t.Low+t.High)/2 || t.Drinks == Water:
		return Water
	case t.Curve != nil && Has(t.Refill):
		return Refill
	}
	return HalfFeed
}

// of is a liquid for topping up, as the sums count its salts, and its EC: the
// solution is made up to the target, half strength lies between that and the
// tap. False where it is not known.
func (d desk) of(l Liquid) (salts working.Number, ec quantity.MSPerCM, known bool) {
	full := d.t.target()
	switch {
	case l == Feed:
		return d.salts("topup_ec", "EC of the solution", "W", full), full, full > 0
	case l == Refill:
		return d.t.Refill, quantity.MSPerCM(d.t.Curve.EC(d.t.Refill.Base)), true
	case !d.t.Tap.Told:
		return salts, 0, false
	case l == Water:
		return d.water(), d.t.Tap.EC, true
	}
	if d.t.Curve != nil {
		half := d.b.Work(halfPartsLaw, "half_parts", "half-strength solution, in parts of the feed", d.salts("target", "target", "N", full))
		return half, quantity.MSPerCM(d.t.Curve.EC(half.Base)), full > 0
	}
	half := d.b.Work(halfLaw, "half_ec", "EC of half-strength solution",
		d.ec("tap_ec", "EC of the tap water", "w", d.t.Tap.EC), d.ec("target", "target", "N", full))
	return half, quantity.FromBase[quantity.MSPerCM](half.Base), full > 0
}

// tenths says how a solution of so many parts is made from full strength.
func tenths(strength float64) string {
	n := int(math.Round(10 * min(max(strength, 0), 1)))
	if n == 10 {
		return "make it up at full strength"
	}
	return fmt.Sprintf("make it of %d parts of full-strength solution and %d of water", n, 10-n)
}
