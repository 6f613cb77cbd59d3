package plan

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// field is the specification of one key, as the tags of the plan's structs
// write it.
type field struct {
	key      string
	required bool
	in       string   // the range taken, as 'low to high'
	words    []string // the words taken
	pattern  string   // the name of the form that a text must have
	choice   string   // of the keys with this name exactly one is given, or at most one
	must     bool     // exactly one
	with     string   // the key that this one belongs to
	needs    string   // the key that must be there when this one is
	least    int      // fewest items of a list
	most     int      // most items of a list, 0 for any
	def      string   // the default, in words
	index    int
}

// fieldsOf gives the keys of a struct in their order.
func fieldsOf(t reflect.Type) []field {
	var out []field
	for i := range t.NumField() {
		tag := t.Field(i).Tag
		name, given := tag.Lookup("plan")
		if !given {
			continue
		}
		f := field{in: tag.Get("in"), pattern: tag.Get("pattern"), with: tag.Get("with"), needs: tag.Get("needs"), def: tag.Get("default"), index: i}
		f.key, f.required = cutFlag(name)
		f.choice, f.must = cutFlag(tag.Get("one"))
		f.words = wordsOf(tag.Get("words"))
		f.least, _ = strconv.Atoi(tag.Get("least"))
		f.most, _ = strconv.Atoi(tag.Get("most"))
		out = append(out, f)
	}
	return out
}

func cutFlag(tag string) (name string, required bool) {
	name, flag, _ := strings.Cut(tag, ",")
	return name, flag == "required"
}

func wordsOf(tag string) []string {
	switch tag {
	case "":
		return nil
	case "crops":
		return Crops()
	}
	return strings.Split(tag, ",")
}

func keysOf(fields []field) []string {
	var keys []string
	for _, f := range fields {
		keys = append(keys, f.key)
	}
	return keys
}

// choices groups the keys of which one is given, in their order.
func choices(fields []field) [][]field {
	var out [][]field
	for _, f := range fields {
		if f.choice == "" {
			continue
		}
		i := slices.IndexFunc(out, func(group []field) bool { return group[0].choice == f.choice })
		if i < 0 {
			out = append(out, []field{f})
			continue
		}
		out[i] = append(out[i], f)
	}
	return out
}

// homes tells, for a key, under which keys the document has it.
func homes(key string) []string {
	var found []string
	walkSpec(reflect.TypeFor[Plan](), "", func(path string, f field) {
		if f.key == key {
			found = append(found, path)
		}
	})
	return found
}

// walkSpec visits every key of the document with the path of its group, lists
// named without an index.
func walkSpec(t reflect.Type, path string, visit func(path string, f field)) {
	for _, f := range fieldsOf(t) {
		visit(path, f)
		inner := t.Field(f.index).Type
		for inner.Kind() == reflect.Pointer || inner.Kind() == reflect.Slice {
			inner = inner.Elem()
		}
		if inner.Kind() == reflect.Struct {
			walkSpec(inner, strings.TrimPrefix(path+"."+f.key, "."), visit)
		}
	}
}
