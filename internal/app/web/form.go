package web

import (
	"net/url"
	"slices"
	"strings"
	"unicode"

	"rootbell/internal/base/quantity"
	"rootbell/internal/garden/plan"
)

// field is one value of the plan in a form. Its name is the value's path.
type field struct {
	ID, Name, Label string
	Kind            string // of the input: text, or date
	Letter          string // the ring in the drawing that shows what to measure
	Value, Unit     string
	Hint            string
	Default         string // shown in the empty field, where it is short
	Options         []option
	Error           *plan.Problem
}

type option struct{ Value, Words string }

// Described are the ids of what is said of the field.
func (f field) Described() string {
	var ids []string
	if f.Error != nil {
		ids = append(ids, f.ID+"-err")
	}
	if f.Hint != "" {
		ids = append(ids, f.ID+"-hint")
	}
	return strings.Join(ids, " ")
}

// group is fields under one head; a pair stands side by side.
type group struct {
	Legend string
	Fields []field
	Pair   bool
	Note   string
}

// ask is a field asked for. Its path may be below what it is a part of.
type ask struct{ path, label, hint string }

// form fills fields from a text and from what was posted over it.
type form struct {
	text     []byte
	read     *plan.Document // of the text, made when first asked
	posted   url.Values     // nil where nothing was posted
	units    quantity.System
	problems []plan.Problem
	asked    []string          // the paths of the fields made, in their order
	labels   map[string]string // of the fields, with the head they stand under
}

// shortDefault is how many letters of a default go into an empty field.
const shortDefault = 10

// field makes the field of a path: what was posted, else what the text has. An
// empty hint tells the default.
func (f *form) field(path, label, hint string) field {
	f.asked = append(f.asked, path)
	spec, _ := specAt(path)
	out := field{ID: idOf(path), Name: path, Label: label, Hint: strings.TrimSpace(hint)}
	if spec.Day {
		out.Kind = "date"
	}
	out.Unit = f.unitOf(path, spec)
	if spec.Tick {
		spec.Words = []string{"no", "yes"}
	}
	for _, word := range spec.Words {
		out.Options = append(out.Options, option{word, word})
	}
	if out.Options != nil && !spec.Required && spec.Default == "" {
		out.Options = append([]option{{"", ""}}, out.Options...)
	}
	typed, _, _, _ := f.doc().Value(path)
	out.Value = f.shown(typed, out.Unit)
	if out.Options != nil && typed == "" {
		out.Value = spec.Default
	}
	if f.posted.Has(path) {
		out.Value = f.posted.Get(path)
	}
	if hasUnit(out.Value) {
		out.Unit = ""
	}
	switch {
	case hint != "" || out.Options != nil:
	case spec.Measured:
		out.Default, out.Hint = f.defaultAt(spec, out.Unit)
	case len(spec.Default) <= shortDefault:
		out.Default = spec.Default
	default:
		out.Hint = "Left empty: " + defaultWords(spec.Default, f.units) + "."
	}
	out.Error = f.problemAt(path)
	return out
}

// own is a field that stands for other than one value of the plan: a list, or a
// part of what is not in the plan yet. It has what was posted, else a value.
func (f *form) own(name, label, hint, value string) field {
	out := field{ID: idOf(name), Name: name, Label: label, Hint: hint, Value: value, Error: f.problemAt(name)}
	if f.posted.Has(name) {
		out.Value = f.posted.Get(name)
	}
	return out
}

// ownPart is a field of what is not in the plan yet, such as an offer to be
// added: its name begins with head, and path is its place in the plan to be.
func (f *form) ownPart(head string, x ask, path string) field {
	out := f.own(head+x.path, x.label, x.hint, "")
	spec, known := plan.SpecAt(path)
	if known && spec.Measured {
		out.Unit = spec.Kind.Unit(f.units).Symbol
	}
	for _, word := range spec.Words {
		out.Options = append(out.Options, option{word, word})
	}
	if out.Options != nil && out.Value == "" {
		out.Value = spec.Default
	}
	if hasUnit(out.Value) {
		out.Unit = ""
	}
	return out
}

// problemAt is what is wrong in a field, or in the list that it stands for.
func (f *form) problemAt(name string) *plan.Problem {
	for i := range f.problems {
		if at := f.problems[i].Field; at == name || strings.HasPrefix(at, name+"[") {
			return &f.problems[i]
		}
	}
	return nil
}

