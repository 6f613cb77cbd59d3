package plan

import (
	"slices"
	"strings"
)

// shape is what sort of value a node is.
type shape int

const (
	// absent is a key with nothing behind it, or null: as if it were left out.
	absent shape = iota
	scalar
	mapping
	sequence
	// spoiled is a value about which a problem has been said already.
	spoiled
)

// node is one value of the document's tree. Its bytes run from start to end in
// the text: of a scalar its token, of a flow collection bracket to bracket, of
// a block collection its first key or dash to the end of its last value.
type node struct {
	shape      shape
	at         place
	start, end int
	text       string // a scalar's value
	quote      byte   // ' or " around a scalar, or 0
	flow       bool   // inside or itself a collection in [ ] or { }
	entries    []entry
	items      []*node
}

// entry is a key with its value.
type entry struct {
	key        string
	at         place
	start, end int // the key's own bytes
	colon      int // the byte after the colon, or the key's end where there is none
	value      *node
}

// child is the value of a key; nil when the key is not there.
func (n *node) child(key string) *node {
	if n == nil || n.shape != mapping {
		return nil
	}
	i := slices.IndexFunc(n.entries, func(e entry) bool { return e.key == key })
	if i < 0 {
		return nil
	}
	return n.entries[i].value
}

// step is one step of a path: a key, or a place in a list.
type step struct {
	key   string
	index int // -1 for a key
}

// splitPath takes tubs[0].lid.size[1] apart.
func splitPath(path string) []step {
	var steps []step
	for part := range strings.SplitSeq(path, ".") {
		key, rest, _ := strings.Cut(part, "[")
		if key != "" {
			steps = append(steps, step{key: key, index: -1})
		}
		for rest != "" {
			inside, after, closed := strings.Cut(rest, "]")
			index := 0
			for _, r := range inside {
				if r < '0' || r > '9' || index > 1e6 {
					return nil
				}
				index = index*10 + int(r-'0')
			}
			if !closed || inside == "" {
				return nil
			}
			steps = append(steps, step{index: index})
			rest = strings.TrimPrefix(after, "[")
		}
	}
	return steps
}

// follow walks as far along the steps as the tree goes: the last node reached,
// where it is pointed at, and the steps that are left.
func (n *node) follow(steps []step) (last *node, at place, left []step) {
	last, at = n, n.at
	for i, s := range steps {
		switch {
		case s.index < 0 && last.shape == mapping:
			k := slices.IndexFunc(last.entries, func(e entry) bool { return e.key == s.key })
			if k < 0 {
				return last, at, steps[i:]
			}
			at = last.entries[k].pointAt()
			last = last.entries[k].value
		case s.index >= 0 && last.shape == sequence && s.index < len(last.items):
			last = last.items[s.index]
			at = last.at
		default:
			return last, at, steps[i:]
		}
	}
	return last, at, nil
}

// pointAt is where a finding about the entry points: at a value on the key's
// line, at the key otherwise.
func (e entry) pointAt() place {
	v := e.value
	if v.shape == absent || v.at.line != e.at.line {
		return e.at
	}
	return v.at
}
