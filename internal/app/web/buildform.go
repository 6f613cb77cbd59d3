package web

import (
	"fmt"
	"strconv"
	"strings"

	"rootbell/internal/garden/plan"
)

// buildForm are the fields of one tub: what is given, what is wanted, and what
// has a good default.
type buildForm struct {
	Given, Wanted, More, Bay []group
	Keep                     []keepRow
	Layout                   string // the name of the layout's field
	KeepFields               []field
	KeepShape                string
}

// keepRow is one shape to keep clear, with the button that takes it out.
type keepRow struct {
	Index int
	Words string
}

// buildFormOf makes the form of a tub. The order of the calls is the order in which
// the changes are made.
func buildFormOf(f *form, tub int) buildForm {
	at := func(rest string) string { return fmt.Sprintf("tubs[%d].%s", tub, rest) }
	b := buildForm{Layout: at("layout")}
	b.Given = append(shapeGroups(f, at), lidGroups(f, at)...)
	b.Given = append(b.Given, group{Legend: "Net cup", Pair: true, Fields: []field{
		f.field(at("cup.body"), "body", " "), f.field(at("cup.rim"), "rim", " "),
		f.field(at("cup.depth"), "depth", " "), f.field(at("hole"), "hole", " "),
	}, Note: "Of five cups the largest body and the smallest rim. Hole left empty: the saw that suits the cup."})
	b.Wanted = append(b.Wanted, group{Legend: "Wanted", Fields: append(cropFields(f, at),
		f.field(at("plants"), "Plants", "Best, or a number."),
		f.field(at("spacing.between"), "Least between centres", "Left empty: what the crop needs."),
		f.field(at("litres_per_plant"), "Solution for each plant", "Left empty: what the crop needs."))})
	b.More = moreGroups(f, at)
	b.Bay = append(b.Bay, group{Legend: "Shelf", Pair: true, Fields: []field{
		f.field("shelf.width", "long", ""), f.field("shelf.depth", "deep", ""), f.field("shelf.clear_height", "clear height", ""), f.field("shelf.rated_load", "rated load", ""),
	}, Note: "The maker's rating, for a load spread evenly. Leave it all empty where no shelf is meant."})
	b.Bay = append(b.Bay, f.lampGroups()...)
	b.Keep = keepRows(f.doc(), tub)
	b.KeepFields, b.KeepShape = f.keepFields(), f.posted.Get("keep.shape")
	f.asked = append(f.asked, b.Layout)
	f.call("", []field{{Name: b.Layout, Label: "layout"}})
	for _, g := range b.Wanted {
		f.call("", g.Fields)
	}
	for _, groups := range [][]group{b.Given, b.More, b.Bay} {
		f.callGroups("", groups)
	}
	return b
}

func cropFields(f *form, at func(string) string) []field {
	n := f.doc().Items(at("growing"))
	if n == 0 {
		return []field{f.field(at("crop"), "Crop", "")}
	}
	var out []field
	for i := range n {
		crop := f.field(at(fmt.Sprintf("growing[%d].crop", i)), "Crop "+strconv.Itoa(i+1), "")
		out = append(out, crop, f.field(at(fmt.Sprintf("growing[%d].plants", i)), "of it, plants", ""))
	}
	return out
}

func shapeGroups(f *form, at func(string) string) []group {
	has := f.doc().Has
	switch {
	case has(at("round")):
		return []group{{Legend: "Inside, across", Pair: true, Fields: []field{
			f.field(at("round.top"), "at the top", ""), f.field(at("round.base"), "at the base", ""), f.field(at("round.height"), "height", ""),
		}}}
	case has(at("poured")):
		g := group{Legend: "Poured in, and how deep it stood", Pair: true}
		for i := range f.doc().Items(at("poured")) {
			row := strconv.Itoa(i + 1)
			g.Fields = append(g.Fields, f.field(at(fmt.Sprintf("poured[%d].volume", i)), row+" so far", ""), f.field(at(fmt.Sprintf("poured[%d].depth", i)), row+" deep", ""))
		}
		g.Note = "Another step: add a line to poured in the plan as text."
		return []group{g}
	}
	corner := []field{f.field(at("inside.height"), "height", "")}
	if f.doc().Items(at("inside.corner_radius")) == 2 {
		corner = append(corner, f.field(at("inside.corner_radius[0]"), "corner, top", ""), f.field(at("inside.corner_radius[1]"), "corner, base", ""))
	} else {
		corner = append(corner, f.field(at("inside.corner_radius"), "corner", ""))
	}
	return []group{
		{Legend: "Inside, at the top", Pair: true, Fields: []field{f.field(at("inside.top[0]"), "long", ""), f.field(at("inside.top[1]"), "wide", "")}},
		{Legend: "Inside, at the base", Pair: true, Fields: []field{f.field(at("inside.base[0]"), "long", ""), f.field(at("inside.base[1]"), "wide", "")}},
		{Legend: "Inside", Pair: true, Fields: corner, Note: "Corner is the radius of the upright corners."},
	}
}

