package pack

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/mixing"
)

// Mix lists the papers of the day of mixing, for an assessment that was asked
// for garden.StageMix.
func Mix(a *garden.Assessment) []Paper { return MixOf(a, "") }

// MixOf is Mix for a revision of the plan.
func MixOf(a *garden.Assessment, revision string) []Paper {
	b := builder{a: a}
	for _, c := range mixing.Cards(a, revision) {
		b.card(c, "")
	}
	return b.papers
}
