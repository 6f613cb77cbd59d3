package figure

import (
	"rootbell/internal/base/plane"
	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
)

// The usual lid and cup, in mm, for what was not typed.
var (
	usualLid      = []float64{540, 380}
	usualRoundLid = []float64{340}
	usualCup      = []float64{83, 72, 65}
)

// MeasureLid shows where to measure the flat part of a lid from above, with
// what is kept clear crossed out, in mm from the lower left corner of the flat
// part. What was typed stands beside its ring; see MeasureTub.
func MeasureLid(v LidMM, kept []garden.Clear, s garden.System, w Width) string {
	round := v.Round || v.Diameter > 0
	f := newMeasure("lid", "The flat part of a lid from above", s, w)
	typed, usual, fits := []float64{v.Long, v.Wide}, usualLid, lidFits
	if round {
		typed, usual, fits = []float64{v.Diameter}, usualRoundLid, func([]float64) bool { return true }
	}
	d := f.shape(typed, usual, fits)
	long, wide := d[0], d[len(d)-1]
	f.setScale(w.pick(300, 220), w.pick(210, 180), long, wide)
	f.height = 12 + wide*f.scale + 42
	f.zero = scene.Point{X: (f.width-long*f.scale)/2 - w.pick(30, 24), Y: 12 + wide*f.scale}
	outline := lidOutline(long, wide, round)
	f.path("sheetfill", outline)
	if !f.silent && v.typed() {
		f.squares(outline, graduationOf(s, f.scale))
	}
	f.path("k", outline)
	kept = f.crossedOut(kept, long, wide)
	corners := [...]scene.Point{f.at(scene.Point{}), f.at(scene.Point{X: long}), f.at(scene.Point{X: long, Y: wide})}
	if round {
		f.ask(measured{LetterLidLong, "across the flat part", v.Diameter}, corners[0], corners[1], scene.Point{Y: 22})
	} else {
		f.ask(measured{LetterLidLong, "the flat part, long", v.Long}, corners[0], corners[1], scene.Point{Y: 22})
		f.ask(measured{LetterLidWide, "the flat part, wide", v.Wide}, corners[1], corners[2], scene.Point{X: 22})
	}
	for _, k := range kept {
		f.naming(k.Why, k.Shape.Bounds())
	}
	return f.svg()
}

// typed tells whether the lid's shape is wholly given, so that squares can be
// drawn to its scale.
func (v LidMM) typed() bool { return v.Diameter > 0 || v.Long > 0 && v.Wide > 0 }

func lidFits(d []float64) bool { return ratio(d[1]/d[0], 0.2, 1.3) }

func lidOutline(long, wide float64, round bool) scene.Path {
	if round {
		return scene.Disc(scene.Point{X: long / 2, Y: wide / 2}, long/2)
	}
	return scene.RoundedRectangle(scene.BoxAt(scene.Point{}, long, wide), 0.08*min(long, wide))
}

// crossedOut draws what no hole may go through, where it lies on the lid, and
// tells what it drew.
func (f *measureFigure) crossedOut(kept []garden.Clear, long, wide float64) []garden.Clear {
	const apartPX = 5
	if f.silent {
		return nil
	}
	var drawn []garden.Clear
	for _, k := range kept {
		b := k.Shape.Bounds()
		if b.Min.X < -1 || b.Min.Y < -1 || b.Max.X > long+1 || b.Max.Y > wide+1 {
			continue
		}
		shape := scene.PathOfShape(k.Shape)
		f.strokes("n", scene.Crossed(shape, apartPX/f.scale, scene.Thin))
		f.path("mm", shape)
		f.room.block(f.pixels(shape).Bounds())
		drawn = append(drawn, k)
	}
	return drawn
}

// naming writes why a place is kept clear beside it.
func (f *measureFigure) naming(why string, b plane.Rect) {
	if why == "" {
		return
	}
	low, high := f.at(scene.PointOf(b.Min)), f.at(scene.PointOf(b.Max))
	middle := (low.Y+high.Y)/2 + 4.3
	t := lettering{words: why, class: "sm"}
	right, left, under := t, t, t
	right.at = scene.Point{X: high.X + 6, Y: middle}
	left.anchor, left.at = scene.End, scene.Point{X: low.X - 6, Y: middle}
	under.anchor, under.at = scene.Middle, scene.Point{X: (low.X + high.X) / 2, Y: low.Y + 16}
	f.place(right, left, under)
}

// MeasureCup shows where to measure a net cup from the side: over the rim,
// under the rim and how deep. What was typed stands beside its ring; see
// MeasureTub.
func MeasureCup(v CupMM, s garden.System, w Width) string {
	f := newMeasure("cup", "A net cup from the side", s, w)
	d := f.shape([]float64{v.Rim, v.Body, v.Depth}, usualCup, cupFits)
	rim, body, deep := d[0], d[1], d[2]
	f.setScale(130, 110, rim, deep)
	rim, body, deep = rim*f.scale, body*f.scale, deep*f.scale
	middle := f.width/2 - 20
	lip, under := 50.0, 56.0 // the rim's upper face and its underside
	foot := under + deep
	f.height = foot + 54
	at := func(x, y float64) scene.Point { return scene.Point{X: middle + x, Y: y} }
	base := 0.75 * body / 2
	f.chain("k sheetfill", true, at(-rim/2, lip), at(-rim/2, under), at(-body/2, under), at(-base, foot), at(base, foot), at(body/2, under), at(rim/2, under), at(rim/2, lip))
	for _, share := range []float64{-0.8, -0.4, 0, 0.4, 0.8} {
		f.line("hid", at(share*body/2*0.95, under+10), at(share*base, foot-8))
	}
	f.ask(measured{LetterCupRim, "over the rim", v.Rim}, at(-rim/2, lip), at(rim/2, lip), scene.Point{Y: -22})
	f.ask(measured{LetterCupBody, "the body, right under the rim", v.Body}, at(-body/2, under+6), at(body/2, under+6), scene.Point{Y: deep + 18})
	// Both ends of the depth are led out to one line beside the rim.
	f.line("n", at(base+3, foot), at(rim/2, foot))
	f.ask(measured{LetterCupDepth, "depth, from under the rim to the outside of the bottom", v.Depth}, at(rim/2, foot), at(rim/2, under), scene.Point{X: 24})
	return f.svg()
}

func cupFits(d []float64) bool {
	return ratio(d[1]/d[0], 0.6, 0.99) && ratio(d[2]/d[0], 0.3, 2)
}
