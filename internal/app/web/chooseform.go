package web

import (
	"fmt"
	"slices"
	"strings"

	"rootbell/internal/garden"
	"rootbell/internal/garden/plan"
	"rootbell/internal/school/choose"
)

// chooseForm are the fields of a decision: the offers, the place, and the
// teacher's own prices.
type chooseForm struct {
	Offers     []offerView
	New        []group
	NewMore    []group
	Place      []group
	Prices     []group
	NewOpen    bool // no offer is there, or something in the new one is to be mended
	PricesOpen bool
	Missing    int // things without a price
}

// offerView is one offer of the plan with its fields folded away.
type offerView struct {
	Index       int
	Words       string
	Open        bool
	Group, More []group
}

// offerAsked are the fields of an offer that every one has, then those that
// stand behind 'more'. An offer's list of words is typed with commas.
var (
	offerAsked = []ask{
		{"name", "Called", "A few words. No maker's name is needed."},
		{"price", "Price", ""},
		{"delivery", "Delivery", "0 where it costs nothing."},
		{"per_crop", "Each crop costs", "Seed, plugs, feed. Empty: not told."},
		{"volume", "Water it holds", ""},
		{"sites", "Holes", "Count them on the lid."},
	}
	offerHoles = []ask{
		{"pattern.rows", "rows", ""},
		{"pattern.columns", "holes in a row", ""},
		{"pattern.pitch", "from hole to hole", ""},
	}
	offerMore = []ask{
		{"includes", "Comes with", "With commas: pump, stone, cups."},
		{"past", "Where it comes from", "Unknown: second-hand, and nobody knows what was in it."},
		{"meters", "Meters with it", "pH, EC, temperature."},
		{"months", "Feed for so many months", ""},
		{"refills", "A refill costs", ""},
		{"power", "Its own lamp takes", ""},
		{"flux", "Its own lamp gives", ""},
		{"lacks", "What you know is missing", "With commas."},
	}
)

// isList tells the fields of an offer that are lists of words.
func isList(rest string) bool { return slices.Contains([]string{"includes", "meters", "lacks"}, rest) }

// chooseFormOf makes the form; a is the last that could be worked out. The order
// of the calls is the order in which changes are made.
func chooseFormOf(f *form, a *garden.Assessment) chooseForm {
	m := chooseForm{New: f.newOffer(), NewMore: f.newOfferMore()}
	for i := range f.doc().Items("offers") {
		m.Offers = append(m.Offers, f.offer(i))
	}
	m.Place = []group{
		{Legend: "At our school", Fields: []field{
			f.field("school.adult_drills", "An adult drills", " "), f.field("school.site.socket", "Socket within reach", " "),
			f.field("school.site.rcd", "With RCD (GFCI)", "The school's electrician knows."), f.field("school.site.kitchen", "The class may eat it", " "),
			f.field("school.crops_planned", "Crops counted", ""), f.field("currency", "Currency", "Three letters: EUR, USD."),
		}},
	}
	m.Prices = f.prices(a)
	m.NewOpen = len(m.Offers) == 0 || toMend(m.New) || toMend(m.NewMore)
	m.PricesOpen = toMend(m.Prices)
	if len(m.Prices) > 0 && m.Prices[0].Legend == noPrice {
		m.Missing = len(m.Prices[0].Fields)
	}
	f.nameOffers(m)
	return m
}

// nameOffers keeps what each field is called with its head.
func (f *form) nameOffers(m chooseForm) {
	labels := func(head string, groups []group) {
		for _, g := range groups {
			f.call(head, g.Fields)
		}
	}
	for _, o := range m.Offers {
		labels(o.Words+": ", o.Group)
		labels(o.Words+": ", o.More)
	}
	labels("", m.New)
	labels("", m.NewMore)
	labels("", m.Place)
	labels("price of ", m.Prices)
}

// offer is one offer of the plan.
func (f *form) offer(i int) offerView {
	at := func(rest string) string { return fmt.Sprintf("offers[%d].%s", i, rest) }
	one := func(x ask) field {
		if isList(x.path) {
			return f.own(at(x.path), x.label, x.hint, f.listed(at(x.path)))
		}
		if x.hint == "" {
			x.hint = " "
		}
		return f.field(at(x.path), x.label, x.hint)
	}
	name, _, _, _ := f.doc().Value(at("name"))
	v := offerView{Index: i, Words: name}
	about, holes, more := group{Legend: "The offer"}, group{Legend: "How its holes lie", Pair: true}, group{Legend: "More of it"}
	for _, x := range offerAsked {
		about.Fields = append(about.Fields, one(x))
	}
	if n := f.doc().Items(at("holes")); n > 0 {
		holes.Note = fmt.Sprintf("The places of its %d holes stand in the plan as text.", n)
	} else {
		for _, x := range offerHoles {
			holes.Fields = append(holes.Fields, one(x))
		}
		holes.Note = "Left empty where they lie in no rows: then they are only counted."
	}
	for _, x := range offerMore {
		more.Fields = append(more.Fields, one(x))
	}
	v.Group, v.More = []group{about, holes}, []group{more}
	v.Open = toMend(v.Group) || toMend(v.More)
	return v
}

