package garden

import (
	"errors"
	"fmt"

	"rootbell/internal/base/plane"
	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
	"rootbell/internal/science/lid"
	"rootbell/internal/science/netcup"
)

// lidRegion is where a tub's hole centres may lie, with what it was made of.
type lidRegion struct {
	searched
	margins netcup.Margins
	outline plane.Shape
	wall    plane.Shape // inner wall at the depth of the cup's bottom; nil where not known
	rim     plane.Shape // inner wall at the rim; nil where not known
	clear   []Clear
	fixed   []plane.Point
	hole    float64
	centre  plane.Point
	ruled   lid.Ruled // the ruler's layout, once laid
}

// Clear is a keep-clear shape of a lid, in the plan's coordinates.
type Clear struct {
	Shape plane.Shape
	Why   string
}

// holes takes the hole the plan names, or the saw that suits the cup.
func (t *tubState) holes() {
	field := t.field + ".hole"
	hole := float64(t.typed.Hole.Value)
	would := ""
	for i, s := range t.cup.SawsFor() {
		if i > 0 {
			would += ", "
		}
		would += t.tool(s)
	}
	if would == "" {
		would = fmt.Sprintf("between %s and %s", t.tool(t.cup.BodyMM), t.tool(t.cup.RimMM-6))
	}
	switch {
	case !t.typed.Hole.Set():
		found, ok := t.cup.Hole()
		if !ok {
			t.stop("cup-lip-narrow", t.field+".cup", fmt.Sprintf("%s: a cup of %s body and %s rim has too narrow a lip: no hole lets it in and bears it.", t.name, t.small(t.cup.BodyMM), t.small(t.cup.RimMM)), "Measure five cups again: largest body under the lip, smallest rim; or use other cups.")
			return // what rests on a hole is left out
		}
		t.note("hole-chosen", field, fmt.Sprintf("%s: a hole of %s is taken for the cup.", t.name, t.tool(found)), "Cut one trial hole in scrap and drop a cup in before you drill the lid.")
		hole = found
	case t.cup.Fits(hole):
	case hole <= t.cup.BodyMM:
		t.stop("hole-too-small", field, fmt.Sprintf("%s: the cup is %s wide under its lip and does not go through a hole of %s.", t.name, t.tool(t.cup.BodyMM), t.tool(hole)), "Sizes that would do: "+would+".")
	default:
		t.stop("hole-too-big", field, fmt.Sprintf("%s: a hole of %s leaves a lip of %s no more than %s of plastic all round: the cup may fall through.", t.name, t.tool(hole), t.tool(t.cup.RimMM), t.small(3)), "Sizes that would do: "+would+".")
	}
	if !netcup.Common(hole) {
		t.note("saw-uncommon", field, fmt.Sprintf("%s: few shops have a saw of %s.", t.name, t.tool(hole)), "Common sizes that would do: "+would+".")
	}
	t.wish = netcup.Wish{HoleMM: hole, Foam: t.typed.Lid.Material == "foam"}
	t.wish.EdgeMM = given(t.typed.Spacing.Edge)
	t.wish.ClearMM = given(t.typed.Spacing.Clear)
	t.wish.MarkingErrorMM = given(t.plan.Tools.MarkingError)
	t.wish.DrillingMM = given(t.plan.Tools.DrillingError)
}

func given(l plan.Length) *float64 {
	if !l.Set() {
		return nil
	}
	v := float64(l.Value)
	return &v
}

// tool writes the size of a saw or a cup as shops do: whole or half
// millimetres, or inches and a sixteenth.
func (a *assessor) tool(mm float64) string {
	if a.plan.Units == quantity.US {
		return quantity.FormatMark(mm, quantity.US)
	}
	return a.small(mm)
}

// small writes a tool-sized length: millimetres, or inches to three places.
func (a *assessor) small(mm float64) string {
	return quantity.Format(quantity.SmallLength, mm, a.plan.Units)
}

