package booklet_test

import (
	"rootbell/internal/base/quantity"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// lidOf is an invented lid with n holes in rows.
func lidOf(n int, system quantity.System) sheet.Lid {
	l := sheet.Lid{
		Garden: "Fernhollow science room", Tub: "Heron", Invented: true, System: system,
		Outline: scene.RoundedRectangle(scene.BoxAt(scene.Point{}, 540, 380), 40),
		KeepClear: []sheet.KeepClear{
			{Shape: scene.Rectangle(scene.Box{Min: scene.Point{X: 0, Y: 150}, Max: scene.Point{X: 30, Y: 230}}), Why: "handle"},
		},
		AirLine: &sheet.AirLine{Opening: sheet.Opening{XMM: 520, YMM: 190, SizeMM: 6.5}},
		Service: &sheet.Opening{XMM: 480, YMM: 190, SizeMM: 32},
		Cup:     sheet.Cup{BodyMM: 72, RimMM: 83, DepthMM: 65}, ThicknessMM: 2,
		RulerStepMM: 5, ToleranceMM: 3, LeastWebMM: 15.5, Layout: "rows", On: "2027-01-11", Revision: "7",
	}
	// Many holes are small ones, close together.
	if n > 16 {
		l.Service = nil
		for i := range n {
			l.Holes = append(l.Holes, sheet.Hole{N: i + 1, XMM: 50 + 47*float64(i%10), YMM: 50 + 47*float64(i/10), SizeMM: 35})
		}
		return l
	}
	for i := range n {
		l.Holes = append(l.Holes, sheet.Hole{N: i + 1, XMM: 60 + 105*float64(i%4), YMM: 60 + 86*float64(i/4), SizeMM: 76})
	}
	return l
}
