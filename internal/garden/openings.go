package garden

import (
	"fmt"
	"math"

	"rootbell/internal/base/plane"
	"rootbell/internal/base/quantity"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/netcup"
)

// lipGapMM keeps an opening's edge from under a cup's lip.
const lipGapMM = 2

// openings places the air line and the service hole in the room the cups
// leave; they never move a cup.
func (t *tubState) openings(r *lidRegion, l *Lid, chosen Layout) {
	e, web := r.margins.Error.Base, r.margins.Web.Base
	taken := make([]plane.Circle, 0, len(chosen.Holes)+len(r.fixed))
	take := func(p plane.Point, lip float64) {
		taken = append(taken, plane.Circle{Centre: p, Radius: max(r.hole/2+web+2*e, lip)})
	}
	for _, h := range chosen.Holes {
		take(plane.Point{X: h.XMM, Y: h.YMM}, t.cup.RimMM/2+lipGapMM)
	}
	for _, p := range r.fixed {
		take(p, 0) // a hole that is there but carries no cup
	}
	if !t.setup.Still {
		l.AirLine = t.airLine(r, taken)
		if l.AirLine == nil {
			t.warn("no-air-hole", t.field+".air", fmt.Sprintf("%s: there is no room left for the air line's hole, in the lid or in the wall.", t.name), "Move or leave out one cup, or keep less clear.")
		} else if l.AirLine.On == "lid" {
			taken = append(taken, plane.Circle{Centre: plane.Point{X: l.AirLine.XMM, Y: l.AirLine.YMM}, Radius: l.AirLine.DiameterMM/2 + web + 2*e})
		}
	}
	d := netcup.ServiceHoleMM()
	if p, ok := t.seat(r, d, taken, false); ok {
		l.Service = &Opening{XMM: quantity.Round(p.X, 2), YMM: quantity.Round(p.Y, 2), DiameterMM: d}
		return
	}
	t.warn("no-service-hole", t.field+".lid", fmt.Sprintf("%s: there is no room left for the service hole (%s) for dipstick, probe and funnel.", t.name, t.small(d)), "Without it every top-up lifts the roots: plant one fewer, or lift one cup to look in.")
}

// airHole is the diameter of the air line's hole: the tube and half a
// millimetre.
func (t *tubState) airHole() float64 {
	usual := netcup.AirHoleMM()
	if t.typed.Air.Tube.Set() {
		return float64(t.typed.Air.Tube.Value) + 0.5
	}
	return usual
}

// airLine is in the lid near the rim, else in the wall above the water.
func (t *tubState) airLine(r *lidRegion, taken []plane.Circle) *AirLine {
	d := t.airHole()
	if p, ok := t.seat(r, d, taken, true); ok {
		height := t.shape.HeightMM() + t.setup.AboveRimMM + t.setup.ThicknessMM
		return &AirLine{XMM: quantity.Round(p.X, 2), YMM: quantity.Round(p.Y, 2), On: "lid", HeightMM: quantity.Round(height, 1), DiameterMM: d}
	}
	e := r.margins.Error.Base
	web := r.margins.Web.Base
	height := t.shape.HeightMM() - web - d/2 - e
	if height < t.lines.Fill.Base+d/2+web {
		return nil
	}
	for _, p := range walk(r.outline) {
		free := math.Inf(1)
		for _, k := range r.clear {
			free = min(free, -k.Shape.Distance(p))
		}
		if free >= d/2+web+e {
			return &AirLine{XMM: quantity.Round(p.X, 2), YMM: quantity.Round(p.Y, 2), On: "wall", HeightMM: quantity.Round(height, 1), DiameterMM: d}
		}
	}
	return nil
}

// seat finds a place for a small hole that opens into the tub: on the ruler's
// step, in the plastic all round it, near the rim or roomiest. taken is what
// its edge must keep out of: other holes with the plastic they need.
func (t *tubState) seat(r *lidRegion, diameter float64, taken []plane.Circle, nearRim bool) (plane.Point, bool) {
	e := r.margins.Error.Base
	web := r.margins.Web.Base
	margin := diameter/2 + web + e
	bounds := []lid.Inset{{Shape: r.outline, Margin: margin}}
	if r.rim != nil {
		bounds = append(bounds, lid.Inset{Shape: r.rim, Margin: diameter/2 + e})
	}
	var keepOuts []lid.KeepOut
	for _, c := range r.clear {
		keepOuts = append(keepOuts, lid.KeepOut{Shape: c.Shape, Clearance: margin})
	}
	for _, c := range taken {
		keepOuts = append(keepOuts, lid.KeepOut{Shape: c, Clearance: diameter / 2})
	}
	small, err := searchedRegion(t.in.Memory, bounds, keepOuts)
	if err != nil {
		return plane.Point{}, false
	}
	cost := small.Roomiest()
	if nearRim {
		cost = lid.NearOutline(r.outline)
	}
	return small.Seat(t.step(), cost)
}

// walk is points along an outline, a centimetre apart.
func walk(s plane.Shape) []plane.Point {
	box := s.Bounds()
	c := box.Centre()
	reach := box.Width() + box.Height()
	steps := max(int(s.Perimeter()/10), 8)
	var out []plane.Point
	for k := range steps {
		a := 2 * math.Pi * float64(k) / float64(steps)
		out = append(out, s.Nearest(plane.Point{X: c.X + reach*math.Cos(a), Y: c.Y + reach*math.Sin(a)}))
	}
	return out
}
