package plan

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// Key is the specification of one key of a group, as the tags of the plan's
// structs write it.
type Key struct {
	Name     string
	Required bool
	In       string   // the range taken, as 'low to high'
	Words    []string // the words taken
	Form     string   // the name of the form that a text must have
	Choice   string   // of the keys with this one's choice exactly one is given, or at most one
	Must     bool     // exactly one
	With     string   // the key that this one belongs to
	Needs    string   // the key that must be there when this one is
	Least    int      // fewest entries of a list
	Most     int      // most entries of a list, 0 for the most of any
	Default  string   // the default, in words
	Index    int      // of the field in the struct
}

// Keys gives the keys of a struct of the plan in their order.
func Keys(t reflect.Type) []Key {
	var out []Key
	for i := range t.NumField() {
		tag := t.Field(i).Tag
		name, given := tag.Lookup("plan")
		if !given {
			continue
		}
		f := Key{
			In: tag.Get("in"), Form: tag.Get("pattern"), With: tag.Get("with"), Needs: tag.Get("needs"),
			Default: tag.Get("default"), Index: i,
		}
		f.Name, f.Required = cutFlag(name)
		f.Choice, f.Must = cutFlag(tag.Get("one"))
		f.Words = wordsOf(tag.Get("words"))
		f.Least, _ = strconv.Atoi(tag.Get("least"))
		f.Most, _ = strconv.Atoi(tag.Get("most"))
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

func keysOf(fields []Key) []string {
	var keys []string
	for _, f := range fields {
		keys = append(keys, f.Name)
	}
	return keys
}

// choices groups the keys of which one is given, in their order.
func choices(fields []Key) [][]Key {
	var out [][]Key
	for _, f := range fields {
		if f.Choice == "" {
			continue
		}
		i := slices.IndexFunc(out, func(group []Key) bool { return group[0].Choice == f.Choice })
		if i < 0 {
			out = append(out, []Key{f})
			continue
		}
		out[i] = append(out[i], f)
	}
	return out
}

// homes tells, for a key, under which keys the document has it.
func homes(key string) []string {
	var found []string
	walkSpec(reflect.TypeFor[Plan](), "", func(path string, f Key) {
		if f.Name == key {
			found = append(found, path)
		}
	})
	return found
}

// walkSpec visits every key of the document with the path of its group, lists
// named without an index.
func walkSpec(t reflect.Type, path string, visit func(path string, f Key)) {
	for _, f := range Keys(t) {
		visit(path, f)
		inner := t.Field(f.Index).Type
		for inner.Kind() == reflect.Pointer || inner.Kind() == reflect.Slice {
			inner = inner.Elem()
		}
		if inner.Kind() == reflect.Struct {
			walkSpec(inner, strings.TrimPrefix(path+"."+f.Name, "."), visit)
		}
	}
}
