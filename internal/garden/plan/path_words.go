package plan

import (
	"strconv"
	"strings"
)

// PathWords says a path as a teacher would: 'tub Heron, lid, hole 3' for
// tubs[0].lid.holes[2]. Things with a name are called by the one that the text
// gives them. It is empty for no path.
func PathWords(text []byte, path string) string { return Read(text).Words(path) }

// Words says a path as a teacher would; see PathWords.
func (d *Document) Words(path string) string {
	var out []string
	n, key, deep := d.root, "", 0
	for _, s := range splitPath(path) {
		switch {
		case s.index < 0:
			key, deep = s.key, 0
			n = n.child(s.key)
			out = append(out, keyWords(s.key))
			continue
		case n != nil && n.shape == sequence && s.index < len(n.items):
			n = n.items[s.index]
		default:
			n = nil
		}
		out = itemWords(out, key, deep, s.index, n)
		deep++
	}
	return strings.Join(out, ", ")
}

// itemWords goes on from the words of a list to those of an item in it, deep
// lists below its key.
func itemWords(words []string, key string, deep, index int, item *node) []string {
	if parts := partsOf[key]; deep == 0 && index < len(parts) {
		return append(words, parts[index])
	}
	if deep > 0 {
		return append(words, coordinates[min(index, len(coordinates)-1)])
	}
	one, whole := oneOf[key]
	if !whole {
		one = strings.TrimSuffix(keyWords(key), "s")
	}
	call := one + " " + strconv.Itoa(index+1)
	switch name := nameOf(key, item); {
	case strings.HasPrefix(strings.ToLower(name), one+" "): // a tub that is called Tub 1
		call = name
	case name != "":
		call = one + " " + name
	}
	switch key {
	case "polygon", "outline", "rib":
		return append(words, call)
	}
	return append(words[:len(words)-1:len(words)-1], call)
}

// nameKey is the key that tells the items of a list from each other.
func nameKey(list string) string {
	if list == "growing" {
		return "crop"
	}
	return "name"
}

// nameOf is what tells an item from the others of the list with this key, or
// nothing.
func nameOf(list string, item *node) string {
	if n := item.child(nameKey(list)); n != nil && n.shape == scalar {
		return n.text
	}
	return ""
}

// partsOf are the words for the values of a list of fixed length.
var partsOf = map[string][]string{
	"size": {"width", "depth"}, "top": {"width", "depth"}, "base": {"width", "depth"},
	"at": {"x", "y"}, "circle": {"x", "y", "radius"}, "rectangle": {"x0", "y0", "x1", "y1"},
	"corner_radius": {"at the top", "at the base"}, "lit": {"from", "to"}, "ages": {"youngest", "oldest"},
}

var coordinates = []string{"x", "y", "further value"}

// oneOf is what one item of a list is called, where it is not the list's key
// without its s.
var oneOf = map[string]string{
	"keep_clear": "shape to keep clear", "polygon": "corner", "outline": "corner", "rib": "end",
	"poured": "pouring", "growing": "crop", "closed": "closed stretch", "open_days": "open day", "includes": "part",
}

// keyWords is a key in words.
func keyWords(key string) string {
	if words, own := ownWords[key]; own {
		return words
	}
	if open, closed := strings.CutSuffix(key, "_closed"); closed {
		return keyWords(open) + " when closed"
	}
	return strings.ReplaceAll(key, "_", " ")
}

var ownWords = map[string]string{
	"rootbell": "format", "ph": "pH", "ec": "EC", "co2": "CO₂", "nitrate_n": "nitrate as nitrogen", "ammonium_n": "ammonium as nitrogen", "urea_n": "urea as nitrogen",
	"phosphate_p": "phosphate as phosphorus", "ec_scale": "EC scale",
	"keep_clear": "shapes to keep clear", "poured": "pourings", "growing": "crops", "closed": "closed stretches", "why": "reason",
	"at": "place", "lit": "hours of light", "daily_topup": "daily top-up",
}
