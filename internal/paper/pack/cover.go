package pack

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/booklet"
)

// coverOf is what every paper of a garden says of itself.
func coverOf(a *garden.Assessment, revision string) booklet.Cover {
	return booklet.Cover{Garden: a.Garden, Invented: a.Invented(), System: a.Plan.Units, On: a.On, Revision: revision}
}

// wetTubs are the tubs whose fill line is known.
func wetTubs(a *garden.Assessment) []booklet.WetTub {
	var out []booklet.WetTub
	for _, t := range a.Tubs {
		if len(t.Levels) == 0 {
			continue
		}
		fill := t.Levels[0].DepthMM
		out = append(out, booklet.WetTub{Name: t.Name, FillMM: fill, Fill: garden.Mark(fill, a.Plan.Units)})
	}
	return out
}
