package classroom

import (
	"fmt"
	"slices"

	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/school/term"
)

// mostAcross is how many jobs stand side by side in one table, so that a page is
// wide enough for them on the wall.
const mostAcross = 5

// rota is the table for the wall, with a second one under it where there are
// more jobs than fit across.
func (p papers) rota(paper scene.Size) []content.Sheet {
	s := content.Sheet{Title: "Rota", Block: p.block("Rota", paper)}
	var names []string
	for _, j := range p.c.Jobs {
		names = append(names, j.Name)
	}
	first := true
	for part := range slices.Chunk(names, mostAcross) {
		section := content.Section{Heading: "Who does what", Tables: []content.Table{p.weeks(part)}}
		if first && p.c.By == "pupils" {
			section.Paragraphs = []string{"The numbers are those of your own list. The list stays with you."}
		}
		if !first {
			section.Heading = "More jobs"
		}
		first = false
		s.Sections = append(s.Sections, section)
	}
	s.Sections = append(s.Sections, content.Section{Heading: "How fair it is", List: p.c.Fairness.Says})
	return []content.Sheet{s}
}

func (p papers) weeks(names []string) content.Table {
	t := content.Table{Caption: "Each week from its Monday on", Columns: []content.Column{{Head: "week of"}}}
	for _, n := range names {
		t.Columns = append(t.Columns, content.Column{Head: n})
	}
	for _, w := range p.c.Rota {
		row := []string{fmt.Sprintf("%d: %s", w.Week, dayWords(w.From))}
		for i, n := range names {
			switch {
			case w.Open:
				row = append(row, who(w, n))
			case i == 0:
				row = append(row, "closed")
			default:
				row = append(row, "–")
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// who has a job in a week; a dash where it is not done.
func who(w garden.ClassWeek, job string) string {
	for _, t := range w.Turns {
		if t.Job == job && t.Who != "" {
			return t.Who
		}
	}
	return "–"
}

// dayWords is a day of the JSON as people say it: 11 Jan.
func dayWords(iso string) string {
	d, err := term.ParseDate(iso)
	if err != nil {
		return iso
	}
	return d.Short()
}
