package shopping

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"rootbell/internal/base/facts"
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Tub is what one tub of the design needs bought for it.
type Tub struct {
	Name      string
	Key       string // of its numbers: tubs.Heron
	Cups      int    // cups that will hold a plant
	Empty     int    // holes for cups that will hold none
	Cup       Cup
	HoleMM    float64
	AirHoleMM float64 // 0 without an air line
	ServiceMM float64 // 0 without a service hole
	Foam      bool    // the lid is cut, not drilled
	Solution  working.Number
	Stones    int
	Still     bool
	HeightMM  float64 // of the tub, for the tube
	// Roots is the air that the grown roots want; without a key where it is not
	// known. HeadMM is the water that the pump pushes against.
	Roots  working.Number
	HeadMM float64
	Crops  []Crop
}

// Cup is a net cup by its measures in mm.
type Cup struct{ BodyMM, RimMM, DepthMM float64 }

// Crop is one crop of a tub.
type Crop struct {
	Name   string
	Plants int
}

// Item is one line of the list. Price is of one piece, and nil where the
// teacher gave none.
type Item struct {
	Key     string // as in the plan's prices
	What    string
	Count   float64
	Unit    string // what is counted: pieces where empty
	Size    string
	Measure string // what to measure before buying; may be empty
	Price   *float64
	tool    bool // one serves every tub
}

// Total is what the line costs, where its price is known. Part pieces count
// whole.
func (i Item) Total() (money float64, known bool) {
	if i.Price == nil {
		return 0, false
	}
	return *i.Price * math.Ceil(i.Count), true
}

// Design is what the list is made from.
type Design struct {
	Tubs   []Tub
	System quantity.System
	Prices map[string]float64
}

func count(name, meaning string) working.Symbol {
	return working.Symbol{Name: name, Meaning: meaning, Kind: quantity.Count}
}

var (
	cellsLaw = working.Must(working.Law{
		Symbol: "c", Kind: quantity.Count, Formula: "ceil(n*(1+s)/v)",
		Where: []working.Symbol{
			count("n", "plants"), {Name: "s", Meaning: "spares", Kind: quantity.Share}, {Name: "v", Meaning: "seedlings that reach the tub", Kind: quantity.Share},
		},
		Basis: working.OfTrade, Source: "spares and losses in a class",
	})
	seedsLaw = working.Must(working.Law{
		Symbol: "k", Kind: quantity.Count, Formula: "c*q", Where: []working.Symbol{count("c", "cells sown"), count("q", "seeds in a cell")},
		Basis: working.OfTrade, Source: "several seeds in a cell, the strongest kept",
	})
	flowLaw = working.Must(working.Law{
		Symbol: "Q", Kind: quantity.AirFlow, Formula: "V*f",
		Where: []working.Symbol{{Name: "V", Meaning: "solution", Kind: quantity.Volume}, {Name: "f", Meaning: "air for a litre in a minute", Kind: perVolume}},
		Basis: working.OfTrade, Source: "half a litre to a litre of air a minute for 10 L of solution",
	})
	mostFlowLaw = working.Must(working.Law{
		Symbol: "Q", Kind: quantity.AirFlow, Formula: "max(r, q)",
		Where: []working.Symbol{{Name: "r", Meaning: "air by the trade's rule", Kind: quantity.AirFlow}, {Name: "q", Meaning: "air that the grown roots want on a warm day", Kind: quantity.AirFlow}},
		Basis: working.OfTrade, Source: "the larger of the two",
	})
	mediaLaw = working.Must(working.Law{
		Symbol: "V", Kind: quantity.Volume, Formula: "n*pi/4*b^2*d",
		Where: []working.Symbol{
			count("n", "cups"), {Name: "b", Meaning: "cup body", Kind: quantity.SmallLength}, {Name: "d", Meaning: "cup depth", Kind: quantity.SmallLength},
		},
		Basis: working.OfNature, Source: "cylinders as wide as the cup under its lip; the plug and the taper leave some over",
	})
)

// perVolume is air in L/min for a litre of solution: one over a time.
var perVolume = quantity.Kind{
	Name: "a rate", Dim: quantity.Dim{Time: -1}, Decimals: [2]int{2, 2},
	Metric: quantity.Unit{Symbol: "1/min", Dim: quantity.Dim{Time: -1}, Scale: 1.0 / 60},
	US:     quantity.Unit{Symbol: "1/min", Dim: quantity.Dim{Time: -1}, Scale: 1.0 / 60},
}

// List enters the sums of the list into the book and returns its lines.
func List(b *working.Book, d Design) []Item {
	l := &list{book: b, design: d}
	for _, t := range d.Tubs {
		l.tub(t)
	}
	l.sowing()
	l.shared()
	for i := range l.items {
		if p, ok := d.Prices[l.items[i].Key]; ok {
			price := p
			l.items[i].Price = &price
		}
	}
	return l.items
}

