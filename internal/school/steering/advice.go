package steering

import (
	"slices"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Do is what to do, in one word for scripts.
type Do string

// What there is to do. Nothing is an answer like any other.
const (
	Nothing     Do = "nothing"      // write it down, do nothing
	Measure     Do = "measure"      // something has to be known first
	ReadAgain   Do = "read again"   // stir, rinse, read again
	Wait        Do = "wait"         // then measure
	SeekLeak    Do = "seek leak"    // before topping up
	TopUp       Do = "top up"       // pour in
	TakeOut     Do = "take out"     // too full
	Thin        Do = "thin"         // take out where there is no room, pour in water
	Strengthen  Do = "strengthen"   // take out where there is no room, pour in solution
	CannotReach Do = "cannot reach" // what is poured in cannot bring the tub there
	Watch       Do = "watch"        // out of range, nothing to pour: look again
	AskAdult    Do = "ask adult"    // a correction of pH, which is an adult's
	ChangeOut   Do = "change out"
)

// Liquid is what is poured in.
type Liquid string

// The liquids.
const (
	Water    Liquid = "water"
	HalfFeed Liquid = "half-strength solution"
	Refill   Liquid = "top-up solution"
	Feed     Liquid = "solution"
)

// Limit names what keeps a day's pour below what the sum asks for.
type Limit string

// The limits.
const (
	ByChlorine Limit = "chlorine" // a quarter of the fill a day from a tap of which it is not known
	ByStep     Limit = "step"     // no more than so much stronger a day
	BySwap     Limit = "swap"     // no more than so much of the water at once
	ByStill    Limit = "still"    // a still tub's line may rise only so far
)

// Advice is one thing to do, in words, with the numbers behind it. A number
// that has no part in it is its zero value.
type Advice struct {
	Do     Do
	Code   string // stable, finer than Do
	Text   string // what, how much, why
	Why    string // the reason alone, where Text has more
	Hint   string // how, or what would move it; may be empty
	Source string // of the rule: where it is written, or that it is common practice

	Of      Liquid           // what is poured in
	TakeOut working.Number   // litres, before anything is poured in
	Mass    working.Number   // what is taken out weighs
	PourIn  working.Number   // litres
	PourEC  quantity.MSPerCM // of that; zero: not known, or water
	Rest    working.Number   // litres to the line after that, of solution as strong as RestEC
	RestEC  quantity.MSPerCM
	After   working.Number // EC that the sum expects, to hold the next reading against
	Bound   []Limit

	wanted float64 // by the sum, before any limit, in the base unit
}

// Has tells whether a number has a part in the advice.
func Has(n working.Number) bool { return n.Symbol != "" }

const practice = "common practice, no source"

// order is the order of a morning: what endangers first, then the water, then
// what can wait.
var order = []Do{SeekLeak, TakeOut, Wait, ReadAgain, Measure, TopUp, Thin, Strengthen, AskAdult, ChangeOut, CannotReach, Watch, Nothing}

// most is how many things a page of the morning has room for.
const most = 3

// InOrder puts advice in the order of a morning, without 'do nothing'.
func InOrder(all ...Advice) []Advice {
	var out []Advice
	for _, a := range all {
		if a.Do != Nothing && a.Do != "" {
			out = append(out, a)
		}
	}
	slices.SortStableFunc(out, func(a, b Advice) int { return slices.Index(order, a.Do) - slices.Index(order, b.Do) })
	return out
}

// Today puts advice in the order of a morning, at most three, and leaves out
// 'do nothing' where there is something to do. There is always one.
func Today(all ...Advice) []Advice {
	if out := InOrder(all...); len(out) > 0 {
		return out[:min(len(out), most)]
	}
	for _, a := range all {
		if a.Do == Nothing {
			return []Advice{a}
		}
	}
	return []Advice{nothing("all-well", "Write it down, do nothing.")}
}

func nothing(code, text string) Advice {
	return Advice{Do: Nothing, Code: code, Text: text, Source: practice}
}

func say(n working.Number, s quantity.System) string { return quantity.Format(n.Kind, n.Base, s) }

func sayL(l quantity.L, s quantity.System) string {
	return quantity.Format(quantity.Volume, l.Base(), s)
}

func sayEC(e quantity.MSPerCM) string {
	return quantity.Format(quantity.Conductivity, e.Base(), quantity.Metric)
}
