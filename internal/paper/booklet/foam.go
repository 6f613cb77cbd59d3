package booklet

import (
	"fmt"
	"strings"

	"rootbell/internal/paper/cutaway"
	"rootbell/internal/paper/scene"
	"rootbell/internal/paper/sheet"
)

// foamWording is what the card of a foam board says. Lengths and steps are
// common practice without a source.
func (c card) foamWording() wording {
	return wording{
		name: "Foam card", plate: "For an adult. No pupil cuts.", tools: c.foamTools(), parts: c.foamInstructions(),
		stop:    "if anyone smells fumes or feels unwell, the wire smokes, the blade slips or a pupil comes near. Unplug the wire first, then air the place.",
		caption: "Board with two cups, cut through", scale: foamScale, setUp: c.boardDrawing,
		shows: c.boardShown(),
		note:  "Least lengths in the worst case: common practice, no source.",
	}
}

func (c card) foamTools() string {
	list := []string{
		fmt.Sprintf("lid sheet (%d drawn pages)", sheet.DrawnPages(c.Lid, c.paper)),
		"sharp knife with a long thin blade, or a hot-wire cutter with its manual", "flat backing board", "clamps with wide pads",
		"awl or pencil", "compasses", "cut-proof glove for the hand that holds", "eye protection", "damp cloth and bag.",
	}
	return strings.Join(list, ", ")
}

func (c card) foamInstructions() []part {
	unit := " " + sheet.UnitName(c.System)
	least := func(mm float64) string { return sheet.MarkUp(mm, c.System) + unit }
	return []part{
		{"Before you cut", []string{
			"The site's rules, local codes and the tool's manual decide, before this card.",
			"Take a clean new board that its maker says may touch food or drinking water. Nothing painted, nothing salvaged.",
			"Check the bars on each page of the lid sheet. Off by more than 0.5 mm: do not cut.",
			"Mark every centre through the sheet. Lift it and measure the pairs. Draw each circle with compasses.",
			"Between two holes " + least(c.Foam.WebMM) + " of foam must stay, to the edge " + least(c.Foam.EdgeMM) + ": foam tears.",
		}},
		{"On you and around you", []string{
			"Pupils stay away: behind a line for the knife, out of the place for the hot wire.",
			"Glove on the hand that holds. Eye protection. Hair tied back, sleeves and scarf clear of the wire.",
			"No hole saw and no sanding: both fill the air and the water with crumbs.",
		}},
		{"Cut", []string{
			"One trial hole in an offcut. The cup must drop in and its lip bear all round.",
			"Knife: board clamped on the backing board. Several light strokes, blade upright and moving away from you.",
			"Hot wire: hot foam gives off harmful, flammable fumes. Only outdoors, or where a fan draws them out. Nobody breathes them. As cool as it still cuts; never left alone while it is hot.",
			"Nothing that burns near the wire, and at hand what the site's rules name against fire." + c.foamAirStep(),
		}},
		{"After", []string{
			"Cover the blade. Unplug the wire and let it cool before anybody touches it.",
			"Wipe off every crumb with a damp cloth, into the bag. Do not blow: dust is not for lungs, and in the water it blocks the air stone.",
			"Hang a cup in each hole: at least " + least(c.Foam.CupMM) + " of it must show below the board. Measure the pairs and write them down.",
		}},
	}
}

func (c card) foamAirStep() string {
	switch {
	case c.AirLine == nil:
		return ""
	case c.AirLine.OnWall:
		return " The air line's hole goes through the tub's wall, " + sheet.Mark(c.AirLine.HeightMM, c.System) + " " +
			sheet.UnitName(c.System) + " over the inside floor: that one is drilled, with a bit of " + sheet.ToolSize(c.AirLine.SizeMM, c.System) + "."
	}
	return " The air line's hole (" + sheet.ToolSize(c.AirLine.SizeMM, c.System) + ") comes last, with the tip of the knife."
}

// foamScale is the scale of the board's drawing: one to so many.
const foamScale = 3

func (c card) boardShown() string {
	least := func(mm float64) string { return atLeast + sheet.MarkUp(mm, c.System) }
	return "Cut through: a board with two cups. To its edge " + least(c.Foam.EdgeMM) + " of foam stay, between the holes " +
		least(c.Foam.WebMM) + ", and " + least(c.Foam.CupMM) + " of each cup show below the board, in " + sheet.UnitWord(c.System) + "."
}

const atLeast = "≥ "

// boardDrawing is the board's end with two cups, with what must stay.
func (c card) boardDrawing(width float64) (scene.Box, []scene.Element) {
	const k, most = 1.0 / foamScale, 60.0
	board := min(max(c.ThicknessMM, 10), most)
	hole := 50.0
	if len(c.Holes) > 0 {
		hole = min(c.Holes[0].SizeMM, most)
	}
	cup := board + c.Foam.CupMM
	lip := hole/2 + 4
	left := width/2 - (c.Foam.EdgeMM+2*hole+c.Foam.WebMM+30)/2*k
	at := func(x, y float64) scene.Point { return scene.Point{X: left + x*k, Y: 8 + (cup+y)*k} }
	first := c.Foam.EdgeMM + hole/2
	second := first + hole + c.Foam.WebMM
	end := second + hole/2 + 30
	var out []scene.Element
	for _, piece := range [][2]float64{{0, first - hole/2}, {first + hole/2, second - hole/2}, {second + hole/2, end}} {
		part := scene.Rectangle(scene.Box{Min: at(piece[0], -board), Max: at(piece[1], 0)})
		out = append(out, scene.Hatch(part, 1.4, 45, scene.Thin)...)
		out = append(out, scene.Shape{Path: part, Class: scene.Edge})
	}
	for _, x := range []float64{first, second} {
		body := hole/2 - 1.5
		out = append(out, scene.Shape{Path: scene.Polyline(
			at(x-lip, 1.5), at(x-body, 1.5), at(x-body*cutaway.Taper, -cup), at(x+body*cutaway.Taper, -cup), at(x+body, 1.5), at(x+lip, 1.5),
		), Class: scene.Part})
	}
	words := func(mm float64) string { return atLeast + sheet.MarkUp(mm, c.System) }
	out = append(out, sheet.Dimension(at(0, 0), at(first-hole/2, 0), 5, words(c.Foam.EdgeMM))...)
	out = append(out, sheet.Dimension(at(first+hole/2, 0), at(second-hole/2, 0), 5, words(c.Foam.WebMM))...)
	out = append(out, sheet.Dimension(at(second+hole/2+12, -board), at(second+hole/2+12, -cup), 0, words(c.Foam.CupMM))...)
	return scene.BoxAt(scene.Point{}, width, 8+cup*k+12), out
}
