package classroom

import (
	"fmt"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// layUp is the card for the end of the year: nothing wet is put away.
func (p papers) layUp(paper scene.Size) []content.Sheet {
	first := []string{
		"An adult with dry hands switches pump and lamp off at the socket. Water on the floor or a wet plug: " + garden.Puddle,
		"Nobody lifts a full tub. It is emptied where it stands.",
	}
	empty := []string{
		"Harvest what can be eaten. Roots, plugs and the rest go in a bag into the bin, not outdoors.",
		"Empty each tub by bucket and jug, by the site's rule: never into a storm drain or a stream.",
		"Wash tub, lid, cups, stone and tubes with water and a brush.",
	}
	dry := []string{
		"Dry everything with the lid off, for some days. Wet things stacked grow mould.",
		"Throw away: used plugs, air stones that stay clogged, strips past their date.",
		"Meters: rinse. A pH probe is stored wet, in its own storage water; an EC probe dry. Take batteries out.",
		"Fertiliser: closed, dry, dark, with its label. Acid and base: locked, upright, apart from bleach.",
		"Write on a tag what is missing or broken, and tie it to the tub.",
		"Take the garden out of the program as one file, and a backup. Then, on the page 'What is stored', wipe the class.",
	}
	s := content.Sheet{Title: "Lay-up card", Block: p.block("Lay-up card", paper), Sections: []content.Section{
		{Heading: "First", Cautions: first},
		{Heading: "Empty", Steps: content.Steps{First: 1, Items: empty}},
		{Heading: "Clean with bleach, an adult alone", Cautions: p.bleachCare(), Steps: content.Steps{First: len(empty) + 1, Items: p.bleach()}},
	}}
	after := len(empty) + len(p.bleach()) + 1
	s.Sections = append(s.Sections,
		content.Section{Heading: "Dry and put away", Steps: content.Steps{First: after, Items: dry}},
		content.Section{Heading: "Write down", Lines: []content.Line{"Laid up on ____________ It all lies in ____________________", "Missing or broken ________________________________"}},
	)
	return []content.Sheet{s}
}

// bleachCare stands before the bleach.
func (p papers) bleachCare() []string {
	if len(p.bleach()) == 0 {
		return nil
	}
	return []string{"Goggles, gloves, old clothes, window open. Pupils are not in the room. Bleach never meets acid, fertiliser or another cleaner: poisonous gas."}
}

// bleach are the amounts of the mix's clean-down, tub by tub; without them, what
// the plan lacks.
func (p papers) bleach() []string {
	var out []string
	var last *garden.MixClean
	for _, t := range p.a.Tubs {
		if t.Mix == nil || t.Mix.Clean == nil {
			continue
		}
		last = t.Mix.Clean
		out = append(out, fmt.Sprintf("%s: fill it with %s of cold water, then pour in %s of the plain bleach. Stir with a stick.", t.Name, p.litres(last.WaterL), garden.PourWords(last.BleachML, p.a.Plan.Units)))
	}
	if last == nil {
		return []string{"The plan does not say how strong the bleach is, so no amount stands here. Write it there from the label, or wash with hot water and a brush and let it dry fully."}
	}
	return append(
		out,
		fmt.Sprintf("Cups, stone and tubes lie under for %.0f minutes: %.0f mg/L of available chlorine.", last.ContactMinutes, last.ChlorineMgL),
		"Empty it down a drain to the sewer with plenty of water, by the site's rule.",
		fmt.Sprintf("Rinse three times. Fill with clean water and dip a chlorine strip: under %g mg/L, or no colour at all. Else rinse again.", last.RinseBelowMgL),
	)
}

// startUp is the card for the start of the year.
func (p papers) startUp(paper scene.Size) []content.Sheet {
	look := []string{
		"Unpack. Read the tags: what is missing or broken? Order it now.",
		"Look at tub and lid for cracks, at cable and plug for damage. A damaged cable is not used: the site's electrician decides.",
		"Do the wet test with plain water, on the floor, before the tub goes on its shelf.",
	}
	if p.aerated() {
		look = append(look, "Pump: above the water line, or with a check valve. An adult plugs it in with dry hands, through the protected socket. Look for bubbles.")
	}
	ready := []string{
		"Calibrate the pH meter, check the EC meter. Open new buffers where the old are past their date.",
		"Fertiliser clumped or wet: throw it away by its label. Strips past their date: throw them away.",
		"Seed: look at the year on the packet. Sow some on a wet towel first and count what comes up.",
	}
	plan := []string{
		"Measure tubs again if they are others. Look at the tap water: a strip, or the company's new report.",
		"Put the new term in the plan: first and last day, closed days, how many pupils, the teams.",
		"Ask again: place, socket, floor, food rule, who comes in the break. Last year's yes may not hold.",
		"Print the build papers for a new lid, then the rota and the job cards.",
	}
	s := content.Sheet{Title: "Start-up card", Block: p.block("Start-up card", paper), Sections: []content.Section{
		{Heading: "First", Cautions: []string{"A tub that held something unknown in between is not for food again.", "Rinse out last year's bleach smell before anything else. No acid on that day."}},
		{Heading: "Look", Steps: content.Steps{First: 1, Items: look}},
		{Heading: "Make ready", Steps: content.Steps{First: len(look) + 1, Items: ready}},
		{Heading: "Plan", Steps: content.Steps{First: len(look) + len(ready) + 1, Items: plan}},
		{Heading: "Write down", Lines: []content.Line{"Started on ____________ Held the wet test ____________", "Ordered ____________________________________"}},
	}}
	return []content.Sheet{s}
}
