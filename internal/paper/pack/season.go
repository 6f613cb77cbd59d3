package pack

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/seasonal"
)

// Season lists the papers of a crop's season, for an assessment that was asked
// for garden.StageSeason.
func Season(a *garden.Assessment) []Paper { return SeasonOf(a, "") }

// SeasonOf is Season for a revision of the plan, by whose number a calendar
// program tells a later edition from an earlier one.
func SeasonOf(a *garden.Assessment, revision string) []Paper {
	b := builder{a: a}
	for _, c := range seasonal.Cards(a, revision) {
		b.card(c, tubOf(a, c.Name))
	}
	if dates, ok := seasonal.Agenda(a, revision); ok {
		b.add(Paper{
			Name: "season.ics", Title: "The season for a calendar program", About: "The same days for the school's calendar program: whole days, without alarms and without people.",
			Draw: unsized(func() ([]byte, error) { return dates.ICS(), nil }),
			read: sure(func(scene.Size) content.Sheet { return seasonal.AgendaContent(a, revision) }),
		})
	}
	return b.papers
}

// tubOf is the tub whose name a file's name ends in; empty for one of all tubs.
func tubOf(a *garden.Assessment, name string) string {
	for _, t := range a.Tubs {
		for _, kind := range []string{"sowing-", "move-day-", "leave-it-"} {
			if name == kind+garden.Slug(t.Name)+".pdf" {
				return t.Name
			}
		}
	}
	return ""
}
