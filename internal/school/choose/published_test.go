package choose_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/school/choose"
	"rootbell/internal/school/shopping"
)

func price(v float64) *float64 { return &v }

// asked is the question that is worked by hand below: five crops of 30 days in
// the tub and 15 in the nursery, 3 L for a plant, a lamp of 40 W lit 16 h.
// Every price in it is invented.
func asked(b *working.Book, kitPrice float64) choose.Question {
	plant := choose.Need{
		Crop: "leaf lettuce", Litres: b.Typed("need", "solution a plant", "p", quantity.Volume, quantity.Litre.Base(3), 0),
		Spacing: b.Typed("spacing", "centre to centre", "s", quantity.Length, 150, 0), Mass: b.Typed("mass", "a plant", "g", quantity.SmallMass, quantity.Gram.Base(100), 0),
		Days: b.Typed("days", "days", "d", quantity.Time, quantity.Day.Base(30), 0), Nursery: 15,
		Portion: b.Typed("portion", "a serving", "g", quantity.SmallMass, quantity.Gram.Base(20), 0), Aerated: true,
	}
	return choose.Question{
		Crops: 5, Plant: plant, Lamp: choose.Lamp{Watts: 40, Hours: 16}, Have: choose.Have{PH: true, EC: true, Feed: true, Lamp: true},
		Site:   choose.Site{Socket: choose.Yes, RCD: choose.Yes, Kitchen: choose.Yes, AdultDrills: true},
		Prices: map[string]float64{"cap": 0.50, "stone": 2.50, "electricity": 0.30, "nutrient": 2.00},
		Build: &choose.Build{
			Plants: 8,
			Tubs:   []choose.Tub{{Name: "Heron", Plants: 8, Solution: b.Typed("water", "solution", "V", quantity.Volume, quantity.Litre.Base(25), 0), Mass: plant.Mass, Stones: 1}},
			Items: []shopping.Item{
				{Key: "tub", What: "tub", Count: 1, Price: price(12)},
				{Key: "saw", What: "saw", Count: 1, Price: price(14)},
				{Key: "cup", What: "cups", Count: 9, Price: price(0.50)},
				{Key: "pump", What: "pump", Count: 1, Price: price(15)},
				{Key: "seed", What: "seed", Count: 15.2, Price: price(0.05)},
			},
		},
		Offers: []choose.Offer{{
			Name: "kit", Price: price(kitPrice), Delivery: price(5), PerCrop: price(10), Sites: 8, Litres: 20,
			Includes: []string{"pump", "tube", "2 stones", "check valve", "cups", "tray", "towels", "goggles"},
		}},
	}
}

