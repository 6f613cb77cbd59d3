package reading

import (
	"math"
	"slices"
	"strings"

	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
)

const swapped = "swapped"

// guess is a value that may have been meant, and why.
type guess struct {
	value float64
	why   string
}

// ranked gives the guesses that pass, the nearest to the expected first, each
// value once. Nearness is by ratio; without an expected value their order stays.
func ranked(guesses []guess, expected float64, pass func(float64) bool) []guess {
	var out []guess
	for _, g := range guesses {
		near := func(o guess) bool { return math.Abs(o.value-g.value) <= 1e-9*math.Abs(g.value) }
		if pass(g.value) && !slices.ContainsFunc(out, near) {
			out = append(out, g)
		}
	}
	if expected > 0 {
		far := func(g guess) float64 { return math.Abs(math.Log(g.value / expected)) }
		slices.SortStableFunc(out, func(a, b guess) int {
			switch {
			case far(a) < far(b):
				return -1
			case far(a) > far(b):
				return 1
			}
			return 0
		})
	}
	return out[:min(len(out), mostLikely)]
}

// decimals are the values that a point in the wrong place can have come from.
func decimals(v float64) []guess {
	return []guess{{v / 10, "the point"}, {v / 100, "the point"}, {v * 10, "the point"}, {v / 1000, "the point"}, {v * 100, "the point"}}
}

func within(id, to facts.ID) func(float64) bool {
	low, high := Facts.Get(id).Value, Facts.Get(to).Value
	return func(v float64) bool { return v >= low && v <= high }
}

func typedOr(text string, v float64, unit string) string {
	if text = strings.TrimSpace(text); text != "" {
		return text
	}
	return trimmed(number(v, 3) + " " + unit)
}

// trimmed takes the noughts off the end of a decimal.
func trimmed(text string) string {
	if !strings.Contains(text, ".") {
		return text
	}
	return strings.TrimRight(strings.TrimRight(text, "0"), ".")
}

func didYouMean(what, typed string, likely []Choice) string {
	if len(likely) == 0 {
		return what + " " + typed + ": is that right?"
	}
	return what + " " + typed + ": did you mean " + likely[0].Label + "?"
}

// askPH asks about a pH that no tub has, or one far from the last.
func askPH(r Row, b Beside) (Question, bool) {
	if !r.PH.Read.Set() {
		return Question{}, false
	}
	plausible := within(factAskPhLow, factAskPhHigh)
	low, high := float64(r.PH.Read.Low), float64(r.PH.Read.High)
	typed := typedOr(r.PH.Read.Text, low, "")
	last, known := b.last(r, FieldPH)
	if plausible(low) && plausible(high) {
		jump := Facts.Get(factAskPhJump).Value
		if !known || math.Abs(float64(r.PH.Read.Mid()-last.PH.Read.Mid())) <= jump {
			return Question{}, false
		}
		return Question{
			Field: FieldPH, Code: "ph-jump",
			Text: "pH " + typed + ": the last one was " + typedOr(last.PH.Read.Text, float64(last.PH.Read.Low), "") + ". A tub rarely moves so far.",
			Hint: "stir, rinse the probe and read again",
		}, true
	}
	q := Question{Field: FieldPH, Code: "ph-range", Hint: "where in doubt, stir, rinse the probe and read again"}
	if low == high {
		expected := 0.0
		if known {
			expected = float64(last.PH.Read.Mid())
		}
		for _, g := range ranked(decimals(low), expected, plausible) {
			v := quantity.PH(clean(g.value))
			q.Likely = append(q.Likely, Choice{number(float64(v), 2), func(r *Row) { r.PH.Read.Low, r.PH.Read.High = v, v }})
		}
	}
	q.Text = didYouMean("pH", typed, q.Likely)
	return q, true
}

// clean takes off what a division leaves behind in the last binary digits.
func clean(v float64) float64 {
	if v == 0 || math.IsInf(v, 0) || math.IsNaN(v) {
		return v
	}
	p := math.Pow(10, 11-math.Floor(math.Log10(math.Abs(v))))
	if math.IsInf(p, 0) || p == 0 {
		return v
	}
	return math.Round(v*p) / p
}

// askSwapped asks whether pH and EC stand in each other's place.
func askSwapped(r Row, _ Beside) (Question, bool) {
	ph, ec := r.PH.Read, r.EC.Read
	if !ph.Set() || !ec.Set() || ph.Low != ph.High || ec.Low != ec.High || r.Doubts(FieldPH) || r.Doubts(FieldEC) {
		return Question{}, false
	}
	figure := float64(ec.Low) * orMS(r.EC.Scale).PerMS()
	plausible, most := within(factAskPhLow, factAskPhHigh), Facts.Get(factAskEcHigh).Value
	meant := float64(ph.Low) / orMS(r.EC.Scale).PerMS()
	if plausible(float64(ph.Low)) || float64(ec.Low) <= most || !plausible(figure) || meant > most {
		return Question{}, false
	}
	toPH, toEC := quantity.PH(clean(figure)), quantity.MSPerCM(clean(meant))
	return Question{
		Field: FieldPH, Code: swapped, Text: "pH " + ph.Text + " and EC " + ec.Text + ": do they stand in each other's place?",
		Likely: []Choice{{"pH " + number(float64(toPH), 2) + ", EC " + number(float64(toEC), 2), func(r *Row) {
			r.PH.Read.Low, r.PH.Read.High = toPH, toPH
			r.EC.Read.Low, r.EC.Read.High = toEC, toEC
		}}},
	}, true
}

