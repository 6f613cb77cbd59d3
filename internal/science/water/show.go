package water

import (
	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

func typed(b *working.Book, key, name, symbol string, kind quantity.Kind, v float64) working.Number {
	return b.Typed(key, name, symbol, kind, kind.Metric.Base(v), 0)
}

// noted enters what neither the plan nor a row of facts says.
func noted(b *working.Book, key, name, symbol string, kind quantity.Kind, v float64, source string) working.Number {
	return b.Noted(key, name, symbol, kind, kind.Metric.Base(v), 0, source)
}

// usual enters a figure as its row where it is that of one of some rows.
func usual(b *working.Book, key, name, symbol string, kind quantity.Kind, v float64, ids ...facts.ID) working.Number {
	for _, id := range ids {
		if f := Facts.Get(id); f.Value == v {
			return b.Fact(key, name, symbol, kind, kind.Metric.Base(v), f)
		}
	}
	return typed(b, key, name, symbol, kind, v)
}

// ShowPressure enters the air's pressure at metres above the sea.
func ShowPressure(b *working.Book, altitudeM float64) working.Number {
	return b.Work(pressureLaw, "air_pressure", "pressure of the air", typed(b, "altitude", "height above the sea", "z", Height, altitudeM))
}

// ShowDeficit enters how thirsty the room's air is.
func (r Room) ShowDeficit(b *working.Book) working.Number {
	return b.Work(deficitLaw, "vapour_deficit", "vapour pressure deficit", b.Work(fullLaw, "vapour_full", "vapour that full air holds", typed(b, "air_temperature", "air", "t", leafWarmth, r.TempC)),
		b.Typed("humidity", "relative humidity", "H", quantity.Share, r.Humidity, 0))
}

func showVapour(b *working.Book, key, name, what string, tempC, share float64, found bool) working.Number {
	var t working.Number
	if !found {
		t = typed(b, key+"_temperature", what, "t", leafWarmth, tempC)
	} else {
		t = b.Found(key+"_temperature", what, "t", leafWarmth, leafWarmth.Metric.Base(tempC), "the temperature at which as much heat leaves the leaf as the lamp brings, found by trying")
	}
	factor := quantity.Kind{Name: "a share", Metric: quantity.One, US: quantity.One, Decimals: [2]int{2, 2}}
	return b.Work(vapourLaw, key, name, b.Work(fullLaw, key+"_full", "vapour that full air holds", t), b.Noted(key+"_share", "share of it that is there", "H", factor, share, 0, "full in the pores of a leaf, the humidity in a room"), t)
}

// Show enters what leaves of an index breathe out, for a scope of the book that
// is the light's own. The canopy must be of that room and light.
func (c *Canopy) Show(b *working.Book, room Room, ppfd, leafIndex float64) working.Number {
	leaf := c.Breathe(leafIndex)
	lai := min(leafIndex, mostLeafIndex)
	return b.Work(breathLaw, "breathed", "water breathed out", noted(b, "leaf_index", "leaf area over a square metre, at most 3", "L", LeafIndex, max(0, lai), "the leaf area of that hour"),
		showVapour(b, "pores", "water in the air of the leaf's pores", "leaf", leaf.TempC, 1, true), showVapour(b, "room", "water in the room's air", "air", room.TempC, room.Humidity, false),
		b.Work(poresLaw, "pore_resistance", "resistance of the pores", noted(b, "light", "light on the leaf", "E", Light, ppfd, "the light at the holes")), usual(b, "air_resistance", "resistance of the air", "a", Resistance, c.airResistance, factLeafAirStill, factLeafAirFan))
}

// ShowDay enters a plant's water of a day from what is breathed out in the
// light and in the dark.
func ShowDay(b *working.Book, lit, dark working.Number, hours, perM2 float64) working.Number {
	return b.Work(dayLaw, "water_day", "water of one plant in a day", lit, typed(b, "lit_hours", "hours lit", "h", hourKind, hours), dark, typed(b, "density", "plants on a square metre", "n", Density, perM2))
}

// ShowLid enters what passes a lid in a day; deficit is from ShowDeficit.
func ShowLid(b *working.Book, deficit working.Number, airMS, m2, openShare float64) working.Number {
	open := b.Work(openLaw, "open_water", "open water loses", usual(b, "air_speed", "air over the water", "u", Speed, airMS, factOpenAirSpeed), deficit)
	return b.Work(lidLaw, "lid_loss", "water that passes the lid in a day", open, noted(b, "water_area", "area of the water", "A", Ground, m2, "the tub's shape at its fill line"),
		b.Noted("lid_open", "open share of the lid", "g", quantity.Share.WithDecimals(1, 1), openShare, 0, "usual gaps (common practice, no source)"))
}

// ShowDrink enters the EC after plants drank.
func (s Solution) ShowDrink(b *working.Book, litres, uptakeEC, vapourL float64) working.Number {
	return b.Work(drinkLaw, "ec_after", "EC afterwards", typed(b, "none", "nought", "z", ecLitres, 0), typed(b, "ec_before", "EC before", "e", quantity.Conductivity, s.ECmS), typed(b, "litres_before", "solution before", "V", drunk, s.Litres),
		typed(b, "uptake_ec", "strength of what the plants take", "u", quantity.Conductivity, uptakeEC), typed(b, "drunk", "drunk", "w", drunk, litres), typed(b, "vapour_litres", "gone as vapour", "x", drunk, vapourL))
}

// ShowTopUp enters the EC after some litres are poured in.
func (s Solution) ShowTopUp(b *working.Book, litres, ecMS float64) working.Number {
	return b.Work(topUpLaw, "ec_topped_up", "EC after the top-up", typed(b, "ec_before", "EC before", "e", quantity.Conductivity, s.ECmS), typed(b, "litres_before", "solution before", "V", drunk, s.Litres),
		typed(b, "ec_poured", "EC of what is poured in", "t", quantity.Conductivity, ecMS), typed(b, "poured", "poured in", "w", drunk, litres))
}

// ShowTaken enters what plants take of an element with the litres they drink.
func (e Element) ShowTaken(b *working.Book, litres float64) working.Number {
	return b.Work(takenLaw, "taken_"+e.Symbol, e.Symbol+" that the plants take", typed(b, "drunk_in_all", "drunk", "w", drunk, litres), typed(b, "taken_per_litre_"+e.Symbol, e.Symbol+" taken with each litre", "c", quantity.Content, e.MgL()))
}
