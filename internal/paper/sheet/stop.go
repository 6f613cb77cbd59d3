package sheet

import (
	"math"
	"strings"

	"rootbell/internal/paper/scene"
)

// StopWords are what stands across a paper that nobody may drill by; empty
// where nothing stops it.
func StopWords(reason string) string {
	if reason == "" {
		return ""
	}
	return doNotDrill + " " + reason
}

const doNotDrill = "do not drill:"

// StopPlate covers the middle of a page: what must not be done, and why.
func StopPlate(box scene.Box, reason string) []scene.Element {
	width := box.Width() * 0.86
	const big, small = 15.0, 6.0
	lines := scene.SansBold.Wrap(reason, small, width-12)
	if len(lines) > 6 {
		lines = append(lines[:5], scene.SansBold.Fitted(lines[5]+" …", small, width-12))
	}
	height := big*1.5 + small*1.35*float64(len(lines)) + 6
	plate := scene.BoxAt(box.Centre().Minus(scene.Point{X: width / 2, Y: height / 2}), width, height)
	out := []scene.Element{
		scene.Line{From: box.Min, To: box.Max, Class: scene.Cut},
		scene.Line{From: scene.Point{X: box.Min.X, Y: box.Max.Y}, To: scene.Point{X: box.Max.X, Y: box.Min.Y}, Class: scene.Cut},
		scene.Shape{Path: scene.Rectangle(plate.Grown(2)), Class: scene.Cut, Fill: scene.White},
		scene.Shape{Path: scene.Rectangle(plate), Class: scene.None, Fill: scene.Black},
	}
	y := plate.Max.Y - big*1.15
	size := math.Min(big, big*(width-12)/scene.SansBold.Width(doNotDrill, big))
	out = append(out, scene.Text{At: scene.Point{X: plate.Centre().X, Y: y}, Text: doNotDrill, SizeMM: size, Face: scene.SansBold, Anchor: scene.Middle, Reversed: true})
	y -= big * 0.25
	for _, line := range lines {
		y -= small * 1.35
		out = append(out, scene.Text{At: scene.Point{X: plate.Centre().X, Y: y}, Text: line, SizeMM: small, Face: scene.SansBold, Anchor: scene.Middle, Reversed: true})
	}
	return out
}

// StopAcross crosses a small drawing out, in so few words that they fit; the
// reason stands beside it.
func StopAcross(box scene.Box) []scene.Element {
	const size, pad = 6.0, 3.0
	width := scene.SansBold.Width(doNotDrill, size)
	plate := (scene.Box{Min: box.Centre(), Max: box.Centre()}).Grown(size)
	plate.Min.X, plate.Max.X = box.Centre().X-width/2-pad, box.Centre().X+width/2+pad
	return []scene.Element{
		scene.Line{From: box.Min, To: box.Max, Class: scene.Cut},
		scene.Line{From: scene.Point{X: box.Min.X, Y: box.Max.Y}, To: scene.Point{X: box.Max.X, Y: box.Min.Y}, Class: scene.Cut},
		scene.Shape{Path: scene.Rectangle(plate.Grown(1.5)), Class: scene.Cut, Fill: scene.White},
		scene.Shape{Path: scene.Rectangle(plate), Class: scene.None, Fill: scene.Black},
		scene.Text{
			At: plate.Centre().Minus(scene.Point{Y: size * 0.36}), Text: strings.TrimSuffix(doNotDrill, ":"), SizeMM: size,
			Face: scene.SansBold, Anchor: scene.Middle, Reversed: true,
		},
	}
}