// askEC asks about an EC that no leafy crop stands in, or one far from the
// last: a slip of the point, or a figure of another scale.
func askEC(r Row, b Beside) (Question, bool) {
	if !r.EC.Read.Set() {
		return Question{}, false
	}
	expected := float64(b.Target)
	if last, known := b.last(r, FieldEC); known {
		expected = float64(last.EC.Read.Mid())
	}
	most, factor := Facts.Get(factAskEcHigh).Value, Facts.Get(factAskEcFactor).Value
	low, high := float64(r.EC.Read.Low), float64(r.EC.Read.High)
	far := expected > 0 && (low > expected*factor || high < expected/factor)
	if high <= most && !far {
		return Question{}, false
	}
	q := Question{Field: FieldEC, Code: "ec-range", Hint: "where in doubt, stir, rinse the probe and read again"}
	if low == high {
		near := Facts.Get(factAskEcNear).Value
		figure := low * orMS(r.EC.Scale).PerMS()
		var guesses []guess
		for _, s := range scales {
			guesses = append(guesses, guess{figure / s.PerMS(), string(s)})
		}
		guesses = append(guesses, decimals(low)...)
		pass := func(v float64) bool {
			if expected > 0 {
				return v != low && v <= expected*near && v >= expected/near && v <= most
			}
			return v != low && v <= most && v >= most/10
		}
		for _, g := range ranked(guesses, expected, pass) {
			q.Likely = append(q.Likely, ecChoice(g))
		}
	}
	q.Text = didYouMean("EC", typedOr(r.EC.Read.Text, low, "mS/cm"), q.Likely)
	return q, true
}

// ecChoice takes another value, and the scale that explains it.
func ecChoice(g guess) Choice {
	v := quantity.MSPerCM(clean(g.value))
	label := number(float64(v), 2) + " mS/cm"
	scale, other := ParseScale(g.why)
	if other {
		label += " (the figure is " + scale.said() + ")"
	}
	return Choice{label, func(r *Row) {
		r.EC.Read.Low, r.EC.Read.High = v, v
		if other {
			r.EC.Scale = scale
		}
	}}
}

// said is the scale as it stands in a sentence.
func (s Scale) said() string {
	if s.PPM() {
		return "on the " + string(s) + " scale"
	}
	return "in " + string(orMS(s))
}

// askWater asks about a water temperature that no classroom has: °F for °C.
func askWater(r Row, b Beside) (Question, bool) {
	v := float64(r.Water.Value)
	plausible := within(factAskWaterLow, factAskWaterHigh)
	if !r.Water.Set() || plausible(v) {
		return Question{}, false
	}
	guesses := append([]guess{{(v - 32) / 1.8, "°F"}, {v*1.8 + 32, "°C"}}, decimals(v)...)
	q := Question{Field: FieldWater, Code: "water-range"}
	expected := 0.0
	if last, known := b.last(r, FieldWater); known {
		expected = float64(last.Water.Value)
	}
	for _, g := range ranked(guesses, expected, plausible) {
		to := quantity.DegC(clean(g.value))
		label := quantity.Format(quantity.Temperature, to.Base(), b.System)
		if g.why != "the point" {
			label += " (the figure is in " + g.why + ")"
		}
		q.Likely = append(q.Likely, Choice{label, func(r *Row) { r.Water.Value = to }})
	}
	q.Text = didYouMean("Water at", typedOr(r.Water.Text, v, "°C"), q.Likely)
	return q, true
}

// askHeight asks about a plant higher than a room: cm typed as mm and back.
func askHeight(r Row, b Beside) (Question, bool) {
	most := float64(quantity.FromBase[quantity.MM](quantity.Centimetre.Base(Facts.Get(factAskHeightHigh).Value)))
	v := float64(r.Height.Value)
	if !r.Height.Set() || v >= 0 && v <= most {
		return Question{}, false
	}
	q := Question{Field: FieldHeight, Code: "height-range"}
	for _, g := range ranked([]guess{{v / 10, "the point"}, {v / 100, "the point"}, {-v, "the sign"}}, 0, func(v float64) bool { return v > 0 && v <= most }) {
		to := quantity.MM(clean(g.value))
		q.Likely = append(q.Likely, Choice{quantity.Format(quantity.Length, to.Base(), b.System), func(r *Row) { r.Height.Value = to }})
	}
	q.Text = didYouMean("A plant", typedOr(r.Height.Text, v, "mm")+" high", q.Likely)
	return q, true
}