// The money of a kit and of a build, each step by hand.
func TestMoneyByHand(t *testing.T) {
	b := working.NewBook()
	choose.Compare(b, asked(b, 80))
	for _, c := range []struct {
		key    string
		want   float64
		source string
	}{
		{"choose.offer_1.litres_per_site", 2.5e6, "by hand: 20 L over 8 holes is 2.5 L"},
		{"choose.offer_1.fed", 6, "by hand: 20 over 3, whole plants"},
		{"choose.offer_1.plants", 6, "by hand: 6 fed, 8 holes"},
		{"choose.offer_1.first_outlay", 86, "by hand: 80 + 5 + 2 caps at 0.50"},
		{"choose.offer_1.current", 6.63, "by hand: (40*16 + 4*24) W h = 736 W h a day, 30 days are 22.08 kWh, 22.1 to a tenth, at 0.30, to the cent"},
		{"choose.offer_1.each_crop", 16.63, "by hand: 10 + 6.63"},
		{"choose.offer_1.stones_worn", 1, "by hand: 5 crops of 45 days are 225, a stone lasts 182.625: a second one"},
		{"choose.offer_1.replacements", 2.50, "by hand: one stone"},
		{"choose.offer_1.first_crop", 102.63, "by hand: 86 + 16.63"},
		{"choose.offer_1.total", 171.65, "by hand: 86 + 5*16.63 + 2.50"},
		{"choose.offer_1.planted", 30, "by hand: 6 plants, 5 crops"},
		{"choose.offer_1.harvested", 27, "by hand: nine in ten of 30"},
		{"choose.offer_1.per_planted", 171.65 / 30, "by hand: 5.72"},
		{"choose.offer_1.per_harvested", 171.65 / 27, "by hand: 6.36"},
		{"choose.offer_1.servings", 114.75, "by hand: 27 plants of 100 g, 85 % of it, at 20 g"},
		{"choose.build.first_outlay", 45.50, "by hand: 12 + 14 + 9*0.50 + 15"},
		{"choose.build.each_crop", 9.43, "by hand: 16 seeds at 0.05 (15.2 are 16 whole ones), feed 2, electricity 6.63"},
		{"choose.build.total", 95.15, "by hand: 45.50 + 5*9.43 + one stone at 2.50"},
		{"choose.build.per_harvested", 95.15 / 36, "by hand: 8 plants, 5 crops, nine in ten: 2.64"},
		{"choose.beside_offer_1.share_even", 95.15 * 27 / (171.65 * 40), "by hand: 95.15 over 40 plants times 6.36: 37 %"},
	} {
		n, ok := b.Find(c.key)
		if !ok || math.Abs(n.Base-c.want) > 1e-9*math.Abs(c.want) {
			t.Errorf("%s is %v (there: %v), want %v: %s", c.key, n.Base, ok, c.want, c.source)
		}
	}
}

// The break-even of a kit that is cheap at first: by hand, 45.50 + 9.93 k and
// 26 + 17.13 k are equal at 19.5/7.2 crops.
func TestBreakEvenByHand(t *testing.T) {
	b := working.NewBook()
	c := choose.Compare(b, asked(b, 20))
	i := slices.IndexFunc(c.Senses, func(s choose.Sense) bool { return s.Kind == choose.Even })
	if i < 0 || math.Abs(c.Senses[i].Turn.Base-19.5/7.2) > 1e-9 {
		t.Fatalf("break-even %+v, want %v", c.Senses, 19.5/7.2)
	}
}

// The price at which a plant costs the same, by hand: a kit at 80 costs 171.65 in
// all, and 80 + 95.15/36*27 - 171.65 is -20.29: even as a gift it would be dearer.
// Where a crop uses up 3 of it and not 10 it costs 136.65, and 14.71 is the price.
func TestThePriceThatWouldTurnTheOrder(t *testing.T) {
	for perCrop, want := range map[float64]float64{10: -20.2875, 3: 14.7125} {
		q := asked(working.NewBook(), 80)
		q.Offers[0].PerCrop = price(perCrop)
		c := choose.Compare(working.NewBook(), q)
		i := slices.IndexFunc(c.Senses, func(s choose.Sense) bool { return s.Kind == choose.Price })
		if i < 0 || math.Abs(c.Senses[i].Turn.Base-want) > 1e-9 {
			t.Errorf("a crop at %v: %+v, want %v", perCrop, c.Senses, want)
		}
	}
}

// What has no price is named, and the sums leave it out and say so.
func TestWithoutAPriceNothingIsGuessed(t *testing.T) {
	b := working.NewBook()
	q := asked(b, 80)
	delete(q.Prices, "cap")
	delete(q.Prices, "electricity")
	q.Build.Items[3].Price = nil
	c := choose.Compare(b, q)
	o := c.Options[0]
	if o.Costs.Whole || !slices.Equal(o.Unknown, []string{"caps for the empty holes", "electricity"}) || o.Costs.First.Base != 85 {
		t.Errorf("unknown %q, whole %v, first %v", o.Unknown, o.Costs.Whole, o.Costs.First.Base)
	}
	if own := c.Build(); own.Costs.Whole || !slices.Contains(own.Unknown, "pump") {
		t.Errorf("the build's unknown: %q", own.Unknown)
	}
	for _, s := range c.Senses {
		if s.Kind != choose.Room {
			t.Errorf("%s is said of sums that are not whole", s.Kind)
		}
	}
	q.Offers[0] = choose.Offer{Name: "kit"}
	q.Prices = nil
	for i := range q.Build.Items {
		q.Build.Items[i].Price = nil
	}
	for _, o := range choose.Compare(working.NewBook(), q).Options {
		if o.Costs.Total.Is {
			t.Errorf("%s: a total of %v from no price at all", o.Name, o.Costs.Total.Base)
		}
	}
}

