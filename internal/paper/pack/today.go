package pack

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/care"
	"rootbell/internal/paper/daily"
)

// Today lists the papers that hang or lie at the tub, for the assessment's day.
func Today(a *garden.Assessment) []Paper { return TodayOf(a, "") }

// TodayOf is Today for a revision of the plan.
func TodayOf(a *garden.Assessment, revision string) []Paper {
	b := builder{a: a}
	for _, c := range append(daily.Cards(a, revision), care.Cards(a, revision)...) {
		b.card(c, "")
	}
	return b.papers
}

// Stages are the stages that have papers, in their order, with the list of each.
func Stages() []Stage {
	return []Stage{
		{Name: "build", For: "for the day of building", Papers: Build},
		{Name: "mix", For: "for the day of mixing", Asks: garden.StageMix, Papers: Mix},
		{Name: "season", For: "for the season", Asks: garden.StageSeason, Papers: Season},
		{Name: "choose", For: "for the decision", Asks: garden.StageChoose, Papers: Choose},
		{Name: "class", For: "for the class", Asks: garden.StageMix | garden.StageSeason | garden.StageClass, Papers: Class},
		{Name: "today", For: "at the tub", Asks: garden.StageMix, Papers: Today},
	}
}

// Stage is a stage of the work and its papers.
type Stage struct {
	Name   string
	For    string        // what they are for, in a few words
	Asks   garden.Stages // what the assessment is to be asked for
	Papers func(*garden.Assessment) []Paper
}
