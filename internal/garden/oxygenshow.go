package garden

import (
	"fmt"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/oxygen"
	"rootbell/internal/science/water"
)

// The sums of a tub's air that are not the oxygen's own.
var (
	warmestLaw = working.Must(working.Law{
		Symbol: "t", Kind: quantity.Temperature, Formula: "max(a, b)",
		Where: []working.Symbol{
			working.Letter("a", "water in attended hours", quantity.Temperature),
			working.Letter("b", "a warm day", quantity.Temperature),
		},
		Basis: working.OfTrade, Source: "air is planned for a warm day, on which roots want more and water holds less",
	})
	underWaterLaw = working.Must(working.Law{
		Symbol: "d", Kind: quantity.Length, Formula: "h-s",
		Where: []working.Symbol{working.Letter("h", "fill line", quantity.Length), working.Letter("s", "height of the air stone", quantity.Length)},
		Basis: working.OfNature, Source: "difference",
	})
	rootsLaw = working.Must(working.Law{
		Symbol: "m", Kind: oxygen.RootMass, Formula: "n*r",
		Where: []working.Symbol{working.Letter("n", "plants", quantity.Count), working.Letter("r", "dry root of one plant", crop.DryRoot)},
		Basis: working.OfNature, Source: "product",
	})
	inTubLaw = working.Must(working.Law{
		Symbol: "V", Kind: quantity.Volume, Formula: "v", Where: []working.Symbol{working.Letter("v", "solution up to the fill line", quantity.Volume)},
		Basis: working.OfNature, Source: "the same",
	})
	ruleFlowLaw = working.Must(working.Law{
		Symbol: "Q", Kind: quantity.AirFlow, Unit: quantity.LitrePerMinute, Empirical: true, Formula: "V/10",
		Where: []working.Symbol{{Name: "V", Meaning: "solution", Kind: quantity.Volume, Unit: quantity.Litre}},
		Basis: working.OfTrade, Source: "a litre of air a minute for 10 L (common practice, no source)",
	})
	mixRootLaw = mixLaw(crop.DryRoot, "r")
)

// showAir enters what a tub's oxygen rests on, under the keys that its formulas
// look for.
func (t *tubState) showAir(b *working.Book, a aired) {
	b.Work(warmestLaw, "water_temperature", "water on a warm day",
		b.Typed("water_attended", "water in attended hours", "a", quantity.Temperature, quantity.Celsius.Base(a.waterC), 0), oxygen.ShowWarm(b))
	water.ShowPressure(b, t.altitudeM())
	root := t.showRoot(b)
	// One plant's root is the mean of the crops, so it is named anew.
	one := b.Typed("one_plant", "one plant", "n", quantity.Count, 1, 0)
	b.Work(rootsLaw, "uptake_each_roots", "dry root of one plant", one, root)
	b.Work(rootsLaw, "uptake_roots", "dry roots of all plants", t.cups, root)
	litres := b.Work(inTubLaw, "solution", "solution", t.solution)
	if a.assumed {
		b.Work(ruleFlowLaw, "air_flow", "air by the trade's rule", litres)
	}
	oxygen.ShowTransfer(b, false)
	for _, n := range t.lines.Lowest.Inputs {
		if n.Symbol == "s" {
			b.Work(underWaterLaw, "stone_depth", "water over the stone", t.lines.Fill, n)
		}
	}
}

// showRoot enters the dry root of one grown plant, the mean of the tub's crops.
func (t *tubState) showRoot(b *working.Book) working.Number {
	var mean, sofar working.Number
	for i, c := range t.kinds() {
		picked := c.Mass(t.assessor.book)
		if t.typed.HarvestMass.Set() {
			picked, _ = t.book.Find(t.book.Key("harvest_mass"))
		}
		name := Slug(strings.ToLower(c.Name))
		root := c.ShowRoot(b, "root_"+name, picked)
		count, _ := t.book.Find(t.book.Key("plants_" + Slug(strings.ToLower(t.growth.each[i].Name))))
		if i == 0 {
			mean, sofar = root, count
			continue
		}
		mean = b.Work(mixRootLaw, fmt.Sprintf("root_with_%d", i+1), "dry root of one plant, mean of the crops", sofar, mean, count, root)
		sofar = b.Work(sumCountLaw, fmt.Sprintf("plants_with_%d", i+1), "plants so far", sofar, count)
	}
	return mean
}
