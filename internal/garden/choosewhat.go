package garden

import (
	"fmt"
	"strings"

	"rootbell/internal/base/facts"
	"rootbell/internal/base/plane"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/choose"
	"rootbell/internal/science/crop"
	"rootbell/internal/science/lid"
)

// question puts the plan into plain values. holes are the places of each
// offer's holes.
func (a *assessor) question(out *Assessment) (q choose.Question, holes map[int][]ChooseHole, err error) {
	s := a.plan.School
	q = choose.Question{
		Crops: s.CropsPlanned.Value, Prices: map[string]float64{}, Plant: a.plantOf(out),
		Site: choose.Site{Socket: answerOf(s.Site.Socket), RCD: answerOf(s.Site.RCD), Kitchen: answerOf(s.Site.Kitchen), AdultDrills: s.AdultDrills.Value},
		Have: choose.Have{
			PH: a.plan.Tools.PH != "" && a.plan.Tools.PH != "none", EC: a.plan.Tools.EC == "meter",
			Feed: len(a.plan.Fertilisers) > 0, Lamp: len(a.plan.Lamps) > 0,
		},
		Build: a.buildOf(out),
	}
	// From the pump to the lid and down, with a drip loop: common practice.
	q.Tube, q.TubeUnit = 2, "m"
	if a.plan.Units == quantity.US {
		q.Tube, q.TubeUnit = 6, "ft"
	}
	if a.bay.known {
		q.Site.LoadKG = a.bay.allowed.Base
	}
	for item, price := range a.plan.Prices {
		q.Prices[item] = float64(price.Value)
	}
	for _, l := range a.plan.Lamps {
		q.Lamp.Watts += quantity.Watt.From(l.Power.Value.Base())
		q.Lamp.Hours = max(q.Lamp.Hours, hoursLit(l))
	}
	holes = map[int][]ChooseHole{}
	for i := range a.plan.Offers {
		o, places := a.offerOf(i)
		q.Offers = append(q.Offers, o)
		holes[i] = places
	}
	return q, holes, a.ctx.Err()
}

func answerOf(w plan.Answer) choose.Answer {
	switch w {
	case plan.AnswerYes:
		return choose.Yes
	case plan.AnswerNo:
		return choose.No
	}
	return choose.Ask
}

// hoursLit is how long a lamp is lit in a day, over midnight too; 0 where the
// plan does not say.
func hoursLit(l plan.Lamp) float64 {
	if !l.Lit[0].Given || !l.Lit[1].Given {
		return 0
	}
	const day = 24 * 60
	return float64((int(l.Lit[1].Value)-int(l.Lit[0].Value)+day-1)%day+1) / 60
}

// plantOf is the plant that offers are counted with: that of the first tub.
func (a *assessor) plantOf(out *Assessment) choose.Need {
	t := out.states[0]
	var names []string
	for _, g := range t.growth.each {
		names = append(names, strings.ToLower(g.Name))
	}
	c := crop.Named(names[0])
	days, ok := crop.GrowthFacts.Find(facts.ID("growth." + strings.ReplaceAll(c.Name, " ", "_") + ".days.high"))
	if !ok {
		days, _ = crop.GrowthFacts.Find(facts.ID("growth." + strings.ReplaceAll(crop.Default, " ", "_") + ".days.high"))
	}
	portion := a.plan.School.Meal.Portion
	grams := 20.0 // as plan.Meal says where it is left out
	if portion.Set() {
		grams = quantity.Gram.From(portion.Value.Base())
	}
	b := a.book.In("choose")
	return choose.Need{
		Crop: strings.Join(names, " and "), Litres: t.growth.litres, Spacing: t.growth.spacing, Mass: t.growth.mass,
		Days:    b.Fact("days", "days in the tub, "+c.Name, "d", quantity.Time, quantity.Day.Base(days.Value), days),
		Nursery: c.NurseryDays(), Aerated: t.typed.Method != "still",
		Portion: b.Typed("portion", "leaves for one", "g", quantity.SmallMass, quantity.Gram.Base(grams), 0),
	}
}

// buildOf is the garden of the plan; nil where no tub could be worked out.
func (a *assessor) buildOf(out *Assessment) *choose.Build {
	b := &choose.Build{Items: out.Shopping}
	for i, t := range out.Tubs {
		p := a.plan.Tubs[i]
		if p.Past == "unknown" && b.Past == "" {
			b.Past = t.Name
		}
		solution, ok := a.book.Find("tubs." + Slug(t.Name) + ".volume_solution")
		if t.Plants == nil || t.Plants.Count == 0 || !ok {
			continue
		}
		stones, _ := a.book.Find("tubs." + Slug(t.Name) + ".stones")
		b.Plants += t.Plants.Count
		b.Tubs = append(b.Tubs, choose.Tub{Name: t.Name, Plants: t.Plants.Count, Solution: solution, Mass: out.states[i].growth.mass, Stones: int(stones.Base), Still: p.Method == "still"})
	}
	out.Findings = a.findings
	for i := range out.Tubs {
		if stop := out.StopOf(i); stop != "" && b.Stopped == "" {
			b.Stopped = strings.TrimSuffix(stop, ".")
		}
	}
	if b.Plants == 0 {
		return nil
	}
	return b
}

