package crop

import (
	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

func typedAs(b *working.Book, key, name, symbol string, kind quantity.Kind, v float64) working.Number {
	return b.Typed(key, name, symbol, kind, kind.Metric.Base(v), 0)
}

func foundAs(b *working.Book, key, name, symbol string, kind quantity.Kind, v float64, how string) working.Number {
	return b.Found(key, name, symbol, kind, kind.Metric.Base(v), how)
}

func factAs(b *working.Book, key, name, symbol string, kind quantity.Kind, id facts.ID) working.Number {
	f := GrowthFacts.Get(id)
	return b.Fact(key, name, symbol, kind, kind.Metric.Base(f.Value), f)
}

// publishedAs enters a figure of the model as its row where it is the published
// one, and else as what it was set to.
func publishedAs(b *working.Book, key, name, symbol string, kind quantity.Kind, id facts.ID, v float64) working.Number {
	if v == grown(id) {
		return factAs(b, key, name, symbol, kind, id)
	}
	return b.Noted(key, name, symbol, kind, kind.Metric.Base(v), 0, "set for this crop")
}

// ShownGrowth is one hour of growth at one state.
type ShownGrowth struct {
	Sugar, Burnt, Built, Gain working.Number // g/m²/h; Gain of store and structure together
	Shoot                     working.Number // fresh, g a plant
}

// Show enters how a stand grows in some air right now, for a scope of the book
// that is the moment's own: the check a pencil can do of a course that the
// program follows in small steps. A stand that the cold holds back, has more
// leaves than count or air outside the equations is not shown; ok is then false.
func (m *Model) Show(b *working.Book, s State, a Air, perM2 float64) (g ShownGrowth, ok bool) {
	if used := photosynthesis(a) > 0; !a.Valid() || used != (a.WattsM2 > 0) || m.cold(a.TempC) != 1 || m.Crowded(s) || s.Structure <= 0 || s.Store <= 0 || !(perM2 > 0) {
		return g, false
	}
	const course = "where the course of growth stands, followed in small steps by the program"
	t := typedAs(b, "air", "air", "t", quantity.Temperature, a.TempC)
	co2 := typedAs(b, "co2", "CO2 in the air", "C", Carbon, a.CO2PPM)
	structure := foundAs(b, "structure", "structure", "S", Standing, s.Structure, course)
	store := foundAs(b, "store", "store of sugar and starch", "N", Standing, s.Store, course)
	roots := publishedAs(b, "roots", "share of roots", "r", Part, factGrowthRoots, m.RootShare)
	tempo := foundAs(b, "tempo", "tempo beside lettuce", "T", Part, m.Tempo, "the tempo at which the crop's usual harvest comes on its usual day")
	lost := b.Work(lossPointLaw, "co2_lost", "CO2 at which leaves gain nothing", t)
	full := b.Work(fixedLaw, "fixed", "CO2 that full leaves take",
		b.Work(lightUseLaw, "light_use", "CO2 that light fixes", co2, lost), b.Noted("light", "light that leaves use", "I", Radiation, Radiation.Metric.Base(a.WattsM2), 0, "the light at the holes, by the photons of a joule of it"),
		b.Work(passLaw, "conductance", "conductance for CO2", b.Work(withinLaw, "conductance_within", "conductance within the leaf", t)), co2, lost)
	leaf := b.Work(leafLaw, "leaf", "leaf area", publishedAs(b, "leaf_of_a_gram", "leaf of a gram of structure", "l", LeafOfAGram, factGrowthLeaf, m.LeafPerG), roots, structure)
	g.Sugar = b.Work(sugarLaw, "sugar", "sugar made", tempo, b.Noted("vigour", "vigour", "v", Part, Part.Metric.Base(m.Vigour), 0, "1 is the equations as published"), full, leaf)
	g.Built = b.Work(buildLaw, "built", "structure built", tempo, t, store, structure)
	g.Burnt = b.Work(burnLaw, "burnt", "burnt", tempo, roots, structure, t)
	g.Gain = b.Work(gainLaw, "gain", "gain of dry mass", g.Sugar, g.Burnt, g.Built)
	g.Shoot = b.Work(shootLaw, "shoot", "one plant over the lid", publishedAs(b, "fresh", "fresh for dry", "k", Part, factGrowthFresh, m.FreshPerDry), roots, store, structure, b.Noted("density", "plants on a square metre", "n", PerGround, PerGround.Metric.Base(perM2), 0, "the plants on their lid, or the crop's final spacing"))
	return g, true
}

// ShowChance enters the chance of a seed, and of a cell with some of them.
func (c Crop) ShowChance(b *working.Book, s Seed, seedsInACell int) (seed, cell working.Number) {
	normal := 1.0
	if e, grows := c.Emergence(s.TempC); grows {
		normal = e.Normal
	} else if row, known := c.growthRow("emergence"); known && row.Word != "none" {
		normal = 0
	}
	seed = b.Work(chanceLaw, "seed_chance", "a seed becomes a seedling in the tub", b.Noted("none", "nought", "z", Seedlings, 0, 0, "arithmetic"),
		typedAs(b, "germination", "germination of the packet", "g", Seedlings, 100*s.Germination), factAs(b, "age_loss", "lost each year", "l", Seedlings, factNurseryAgeLoss),
		typedAs(b, "seed_age", "years since the packet's year", "y", quantity.Factor, s.YearsOld),
		foundAs(b, "sound_seedlings", "sound seedlings at that temperature, beside the best", "n", Seedlings, 100*normal, "between two lines of Harrington & Minges 1954 or its stand-in"),
		factAs(b, "survival", "seedlings that a class brings through", "s", Seedlings, factNurserySurvival))
	return seed, b.Work(cellLaw, "cell_chance", "a cell fills", seed, b.Noted("seeds_in_a_cell", "seeds in a cell", "k", quantity.Count, float64(seedsInACell), 0, "as is usual for the crop"))
}
