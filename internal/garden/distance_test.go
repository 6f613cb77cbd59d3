package garden_test

import (
	"math"

	"rootbell/internal/garden/plan"
)

// The measuring of these tests: plain formulas on the plan's own numbers, which
// share no code with the engine that lays the holes.

type spot struct{ x, y float64 }

func (s spot) to(o spot) float64 { return math.Hypot(s.x-o.x, s.y-o.y) }

func (s spot) toSegment(a, b spot) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	u := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		u = min(max(((s.x-a.x)*dx+(s.y-a.y)*dy)/l, 0), 1)
	}
	return s.to(spot{a.x + u*dx, a.y + u*dy})
}

// inBox is how deep a place lies in a box with rounded corners, negative
// outside of it.
func inBox(s spot, x0, y0, x1, y1, radius float64) float64 {
	qx := math.Abs(s.x-(x0+x1)/2) - (math.Abs(x1-x0)/2 - radius)
	qy := math.Abs(s.y-(y0+y1)/2) - (math.Abs(y1-y0)/2 - radius)
	return radius - math.Hypot(max(qx, 0), max(qy, 0)) - min(max(qx, qy), 0)
}

// inPolygon is the same for corners joined by straight edges.
func inPolygon(s spot, corners []spot) float64 {
	least, inside := math.Inf(1), false
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		least = min(least, s.toSegment(a, b))
		if (a.y > s.y) != (b.y > s.y) && s.x < a.x+(b.x-a.x)*(s.y-a.y)/(b.y-a.y) {
			inside = !inside
		}
	}
	if inside {
		return least
	}
	return -least
}

func corners(pairs []plan.Pair) []spot {
	var out []spot
	for _, p := range pairs {
		out = append(out, spot{mm(p[0]), mm(p[1])})
	}
	return out
}

func mm(l plan.Length) float64 { return float64(l.Value) }

// mmOr is a length of the plan, or what
// netcup/facts.csv takes where it is left out.
func mmOr(l plan.Length, otherwise float64) float64 {
	if !l.Set() {
		return otherwise
	}
	return float64(l.Value)
}

// inLid is how deep a place lies in the flat part of a lid.
func inLid(l plan.Lid, s spot) float64 {
	switch {
	case l.Diameter.Set():
		r := mm(l.Diameter) / 2
		return r - s.to(spot{r, r})
	case len(l.Outline) > 0:
		return inPolygon(s, corners(l.Outline))
	}
	return inBox(s, 0, 0, mm(l.Size[0]), mm(l.Size[1]), mm(l.CornerRadius))
}

// lidMiddle is the middle of the lid's flat part.
func lidMiddle(l plan.Lid) spot {
	switch {
	case l.Diameter.Set():
		return spot{mm(l.Diameter) / 2, mm(l.Diameter) / 2}
	case len(l.Outline) > 0:
		lo, hi := spot{math.Inf(1), math.Inf(1)}, spot{math.Inf(-1), math.Inf(-1)}
		for _, c := range corners(l.Outline) {
			lo, hi = spot{min(lo.x, c.x), min(lo.y, c.y)}, spot{max(hi.x, c.x), max(hi.y, c.y)}
		}
		return spot{(lo.x + hi.x) / 2, (lo.y + hi.y) / 2}
	}
	return spot{mm(l.Size[0]) / 2, mm(l.Size[1]) / 2}
}

// fromClear is how far a place lies from a shape to keep clear, negative inside.
func fromClear(k plan.KeepClear, s spot) float64 {
	switch {
	case k.Circle.Set():
		return s.to(spot{mm(k.Circle[0]), mm(k.Circle[1])}) - mm(k.Circle[2])
	case len(k.Polygon) > 0:
		return -inPolygon(s, corners(k.Polygon))
	case k.Rib.Set():
		ends := corners([]plan.Pair{k.Rib[0], k.Rib[1]})
		return s.toSegment(ends[0], ends[1]) - mm(k.Width)/2
	}
	return -inBox(s, mm(k.Rectangle[0]), mm(k.Rectangle[1]), mm(k.Rectangle[2]), mm(k.Rectangle[3]), 0)
}

// inWall is how deep a place lies within the inner wall at a height, with the
// lid centred on the opening; infinite where the tub was poured.
func inWall(t *plan.Tub, height float64, s spot) float64 {
	c := lidMiddle(t.Lid)
	switch {
	case t.Round != nil:
		share := height / mm(t.Round.Height)
		return (mm(t.Round.Base)+(mm(t.Round.Top)-mm(t.Round.Base))*share)/2 - s.to(c)
	case t.Inside == nil:
		return math.Inf(1)
	}
	i := t.Inside
	share := height / mm(i.Height)
	between := func(base, top float64) float64 { return base + (top-base)*share }
	length, width := between(mm(i.Base[0]), mm(i.Top[0])), between(mm(i.Base[1]), mm(i.Top[1]))
	radius := between(mm(i.CornerRadius.Base), mm(i.CornerRadius.Top))
	return inBox(s, c.x-length/2, c.y-width/2, c.x+length/2, c.y+width/2, radius)
}

// keeps are the distances that the document format says a centre keeps.
type keeps struct {
	hole, err, web           float64
	edge, clear, wall, apart float64
	cupBottom                float64
	height                   float64
}

// keepsOf works them out from the plan: The rule of docs/plan.md is written out here a
// second time, with its numbers. Foam keeps 40 mm and 50 mm to its edge.
func keepsOf(p *plan.Plan, t *plan.Tub, hole float64) keeps {
	k := keeps{hole: hole, err: mmOr(p.Tools.MarkingError, 2) + mmOr(p.Tools.DrillingError, 1.5), web: 12}
	edgeWeb, thickness := 12.0, 2.0
	if t.Lid.Material == "foam" {
		k.web, edgeWeb, thickness = 40, 50, 30
	}
	k.edge = max(mmOr(t.Spacing.Edge, 60), hole/2+edgeWeb+k.err)
	k.clear = hole/2 + max(mmOr(t.Spacing.Clear, 20), k.web+k.err)
	k.wall = mm(t.Cup.Body)/2 + 10
	k.apart = max(mm(t.Cup.Rim)+2, hole+k.web+2*k.err)
	switch {
	case t.Round != nil:
		k.height = mm(t.Round.Height)
	case t.Inside != nil:
		k.height = mm(t.Inside.Height)
	default:
		k.height = mm(t.Poured[len(t.Poured)-1].Depth)
	}
	k.cupBottom = k.height + mmOr(t.Lid.AboveRim, 0) + mmOr(t.Lid.Thickness, thickness) - mm(t.Cup.Depth)
	return k
}
