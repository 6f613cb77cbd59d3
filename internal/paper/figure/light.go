package figure

import (
	"fmt"
	"math"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
)

// Light is a tub's lid from above with the light at each hole: its number, and
// under it the µmol/m²/s on the leaf. ok is false where that is not known.
func Light(a *garden.Assessment, tub int, w Width) (svg string, ok bool) {
	f, ok := lidOf(a, tub, "", w, frame{width: w.pick(400, 328), left: 6, right: 6, above: 6, foot: 6, mostHigh: 360})
	if !ok || !f.laid || a.Tubs[tub].Light == nil {
		return "", false
	}
	light := a.Tubs[tub].Light
	f.id = strings.Join([]string{"light", garden.Slug(f.tub), w.String()}, "-")
	f.ground()
	f.lamps(light)
	f.edge()
	for i, h := range f.layout.Holes {
		if i < len(light.PPFD) {
			f.lit(h, light.PPFD[i])
		}
	}
	return f.svg(), true
}

// lamps are drawn as far as they reach over the lid's box.
func (f *lidFigure) lamps(light *garden.Light) {
	if light.From != garden.FromLamps {
		return
	}
	b := f.outline.Bounds()
	for _, l := range light.Lamps {
		x0, x1 := math.Max(l.XMM-l.AlongXMM/2, b.Min.X), math.Min(l.XMM+l.AlongXMM/2, b.Max.X)
		y0, y1 := math.Max(l.YMM-l.AlongYMM/2, b.Min.Y), math.Min(l.YMM+l.AlongYMM/2, b.Max.Y)
		if x1 > x0 && y1 > y0 {
			f.path("lam", scene.Rectangle(scene.Box{Min: scene.Point{X: x0, Y: y0}, Max: scene.Point{X: x1, Y: y1}}))
		}
	}
}

// lit is one hole with its number and its light.
func (f *lidFigure) lit(h garden.Hole, l garden.HoleLight) {
	at := f.centre(h)
	f.ring("k ground", at, f.radius(h))
	f.text(lettering{words: fmt.Sprint(h.N), class: "b", anchor: scene.Middle, at: at.Plus(scene.Point{Y: -1})})
	f.text(lettering{words: quantity.FormatNumber(l.PPFD, 0), class: "sm", anchor: scene.Middle, at: at.Plus(scene.Point{Y: smallPX})})
}
