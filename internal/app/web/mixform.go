package web

import (
	"fmt"
	"slices"
	"strings"

	"rootbell/internal/garden/plan"
	"rootbell/internal/science/solution"
)

// mixForm are the fields of what a tub is mixed from: the water, what stands on
// the shelf, what is wanted, and what measures.
type mixForm struct {
	Tap, TapMore       []group
	Shelf              []bagView
	New                []group // a bottle or bag to be put on the shelf
	Wanted, Tools      []group
	More               []group // acid, base, stocks, bleach
	Acid, Base, Spoons bool    // whether one is in the plan
	NewOpen, MoreOpen  bool    // something in there is to be mended
}

// bagView is one fertiliser with its fields folded away.
type bagView struct {
	Index int
	Words string
	Open  bool // something in it is to be mended
	Group []group
}

// mixFormOf makes the form of a tub's mix. The order of the calls is the order in
// which the changes are made.
func mixFormOf(f *form, tub int) mixForm {
	m := mixForm{
		Tap: []group{{Legend: "Tap water", Fields: []field{
			f.field("tap.alkalinity", "Alkalinity, as calcium carbonate", "A figure, or what a strip leaves open: 80 to 120."),
			f.field("tap.ph", "pH", "A figure or a strip: 7 to 7.5."),
			f.field("tap.chlorine", "Free chlorine", " "), f.field("tap.chloramine", "Chloramine", " "),
		}, Note: "Leave empty what nobody measured. Without an alkalinity no acid is dosed."}},
		TapMore: []group{{Legend: "From the water report", Pair: true, Fields: []field{
			f.field("tap.ec", "EC", " "), f.field("tap.calcium", "calcium", " "), f.field("tap.magnesium", "magnesium", " "),
			f.field("tap.sodium", "sodium", " "), f.field("tap.potassium", "potassium", " "), f.field("tap.chloride", "chloride", " "),
			f.field("tap.sulfate", "sulfate", " "), f.field("tap.nitrate_n", "nitrate, as N", " "), f.field("tap.phosphate_p", "phosphate, as P", " "),
			f.field("tap.iron", "iron", " "), f.field("tap.boron", "boron", " "),
		}}, {Legend: "The water itself", Fields: []field{
			f.field("tap.softened", "Softened with salt", " "), f.field("blend", "There is to blend with", " "),
			f.field("place.water_temperature", "Water in the tub", "Left empty: as warm as the room."),
		}}},
	}
	for i := range f.doc().Items("fertilisers") {
		m.Shelf = append(m.Shelf, f.bag(i))
	}
	m.New = f.newBag()
	m.Wanted = []group{f.feed(tub)}
	m.Tools = []group{{Legend: "What measures", Fields: []field{
		f.field("tools.scale_step", "The scale shows steps of", "Left empty: 1 g, as a kitchen scale."), f.choice("tools.ec", "EC is read with"),
		f.field("tools.ec_scale", "The meter shows", " "), f.choice("tools.ph", "pH is read with"),
	}}}
	m.More = f.storeRoom()
	m.NewOpen, m.MoreOpen = len(m.Shelf) == 0 || toMend(m.New), toMend(m.TapMore) || toMend(m.More)
	m.Acid, m.Base, m.Spoons = f.doc().Items("acids") > 0, f.doc().Items("bases") > 0, f.doc().Items("spoons") > 0
	for _, b := range m.Shelf {
		f.callGroups(b.Words+": ", b.Group)
	}
	for _, groups := range [][]group{m.Tap, m.TapMore, m.New, m.Wanted, m.Tools, m.More} {
		f.callGroups("", groups)
	}
	return m
}

// choice is a field of words of which none need be chosen.
func (f *form) choice(path, label string) field {
	out := f.field(path, label, " ")
	if len(out.Options) > 0 && out.Options[0].Value != "" {
		out.Options = append([]option{{"", ""}}, out.Options...)
		if typed, _, _, there := f.doc().Value(path); !f.posted.Has(path) && (!there || typed == "") {
			out.Value = ""
		}
	}
	return out
}

