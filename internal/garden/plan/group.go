package plan

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// wordReader is a group of keys in whose place one word may stand.
type wordReader interface {
	readWord(word string) bool
}

// group reads a mapping into a struct, key by key.
func (d *decoder) group(v reflect.Value, n *node, path string) {
	fields := Keys(v.Type())
	if n.shape != mapping {
		if w, is := v.Addr().Interface().(wordReader); is && n.shape == scalar && w.readWord(n.text) {
			return
		}
		d.wantGroup(n, path, fields)
		return
	}
	seen := map[string]entry{}
	for _, e := range d.joined(n, path) {
		if e.value.shape == spoiled && e.key == "" {
			continue
		}
		if first, twice := seen[e.key]; twice {
			d.say(e.at, join(path, e.key), "the key "+quote(e.key)+" is here a second time; the first is in line "+strconv.Itoa(first.at.line), "keep one of the two")
			continue
		}
		seen[e.key] = e
		i := slices.IndexFunc(fields, func(f Key) bool { return f.Name == e.key })
		if i < 0 {
			d.unknownKey(e, fields, path)
			continue
		}
		d.value(v.Field(fields[i].Index), e.value, fields[i], join(path, e.key))
	}
	d.missing(n, fields, seen, path)
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// wantGroup says that keys are wanted where something else stands.
func (d *decoder) wantGroup(n *node, path string, fields []Key) {
	what := "a group of keys is wanted here"
	if path != "" {
		what = lastKey(path) + ": " + what
	}
	d.say(n.at, path, what, "write "+list(keysOf(fields))+", each with a value")
}

func (d *decoder) unknownKey(e entry, fields []Key, path string) {
	keys := keysOf(fields)
	what := "the key " + quote(e.key) + " is not known here"
	hint := ""
	switch near := nearest(e.key, keys); {
	case near != "":
		hint = "did you mean " + near + "?"
	default:
		hint = elsewhere(e.key, keys)
	}
	d.say(e.at, join(path, e.key), what, hint)
}

// elsewhere names the groups that a key belongs to, or else the keys that are
// known where it stands.
func elsewhere(key string, keys []string) string {
	var places []string
	for _, home := range homes(key) {
		if home == "" {
			home = "the plan itself"
		}
		if !slices.Contains(places, home) {
			places = append(places, home)
		}
	}
	if len(places) > 0 {
		return "it belongs to " + list(places) + "; check the indent"
	}
	return "known here: " + strings.Join(keys, ", ")
}

// missing says which keys are wanted and not there.
func (d *decoder) missing(n *node, fields []Key, seen map[string]entry, path string) {
	given := func(key string) bool {
		e, there := seen[key]
		return there && e.value.shape != absent
	}
	whole := "the plan"
	if path != "" {
		whole = owner(path)
	}
	for _, f := range fields {
		at := n.at
		if e, there := seen[f.Name]; there {
			at = e.at
		}
		switch {
		case f.Required && !given(f.Name) && !d.broken:
			d.say(at, join(path, f.Name), whole+" has no "+f.Name, "add "+f.Name+": …")
		case f.With != "" && given(f.Name) && !given(f.With):
			d.say(at, join(path, f.Name), f.Name+" is for "+f.With+", which is not here", "add "+f.With+", or leave "+f.Name+" out")
		case f.Needs != "" && given(f.Name) && !given(f.Needs) && !d.broken:
			d.say(at, join(path, f.Needs), f.Name+" is here without "+f.Needs, "add "+f.Needs+": …")
		}
	}
	for _, choice := range choices(fields) {
		d.choice(n, choice, given, seen, path, whole)
	}
}

// choice holds a set of keys against 'exactly one' or 'at most one'.
func (d *decoder) choice(n *node, of []Key, given func(string) bool, seen map[string]entry, path, whole string) {
	var here []string
	for _, f := range of {
		if given(f.Name) {
			here = append(here, f.Name)
		}
	}
	keys := keysOf(of)
	switch {
	case len(here) == 0 && of[0].Must && !d.broken:
		d.say(n.at, path, whole+" has none of "+list(keys), "add the one that fits")
	case len(here) > 1:
		slices.SortFunc(here, func(a, b string) int { return seen[a].start - seen[b].start })
		second := here[1]
		d.say(seen[second].at, join(path, second), second+" stands beside "+here[0]+", and only one of "+list(keys)+" can be", "keep the one that fits")
	}
}

// owner names the group of a path for a message: 'lid' or 'tub 2'.
func owner(path string) string {
	key := lastKey(path)
	open := strings.LastIndexByte(path, '[')
	if open < strings.LastIndexByte(path, '.') || open < 0 {
		return key
	}
	index, err := strconv.Atoi(strings.TrimSuffix(path[open+1:], "]"))
	if err != nil {
		return key
	}
	return strings.TrimSuffix(key, "s") + " " + strconv.Itoa(index+1)
}
