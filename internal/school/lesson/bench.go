package lesson

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"time"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// bench is a sheet under way.
type bench struct {
	Choice
	t    *Tub
	book *working.Book
	rng  *rand.Rand
	out  *Sheet
	used map[string]int
	made bool // a number was made up
}

// Make makes a sheet. The same choice and the same tub give the same sheet. Its
// numbers go into a book, under class.sheets and the template's name. ok is
// false where there is no such template, or not for that band.
func Make(c Choice, t *Tub, book *working.Book) (s Sheet, ok bool) {
	p, ok := Named(c.Template)
	if !ok {
		return s, false
	}
	if c.Band == "" {
		c.Band = p.Bands[0]
	}
	if !p.For(c.Band) {
		return s, false
	}
	w := &bench{Choice: c, t: t, book: book.In("class.sheets." + p.ID), used: map[string]int{}}
	w.rng = rand.New(rand.NewPCG(c.Seed, uint64(p.Number)))
	w.out = &Sheet{Template: p, Band: c.Band, Tub: t.Name, System: t.System, Number: c.Seed, From: fromTub, Filled: c.Filled}
	p.make(w)
	if w.out.Why == "" && !w.out.worked() {
		w.without("The measures in the plan are too small, too large or contradict each other.")
	}
	if w.out.Why != "" {
		return Sheet{Template: p, Band: c.Band, Tub: t.Name, System: t.System, Number: c.Seed, Why: w.out.Why}, true
	}
	if w.out.Made = w.made; w.made {
		w.out.From += " " + madeUpSay
	}
	return *w.out, true
}

// mostShown is beyond any number of a class's sums.
const mostShown = 1e7

// worked tells that every number of the key is one.
func (s *Sheet) worked() bool {
	for _, n := range s.Numbers() {
		if !n.Known() || math.Abs(n.Kind.Unit(s.System).From(n.Base)) > mostShown {
			return false
		}
	}
	return true
}

// metric tells whether the plan shows metric units.
func (w *bench) metric() bool { return w.t.System == quantity.Metric }

func (w *bench) early() bool { return w.Band == Early }

// number enters a value as the class sees it, rounded to the digits shown, so
// that the pupils' sum and the key's are one.
func (w *bench) number(key, name, symbol string, kind quantity.Kind, base float64, source string) working.Number {
	unit := kind.Unit(w.t.System)
	shown := quantity.Round(unit.From(base), kind.Decimals[w.t.System])
	w.used[key]++
	if n := w.used[key]; n > 1 {
		key = fmt.Sprintf("%s_%d", key, n)
	}
	return w.book.Noted(key, name, symbol, kind, unit.Base(shown), 0, source)
}

func (w *bench) plan(key, name, symbol string, kind quantity.Kind, base float64) working.Number {
	return w.number(key, name, symbol, kind, base, "the plan")
}

func (w *bench) logged(key, name, symbol string, kind quantity.Kind, base float64, on string) working.Number {
	return w.number(key, name, symbol, kind, base, "the logbook, "+on)
}

// invent enters a number that nobody measured, and says so.
func (w *bench) invent(key, name, symbol string, kind quantity.Kind, base float64) working.Number {
	w.made = true
	return w.number(key, name, symbol, kind, base, madeUp)
}

// count enters how many there are.
func (w *bench) count(key, name, symbol string, n int, source string) working.Number {
	return w.number(key, name, symbol, whole, float64(n), source)
}

// again is an answer as it was written down, for the next sum.
func (w *bench) again(n working.Number) working.Number {
	key := n.Key[strings.LastIndexByte(n.Key, '.')+1:] + "_taken"
	return w.number(key, n.Name, n.Symbol, n.Kind, n.Base, "the answer before")
}

// work is a sum. Its answer is rounded to the digits of its kind.
func (w *bench) work(l *working.Law, kind quantity.Kind, key, name string, in ...working.Number) working.Number {
	return w.book.WorkAs(l, kind, key, name, in...)
}

// says writes a number with its unit.
func (w *bench) says(n working.Number) string { return quantity.Format(n.Kind, n.Base, w.t.System) }

func (w *bench) show(kind quantity.Kind, base float64) string {
	return quantity.Format(kind, base, w.t.System)
}

// unit is the word beside a number of a kind.
func (w *bench) unit(kind quantity.Kind) string { return kind.Unit(w.t.System).Symbol }

// in is a value in the unit shown.
func (w *bench) in(kind quantity.Kind, base float64) float64 { return kind.Unit(w.t.System).From(base) }

func (w *bench) tell(format string, args ...any) {
	w.out.Told = append(w.out.Told, fmt.Sprintf(format, args...))
}

func (w *bench) ask(text string, steps ...working.Number) *Question {
	w.out.Questions = append(w.out.Questions, Question{Text: text, Steps: steps})
	return &w.out.Questions[len(w.out.Questions)-1]
}

// drawing is what to do with a graph: to fill it in, or to look at one that is
// drawn already.
func (w *bench) drawing(fill, look string) string {
	if w.Filled {
		return look
	}
	return fill
}

func (w *bench) without(why string) { w.out.Why = why }

// pick is a whole number from low to high, by the seed.
func (w *bench) pick(low, high int) int {
	if high <= low {
		return low
	}
	return low + w.rng.IntN(high-low+1)
}

// oneOf is one of several, by the seed.
func oneOf[T any](w *bench, all ...T) T { return all[w.rng.IntN(len(all))] }

// dayWords writes a day: 3 March.
func dayWords(d time.Time) string { return fmt.Sprintf("%d %s", d.Day(), d.Month()) }

// dayOf is the calendar day of a moment at the school, at midnight UTC.
func (t *Tub) dayOf(at time.Time) time.Time {
	zone := t.Zone
	if zone == nil {
		zone = time.UTC
	}
	y, m, d := at.In(zone).Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}

// daysBetween counts the nights from one day to another.
func daysBetween(from, to time.Time) int { return int(to.Sub(from).Hours() / 24) }
