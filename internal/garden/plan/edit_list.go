package plan

import (
	"fmt"
	"slices"
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
	steps, words, k, err := d.named(list)
	if err != nil {
		return nil, err
	}
	if !k.isList() {
		return nil, fmt.Errorf("%s is no list", words)
	}
	n, _, left := d.root.follow(steps)
	if len(left) == 0 && n.shape != sequence && n.shape != absent {
		return nil, fmt.Errorf("%s is no list in the text: change it there", words)
	}
	first := step{index: 0}
	return given(item, func(value offer, whole *piece) (*Document, error) {
		switch {
		case len(left) > 0:
			return d.added(n, append(slices.Clone(steps), first), append(slices.Clone(left), first), words, value)
		case n.shape == absent:
			return d.replaced(steps, words, beside(k, 0, nil, value))
		}
		return d.appended(n, steps, words, value, whole)
	})
}

// appended puts an item behind the last one of a list that is there.
func (d *Document) appended(n *node, steps []step, words string, value offer, whole *piece) (*Document, error) {
	want := d.root.placed(append(slices.Clone(steps), step{index: len(n.items)}), value.node)
	if n.flow {
		return d.apply(want, words, d.flowAddition(n, value.text))
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
	return d.apply(want, words, d.lineBehind(end, dash+strings.Join(lines, d.lineEnd())))
}