// labelShown are the nutrients of a label that always have a field: what most
// labels name.
var labelShown = []string{"N", "P2O5", "K2O", "Ca", "Mg", "S", "Fe", "Mn", "B", "Zn", "Cu", "Mo"}

// bag is one fertiliser of the plan.
func (f *form) bag(i int) bagView {
	at := func(rest string) string { return fmt.Sprintf("fertilisers[%d].%s", i, rest) }
	value := func(rest string) string {
		typed, _, _, _ := f.doc().Value(at(rest))
		return typed
	}
	b := bagView{Index: i, Words: value("name")}
	if dose := value("dose"); dose != "" {
		b.Words += ", " + dose
	}
	about := group{Legend: "Bottle or bag", Fields: []field{f.field(at("name"), "called", " "), f.field(at("dose"), "dose", "As the maker says: 2 mL/L, 1 g/L. Left empty everywhere: worked out.")}}
	if value("salt") != "" || !f.doc().Has(at("label")) {
		about.Fields = append(about.Fields, f.field(at("salt"), "pure salt", "By name or formula."))
	}
	b.Group = append(b.Group, about)
	if f.doc().Has(at("label")) || f.posted.Has(at("label.N")) {
		names := slices.Clone(labelShown)
		for _, name := range plan.Nutrients() {
			if !slices.Contains(names, name) && f.doc().Has(at("label."+name)) {
				names = append(names, name)
			}
		}
		label := group{Legend: "The label says", Pair: true}
		for _, name := range names {
			label.Fields = append(label.Fields, f.field(at("label."+name), name, " "))
		}
		for _, form := range [][2]string{{"nitrate_n", "N as nitrate"}, {"ammonium_n", "N as ammonium"}, {"urea_n", "N as urea"}} {
			label.Fields = append(label.Fields, f.field(at(form[0]), form[1], " "))
		}
		b.Group = append(b.Group, label)
	}
	b.Group = append(b.Group, group{Legend: "How it comes", Pair: true, Fields: []field{f.choice(at("form"), "it is"), f.field(at("density"), "density", " "), f.field(at("part"), "bottle", " ")}, Note: "A liquid: weigh 100 mL of it. 118 g is 1.18 kg/L. Dry: its dose is in grams."})
	b.Open = toMend(b.Group)
	return b
}

// toMend tells whether something is wrong in one of the fields.
func toMend(groups []group) bool {
	return slices.ContainsFunc(groups, func(g group) bool {
		return slices.ContainsFunc(g.Fields, func(x field) bool { return x.Error != nil })
	})
}

// feed is what the solution is to be: the tub's own where it has one, else the
// garden's.
func (f *form) feed(tub int) group {
	path := "feed"
	if own := fmt.Sprintf("tubs[%d].feed", tub); f.doc().Has(own) {
		path = own
	}
	g := group{Legend: "Wanted", Fields: []field{f.field(path+".ec", "EC", "Left empty: the middle of what the crop is grown in."), f.field(path+".ph", "pH", " ")}}
	if f.doc().Has(path + ".target") {
		g.Note = "The recipe is your own: it stands in the plan as text."
		return g
	}
	recipe := f.field(path+".recipe", "Recipe", "With a maker's dose: only to compare with.")
	recipe.Options = []option{{"", "as usual for lettuce"}}
	for _, name := range solution.RecipeNames() {
		if r, err := solution.RecipeNamed(name); err == nil {
			recipe.Options = append(recipe.Options, option{name, r.Name})
		}
	}
	if !slices.ContainsFunc(recipe.Options, func(o option) bool { return o.Value == recipe.Value }) {
		recipe.Options = append(recipe.Options, option{recipe.Value, recipe.Value})
	}
	g.Fields = append(g.Fields, recipe)
	return g
}

