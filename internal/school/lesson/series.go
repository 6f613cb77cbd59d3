package lesson

import (
	"fmt"
	"math"
	"slices"

	"rootbell/internal/base/quantity"
	"rootbell/internal/science/reading"
)

// series is one field of the logbook, in the unit that is shown.
type series struct {
	field reading.Field
	name  string // 'the height of the tallest plant'
	short string // 'height'
	kind  quantity.Kind
	grows bool
	alone bool    // judged by the readings of the sheet alone, as a pupil can
	data  []datum // what is left after the teacher's decisions
	raw   []datum // all of it
}

// fields are what a series may be of, the ones that show most first.
func (w *bench) fields() []series {
	length, volume := "cm", "L"
	if !w.metric() {
		length, volume = "in", "gal"
	}
	temperature := w.unit(quantity.Temperature)
	tenth := 1
	if !w.metric() {
		tenth = 2
	}
	return []series{
		{field: reading.FieldHeight, name: "the height of the tallest plant", short: "height", kind: plain(length, 1), grows: true},
		{field: reading.FieldEC, name: "the EC of the water", short: "EC", kind: plain("mS/cm", 2), grows: true},
		{field: reading.FieldPH, name: "the pH of the water", short: "pH", kind: plain("", 1)},
		{field: reading.FieldWater, name: "the temperature of the water", short: "temperature", kind: plain(temperature, 1)},
		{field: reading.FieldLevel, name: "the water in the tub", short: "water", kind: plain(volume, tenth), grows: true},
	}
}

// shownValue is a value of a field in the unit that is shown.
func (w *bench) shownValue(f reading.Field, v float64) float64 {
	switch f {
	case reading.FieldHeight:
		return w.in(quantity.Length, v)
	case reading.FieldWater:
		return w.in(quantity.Temperature, quantity.Celsius.Base(v))
	case reading.FieldLevel:
		return w.in(quantity.Volume, quantity.Litre.Base(v))
	}
	return v
}

// mostPoints is how many readings a pencil is asked to add up.
const mostPoints = 10

// read fills a series: one value a day, at most so many of the last, and what
// stands out is judged by all of them. The seed says which ones are taken where
// there are more.
func (w *bench) read(s series, most int) series {
	var all []datum
	points := reading.Points(w.t.Entries, s.field, w.t.Vessel)
	if len(points) == 0 {
		return s
	}
	first := w.t.dayOf(points[0].At)
	for _, p := range points {
		day := w.t.dayOf(p.At)
		value := quantity.Round(w.shownValue(s.field, (p.Low+p.High)/2), s.kind.Decimals[w.t.System])
		d := datum{id: p.ID, day: float64(daysBetween(first, day)), at: p.At, on: dayWords(day), value: value, doubtful: p.Doubtful}
		if n := len(all); n > 0 && all[n-1].day == d.day {
			continue // the first of a day
		}
		all = append(all, d)
	}
	step := math.Pow(10, -float64(s.kind.Decimals[w.t.System]))
	show := func(v float64) string { return w.show(s.kind, v) }
	judge(all, s.grows, step, show)
	s.raw = w.some(all, most)
	if s.alone {
		for i := range s.raw {
			s.raw[i].odd = ""
		}
		judge(s.raw, false, step, show)
	}
	var told []Oddity
	s.data, told = settle(s.raw, w.Choice, s.kind, w.t.System)
	w.out.Odd = append(w.out.Odd, told...)
	return s
}

// some takes at most so many: the odd ones, and of the others a stretch that
// the seed begins.
func (w *bench) some(all []datum, most int) []datum {
	if len(all) <= most {
		return all
	}
	odd := 0
	for _, d := range all {
		if d.odd != "" {
			odd++
		}
	}
	plain := len(all) - odd
	room := max(most-odd, 2)
	from := w.pick(0, max(plain-room, 0))
	var out []datum
	k := 0
	for _, d := range all {
		if d.odd != "" {
			out = append(out, d)
			continue
		}
		if k >= from && k < from+room {
			out = append(out, d)
		}
		k++
	}
	return out
}

// longest is a series with enough readings, by the seed one of the fields that
// have them. ok is false for a logbook with too little.
func (w *bench) longest(least, most int, alone bool, of ...reading.Field) (s series, ok bool) {
	var good []series
	for _, f := range w.fields() {
		if !slices.Contains(of, f.field) {
			continue
		}
		n := map[float64]bool{}
		for _, p := range reading.Points(w.t.Entries, f.field, w.t.Vessel) {
			n[float64(w.t.dayOf(p.At).Unix())] = true
		}
		if len(n) >= least {
			good = append(good, f)
		}
	}
	if len(good) == 0 {
		return s, false
	}
	s = good[w.rng.IntN(len(good))]
	s.alone = alone
	s = w.read(s, most)
	return s, len(s.data) >= least-1 && len(s.data) > 1
}

// fieldSeries reads one field; ok is false for fewer than least readings.
func (w *bench) fieldSeries(f reading.Field, least, most int) (series, bool) {
	for _, s := range w.fields() {
		if s.field != f {
			continue
		}
		s = w.read(s, most)
		return s, len(s.data) >= least
	}
	return series{}, false
}

// fromLogbook says that the sheet rests on the logbook, and from when to when.
func (w *bench) fromLogbook(s series) {
	w.out.From = fmt.Sprintf("%s, %s to %s.", fromLog, s.data[0].on, s.data[len(s.data)-1].on)
}

// only keeps of the odd readings those that the sheet uses, and those that the
// teacher took out.
func (w *bench) only(used ...datum) {
	w.out.Odd = slices.DeleteFunc(w.out.Odd, func(o Oddity) bool {
		return o.Do != LeaveOut && !slices.ContainsFunc(used, func(d datum) bool { return d.id == o.ID })
	})
}

// between is what was poured in after one reading and before a later one, in
// litres; ok is false where the water was changed in that time.
func (w *bench) between(a, b datum) (poured float64, ok bool) {
	for _, e := range w.t.Entries {
		if e.At.Before(a.at) || !e.At.Before(b.at) {
			continue
		}
		if e.Did(reading.ChangedOut) || e.Level.Filled.Set() {
			return 0, false
		}
		poured += float64(e.Poured())
	}
	return poured, true
}

func (w *bench) fromPlanAlone() { w.out.From = fromPlan }

// entered are the numbers of a row.
func (s series) values() []float64 {
	out := make([]float64, len(s.data))
	for i, d := range s.data {
		out[i] = d.value
	}
	return out
}
