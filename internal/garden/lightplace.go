package garden

import (
	"slices"

	"rootbell/internal/base/plane"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lamp"
)

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
	share := (float64(k) + 0.5) / float64(len(a.plan.Lamps))
	if a.endToEnd() {
		return plane.Point{X: share * width, Y: depth / 2}
	}
	return plane.Point{X: width / 2, Y: share * depth}
}

// endToEnd tells whether the lamps are short enough to hang one after another
// along the bay.
func (a *assessor) endToEnd() bool {
	all := 0.0
	for _, l := range a.plan.Lamps {
		all += float64(l.Length.Value)
	}
	return all <= float64(a.plan.Shelf.Width.Value)
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

// luxOver is what the lux meter read, in the coordinates of a tub's lid, and the
// kind of the first light that counts. Several readings of one place are its
// mean; one without a place counts in the middle of the lid, which is everywhere
// where it stands alone.
func (a *assessor) luxOver(tub int) (lamp.Measured, lamp.Source) {
	var out lamp.Measured
	var times []float64
	first := lamp.WhiteLED
	over, half := a.lidInBay(tub), lidMiddle(a.plan.Tubs[tub].Lid)
	for _, l := range a.plan.Lux {
		source := sourceOf(l)
		ppfd, ok := source.PPFD(float64(l.Value.Value))
		if !ok {
			continue
		}
		p := lamp.Point{XMM: half.X, YMM: half.Y}
		if l.At.Set() {
			p = lamp.Point{XMM: float64(l.At[0].Value), YMM: float64(l.At[1].Value)}
			if a.bayKnown() {
				p.XMM, p.YMM = p.XMM-over.X, p.YMM-over.Y
			}
		}
		if len(out) == 0 {
			first = source
		}
		i := slices.IndexFunc(out, func(r lamp.Reading) bool { return r.Point == p })
		if i < 0 {
			i = len(out)
			out, times = append(out, lamp.Reading{Point: p}), append(times, 0)
		}
		times[i]++
		out[i].PPFD += (ppfd - out[i].PPFD) / times[i]
	}
	return out, first
}

// sourceOf is the kind of light that a reading is of.
func sourceOf(l plan.Lux) lamp.Source {
	if source, ok := lamp.FindSource(l.Source); ok {
		return source
	}
	return lamp.WhiteLED
}
