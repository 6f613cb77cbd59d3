package booklet

import "rootbell/internal/paper/scene"

// WetTub is one tub of the wet test.
type WetTub struct {
	Name     string
	FillMM   float64 // depth to fill to
	Fill     string  // the same as it is shown, with its unit
	LetLight bool    // a wall that lets light through: it needs a black-out
}

// WetTest is one page for a 24 h test with plain water, before the lid is
// drilled and again before planting. Hours and largest drop are common
// practice without a source.
func WetTest(c Cover, tubs []WetTub, paper scene.Size) ([]byte, error) {
	press := scene.NewPress("Wet test", c.On)
	for first := 0; first == 0 || first < len(tubs); first += wetRows {
		part := tubs[first:min(first+wetRows, len(tubs))]
		press.Page(paper).Draw(layWetTest(c, part, paper).elements...)
	}
	return press.Bytes()
}

// wetRows is how many tubs one page has lines for.
const wetRows = 6

func layWetTest(c Cover, tubs []WetTub, paper scene.Size) laid {
	page := laid{fits: true, elements: c.titleBlock("Wet test", paper)}
	column := scene.NewColumn(body(paper))
	headOf(column, wetTitle)
	stepsIn(column, 11, 1, wetSteps(c.System))
	column.Gap(3)
	for _, t := range wetTables(tubs) {
		sectionHead(column, t.Caption)
		row := 9.0
		if len(t.Rows) > 3 {
			row = 6
		}
		column.Table(t.Set(10*scene.PointMM, row, 2.4, 1.6, 2, 2, 1.4, 1.6, 2))
		column.Gap(4)
	}
	if words := glowWords(tubs); words != "" {
		column.Text(scene.Style{Face: scene.Sans, SizeMM: 10 * scene.PointMM}, words)
	}
	page.add(column)
	return page
}
