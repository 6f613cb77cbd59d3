package booklet

import (
	"slices"

	"rootbell/internal/garden"
	"rootbell/internal/paper/sheet"
)

// SectionOf is the section drawing of one tub of an assessment; ok is false
// where no lid could be laid out.
func SectionOf(a *garden.Assessment, index int) (s Section, ok bool) {
	t := a.Tubs[index]
	if t.Lid == nil || t.Lid.Section == nil {
		return Section{}, false
	}
	c, cup := t.Lid.Section, a.Plan.Tubs[index].Cup
	s = Section{
		Cover: Cover{Garden: a.Garden, Invented: a.Invented(), System: a.Plan.Units, On: a.On}, Tub: t.Name,
		FloorMM: c.FloorMM, LidWidthMM: c.LidToMM - c.LidFromMM, LidThicknessMM: c.LidThicknessMM, LidFaceMM: c.LidFaceMM,
		LidShiftMM: (c.LidFromMM+c.LidToMM)/2 - c.MiddleMM,
		Cup:        sheet.Cup{BodyMM: float64(cup.Body.Value), RimMM: float64(cup.Rim.Value), DepthMM: float64(cup.Depth.Value)},
		FillMM:     c.FillMM, LaterFillMM: c.LaterMM, LowestMM: c.LowestMM, Aerated: c.Aerated, StoneMM: c.StoneMM,
		PlantMM: c.PlantMM, SpreadMM: c.SpreadMM, LampMM: c.LampMM, LampWideMM: c.LampLengthMM,
		ShelfWideMM: c.ShelfMM, ClearMM: c.ClearMM, Stop: a.StopOf(index),
	}
	for _, x := range c.CupsMM {
		s.CupsAtMM = append(s.CupsAtMM, x-c.LidFromMM)
	}
	slices.Sort(s.CupsAtMM)
	s.Notes = append(s.Notes, "Cut "+sheet.Mark(c.YMM, s.System)+" "+sheet.UnitName(s.System)+" up from the lid's lower edge, where most cups hang.")
	for _, w := range c.Wall {
		s.Profile = append(s.Profile, Width{HeightMM: w.HeightMM, MM: w.MM})
	}
	if len(c.Wall) == 0 {
		s.Profile = []Width{{0, s.LidWidthMM}, {c.RimMM, s.LidWidthMM}}
		s.Notes = append(s.Notes, "The wall was not measured: it is drawn straight, as wide as the lid.")
	}
	s.OutsideWidthMM = max(c.OutsideWidthMM, s.LidWidthMM, s.Profile[len(s.Profile)-1].MM)
	if c.OutsideWidthMM == 0 {
		s.Notes = append(s.Notes, "The outside was not measured.")
	}
	return s, true
}
