package daily

import (
	"strconv"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

func itoa(n int) string { return strconv.Itoa(n) }

func (p papers) aerated() bool {
	for _, t := range p.a.Tubs {
		if t.Today == nil || !t.Today.Still {
			return true
		}
	}
	return false
}

// back is the card for the first day after a break, or after a power cut.
func (p papers) back(paper scene.Size) []content.Sheet {
	look := "Look into each tub through the small hole of the lid. Brown roots, a bad smell: close it, wash hands, tell the teacher."
	if p.aerated() {
		look = "Look into each tub through the small hole of the lid, and listen. No bubbles: an adult looks at plug, socket and tube with dry hands, and stirs the water with a clean jug meanwhile. Brown roots, a bad smell: close it, wash hands, tell the teacher."
	}
	steps := []string{
		"Pupils wait outside. An adult looks from the door: is the floor dry? If not, take the puddle card and go no further.",
		"Hands and floor dry: look at each lamp and pump. A power cut stops them, and sets many timers wrong: set the timer's clock.",
		look,
		"Read the level of each tub before anything is poured in, and write it down here.",
		"Far more gone than on the days before: look for a leak first, under the tub, on the floor, along the air line.",
		"Then fill each tub up to its line with water that has stood for a day. New water is within " + p.a.Care().Step + " of the old.",
		"Wait half an hour. Only then read the water's temperature, pH and EC, with meters that are calibrated.",
		"One change a day: the level today, the strength tomorrow, the pH last.",
		"Pick off what has wilted or rotted. Nobody eats from a tub that smells.",
	}
	s := content.Sheet{Title: "Return card", Block: p.block("Return card", paper), Sections: []content.Section{
		{Heading: "First", Cautions: []string{"Water on the floor, or a wet plug. " + garden.Puddle}},
		{Heading: "In order", Steps: content.Steps{First: 1, Items: steps}},
	}}
	if table, ok := p.returned(); ok {
		s.Sections = append(s.Sections, content.Section{Heading: "What you find", Tables: []content.Table{table}, Lines: []content.Line{
			"Power was off from ____________ until ____________",
			"Lamp timer set ______ Caretaker, phone ____________",
		}})
	}
	return []content.Sheet{s}
}

// returned is the table of the tubs on the return card.
func (p papers) returned() (content.Table, bool) {
	t := content.Table{Caption: "At most so much straight from the tap in a day; water that has stood for a day has no such limit", Columns: []content.Column{
		{Head: "tub"}, {Head: "line at"}, {Head: "never lower"}, {Head: "from the tap"}, {Head: "level found"}, {Head: "poured in"}, {Head: "smell"},
	}}
	or := func(text, none string) string {
		if text == "" {
			return none
		}
		return text
	}
	for _, tub := range p.a.Tubs {
		now := tub.Today
		if now == nil {
			continue
		}
		tap := or(now.FromTap, "no limit")
		if now.Still {
			tap = "ask first"
		}
		t.Rows = append(t.Rows, []string{tub.Name, now.Line, or(now.Lowest, "–"), tap, content.Blank, content.Blank, content.Blank})
	}
	return t, len(t.Rows) > 0
}

// puddle is the card for water on the floor.
func (p papers) puddle(paper scene.Size) []content.Sheet {
	care := p.a.Care()
	return []content.Sheet{{Title: "Puddle card", Block: p.block("Puddle card", paper), Sections: []content.Section{
		{Heading: "Water on the floor, or a wet plug", Steps: content.Steps{First: 1, Items: []string{
			"Keep everyone away. Pupils leave the room.",
			"Nobody touches plug or switch, nobody steps in the water.",
			"An adult who need not step in the water cuts the circuit at the board.",
			"Then call the caretaker.",
		}}},
		{Heading: "Fill in by hand, before it happens", Lines: []content.Line{
			"The board is ____________________",
			"The circuit's number is ____________________",
			"Caretaker, phone ____________________",
			"Office, phone ____________________",
		}},
		{Heading: "Only when the circuit is off and the caretaker says so", Steps: content.Steps{First: 5, Items: []string{
			"Dry the floor: " + itoa(care.Towels) + " towels lie ready for each tub.",
			"A tub that leaks: its lid with the plants goes over buckets with " + care.Rescue + " of its water. Nobody lifts the tub.",
			"The site's electrician or caretaker decides when it is switched on again.",
			"Write in the logbook what happened. Wet wood and wet walls are dried within a day or two.",
		}}},
	}}}
}

// changeOut is a sheet for each tub whose water is changed.
func (p papers) changeOut(paper scene.Size) []content.Sheet {
	var out []content.Sheet
	for _, tub := range p.a.Tubs {
		if tub.Today != nil {
			out = append(out, p.changeOf(tub, paper))
		}
	}
	if len(out) == 0 {
		out = append(out, content.Sheet{Title: "Change-out card", Block: p.block("Change-out card", paper), Sections: []content.Section{
			{Heading: "Not yet", Paragraphs: []string{"No tub of this plan can be filled as it is. Mend the plan first."}},
		}})
	}
	return out
}

func (p papers) changeOf(tub garden.Tub, paper scene.Size) content.Sheet {
	now, care := tub.Today, p.a.Care()
	heavy := "Nobody lifts the tub or drags it. Fill it and empty it where it stands."
	if now.Mass != "" {
		heavy = "Filled it weighs " + now.Mass + ". " + heavy
	}
	steps := []string{
		"Have the new solution ready, mixed by the recipe and within " + care.Step + " of the old. A change uses " + now.Fills + ".",
		"The lid with its plants goes across a second tub, or over buckets with old solution, so that the roots hang in it: " + care.RootsOut + " at most, and never on the floor.",
		"Fill the hose of the siphon with water first. It is never started by mouth. Its lower end lies in a bucket.",
		"Empty the tub by bucket and jug. Wipe up each drip at once.",
		"Pour it out where the site's rule says, never into a storm drain or a stream.",
		"Wipe the tub with a clean cloth. No bleach and no soap while plants are near.",
		"Fill it in place up to the line, " + now.Line + ".",
		"Put the lid back.",
		"Half an hour later read pH and EC, and write 'changed out' in the logbook.",
	}
	if !now.Still {
		steps[1] = "With dry hands an adult switches the pump off at the socket. " + steps[1]
		steps[7] = "Put the lid back, switch the pump on with dry hands, and look for bubbles."
	}
	s := content.Sheet{Title: "Change-out card: " + tub.Name, Block: p.block("Change-out card: "+tub.Name, paper), Sections: []content.Section{
		{Heading: "First", Cautions: []string{heavy}},
		{Heading: "In order", Steps: content.Steps{First: 1, Items: steps}},
	}}
	if now.Still {
		s.Sections[0].Paragraphs = []string{"A still tub is filled once. Its water is changed only between two crops."}
	}
	table := content.Table{Caption: "How often one walks to carry " + now.Fills, Wordy: true, Columns: []content.Column{
		{Head: "who"}, {Head: "at a time"}, {Head: "trips", Number: true},
	}}
	for _, c := range now.Carry {
		table.Rows = append(table.Rows, []string{c.Who, c.Each, itoa(c.Trips)})
	}
	s.Sections = append(s.Sections, content.Section{Heading: "To carry", Tables: []content.Table{table}, Lines: []content.Line{
		"It is poured out at ______________________ (the site's rule)",
		"Changed on ____________ by team ____________ how much ________",
	}})
	return s
}
