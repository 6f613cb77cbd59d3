package plan

import (
	"bytes"
	"slices"
	"strconv"
	"strings"
)

// Difference is one thing in which two documents differ. Path is where it
// stands in the new text, or in the old one where it is gone; Words says that as
// a teacher would, such as 'tub Heron, lid, hole 3'. Old and New are what was
// typed, empty where nothing was; the lines count from 1, and are 0 where the
// key or item is not there. Path is empty where it is the text as a whole that differs.
type Difference struct {
	Path, Words      string
	Old, New         string
	OldLine, NewLine int
}

// LayoutOnly is what Words says when two texts say the same.
const LayoutOnly = "only comments or layout"

// Differences tells in what two documents differ, key by key in the order of
// the new text, with what is gone behind what stands in its group. Things with a
// name are told apart by it; other lists by what has stayed in them. A size, a
// point or a shape counts as one value. Texts that differ and say the same have
// one difference, LayoutOnly; a text that cannot be read key by key is one
// difference as a whole.
func Differences(before, after []byte) []Difference {
	if bytes.Equal(before, after) {
		return nil
	}
	was, is := Read(before), Read(after)
	line := firstLineApart(before, after)
	if was.Trouble() != nil || is.Trouble() != nil {
		return []Difference{{Words: "the text, which cannot be read key by key", OldLine: line, NewLine: line}}
	}
	c := &comparison{}
	c.groups(pair{was.root, is.root, "", nil, kin{of: planType}})
	if len(c.found) == 0 {
		return []Difference{{Words: LayoutOnly, OldLine: line, NewLine: line}}
	}
	return c.found
}

func firstLineApart(before, after []byte) int {
	n := 0
	for n < len(before) && n < len(after) && before[n] == after[n] {
		n++
	}
	return bytes.Count(before[:n], []byte("\n")) + 1
}

// pair is what stands at one place of the old and the new document; either may
// be nil.
type pair struct {
	was, is *node
	path    string
	words   []string
	kin     kin // what the format says, or of no type where it says nothing
}

// comparison collects differences.
type comparison struct{ found []Difference }

// silent tells whether a node is as good as not there.
func silent(n *node) bool {
	return n == nil || n.shape == absent || n.shape == sequence && len(n.items) == 0 ||
		n.shape == mapping && !slices.ContainsFunc(n.entries, func(e entry) bool { return !silent(e.value) })
}

func (c *comparison) nodes(p pair) {
	switch {
	case silent(p.was) && silent(p.is):
	case silent(p.was), silent(p.is), p.was.shape != p.is.shape:
		c.say(p)
	case p.is.shape == mapping:
		c.groups(p)
	case p.is.shape == sequence && (p.kin.of == nil || p.kin.fixed() == 0):
		c.lists(p)
	case !alike(p.was, p.is):
		c.say(p)
	}
}

func (c *comparison) say(p pair) {
	d := Difference{Path: p.path, Words: strings.Join(p.words, ", ")}
	if p.was != nil {
		d.Old, d.OldLine = p.was.said(), p.was.at.line
	}
	if p.is != nil {
		d.New, d.NewLine = p.is.said(), p.is.at.line
	}
	c.found = append(c.found, d)
}

// groups compares key by key.
func (c *comparison) groups(p pair) {
	met := map[string]int{}
	for _, e := range p.is.entries {
		c.nodes(p.key(e.key, p.was.nth(e.key, met[e.key]), e.value))
		met[e.key]++
	}
	gone := map[string]int{}
	for _, e := range p.was.entries {
		if gone[e.key]++; gone[e.key] > met[e.key] {
			c.nodes(p.key(e.key, e.value, nil))
		}
	}
}

// nth is the value of a key that is there for the nth time, counted from 0.
func (n *node) nth(key string, count int) *node {
	for _, e := range n.entries {
		if e.key != key {
			continue
		}
		if count == 0 {
			return e.value
		}
		count--
	}
	return nil
}

func (p pair) key(key string, was, is *node) pair {
	inner := pair{was: was, is: is, path: join(p.path, key), words: append(slices.Clone(p.words), keyWords(key))}
	if p.kin.of != nil {
		if k, known := p.kin.step(step{key: key, index: -1}); known {
			inner.kin = k
		}
	}
	return inner
}

// lists compares item by item, and says when named things changed places.
func (c *comparison) lists(p pair) {
	m := matched(lastKey(p.path), p.was.items, p.is.items)
	for j, item := range p.is.items {
		c.item(p, m.old(j), item, j)
	}
	for i, item := range p.was.items {
		if !slices.Contains(m.of, i) {
			c.item(p, item, nil, i)
		}
	}
	kept := slices.DeleteFunc(slices.Clone(m.of), func(i int) bool { return i < 0 })
	if !slices.IsSorted(kept) {
		p.words = append(slices.Clone(p.words), "order")
		c.found = append(c.found, Difference{
			Path: p.path, Words: strings.Join(p.words, ", "), Old: namesIn(p.path, p.was), New: namesIn(p.path, p.is), OldLine: p.was.at.line, NewLine: p.is.at.line,
		})
	}
}

func namesIn(path string, list *node) string {
	var out []string
	for i, item := range list.items {
		name := nameOf(lastKey(path), item)
		if name == "" {
			name = strconv.Itoa(i + 1)
		}
		out = append(out, name)
	}
	return strings.Join(out, ", ")
}

// item compares two items of a list, or says that one is new or gone.
func (c *comparison) item(p pair, was, is *node, index int) {
	called := was
	if nameOf(lastKey(p.path), was) == "" {
		called = is
	}
	inner := pair{was: was, is: is, path: p.path + "[" + strconv.Itoa(index) + "]"}
	inner.words = itemWords(slices.Clone(p.words), lastKey(p.path), strings.Count(p.path[strings.LastIndexByte(p.path, '.')+1:], "["), index, called)
	if p.kin.of != nil {
		if k, known := p.kin.step(step{index: index}); known {
			inner.kin = k
		}
	}
	if was != nil && is != nil {
		c.nodes(inner)
		return
	}
	c.say(inner)
}

// said is a value as one text: a size as '54 cm, 38 cm', a group as 'width: 1 m,
// depth: 45 cm'.
func (n *node) said() string {
	var parts []string
	for _, e := range n.entries {
		parts = append(parts, e.key+": "+e.value.saidInside())
	}
	for _, item := range n.items {
		parts = append(parts, item.saidInside())
	}
	if n.shape == scalar {
		return n.text
	}
	return strings.Join(parts, ", ")
}

func (n *node) saidInside() string {
	switch n.shape {
	case mapping:
		return "{" + n.said() + "}"
	case sequence:
		return "[" + n.said() + "]"
	}
	return n.said()
}
