package garden

import (
	"fmt"
	"slices"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/school/choose"
	"rootbell/internal/school/term"
)

// Permission is one thing that somebody at the school decides on: the facts,
// who decides, and which rule is theirs. It permits nothing by itself.
type Permission struct {
	Head  string
	Facts []string
	Who   string // decides
	Ask   string
}

// Permissions are what to ask before anything is bought, for an assessment that
// was asked for StageChoose.
func (a *Assessment) Permissions() []Permission {
	return []Permission{a.electricity(), a.load(), a.spill(), a.chemicals(), a.noise(), a.drilling(), a.eating(), a.holidays()}
}

// build is the garden of the plan among the offers; nil where none could be
// worked out.
func (c *Choose) build() *ChooseOffer {
	for i := range c.Offers {
		if c.Offers[i].Built {
			return &c.Offers[i]
		}
	}
	return nil
}

func (a *Assessment) shown(key string) (string, bool) {
	n, ok := a.numberOf(key)
	if !ok {
		return "", false
	}
	return quantity.Format(n.Kind, n.Base, a.Plan.Units), true
}

func (a *Assessment) electricity() Permission {
	p := Permission{
		Head: "Socket and electricity", Who: "the school's electrician or caretaker",
		Ask: "Is there a fixed socket within reach, and is it protected by an RCD (GFCI)? The local electrical code and a licensed electrician decide, not this paper.",
	}
	if b := a.Choose.build(); b != nil {
		p.Facts = append(p.Facts, a.powered(b.Key)...)
		if b.KWhACrop != nil {
			how := "That is about"
			if n, ok := a.numberOf(b.Key + ".lamp_watts"); ok && n.Base == 0 {
				how = "Without a lamp that is about"
			}
			p.Facts = append(p.Facts, fmt.Sprintf("%s %s kWh in the %s of a crop in the tub.", how, quantity.FormatNumber(*b.KWhACrop, 1), quantity.Format(quantity.Time.WithDecimals(0, 0), a.Choose.Need.Days.Base, a.Plan.Units)))
		}
	}
	p.Facts = append(p.Facts, "Water stands beside it: every cord hangs in a drip loop, lower than its plug, and no extension lead lies on the floor. Plugs are touched with dry hands, by adults.")
	site := a.Plan.School.Site
	const without = "Without it nothing is switched on."
	p.Facts = append(p.Facts, siteWords("A socket within reach", string(site.Socket), without), siteWords("An RCD (GFCI) on it", string(site.RCD), without))
	return p
}

// powered is what lamps and pumps take, of those there are.
func (a *Assessment) powered(key string) []string {
	var out []string
	if n, ok := a.numberOf(key + ".lamp_watts"); !ok || n.Base == 0 {
		out = append(out, "What a lamp takes is not known yet: its label says it.")
	} else {
		out = append(out, fmt.Sprintf("Lamps take %s while they are lit.", quantity.Format(n.Kind, n.Base, a.Plan.Units)))
	}
	if n, ok := a.numberOf(key + ".pump_watts"); ok && n.Base > 0 {
		out = append(out, fmt.Sprintf("Air pumps take about %s day and night.", quantity.Format(n.Kind, n.Base, a.Plan.Units)))
	}
	return out
}

// pumps are how many tubs of the plan have an air pump.
func (a *Assessment) pumps() int {
	n := 0
	for i := range a.Tubs {
		if a.Plan.Tubs[i].Method != "still" {
			n++
		}
	}
	return n
}

// siteWords is what the plan says of something at the place, and what follows
// where it says no.
func siteWords(what, answer, without string) string {
	switch answer {
	case "yes":
		return what + ": the plan says yes."
	case "no":
		return what + ": the plan says no. " + without
	}
	return what + ": not known yet."
}

