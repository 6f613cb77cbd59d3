package plan

import "slices"

// alike tells whether two trees say the same, key by key and in the same order,
// however they are laid out.
func alike(a, b *node) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.shape == b.shape && a.text == b.text &&
		slices.EqualFunc(a.items, b.items, alike) &&
		slices.EqualFunc(a.entries, b.entries, func(x, y entry) bool { return x.key == y.key && alike(x.value, y.value) })
}

// hollow tells whether nothing is said by a node: it is absent, or a group or
// list in which nothing is.
func (n *node) hollow() bool {
	switch n.shape {
	case absent:
		return true
	case mapping:
		return !slices.ContainsFunc(n.entries, func(e entry) bool { return !e.value.hollow() })
	case sequence:
		return !slices.ContainsFunc(n.items, func(item *node) bool { return !item.hollow() })
	}
	return false
}

// valued is the node that a typed text is read as.
func valued(typed string) *node {
	text := string(plainBlanks(typed))
	if text == "" {
		return &node{shape: absent}
	}
	return &node{shape: scalar, text: text}
}

// placed is the tree with a value at a path, the groups and lists on the way
// made where they are not there. A place in a list is one that is there, or the
// one behind the last.
func (n *node) placed(steps []step, value *node) *node {
	if len(steps) == 0 {
		return value
	}
	s, rest := steps[0], steps[1:]
	if s.index >= 0 {
		out := &node{shape: sequence}
		if n != nil && n.shape == sequence {
			out.items = slices.Clone(n.items)
		}
		if s.index < len(out.items) {
			out.items[s.index] = out.items[s.index].placed(rest, value)
			return out
		}
		out.items = append(out.items, (*node)(nil).placed(rest, value))
		return out
	}
	out := &node{shape: mapping}
	if n != nil && n.shape == mapping {
		out.entries = slices.Clone(n.entries)
	}
	if k := out.entryAt(s.key); k >= 0 {
		out.entries[k].value = out.entries[k].value.placed(rest, value)
		return out
	}
	out.entries = append(out.entries, entry{key: s.key, value: (*node)(nil).placed(rest, value)})
	return out
}

// without is the tree with a key or an item taken out, which is there.
func (n *node) without(steps []step) *node {
	s, out := steps[0], &node{shape: n.shape, entries: slices.Clone(n.entries), items: slices.Clone(n.items)}
	if s.index >= 0 {
		if len(steps) == 1 {
			out.items = slices.Delete(out.items, s.index, s.index+1)
			return out
		}
		out.items[s.index] = out.items[s.index].without(steps[1:])
		return out
	}
	k := out.entryAt(s.key)
	if len(steps) == 1 {
		out.entries = slices.Delete(out.entries, k, k+1)
		return out
	}
	out.entries[k].value = out.entries[k].value.without(steps[1:])
	return out
}

// entryAt is the place of a key among a mapping's entries, or -1.
func (n *node) entryAt(key string) int {
	return slices.IndexFunc(n.entries, func(e entry) bool { return e.key == key })
}
