package garden

import (
	"context"
	"fmt"

	"rootbell/internal/base/quantity"
	"rootbell/internal/base/working"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/netcup"
	"rootbell/internal/science/shelf"
)

var waterLimitLaw = working.Must(working.Law{
	Symbol: "n", Kind: quantity.Count, Formula: "floor((V-S)/(p+pi/4*b^2*max(h-z, k)))",
	Where: []working.Symbol{
		working.Letter("V", "water up to the fill line", quantity.Volume),
		working.Letter("S", "pushed aside by air stones", quantity.Volume),
		working.Letter("p", "solution a plant", quantity.Volume),
		working.Letter("b", "cup body", quantity.SmallLength),
		working.Letter("h", "fill line", quantity.Length),
		working.Letter("z", "cup bottom", quantity.Length),
		working.Letter("k", "nought", quantity.Length),
	},
	Basis: working.OfTrade, Source: "each plant takes its solution and its cup pushes some aside; the litres a plant wants are a rule of the trade",
})

// plants works out the limits, the number of plants and the lid.
func (t *tubState) plants() error {
	limits := map[string]int{}
	words := map[string]string{}
	if !t.wet {
		return nil // no water, no answer: the stop says why
	}
	t.waterLimit(limits, words)
	region, err := t.lidLimit(limits, words)
	if err != nil {
		return err
	}
	t.shelfLimit(limits, words)
	t.headLimit(limits, words)
	if region != nil {
		t.lampLimit(region, limits, words)
	}
	t.airLimit(limits, words)
	if len(limits) == 0 || region == nil {
		return nil
	}
	p := &Plants{Limits: limits, Moves: words}
	first := true
	for _, name := range LimitNames() {
		if n, ok := limits[name]; ok && (first || n < p.Count) {
			p.Count, p.Binds, first = n, name, false
		}
	}
	t.out.Plants = p
	t.typedCount(p)
	t.out.Crops = t.shared(p.Count)
	if p.Count == 0 {
		return nil
	}
	return t.layOut(region, p)
}

func (t *tubState) waterLimit(limits map[string]int, words map[string]string) {
	zero := t.book.Typed("cups_none", "no cups", "n", quantity.Count, 0, 0)
	stones := t.shape.StonesAside(t.book, t.lines, t.setup, zero)
	body := t.book.Typed("cup_body", "net cup, body under the lip", "b", quantity.SmallLength, t.cup.BodyMM, 0)
	nought := t.book.Typed("floor", "the inside floor", "h", quantity.Length, 0, 0)
	limit := t.book.Work(waterLimitLaw, "limit_nutrient_volume", "plants the water feeds", t.fill, stones, t.growth.litres, body, t.lines.Fill, t.lines.CupBottom, nought)
	limits[ByWater] = int(max(limit.Base, 0))
	more := t.growth.litres.Base*float64(limits[ByWater]+1) + stones.Base
	words[ByWater] = fmt.Sprintf("%s of water would feed %d", quantity.Format(quantity.Volume, more, t.plan.Units), limits[ByWater]+1)
	if depth, ok := t.shape.Depth(quantity.L(quantity.Litre.From(more))); ok {
		words[ByWater] += fmt.Sprintf(", but it would stand %s up the cups", t.mm(max(depth-t.lines.CupBottom.Base, 0)))
	} else {
		words[ByWater] += ", more than the tub holds"
	}
	t.refills()
}

// refills says whether the litres a plant mean filling once or topping up.
func (t *tubState) refills() {
	if t.growth.litres.Base >= t.growth.once.Base {
		t.note("litres-once", t.field+".litres_per_plant", fmt.Sprintf("%s: %s a plant means filled once: a plant wants %s when nobody tops up.", t.name, t.says(t.growth.litres), t.says(t.growth.once)),
			"Look at the line on every open day all the same: a hot dry room drinks nearly twice as much.")
		return
	}
	t.note("litres-with-refills", t.field+".litres_per_plant", fmt.Sprintf("%s: %s a plant means topping up on every open day. Filled once and left, a plant wants %s.", t.name, t.says(t.growth.litres), t.says(t.growth.once)),
		"Published fillings run from 1.0 to 2.5 US gal (3.8 to 9.5 L) a plant; the trade's 0.75 US gal (2.84 L) has no source and is the lowest figure about.")
}

