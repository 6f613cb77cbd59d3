package solution

import (
	"fmt"
	"math"

	"rootbell/internal/base/finding"
)

// Miss is a nutrient that the shelf does not bring to its target.
type Miss struct {
	Of       Nutrient
	Have     float64 // mg/L
	Want     float64
	Level    finding.Level
	InTheWay string   // what keeps it from the target
	Buy      []string // salts, by name, with which it would be reached
	byAcid   bool
}

// Share is the miss as a share of the target; negative is too little.
func (m Miss) Share() float64 { return (m.Have - m.Want) / m.Want }

// Misses lists what is off by more than is worth a word, the worst first
// within the order of the nutrients, with what is in the way and what to buy.
func (t Target) Misses(shelf []Fertiliser, base Content, f Fit) []Miss {
	var out []Miss
	for _, n := range aims {
		if t.MgL[n] <= 0 {
			continue
		}
		m := Miss{Of: n, Have: f.MgL[n], Want: t.MgL[n]}
		level, worth := m.judge()
		if !worth {
			continue
		}
		m.Level = level
		m.InTheWay = t.inTheWay(n, shelf, base, f)
		if m.Have < m.Want && level > finding.Note {
			m.Buy = t.buy(n, shelf, base)
		}
		out = append(out, m)
	}
	return out
}

// Bears is how far a nutrient may be off its target, as a share of it, before it
// is worth a word, and before it is a warning.
func Bears(n Nutrient) (word, warning float64) {
	scale := 1.0
	if n.Micro() {
		scale = value(factFeedMissMicro)
	}
	return scale * percent(factFeedMissNote), scale * percent(factFeedMissWarn)
}

// judge says how bad a miss is. Micronutrients bear more, sulfur bears any
// surplus, and calcium that reaches what lettuce needs is no reason to stop.
func (m Miss) judge() (level finding.Level, worth bool) {
	off := m.Share()
	word, warning := Bears(m.Of)
	size := math.Abs(off)
	if size < word || m.Of == Sulfur && off > 0 {
		return finding.Note, false
	}
	switch {
	case size < warning:
		return finding.Note, true
	case m.Of.Micro() || m.Of == Sulfur || size < percent(factFeedMissStop) || off > 0:
		return finding.Warn, true
	case m.Of == Calcium && m.Have >= value(factFeedCalciumMin):
		return finding.Warn, true
	}
	return finding.Stop, true
}

// inTheWay names what holds a nutrient off its target.
func (t Target) inTheWay(n Nutrient, shelf []Fertiliser, base Content, f Fit) string {
	if f.MgL[n] > t.MgL[n] {
		if base[n] >= t.MgL[n] {
			return fmt.Sprintf("water and acid alone bring %.3g mg/L", base[n])
		}
		return t.neededFor(n, shelf, f)
	}
	best := -1
	for j, s := range shelf {
		if s.Share[n] > 0 && (best < 0 || s.Share[n] > shelf[best].Share[n]) {
			best = j
		}
	}
	if best < 0 {
		return fmt.Sprintf("nothing on the shelf brings %s", n)
	}
	if l, full := t.fullest(shelf[best], f); full {
		return fmt.Sprintf("more %s would pass the limit of %.3g mg/L %s", shelf[best].Name, l.MostMgL, l.Of)
	}
	if other, ok := t.companion(n, shelf[best], f); ok {
		return fmt.Sprintf("more %s would bring more %s, which is at %.3g of %.3g mg/L already", shelf[best].Name, other, f.MgL[other], t.MgL[other])
	}
	return fmt.Sprintf("what brings %s brings too much else", n)
}

