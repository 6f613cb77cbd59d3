package daily

import (
	"fmt"

	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// passport is a sheet for the pH meter and one for the EC meter.
func (p papers) passport(paper scene.Size) []content.Sheet {
	r := p.a.Care().Meters
	ph := content.Sheet{Title: "Meter passport: pH", Block: p.block("Meter passport: pH", paper), Sections: []content.Section{
		{Heading: "The meter", Lines: []content.Line{"What the class calls it ______________ It lies ______________"}},
		{Heading: "The rules", Paragraphs: []string{
			fmt.Sprintf("Calibrated every %d days, before it is read. Not calibrated in time, or nobody knows when: it is not believed, and nothing is corrected by it.", r.PHDays),
			fmt.Sprintf("A buffer is good for %d months after it was opened, or until the date printed on it where that comes first.", r.BottleMonths),
		}},
		{Heading: "How", Steps: content.Steps{First: 1, Items: []string{
			"Pour a little of each buffer into a clean cup. What was poured out never goes back into the bottle.",
			"Rinse the probe with clean water and dab it dry. Buffer 7 first: wait until it stands still, then set it.",
			"Rinse again. Buffer 4 the same way. Then look at buffer 7 once more, and write down what it shows.",
			"Put the cap on with its storage water. A dry probe reads wrong.",
		}}},
		{Heading: "The bottles", Tables: []content.Table{{
			Caption: "Write on the bottle too", Columns: []content.Column{{Head: "bottle"}, {Head: "opened on"}, {Head: "printed date"}, {Head: "good until"}},
			Rows: [][]string{{"buffer 7", content.Blank, content.Blank, content.Blank}, {"buffer 4", content.Blank, content.Blank, content.Blank}, {"buffer 7, next", content.Blank, content.Blank, content.Blank}, {"buffer 4, next", content.Blank, content.Blank, content.Blank}},
		}}},
		{Heading: "Calibrated", Tables: []content.Table{stamps("buffer 7 shows", "buffer 4 shows")}},
	}}
	ec := content.Sheet{Title: "Meter passport: EC", Block: p.block("Meter passport: EC", paper), Sections: []content.Section{
		{Heading: "The meter", Lines: []content.Line{
			"What the class calls it ______________ It lies ______________",
			"It shows (mS/cm, µS/cm, ppm 500, 640 or 700) ______________",
		}},
		{Heading: "The rules", Paragraphs: []string{
			fmt.Sprintf("Checked against its standard every %d days, before it is read. Not checked in time: it is not believed, and nothing is poured in by it.", r.ECDays),
			fmt.Sprintf("A standard is good for %d months after it was opened, or until the date printed on it where that comes first.", r.BottleMonths),
		}},
		{Heading: "How", Steps: content.Steps{First: 1, Items: []string{
			"Rinse the probe with a little of the standard, then throw that away.",
			"Dip it into fresh standard, knock off the bubbles, wait until it stands still.",
			"Write down what it shows. Further off than its maker allows: set it, or tell the teacher.",
		}}},
		{Heading: "The bottles", Tables: []content.Table{{
			Caption: "Write on the bottle too", Columns: []content.Column{{Head: "bottle"}, {Head: "opened on"}, {Head: "printed date"}, {Head: "good until"}},
			Rows: [][]string{{"standard", content.Blank, content.Blank, content.Blank}, {"standard, next", content.Blank, content.Blank, content.Blank}},
		}}},
		{Heading: "Checked", Tables: []content.Table{stamps("it should show", "it shows")}},
	}}
	return []content.Sheet{ph, ec}
}

// stampRows is how many calibrations one passport holds, so that it is one page
// of Letter in type of 11 points.
const stampRows = 7

// stamps is the table of a passport, numbered so that no row is left out.
func stamps(first, second string) content.Table {
	t := content.Table{Caption: "By team, never by name", Columns: []content.Column{
		{Head: "no."}, {Head: "day"}, {Head: first}, {Head: second}, {Head: "team"}, {Head: "next due"},
	}}
	for i := range stampRows {
		t.Rows = append(t.Rows, []string{itoa(i + 1), content.Blank, content.Blank, content.Blank, content.Blank, content.Blank})
	}
	return t
}
