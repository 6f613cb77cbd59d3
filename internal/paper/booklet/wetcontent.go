package booklet

import (
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

const wetTitle = "Wet test: 24 hours with plain water"

// WetTestContent is what the wet test's paper says.
func WetTestContent(c Cover, tubs []WetTub, paper scene.Size) content.Sheet {
	s := content.Sheet{Title: wetTitle, Block: c.block("Wet test", paper), Sections: []content.Section{
		{Heading: "In order", Steps: content.Steps{First: 1, Items: wetSteps(c.System)}},
		{Heading: "What you see", Tables: wetTables(tubs)},
	}}
	if words := glowWords(tubs); words != "" {
		s.Sections[1].Paragraphs = []string{words}
	}
	return s
}

func wetSteps(system garden.System) []string {
	drop := map[garden.System]string{garden.Metric: "3 mm", garden.US: "1/8 in"}[system]
	return []string{
		"Stand the empty tub where it will live. A filled tub is never lifted or pushed: fill it and drain it in place.",
		"Keep plugs, leads and the air pump dry: outside the tub, above the water line, with a loop of the lead hanging lower than the socket.",
		"Fill with plain water to the line in the table. Draw a pencil line on the outside at the water, and write the time beside it.",
		"Lay a dry paper towel under the rim all round and under the tub. Put the lid on.",
		"After 24 hours look again. A wet towel, or a drop of more than " + drop + ": stop, find out why, do not drill or plant.",
		"Look at the shelf: does it bend so that the water stands higher at one end? Measure at both ends; over " + drop + " of difference, take the tub down empty and strengthen the shelf.",
		"Light-leak look: darken the room, hold a torch inside the empty tub. Where walls or lid glow, algae will grow: cover them.",
		"Do the test twice: before the lid is drilled, and again with the cups hung in before planting.",
	}
}

// wetTables are the lines to fill in, before drilling and before planting.
func wetTables(tubs []WetTub) []content.Table {
	var out []content.Table
	for _, when := range []string{"Before drilling", "Before planting"} {
		t := content.Table{Caption: when, Columns: []content.Column{
			{Head: "tub"}, {Head: "fill to"}, {Head: "filled, time"}, {Head: "24 h later"}, {Head: "drop"}, {Head: "towel dry"}, {Head: "light seen at"},
		}}
		for _, tub := range tubs {
			t.Rows = append(t.Rows, []string{tub.Name, tub.Fill, content.Blank, content.Blank, content.Blank, content.Blank, content.Blank})
		}
		out = append(out, t)
	}
	return out
}

func glowWords(tubs []WetTub) string {
	var names []string
	for _, tub := range tubs {
		if tub.LetLight {
			names = append(names, tub.Name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "Lets light through, black it out before planting: " + strings.Join(names, ", ") + "."
}
