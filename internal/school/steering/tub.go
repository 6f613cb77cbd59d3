package steering

import (
	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/reading"
)

// Tub is the tub this morning. Volumes are of solution.
type Tub struct {
	NowL       quantity.L // in the tub now; zero: not read
	FillL      quantity.L // at today's fill line
	MostL      quantity.L // the most it may hold; zero: not more than FillL, nor than now
	LowestL    quantity.L // at the lowest safe line; zero: not known
	ErrorL     quantity.L // what the dipstick leaves open of NowL
	Aside      quantity.L // pushed aside by cups and stones
	Still      bool       // no pump: its line is meant to fall
	StillRoomL quantity.L // still: up to StillRaiseMM over the lowest line it has had, so that small rises do not add up
	DropMM     quantity.MM
	TriggerMM  quantity.MM // a drop from which an aerated tub is topped up
	Closing    bool        // nobody comes tomorrow
	Leak       bool        // more is gone than thirst explains

	EC       reading.Range[quantity.MSPerCM] // with what the meter leaves open; zero: not read
	Readings int                             // in a row that tell the same, this one too
	Low      quantity.MSPerCM                // the crop's band
	High     quantity.MSPerCM
	Target   quantity.MSPerCM // zero: the middle of the band

	Curve  Curve          // of the tub's feed; nil: not known, and EC is taken for salts
	Refill working.Number // parts of the feed that a top-up wants in the long run; zero: not known
	Drinks Liquid         // what the class's own readings say the plants take; empty: not known

	Tap     Tap
	FeedEC  quantity.MSPerCM // of the solution made up for pouring in, as measured; zero: none
	PouredL quantity.L       // today already, from that tap
	System  quantity.System  // for the words
}

// Tap is the water that is poured in.
type Tap struct {
	EC   quantity.MSPerCM
	Told bool // whether EC is known; pure water is 0 and told
	Safe bool // chlorine measured as none, or the water has stood or is treated
	Some bool // chlorine is measured, and there is some: it counts like one not known
}

// StillRaiseMM is how far the line of a still tub may be raised.
func StillRaiseMM() quantity.MM { return quantity.MM(Facts.Get(factWaterStillRaiseMax).Value) }

// StillRaiseFact is the row that says so.
const StillRaiseFact = factWaterStillRaiseMax

// Allowed enters what may still be poured into a tub today from its tap; false
// where the water has no such limit.
func Allowed(b *working.Book, t Tub) (n working.Number, bounded bool) { return desk{b, t}.allowed() }

// ReadingsBefore is how many readings come before any correction.
func ReadingsBefore() int { return int(value(factFixReadingsBefore)) }

func value(id facts.ID) float64 { return Facts.Get(id).Value }

func (t Tub) read() bool { return t.EC.High > 0 }

func (t Tub) most() quantity.L {
	if t.MostL > 0 {
		return t.MostL
	}
	return max(t.FillL, t.NowL)
}

// target is the EC to steer to: the plan's, or the middle of the crop's band.
func (t Tub) target() quantity.MSPerCM {
	if t.Target > 0 {
		return t.Target
	}
	return (t.Low + t.High) / 2
}

// desk enters the numbers of a morning in a book.
type desk struct {
	b *working.Book
	t Tub
}

func (d desk) litres(key, name, symbol string, l quantity.L) working.Number {
	return d.b.Typed(key, name, symbol, quantity.Volume, l.Base(), 0)
}

func (d desk) ec(key, name, symbol string, e quantity.MSPerCM) working.Number {
	return d.b.Typed(key, name, symbol, quantity.Conductivity, e.Base(), 0)
}

func (d desk) share(key, name, symbol string, id facts.ID) working.Number {
	f := Facts.Get(id)
	return d.b.Fact(key, name, symbol, quantity.Share, f.Value/100, f)
}

func (d desk) now() working.Number { return d.litres("in_tub", "in the tub now", "V", d.t.NowL) }

func (d desk) ecNow() working.Number { return d.ec("ec_now", "EC now", "E", d.t.EC.Mid()) }

// ceiling is what the tub may hold today: a still tub's line rises only so far.
func (d desk) ceiling() working.Number {
	top := d.litres("most", "the most it may hold", "M", d.t.most())
	if !d.t.Still {
		return top
	}
	return d.b.Work(ceilingLaw, "most_today", "the most it may hold today", top, d.now(),
		d.litres("still_room", "what the line of a still tub may rise by", "r", max(d.t.StillRoomL, 0)))
}

// allowed is what may still be poured in today; unbounded where the water is
// safe, which is then said by the tub's own size.
func (d desk) allowed() (n working.Number, bounded bool) {
	if d.t.Tap.Safe {
		return d.litres("pour_any", "what one tub can take", "Y", 2*max(d.t.most(), d.t.NowL)), false
	}
	return d.b.Work(allowedLaw, "pour_allowed", "may be poured in today",
		d.share("chlorine_share", "share of the fill a day, chlorine not known", "k", factTopupShareMax),
		d.litres("fill", "at the fill line", "F", d.t.FillL), d.litres("poured_today", "poured in today already", "p", d.t.PouredL),
		d.litres("no_water", "nought", "z", 0)), true
}
