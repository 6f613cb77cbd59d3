package garden

import (
	"slices"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/school/steering"
	"rootbell/internal/school/term"
	"rootbell/internal/science/reading"
)

// What a rate of use may rest on: levels of the last weeks, far enough apart
// that the error of a dipstick does not decide, over several days.
const (
	rateSpan  = 21 * 24 * time.Hour
	rateApart = 18 * time.Hour
	rateLeast = 3 * 24 * time.Hour
)

// gone is what left a tub between two readings of its level.
type gone struct {
	since, until time.Time
	litres       quantity.L
	last, now    reading.Entry
}

// mostLosses is how many stretches between levels are looked at, the last ones.
const mostLosses = 80

// losses are the stretches between the last levels as read, by moment.
func (k *deskTub) losses() []gone {
	if k.lost != nil {
		return k.lost
	}
	var levels []int
	for i := len(k.entries) - 1; i >= 0 && len(levels) <= mostLosses; i-- {
		e := &k.entries[i]
		if _, _, ok := e.Litres(k.vessel); ok && !e.Doubts(reading.FieldLevel) && !e.Doubts(reading.FieldMoment) && !e.Doubts(reading.FieldTub) {
			levels = append(levels, i)
		}
	}
	slices.Reverse(levels)
	k.lost = []gone{}
	for n := 1; n < len(levels); n++ {
		from, to := levels[n-1], levels[n]
		last, now := k.entries[from], k.entries[to]
		poured := reading.PouredBetween(k.entries[from:to+1], last.At, now.At)
		if l, ok := reading.Lost(working.NewBook(), k.vessel, last.Row, now.Row, poured, 0); ok {
			k.lost = append(k.lost, gone{last.At, now.At, litresOf(l.Lost), last, now})
		}
	}
	return k.lost
}

// rate enters what the tub takes in a day: from the class's own readings up to a
// moment, else what the plan says is topped up. False where neither is known.
func (k *deskTub) rate(key string, upTo time.Time) (working.Number, bool) {
	sum, over := quantity.L(0), time.Duration(0)
	var from time.Time
	for _, g := range k.losses() {
		if g.until.After(upTo) || g.until.Before(upTo.Add(-rateSpan)) || g.until.Sub(g.since) < rateApart {
			continue
		}
		if from.IsZero() {
			from = g.since
		}
		sum, over = sum+g.litres, over+g.until.Sub(g.since)
	}
	if over >= rateLeast && sum > 0 {
		source := "the logbook, " + k.dayOf(from).Words() + " to " + k.dayOf(upTo).Words()
		return k.b.Work(rateLaw, key, "what the tub takes in a day, as the class read it",
			k.b.Noted(key+"_gone", "gone in that time", "W", quantity.Volume, sum.Base(), 0, source),
			k.b.Noted(key+"_time", "in the time", "t", quantity.Time, over.Seconds(), 0, source)), true
	}
	if use := k.typed.DailyTopup; use.Set() && use.Value > 0 {
		return k.b.Typed("daily_topup", "water the tub takes in a day", "q", quantity.DailyVolume, use.Value.Base(), 0), true
	}
	return working.Number{}, false
}

// leak asks whether more is gone since the reading before than thirst explains.
// Without a thirst to hold it against it is not asked.
func (k *deskTub) leak() (reading.Loss, bool) {
	all := k.losses()
	if len(all) == 0 {
		return reading.Loss{}, false
	}
	last := all[len(all)-1]
	if k.dayOf(last.until) != k.readOn {
		return reading.Loss{}, false
	}
	thirst, known := k.thirst(last)
	if !known {
		return reading.Loss{}, false
	}
	return reading.Lost(k.b.In("today.leak"), k.vessel, last.last.Row, last.now.Row, reading.PouredBetween(k.entries, last.since, last.until), thirst)
}

// Ahead is the next closed stretch, and what it means for each tub.
type Ahead struct {
	term.Stretch
	Eve   bool   // nobody comes from the end of this day on
	Lines []Line // of the tubs of which it is known what they take in a day
	Short bool   // one of them will not last
}

// weekend is how many closed days are nothing out of the way.
const weekend = 2

// lookAhead is how many days before it a long closed stretch is spoken of.
const lookAhead = 14

// closing tells whether nobody comes on the day after this one.
func (d *desk) closing() bool {
	on := d.today.On
	return on.Set() && d.Term.Open(on) && !d.Term.Open(on.Add(1))
}

// ahead finds the next closed stretch that is worth a word.
func (d *desk) ahead() *Ahead {
	on := d.today.On
	if !on.Set() {
		return nil
	}
	for _, s := range d.Term.Stretches(term.Span{From: on.Add(1), To: on.Add(lookAhead)}, d.today.At.Location()) {
		eve := s.From == on.Add(1)
		if s.From.After(on) && (eve || s.Days() > weekend) {
			return &Ahead{Stretch: s, Eve: eve}
		}
	}
	return nil
}

// back is the long stretch that ended before this day.
func (d *desk) back() *term.Stretch {
	on := d.today.On
	if !on.Set() || !d.Term.Open(on) {
		return nil
	}
	s, ok := d.Term.StretchAt(on.Add(-1), d.today.At.Location())
	if !ok || s.Days() <= weekend {
		return nil
	}
	return &s
}

// last says whether the water outlasts the closed stretch at the rate so far.
func (k *deskTub) last(ahead *Ahead) {
	rate, known := k.rate("today.use", k.today.At)
	if !known {
		k.lastGuess(ahead)
		return
	}
	if k.lowest.Symbol == "" {
		return
	}
	b := k.b.In("today.closed")
	use := b.Work(useLaw, "use", "gone by the end of the closed stretch", rate,
		b.Noted("time", "time nobody comes", "t", quantity.Time, ahead.Hours()*3600, 0, "the school's calendar"))
	hot := b.Work(hotUseLaw, "use_hot", "gone if all days are hot and dry", steering.Stress(b), use)
	left := b.Work(leftLaw, "reserve", "over the lowest line on a full tub", k.fill, k.lowest)
	line := Line{Tub: k.t.name, Key: use.Key, Act: "about " + k.say(use) + " go, of " + k.say(left) + " over the lowest line"}
	switch {
	case use.Base > left.Base:
		ahead.Short = true
		line.Why = "That does not last. Somebody has to come in between, or the plants are picked before."
	case hot.Base > left.Base:
		line.Why = "In a hot dry room " + k.say(hot) + " would go, and that does not last."
	}
	ahead.Lines = append(ahead.Lines, line)
}

func (d *desk) say(n working.Number) string {
	return quantity.Format(n.Kind, n.Base, d.Plan.Units)
}

// since is the day on which the water of the tub was last new, and whether that
// was its first filling.
func (k *deskTub) since() (at time.Time, first bool) {
	for _, e := range slices.Backward(k.entries) {
		if e.Did(reading.ChangedOut) {
			return e.At, false
		}
	}
	for _, e := range k.entries {
		if e.Did(reading.Planted) {
			return e.At, true
		}
	}
	if len(k.entries) > 0 {
		return k.entries[0].At, true
	}
	return at, true
}
