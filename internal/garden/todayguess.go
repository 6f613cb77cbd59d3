package garden

import (
	"context"
	"fmt"
	"slices"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/forecast"
	"rootbell/internal/school/season"
	"rootbell/internal/school/steering"
	"rootbell/internal/school/term"
	"rootbell/internal/science/reading"
)

// guess is what the season's forecast makes of a tub of which the class has no
// rate yet: the tub as it was looked after and read so far.
type guess struct {
	s *tubSeason
	c season.Course
	f season.Followed
}

// guessMembers is how many runs a morning's guess counts. A page waits for
// them, so they are few; their number and their luck are always the same, so
// that page and terminal say the same.
const guessMembers = 100

// guess follows the tub from the day its plants went in up to a day. Nil where
// they are not in it, or where it cannot be followed.
func (k *deskTub) guess(to term.Date) *guess {
	moved, known := k.planted()
	if on := term.Date(k.typed.Transplant); !known && on.Set() && !on.After(k.today.On) {
		moved, known = on, true
	}
	if !known || !k.Term.Known() || k.t.out.Plants == nil || k.t.out.Plants.Count == 0 || k.t.out.Lid == nil {
		return nil
	}
	s := k.season()
	if !s.tubReady() {
		return nil
	}
	s.laid()
	log := s.logbook()
	g := &guess{s: s, c: s.course(log[len(log)-1], moved, to)}
	f, err := season.Follow(context.Background(), g.c, season.Effort{Members: guessMembers, Seed: 1, Workers: seasonWorkers})
	if err != nil {
		return nil // the page Season says why
	}
	g.f = f
	return g
}

// season is the tub ready to be followed, on a book of its own: nothing that the
// morning shares is written to.
func (k *deskTub) season() *tubSeason {
	own := *k.t.assessor
	own.book, own.findings = working.NewBook(), nil
	t := *k.t
	t.assessor, t.book = &own, own.book
	p := &planner{assessor: &own, ctx: context.Background(), out: k.Assessment, zone: k.today.At.Location(), now: k.today.At, entries: k.desk.entries}
	p.place = p.surroundings()
	return &tubSeason{planner: p, t: &t, field: t.field, b: own.book.In("tubs." + Slug(t.name) + ".season"), out: &Season{}}
}

// gone is what a closed stretch takes: the middle, and what one run in twenty
// is over.
func (g *guess) gone(s term.Stretch) (middle, high quantity.L, ok bool) {
	at := slices.IndexFunc(g.f.Standing, func(x season.Standing) bool { return x.Stretch.From == s.From })
	if at < 0 {
		return 0, 0, false
	}
	before := g.f.Standing[at].State
	alone := forecast.Season{Tub: g.c.Tub}
	for from := s.Since; from.Before(s.Until); {
		to := from.AddDate(0, 0, 1)
		if to.After(s.Until) {
			to = s.Until
		}
		alone.Days, from = append(alone.Days, g.c.Spans(from, to)), to
	}
	after, err := forecast.Run(context.Background(), alone, forecast.Options{Seed: 2, Workers: seasonWorkers, After: &before, NoLearning: true})
	if err != nil || len(after.Ends) != len(before.Ends) {
		return 0, 0, false
	}
	var litres []float64
	for i, end := range after.Ends {
		litres = append(litres, end.Ledger.DrunkL+end.Ledger.VapourL-before.Ends[i].Ledger.DrunkL-before.Ends[i].Ledger.VapourL)
	}
	slices.Sort(litres)
	n := len(litres)
	return quantity.L(litres[n/2]), quantity.L(litres[n*19/20]), true
}

// says is how sure the guess is.
func (g *guess) says() string {
	if _, guessed := g.f.Guess(g.c.Readings); guessed {
		return "That is the model's guess until the water was read three times."
	}
	return "That is the season's forecast."
}

// source is where its figures come from.
func (g *guess) source() string { return fmt.Sprintf("the season's forecast, %d runs", guessMembers) }

// lastGuess is last for a tub of which the class has no rate yet.
func (k *deskTub) lastGuess(ahead *Ahead) {
	if k.lowest.Symbol == "" {
		return
	}
	g := k.guess(ahead.After())
	if g == nil {
		return
	}
	middle, high, ok := g.gone(ahead.Stretch)
	if !ok {
		return
	}
	b := k.b.In("today.closed")
	use := b.Noted("use", "gone by the end of the closed stretch, in half the runs", "W", quantity.Volume, middle.Base(), 0, g.source())
	most := b.Noted("use_high", "gone by then in the thirstiest of twenty runs", "w", quantity.Volume, high.Base(), 0, g.source())
	left := b.Work(leftLaw, "reserve", "over the lowest line on a full tub", k.fill, k.lowest)
	line := Line{Tub: k.t.name, Key: use.Key, Act: "about " + k.say(use) + " go, of " + k.say(left) + " over the lowest line"}
	switch {
	case use.Base > left.Base:
		ahead.Short = true
		line.Why = "That does not last. Somebody has to come in between, or the plants are picked before. " + g.says()
	case most.Base > left.Base:
		line.Why = "In 1 of 20 cases " + k.say(most) + " would go, and that does not last. " + g.says()
	default:
		line.Why = "In 1 of 20 cases more than " + k.say(most) + ". " + g.says()
	}
	ahead.Lines = append(ahead.Lines, line)
}

// thirst is what 95 of 100 cases stay under between two readings of the level,
// the dipstick's error counted in: at the rate of the class on a hot dry day,
// else by the forecast. False where neither is known.
func (k *deskTub) thirst(g gone) (quantity.L, bool) {
	b := k.b.In("today.leak")
	if rate, known := k.rate("today.earlier_use", g.since); known {
		n := b.Work(thirstLaw, "thirst95", "what a hot dry room may have taken in that time", steering.Stress(b), rate,
			b.Noted("time", "time since the reading before", "t", quantity.Time, g.until.Sub(g.since).Seconds(), 0, "the logbook"))
		return litresOf(n), true
	}
	follow := k.guess(k.dayOf(g.until))
	if follow == nil {
		return 0, false
	}
	litres, ok := follow.taken(g, reading.PouredBetween(k.entries, g.since, g.until))
	if ok {
		b.Noted("thirst95", "what 95 of 100 runs had taken in that time, as a dipstick shows it", "w", quantity.Volume, litres.Base(), 0, follow.source())
	}
	return litres, ok
}

// taken is what may be gone between two readings of the level: from where the
// water stood after the first to the lowest that 95 of 100 runs expected of the
// second; poured is what went in between and stands in neither.
func (g *guess) taken(between gone, poured quantity.L) (quantity.L, bool) {
	had, ok := g.s.after(between.last, g.c.Line(term.DateOf(between.since.In(g.s.zone))))
	if !ok {
		return 0, false
	}
	hour := g.f.Clock.Hour(between.until)
	for _, x := range g.f.Expected {
		if r := g.c.Readings[x.Reading]; r.Of == forecast.Level && r.AtHour == hour {
			return max(0, quantity.L(g.c.Tub.LitresAt(had)-g.c.Tub.LitresAt(x.Band.P5))+poured), true
		}
	}
	return 0, false
}
