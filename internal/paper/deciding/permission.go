package deciding

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// permission is one sheet: a part for each thing that somebody decides.
func (p papers) permission(paper scene.Size) []content.Sheet {
	s := content.Sheet{Title: "Permission pack", Block: p.block("Permission pack", paper), Sections: []content.Section{{
		Heading: "What this is",
		Paragraphs: []string{
			"The class wants to grow leaves in tubs of water and feed. Below stand the facts, what we ask, and who decides.",
			"This paper permits nothing. Local codes, the school's rules and licensed people go before it.",
		},
	}}}
	for _, one := range p.a.Permissions() {
		s.Sections = append(s.Sections, content.Section{
			Heading: one.Head, Paragraphs: append(append([]string{}, one.Facts...), "We ask: "+one.Ask),
			Lines: []content.Line{"Decides: " + content.Line(one.Who) + ". Yes ____ No ____ Date ________", "Only if ________________________________________"},
		})
	}
	s.Sections = append(s.Sections, content.Section{Heading: "For the head of the school", Lines: []content.Line{
		"Place ____________________ From ____________ until ____________",
		"Allowed ____ Not yet ____ Signed ____________________ Date ____________",
	}})
	return []content.Sheet{s}
}

// tags are to be cut out and hung up.
func (p papers) tags(paper scene.Size) []content.Sheet {
	s := content.Sheet{Title: "Caretaker's tags", Block: p.block("Caretaker's tags", paper)}
	powered := len(p.a.Plan.Lamps) > 0
	for i := range p.a.Tubs {
		powered = powered || p.a.Plan.Tubs[i].Method != "still"
	}
	if powered {
		s.Sections = append(s.Sections, content.Section{
			Heading: "On the plug", Whole: true,
			Cautions:   []string{"Please do not unplug. Living plants need this " + p.needs() + "."},
			Paragraphs: []string{"Floor polish, power off, a smell of burning: safety first. With the floor, the plug and your hands dry, pull it, then call. Anything wet: touch nothing, cut the circuit at the board."},
			Lines:      []content.Line{"Call ____________________ Phone ____________________", "Board ____________________ Circuit ____________________"},
		})
	}
	for i, t := range p.a.Tubs {
		s.Sections = append(s.Sections, p.tag(i, t))
	}
	return []content.Sheet{s}
}

// needs is what the plants get through a plug.
func (p papers) needs() string {
	for i := range p.a.Tubs {
		if p.a.Plan.Tubs[i].Method != "still" {
			return "air and light day and night"
		}
	}
	return "light every day"
}

func (p papers) tag(i int, t garden.Tub) content.Section {
	out := content.Section{
		Heading: "On the tub: " + t.Name, Whole: true,
		Cautions:   []string{"Do not lift, drag or empty it."},
		Paragraphs: []string{"It holds water with weak plant feed. Not for drinking."},
		Lines:      []content.Line{"Call ____________________ Phone ____________________"},
	}
	if mass := p.a.FilledMass(i); mass != "" {
		out.Paragraphs[0] = "Filled it weighs " + mass + ". " + out.Paragraphs[0]
	}
	out.Paragraphs = append(out.Paragraphs, "Water on the floor: "+garden.Puddle)
	return out
}

// letter is a letter to parents and a slip to send back. Nobody is named.
func (p papers) letter(paper scene.Size) []content.Sheet {
	const title = "Letter to parents"
	food := "Nothing is eaten from it."
	when := content.Line("We grow from ____________ until ____________.")
	slip := []content.Line{"Class ____________ Date ____________", "My child may work at the tubs. Yes ____ No ____"}
	if eats(p.a) {
		food = "If the school's rules allow it, the class washes and eats some of the leaves. Nobody has to."
		when = "We grow from ____________ until ____________. We eat on ____________."
		if d := p.a.Plan.School.Meal.Day; d.Set() {
			when = content.Line("We grow from ____________. The meal is planned for " + p.a.MealDay() + ".")
		}
		slip = append(slip, "My child may eat what was grown. Yes ____ No ____")
	}
	return []content.Sheet{{Title: title, Block: p.block(title, paper), Sections: []content.Section{
		{Heading: "Dear parents", Lines: []content.Line{"From ______________________________ Date ____________"}, Paragraphs: []string{
			"Our class grows " + p.a.CropWords() + " in tubs of water with plant feed, without soil. The children measure, write down and work out what the plants need.",
			"Adults do what could hurt: drilling, plugs, concentrated feed, acids, cleaning with bleach, lifting. Children handle the weak solution in the tub, and wash their hands.",
			food,
		}},
		{Heading: "What you should know", Lines: []content.Line{when}, Paragraphs: []string{
			"Allergies: please tell the school in its own way. This project keeps no list.",
			"A child who is ill does not handle food that day. We ask for no reasons.",
			"No name, mark or picture of a child is kept in the garden's records. Photos follow the school's own rules.",
		}},
		{Heading: "In our own words", Lines: []content.Line{"________________________________________________", "________________________________________________", "________________________________________________"}},
		{Heading: "To cut off and send back", Whole: true, Lines: append(slip, "Signed ______________________________")},
	}}}
}

// eats tells whether anything of the plan is for eating.
func eats(a *garden.Assessment) bool {
	for i := range a.Choose.Offers {
		if a.Choose.Offers[i].ForFood {
			return true
		}
	}
	return false
}
