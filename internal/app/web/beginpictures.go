package web

import (
	"fmt"
	"html/template"
	"strings"

	"rootbell/internal/base/quantity"
	"rootbell/internal/paper/figure"
)

// pictures draws what to measure, in the shape of what was typed so far.
func (b *beginForm) pictures(f *form) {
	b.TubPicture = both(func(w figure.Width) string { return tubPicture(f, b.Shape, w) })
	b.LidPicture = both(func(w figure.Width) string {
		v := figure.LidMM{Round: b.LidRound}
		if b.LidRound {
			v.Diameter = f.askedMM("tubs[0].lid.diameter")
		} else {
			v.Long, v.Wide = f.askedMM("tubs[0].lid.size[0]"), f.askedMM("tubs[0].lid.size[1]")
		}
		return figure.MeasureLid(v, nil, f.units, w)
	})
	b.CupPicture = both(func(w figure.Width) string {
		return figure.MeasureCup(figure.CupMM{Rim: f.askedMM("tubs[0].cup.rim"), Body: f.askedMM("tubs[0].cup.body"), Depth: f.askedMM("tubs[0].cup.depth")}, f.units, w)
	})
}

func tubPicture(f *form, shape string, w figure.Width) string {
	switch shape {
	case "round":
		return figure.MeasureRound(figure.RoundMM{Top: f.askedMM("tubs[0].round.top"), Base: f.askedMM("tubs[0].round.base"), Height: f.askedMM("tubs[0].round.height")}, f.units, w)
	case "poured":
		var poured []figure.Pouring
		for i := range 3 {
			at := fmt.Sprintf("tubs[0].poured[%d].", i)
			volume := strings.TrimSpace(f.posted.Get(at + "volume"))
			if volume != "" {
				volume = f.typedIn(at+"volume", volume)
			}
			poured = append(poured, figure.Pouring{Volume: volume, DepthMM: f.askedMM(at + "depth")})
		}
		return figure.MeasurePoured(poured, f.units, w)
	}
	in := func(end string) float64 { return f.askedMM("tubs[0].inside." + end) }
	return figure.MeasureTub(figure.TubMM{TopLong: in("top[0]"), TopWide: in("top[1]"), BaseLong: in("base[0]"), BaseWide: in("base[1]"), Height: in("height")}, f.units, w)
}

// askedMM is a posted length, 0 where none was typed or it is none.
func (f *form) askedMM(path string) float64 {
	mm, err := quantity.Parse(quantity.Length, f.typedIn(path, f.posted.Get(path)))
	if err != nil {
		return 0
	}
	return mm
}

func both(draw func(figure.Width) string) pictures {
	return pictures{Desk: template.HTML(draw(figure.Desk)), Hand: template.HTML(draw(figure.Hand))} //nolint:gosec // drawn by package figure, which escapes what a teacher typed
}
