package booklet

import (
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/paper/scene"
)

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
	headOf(column, "Wet test: 24 hours with plain water")
	drop := map[garden.System]string{garden.Metric: "3 mm", garden.US: "1/8 in"}[c.System]
	stepsIn(column, 11, 1, []string{
		"Stand the empty tub where it will live. A filled tub is never lifted or pushed: fill it and drain it in place.",
		"Keep plugs, leads and the air pump dry: outside the tub, above the water line, with a loop of the lead hanging lower than the socket.",
		"Fill with plain water to the line in the table. Draw a pencil line on the outside at the water, and write the time beside it.",
		"Lay a dry paper towel under the rim all round and under the tub. Put the lid on.",
		"After 24 hours look again. A wet towel, or a drop of more than " + drop + ": stop, find out why, do not drill or plant.",
		"Look at the shelf: does it bend so that the water stands higher at one end? Measure at both ends; over " + drop + " of difference, take the tub down empty and strengthen the shelf.",
		"Light-leak look: darken the room, hold a torch inside the empty tub. Where walls or lid glow, algae will grow: cover them.",
		"Do the test twice: before the lid is drilled, and again with the cups hung in before planting.",
	})
	column.Gap(3)
	table := scene.Table{SizeMM: 10 * scene.PointMM, RowMM: 9, Fields: []scene.Field{
		{Head: "tub", Share: 2.4, Face: scene.SansBold},
		{Head: "fill to", Share: 1.6},
		{Head: "filled, time", Share: 2},
		{Head: "24 h later", Share: 2},
		{Head: "drop", Share: 1.4},
		{Head: "towel dry", Share: 1.6},
		{Head: "light seen at", Share: 2},
	}}
	for _, when := range []string{"Before drilling", "Before planting"} {
		sectionHead(column, when)
		table.Rows = nil
		for _, tub := range tubs {
			table.Rows = append(table.Rows, []string{tub.Name, tub.Fill, scene.Blank, scene.Blank, scene.Blank, scene.Blank, scene.Blank})
		}
		if len(table.Rows) > 3 {
			table.RowMM = 6
		}
		column.Table(table)
		column.Gap(4)
	}
	var glows []string
	for _, tub := range tubs {
		if tub.LetLight {
			glows = append(glows, tub.Name)
		}
	}
	if len(glows) > 0 {
		column.Text(scene.Style{Face: scene.Sans, SizeMM: 10 * scene.PointMM},
			"Lets light through, black it out before planting: "+strings.Join(glows, ", ")+".")
	}
	page.add(column)
	return page
}
