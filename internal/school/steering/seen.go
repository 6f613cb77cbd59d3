package steering

import (
	"slices"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/science/reading"
)

// Seen is the tub with what its readings tell, by moment and up to now: what
// is in it, how strong it is, how many readings in a row say so, and what was
// poured in on that day. Low and High have to be there already.
func (t Tub) Seen(entries []reading.Entry, v reading.Vessel, now time.Time) Tub {
	t.NowL, t.EC, t.Readings, t.PouredL = 0, reading.Range[quantity.MSPerCM]{}, 0, 0
	var known []reading.Entry
	for _, e := range entries {
		if !e.At.After(now) && !e.Doubts(reading.FieldTub) && !e.Doubts(reading.FieldMoment) {
			known = append(known, e)
		}
	}
	for _, e := range slices.Backward(known) {
		if _, after, ok := e.Litres(v); ok && !e.Doubts(reading.FieldLevel) {
			t.NowL = after + reading.PouredBetween(known, e.At, now.Add(1))
			break
		}
	}
	t.EC, t.Readings = t.strengths(known)
	t.PouredL = pouredToday(known, v, now)
	return t
}

// strengths is the last EC and how many readings in a row lie on its side of
// the band. A reading from before something was poured in or changed tells
// nothing of the water that is there now: then the EC counts as not read.
func (t Tub) strengths(known []reading.Entry) (last reading.Range[quantity.MSPerCM], n int) {
	for _, e := range slices.Backward(known) {
		if e.Poured() > 0 || e.Did(reading.Fed) || e.Did(reading.ToppedUp) || e.Did(reading.ChangedOut) {
			return last, n // what was done follows what was read in the same row
		}
		ec, ok := e.AtTwentyFive()
		if !ok || e.Doubts(reading.FieldEC) {
			continue
		}
		sure, _ := ec.Sure()
		one := t
		one.EC = sure
		switch {
		case n == 0:
			last, n = sure, 1
			t.EC = sure
		case one.off() == t.off():
			n++
		default:
			return last, n
		}
	}
	return last, n
}

// pouredToday is what was poured in on the day of a moment, in its own zone;
// the whole fill where the water was changed.
func pouredToday(known []reading.Entry, v reading.Vessel, now time.Time) quantity.L {
	sum := quantity.L(0)
	for _, e := range known {
		if otherDay(now, e.At) {
			continue
		}
		if e.Did(reading.ChangedOut) {
			sum = max(sum, v.FillOn(e.At))
			continue
		}
		sum += e.Poured()
	}
	return sum
}
