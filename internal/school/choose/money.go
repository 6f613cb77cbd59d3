package choose

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/school/shopping"
	"rootbell/internal/science/lamp"
)

// The parts of a budget.
const (
	Once     = "once"
	EachCrop = "each crop"
	Replaced = "replaced"
)

// Line is one line of a budget. Price is of one piece, and nil where the
// teacher gave none; so is Cost, which is what it comes to in one crop, or once.
type Line struct {
	Part  string
	Item  string // as in the teacher's prices
	What  string
	Size  string
	Count float64
	Unit  string // what is counted: pieces where empty
	Price *float64
	Cost  *float64
	Key   string // of the cost's number
}

// purse adds up the lines of one part of a budget.
type purse struct {
	o    *option
	part string
	sums []working.Number
}

// line enters one line. Part pieces count whole.
func (p *purse) line(l Line) {
	l.Part = p.part
	if l.Price == nil {
		p.o.unpriced(l.What)
	} else {
		key := fmt.Sprintf("line_%d", len(p.o.Lines)+1)
		kind := quantity.Count
		if l.Count != math.Trunc(l.Count) {
			kind = quantity.Factor.WithDecimals(1, 1)
		}
		b := p.o.book.In(key)
		cost := b.Work(lineLaw, "cost", l.What,
			b.Typed("price", "price of one: "+l.What, "p", quantity.Money, *l.Price, 0),
			b.Typed("count", "how many: "+l.What, "n", kind, l.Count, 0))
		p.put(&l, cost)
	}
	p.o.Lines = append(p.o.Lines, l)
}

func (p *purse) put(l *Line, cost working.Number) {
	v := cost.Base
	l.Cost, l.Key = &v, cost.Key
	p.sums = append(p.sums, cost)
}

// sum is what the part comes to, as far as it is priced.
func (p *purse) sum(key, name string) working.Number {
	if len(p.sums) == 0 {
		return p.o.book.Typed(key, name+": nothing is priced", "F", quantity.Money, 0, 0)
	}
	return p.o.book.Work(sumLaw(len(p.sums)), key, name, p.sums...)
}

// thing is a line for something that is lacking.
func (p *purse) thing(t Thing) {
	p.line(Line{Item: t.Item, What: t.What, Count: float64(t.Count), Unit: t.Unit, Price: p.o.priceOf(t.Item)})
}

// unpriced names something without a price, in few words and each once.
func (o *option) unpriced(what string) {
	if short := Short(what); !slices.Contains(o.Unknown, short) {
		o.Unknown = append(o.Unknown, short)
	}
}

// Short is what something on a list is called, without what follows on it: 'air
// pump' of 'air pump, mains-powered: it stands outside'.
func Short(what string) string {
	if at := strings.Index(what, ": "); at > 0 {
		what = what[:at]
	}
	if head, rest, more := strings.Cut(what, ", "); more && !strings.HasPrefix(rest, "for ") {
		what = head
	}
	return what
}

func (o *option) priceOf(item string) *float64 {
	v, ok := o.q.Prices[item]
	if !ok && item == "spare_stone" {
		v, ok = o.q.Prices["stone"]
	}
	if !ok {
		return nil
	}
	return &v
}

// offerCosts are the lines of an offer.
func (o *option) offerCosts(given Offer) {
	once, each := &purse{o: o, part: Once}, &purse{o: o, part: EachCrop}
	once.line(Line{Item: "offer", What: "the offer itself", Count: 1, Price: given.Price})
	once.line(Line{Item: "delivery", What: "delivery", Count: 1, Price: given.Delivery})
	for _, t := range o.Lacks {
		if !t.Each && !t.Later {
			once.thing(t)
		}
	}
	if given.PerCrop != nil {
		each.line(Line{Item: "per_crop", What: "what a crop uses up", Count: 1, Price: given.PerCrop})
	}
	for _, t := range o.Lacks {
		if t.Each {
			each.thing(t)
		}
	}
	watts := o.q.Lamp
	if given.Watts > 0 || given.Flux > 0 {
		watts.Watts = given.Watts // a lamp of its own, even where its watts are not told
	}
	pump := 0.0
	stones := 0
	if o.q.Plant.Aerated {
		pump, stones = Facts.Get(factPumpPower).Value, 1
	}
	o.current(each, watts, pump)
	spent := &purse{o: o, part: Replaced}
	o.stones(spent, stones)
	for _, t := range o.Lacks {
		if t.Later {
			t.Count *= o.q.Crops - 1
			spent.thing(t)
		}
	}
	if given.Months > 0 && given.PerCrop == nil || given.Refill != nil {
		o.refills(spent, given.Refill, given.Months)
	}
	o.totals(once, each, spent)
}

// eachCrop are the items of the shopping list that a crop uses up.
var eachCrop = map[string]bool{"seed": true, "seed_plug": true, "young_plant": true}

// buildCosts are the lines of the garden that the school builds.
func (o *option) buildCosts(items []shopping.Item) {
	once, each := &purse{o: o, part: Once}, &purse{o: o, part: EachCrop}
	for _, part := range []*purse{once, each} {
		for _, i := range items {
			if eachCrop[i.Key] == (part == each) {
				part.line(Line{Item: i.Key, What: i.What, Size: i.Size, Count: i.Count, Unit: i.Unit, Price: i.Price})
			}
		}
		for _, t := range o.Lacks {
			if t.Each == (part == each) {
				part.thing(t)
			}
		}
	}
	pump, stones := 0.0, 0
	for _, t := range o.q.Build.Tubs {
		switch {
		case t.Still:
			continue
		case t.PumpWatts > 0:
			pump += t.PumpWatts
		default:
			pump += Facts.Get(factPumpPower).Value
		}
		stones += max(t.Stones, 1)
	}
	o.current(each, o.q.Lamp, pump)
	spent := &purse{o: o, part: Replaced}
	o.stones(spent, stones)
	o.totals(once, each, spent)
}

