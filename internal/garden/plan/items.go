package plan

import (
	"reflect"
	"strconv"
	"strings"
)

// checked is a list of fixed length whose values depend on each other.
type checked interface {
	check() (index int, what, hint string)
}

// list reads a sequence into a slice or an array.
func (d *decoder) list(v reflect.Value, n *node, f Key, path string) {
	if n.shape != sequence {
		d.say(n.at, path, lastKey(path)+": a list is wanted here", "write it as [a, b], or one value a line behind dashes")
		return
	}
	items := n.items
	if v.Kind() != reflect.Array || len(items) != v.Len() || items[0].text != "0" {
		items = d.joinedItems(n, path)
	}
	if v.Kind() == reflect.Array {
		if len(items) != v.Len() && anySpoiled(items) {
			return
		}
		if len(items) != v.Len() {
			d.say(n.at, path, lastKey(path)+": "+strconv.Itoa(v.Len())+" values are wanted here, not "+strconv.Itoa(len(items)), "separate them by commas; a decimal comma needs quotes, such as \"2,5 cm\"")
			return
		}
	} else {
		if !d.count(n, len(items), f, path) {
			return
		}
		v.Set(reflect.MakeSlice(v.Type(), len(items), len(items)))
	}
	before := len(d.problems)
	for i, item := range items {
		at := path + "[" + strconv.Itoa(i) + "]"
		if item.shape == absent {
			d.say(item.at, at, lastKey(path)+": a value is missing in the list", "write it, or leave the comma or dash out")
			continue
		}
		d.value(v.Index(i), item, f, at)
	}
	if c, is := v.Interface().(checked); is && len(d.problems) == before && !anySpoiled(items) {
		if i, what, hint := c.check(); what != "" {
			d.say(items[i].at, path+"["+strconv.Itoa(i)+"]", lastKey(path)+": "+what, hint)
		}
	}
}

func anySpoiled(items []*node) bool {
	for _, item := range items {
		if item.shape == spoiled || anySpoiled(item.items) {
			return true
		}
	}
	return false
}

// longestList is the most entries any list may have.
const longestList = 500

func (d *decoder) count(n *node, have int, f Key, path string) bool {
	if f.Most == 0 {
		f.Most = longestList
	}
	switch {
	case have < f.Least:
		d.say(n.at, path, lastKey(path)+": at least "+plural(f.Least, "entry", "entries")+" wanted here, not "+strconv.Itoa(have), "add what is missing")
	case have > f.Most:
		d.say(n.at, path, lastKey(path)+": at most "+plural(f.Most, "entry", "entries")+" wanted here, not "+strconv.Itoa(have), "leave out what is too much")
	default:
		return true
	}
	return false
}

func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one + " is"
	}
	return strconv.Itoa(n) + " " + many + " are"
}

// joinedItems gives the items of a list, and says where a decimal comma has cut
// one in two: [52,5 cm, 36 cm] has three.
func (d *decoder) joinedItems(n *node, path string) []*node {
	var out []*node
	for i := 0; i < len(n.items); i++ {
		item := n.items[i]
		if n.flow && i+1 < len(n.items) && cutByComma(item, n.items[i+1]) && (item.text == "0" || !isDigits(n.items[i+1].text)) {
			d.sayComma(item, item.text+","+n.items[i+1].text, path+"["+strconv.Itoa(len(out))+"]")
			item = &node{shape: spoiled, at: item.at, start: item.start, end: n.items[i+1].end}
			i++
		}
		out = append(out, item)
	}
	return out
}

// joined gives the entries of a mapping, and says where a decimal comma has cut
// a value in two: {width: 120,5 cm} has a key '5 cm' with nothing behind it.
func (d *decoder) joined(n *node, path string) []entry {
	var out []entry
	for _, e := range n.entries {
		if last := len(out) - 1; n.flow && last >= 0 && e.value.shape == absent {
			piece := &node{shape: scalar, text: e.key, start: e.start, end: e.end}
			if cutByComma(out[last].value, piece) {
				value := out[last].value
				d.sayComma(value, value.text+","+e.key, join(path, out[last].key))
				out[last].value = &node{shape: spoiled, at: value.at, start: value.start, end: e.end}
				continue
			}
		}
		out = append(out, e)
	}
	return out
}

func (d *decoder) sayComma(n *node, typed, path string) {
	d.say(n.at, path, lastKey(path)+": the comma in "+quote(typed)+" ends the value inside [ ] and { }",
		"quote it, \""+typed+"\", or write "+strings.Replace(typed, ",", ".", 1))
}

// cutByComma tells whether two plain texts are digits, a comma right behind
// them, and more digits right behind that.
func cutByComma(first, second *node) bool {
	return first.shape == scalar && second.shape == scalar && first.quote == 0 && second.quote == 0 &&
		second.start == first.end+1 && isDigits(strings.TrimPrefix(first.text, "-")) &&
		second.text != "" && isDigits(second.text[:1])
}

func isDigits(text string) bool {
	for _, r := range text {
		if r < '0' || r > '9' {
			return false
		}
	}
	return text != ""
}
