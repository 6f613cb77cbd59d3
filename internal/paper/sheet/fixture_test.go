package sheet_test

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// heron is an invented lid, 540 × 380 mm, with eight holes.
func heron() sheet.Lid {
	l := sheet.Lid{
		Garden: "Fernhollow science room", Tub: "Heron", Invented: true, System: quantity.Metric,
		Outline: scene.RoundedRectangle(scene.BoxAt(scene.Point{}, 540, 380), 40),
		KeepClear: []sheet.KeepClear{
			{Shape: scene.Rectangle(scene.Box{Min: scene.Point{X: 0, Y: 150}, Max: scene.Point{X: 30, Y: 230}}), Why: "handle"},
			{Shape: scene.Disc(scene.Point{X: 270, Y: 360}, 15), Why: "vent"},
		},
		CentresIn:   []scene.Path{scene.Rectangle(scene.BoxAt(scene.Point{X: 60, Y: 60}, 420, 260))},
		AirLine:     &sheet.AirLine{Opening: sheet.Opening{XMM: 520, YMM: 190, SizeMM: 6.5}},
		Service:     &sheet.Opening{XMM: 275, YMM: 190, SizeMM: 32},
		Cup:         sheet.Cup{BodyMM: 72, RimMM: 83, DepthMM: 65},
		ThicknessMM: 2, RulerStepMM: 5, ToleranceMM: 3, LeastWebMM: 15.5,
		Layout: "ruler", On: "2027-01-11", Revision: "7",
	}
	for i, at := range []scene.Point{
		{X: 60, Y: 60},
		{X: 205, Y: 60},
		{X: 335, Y: 60},
		{X: 480, Y: 60},
		{X: 60, Y: 320},
		{X: 205, Y: 290},
		{X: 350, Y: 295},
		{X: 480, Y: 320},
	} {
		l.Holes = append(l.Holes, sheet.Hole{N: i + 1, XMM: at.X, YMM: at.Y, SizeMM: 76})
	}
	return l
}

// saltbrook is an invented round lid in US units.
func saltbrook() sheet.Lid {
	l := heron()
	l.Garden, l.Tub, l.System = "Saltbrook After-School Club", "Gull", quantity.US
	l.Outline = scene.Disc(scene.Point{X: 203.2, Y: 203.2}, 203.2)
	l.KeepClear = []sheet.KeepClear{{Shape: scene.Disc(scene.Point{X: 203.2, Y: 380}, 20), Why: "pouring spout"}}
	l.CentresIn = []scene.Path{scene.Disc(scene.Point{X: 203.2, Y: 203.2}, 140)}
	l.AirLine = &sheet.AirLine{Opening: sheet.Opening{XMM: 203.2, YMM: 0, SizeMM: 6.35}, OnWall: true, HeightMM: 190}
	l.Service = nil
	l.Holes = nil
	for i := range 5 {
		at := scene.Point{X: 130}.Turned(72*float64(i) - 90).Plus(scene.Point{X: 203.2, Y: 203.2})
		l.Holes = append(l.Holes, sheet.Hole{N: i + 1, XMM: at.X, YMM: at.Y, SizeMM: 76.2})
	}
	l.RulerStepMM = 25.4 / 4
	return l
}

// wren is an invented small lid that takes two pages, so that many sheets can
// be printed and measured in a test.
func wren() sheet.Lid {
	l := heron()
	l.Tub = "Wren"
	l.Outline = scene.RoundedRectangle(scene.BoxAt(scene.Point{}, 400, 155), 20)
	l.KeepClear, l.CentresIn, l.Service, l.AirLine, l.Holes = nil, nil, nil, nil, nil
	for i, x := range []float64{60, 200, 340} {
		l.Holes = append(l.Holes, sheet.Hole{N: i + 1, XMM: x, YMM: 60 + 15*float64(i%2), SizeMM: 76})
	}
	return l
}
