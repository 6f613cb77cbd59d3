package reading

import (
	"math"
	"slices"

	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
)

// askLevel asks about more water than the tub holds, and about a level that
// rose by itself.
func askLevel(r Row, b Beside) (Question, bool) {
	switch l := r.Level; {
	case l.Litres.Set() && b.Tub.RimL > 0 && l.Litres.Value > b.Tub.RimL:
		return overRim(r, b, l.Litres, levelOf, func(r *Row, v quantity.L) { r.Level.Litres.Value = v }), true
	case l.Filled.Set() && b.Tub.FillL > 0 && l.Filled.Value > b.Tub.FillL:
		return overRim(r, b, l.Filled, "Filled with", func(r *Row, v quantity.L) { r.Level.Filled.Value = v }), true
	case l.Depth.Set() && b.Tub.InsideHeight > 0 && (l.Depth.Value > b.Tub.InsideHeight || l.Depth.Value < 0):
		return deeperThanTub(r, b), true
	}
	return risen(r, b)
}

const levelOf = "A level of"

// askAdded asks about more poured in than the tub holds.
func askAdded(r Row, b Beside) (Question, bool) {
	if a := r.Added.Litres; a.Set() && b.Tub.RimL > 0 && a.Value > b.Tub.RimL {
		q := overRim(r, b, a, "Poured in", func(r *Row, v quantity.L) { r.Added.Litres.Value = v })
		q.Field, q.Code = FieldAdded, "added-range"
		return q, true
	}
	return Question{}, false
}

func overRim(r Row, b Beside, typed quantity.Typed[quantity.L], what string, set func(*Row, quantity.L)) Question {
	v := float64(typed.Value)
	gallon := float64(quantity.FromBase[quantity.L](quantity.USGallon.Base(1)))
	guesses := []guess{{v / 10, "the point"}, {v / 100, "the point"}, {v / 1000, "mL"}, {v / gallon, "L"}}
	q := Question{Field: FieldLevel, Code: "level-rim", Hint: "the tub holds " + quantity.Format(quantity.Volume, b.Tub.RimL.Base(), b.System) + " to the rim"}
	pass := func(v float64) bool { return v > 0 && v <= float64(b.Tub.RimL) }
	expected := 0.0
	if last, known := b.last(r, FieldLevel); known && r.Level.Litres.Set() && what == levelOf {
		_, after, _ := last.Litres(b.Tub)
		expected = max(float64(after), 1)
		pass = func(v float64) bool { return v <= float64(b.Tub.RimL) && v <= 3*expected && v >= expected/3 }
	}
	for _, g := range ranked(guesses, expected, pass) {
		to := quantity.L(clean(g.value))
		label := quantity.Format(quantity.Volume, to.Base(), b.System)
		if g.why != "the point" {
			label += " (the figure is in " + g.why + ")"
		}
		q.Likely = append(q.Likely, Choice{label, func(r *Row) { set(r, to) }})
	}
	q.Text = didYouMean(what, typedOr(typed.Text, v, "L"), q.Likely)
	return q
}

func deeperThanTub(r Row, b Beside) Question {
	v := float64(r.Level.Depth.Value)
	most := float64(b.Tub.InsideHeight)
	q := Question{Field: FieldLevel, Code: "level-rim", Hint: "the tub is " + quantity.Format(quantity.Length, b.Tub.InsideHeight.Base(), b.System) + " high inside"}
	guesses := []guess{{v / 10, "the point"}, {-v, "the sign"}, {v / 25.4, "the point"}, {v / 100, "the point"}}
	for _, g := range ranked(guesses, 0, func(v float64) bool { return v > 0 && v <= most }) {
		to := quantity.MM(clean(g.value))
		q.Likely = append(q.Likely, Choice{quantity.Format(quantity.Length, to.Base(), b.System), func(r *Row) { r.Level.Depth.Value = to }})
	}
	q.Text = didYouMean("A depth of", typedOr(r.Level.Depth.Text, v, "mm"), q.Likely)
	return q
}

// risen asks about a level above the last one with nothing poured in.
func risen(r Row, b Beside) (Question, bool) {
	last, known := b.last(r, FieldLevel)
	has, _, ok := r.Litres(b.Tub)
	_, had, also := last.Litres(b.Tub)
	if !known || !ok || !also || r.Did(ChangedOut) {
		return Question{}, false
	}
	rise := has - had - PouredBetween(b.Last, last.At, r.At)
	if float64(rise) <= Facts.Get(factAskLevelRise).Value || changedOut(b.Last, last, r) {
		return Question{}, false
	}
	return Question{
		Field: FieldLevel, Code: "level-risen",
		Text: "The level is " + quantity.Format(quantity.Volume, rise.Base(), b.System) + " above the last one, and nothing was written down as poured in.",
		Hint: "read the dipstick again; where somebody topped up, write that down first",
	}, true
}

func changedOut(entries []Entry, from, to Row) bool {
	return slices.ContainsFunc(entries, func(e Entry) bool {
		return e.Did(ChangedOut) && !e.At.Before(from.At) && !e.At.After(to.At)
	})
}

// askTub asks whether the reading is another tub's: far from this tub's last
// one in something, near to the other's in all that both have, at least two.
func askTub(r Row, b Beside) (Question, bool) {
	var own Row
	for _, f := range []Field{FieldPH, FieldEC, FieldLevel} {
		last, known := b.last(r, f)
		if !known {
			continue
		}
		switch f {
		case FieldPH:
			own.PH = last.PH
		case FieldEC:
			own.EC = last.EC
		default:
			own.Level, own.Added = last.Level, last.Added
		}
	}
	const far, near = 2, 1
	if steps, compared := b.steps(r, own); compared < 2 || steps <= far {
		return Question{}, false
	}
	var names []string
	for name, other := range b.Others {
		if steps, compared := b.steps(r, other); compared >= 2 && steps <= near && !SameTub(name, r.Tub) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	q := Question{Field: FieldTub, Code: "tub-other"}
	for _, name := range names[:min(len(names), mostLikely)] {
		q.Likely = append(q.Likely, Choice{name, func(r *Row) { r.Tub = name }})
	}
	if len(names) == 0 {
		return Question{}, false
	}
	q.Text = "This is far from the last reading of " + r.Tub + " and near the one of " + names[0] + ": did you mean " + names[0] + "?"
	return q, true
}

// steps is how far two readings are apart, in the largest of their steps, and
// in how many things they could be compared.
func (b Beside) steps(r, other Row) (most float64, compared int) {
	compare := func(x, y, step float64) {
		compared++
		most = max(most, math.Abs(x-y)/step)
	}
	if r.PH.Read.Set() && other.PH.Read.Set() {
		compare(float64(r.PH.Read.Mid()), float64(other.PH.Read.Mid()), value(factAskTubPh))
	}
	if r.EC.Read.Set() && other.EC.Read.Set() {
		compare(float64(r.EC.Read.Mid()), float64(other.EC.Read.Mid()), value(factAskTubEc))
	}
	if r.Level.Litres.Set() && other.Level.Litres.Set() && b.Tub.FillL > 0 {
		after := other.Level.Litres.Value + other.Added.Litres.Value
		compare(float64(r.Level.Litres.Value), float64(after), value(factAskTubLevel)/100*float64(b.Tub.FillL))
	}
	return most, compared
}

func value(id facts.ID) float64 { return Facts.Get(id).Value }