type list struct {
	book   *working.Book
	design Design
	items  []Item
}

// small writes a tool's or a cup's size as shops do.
func (l *list) small(mm float64) string {
	if l.design.System == quantity.US {
		return quantity.FormatMark(mm, quantity.US)
	}
	return quantity.Format(quantity.SmallLength, mm, l.design.System)
}

// add puts an item on the list, together with one of the same kind and size
// that stands there already.
func (l *list) add(i Item) {
	for k := range l.items {
		if l.items[k].Key == i.Key && l.items[k].What == i.What && l.items[k].Size == i.Size && l.items[k].Measure == i.Measure {
			if !i.tool {
				l.items[k].Count += i.Count
			}
			return
		}
	}
	l.items = append(l.items, i)
}

// tub lists what one tub needs.
func (l *list) tub(t Tub) {
	book := l.book.In(t.Key)
	l.add(Item{Key: "tub", What: "storage tub with its lid, opaque, sold for food or of known past", Count: 1, Size: t.Name, Measure: "inside at the top and the base, height, and the lid's flat part"})
	spare := 1
	l.add(Item{
		Key: "cup", What: "net cup, one of them spare for each tub", Count: float64(t.Cups + spare),
		Size:    fmt.Sprintf("body %s, rim %s, %s deep", l.small(t.Cup.BodyMM), l.small(t.Cup.RimMM), l.small(t.Cup.DepthMM)),
		Measure: "five cups: the largest body under the lip, the smallest rim",
	})
	cups := book.Typed("cups", "net cups", "n", quantity.Count, float64(t.Cups), 0)
	media := book.Work(mediaLaw, "media", "pebbles for the cups", cups,
		book.Typed("cup_body", "net cup, body under the lip", "b", quantity.SmallLength, t.Cup.BodyMM, 0),
		book.Typed("cup_depth", "net cup, depth under the lip", "d", quantity.SmallLength, t.Cup.DepthMM, 0))
	unit := media.Kind.Unit(l.design.System)
	l.add(Item{Key: "pebbles", What: "clay pebbles, washed", Count: quantity.Shown(media.Kind, media.Base, l.design.System), Unit: unit.Symbol})
	l.holes(t)
	if t.Empty > 0 {
		l.add(Item{Key: "cap", What: "cap for an empty cup hole: light in the water grows algae", Count: float64(t.Empty), Size: l.small(t.HoleMM)})
	}
	if !t.Still {
		l.air(book, t)
	}
	l.add(Item{Key: "tray", What: "tray or mat under the tub's pump side, for " + quantity.Format(quantity.Volume, quantity.Litre.Base(Facts.Get(factSpillTrayVolume).Value), l.design.System) + " or more", Count: 1})
	l.add(Item{Key: "towel", What: "towel for spills", Count: Facts.Get(factSpillTowels).Value})
	l.add(Item{Key: "cover", What: "black-out for a tub that lets light through: foil or dark paint outside", Count: 1, Size: t.Name, Measure: "hold a torch inside: does the wall glow?"})
}

// air lists pump, stones, tube and valve of one tub.
func (l *list) air(book *working.Book, t Tub) {
	f := Facts.Get(factAirFlow)
	rate := book.Fact("air_rate", "air for a litre of solution in a minute", "f", perVolume, perVolume.Metric.Base(f.Value/10), f)
	flow := book.Work(flowLaw, "air_needed", "air the tub needs", t.Solution, rate)
	if t.Roots.Key != "" {
		flow = book.Work(mostFlowLaw, "air_wanted", "air to buy a pump for", flow, t.Roots)
	}
	pump := Item{
		Key: "pump", What: "air pump, mains-powered: it stands outside the tub, above the water, tied so that it cannot fall in", Count: 1,
		Size: quantity.Format(flow.Kind, flow.Base, l.design.System) + " or more",
	}
	if t.HeadMM > 0 {
		pump.Measure = "it must blow under " + quantity.Format(quantity.Length, t.HeadMM, l.design.System) + " of water, and through tube and stone besides"
	}
	l.add(pump)
	l.add(Item{Key: "stone", What: "air stone, one of them spare for each tub", Count: float64(max(t.Stones, 1) + 1)})
	l.add(Item{Key: "check_valve", What: "check valve in the air line, one of them spare for each tub: without it water can run back through the line when the pump stops", Count: 2})
	const perStoneMM = 1000 // from the pump to the lid, common practice
	metres := math.Ceil((t.HeightMM+perStoneMM)*float64(max(t.Stones, 1))/500) / 2
	unit, length := "m", metres
	if l.design.System == quantity.US {
		unit, length = "ft", math.Ceil(metres*1000/304.8)
	}
	l.add(Item{Key: "tube", What: "air tube", Count: length, Unit: unit, Measure: "the way from the pump's place to the stone, with a drip loop"})
}