// listChanges are the lists of words that a posted form has other than the text.
func (f *form) listChanges(int) []edit {
	var out []edit
	for i := range f.doc().Items("offers") {
		for _, x := range offerMore {
			path := fmt.Sprintf("offers[%d].%s", i, x.path)
			if !isList(x.path) || !f.posted.Has(path) {
				continue
			}
			words := wordList(f.posted.Get(path), ",")
			if slices.Equal(words, f.list(path)) {
				continue
			}
			out = append(out, edit{plan.Change{Path: path, Typed: flowList(words)}, true})
		}
	}
	return out
}

// noPrice heads the fields of what has no price.
const noPrice = "No price yet"

// prices are a field for each thing of the budgets, what has no price first.
func (f *form) prices(a *garden.Assessment) []group {
	empty, told := group{Legend: noPrice, Pair: true, Note: "Of one piece, as you would pay it. Leave empty what nobody told you: it is named, and never guessed."}, group{Legend: "Priced", Pair: true}
	seen := map[string]bool{"offer": true, "delivery": true, "per_crop": true, "refills": true}
	for i := range a.Choose.Offers {
		for _, l := range a.Choose.Offers[i].Budget {
			if seen[l.Item] {
				continue
			}
			seen[l.Item] = true
			path := "prices." + l.Item
			if _, ok := plan.SpecAt(path); !ok {
				continue
			}
			label := choose.Short(l.What)
			if l.Item == "electricity" {
				label = "electricity, a kWh"
			}
			one := f.field(path, label, " ")
			if typed, _, _, there := f.doc().Value(path); there && typed != "" {
				told.Fields = append(told.Fields, one)
			} else {
				empty.Fields = append(empty.Fields, one)
			}
		}
	}
	var out []group
	for _, g := range []group{empty, told} {
		if len(g.Fields) > 0 {
			out = append(out, g)
		}
	}
	return out
}

// kit begins the names of the fields of a new offer.
const kit = "kit."

// newOffer are the fields of an offer to be added.
func (f *form) newOffer() []group {
	about, holes := group{Legend: "Another offer"}, group{Legend: "How its holes lie", Pair: true, Note: "Seen from above. Left empty where they lie in no rows, or nobody knows: then they are only counted."}
	for _, x := range offerAsked {
		about.Fields = append(about.Fields, f.kitField(x))
	}
	for _, x := range offerHoles {
		holes.Fields = append(holes.Fields, f.kitField(x))
	}
	about.Fields = append(about.Fields, f.kitField(offerMore[0]))
	return []group{about, holes}
}

func (f *form) newOfferMore() []group {
	more := group{Legend: "More of it"}
	for _, x := range offerMore {
		if x.path != "includes" {
			more.Fields = append(more.Fields, f.kitField(x))
		}
	}
	return []group{more}
}

func (f *form) kitField(x ask) field {
	if isList(x.path) {
		return f.own(kit+x.path, x.label, x.hint, "")
	}
	return f.ownPart(kit, x, "offers[0]."+x.path)
}

// kitBegun tells whether something was typed of a new offer.
func (f *form) kitBegun() bool {
	for name := range f.posted {
		if strings.HasPrefix(name, kit) && name != kit+"past" && strings.TrimSpace(f.posted.Get(name)) != "" {
			return true
		}
	}
	return false
}

// kitItem is a new offer as the plan's list takes it.
func (f *form) kitItem() (string, *plan.Problem) {
	typed := func(rest string) string { return strings.TrimSpace(f.posted.Get(kit + rest)) }
	if typed("name") == "" {
		return "", &plan.Problem{Field: kit + "name", What: "the offer has no name", Hint: "A few words will do, such as: kit on offer."}
	}
	root := &branch{}
	holes := 0
	for _, list := range [][]ask{offerAsked, offerHoles, offerMore} {
		for _, x := range list {
			v := typed(x.path)
			if v == "" || x.path == "past" && v == "new" {
				continue
			}
			if strings.HasPrefix(x.path, "pattern.") {
				holes++
			}
			if isList(x.path) {
				root.at(x.path).value = flowList(wordList(v, ","))
				continue
			}
			root.grow(x.path).value = plan.Flow(f.typedIn("offers[0]."+x.path, v))
		}
	}
	if holes > 0 && holes < len(offerHoles) {
		return "", &plan.Problem{Field: kit + "pattern.rows", What: "rows, holes in a row and the way from hole to hole belong together", Hint: "Fill in all three, or leave all three empty."}
	}
	return root.flow(), nil
}

// intoKit moves problems of an offer that is not in the plan yet to the fields
// in which it was typed.
func (f *form) intoKit(problems []plan.Problem) {
	head := fmt.Sprintf("offers[%d]", f.doc().Items("offers"))
	for i, p := range problems {
		rest, mine := strings.CutPrefix(p.Field, head)
		if !mine {
			continue
		}
		rest, _, _ = strings.Cut(strings.TrimPrefix(rest, "."), "[")
		if rest == "" || rest == "pattern" || rest == "holes" {
			rest = map[string]string{"": "name", "pattern": "pattern.rows", "holes": "pattern.rows"}[rest]
		}
		problems[i].Field = kit + rest
	}
}