func (a *Assessment) load() Permission {
	p := Permission{Head: "Load on the shelf", Who: "the caretaker", Ask: "Does the shelf or bench bear this, and is it fixed so that it cannot tip?"}
	for _, t := range a.Tubs {
		if mass, ok := a.shown("tubs." + Slug(t.Name) + ".mass_grown"); ok {
			p.Facts = append(p.Facts, fmt.Sprintf("%s weighs %s at harvest, with its plants.", t.Name, mass))
		} else if mass, ok := a.shown("tubs." + Slug(t.Name) + ".mass_filled"); ok {
			p.Facts = append(p.Facts, fmt.Sprintf("%s weighs %s filled.", t.Name, mass))
		}
	}
	if allowed, ok := a.shown("shelf.allowed"); ok {
		p.Facts = append(p.Facts, "By the maker's rating "+allowed+" may stand in the middle of this shelf.")
	} else {
		p.Facts = append(p.Facts, "The shelf's rating is not known. Until it is, the tubs stand on the floor or on a bench that the caretaker names.")
	}
	for i := range a.Choose.Offers {
		if mass, ok := a.shown(a.Choose.Offers[i].Key + ".mass_water"); ok {
			p.Facts = append(p.Facts, fmt.Sprintf("The water of '%s' alone weighs %s.", a.Choose.Offers[i].Name, mass))
		}
	}
	p.Facts = append(p.Facts, "A filled tub is never lifted or dragged. It is filled and emptied where it stands.")
	return p
}

func (a *Assessment) spill() Permission {
	p := Permission{Head: "If a tub leaks", Who: "the caretaker", Ask: "May so much water run out here, over which floor, and what lies below?"}
	most, name := 0.0, ""
	for _, t := range a.Tubs {
		if t.VolumeSolution != nil && *t.VolumeSolution > most {
			most, name = *t.VolumeSolution, t.Name
		}
	}
	if most > 0 {
		p.Facts = append(p.Facts, fmt.Sprintf("At worst all of %s runs out: %s. A tray takes drips, not that.", name, quantity.Format(quantity.Volume, quantity.Litre.Base(most), a.Plan.Units)))
	}
	if l, kit := a.biggestOffer(); l > most {
		p.Facts = append(p.Facts, fmt.Sprintf("Of '%s' it would be %s.", kit, quantity.Format(quantity.Volume, quantity.Litre.Base(l), a.Plan.Units)))
	}
	p.Facts = append(p.Facts, "Before anything grows each tub stands filled with plain water for a day and is watched.", Puddle)
	return p
}

// biggestOffer is the offer that holds most water, and how many litres.
func (a *Assessment) biggestOffer() (litres float64, name string) {
	for _, o := range a.Plan.Offers {
		if l := quantity.Litre.From(o.Volume.Value.Base()); l > litres {
			litres, name = l, o.Name
		}
	}
	return litres, name
}

func (a *Assessment) chemicals() Permission {
	p := Permission{Head: "Chemicals", Who: "whoever keeps the school's chemicals", Ask: "May they be kept here, where are they locked up, and who mixes?"}
	var names []string
	for _, f := range a.Plan.Fertilisers {
		names = append(names, f.Name)
	}
	for _, f := range a.Plan.Acids {
		names = append(names, f.Name+" (an acid)")
	}
	for _, f := range a.Plan.Bases {
		names = append(names, f.Name+" (a base)")
	}
	if a.Plan.Bleach != nil {
		names = append(names, "household bleach, for cleaning empty tubs")
	}
	if len(names) == 0 {
		p.Facts = append(p.Facts, "Which fertiliser is used is not settled yet. Its label and its safety data sheet come with this paper once it is.")
	} else {
		p.Facts = append(p.Facts, "In the plan: "+listed(names)+".")
	}
	p.Facts = append(p.Facts,
		"Concentrates, acids and bleach are an adult's, with goggles and gloves, and are locked up. Acid and bleach never meet. The label and the safety data sheet go before this paper.",
		"The water in the tubs is weak feed. It is not for drinking. It is poured out where the site's rule says.")
	return p
}

