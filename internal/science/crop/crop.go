package crop

import (
	"math"
	"sort"
	"strings"

	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Crop is one kind of plant by its name in a plan, such as 'leaf lettuce'.
type Crop struct {
	Name string
	id   string
}

// Default is the crop of a tub whose plan names none.
const Default = "leaf lettuce"

// Names are the crops known, in alphabetical order.
func Names() []string {
	var out []string
	for _, f := range Facts.Rows() {
		parts := strings.Split(string(f.ID), ".")
		if len(parts) == 3 && parts[2] == "height" {
			out = append(out, strings.ReplaceAll(parts[1], "_", " "))
		}
	}
	sort.Strings(out)
	return out
}

// Find is the crop of a name, without regard to case; ok is false for one not
// known.
func Find(name string) (c Crop, ok bool) {
	plain := strings.ToLower(strings.TrimSpace(name))
	id := strings.ReplaceAll(plain, " ", "_")
	_, ok = Facts.Find(facts.ID("crop." + id + ".height"))
	return Crop{Name: strings.Replace(plain, "swiss", "Swiss", 1), id: id}, ok
}

// Named is the crop of a name, the default one where none of that name is known.
func Named(name string) Crop {
	c, known := Find(name)
	if !known {
		c, _ = Find(Default)
	}
	return c
}

// fact is a row of the crop; every crop has every row asked for, which a test
// holds.
func (c Crop) fact(what string) facts.Fact {
	f, _ := Facts.Find(facts.ID("crop." + c.id + "." + what))
	return f
}

func (c Crop) key(what string) string { return "crops." + c.id + "." + what }

// Litres enters the solution one plant wants: with refills on every open day,
// or filled once.
func (c Crop) Litres(b *working.Book, once bool) working.Number {
	what, name := "litres.refill", "solution for one "+c.Name+", topped up"
	if once {
		what, name = "litres.once", "solution for one "+c.Name+", filled once"
	}
	f := c.fact(what)
	return b.Fact(c.key(strings.ReplaceAll(what, ".", "_")), name, "p", quantity.Volume.WithDecimals(2, 2), quantity.Litre.Base(f.Value), f)
}

// Mass enters the mass a plant is picked at where the plan names none.
func (c Crop) Mass(b *working.Book) working.Number {
	f := c.fact("harvest_mass")
	return b.Fact(c.key("harvest_mass"), "one "+c.Name+" at harvest", "g", quantity.SmallMass, quantity.Gram.Base(f.Value), f)
}

var spacingLaw = working.Must(working.Law{
	Symbol: "s", Kind: quantity.Length, Formula: "a*min(max(g/m, q), u)^0.5",
	Where: []working.Symbol{
		{Name: "a", Meaning: "spacing at the usual harvest mass", Kind: quantity.Length},
		{Name: "g", Meaning: "harvest mass wanted", Kind: quantity.SmallMass},
		{Name: "m", Meaning: "usual harvest mass", Kind: quantity.SmallMass},
		{Name: "q", Meaning: "least share of the usual area", Kind: quantity.Factor},
		{Name: "u", Meaning: "most", Kind: quantity.Factor},
	},
	Basis: working.OfTrade, Source: "the same mass from each square centimetre, so the area goes with the mass (rule of constant yield, from memory)",
})

// crowdedGrams is the mass above which leaf lettuce wants its final spacing.
const crowdedGrams = 120

// Spacing enters the distance between centres that a harvest mass wants. The
// area of a plant goes with its mass between a quarter and twice the usual;
// leaf lettuce over 120 g takes its final spacing whole.
func (c Crop) Spacing(b *working.Book, wanted working.Number) working.Number {
	final := c.fact("spacing")
	young, hasYoung := Facts.Find(facts.ID("crop." + c.id + ".spacing.young"))
	enter := func(f facts.Fact, key string) working.Number {
		return b.Fact(c.key(key), c.Name+", centre to centre", "a", quantity.Length, f.Value, f)
	}
	if hasYoung && quantity.Gram.From(wanted.Base) > crowdedGrams {
		return enter(final, "spacing")
	}
	base := enter(final, "spacing")
	if hasYoung {
		base = enter(young, "spacing_young")
	}
	usual := c.Mass(b)
	if math.Abs(usual.Base-wanted.Base) < 1e-12 {
		return base
	}
	return b.Work(spacingLaw, "spacing_"+c.id, c.Name+", centre to centre at that mass", base, wanted, usual,
		b.Typed("least_share", "least share of the usual area", "q", quantity.Factor, 0.25, 0),
		b.Typed("most_share", "most of the usual area", "u", quantity.Factor, 2, 0))
}

var heightLaw = working.Must(working.Law{
	Symbol: "y", Kind: quantity.Length, Formula: "k*(g/m)^(1/3)",
	Where: []working.Symbol{
		{Name: "k", Meaning: "height at the usual mass", Kind: quantity.Length},
		{Name: "g", Meaning: "harvest mass wanted", Kind: quantity.SmallMass},
		{Name: "m", Meaning: "usual harvest mass", Kind: quantity.SmallMass},
	},
	Basis: working.OfTrade, Source: "a smaller plant of the same shape (common practice, no source)",
})

// Height enters how tall the crop stands over the lid at a harvest mass.
func (c Crop) Height(b *working.Book, wanted working.Number) working.Number {
	f := c.fact("height")
	usual := c.Mass(b)
	height := b.Fact(c.key("height"), c.Name+" at harvest, over the lid", "k", quantity.Length, quantity.Centimetre.Base(f.Value), f)
	if math.Abs(usual.Base-wanted.Base) < 1e-12 {
		return height
	}
	return b.Work(heightLaw, "height_"+c.id, c.Name+" at that mass, over the lid", height, wanted, usual)
}
