package pack

import (
	"slices"

	"rootbell/internal/garden"
	"rootbell/internal/paper/classroom"
	"rootbell/internal/paper/lessons"
)

// Class lists the papers of the class, for an assessment that was asked for
// garden.StageClass.
func Class(a *garden.Assessment) []Paper { return ClassOf(a, "") }

// ClassOf is Class for a revision of the plan.
func ClassOf(a *garden.Assessment, revision string) []Paper {
	b := builder{a: a}
	for _, c := range slices.Concat(classroom.Cards(a, revision), lessons.Cards(a, revision)) {
		b.card(c, "")
	}
	return b.papers
}
