package figure

import (
	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
)

// The usual shapes, in mm, for what was not typed. They are no measures of
// anything and never shown as numbers.
var (
	usualTub   = []float64{520, 360, 460, 300, 220}
	usualRound = []float64{300, 260, 350}
)

// Room round the drawings of tubs, in px.
const (
	tubAbove = 48.0 // over the rim: the dimension and its ring
	tubBelow = 52.0
	tubSide  = 26.0 // beside the rim: the end of a stroke and the rim itself
	tubApart = 66.0 // between two cuts: numbers that stand beyond a dimension
	lipPX    = 4.0
	narrowPX = 48.0 // the least width of a cut
)

// MeasureTub shows where to measure a tub with straight sides: cut along its
// length and cut across, with the letters A to E in rings. What was typed
// stands beside its ring, and the drawing takes its shape from it; where the
// measures cannot be a tub it keeps the usual shape, without numbers. It is
// 560 px wide for a desk, 328 for a hand.
func MeasureTub(v TubMM, s garden.System, w Width) string {
	f := newMeasure("tub", "A tub cut along its length and cut across, to measure inside", s, w)
	d := f.shape([]float64{v.TopLong, v.TopWide, v.BaseLong, v.BaseWide, v.Height}, usualTub, tubFits)
	apart := w.pick(tubApart, 30)
	wide := f.width - 2*tubSide - apart - narrowPX/2
	f.setScale(wide, w.pick(150, 120), d[0]+d[1], d[4])
	f.height = tubAbove + d[4]*f.scale + tubBelow + 14
	left := (f.width - apart - d[0]*f.scale - max(d[1]*f.scale, narrowPX)) / 2
	f.cutTub(left, d[0], d[2], d[4], "cut along its length",
		measured{LetterTopLong, "inside at the top, long", v.TopLong}, measured{LetterBaseLong, "inside at the base, long", v.BaseLong},
		measured{LetterHeight, "inside height", v.Height})
	f.cutTub(left+d[0]*f.scale+apart, d[1], d[3], d[4], "cut across",
		measured{LetterTopWide, "inside at the top, wide", v.TopWide}, measured{LetterBaseWide, "inside at the base, wide", v.BaseWide},
		measured{})
	return f.svg()
}

// MeasureRound shows where to measure a round tub, as MeasureTub does.
func MeasureRound(v RoundMM, s garden.System, w Width) string {
	f := newMeasure("round", "A round tub cut through its middle, to measure inside", s, w)
	d := f.shape([]float64{v.Top, v.Base, v.Height}, usualRound, roundFits)
	f.setScale(f.width-2*tubSide, w.pick(170, 150), max(d[0], d[1]), d[2])
	f.height = tubAbove + d[2]*f.scale + tubBelow + 14
	f.cutTub((f.width-d[0]*f.scale)/2, d[0], d[1], d[2], "cut through the middle",
		measured{LetterTopLong, "across, inside at the top", v.Top}, measured{LetterBaseLong, "across, inside at the base", v.Base},
		measured{LetterHeight, "inside height", v.Height})
	return f.svg()
}

func (f *measureFigure) setScale(widePX, highPX, wideMM, highMM float64) {
	f.scale = min(widePX/wideMM, highPX/highMM)
}

// tubFits tells whether five lengths can be a tub that the drawing can show.
func tubFits(d []float64) bool {
	topLong, topWide, baseLong, baseWide, height := d[0], d[1], d[2], d[3], d[4]
	return ratio(topWide/topLong, 0.15, 1.3) && ratio(baseLong/topLong, 0.5, 1.15) && ratio(baseWide/topWide, 0.5, 1.15) &&
		ratio(height/topLong, 0.15, 1.5)
}

func roundFits(d []float64) bool {
	return ratio(d[1]/d[0], 0.5, 1.15) && ratio(d[2]/d[0], 0.2, 2.5)
}

func ratio(v, low, high float64) bool { return v >= low && v <= high }

// cutTub draws one cut with its rim at the top and what to measure. left is
// where the inside begins at the rim.
func (f *measureFigure) cutTub(left, topMM, baseMM, heightMM float64, words string, top, base, height measured) {
	// A narrow cut is drawn wider than it is, so that its ring has room.
	wide, high := max(topMM*f.scale, narrowPX), heightMM*f.scale
	foot := wide * baseMM / topMM
	rimY, floorY := tubAbove, tubAbove+high
	a, b := scene.Point{X: left, Y: rimY}, scene.Point{X: left + wide, Y: rimY}
	c, d := scene.Point{X: left + (wide-foot)/2, Y: floorY}, scene.Point{X: left + (wide+foot)/2, Y: floorY}
	f.chain("sheetfill", true, a, c, d, b)
	lip := scene.Point{X: lipPX}
	f.chain("kk", false, a.Minus(lip), a, c, d, b, b.Plus(lip))
	f.line("cen", a.Minus(scene.Point{X: 8}), b.Plus(scene.Point{X: 8}))
	f.ask(top, a, b, scene.Point{Y: -22})
	f.ask(base, c, d, scene.Point{Y: 22})
	if height.letter != "" {
		middle := left + wide/2
		f.ask(height, scene.Point{X: middle, Y: floorY - 1.7}, scene.Point{X: middle, Y: rimY}, scene.Point{})
	}
	f.text(lettering{words: words, class: "sm it", anchor: scene.Middle, at: scene.Point{X: left + wide/2, Y: floorY + tubBelow + 8}})
}
