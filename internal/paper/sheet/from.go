package sheet

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
)

// CoverOf is what stands in the title block of a paper that is about no lid.
// revision may be empty.
func CoverOf(a *garden.Assessment, revision string) Lid {
	return Lid{Garden: a.Garden, Invented: a.Invented(), System: a.Plan.Units, On: a.On, Revision: revision}
}

// Of is the lid of one tub of an assessment; ok is false where no lid could be
// laid out. revision may be empty.
func Of(a *garden.Assessment, index int, revision string) (l Lid, ok bool) {
	t := a.Tubs[index]
	if t.Lid == nil {
		return Lid{}, false
	}
	layout, ok := t.Lid.Layout(t.Lid.Chosen)
	if !ok {
		return Lid{}, false
	}
	cup := a.Plan.Tubs[index].Cup
	l = Lid{
		Garden: a.Garden, Tub: t.Name, System: a.Plan.Units, Invented: a.Invented(),
		Outline: scene.PathOfShape(t.Lid.Outline), ThicknessMM: t.Lid.Thick, ToleranceMM: t.Lid.ErrorMM, LeastWebMM: max(layout.WorstWebMM, 0),
		Cup:    Cup{BodyMM: float64(cup.Body.Value), RimMM: float64(cup.Rim.Value), DepthMM: float64(cup.Depth.Value)},
		Layout: layout.Name, Stop: a.StopOf(index), On: a.On, Revision: revision,
	}
	if layout.Name != "widest" {
		l.RulerStepMM = t.Lid.StepMM
	}
	if t.Lid.Foam {
		f := garden.FoamRules()
		l.Foam = &Foam{WebMM: f.WebMM, EdgeMM: f.EdgeMM, CupMM: f.CupMM}
	}
	for _, k := range t.Lid.Clear {
		l.KeepClear = append(l.KeepClear, KeepClear{Shape: scene.PathOfShape(k.Shape), Why: k.Why})
	}
	for _, h := range layout.Holes {
		l.Holes = append(l.Holes, Hole{N: h.N, XMM: h.XMM, YMM: h.YMM, SizeMM: h.DiameterMM})
	}
	if s := t.Lid.Service; s != nil {
		l.Service = &Opening{XMM: s.XMM, YMM: s.YMM, SizeMM: s.DiameterMM}
	}
	if w := t.Lid.AirLine; w != nil {
		l.AirLine = &AirLine{Opening: Opening{XMM: w.XMM, YMM: w.YMM, SizeMM: w.DiameterMM}, OnWall: w.On == "wall", HeightMM: w.HeightMM}
	}
	return l, true
}

// DipstickOf is the dipstick strip of one tub; ok is false where its lines are
// not known.
func DipstickOf(a *garden.Assessment, index int, revision string) (d Dipstick, ok bool) {
	t := a.Tubs[index]
	if len(t.Levels) == 0 {
		return Dipstick{}, false
	}
	d = Dipstick{Garden: a.Garden, Tub: t.Name, Invented: a.Invented(), System: a.Plan.Units, TopMM: t.Shape.HeightMM(), On: a.On, Revision: revision}
	for _, v := range t.VolumeMarks(a.Plan.Units) {
		d.Volumes = append(d.Volumes, VolumeMark{DepthMM: v.DepthMM, Words: v.Words})
	}
	for _, l := range t.Levels {
		d.Lines = append(d.Lines, LineMark{DepthMM: l.DepthMM, Words: l.Words, Lowest: l.Lowest})
	}
	return d, true
}
