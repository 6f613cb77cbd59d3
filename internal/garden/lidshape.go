package garden

import "rootbell/internal/base/plane"

// LidShape is a tub's lid as it was measured, in the plan's coordinates, with
// what is kept clear on it: also where no holes could be laid out. ok is false
// where the outline is impossible or was not given.
func (a *Assessment) LidShape(tub int) (shape plane.Shape, kept []Clear, ok bool) {
	l := a.Plan.Tubs[tub].Lid
	shape, err := outline(l)
	if err != nil {
		return nil, nil, false
	}
	for _, k := range l.KeepClear {
		s := keepClear(k)
		if s.Check() == nil && !shape.Bounds().Grown(1).Meet(s.Bounds()).Empty() {
			kept = append(kept, Clear{Shape: s, Why: k.Why})
		}
	}
	return shape, kept, true
}

// StandingHoles are the centres of the holes that a tub's lid has already, in
// the plan's coordinates and order.
func (a *Assessment) StandingHoles(tub int) []plane.Point {
	var out []plane.Point
	for _, h := range a.Plan.Tubs[tub].Lid.Holes {
		out = append(out, plane.Point{X: float64(h.At[0].Value), Y: float64(h.At[1].Value)})
	}
	return out
}
