package mixing

import (
	"fmt"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// acids is a sheet for each tub whose water takes acid.
func (p papers) acids(paper scene.Size) []content.Sheet {
	var out []content.Sheet
	for _, i := range p.tubs {
		if t := &p.a.Tubs[i]; AcidDose(t.Mix) {
			out = append(out, p.acidOf(i, paper))
		}
	}
	return out
}

func (p papers) acidOf(i int, paper scene.Size) content.Sheet {
	t := &p.a.Tubs[i]
	a := t.Mix.Acid
	title := "Acid card: " + t.Name
	care := []string{
		"For an adult alone. Goggles and gloves on before the bottle is opened. Acid into water, never water into acid.",
		"On skin or in an eye: rinse with plenty of running water for 20 minutes, and get help by the bottle's label and the school's rule.",
		"Never near bleach: together they give off a poisonous gas. Another shelf, another day.",
	}
	if a.Burns {
		care = append(care, "This bottle is strong enough to burn. A classroom should not hold it: thin it elsewhere, or buy it ready thinned.")
	}
	pour := "Measure " + AcidToday(t.Mix, p.a.Plan.Units) + " of " + a.Name + " with a syringe or small cylinder of its own, over a tray."
	if a.Solid {
		pour = "Weigh " + AcidToday(t.Mix, p.a.Plan.Units) + " of " + a.Name + "."
	}
	steps := []string{
		"The tub holds " + Litres(t.Mix.SolutionL, p.a.Plan.Units) + " of water and no plants. It is the day before the salts go in. The air is on.",
		"Take a clean jug, half full of this water.",
		pour,
		"Acid into the jug, slowly. Stir. Then the jug into the tub, in a circle. Stir.",
		"Rinse syringe and jug, close the bottle, lock it up.",
		fmt.Sprintf("The pH reads about %.1f at once. Leave it: nothing is added to bring it back.", *a.PHAtOnce),
		fmt.Sprintf("Air on until tomorrow. Then it should read about %.1f. Compare with that number, not with what you wished for.", *a.PHAfterAir),
	}
	s := content.Sheet{Title: title, Stop: Stop(p.a, i), Block: p.block(title, paper), Sections: []content.Section{
		{Heading: "First", Cautions: care},
		{Heading: "In order", Steps: content.Steps{First: 1, Items: steps}},
		{Heading: "Write down", Lines: []content.Line{
			"Given on ____________ at ________ pH at once ________",
			"The day after ____________ at ________ pH ________",
		}},
	}}
	if most := Dose(a.PlantedML, a.PlantedG, p.a.Plan.Units); most != "" && a.PlantedPH != nil {
		s.Sections = append(s.Sections, content.Section{Heading: "When plants are in the tub", Paragraphs: []string{
			fmt.Sprintf("Never more than %s at a time: the pH at once stays at %.1f or over. Nothing more for %.0f hours. Better: mix new water the day before.", most, *a.PlantedPH, *a.PlantedWait),
		}})
	}
	s.Sections = append(s.Sections, content.Section{Heading: "Pupils", Paragraphs: []string{Pupils}})
	return s
}

// clean is a sheet for each tub that is cleaned down.
func (p papers) clean(paper scene.Size) []content.Sheet {
	var out []content.Sheet
	for _, i := range p.tubs {
		t := &p.a.Tubs[i]
		if t.Mix.Clean == nil {
			continue
		}
		c := t.Mix.Clean
		title := "Clean-down card: " + t.Name
		steps := []string{
			"The tub is empty: no plants, no solution, no feed. An adult switches pump and lamp off at the socket with dry hands.",
			"Wash tub, lid, cups, stone and tubes with water and a brush. Dirt uses the bleach up.",
			"Fill the tub with " + Litres(c.WaterL, p.a.Plan.Units) + " of cold water.",
			"Pour " + garden.PourWords(c.BleachML, p.a.Plan.Units) + " of the plain bleach into it. Stir with a stick. No other cleaner goes in.",
			fmt.Sprintf("Everything lies under for %.0f minutes: %.0f mg/L of available chlorine.", c.ContactMinutes, c.ChlorineMgL),
			"Empty it down a drain to the sewer with plenty of water, by the site's rule; never into a storm drain or a stream.",
			"Rinse three times. Fill with clean water and dip a chlorine strip.",
			fmt.Sprintf("Under %g mg/L, or no colour at all: plants may come back. Else rinse again.", c.RinseBelowMgL),
		}
		out = append(out, content.Sheet{Title: title, Block: p.block(title, paper), Sections: []content.Section{
			{Heading: "First", Cautions: []string{
				"For an adult alone. Goggles, gloves, old clothes, window open. Pupils are not in the room.",
				"Bleach never meets acid, fertiliser or another cleaner: poisonous gas. Not on the day on which acid is used.",
				fmt.Sprintf("Mixed bleach water is good for %s. Never in a drinking bottle.", lifeWords(c.LifeDays)),
			}},
			{Heading: "In order", Steps: content.Steps{First: 1, Items: steps}},
			{Heading: "Write down", Lines: []content.Line{"Cleaned on ____________ strip showed ____________ mg/L"}},
		}})
	}
	return out
}

// asked are the figures that mixing needs of a water report.
var asked = []struct{ What, Unit string }{
	{"alkalinity, as calcium carbonate", "mg/L"},
	{"pH", ""},
	{"electrical conductivity at 25 °C", "mS/cm"},
	{"calcium", "mg/L"},
	{"magnesium", "mg/L"},
	{"sodium", "mg/L"},
	{"potassium", "mg/L"},
	{"chloride", "mg/L"},
	{"sulfate", "mg/L"},
	{"nitrate, as nitrogen", "mg/L"},
	{"boron", "mg/L"},
	{"iron", "mg/L"},
	{"free chlorine at the tap", "mg/L"},
	{"chloramine at the tap", "mg/L"},
}

// letter asks the water company for the figures.
func (p papers) letter(paper scene.Size) []content.Sheet {
	const title = "Letter to the water company"
	t := content.Table{Caption: "As they are at our tap, from the last report", Columns: []content.Column{{Head: "what"}, {Head: "unit"}, {Head: "lowest"}, {Head: "usual"}, {Head: "highest"}}}
	for _, x := range asked {
		unit := x.Unit
		if unit == "" {
			unit = "–"
		}
		t.Rows = append(t.Rows, []string{x.What, unit, content.Blank, content.Blank, content.Blank})
	}
	return []content.Sheet{{Title: title, Block: p.block(title, paper), Sections: []content.Section{
		{Heading: "What we ask", Lines: []content.Line{"From ______________________________ Date ____________"}, Paragraphs: []string{
			"Our class grows salad leaves in tubs of nutrient solution. What the tap water holds decides how much of each salt is weighed in.",
			"Would you send us the figures below for our address? A copy of the report with these numbers does as well.",
		}},
		{Heading: "The figures", Tables: []content.Table{t}},
		{Heading: "Two questions", Lines: []content.Line{
			"Is the water treated with chlorine or with chloramine? ____________",
			"Does it change in the year, and when? ____________________",
		}},
	}}}
}