// region makes where centres may lie; nil, with a stop said, where that is
// nowhere or the lid contradicts itself.
func (t *tubState) region() *lidRegion {
	if t.wish.HoleMM == 0 {
		return nil // no hole is right for the cup
	}
	r := &lidRegion{hole: t.wish.HoleMM, margins: t.cup.Margins(t.book, t.wish)}
	field := t.field + ".lid"
	var err error
	if r.outline, err = outline(t.typed.Lid); err != nil {
		t.stop("lid-shape", field, fmt.Sprintf("%s: the lid cannot be: %s.", t.name, err), "Measure the lid's flat part again.")
		return nil
	}
	r.centre = r.outline.Bounds().Centre()
	bounds := []lid.Inset{{Shape: r.outline, Margin: r.margins.Edge.Base}}
	r.wall, r.rim = t.wallAt(t.lines.CupBottom.Base, r.centre), t.wallAt(t.shape.HeightMM(), r.centre)
	if r.wall != nil {
		bounds = append(bounds, lid.Inset{Shape: r.wall, Margin: r.margins.Wall.Base})
	} else {
		t.note("wall-unknown", t.field, fmt.Sprintf("%s: of a poured tub only the depths are known, so the cups' distance from its wall is not checked.", t.name), "Hold a cup under the lid at the outermost holes before you drill.")
	}
	var keepOuts []lid.KeepOut
	for i, k := range t.typed.Lid.KeepClear {
		s := keepClear(k)
		where := fmt.Sprintf("%s.keep_clear[%d]", field, i)
		if err := s.Check(); err != nil {
			t.stop("keep-clear-shape", where, fmt.Sprintf("%s: the shape kept clear cannot be: %s.", t.name, err), "Check its measures.")
			return nil
		}
		if !r.outline.Bounds().Grown(1).Meet(s.Bounds()).Empty() {
			r.clear = append(r.clear, Clear{Shape: s, Why: k.Why})
			keepOuts = append(keepOuts, lid.KeepOut{Shape: s, Clearance: r.margins.Clear.Base})
			continue
		}
		t.stop("keep-clear-off-lid", where, fmt.Sprintf("%s: a shape kept clear lies outside the lid.", t.name), "Coordinates count from the lid's lower left corner, x to the right, y up, seen from above.")
	}
	for i, h := range t.typed.Lid.Holes {
		p := plane.Point{X: float64(h.At[0].Value), Y: float64(h.At[1].Value)}
		if r.outline.Distance(p) <= 0 {
			t.stop("hole-off-lid", fmt.Sprintf("%s.holes[%d].at", field, i), fmt.Sprintf("%s: a hole that is there already lies outside the lid.", t.name), "Coordinates count from the lid's lower left corner, x to the right, y up, seen from above.")
			return nil
		}
		r.fixed = append(r.fixed, p)
	}
	r.searched, err = searchedRegion(t.in.Memory, bounds, keepOuts)
	if errors.Is(err, lid.ErrNoRoom) {
		t.stop("no-room", field, fmt.Sprintf("%s: there is no room for one hole between the margins and the shapes kept clear.", t.name), "Use smaller cups, a bigger lid, or keep less clear.")
		return nil
	}
	if err != nil {
		t.stop("lid-shape", field, fmt.Sprintf("%s: the lid cannot be: %s.", t.name, err), "Measure the lid again.")
		return nil
	}
	return r
}

// wallAt is the inner wall at a height, with the lid centred on the opening.
func (t *tubState) wallAt(heightMM float64, centre plane.Point) plane.Shape {
	length, width, radius, known := t.shape.Wall(min(max(heightMM, 0), t.shape.HeightMM()))
	if !known {
		return nil
	}
	if t.shape.IsRound() {
		return plane.Circle{Centre: centre, Radius: radius}
	}
	return plane.RoundedRect{
		Rect:   plane.Box(centre.X-length/2, centre.Y-width/2, centre.X+length/2, centre.Y+width/2),
		Radius: radius,
	}
}

// outline is the lid's flat part with the lower left of its box at the origin.
func outline(l plan.Lid) (plane.Shape, error) {
	var s plane.Shape
	switch {
	case l.Diameter.Set():
		r := float64(l.Diameter.Value) / 2
		s = plane.Circle{Centre: plane.Point{X: r, Y: r}, Radius: r}
	case len(l.Outline) > 0:
		p := polygon(l.Outline)
		least := p.Bounds().Min
		for i := range p {
			p[i] = p[i].Sub(least)
		}
		s = p
	default:
		s = plane.RoundedRect{Rect: plane.Box(0, 0, float64(l.Size[0].Value), float64(l.Size[1].Value)), Radius: float64(l.CornerRadius.Value)}
	}
	return s, s.Check()
}

func polygon(corners []plan.Pair) plane.Polygon {
	var p plane.Polygon
	for _, c := range corners {
		p = append(p, plane.Point{X: float64(c[0].Value), Y: float64(c[1].Value)})
	}
	return p
}

func keepClear(k plan.KeepClear) plane.Shape {
	switch {
	case k.Circle.Set():
		return plane.Circle{Centre: plane.Point{X: float64(k.Circle[0].Value), Y: float64(k.Circle[1].Value)}, Radius: float64(k.Circle[2].Value)}
	case len(k.Polygon) > 0:
		return polygon(k.Polygon)
	case k.Rib.Set():
		ends := polygon([]plan.Pair{k.Rib[0], k.Rib[1]})
		return plane.Capsule{Segment: plane.Segment{A: ends[0], B: ends[1]}, Width: float64(k.Width.Value)}
	}
	return plane.Box(float64(k.Rectangle[0].Value), float64(k.Rectangle[1].Value), float64(k.Rectangle[2].Value), float64(k.Rectangle[3].Value))
}