// lidLimit is how many holes the lid takes at the wanted spacing.
func (t *tubState) lidLimit(limits map[string]int, words map[string]string) (*lidRegion, error) {
	region := t.region()
	if region == nil {
		limits[ByLid] = 0
		words[ByLid] = "a bigger lid, a smaller hole or fewer keep-clear shapes"
		return nil, nil
	}
	wanted := max(t.growth.spacing.Base, region.margins.Apart.Base)
	most, err := t.most(region, wanted-spacingSlackMM, limits[ByWater])
	if err != nil {
		return nil, err
	}
	limits[ByLid] = most
	t.book.Found("limit_lid", "holes the lid takes", "n", quantity.Count, float64(most),
		fmt.Sprintf("search: holes laid out with at least %s from centre to centre; measure the least distance of the layout to check", t.mm(wanted)))
	words[ByLid] = fmt.Sprintf("closer than %s, or a bigger lid", t.mm(wanted))
	if t.growth.spacing.Base < region.margins.Apart.Base {
		t.warn("closer-than-safe", t.field+".spacing.between", fmt.Sprintf("%s: %s between centres would leave too little plastic or let the lips touch; %s is taken.", t.name, t.says(t.growth.spacing), t.says(region.margins.Apart)), "Use smaller cups to plant closer.")
	}
	return region, nil
}

// spacingSlackMM lets a layout that keeps the wanted spacing but for rounding
// to a hundredth of a millimetre count.
const spacingSlackMM = 0.02

// most is how many holes keep the wanted spacing, those that are there among
// them. Where some of those stand too close, the most of them that do not are
// counted; more are added only where there are too few for the water.
func (t *tubState) most(r *lidRegion, wanted float64, fed int) (int, error) {
	if len(r.fixed) < 2 || r.Remeasure(r.fixed).Spacing >= wanted {
		found, err := r.MostAt(t.ctx, wanted, t.search(r))
		return max(found.Count, len(r.fixed)), ended(t.ctx, err)
	}
	for k := len(r.fixed) - 1; k > 0; k-- {
		chosen, err := lid.Choose(t.ctx, r.fixed, k, nil)
		if t.ctx.Err() != nil {
			return 0, t.ctx.Err()
		}
		if err != nil || k > 1 && chosen.Spacing < wanted {
			continue
		}
		if len(r.fixed) >= fed {
			return k, nil
		}
		keep := t.search(r)
		keep.Fixed = nil
		for _, i := range chosen.Holes {
			keep.Fixed = append(keep.Fixed, r.fixed[i])
		}
		found, err := r.MostAt(t.ctx, wanted, keep)
		return max(found.Count, k), ended(t.ctx, err)
	}
	return len(r.fixed), nil // more holes than the choice takes
}

// ended is the context's own end; another error leaves what was found.
func ended(ctx context.Context, err error) error {
	if err == nil {
		return nil
	}
	return ctx.Err()
}

func (t *tubState) shelfLimit(limits map[string]int, words map[string]string) {
	if !t.bay.known {
		return
	}
	brim := t.book.In("brim")
	if h := t.setup.StoneHeightMM; h != nil {
		brim.Typed("stone_height_typed", "height of the air stone", "s", quantity.Length, *h, 0)
	}
	load := t.shape.Load(brim, t.lines, t.setup, t.fill, t.book.Typed("cups_none", "no cups", "n", quantity.Count, 0, 0))
	n := shelf.Plants(t.book, t.bay.allowed, t.bay.lengths[t.index], t.bay.all, load.Mass, netcup.WetMass(t.assessor.book), t.growth.mass)
	limits[ByShelf] = int(min(n.Base, 200))
	words[ByShelf] = "a stronger shelf, the floor, or less water"
}

func (t *tubState) headLimit(limits map[string]int, words map[string]string) {
	fits, known, room := t.headroom()
	if !known {
		return
	}
	words[ByHeadroom] = "a shorter crop, a smaller harvest_mass, or a higher bay"
	if fits {
		return
	}
	limits[ByHeadroom] = 0
	left := "there is no room at all"
	if room.Base > 0 {
		left = "there is room for " + t.says(room)
	}
	t.warn("no-headroom", "shelf.clear_height", fmt.Sprintf("%s: the crop stands %s over the lid at harvest, and %s.", t.name, t.says(t.growth.height), left),
		"Harvest smaller (harvest_mass), choose a shorter crop, or use a higher bay. Leaves that touch a lamp scorch.")
}

// typedCount takes the plan's number where it names one, and warns.
func (t *tubState) typedCount(p *Plants) {
	n, field := t.wanted()
	if n == 0 {
		if p.Count == 0 {
			t.stop("no-plant", t.field, fmt.Sprintf("%s: no plant at all, because of the %s.", t.name, p.Binds), "What would help: "+p.Moves[p.Binds]+".")
		}
		return
	}
	for _, name := range LimitNames() {
		if limit, ok := p.Limits[name]; ok && n > limit {
			t.warn("over-limit", field, fmt.Sprintf("%s: %d plants are more than the %d that the %s allows.", t.name, n, limit, name), "Plant fewer, or look after the tub more often.")
		}
	}
	p.Count = n
}
