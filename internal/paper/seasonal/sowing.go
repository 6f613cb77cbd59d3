package seasonal

import (
	"fmt"
	"math"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// dust is said before anything dry is opened (common practice; the maker's label
// and the school's rule go before).
const dust = "Dry rockwool and dry perlite give off dust that nobody should breathe. An adult opens the bag beside an open window and wets it all before it is handled. Pupils handle it wet, and everyone washes hands afterwards."

// sowing is the sheet for the day of sowing of one tub.
func (p papers) sowing(tub int, paper scene.Size) []content.Sheet {
	t := &p.a.Tubs[tub]
	title := "Sowing sheet: " + t.Name
	s := content.Sheet{Title: title, Block: p.block(title, paper), Sections: []content.Section{
		{Heading: "First", Cautions: []string{dust}},
		{Heading: p.sowOn(tub), Paragraphs: p.sowWords(tub), Tables: p.sowTables(tub)},
		{Heading: "In order", Steps: content.Steps{First: 1, Items: p.sowSteps(tub)}},
		{Heading: "Write down", Lines: []content.Line{
			"Sown on ____________ by team ____________ packet of the year ________",
			"Came up on ____________ how many ________ thinned on ____________",
		}},
	}}
	return []content.Sheet{s}
}

// sowOn is the day, as a heading; the days, where the crops have several.
func (p papers) sowOn(tub int) string {
	var each []string
	several := false
	crops := p.crops(tub)
	for _, c := range crops {
		each = append(each, c.Crop+" on "+day(c.SowOn))
		several = several || c.SowOn != crops[0].SowOn
	}
	if several {
		return "Sow " + listed(each)
	}
	return "Sow on " + day(p.a.Tubs[tub].Season.SowOn)
}

func (p papers) sowWords(tub int) []string {
	s := p.a.Tubs[tub].Season
	var out []string
	if latest, ok := date(s.SowLatest); ok && s.WantedChance > 0 {
		out = append(out, fmt.Sprintf("The latest day is %s. Sown later, it is ready in time less often than you want: %s.", latest.Words(), chance(s.WantedChance)))
	}
	if s.ReadyChance > 0 {
		out = append(out, "Sown on that day it is ready in time in "+chance(s.ReadyChance)+" cases.")
	}
	return append(out, "Not on the last days before nobody comes: seedlings are looked at every day.")
}

// sowTables are what is sown, and when what follows.
func (p papers) sowTables(tub int) []content.Table {
	what := content.Table{Caption: "What is sown", Columns: []content.Column{
		{Head: "crop"}, {Head: "seeds"}, {Head: "cells"}, {Head: "seeds a cell"}, {Head: "how deep"}, {Head: "sown"},
	}}
	when := content.Table{Caption: "What follows, in the middle of cases", Columns: []content.Column{
		{Head: "crop"}, {Head: "sow"}, {Head: "up about"}, {Head: "thin"}, {Head: "into the tub"}, {Head: "apart there"},
	}}
	for _, c := range p.crops(tub) {
		what.Rows = append(what.Rows, []string{c.Crop, number(c.Seeds), number(c.Cells), each(c), p.deep(c.CoverMM), content.Blank})
		thin := "no need"
		if c.ThinOn != "" {
			thin = short(c.ThinOn)
		}
		when.Rows = append(when.Rows, []string{c.Crop, short(c.SowOn), short(c.UpOn), thin, short(c.Transplant), p.apart(tub)})
	}
	if len(what.Rows) == 0 {
		return nil
	}
	return []content.Table{what, when}
}

// crops are a tub's crops; where the season does not tell them apart, the tub's.
func (p papers) crops(tub int) []garden.CropReady {
	t := &p.a.Tubs[tub]
	if len(t.Season.Ready) > 0 {
		return t.Season.Ready
	}
	var out []garden.CropReady
	for _, c := range t.Crops {
		out = append(out, garden.CropReady{Crop: c.Name, Plants: c.Plants, SowOn: t.Season.SowOn, Transplant: t.Season.TransplantOn})
	}
	return out
}

func number(n int) string {
	if n <= 0 {
		return content.Blank
	}
	return itoa(n)
}

// short is a day for a narrow cell; a blank where it is not known.
func short(text string) string {
	if d, ok := date(text); ok {
		return d.Words()
	}
	return content.Blank
}

// each is how many seeds go into a cell: shared out, some cells may have one
// more.
func each(c garden.CropReady) string {
	if c.Seeds <= 0 || c.Cells <= 0 {
		return content.Blank
	}
	low, rest := c.Seeds/c.Cells, c.Seeds%c.Cells
	if rest == 0 {
		return itoa(low)
	}
	return itoa(low) + " or " + itoa(low+1)
}

// deep is how deep a seed lies.
func (p papers) deep(mm float64) string {
	if mm <= 0 {
		return "pressed in"
	}
	if p.a.Plan.Units == garden.US {
		return p.mark(mm)
	}
	return itoa(int(math.Round(mm))) + " mm"
}

// alone stands for the distance of a plant that has no neighbour.
const alone = "–"

// apart is how far the holes of a tub's lid are apart at least.
func (p papers) apart(tub int) string {
	l := p.a.Tubs[tub].Lid
	if l == nil {
		return alone
	}
	if layout, ok := l.Layout(l.Chosen); ok && len(layout.Holes) > 1 {
		return p.mark(layout.SpacingMM)
	}
	return alone
}

func (p papers) sowSteps(tub int) []string {
	cells, thinned := 0, term.Date{}
	for _, c := range p.crops(tub) {
		cells += c.Cells
		if d, ok := date(c.ThinOn); ok && (!thinned.Set() || d.Before(thinned)) {
			thinned = d
		}
	}
	tray := "Set the wet cubes into the tray, with a label beside each."
	if cells > 0 {
		tray = "Set " + count(cells, "wet cube", "wet cubes") + " into the tray, with a label beside each."
	}
	out := []string{
		"An adult wets and soaks the cubes as their maker says. Nobody squeezes them: the air in them is for the roots.",
		tray,
		"Lay the seeds into the hole of each cube, as many and as deep as the table says. Do not bury them deeper: small seed has little strength.",
		"Cover the tray with a clear lid, in the warm, out of the sun.",
		"Look every school day. The cubes stay wet, and never stand in deep water.",
		"The day the first green shows: lid off, and the tray under the lamp.",
	}
	if thinned.Set() {
		out = append(out, "From "+thinned.Words()+", at the first true leaf: leave the strongest in each cell. Cut the others off with scissors. Pulling tears the neighbour's roots.")
	}
	return out
}
