package steering

import (
	"testing"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/science/reading"
)

func ecOf(v float64) func(*reading.Row) {
	return func(r *reading.Row) {
		r.EC = reading.EC{Read: quantity.Interval[mS]{Low: mS(v), High: mS(v), Text: "typed"}, With: reading.Meter}
	}
}

func holds(l float64) func(*reading.Row) {
	return func(r *reading.Row) { r.Level.Litres = quantity.Typed[quantity.L]{Value: quantity.L(l), Text: "typed"} }
}

func added(l float64) func(*reading.Row) {
	return func(r *reading.Row) { r.Added.Litres = quantity.Typed[quantity.L]{Value: quantity.L(l), Text: "typed"} }
}

func did(d reading.Deed) func(*reading.Row) {
	return func(r *reading.Row) { r.Done = append(r.Done, d) }
}

func doubts(f reading.Field) func(*reading.Row) {
	return func(r *reading.Row) { r.Doubtful = append(r.Doubtful, f) }
}

func TestWhatReadingsTellOfATub(t *testing.T) {
	v := reading.Vessel{FillL: 24}
	for _, c := range []struct {
		name     string
		entries  []reading.Entry
		nowL, ec float64
		readings int
		poured   float64
	}{
		{"none", nil, 0, 0, 0, 0},
		{"level and EC", []reading.Entry{at(0, 6, holds(20), ecOf(2.4))}, 20, 2.4, 1, 0},
		{"poured in since", []reading.Entry{at(0, 6, holds(20)), at(1, 6, added(2)), at(2, 6, added(1))}, 23, 0, 0, 3},
		{"strong twice", []reading.Entry{at(0, 6, holds(20), ecOf(2.4)), at(1, 6, ecOf(2.3))}, 20, 2.3, 2, 0},
		{"strong, well between", []reading.Entry{at(0, 6, ecOf(2.4)), at(1, 6, ecOf(1.5)), at(2, 6, ecOf(2.4))}, 0, 2.4, 1, 0},
		{"strong, thinned, strong", []reading.Entry{at(0, 6, ecOf(2.6), added(4)), at(1, 6, ecOf(2.4))}, 0, 2.4, 1, 4},
		{"strong, then thinned", []reading.Entry{at(0, 6, ecOf(2.6), added(4))}, 0, 0, 0, 4},
		{"strong, changed out", []reading.Entry{at(0, 6, ecOf(2.6), did(reading.ChangedOut)), at(1, 6, ecOf(2.4))}, 24, 2.4, 1, 24},
		{"doubtful ones do not count", []reading.Entry{at(0, 6, holds(20), ecOf(1.5)), at(1, 6, holds(2), ecOf(9), doubts(reading.FieldEC), doubts(reading.FieldLevel))}, 20, 1.5, 1, 0},
		{"yesterday's pour is not today's", []reading.Entry{at(-24, 6, holds(18), added(5)), at(0, 6, holds(22))}, 22, 0, 0, 0},
		{"what is still to come", []reading.Entry{at(0, 6, holds(20)), at(5, 6, holds(10))}, 20, 0, 0, 0},
	} {
		got := Tub{Low: 1.2, High: 1.8}.Seen(c.entries, v, monday.Add(3*time.Hour))
		mid := float64(got.EC.Mid())
		if float64(got.NowL) != c.nowL || mid < c.ec-1e-9 || mid > c.ec+1e-9 || got.Readings != c.readings || float64(got.PouredL) != c.poured {
			t.Errorf("%s: %v L, EC %v, %d readings, poured %v; want %v, %v, %d, %v", c.name, got.NowL, mid, got.Readings, got.PouredL, c.nowL, c.ec, c.readings, c.poured)
		}
	}
}