// sowing lists seeds, with spares, by crop over all tubs.
func (l *list) sowing() {
	plants := map[string]int{}
	var names []string
	for _, t := range l.design.Tubs {
		for _, c := range t.Crops {
			name := strings.ToLower(c.Name)
			if plants[name] == 0 && c.Plants > 0 {
				names = append(names, name)
			}
			plants[name] += c.Plants
		}
	}
	sort.Strings(names)
	cells := 0.0
	for _, name := range names {
		cells += l.seeds(name, plants[name])
	}
	if cells > 0 {
		l.add(Item{Key: "seed_plug", What: "plug or cube to sow in", Count: cells, Measure: "it must sit low in the cup: its bottom no more than " + l.small(plugOverMM) + " over the cup's"})
	}
}

// seeds lists one crop's seeds and returns the cells to sow.
func (l *list) seeds(name string, plants int) float64 {
	book := l.book.In("crops." + strings.ReplaceAll(name, " ", "_"))
	spares, survival, each := Facts.Get(factNurserySpares), Facts.Get(factNurserySurvival), seedsEach(name)
	if name == "strawberry" || name == "mint" {
		l.add(Item{Key: "young_plant", What: name + ", young plant or cutting, one of them spare", Count: float64(plants + 1)})
		return 0
	}
	cells := book.Work(cellsLaw, "cells", "cells to sow, "+name,
		book.Typed("plants", name+" plants", "n", quantity.Count, float64(plants), 0),
		book.Fact("spares", "spare seedlings", "s", quantity.Share, spares.Value/100, spares),
		book.Fact("survival", "seedlings that reach the tub", "v", quantity.Share, survival.Value, survival))
	seeds := book.Work(seedsLaw, "seeds", "seeds, "+name, cells, book.Fact("seeds_each", "seeds in a cell", "q", quantity.Count, each.Value, each))
	l.add(Item{Key: "seed", What: name + " seed", Count: seeds.Base, Measure: "the packet's year: old seed germinates less"})
	return cells.Base
}

// seedsEach is how many seeds of a crop go into a cell.
func seedsEach(name string) facts.Fact {
	switch name {
	case "basil", "parsley", "cilantro", "mint":
		return Facts.Get(factNurserySeedsPerCellHerbs)
	case "rocket":
		return Facts.Get(factNurserySeedsPerCellRocket)
	}
	return Facts.Get(factNurserySeedsPerCellLettuce)
}

// Sown is how many cells are sown, and how many seeds go into them, for so many
// plants of a crop in the tub.
func Sown(crop string, plants int) (cells, seeds int) {
	if plants < 1 {
		return 0, 0
	}
	n := cellsLaw.Value(float64(plants), Facts.Get(factNurserySpares).Value/100, Facts.Get(factNurserySurvival).Value)
	return int(n), int(seedsLaw.Value(n, seedsEach(strings.ToLower(crop)).Value))
}

// holes lists what makes the holes and what closes the service hole again.
func (l *list) holes(t Tub) {
	if t.ServiceMM > 0 {
		l.add(Item{Key: "plug", What: "plug or cap for the service hole", Count: 1, Size: l.small(t.ServiceMM)})
	}
	if t.Foam {
		l.add(Item{Key: "foam_cutter", What: "sharp knife with a long thin blade, or a hot-wire cutter, for an adult", tool: true, Count: 1, Measure: "cut one trial hole in an offcut and drop a cup in"})
		return
	}
	l.add(Item{Key: "saw", What: "hole saw with arbor, for the cups", tool: true, Count: 1, Size: l.small(t.HoleMM), Measure: "cut one trial hole in scrap and drop a cup in"})
	if t.AirHoleMM > 0 {
		l.add(Item{Key: "drill_bit", What: "drill bit, for the air line", tool: true, Count: 1, Size: l.small(t.AirHoleMM), Measure: "the tube, or the groove of its grommet"})
	}
	if t.ServiceMM > 0 {
		l.add(Item{Key: "service_saw", What: "hole saw, for the service hole", tool: true, Count: 1, Size: l.small(t.ServiceMM)})
	}
}

// plugOverMM is how far a plug may stand over the cup's bottom, so that its roots
// soon reach the water (common practice, no source).
const plugOverMM = 5

// shared lists what one set of serves all tubs.
func (l *list) shared() {
	bucket := "10 L"
	if l.design.System == quantity.US {
		bucket = "2.5 gal"
	}
	for _, i := range []Item{
		{Key: "eye_protection", What: "eye protection with side shields, for everyone near the drill", Count: 1, Unit: "set"},
		{Key: "backing_board", What: "flat scrap board as large as the lid, to drill into", Count: 1},
		{Key: "clamp", What: "clamp", Count: 2},
		{Key: "deburring_tool", What: "deburring tool or fine file", Count: 1},
		{Key: "bucket", What: "bucket, " + bucket + ", for water only", Count: 1},
	} {
		l.add(i)
	}
}
