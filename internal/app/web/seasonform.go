package web

import (
	"fmt"
	"slices"

	"rootbell/internal/garden/plan"
)

// seasonForm are the fields that move a season: the meal, the days, the lamp,
// the water, the plants and the seed.
type seasonForm struct {
	First, More []group
	MoreOpen    bool // something in there is to be mended
}

// asks are the fields of a group, each with its label and hint; those whose key
// the format has not are left out.
func (f *form) asks(fields ...ask) []field {
	var out []field
	for _, x := range fields {
		if _, known := plan.SpecAt(x.path); known {
			out = append(out, f.field(x.path, x.label, x.hint))
		}
	}
	return out
}

// seasonFormOf makes the form of a tub's season. The order of the calls is the
// order in which the changes are made.
func seasonFormOf(f *form, tub int) seasonForm {
	at := func(rest string) string { return fmt.Sprintf("tubs[%d].%s", tub, rest) }
	first := []group{
		{Legend: "The meal", Fields: f.asks(
			ask{"school.meal.day", "on", " "},
			ask{"school.meal.eaters", "How many eat", " "},
			ask{"school.meal.portion", "Leaves for each", ""},
			ask{"school.meal.chance", "How sure it has to be", ""},
		)},
		{Legend: "The water", Fields: f.asks(
			ask{at("fill_depth"), "Fill line, from the floor", "Left empty: worked out from the cup."},
		)},
		{Legend: "The plants", Fields: f.asks(
			ask{at("plants"), "How many", "A number, or: best. Fewer drink less."},
			ask{at("sow"), "Sow on", "Left empty: the best day."},
			ask{at("transplant"), "Into the tub on", "Left empty: when they are big enough."},
			ask{at("harvest_mass"), "One plant at the harvest", "Left empty: usual for the crop."},
		)},
	}
	more := []group{
		{Legend: "Seed and nursery", Fields: f.asks(
			ask{at("seed.germination"), "Seeds that come up", ""},
			ask{at("seed.packet_year"), "Year on the packet", " "},
			ask{at("nursery.temperature"), "Nursery, how warm", ""},
		)},
		{Legend: "When nobody is there", Fields: f.asks(
			ask{"school.visits", "Somebody looks in", " "},
			ask{"place.air_temperature_closed", "Room air then", ""},
			ask{at("max_fill"), "The tub holds, at most", " "},
		)},
		{Legend: "When somebody is there", Fields: f.asks(
			ask{"place.air_temperature", "Room air", ""},
			ask{"place.humidity", "Humidity", ""},
		)},
	}
	first = slices.Insert(first, 1, f.light()...)
	if f.doc().Items("school.terms") == 0 {
		first = slices.Insert(first, 0, group{Legend: "The term", Fields: f.asks(
			ask{"school.terms[0].from", "from", " "},
			ask{"school.terms[0].to", "to", " "},
		), Note: "More terms and closed days stand in the plan as text."})
	}
	m := seasonForm{First: some(first), More: some(more), MoreOpen: toMend(more)}
	f.callGroups("", m.First)
	f.callGroups("", m.More)
	return m
}

// some leaves out groups without a field and a note.
func some(groups []group) []group {
	return slices.DeleteFunc(groups, func(g group) bool { return len(g.Fields) == 0 && g.Note == "" })
}

// light is the hours of light of each lamp; where the plan has no lamp, the
// fields of a first one, without which no day can be worked out.
func (f *form) light() []group {
	g := group{Legend: "Light", Pair: true}
	n := f.doc().Items("lamps")
	if n == 0 {
		return f.lampGroups()
	}
	for i := range n {
		name := ""
		if n > 1 {
			name, _, _, _ = f.doc().Value(fmt.Sprintf("lamps[%d].name", i))
			name += ", "
		}
		g.Fields = append(g.Fields,
			f.field(fmt.Sprintf("lamps[%d].lit[0]", i), name+"from", " "),
			f.field(fmt.Sprintf("lamps[%d].lit[1]", i), name+"to", " "))
	}
	g.Note = "As on a clock: 06:00 to 22:00. Fewer hours: less thirst, slower growth."
	return []group{g}
}
