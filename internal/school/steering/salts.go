package steering

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Curve is the EC of a tub's feed against its strength, in parts of the feed as
// it is mixed: 0 is the water alone, 1 the feed. EC goes less than in step with
// the salts, so what is swapped and poured is summed in parts.
type Curve interface {
	// Strength is the parts that give an EC in mS/cm; false where none do.
	Strength(ec float64) (parts float64, ok bool)
	// EC is that of so many parts, in mS/cm.
	EC(parts float64) float64
}

// parts is the kind of a strength.
var parts = quantity.Factor.WithDecimals(3, 3)

// byCurve is the source of sums in parts of a feed.
const byCurve = "salts before = salts after, in parts of the feed that the tub was mixed with"

// curved says how parts come from an EC, and back.
const curved = "the EC curve of the tub's own mix: speciation with ion pairs, then McCleskey et al. 2012, Geochim. Cosmochim. Acta 77:369"

// sums are the laws of mixing, in what counts the salts: parts of the feed, or
// the EC itself where no feed is known.
type sums struct{ need, swap, after *working.Law }

var (
	inParts = sumsIn(parts, "strength", byCurve)
	inEC    = sumsIn(quantity.Conductivity, "EC", mixing)
)

func sumsIn(kind quantity.Kind, salts, source string) sums {
	s := func(name, meaning string) working.Symbol {
		return working.Symbol{Name: name, Meaning: salts + " " + meaning, Kind: kind}
	}
	const nature = working.OfNature
	return sums{
		need: working.Must(working.Law{
			Symbol: "D", Kind: quantity.Volume, Formula: "V*(E-T)/(T-W)", Basis: nature, Source: source,
			Where: []working.Symbol{litres("V", "in the tub now"), s("E", "now"), s("T", "aimed at"), s("W", "of what is poured in")},
		}),
		swap: working.Must(working.Law{
			Symbol: "x", Kind: quantity.Volume, Formula: "V-C*(T-W)/(E-W)", Basis: nature, Source: source,
			Where: []working.Symbol{litres("V", "in the tub now"), litres("C", "the most it may hold today"), s("T", "aimed at"), s("W", "of what is poured in"), s("E", "now")},
		}),
		after: working.Must(working.Law{
			Symbol: "E2", Kind: kind, Formula: "((V-X)*E+y*W)/(V-X+y)", Basis: nature, Source: source,
			Where: []working.Symbol{litres("V", "in the tub now"), litres("X", "taken out first"), s("E", "now"), litres("y", "poured in"), s("W", "of what is poured in")},
		}),
	}
}

// bent is the tub with its curve where all that has to be summed lies on it;
// else without, and the sums go by the straight line.
func (t Tub) bent() Tub {
	if t.Curve == nil {
		return t
	}
	all := []quantity.MSPerCM{t.target()}
	if t.read() {
		all = append(all, t.EC.Mid())
	}
	if t.FeedEC > 0 {
		all = append(all, t.FeedEC)
	}
	for _, ec := range all {
		if s, ok := t.Curve.Strength(float64(ec)); !ok || s <= 0 {
			t.Curve = nil
			return t
		}
	}
	return t
}

func (d desk) sums() sums {
	if d.t.Curve != nil {
		return inParts
	}
	return inEC
}

// source is where the sums come from.
func (d desk) source() string {
	if d.t.Curve != nil {
		return byCurve + "; " + curved
	}
	return mixing
}

// salts is an EC as the sums count it.
func (d desk) salts(key, name, symbol string, ec quantity.MSPerCM) working.Number {
	if d.t.Curve == nil {
		return d.ec(key, name, symbol, ec)
	}
	s, _ := d.t.Curve.Strength(float64(ec))
	return d.b.Found(key+"_parts", name+", in parts of the feed", symbol, parts, s, curved)
}

// water is the tap's, which has no feed in it.
func (d desk) water() working.Number {
	if d.t.Curve == nil {
		return d.ec("tap_ec", "EC of the tap water", "W", d.t.Tap.EC)
	}
	return d.b.Found("water_parts", "the tap water, in parts of the feed", "W", parts, 0, "no feed is in it")
}

// expected is the EC after something was taken out and poured in.
func (d desk) expected(now, out, ec, in, of working.Number) working.Number {
	if d.t.Curve == nil {
		return d.b.Work(inEC.after, "ec_after", "EC to expect", now, out, ec, in, of)
	}
	after := d.b.Work(inParts.after, "after_parts", "strength to expect, in parts of the feed", now, out, ec, in, of)
	return d.b.Found("ec_after", "EC to expect", "E2", quantity.Conductivity, quantity.MSPerCM(d.t.Curve.EC(after.Base)).Base(), curved)
}
