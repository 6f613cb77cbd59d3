package garden

import (
	"rootbell/internal/base/plane"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lamp"
)

// tubLight is the light over one tub's lid, in the lid's coordinates: from
// lamps, or from what a lux meter read.
type tubLight struct {
	rig    lamp.Rig
	read   lamp.Measured // where there is any, it counts and not the lamps
	source lamp.Source
	hours  float64 // lit in a day, h/d
}

// known tells whether anything is known of the light.
func (l tubLight) known() bool { return len(l.rig) > 0 || len(l.read) > 0 }

// at is the light on level leaves at the height of the lid, on transplant day,
// at some places on it, in µmol/m²/s. Later on lamp and leaves rise together.
func (l tubLight) at(places []lamp.Point) []float64 {
	if len(l.read) > 0 {
		return l.read.At(places)
	}
	return l.rig.At(places)
}

// dli is the light of a day at a place, in mol/m²/d.
func (l tubLight) dli(p lamp.Point) float64 {
	if len(l.read) > 0 {
		return lamp.DLI(l.read.PPFD(p.XMM, p.YMM), l.hours)
	}
	return l.rig.DLI(p.XMM, p.YMM)
}

// lightOf is the light over a tub of the plan. It is worked out from the plan
// alone, so that other stages can ask for it at any time.
func (a *assessor) lightOf(tub int) tubLight {
	l := tubLight{source: lamp.WhiteLED, hours: a.litHours()}
	for k := range a.plan.Lamps {
		l.rig = append(l.rig, a.lampOver(k, tub))
	}
	return l
}

// standPPFD is the light on the leaves of each crop of a tub whose lid is laid
// out, in the order of its crops, in µmol/m²/s while all lamps are lit: the mean
// over its holes, for the plan does not say which crop stands in which.
// umolPerJoule is of that light; ok is false where nothing is known of it.
func (t *tubState) standPPFD() (ppfd []float64, umolPerJoule float64, ok bool) {
	light := t.lightOf(t.index)
	places := t.holePlaces()
	if !light.known() || len(places) == 0 {
		return nil, 0, false
	}
	mean := lamp.SpreadOf(light.at(places)).Mean
	for range t.out.Crops {
		ppfd = append(ppfd, mean)
	}
	return ppfd, light.source.UmolPerJoule(), true
}

// holePlaces are the holes of the layout that is shown.
func (t *tubState) holePlaces() []lamp.Point {
	if t.out.Lid == nil {
		return nil
	}
	chosen, ok := t.out.Lid.Layout(t.out.Lid.Chosen)
	if !ok {
		return nil
	}
	out := make([]lamp.Point, len(chosen.Holes))
	for i, h := range chosen.Holes {
		out[i] = lamp.Point{XMM: h.XMM, YMM: h.YMM}
	}
	return out
}

// litHours is the longest that any lamp is lit in a day.
func (a *assessor) litHours() float64 {
	_, usual, _ := lamp.UsualHours()
	if len(a.plan.Lamps) == 0 {
		return usual
	}
	most := 0.0
	for _, l := range a.plan.Lamps {
		most = max(most, hoursOf(l))
	}
	return most
}

// hoursOf is how long a lamp is lit, over midnight where it goes out before it
// goes on; the usual time where the plan does not say.
func hoursOf(l plan.Lamp) float64 {
	if !l.Lit[0].Given || !l.Lit[1].Given {
		_, usual, _ := lamp.UsualHours()
		return usual
	}
	const day = 24 * 60
	from, to := int(l.Lit[0].Value), int(l.Lit[1].Value)
	if to < from {
		to += day
	}
	return float64(min(to-from, day)) / 60
}

// fluxOf is the photons a lamp sends, from its watts where nothing else is
// known; 0 where neither is.
func fluxOf(l plan.Lamp) float64 {
	if l.Flux.Set() {
		return float64(l.Flux.Value)
	}
	return lamp.FluxOfWatts(float64(l.Power.Value))
}

// lampOver is a lamp of the plan in the coordinates of a tub's lid.
func (a *assessor) lampOver(k, tub int) lamp.Lamp {
	l := a.plan.Lamps[k]
	at := a.lampAt(k)
	over := a.lidInBay(tub)
	name := l.Name
	if name == "" {
		name = "the lamp"
	}
	height := lamp.StartClearMM()
	if l.AboveLid.Set() {
		height = float64(l.AboveLid.Value)
	}
	return lamp.Lamp{
		Name: name, XMM: at.X - over.X, YMM: at.Y - over.Y, AlongXMM: float64(l.Length.Value), AlongYMM: float64(l.Width.Value),
		AboveMM: height, FluxUmolS: fluxOf(l), HoursADay: hoursOf(l), PowerWatts: float64(l.Power.Value),
	}
}

// bayKnown tells whether every tub has its place in a bay whose size is known.
func (a *assessor) bayKnown() bool {
	s := a.plan.Shelf
	if s == nil || !s.Width.Set() || !s.Depth.Set() {
		return false
	}
	for _, t := range a.plan.Tubs {
		if t.Outside == nil || !t.Outside.Size.Set() {
			return false
		}
	}
	return true
}

// lampAt is the middle of a lamp in the bay: end to end along it where their
// lengths allow, else side by side across it. Where the bay is not known all
// hang over the middle of the tub.
func (a *assessor) lampAt(k int) plane.Point {
	if !a.bayKnown() {
		return plane.Point{}
	}
	width, depth := float64(a.plan.Shelf.Width.Value), float64(a.plan.Shelf.Depth.Value)
	all := 0.0
	for _, l := range a.plan.Lamps {
		all += float64(l.Length.Value)
	}
	share := (float64(k) + 0.5) / float64(len(a.plan.Lamps))
	if all <= width {
		return plane.Point{X: share * width, Y: depth / 2}
	}
	return plane.Point{X: width / 2, Y: share * depth}
}

// lidInBay is where the origin of a tub's lid lies in the bay: the tubs stand
// side by side in the plan's order, in its middle.
func (a *assessor) lidInBay(tub int) plane.Point {
	half := lidMiddle(a.plan.Tubs[tub].Lid)
	if !a.bayKnown() {
		return plane.Point{X: -half.X, Y: -half.Y}
	}
	all, before := 0.0, 0.0
	for i, t := range a.plan.Tubs {
		length := float64(t.Outside.Size[0].Value)
		if i < tub {
			before += length
		}
		all += length
	}
	x := (float64(a.plan.Shelf.Width.Value)-all)/2 + before + float64(a.plan.Tubs[tub].Outside.Size[0].Value)/2
	return plane.Point{X: x - half.X, Y: float64(a.plan.Shelf.Depth.Value)/2 - half.Y}
}

// lidMiddle is the middle of a lid in its own coordinates; the origin where its
// outline is impossible, which is a stop elsewhere.
func lidMiddle(l plan.Lid) plane.Point {
	shape, err := outline(l)
	if err != nil {
		return plane.Point{}
	}
	return shape.Bounds().Centre()
}

// perM2 is how closely so many plants stand, in plants a square metre: each has
// its share of the lid. It is 0 where the outline is impossible.
func (t *tubState) perM2(plants int) float64 {
	const squareMetre = 1e6
	shape, err := outline(t.typed.Lid)
	if err != nil || !(shape.Area() > 0) {
		return 0
	}
	return float64(plants) * squareMetre / shape.Area()
}
