package choose

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Sense is one thing that would change the order of two options, with the
// value at which a harvested plant costs the same in both.
type Sense struct {
	Kind  string // one of the words below
	Other int    // the option, by its place in the comparison, beside the build
	Turn  working.Number
	Now   float64 // as it stands, in the number's base units
}

// What a Sense is about.
const (
	Even  = "even"  // crops after which both have cost the same in all
	Price = "price" // of the offer
	Share = "share" // of the build's plants, that is harvested
	Room  = "room"  // for what has no price yet
)

// weigh sets every offer beside the build.
func (c *Comparison) weigh(b *working.Book, q *Question) {
	build := c.Build()
	if build == nil || build.Costs.PerHarvest.Key == "" {
		return
	}
	for i := range c.Options {
		o := &c.Options[i]
		if o.Built || o.Costs.PerHarvest.Key == "" {
			continue
		}
		c.pair(b.In("beside_"+o.Key[len("choose."):]), build, o, i, q)
	}
}

func (c *Comparison) pair(b *working.Book, build, o *Option, i int, q *Question) {
	mine, other := build.Costs, o.Costs
	add := func(kind string, now float64, turn working.Number) {
		if turn.Known() && (turn.Base > 0 || kind == Price) { // a price under nought says that even a gift is dearer
			c.Senses = append(c.Senses, Sense{kind, i, turn, now})
		}
	}
	if !mine.Whole || !other.Whole {
		if !mine.Whole {
			add(Room, 0, b.Work(roomLaw, "room", "room for what has no price yet", other.PerHarvest.Number, build.Harvest, mine.Total.Number))
		}
		return
	}
	if mine.Running.Base != other.Running.Base {
		add(Even, float64(c.Crops), b.Work(evenLaw, "even", "crops after which both have cost the same", mine.First.Number, other.First.Number, other.Running.Number, mine.Running.Number))
	}
	if p := q.Offers[o.Offer].Price; p != nil {
		price := b.Typed("price", "price of "+o.Name, "P", quantity.Money, *p, 0)
		add(Price, *p, b.Work(priceLaw, "price_even", "price at which a harvested plant costs the same", price, mine.PerHarvest.Number, o.Harvest, other.Total.Number))
	}
	if other.PerHarvest.Base > 0 {
		add(Share, c.Share.Base, b.Work(shareLaw, "share_even", "share harvested at which a plant costs the same", mine.Total.Number, other.PerHarvest.Number, build.Planted))
	}
}