func (a *Assessment) noise() Permission {
	pumps := a.pumps()
	p := Permission{Head: "Noise", Who: "who teaches in the room", Ask: "Is it quiet enough with the pumps on? Listen before buying."}
	if pumps == 0 {
		p.Facts, p.Ask = []string{"The plan's tubs stand still: no pump runs."}, "Is it quiet enough? A kit on offer may bring a pump: listen before buying."
		return p
	}
	p.Facts = []string{
		fmt.Sprintf("%s day and night. An empty classroom is to be no louder than %s dB(A) (ANSI/ASA S12.60).", upper(counted(pumps, "air pump runs", "air pumps run")), quantity.FormatNumber(choose.NoiseLimitDBA(), 0)),
		"A pump hums less on something soft, tied so that it cannot walk off, above the water.",
	}
	return p
}

func (a *Assessment) drilling() Permission {
	p := Permission{Head: "Drilling", Who: "the head of the school, by its workshop rules", Ask: "Who drills, where, and with what?"}
	if b := a.Choose.build(); b != nil {
		p.Facts = append(p.Facts, fmt.Sprintf("%d holes are cut into lids with a hole saw, if the garden is built and not bought.", b.PlantSites))
	}
	p.Facts = append(p.Facts, "An adult drills. Pupils stand away. Eye protection for everyone near, lid clamped on a board, no gloves and no loose sleeves at the drill. The helper card of the building papers has the steps.")
	return p
}

func (a *Assessment) eating() Permission {
	cold := choose.CutLeavesC()
	p := Permission{
		Head: "Food", Who: "the school's kitchen or health office, by local rule", Ask: "May the class eat what it grows? What has to be shown or written down?",
		Facts: []string{
			fmt.Sprintf("Leaves are washed by washed hands. Cut leaves stay at %s °C (%s °F) or colder, and what is left is thrown away.", quantity.FormatNumber(cold, 0), quantity.FormatNumber(cold*1.8+32, 0)),
			"Allergies go by the school's own list, which is not kept here. Nobody who is ill handles food. Nothing is for babies.",
		},
	}
	p.Facts = append(p.Facts, siteWords("Eating what is grown", string(a.Plan.School.Site.Kitchen), "Until it says yes nobody eats."))
	for i := range a.Choose.Offers {
		if o := &a.Choose.Offers[i]; o.NotFood != "" && o.NotFood != choose.NoEating {
			p.Facts = append(p.Facts, fmt.Sprintf("'%s': %s.", o.Name, o.NotFood))
		}
	}
	return p
}

func (a *Assessment) holidays() Permission {
	p := Permission{Head: "Nights, weekends and breaks", Who: "the head of the school and the caretaker", Ask: "May lamp and pump run while the house is empty, and who looks in?"}
	if a.Plan.School.Visits.Value {
		p.Facts = append(p.Facts, "Somebody looks in during breaks.")
	} else {
		p.Facts = append(p.Facts, "Nobody looks in during breaks, as the plan stands.")
	}
	if a.pumps() > 0 {
		p.Facts = append(p.Facts, "A pump that is switched off for long costs the plants their air. The tag on the plug says so.")
	} else if p.Ask = "Who looks in while the house is empty?"; len(a.Plan.Lamps) > 0 {
		p.Ask = "May the lamp run while the house is empty, and who looks in?"
	}
	return p
}

// MealDay is the day of the meal as people say it: 'Wed 24 Mar 2027'.
func (a *Assessment) MealDay() string { return term.Date(a.Plan.School.Meal.Day).Long() }

// FilledMass is what a tub weighs filled, in the plan's units; empty where that
// is not known.
func (a *Assessment) FilledMass(tub int) string {
	mass, _ := a.shown("tubs." + Slug(a.Tubs[tub].Name) + ".mass_filled")
	return mass
}

// CropWords are the crops of all tubs in words, each once.
func (a *Assessment) CropWords() string {
	var names []string
	for _, t := range a.Tubs {
		for _, c := range t.Crops {
			if name := strings.ToLower(c.Name); !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	if len(names) == 0 {
		return "salad leaves and herbs"
	}
	return listed(names)
}
