package garden

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/choose"
)

// moneyOf writes an amount in the plan's currency.
func moneyOf(p *plan.Plan, v float64) string { return (&Assessment{Plan: p}).Money(v) }

// LackWords is one thing that is lacking: 'caps for the empty holes (10)'.
func LackWords(t choose.Thing) string {
	if t.Count > 1 && t.Item == "cap" || t.Item == "towel" {
		return fmt.Sprintf("%s (%d)", t.What, t.Count)
	}
	return t.What
}

// Cost writes one of an option's amounts; 'at least' stands before what is not
// wholly priced, and '–' for what is not known.
func (o *ChooseOffer) Cost(a *Assessment, v *float64) string {
	switch {
	case v == nil:
		return "–"
	case !o.Priced:
		return "at least " + a.Money(*v)
	}
	return a.Money(*v)
}

// Answer is the decision in two sentences: what an offer really feeds, and what
// a harvested plant costs beside the build. It names no winner.
func (c *Choose) Answer(a *Assessment) (bold, rest string) {
	var kits []string
	var costs []string
	for i := range c.Offers {
		o := &c.Offers[i]
		if !o.Built {
			kits = append(kits, o.feedsWords())
		}
		if !o.Tells() && len(o.Budget) > 0 {
			costs = append(costs, fmt.Sprintf("%s not known, %d prices are missing", o.Name, len(o.Unknown)))
		} else if o.PerHarvested != nil {
			costs = append(costs, o.Name+" "+o.Cost(a, o.PerHarvested)+o.missingWords())
		}
	}
	if len(kits) == 0 {
		bold = "No offer is in the plan yet."
		rest = "Copy one from its box or its page: price, holes, water. It is then set beside building."
		return bold, rest
	}
	bold = strings.Join(kits, " ")
	if slices.ContainsFunc(c.Offers, func(o ChooseOffer) bool { return o.Tells() && o.PerHarvested != nil }) {
		rest = "For each plant harvested, over " + strconv.Itoa(c.Crops) + " crops: " + strings.Join(costs, "; ") + "."
	} else {
		rest = "No price is in the plan yet, so nothing is said of money."
	}
	return bold, rest + " The price alone decides nothing: the reasons stand below."
}

// Tells tells whether an option's sums say enough to be read: not where an
// offer's own price is missing, nor where most of the build has none.
func (o *ChooseOffer) Tells() bool {
	told := 0
	for _, l := range o.Budget {
		if l.Cost != nil {
			told++
		} else if l.Item == "offer" {
			return false
		}
	}
	return o.Total != nil && (!o.Built || 2*told > len(o.Budget))
}

// missingWords is how many things have no price, behind an amount.
func (o *ChooseOffer) missingWords() string {
	switch n := len(o.Unknown); n {
	case 0:
		return ""
	case 1:
		return " (1 price is missing)"
	default:
		return fmt.Sprintf(" (%d prices are missing)", n)
	}
}

// Counted tells whether it is known how many plants an option has room and
// water for.
func (o *ChooseOffer) Counted() bool { return o.Built || o.Option.Limits.Water >= 0 && o.Sites > 0 }

// feedsWords is how many plants an offer feeds, in a sentence.
func (o *ChooseOffer) feedsWords() string {
	switch {
	case o.Option.Contradicts != "":
		return upper(o.Name) + ": " + o.Option.Contradicts + ", so its plants are not known."
	case !o.Counted():
		return upper(o.Name) + ": holes or water are not told, so its plants are not known."
	case o.PlantSites == 0:
		return upper(o.Name) + ": its water does not feed one plant."
	case o.PlantSites >= o.Sites:
		return fmt.Sprintf("%s: plant all %d holes.", upper(o.Name), o.Sites)
	}
	return fmt.Sprintf("%s: plant %d of its %d holes.", upper(o.Name), o.PlantSites, o.Sites)
}

