package deciding

import (
	"fmt"
	"math"
	"strconv"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/content"
	"rootbell/internal/paper/scene"
)

// Sizes of the drawing of an offer's holes, in mm on paper.
const (
	drawnWide = 110.0 // the pattern, at most
	drawnHigh = 62.0
	ringMM    = 4.2 // radius, at most
)

// HolesFigure draws an offer's holes from above: black ones are planted, dashed
// ones are capped. ok is false where nobody knows where the holes lie.
func HolesFigure(a *garden.Assessment, o *garden.ChooseOffer) (f content.Figure, ok bool) {
	if len(o.Holes) == 0 || o.PlantSites == 0 {
		return f, false
	}
	box := scene.EmptyBox()
	for _, h := range o.Holes {
		box = box.With(scene.Point{X: h.XMM, Y: h.YMM})
	}
	scale := min(drawnWide/max(box.Width(), 1), drawnHigh/max(box.Height(), 1), 0.5)
	at := func(h garden.ChooseHole) scene.Point {
		return scene.Point{X: (h.XMM - box.Min.X) * scale, Y: (h.YMM - box.Min.Y) * scale}
	}
	radius := ringMM
	for i, h := range o.Holes {
		for _, other := range o.Holes[:i] {
			p, q := at(h), at(other)
			radius = min(radius, 0.44*math.Hypot(p.X-q.X, p.Y-q.Y))
		}
	}
	var out []scene.Element
	if a, b, far := nearest(o); far > 0 {
		out = append(out, scene.Line{From: at(a), To: at(b), Class: scene.Thin})
	}
	for _, h := range o.Holes {
		ring := scene.Circle{Centre: at(h), RadiusMM: radius, Class: scene.Hidden, Fill: scene.White, Mark: scene.Mark{Title: fmt.Sprintf("hole %d: cap it", h.N)}}
		text := scene.Text{At: at(h).Plus(scene.Point{Y: -0.36 * 0.9 * radius}), Text: strconv.Itoa(h.N), SizeMM: 0.9 * radius, Face: scene.Sans, Anchor: scene.Middle}
		if h.Use {
			ring.Class, ring.Fill, ring.Mark.Title = scene.Edge, scene.Black, fmt.Sprintf("hole %d: plant", h.N)
			text.Reversed, text.Face = true, scene.SansBold
		}
		out = append(out, ring, text)
	}
	frame := scene.Box{Min: scene.Point{X: -radius - 2, Y: -radius - 2}, Max: scene.Point{X: box.Width()*scale + radius + 2, Y: box.Height()*scale + radius + 2}}
	caption := "From above. Black: plant here. Dashed: cap it."
	if o.LeastMM != nil {
		caption += " The line joins the two closest in use, " + quantity.Format(quantity.Length, *o.LeastMM, a.Plan.Units) + "."
	}
	return content.PrintedOf("Holes of "+o.Name, caption+" "+content.NotToScale, holesDesc(o), frame, out), true
}

// nearest are the two holes in use that lie closest.
func nearest(o *garden.ChooseOffer) (a, b garden.ChooseHole, far float64) {
	for i, h := range o.Holes {
		for _, other := range o.Holes[:i] {
			d := math.Hypot(h.XMM-other.XMM, h.YMM-other.YMM)
			if h.Use && other.Use && (far == 0 || d < far) {
				a, b, far = h, other, d
			}
		}
	}
	return a, b, far
}

func holesDesc(o *garden.ChooseOffer) string {
	return fmt.Sprintf("%d holes, numbered row by row from the lower left. Planted: %s. Capped: %s.", len(o.Holes), numbers(o.UseHoles), numbers(o.CapHoles))
}

func numbers(all []int) string {
	if len(all) == 0 {
		return "none"
	}
	text := ""
	for i, n := range all {
		if i > 0 {
			text += ", "
		}
		text += strconv.Itoa(n)
	}
	return text
}