// storeRoom is what only an adult handles, and stocks.
func (f *form) storeRoom() []group {
	reagent := func(list, legend, kind, example string) group {
		at := func(rest string) string { return list + "[0]." + rest }
		return group{Legend: legend, Fields: []field{
			f.field(at("name"), "called", " "), f.choice(at(kind), "which one"),
			f.field(at("by_mass"), "strength by mass", example), f.field(at("density"), "density", " "), f.field(at("solid"), "a powder", " "),
		}}
	}
	acid := reagent("acids", "Acid, an adult's", "acid", "From the label, never guessed.")
	if f.doc().Items("acids") > 1 {
		acid.Note = "More acids stand in the plan as text."
	}
	return []group{
		acid, reagent("bases", "Base, an adult's", "base", "From the label."),
		{Legend: "Stocks A and B", Pair: true, Fields: []field{f.field("stocks.volume", "of each", " "), f.field("stocks.strength", "times the feed", " ")}, Note: "Left empty: mixed from the bags."},
		{Legend: "Store room", Pair: true, Fields: []field{f.field("place.coldest", "coldest there", " ")}},
		{Legend: "Bleach, an adult's", Fields: []field{f.field("bleach.chlorine", "available chlorine", "In grams for 100 mL, from the label.")}},
	}
}

// bottle begins the names of the fields of a new fertiliser.
const bottle = "bottle."

// newFields are the fields of a new fertiliser with their places in the plan.
var newFields = []ask{
	{"name", "called", ""},
	{"dose", "dose", "As the maker says: 2 mL/L, 1 g/L."},
	{"salt", "pure salt", "Its name or formula; or copy the label:"},
}

// newBag are the fields of a bottle or bag to be put on the shelf.
func (f *form) newBag() []group {
	about := group{Legend: "Put another on the shelf"}
	part := func(x ask) field { return f.ownPart(bottle, x, "fertilisers[0]."+x.path) }
	for _, x := range newFields {
		about.Fields = append(about.Fields, part(x))
	}
	label := group{Legend: "The label says", Pair: true, Note: "Traces and the rest can be filled in when it stands on the shelf."}
	for _, name := range labelShown[:6] {
		label.Fields = append(label.Fields, part(ask{"label." + name, name, ""}))
	}
	label.Fields = append(label.Fields, part(ask{"density", "density", ""}))
	return []group{about, label}
}

// bottleItem is a new fertiliser as the plan's list takes it.
func (f *form) bottleItem() (string, *plan.Problem) {
	typed := func(rest string) string { return strings.TrimSpace(f.posted.Get(bottle + rest)) }
	if typed("name") == "" {
		return "", &plan.Problem{Field: bottle + "name", What: "the bottle or bag has no name", Hint: "a short one will do: grow, bloom, blue bag"}
	}
	root := &branch{}
	root.at("name").value = plan.Flow(typed("name"))
	if salt := typed("salt"); salt != "" {
		root.at("salt").value = plan.Flow(salt)
	}
	for _, name := range labelShown[:6] {
		if v := typed("label." + name); v != "" {
			root.grow("label." + name).value = plan.Flow(f.typedIn("fertilisers[0].label."+name, v))
		}
	}
	if len(root.parts) == 1 {
		return "", &plan.Problem{Field: bottle + "label.N", What: "nothing is told of what is in it", Hint: "copy N, P2O5 and K2O from the label, or name the pure salt"}
	}
	if v := typed("density"); v != "" {
		root.at("density").value = plan.Flow(f.typedIn("fertilisers[0].density", v))
	}
	if v := typed("dose"); v != "" {
		root.at("dose").value = plan.Flow(v)
	}
	return root.flow(), nil
}

// intoBottle moves problems of a fertiliser that is not in the plan yet to the
// fields in which it was typed.
func (f *form) intoBottle(problems []plan.Problem) {
	head := fmt.Sprintf("fertilisers[%d]", f.doc().Items("fertilisers"))
	for i, p := range problems {
		rest, mine := strings.CutPrefix(p.Field, head)
		if !mine {
			continue
		}
		switch rest = strings.TrimPrefix(rest, "."); {
		case rest == "" || rest == "label":
			rest = "label.N"
		case !slices.Contains([]string{"name", "dose", "salt", "density"}, rest) && !strings.HasPrefix(rest, "label."):
			rest = "name"
		}
		problems[i].Field = bottle + rest
	}
}