// Feeds says how an offer's plants were counted.
func (o *ChooseOffer) Feeds(a *Assessment) string {
	l := o.Option.Limits
	if o.Built {
		return counted(o.PlantSites, "plant", "plants") + ", as the plan has it."
	}
	if o.Option.Contradicts != "" {
		return "Its plants are not known: " + o.Option.Contradicts + "."
	}
	if !o.Counted() || o.LitresASite == nil {
		return "How many holes it has, or how much water, is not told yet, so its plants are not known."
	}
	volume := quantity.Volume.WithDecimals(2, 3)
	text := fmt.Sprintf("%s of solution for each hole; a plant of %s wants %s. The water feeds %d.",
		quantity.Format(volume, quantity.Litre.Base(*o.LitresASite), a.Plan.Units), a.Choose.Crop, quantity.Format(volume, a.Choose.Need.Litres.Base, a.Plan.Units), l.Water)
	if o.Binds == choose.ByRoom {
		text += fmt.Sprintf(" Of its holes no more than %d keep the distance of %s that the crop wants.", l.Room, quantity.Format(quantity.Length, a.Choose.Need.Spacing.Base, a.Plan.Units))
	}
	return text
}

// Which says which holes to use and which to cap; empty where that is not known.
func (o *ChooseOffer) Which(a *Assessment) string {
	switch {
	case len(o.UseHoles) == 0 && o.PlantSites > 0 && !o.Built && o.PlantSites < o.Sites:
		return fmt.Sprintf("Where its holes lie is not told, so this is a count only: plant %d, as far apart as you can, and cap %d.", o.PlantSites, o.Sites-o.PlantSites)
	case len(o.UseHoles) == 0 && o.PlantSites > 1 && !o.Built:
		return fmt.Sprintf("Where its holes lie is not told, so nobody knows whether they keep the distance of %s that the crop wants. Measure from middle to middle.", quantity.Format(quantity.Length, a.Choose.Need.Spacing.Base, a.Plan.Units))
	case len(o.UseHoles) == 0:
		return ""
	case len(o.CapHoles) == 0:
		return "Every hole is used."
	}
	text := fmt.Sprintf("Use %s. Cap the others.", holesWords(o.UseHoles))
	if o.LeastMM != nil {
		text += fmt.Sprintf(" No two in use are closer than %s", quantity.Format(quantity.Length, *o.LeastMM, a.Plan.Units))
		if o.Proved {
			text += fmt.Sprintf(", and no other choice of %d stands further apart: that is proved.", o.PlantSites)
		} else {
			text += ", the best that was found."
		}
	}
	return text
}

func holesWords(holes []int) string {
	var words []string
	for _, n := range holes {
		words = append(words, strconv.Itoa(n))
	}
	if len(words) == 1 {
		return "hole " + words[0]
	}
	return "holes " + listed(words)
}

// reasons gives each option its reasons, for and against.
func (a *assessor) reasons(c *Choose) {
	for i := range c.Offers {
		o := &c.Offers[i]
		if o.Built {
			a.buildReasons(o)
		} else {
			a.offerReasons(o)
		}
		for _, why := range o.NotYet {
			o.Against = append(o.Against, "Not possible yet: "+why+".")
		}
		if o.NotFood != "" {
			o.Against = append(o.Against, "Not for food: "+o.NotFood+".")
		}
		if n := len(o.Unknown); n > 0 {
			o.Against = append(o.Against, fmt.Sprintf("%s no price yet, so it costs more than what is counted.", countHas(n, "thing")))
		}
	}
	a.compared(c)
}

func countHas(n int, noun string) string {
	if n == 1 {
		return "1 " + noun + " has"
	}
	return fmt.Sprintf("%d %ss have", n, noun)
}

func (a *assessor) offerReasons(o *ChooseOffer) {
	p := a.plan.Offers[o.Index]
	o.For = append(o.For, "Nothing has to be drilled.")
	if len(p.Includes) > 0 {
		o.For = append(o.For, "It comes with "+listed(p.Includes)+".")
	}
	if p.Months.Value > 0 {
		o.For = append(o.For, "Feed for "+counted(p.Months.Value, "month", "months")+" comes with it.")
	}
	if p.Power.Set() || p.Flux.Set() {
		o.For = append(o.For, "It has a lamp of its own.")
	}
	switch {
	case o.PlantSites > 0 && o.PlantSites >= o.Sites:
		o.For = append(o.For, "Its water feeds a plant in every hole.")
	case o.PlantSites > 0:
		why := "feeds " + counted(o.PlantSites, "plant", "plants")
		if o.Binds == choose.ByRoom {
			why = "no more than " + strconv.Itoa(o.PlantSites) + " of them stand far enough apart"
		}
		o.Against = append(o.Against, fmt.Sprintf("It has %s and %s: %s.", counted(o.Sites, "hole", "holes"), why, counted(o.Sites-o.PlantSites, "hole is capped", "holes are capped")))
	}
	if n := len(o.Lacks); n > 0 {
		o.Against = append(o.Against, fmt.Sprintf("It lacks %s.", listed(o.Lacks)))
	}
	if p.Refills.Set() {
		o.Against = append(o.Against, "It wants refills: ask whether anybody else sells what fits.")
	}
	o.Against = append(o.Against, "Its holes stay where they are, whatever is grown next.")
}

