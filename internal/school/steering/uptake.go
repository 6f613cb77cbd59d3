package steering

import (
	"math"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/reading"
)

// store is the kind of a tub's salts: EC times litres.
var store = quantity.Kind{
	Name: "a store of salts", Dim: quantity.ConductivityDim.Times(quantity.VolumeDim), Metric: ecLitre, US: ecLitre, Decimals: [2]int{1, 1},
}

var ecLitre = quantity.Unit{
	Symbol: "mS/cm·L", Dim: quantity.ConductivityDim.Times(quantity.VolumeDim), Scale: quantity.MillisiemensPerCM.Scale * quantity.Litre.Scale,
}

// balance is the source of the sums of what plants took.
const balance = "mass balance: what was there and what was poured in, less what is there; after Langenfeld et al., Sustainability 14:10204 (2022)"

var (
	drunkLaw = working.Must(working.Law{
		Symbol: "q", Kind: quantity.Volume, Formula: "V+p-U",
		Where: []working.Symbol{litres("V", "in the tub then"), litres("p", "poured in since"), litres("U", "in the tub now")},
		Basis: working.OfNature, Source: balance,
	})
	takenLaw = working.Must(working.Law{
		Symbol: "S", Kind: store, Formula: "V*E+p*w-U*e",
		Where: []working.Symbol{
			litres("V", "in the tub then"), strength("E", "EC then"), litres("p", "poured in since"), strength("w", "EC of what was poured in"),
			litres("U", "in the tub now"), strength("e", "EC now"),
		},
		Basis: working.OfNature, Source: balance,
	})
	drankAtLaw = working.Must(working.Law{
		Symbol: "u", Kind: quantity.Conductivity, Formula: "S/q",
		Where: []working.Symbol{{Name: "S", Meaning: "salts taken", Kind: store}, litres("q", "water taken")},
		Basis: working.OfNature, Source: balance,
	})
	changeLaw = working.Must(working.Law{
		Symbol: "c", Kind: quantity.Conductivity, Formula: "u-e",
		Where: []working.Symbol{strength("u", "EC at which the plants drank"), strength("e", "EC now")},
		Basis: working.OfNature, Source: "difference",
	})
)

// Span is a tub between two readings: what stood in it and how strong it was,
// then and now, and what was poured in between.
type Span struct {
	ThenL, NowL, PouredL quantity.L
	ThenEC, NowEC        reading.Range[quantity.MSPerCM]
	PouredEC             quantity.MSPerCM
	ErrorL               quantity.L // of a level: 3 mm on the dipstick in this tub
}

// Uptake is at what strength the plants drank, and what that means for the
// next top-up.
type Uptake struct {
	Course  Course         // of the EC, if water alone made up for what was drunk: Falling where they took food faster
	DrankAt working.Number // EC; a top-up of this strength holds the tub where it is
	Drunk   working.Number
	Of      Liquid // for the next top-up; empty where there is not enough to say
	Text    string
}

// Drank works out what the plants took between two readings. EC is never read
// alone: a tub that lost water and kept its salts reads stronger. Where the
// instruments leave the answer open it says so.
func Drank(b *working.Book, s Span) Uptake {
	out := Uptake{Course: NotEnough, Text: "Not enough to say whether the plants took food or water faster."}
	if s.ThenEC.High <= 0 || s.NowEC.High <= 0 || s.ThenL <= 0 || s.NowL <= 0 {
		return out
	}
	volume := func(key, name, symbol string, l, by quantity.L) working.Number {
		return b.Typed(key, name, symbol, quantity.Volume, l.Base(), by.Base())
	}
	ec := func(key, name, symbol string, r reading.Range[quantity.MSPerCM]) working.Number {
		return b.Typed(key, name, symbol, quantity.Conductivity, r.Mid().Base(), (r.High-r.Low).Base()/2)
	}
	then, now := volume("then_l", "in the tub then", "V", s.ThenL, s.ErrorL), volume("now_l", "in the tub now", "U", s.NowL, s.ErrorL)
	poured := volume("poured_l", "poured in since", "p", s.PouredL, 0)
	nowEC := ec("now_ec", "EC now", "e", s.NowEC)
	out.Drunk = b.Work(drunkLaw, "drunk", "water taken", then, poured, now)
	taken := b.Work(takenLaw, "salts_taken", "salts taken", then, ec("then_ec", "EC then", "E", s.ThenEC), poured,
		b.Typed("poured_ec", "EC of what was poured in", "w", quantity.Conductivity, s.PouredEC.Base(), 0), now, nowEC)
	if out.Drunk.Base <= out.Drunk.Error() {
		return out
	}
	out.DrankAt = b.Work(drankAtLaw, "drank_at", "EC at which the plants drank", taken, out.Drunk)
	change := b.Work(changeLaw, "drank_over", "stronger than the tub by", out.DrankAt, nowEC)
	switch err := change.Error(); {
	case math.Abs(change.Base) <= err && err > s.NowEC.Mid().Base():
		out.Text += " The instruments leave too much open over so little water."
	case math.Abs(change.Base) <= err:
		out.Course, out.Of = Steady, Feed
		out.Text = "Food and water go at about the tub's own strength. Top up with solution as strong as the tub."
	case change.Base > 0:
		out.Course, out.Of = Falling, Feed
		out.Text = "The plants take food faster than water. Top up with solution."
	default:
		out.Course, out.Of = Rising, Water
		out.Text = "The plants take water faster than food. Top up with water."
	}
	return out
}