// neededFor is the fertiliser that brings most of what is too much, and what it
// is taken for.
func (t Target) neededFor(n Nutrient, shelf []Fertiliser, f Fit) string {
	best := 0
	for j, s := range shelf {
		if s.Share[n]*f.GramsPerLitre[j] > shelf[best].Share[n]*f.GramsPerLitre[best] {
			best = j
		}
	}
	for _, o := range aims {
		if o != n && t.MgL[o] > 0 && shelf[best].Share[o] > 0 && f.MgL[o] <= t.MgL[o]*(1+percent(factFeedMissNote)) {
			return fmt.Sprintf("%s is needed for its %s and brings %s with it", shelf[best].Name, o, n)
		}
	}
	return fmt.Sprintf("%s brings it", shelf[best].Name)
}

// fullest is a limit that the fertiliser would pass.
func (t Target) fullest(s Fertiliser, f Fit) (Limit, bool) {
	for _, l := range t.Limits {
		if s.Share[l.Of] > 0 && f.MgL[l.Of] >= l.MostMgL*(1-1e-6) {
			return l, true
		}
	}
	return Limit{}, false
}

// companion is the nutrient that pushes back hardest: what more of the
// fertiliser would add to a nutrient that is above its target.
func (t Target) companion(n Nutrient, s Fertiliser, f Fit) (Nutrient, bool) {
	best, push := Nitrogen, 0.0
	for _, o := range aims {
		if o == n || t.MgL[o] <= 0 || s.Share[o] == 0 {
			continue
		}
		w := weightOf(o)
		if p := w * w * s.Share[o] / t.MgL[o] * (f.MgL[o] - t.MgL[o]) / t.MgL[o]; p > push {
			best, push = o, p
		}
	}
	return best, push > 0
}

// buy tries every salt that a school can buy beside the shelf and names those, at most three,
// with which the nutrient comes near its target, the best fit first.
func (t Target) buy(n Nutrient, shelf []Fertiliser, base Content) []string {
	type offer struct {
		name     string
		residual float64
	}
	var offers []offer
	for _, s := range catalogue {
		if s.Share[n] == 0 || s.Salt == restricted || !n.Micro() && s.micro() {
			continue
		}
		f, err := t.FitTo(append(append([]Fertiliser(nil), shelf...), s), base)
		if err != nil {
			continue
		}
		m := Miss{Of: n, Have: f.MgL[n], Want: t.MgL[n]}
		if level, worth := m.judge(); worth && level > finding.Note {
			continue
		}
		at := len(offers)
		for at > 0 && f.Residual < offers[at-1].residual-1e-9 {
			at--
		}
		offers = append(offers[:at], append([]offer{{s.Name, f.Residual}}, offers[at:]...)...)
	}
	var out []string
	for i, o := range offers {
		if i < 3 {
			out = append(out, o.name)
		}
	}
	return out
}

// micro tells whether a fertiliser is bought for a micronutrient: a gram of it
// is a dose for many tubs, and no remedy for anything else.
func (f Fertiliser) micro() bool {
	for n := Iron; n <= Molybdenum; n++ {
		if f.Share[n] > 0 {
			return true
		}
	}
	return false
}

// Finding is the miss in words, with the field of the fertilisers.
func (m Miss) Finding(field string) finding.Finding {
	word := "too little"
	if m.Have > m.Want {
		word = "too much"
	}
	f := finding.Finding{
		Level: m.Level, Code: "feed-" + m.Of.Symbol(), Field: field,
		Text: fmt.Sprintf("%.3g mg/L of %s instead of %.3g is %s: %s.", m.Have, m.Of, m.Want, word, m.InTheWay),
	}
	switch {
	case m.Level == finding.Note:
		f.Hint = "Accept it: plants bear this much."
	case len(m.Buy) > 0:
		f.Hint = "Buy " + orList(m.Buy) + ", or accept it."
	case m.byAcid:
		f.Hint = "Blend with rain or deionised water first, so that less acid is needed."
	case m.Have > m.Want:
		f.Hint = "Accept it, or thin the water or the feed that brings it."
	default:
		f.Hint = "No single salt mends it: aim lower, or take another feed."
	}
	return f
}

func orList(words []string) string {
	switch len(words) {
	case 1:
		return words[0]
	case 2:
		return words[0] + " or " + words[1]
	}
	return words[0] + ", " + orList(words[1:])
}