func (a *assessor) buildReasons(o *ChooseOffer) {
	o.For = append(o.For,
		"Holes and water are made for the crop, and every number of it can be checked with a pencil.",
		"Each part can be bought again by itself.",
		"Measuring, laying out and testing it are lessons.")
	o.Against = append(o.Against, counted(o.PlantSites, "hole is", "holes are")+" drilled, by an adult, and a day goes into the wet test.")
	if n := len(o.Lacks); n > 0 {
		o.Against = append(o.Against, fmt.Sprintf("Beside the shopping list it wants %s.", listed(o.Lacks)))
	}
}

// compared sets what each offer costs beside the build, where both are wholly
// priced.
func (a *assessor) compared(c *Choose) {
	build := -1
	for i := range c.Offers {
		if c.Offers[i].Built {
			build = i
		}
	}
	if build < 0 {
		return
	}
	b := &c.Offers[build]
	for i := range c.Offers {
		o := &c.Offers[i]
		if o.Built || o.PerHarvested == nil || b.PerHarvested == nil || !o.Priced || !b.Priced {
			continue
		}
		gap := quantity.Round(*o.PerHarvested-*b.PerHarvested, 2)
		less, more := o, b
		if gap > 0 {
			less, more = b, o
		}
		if gap == 0 {
			continue
		}
		words := moneyOf(a.plan, math.Abs(gap))
		less.For = append(less.For, fmt.Sprintf("A harvested plant costs %s less than with '%s'.", words, more.Name))
		more.Against = append(more.Against, fmt.Sprintf("A harvested plant costs %s more than with '%s'.", words, less.Name))
	}
}

// senseOf says what would change the order of the build and an offer.
func (a *assessor) senseOf(c *choose.Comparison, s *choose.Sense) ChooseSense {
	o := c.Options[s.Other]
	out := ChooseSense{Kind: s.Kind, Offer: o.Name, Key: s.Turn.Key, Turn: s.Turn.Show(a.plan.Units).Value, Now: s.Now}
	if s.Kind == choose.Share {
		out.Turn = quantity.Round(s.Turn.Base, 3) // a share is 0 to 1, as Now is
	}
	b := c.Build()
	money := func(v float64) string { return moneyOf(a.plan, v) }
	switch s.Kind {
	case choose.Even:
		first, later := o.Name, b.Name
		if b.Costs.First.Base < o.Costs.First.Base {
			first, later = later, first
		}
		out.Says = fmt.Sprintf("After %s crops both have cost the same in all. Before that '%s' is the cheaper, after it '%s'. Counted are %d.", quantity.FormatNumber(s.Turn.Base, 1), first, later, c.Crops)
	case choose.Price:
		if s.Turn.Base <= 0 {
			out.Says = fmt.Sprintf("Even if '%s' itself cost nothing, a harvested plant from it would cost more than from the build.", o.Name)
			break
		}
		out.Says = fmt.Sprintf("At a price of %s for '%s' a harvested plant would cost the same in both. It is %s.", money(s.Turn.Base), o.Name, money(s.Now))
	case choose.Share:
		if s.Turn.Base > 1 {
			out.Says = fmt.Sprintf("Even with every plant harvested, the build does not come to the price of '%s' for each.", o.Name)
			break
		}
		out.Says = fmt.Sprintf("If the class brought %s of the built tubs' plants to the harvest, and not %s, a plant would cost the same as from '%s'.", percent(s.Turn.Base), percent(s.Now), o.Name)
	case choose.Room:
		least, besides := "", ""
		if !o.Costs.Whole {
			least, besides = "at least ", fmt.Sprintf(" The prices that '%s' lacks come on top.", o.Name)
		}
		out.Says = fmt.Sprintf("What has no price yet in the build may cost %s%s together until a harvested plant costs as much as from '%s'.%s", least, money(s.Turn.Base), o.Name, besides)
	}
	return out
}

func percent(share float64) string { return quantity.Format(quantity.Share, share, quantity.Metric) }