// A lamp whose watts nobody told uses electricity that no sum has.
func TestALampOfUnknownWattsIsNotFree(t *testing.T) {
	for name, change := range map[string]func(*choose.Question){
		"no lamp yet, and one is priced": func(q *choose.Question) {
			q.Lamp, q.Have.Lamp, q.Prices["lamp"], q.Prices["timer"] = choose.Lamp{}, false, 30, 9
		},
		"a lamp of its own, by its light": func(q *choose.Question) { q.Offers[0].Flux = 70 },
	} {
		q := asked(working.NewBook(), 80)
		change(&q)
		o := choose.Compare(working.NewBook(), q).Options[0]
		if o.Costs.Whole || !slices.Contains(o.Unknown, "electricity of a lamp whose watts are not told") {
			t.Errorf("%s: whole %v, unknown %q", name, o.Costs.Whole, o.Unknown)
		}
	}
}

// What is not possible yet is neither hidden nor called possible.
func TestWhatIsNotPossibleYet(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*choose.Question)
		option int // 0 the kit, 1 the build
		says   string
		food   bool
	}{
		{"no adult drills", func(q *choose.Question) { q.Site.AdultDrills = false }, 1, "no adult", true},
		{"no socket", func(q *choose.Question) { q.Site.Socket = choose.No }, 0, "socket", true},
		{"no RCD", func(q *choose.Question) { q.Site.RCD = choose.No }, 1, "RCD", true},
		{"a stop", func(q *choose.Question) { q.Build.Stopped = "the hole is too big" }, 1, "too big", true},
		{"not water for one", func(q *choose.Question) { q.Offers[0].Litres = 2 }, 0, "one plant", true},
		{"more than the shelf bears", func(q *choose.Question) { q.Site.LoadKG = 15 }, 0, "shelf bears", true},
		{"holes that cannot be", func(q *choose.Question) { q.Offers[0].Contradicts = "3 rows of 5 make 15" }, 0, "make 15", true},
		{"second-hand", func(q *choose.Question) { q.Offers[0].Past = choose.Unknown }, 0, "", false},
		{"second-hand by its name", func(q *choose.Question) { q.Offers[0].Name = "Second-hand tub" }, 0, "", false},
		{"second-hand and known", func(q *choose.Question) { q.Offers[0].Name, q.Offers[0].Past = "used tub", choose.Known }, 0, "", true},
		{"nobody may eat", func(q *choose.Question) { q.Site.Kitchen = choose.No }, 1, "", false},
		{"nobody may eat, and nothing has a plug", func(q *choose.Question) {
			q.Site.Kitchen, q.Plant.Aerated, q.Build.Tubs[0].Still = choose.No, false, true
			q.Lamp, q.Have.Lamp = choose.Lamp{}, false
		}, 0, "", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := working.NewBook()
			q := asked(b, 80)
			c.change(&q)
			all := choose.Compare(b, q).Options
			if len(all) != 2 {
				t.Fatalf("%d options", len(all))
			}
			o := all[c.option]
			if o.Possible != (c.says == "") || !strings.Contains(strings.Join(o.NotYet, "; "), c.says) || o.ForFood != c.food {
				t.Errorf("possible %v: %q; for food %v: %q", o.Possible, o.NotYet, o.ForFood, o.NotFood)
			}
		})
	}
}
