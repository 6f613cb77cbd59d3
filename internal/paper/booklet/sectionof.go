package booklet

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/cutaway"
	"rootbell/internal/paper/sheet"
)

// SectionOf is the section drawing of one tub of an assessment; ok is false
// where no lid could be laid out.
func SectionOf(a *garden.Assessment, index int) (s Section, ok bool) {
	cut, ok := cutaway.Of(a, index)
	if !ok {
		return Section{}, false
	}
	s = Section{
		Cover: Cover{Garden: a.Garden, Invented: a.Invented(), System: a.Plan.Units, On: a.On}, Cut: cut,
		Tub: a.Tubs[index].Name, Stop: a.StopOf(index),
	}
	s.Notes = append(s.Notes, "Cut "+sheet.Mark(cut.AtMM, s.System)+" "+sheet.UnitName(s.System)+" up from the lid's lower edge, where most cups hang.")
	s.Notes = append(s.Notes, cut.Guessed...)
	return s, true
}
