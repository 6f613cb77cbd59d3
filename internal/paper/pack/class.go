package pack

import (
	"slices"

	"rootbell/internal/garden"
	"rootbell/internal/paper/classroom"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/lessons"
	"rootbell/internal/paper/scene"
)

// Class lists the papers of the class, for an assessment that was asked for
// garden.StageClass.
func Class(a *garden.Assessment) []Paper { return ClassOf(a, "") }

// ClassOf is Class for a revision of the plan.
func ClassOf(a *garden.Assessment, revision string) []Paper {
	b := builder{a: a}
	for _, c := range slices.Concat(classroom.Cards(a, revision), lessons.Cards(a, revision)) {
		b.add(Paper{
			Name: c.Name, Title: c.Title, About: c.About, Draw: c.PDF,
			read: func(size scene.Size) ([]content.Sheet, error) { return c.Sheets(size), nil },
		})
	}
	return b.papers
}