func lidGroups(f *form, at func(string) string) []group {
	switch {
	case f.doc().Has(at("lid.diameter")):
		return []group{{Legend: "Lid, the flat part", Fields: []field{f.field(at("lid.diameter"), "across", "")}}}
	case f.doc().Has(at("lid.outline")):
		return []group{{Legend: "Lid, the flat part", Note: "Its outline is a list of corners: change it in the plan as text."}}
	}
	return []group{{Legend: "Lid, the flat part", Pair: true, Fields: []field{
		f.field(at("lid.size[0]"), "long", " "), f.field(at("lid.size[1]"), "wide", " "), f.field(at("lid.corner_radius"), "corner", " "), f.field(at("lid.thickness"), "thick", " "),
	}, Note: "Corner is the radius of the flat part. Thickness left empty: " + defaultWords(defaultOf(at("lid.thickness")), f.units) + "."}}
}

// defaultOf is the default of a path, in the words of the format.
func defaultOf(path string) string {
	spec, _ := plan.SpecAt(path)
	return spec.Default
}

func moreGroups(f *form, at func(string) string) []group {
	return []group{
		{Legend: "Keeping apart", Fields: []field{
			f.field(at("spacing.edge"), "Centre to the lid's edge", ""), f.field(at("spacing.clear"), "Plastic beside a kept-clear shape", ""),
			f.field(at("lid.above_rim"), "Lid above the rim", ""),
		}},
		{Legend: "Water and air", Fields: []field{
			f.field(at("method"), "Method", ""), f.field(at("fill_depth"), "Fill depth", "Left empty: worked out from the cup."),
			f.field(at("air.flow"), "Pump gives", ""), f.field(at("air.stones"), "Air stones", ""), f.field(at("air.pump"), "The pump hangs", ""),
			f.field(at("air.power"), "Pump draws", " "), f.field(at("air.head"), "Pump blows down to", "The depth of water on its label."),
		}},
		{Legend: "Outside, lid on", Pair: true, Fields: []field{
			f.field(at("outside.size[0]"), "long", ""), f.field(at("outside.size[1]"), "wide", ""), f.field(at("outside.height"), "height", ""), f.field(at("outside.empty_mass"), "empty", ""),
		}},
		{Legend: "School", Fields: []field{
			f.field("school.adult_drills", "An adult will drill", "Pupils never drill."),
			f.field("school.terms[0].from", "Term from", " "), f.field("school.terms[0].to", "to", " "),
			f.field("school.meal.day", "Meal on", " "), f.field("place.time_zone", "Time zone", "Such as Europe/Dublin or America/Chicago: for the clock change."),
		}, Note: "More terms and closed days stand in the plan as text."},
		{Legend: "Names", Fields: []field{
			f.field("garden", "The garden", "No person's name."), f.field(at("name"), "This tub", " "),
		}},
		{Legend: "Tools", Pair: true, Fields: []field{
			f.field("tools.ruler_step", "ruler step", ""), f.field("tools.tape_error", "tape is off by", ""),
			f.field("tools.marking_error", "a mark is off by", ""), f.field("tools.drilling_error", "a drill wanders", ""),
		}},
	}
}

// keepRows are the shapes to keep clear, in words.
func keepRows(d *plan.Document, tub int) []keepRow {
	list := fmt.Sprintf("tubs[%d].lid.keep_clear", tub)
	var out []keepRow
	for i := range d.Items(list) {
		why, _, _, _ := d.Value(fmt.Sprintf("%s[%d].why", list, i))
		row := keepRow{Index: i}
		for _, kind := range []string{"rectangle", "circle", "polygon", "rib"} {
			if d.Has(fmt.Sprintf("%s[%d].%s", list, i, kind)) {
				row.Words = kind
			}
		}
		row.Words = strings.TrimSpace(why + ", " + row.Words)
		out = append(out, row)
	}
	return out
}
