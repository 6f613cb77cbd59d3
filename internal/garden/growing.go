package garden

import (
	"fmt"
	"math"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/crop"
)

// growth is what a tub's plants want, one with another.
type growth struct {
	each    []Growing
	litres  working.Number // solution a plant
	spacing working.Number // centre to centre
	mass    working.Number // a plant at harvest
	height  working.Number // the tallest crop over the lid
	once    working.Number // solution a plant, filled once
}

func mixLaw(kind quantity.Kind, symbol string) *working.Law {
	return working.Must(working.Law{
		Symbol: symbol, Kind: kind, Formula: "(n*a+m*b)/(n+m)",
		Where: []working.Symbol{
			working.Letter("n", "plants so far", quantity.Count),
			working.Letter("a", "mean so far", kind),
			working.Letter("m", "plants of this crop", quantity.Count),
			working.Letter("b", "this crop", kind),
		},
		Basis: working.OfNature, Source: "mean over the plants of the tub; for neighbours of different crops the mean spacing is common practice",
	})
}

var (
	mixLitresLaw  = mixLaw(quantity.Volume.WithDecimals(2, 2), "p")
	mixSpacingLaw = mixLaw(quantity.Length, "s")
	mixMassLaw    = mixLaw(quantity.SmallMass, "g")
	sumCountLaw   = working.Must(working.Law{
		Symbol: "n", Kind: quantity.Count, Formula: "a+b", Where: []working.Symbol{working.Letter("a", "so far", quantity.Count), working.Letter("b", "more", quantity.Count)},
		Basis: working.OfNature, Source: "sum",
	})
	tallestLaw = working.Must(working.Law{
		Symbol: "y", Kind: quantity.Length, Formula: "max(a, b)", Where: []working.Symbol{working.Letter("a", "so far", quantity.Length), working.Letter("b", "this crop", quantity.Length)},
		Basis: working.OfNature, Source: "the taller of the two",
	})
)

// share is how many plants of a crop, at least one to weigh it with.
func (g Growing) share() int { return max(g.Plants, 1) }

// crops enters what each crop of the tub wants and their mean.
func (t *tubState) crops() {
	t.growth.each = t.growing()
	sofar := working.Number{}
	for i, each := range t.growth.each {
		c := crop.Named(each.Name)
		mass := c.Mass(t.assessor.book)
		if t.typed.HarvestMass.Set() {
			mass = t.book.Typed("harvest_mass", "one plant at harvest, as wanted", "g", quantity.SmallMass, t.typed.HarvestMass.Value.Base(), 0)
		}
		litres, spacing, height := c.Litres(t.assessor.book, t.typed.Method == "still"), c.Spacing(t.scope(), mass), c.Height(t.scope(), mass)
		once := c.Litres(t.assessor.book, true)
		count := t.book.Typed("plants_"+Slug(strings.ToLower(each.Name)), each.Name+" plants", "m", quantity.Count, float64(each.share()), 0)
		if i == 0 {
			t.growth.litres, t.growth.spacing, t.growth.mass, t.growth.height, t.growth.once, sofar = litres, spacing, mass, height, once, count
			continue
		}
		key := func(what string) string { return fmt.Sprintf("%s_with_%d", what, i+1) }
		t.growth.litres = t.book.Work(mixLitresLaw, key("litres"), "solution a plant, mean of the crops", sofar, t.growth.litres, count, litres)
		t.growth.once = t.book.Work(mixLitresLaw, key("litres_once"), "solution a plant filled once, mean of the crops", sofar, t.growth.once, count, once)
		t.growth.spacing = t.book.Work(mixSpacingLaw, key("spacing"), "centre to centre, mean of the crops", sofar, t.growth.spacing, count, spacing)
		t.growth.mass = t.book.Work(mixMassLaw, key("mass"), "one plant at harvest, mean of the crops", sofar, t.growth.mass, count, mass)
		t.growth.height = t.book.Work(tallestLaw, key("height"), "tallest crop over the lid", t.growth.height, height)
		sofar = t.book.Work(sumCountLaw, key("plants"), "plants so far", sofar, count)
	}
	if t.typed.LitresPerPlant.Set() {
		t.growth.litres = t.book.Typed("litres_per_plant", "solution a plant", "p", quantity.Volume.WithDecimals(2, 2), t.typed.LitresPerPlant.Value.Base(), 0)
	}
	if t.typed.Spacing.Between.Set() {
		t.growth.spacing = t.book.Typed("between", "centre to centre, as wanted", "s", quantity.Length, float64(t.typed.Spacing.Between.Value), 0)
	}
}

// scope is the tub's book where a harvest mass of its own makes a crop's
// numbers the tub's, and the garden's otherwise.
func (t *tubState) scope() *working.Book {
	if t.typed.HarvestMass.Set() {
		return t.book
	}
	return t.assessor.book
}

func (t *tubState) growing() []Growing {
	var out []Growing
	for _, g := range t.typed.Growing {
		out = append(out, Growing{Name: g.Crop, Plants: g.Plants.Value})
	}
	if len(out) == 0 {
		name := t.typed.Crop
		if name == "" {
			name = crop.Default
			t.note("crop", t.field, fmt.Sprintf("%s is taken to grow %s.", t.name, name), "Name the crop.")
		}
		out = append(out, Growing{Name: name})
	}
	return out
}

// wanted is the number of plants the plan asks for; zero for 'best'.
func (t *tubState) wanted() (count int, field string) {
	if t.typed.Plants.Given && !t.typed.Plants.Best {
		return t.typed.Plants.Number, t.field + ".plants"
	}
	if t.typed.Plants.Given {
		return 0, t.field + ".plants"
	}
	for _, g := range t.typed.Growing {
		count += g.Plants.Value
	}
	return count, t.field + ".growing"
}

// shared splits a number of plants among the tub's crops, as the plan's shares
// have it, largest remainder first.
func (t *tubState) shared(count int) []Growing {
	out := append([]Growing(nil), t.growth.each...)
	total := 0
	for _, g := range out {
		total += g.share()
	}
	left := count
	rest := make([]float64, len(out))
	for i, g := range out {
		exact := float64(count*g.share()) / float64(total)
		out[i].Plants = int(math.Floor(exact))
		rest[i] = exact - math.Floor(exact)
		left -= out[i].Plants
	}
	for ; left > 0; left-- {
		most := 0
		for i := range rest {
			if rest[i] > rest[most] {
				most = i
			}
		}
		out[most].Plants++
		rest[most] = -1
	}
	return out
}
