package web

import (
	"fmt"

	"rootbell/internal/base/finding"
)

// lampGroups are the fields of each lamp; where the plan has none, those of a
// first one.
func (f *form) lampGroups() []group {
	n := max(f.doc().Items("lamps"), 1)
	var out []group
	for i := range n {
		at := func(rest string) string { return fmt.Sprintf("lamps[%d].%s", i, rest) }
		g := group{Legend: "Lamp", Pair: true, Fields: []field{
			f.field(at("flux"), "gives light", " "), f.field(at("power"), "draws", " "),
			f.field(at("length"), "shines, long", " "), f.field(at("width"), "shines, wide", " "),
			f.field(at("above_lid"), "over the lid", " "), f.field(at("lit[0]"), "lit from", " "), f.field(at("lit[1]"), "lit to", " "),
		}}
		if n > 1 {
			if name, _, _, ok := f.doc().Value(at("name")); ok && name != "" {
				g.Legend = capital(name)
			}
		}
		if i == 0 {
			g.Note = "Light in µmol/s from the lamp's data sheet; without one, its watts. Over the lid: on the day the plants move. Hours as on a clock: 06:00 to 22:00."
		}
		out = append(out, g)
	}
	return out
}

// remedies are the fields in which a finding about the garden as a whole is
// mended, with what they are called.
var remedies = map[string]struct{ field, words string }{
	"window-only":  {"lamps[0].flux", "lamp"},
	"season-dark":  {"lamps[0].flux", "lamp"},
	"no-shelf":     {"shelf.width", "shelf"},
	"zone-missing": {"place.time_zone", "time zone"},
}

// remedy is the field of the form that settles a finding which names none: what
// the link is called, and where it leads.
func (f *form) remedy(one finding.Finding) (words, address string, ok bool) {
	if r, known := remedies[one.Code]; known && f.has(r.field) {
		return r.words, "#" + idOf(r.field), true
	}
	return "", "", false
}