// offerOf is one offer of the plan, with its holes found and checked.
func (a *assessor) offerOf(i int) (choose.Offer, []ChooseHole) {
	p := &a.plan.Offers[i]
	out := choose.Offer{
		Name: p.Name, Price: priced(p.Price), Delivery: priced(p.Delivery), PerCrop: priced(p.PerCrop), Refill: priced(p.Refills),
		Months: p.Months.Value, Sites: p.Sites.Value, Includes: p.Includes, Lacks: p.Lacks,
		Watts: quantity.Watt.From(p.Power.Value.Base()), Flux: quantity.MicromolePerSecond.From(p.Flux.Value.Base()),
		Litres: quantity.Litre.From(p.Volume.Value.Base()), Past: map[string]choose.Past{"known": choose.Known, "unknown": choose.Unknown}[p.Past],
	}
	for _, m := range p.Meters {
		out.PH, out.EC = out.PH || m == "pH", out.EC || m == "EC"
	}
	places := patternOf(p)
	field := fmt.Sprintf("offers[%d]", i)
	if what, hint := contradiction(p, places); what != "" {
		a.stop("offer-holes", field, p.Name+": "+what+".", hint)
		out.Contradicts = what
		return out, nil
	}
	if len(places) == 0 {
		return out, nil
	}
	out.Sites = len(places)
	if len(places) > mostChosen {
		a.note("offer-many-holes", field, fmt.Sprintf("%s has %d holes; which of them to use is worked out for %d at most, so only their number is counted.", p.Name, len(places), mostChosen), "Use every second or third hole of each row, and cap the others.")
		return out, nil
	}
	out.Holes = a.holesOf(places)
	return out, places
}

func priced(c plan.Cash) *float64 {
	if !c.Set() {
		return nil
	}
	v := float64(c.Value)
	return &v
}

// mostChosen is how many holes the search chooses from.
const mostChosen = 64

// patternOf is where the holes of an offer lie: row by row from the lower left,
// numbered from 1.
func patternOf(p *plan.Offer) []ChooseHole {
	var out []ChooseHole
	for i, h := range p.Holes {
		out = append(out, ChooseHole{N: i + 1, XMM: float64(h[0].Value), YMM: float64(h[1].Value)})
	}
	rows, columns, pitch := p.Pattern.Rows.Value, p.Pattern.Columns.Value, float64(p.Pattern.Pitch.Value)
	for r := range rows {
		for c := range columns {
			out = append(out, ChooseHole{N: len(out) + 1, XMM: float64(c) * pitch, YMM: float64(r) * pitch})
		}
	}
	return out
}

// contradiction is what in an offer's holes cannot be, and what to do.
func contradiction(p *plan.Offer, places []ChooseHole) (what, hint string) {
	if n := len(places); n > 0 && p.Sites.Given && p.Sites.Value != n {
		how := "its list of holes has"
		if p.Pattern.Rows.Given {
			how = fmt.Sprintf("%d rows of %d make", p.Pattern.Rows.Value, p.Pattern.Columns.Value)
		}
		return fmt.Sprintf("it is said to have %d holes, and %s %d", p.Sites.Value, how, n), "Count the holes of the lid: sites, pattern or holes is wrong."
	}
	for i, h := range places {
		for _, other := range places[:i] {
			if (plane.Point{X: h.XMM, Y: h.YMM}).To(plane.Point{X: other.XMM, Y: other.YMM}) < 1 {
				return fmt.Sprintf("holes %d and %d lie in the same place", other.N, h.N), "Measure the two again: offers, holes."
			}
		}
	}
	return "", ""
}

// holesOf lets the choice of holes ask the search, each number once.
func (a *assessor) holesOf(places []ChooseHole) *choose.Holes {
	points := make([]plane.Point, len(places))
	for i, h := range places {
		points[i] = plane.Point{X: h.XMM, Y: h.YMM}
	}
	found := map[int]lid.Chosen{}
	return &choose.Holes{Count: len(places), At: func(k int) ([]int, float64, bool) {
		c, asked := found[k]
		if !asked {
			var err error
			if c, err = lid.Choose(a.ctx, points, k, nil); err != nil {
				return nil, 0, false // the context ended, which choose tells
			}
			found[k] = c
		}
		use := make([]int, len(c.Holes))
		for i, h := range c.Holes {
			use[i] = places[h].N
		}
		return use, c.Spacing, c.Proved
	}}
}
