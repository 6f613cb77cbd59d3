package seasonal

import (
	"slices"

	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// moveDay is the sheet for the day on which the seedlings of a tub move in.
func (p papers) moveDay(tub int, paper scene.Size) []content.Sheet {
	t := &p.a.Tubs[tub]
	title := "Move-day sheet: " + t.Name
	heavy := "Nobody lifts or drags the filled tub."
	if t.Today != nil && t.Today.Mass != "" {
		heavy = "The filled tub weighs " + t.Today.Mass + ": nobody lifts or drags it."
	}
	s := content.Sheet{Title: title, Block: p.block(title, paper), Sections: []content.Section{
		{Heading: "First", Cautions: []string{heavy + " Pumps and lamps are plugged in by an adult with dry hands.", dust}},
		{Heading: "Move in on " + day(t.Season.TransplantOn), Paragraphs: []string{
			"Ready is a seedling with two true leaves or more and a white root at the bottom of its cube. Not ready: wait for the next school day that has others after it.",
		}},
		{Heading: "In order", Steps: content.Steps{First: 1, Items: p.moveSteps(tub)}},
		{Heading: "Write down", Lines: []content.Line{"Moved in on ____________ by team ____________ level ________ pH ________ EC ________"}},
	}}
	// Seedlings move into a lid that is drilled: what stops that stops the move.
	s.Stop = sheet.StopWords(p.a.StopOf(tub))
	return append([]content.Sheet{s}, p.holes(tub, paper)...)
}

func (p papers) moveSteps(tub int) []string {
	line := "the fill line"
	if mm, ok := p.top(tub); ok {
		line = "the fill line, " + p.mark(mm) + ","
	}
	water := "The day before: the tub stands level in its place, filled up to " + line + " by its mixing card, without the plants."
	if !p.still(tub) {
		water = "The day before: the tub stands level in its place, filled up to " + line + " by its mixing card, air on, without the plants."
	}
	out := []string{
		water,
		"Wash hands. Take the strongest seedlings, as many as the lid has holes. Hold a seedling by its cube, never by its stem.",
		"Set each cube low in its cup. Round it, if it stands loose, goes wet clay pebbles or wet perlite, until no light falls in.",
		"Set the cup into its hole. Look from the side, or feel with a finger: the water stands over the cup's bottom. It must touch it on this day.",
		"A seedling left over stays in the tray for a week, in case one fails.",
	}
	if len(p.a.Plan.Lamps) > 0 {
		if up := p.a.Plan.Lamps[0].AboveLid; p.raised(tub) {
			out = append(out, "The lamp hangs as high as the wall calendar has it by this day, below eye height or shaded: nobody looks into it.")
		} else if up.Set() {
			out = append(out, "The lamp hangs "+p.mark(float64(up.Value))+" over the lid, below eye height or shaded: nobody looks into it.")
		}
	}
	out = append(out, "In the first days look twice a day. Wilted at noon: shade it with paper until the next morning.")
	for _, j := range p.jobs() {
		if j.kind == "lower" && j.tub == p.a.Tubs[tub].Name {
			out = append(out, j.on.Words()+": "+j.do)
			break // the stages after it stand in the wall calendar
		}
	}
	return out
}

// raised tells whether the lamp has been moved for another tub before this one
// gets its plants.
func (p papers) raised(tub int) bool {
	move, known := date(p.a.Tubs[tub].Season.TransplantOn)
	return known && slices.ContainsFunc(p.jobs(), func(j job) bool { return j.kind == "lamp" && !j.on.After(move) })
}

// apartWords say how far apart the plants stand, as a heading.
func (p papers) apartWords(tub int) string {
	if apart := p.apart(tub); apart != alone {
		return "Plants stand " + apart + " apart or more"
	}
	return "One plant has the lid to itself"
}

// holesAPage is as many rows as a page holds with what stands over them.
const holesAPage = 22

// holes are the sheets of the lid's holes by number, the crops shared out over
// them in their order.
func (p papers) holes(tub int, paper scene.Size) []content.Sheet {
	var rows [][]string
	for _, c := range p.a.Tubs[tub].Crops {
		for range c.Plants {
			rows = append(rows, []string{itoa(len(rows) + 1), c.Name, content.Blank, content.Blank})
		}
	}
	title := "Hole by hole: " + p.a.Tubs[tub].Name
	var out []content.Sheet
	for part := range slices.Chunk(rows, holesAPage) {
		t := content.Table{Caption: "Numbers as on the lid sheet; by team, never by name", Rows: part, Columns: []content.Column{
			{Head: "hole"}, {Head: "crop"}, {Head: "leaves"}, {Head: "team"},
		}}
		out = append(out, content.Sheet{Title: title, Block: p.block(title, paper), Sections: []content.Section{
			{Heading: p.apartWords(tub), Tables: []content.Table{t}},
		}})
	}
	return out
}
