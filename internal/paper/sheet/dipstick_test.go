package sheet_test

import (
	"bytes"
	"math"
	"strconv"
	"testing"

	"rootbell/internal/base/quantity"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// stick is an invented box-shaped tub with 1 litre for each 10 mm.
func stick(topMM float64) sheet.Dipstick {
	d := sheet.Dipstick{
		Garden: "Fernhollow science room", Tub: "Heron", Invented: true, TopMM: topMM, On: "2027-01-11",
		Lines: []sheet.LineMark{
			{DepthMM: 165, Words: "fill, transplant day"}, {DepthMM: 130, Words: "fill, roots hang"}, {DepthMM: 80, Words: "lowest safe line", Lowest: true},
		},
	}
	for litre := 1; float64(litre)*10 <= topMM; litre++ {
		d.Volumes = append(d.Volumes, sheet.VolumeMark{DepthMM: 10 * float64(litre), Words: strconv.Itoa(litre)})
	}
	return d
}

func TestDipstickIsTrueToATenthOfAMillimetre(t *testing.T) {
	for name, paper := range papers() {
		pdf, err := sheet.DipstickPDF(stick(220), paper)
		if err != nil {
			t.Fatal(err)
		}
		page := rendered(t, pdf, trueDPI)[0]
		ink := func(p scene.Point) float64 { return page.ink(paper, p.X, p.Y) }
		// The strip's right edge carries the litres; its foot is the floor.
		foot := scene.Point{X: sheet.MarginMM + sheet.StripMM - 1.5, Y: sheet.MarginMM + sheet.TitleMM}
		// The title block's line is only 1 mm under it.
		low := ridge(ink, foot, scene.Point{Y: 1}, 0.7, 0, 1)
		for _, v := range stick(220).Volumes {
			if v.DepthMM > 210 {
				continue // the frame's upper edge
			}
			at := foot.Plus(scene.Point{Y: v.DepthMM})
			got := v.DepthMM + ridge(ink, at, scene.Point{Y: 1}, lookMM, 0, 1) - low
			if !(math.Abs(got-v.DepthMM) <= markMM) {
				t.Errorf("%s: the mark of %s L stands at %.2f mm, want %.2f", name, v.Words, got, v.DepthMM)
			}
		}
	}
}

func TestDipstickOfADeepTubComesInPieces(t *testing.T) {
	pdf, err := sheet.DipstickPDF(stick(400), scene.A4)
	if err != nil {
		t.Fatal(err)
	}
	if got := len(rendered(t, pdf, 30)); got != 2 {
		t.Errorf("%d pages for a strip of 400 mm", got)
	}
	again, _ := sheet.DipstickPDF(stick(400), scene.A4)
	if !bytes.Equal(pdf, again) {
		t.Error("the same tub gave other bytes")
	}
}

func TestDipstickRefusesDepthsThatAreNone(t *testing.T) {
	for _, top := range []float64{0, -5, 1e7, math.NaN(), math.Inf(1)} {
		if _, err := sheet.DipstickPDF(sheet.Dipstick{TopMM: top, System: quantity.US}, scene.Letter); err == nil {
			t.Errorf("a tub %g mm deep gave a dipstick", top)
		}
	}
}

// The crosses of a seam stand apart from a line that falls into it: at 253 mm
// on a strip that is cut at 255 mm, 240 to 255 mm are shared.
func TestSeamCrossesKeepOffTheLines(t *testing.T) {
	for _, line := range []float64{241, 244.5, 247.5, 250, 253} {
		got := sheet.CrossHeight(sheet.Dipstick{Lines: []sheet.LineMark{{DepthMM: line}}}, 240)
		if got < 244 || got > 251 {
			t.Errorf("a cross at %g mm leaves the shared strip", got)
		}
		if apart := math.Abs(got - (line + 1.5)); apart < 3 {
			t.Errorf("line at %g mm: the crosses stand at %g mm", line, got)
		}
	}
}
