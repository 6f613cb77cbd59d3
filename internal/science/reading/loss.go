package reading

import (
	"rootbell/internal/base/finding"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

func litres(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.Volume}
}

var (
	lossLaw = working.Must(working.Law{
		Symbol: "q", Kind: quantity.Volume, Formula: "a+p-b",
		Where: []working.Symbol{litres("a", "in the tub after the last reading"), litres("p", "poured in since"), litres("b", "in the tub now")},
		Basis: working.OfNature, Source: "what went in and did not stay",
	})
	suspectLaw = working.Must(working.Law{
		Symbol: "Q", Kind: quantity.Volume, Formula: "max(k*w, m)",
		Where: []working.Symbol{
			{Name: "k", Meaning: "times the thirst", Kind: quantity.Factor},
			litres("w", "what plants and air take in 95 of 100 cases"), litres("m", "least loss to speak of"),
		},
		Basis: working.OfTrade, Source: "common practice, no source: twice the thirst that 95 of 100 cases stay under, and more than 2 L",
	})
)

// Loss is what a tub lost between two readings, and from where on a leak is
// likelier than thirst.
type Loss struct {
	Lost    working.Number
	Suspect working.Number
	Leak    bool
}

// Lost enters the loss from one reading of a tub to the next. poured is what
// went in between and stands in neither; thirst95 what plants and air take in
// that time in 95 of 100 cases. False where one of them has no level, one
// that is kept as doubtful, or where the water was changed before it was read.
func Lost(b *working.Book, v Vessel, last, now Row, poured, thirst95 quantity.L) (Loss, bool) {
	_, had, ok := last.Litres(v)
	has, _, also := now.Litres(v)
	if !ok || !also || now.newWater() || last.Doubts(FieldLevel) || now.Doubts(FieldLevel) {
		return Loss{}, false
	}
	typed := func(key, name, symbol string, q quantity.L) working.Number {
		return b.Typed(key, name, symbol, quantity.Volume, q.Base(), 0)
	}
	factor, least := Facts.Get(factLeakSuspectFactor), Facts.Get(factLeakSuspectVolume)
	out := Loss{
		Lost: b.Work(lossLaw, "lost", "lost since the last reading",
			typed("was_in", "in the tub after the last reading", "a", had), typed("poured_since", "poured in since", "p", poured),
			typed("is_in", "in the tub now", "b", has)),
		Suspect: b.Work(suspectLaw, "leak_suspect", "a loss that thirst does not explain",
			b.Fact("leak_factor", "times the thirst", "k", quantity.Factor, factor.Value, factor),
			typed("thirst95", "what plants and air take in 95 of 100 cases", "w", thirst95),
			b.Fact("leak_least", "least loss to speak of", "m", quantity.Volume, quantity.L(least.Value).Base(), least)),
	}
	out.Leak = out.Lost.Base > out.Suspect.Base
	return out, true
}

// Finding says to look for a leak. False where there is nothing to say.
func (l Loss) Finding(s quantity.System) (finding.Finding, bool) {
	if !l.Leak {
		return finding.Finding{}, false
	}
	say := func(n working.Number) string { return quantity.Format(n.Kind, n.Base, s) }
	return finding.Finding{
		Level: finding.Warn, Code: "leak", Field: string(FieldLevel),
		Text: say(l.Lost) + " are gone since the last reading. Thirst does not explain more than " + say(l.Suspect) + " in that time.",
		Hint: "look for a leak before topping up: under the tub, on the floor, along the air line; where water is near a plug or socket keep everyone away and fetch an adult",
	}, true
}
