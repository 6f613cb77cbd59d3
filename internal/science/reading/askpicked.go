package reading

import (
	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
)

// askLeaves asks about more leaves than a plant of a tub has.
func askLeaves(r Row, _ Beside) (Question, bool) {
	return askCount(FieldLeaves, "leaves-range", " leaves on one plant", r.Counted, factAskLeavesHigh,
		func(r *Row, v quantity.Number) { r.Counted.Value = v })
}

// askPicked asks about more plants picked than a tub has.
func askPicked(r Row, _ Beside) (Question, bool) {
	return askCount(FieldPicked, "picked-range", " plants picked", r.Picked.Plants, factAskPickedHigh,
		func(r *Row, v quantity.Number) { r.Picked.Plants.Value = v })
}

// askCount asks about a count over a limit: a point or a comma that was lost.
func askCount(f Field, code, what string, t quantity.Typed[quantity.Number], limit facts.ID, set func(*Row, quantity.Number)) (Question, bool) {
	v, most := float64(t.Value), value(limit)
	if !t.Set() || v <= most {
		return Question{}, false
	}
	q := Question{Field: f, Code: code, Hint: "count again where in doubt"}
	for _, g := range ranked(decimals(v), 0, func(v float64) bool { return v >= 1 && v <= most && v == clean(float64(int(v))) }) {
		to := quantity.Number(g.value)
		q.Likely = append(q.Likely, Choice{number(g.value, 0), func(r *Row) { set(r, to) }})
	}
	q.Text = didYouMean("There are", typedOr(t.Text, v, "")+what, q.Likely)
	return q, true
}

// askWeigh asks about plants that would be lighter or heavier than any of a tub:
// a figure read in kilograms or ounces, or one whose point slipped.
func askWeigh(r Row, b Beside) (Question, bool) {
	plants := 1.0
	if r.Picked.Plants.Set() && r.Picked.Plants.Value >= 1 {
		plants = float64(r.Picked.Plants.Value)
	}
	v := float64(r.Picked.Mass.Value)
	low, high := value(factAskPickedEachLow), value(factAskPickedEachHigh)
	if !r.Picked.Plants.Set() { // how many they are is not known
		high *= value(factAskPickedHigh)
	}
	plausible := func(v float64) bool { return v/plants >= low && v/plants <= high }
	if !r.Picked.Mass.Set() || plausible(v) {
		return Question{}, false
	}
	gram := func(u quantity.Unit) float64 { return float64(quantity.FromBase[quantity.G](u.Base(v))) }
	q := Question{Field: FieldWeigh, Code: "picked-mass", Hint: "the mass is that of all plants picked together, without their roots"}
	for _, g := range ranked(append([]guess{{gram(quantity.Kilogram), "kg"}, {gram(quantity.Ounce), "oz"}}, decimals(v)...), plants*value(factAskPickedEachUsual), plausible) {
		to := quantity.G(clean(g.value))
		label := quantity.Format(quantity.SmallMass, to.Base(), b.System)
		if g.why != "the point" {
			label += " (the figure is in " + g.why + ")"
		}
		q.Likely = append(q.Likely, Choice{label, func(r *Row) { r.Picked.Mass.Value = to }})
	}
	q.Text = didYouMean("Plants picked that weigh", typedOr(r.Picked.Mass.Text, v, "g")+" together", q.Likely)
	return q, true
}