// call keeps what fields are called in the list of what is to be mended: their
// labels behind a head.
func (f *form) call(head string, fields []field) {
	if f.labels == nil {
		f.labels = map[string]string{}
	}
	for _, one := range fields {
		f.labels[one.Name] = head + one.Label
	}
}

// callGroups is the same with each group's legend before the label.
func (f *form) callGroups(head string, groups []group) {
	for _, g := range groups {
		f.call(head+g.Legend+", ", g.Fields)
	}
}

// has tells whether the form has a field of that name.
func (f *form) has(name string) bool {
	_, called := f.labels[name]
	return called || slices.Contains(f.asked, name)
}

// defaultAt is a default as the empty field has it: the number alone where the
// unit stands at the field's end, else words under the field.
func (f *form) defaultAt(spec plan.Spec, unit string) (short, hint string) {
	if spec.Default == "" {
		return "", ""
	}
	number, ok := strings.CutSuffix(inUnits(spec, f.units), "\u00a0"+unit)
	if ok && unit != "" {
		return number, ""
	}
	if len(spec.Default) <= shortDefault {
		return spec.Default, ""
	}
	return "", "Left empty: " + defaultWords(spec.Default, f.units) + "."
}

// specAt is what the format says of a path. What one person eats and what one
// plant weighs are shown in grams or ounces: kilograms and pounds are too coarse.
func specAt(path string) (plan.Spec, bool) {
	spec, ok := plan.SpecAt(path)
	if path == "school.meal.portion" || strings.HasSuffix(path, "].harvest_mass") {
		spec.Kind = quantity.SmallMass
	}
	return spec, ok
}

// unitOf is the unit at a field's end, which a bare number is taken in. A scale
// that weighs salts shows grams everywhere.
func (f *form) unitOf(path string, spec plan.Spec) string {
	switch {
	case !spec.Measured:
		return ""
	case path == "tools.scale_step":
		return quantity.Gram.Symbol
	}
	return spec.Kind.Unit(f.units).Symbol
}

// shown is a typed quantity as the form's field has it: the number alone where
// the unit stands at the field's end.
func (f *form) shown(typed, unit string) string {
	if number, ok := strings.CutSuffix(typed, " "+unit); ok && unit != "" {
		return strings.TrimSpace(number)
	}
	return typed
}

// typedIn is what a field's entry means in the plan: the field's unit is added
// to a bare number.
func (f *form) typedIn(path, entry string) string {
	entry = strings.TrimSpace(entry)
	spec, ok := specAt(path)
	unit := f.unitOf(path, spec)
	if entry == "" || !ok || !spec.Measured || unit == "" || hasUnit(entry) {
		return entry
	}
	return entry + " " + unit
}

// changes are the values that a posted form has other than the text, in the
// form's order.
func (f *form) changes() []plan.Change {
	var out []plan.Change
	for _, path := range f.asked {
		if !f.posted.Has(path) {
			continue
		}
		typed, _, _, there := f.doc().Value(path)
		spec, _ := specAt(path)
		unit := f.unitOf(path, spec)
		entry := strings.TrimSpace(f.posted.Get(path))
		switch {
		case entry == f.shown(typed, unit), entry == typed:
		case !there && entry == "":
		case !there && (spec.Tick || len(spec.Words) > 0) && entry == spec.Default:
		default:
			out = append(out, plan.Change{Path: path, Typed: f.typedIn(path, entry)})
		}
	}
	return out
}

// hasUnit tells whether more than a number was typed, or than two with 'to'
// between them.
func hasUnit(entry string) bool {
	entry = strings.ReplaceAll(entry, " to ", " ")
	return strings.ContainsFunc(entry, func(r rune) bool { return unicode.IsLetter(r) || strings.ContainsRune(`"'°%′″`, r) })
}

// idOf makes an element's id of a path.
func idOf(path string) string {
	return "f-" + strings.Trim(strings.Map(func(r rune) rune {
		if r == '.' || r == '[' || r == ']' {
			return '-'
		}
		return r
	}, strings.ReplaceAll(path, "].", ".")), "-")
}

// doc is the text with its keys told apart.
func (f *form) doc() *plan.Document {
	if f.read == nil {
		f.read = plan.Read(f.text)
	}
	return f.read
}