// lampCurrent is what no sum has while a lamp's watts are not told.
const lampCurrent = "electricity of a lamp whose watts are not told"

// current is the electricity of a crop.
func (o *option) current(each *purse, l Lamp, pumpWatts float64) {
	if l.Watts == 0 && (pumpWatts == 0 || o.priceOf("electricity") != nil) {
		o.unpriced(lampCurrent) // without a price all of it is unpriced, which is said below
	}
	if l.Watts == 0 && pumpWatts == 0 {
		return
	}
	b, days := o.book, o.q.Plant.Days
	hours := b.Typed("lit", "hours lit in a day", "h", lamp.LitHours, lamp.LitHours.Metric.Base(l.Hours), 0)
	if l.Hours == 0 {
		f := Facts.Get(factLampHours)
		hours = b.Fact("lit_usual", "hours lit in a day", "h", lamp.LitHours, lamp.LitHours.Metric.Base(f.Value), f)
	}
	energy := b.Work(energyLaw, "energy", "electricity of a crop",
		b.Typed("lamp_watts", "lamps, from the socket", "P", quantity.Power, quantity.Watt.Base(l.Watts), 0), hours, o.pumps(pumpWatts), days)
	o.Costs.Energy = known(energy)
	line := Line{Part: EachCrop, Item: "electricity", What: "electricity", Count: energy.Show(quantity.Metric).Value, Unit: "kWh", Price: o.priceOf("electricity")}
	if line.Price == nil {
		o.unpriced(line.What)
	} else {
		cost := b.Work(currentLaw, "current", "electricity of a crop, its cost", energy, b.Typed("tariff", "price of electricity", "u", perEnergy, perEnergy.Metric.Base(*line.Price), 0))
		o.Costs.Current = known(cost)
		each.put(&line, cost)
	}
	o.Lines = append(o.Lines, line)
}

// pumps are the air pumps from the socket: as their labels say, else as usual.
func (o *option) pumps(watts float64) working.Number {
	f := Facts.Get(factPumpPower)
	if watts == f.Value {
		return o.book.Fact("pump_watts", "air pump", "q", quantity.Power, quantity.Watt.Base(watts), f)
	}
	return o.book.Typed("pump_watts", "air pumps together", "q", quantity.Power, quantity.Watt.Base(watts), 0)
}

// stones are the air stones that wear out before the last crop is in.
func (o *option) stones(spent *purse, stones int) {
	if stones == 0 {
		return
	}
	f := Facts.Get(factAirStoneLife)
	count := o.book.Work(stonesLaw, "stones_worn", "air stones to replace", o.book.Typed("stones", "air stones", "s", quantity.Count, float64(stones), 0),
		o.crop.nought, o.crop.cycle, o.crop.crops, o.book.Fact("stone_life", "life of an air stone", "l", quantity.Time, months(f.Value), f))
	if count.Base < 1 {
		return
	}
	o.replaced(spent, Line{Item: "stone", What: "air stones that wear out", Count: count.Base, Price: o.priceOf("stone")}, count)
}

// refills are what goes on when the feed that came with an offer is used up;
// without months it came with none, and one is taken for each crop.
func (o *option) refills(spent *purse, price *float64, lasts int) {
	if lasts == 0 {
		o.replaced(spent, Line{Item: "refills", What: "refills of feed", Count: o.crop.crops.Base, Price: price}, o.crop.crops)
		return
	}
	n := o.book.Work(refillsLaw, "refills", "refills to buy", o.crop.nought, o.q.Plant.Days, o.crop.crops,
		o.book.Typed("refill_lasts", "how long one lasts", "m", quantity.Time, months(float64(lasts)), 0))
	if n.Base < 1 {
		return
	}
	o.replaced(spent, Line{Item: "refills", What: "refills of feed", Count: n.Base, Price: price}, n)
}

func (o *option) replaced(spent *purse, l Line, often working.Number) {
	l.Part = Replaced
	if l.Price == nil {
		o.unpriced(l.What)
	} else {
		b := o.book.In("worn_" + strconv.Itoa(len(o.Lines)+1))
		spent.put(&l, b.Work(timesLaw, "cost", l.What, b.Typed("price", "price of one: "+l.What, "p", quantity.Money, *l.Price, 0), often))
	}
	o.Lines = append(o.Lines, l)
}

// months is a time in base units; a month is a twelfth of a mean year.
func months(n float64) float64 { return quantity.Day.Base(n * 365.25 / 12) }

// totals adds the parts up.
func (o *option) totals(once, each, spent *purse) {
	c := &o.Costs
	c.Whole = len(o.Unknown) == 0
	if len(once.sums)+len(each.sums) == 0 {
		return
	}
	first, crop, worn := once.sum("first_outlay", "first outlay"), each.sum("each_crop", "each crop"), spent.sum("replacements", "replacements")
	c.First, c.PerCrop, c.Replace = known(first), known(crop), known(worn)
	c.FirstCrop = known(o.book.Work(sumLaw(2), "first_crop", "first outlay with the first crop", first, crop))
	c.Total = known(o.book.Work(totalLaw, "total", "all crops together", first, o.crop.crops, crop, worn))
	c.Running = known(o.book.Work(runningLaw, "running", "a crop on average", c.Total.Number, first, o.crop.crops))
}
