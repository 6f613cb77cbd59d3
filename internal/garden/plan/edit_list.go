package plan

import (
	"fmt"
	"strings"
)

// Append gives a document's text with an item added behind the last of a list,
// such as tubs[0].lid.holes, lamps or school.closed. The item is a group in
// { }, a list in [ ], or a text as typed. A list that is not there is made, and
// the groups around it. A list in [ ] goes on in [ ], one with dashes goes on
// with dashes; behind an item that has a line for each key, the new one has too.
// As with Edit, every other byte stays.
func Append(text []byte, list, item string) ([]byte, error) {
	return change(text, func(d *Document) (*Document, error) { return d.withItem(list, item) })
}

func (d *Document) withItem(list, item string) (*Document, error) {
	steps, k, err := named(list)
	if err != nil {
		return nil, err
	}
	if !k.isList() {
		return nil, fmt.Errorf("%s is no list", list)
	}
	value, whole, err := given(item)
	if err != nil {
		return nil, err
	}
	n, _, left := d.root.follow(steps)
	switch {
	case len(left) > 0:
		return d.added(n, append(steps[:len(steps):len(steps)], step{index: 0}), append(left[:len(left):len(left)], step{index: 0}), list, value)
	case n.shape == absent:
		return d.replaced(steps, list, beside(k, 0, nil, value))
	case n.shape != sequence:
		return nil, fmt.Errorf("%s is no list in the text: change it there", list)
	}
	return d.appendedWhole(n, steps, list, value, whole)
}

// appended puts an item behind the last one of a list that is there.
func (d *Document) appended(n *node, steps []step, path string, value offer) (*Document, error) {
	_, whole, err := given(value.text)
	if err != nil || value.node.shape == scalar {
		whole = nil
	}
	return d.appendedWhole(n, steps, path, value, whole)
}

func (d *Document) appendedWhole(n *node, steps []step, path string, value offer, whole *piece) (*Document, error) {
	want := d.root.placed(append(steps[:len(steps):len(steps)], step{index: len(n.items)}), value.node)
	if n.flow {
		return d.apply(want, path, d.flowAddition(n, value.text))
	}
	lines := []string{value.bare}
	last := n.items[len(n.items)-1]
	if whole != nil && whole.asBlock(whole.node, last) && last.shape == mapping {
		lines = whole.blockLines(whole.node, last, last.at.column-1)
	}
	dash := strings.Repeat(" ", n.at.column-1) + "-"
	if last.at.column > n.at.column+2 && len(lines) > 1 {
		dash += strings.Repeat(" ", last.at.column-n.at.column-1)
	} else {
		dash += " "
	}
	end := d.behindComments(n.end, n.at.column)
	return d.apply(want, path, d.lineBehind(end, dash+strings.Join(lines, d.lineEnd())))
}
