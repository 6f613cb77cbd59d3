package choose

import (
	"strconv"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
)

// Comparison is the answer: every option with its reasons, and what would
// change their order.
type Comparison struct {
	Crops   int
	Crop    string
	Options []Option // the offers in the plan's order, then the build
	Senses  []Sense
	Sizes   []Size
	Need    Need
	Share   working.Number // of the plants, that is harvested
}

// Build is the option that the school builds itself; nil where no tub could be
// worked out.
func (c *Comparison) Build() *Option {
	for i := range c.Options {
		if c.Options[i].Built {
			return &c.Options[i]
		}
	}
	return nil
}

// Compare works out every option and enters its numbers in the book.
func Compare(b *working.Book, q Question) Comparison {
	b = b.In("choose")
	usual := Facts.Get(factChooseCrops)
	crops := b.Typed("crops", "crops, one after the other", "k", quantity.Count, float64(q.Crops), 0)
	if q.Crops == 0 {
		q.Crops = int(usual.Value)
		crops = b.Fact("crops_usual", "crops, one after the other", "k", quantity.Count, usual.Value, usual)
	}
	harvested, trim := Facts.Get(factChooseHarvested), Facts.Get(factFoodTrimLoss)
	n := cropNumbers{
		crops:  crops,
		share:  b.Fact("harvested_share", "plants that a class brings to the harvest", "h", quantity.Share, harvested.Value/100, harvested),
		trim:   b.Fact("trim", "lost in trimming", "t", quantity.Share, trim.Value/100, trim),
		nought: b.Typed("none", "nought", "a", quantity.Count, 0, 0),
	}
	n.cycle = b.Work(cycleLaw, "cycle", "days of a crop, from sowing on", q.Plant.Days,
		b.Typed("nursery", "days in the nursery", "b", quantity.Time, quantity.Day.Base(q.Plant.Nursery), 0))
	out := Comparison{Crops: q.Crops, Crop: q.Plant.Crop, Need: q.Plant, Share: n.share}
	for i := range q.Offers {
		out.Options = append(out.Options, q.offer(b.In("offer_"+strconv.Itoa(i+1)), i, n))
	}
	if q.Build != nil {
		out.Options = append(out.Options, q.build(b.In("build"), n))
	}
	out.weigh(b, &q)
	if q.Build != nil {
		out.Sizes = sizes(b.In("sizes"), &q)
	}
	return out
}

var cycleLaw = law("d", quantity.Time, "a+b", sum, working.Letter("a", "days in the tub", quantity.Time), working.Letter("b", "days in the nursery", quantity.Time))

// NoiseLimitDBA is how loud an empty classroom may be.
func NoiseLimitDBA() float64 { return Facts.Get(factNoiseClassroom).Value }

// CutLeavesC is how warm cut leaves may be, in °C.
func CutLeavesC() float64 { return Facts.Get(factFoodCold).Value }
