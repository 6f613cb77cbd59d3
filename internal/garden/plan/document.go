package plan

import (
	"errors"
	"fmt"
	"slices"
	"strings"
)

// Document is a plan's text with its keys told apart, whether or not what is
// typed there is right. It fills forms: one reading serves all their fields.
type Document struct {
	text []byte
	src  *source
	root *node
	sick error // why the text cannot be edited value by value
}

// Read tells a text's keys apart. A text that is no plan, or broken in places,
// gives what could be read; see Trouble.
func Read(text []byte) *Document {
	d := &Document{text: slices.Clone(text)}
	src, unreadable := newSource(d.text)
	if unreadable != nil {
		d.sick = errors.New(unreadable.What)
		return d
	}
	d.src = src
	root, problems, _ := readTree(src)
	d.root = root
	switch {
	case len(problems) > 0:
		d.sick = fmt.Errorf("line %d, column %d: %s: change that in the text first", problems[0].Line, problems[0].Column, problems[0].What)
	case root == nil:
		d.sick = errors.New("the plan is empty: begin with the one that 'rootbell new' writes")
	}
	return d
}

// Trouble is why the text cannot be edited value by value, in words; nil when
// it can.
func (d *Document) Trouble() error {
	if d.sick == nil && d.root.shape != mapping {
		return errors.New("the plan has no keys: begin with the one that 'rootbell new' writes")
	}
	return d.sick
}

// Value is the text typed at a path, without its quotes, and where it stands,
// counted from 1 in characters. ok is false where no single value stands; the
// place is then that of the nearest group around it.
func (d *Document) Value(path string) (typed string, line, column int, ok bool) {
	if d.root == nil {
		return "", 1, 1, false
	}
	n, at, left := d.root.follow(splitPath(path))
	if len(left) > 0 || n.shape != scalar {
		return "", at.line, at.column, false
	}
	return n.text, at.line, at.column, true
}

// Has tells whether something stands at a path: a value, or a group or list
// with something in it.
func (d *Document) Has(path string) bool {
	steps := splitPath(path)
	if d.root == nil || len(steps) == 0 {
		return false
	}
	n, _, left := d.root.follow(steps)
	return len(left) == 0 && !n.hollow()
}

// Items is how many items the list at a path has: none where there is no list.
func (d *Document) Items(list string) int {
	steps := splitPath(list)
	if d.root == nil || len(steps) == 0 {
		return 0
	}
	n, _, left := d.root.follow(steps)
	if len(left) > 0 {
		return 0
	}
	return len(n.items)
}

// Value is what is typed at a path of a text; see Document.Value. For more than
// one value, Read once.
func Value(text []byte, path string) (typed string, line, column int, ok bool) {
	return Read(text).Value(path)
}

// Items is how many items a list of a text has; see Document.Items.
func Items(text []byte, list string) int { return Read(text).Items(list) }

// Has tells whether something stands at a path of a text; see Document.Has.
func Has(text []byte, path string) bool { return Read(text).Has(path) }

// cut is a stretch of the text and what takes its place.
type cut struct {
	start, end int
	text       string
}

// apply makes the cuts, which lie apart from each other, and reads the text
// again. One that is read as anything but the tree wanted is not handed out.
func (d *Document) apply(want *node, words string, cuts ...cut) (*Document, error) {
	slices.SortStableFunc(cuts, func(a, b cut) int { return a.start - b.start })
	var out strings.Builder
	at := 0
	for _, c := range cuts {
		if c.start < at || c.end < c.start || c.end > len(d.text) {
			return nil, unplain(words)
		}
		out.Write(d.text[at:c.start])
		out.WriteString(c.text)
		at = c.end
	}
	out.Write(d.text[at:])
	next := Read([]byte(out.String()))
	if next.Trouble() != nil || !alike(next.root, want) {
		return nil, unplain(words)
	}
	return next, nil
}

// unplain refuses an edit at a place that is written in an uncommon way.
func unplain(words string) error {
	return fmt.Errorf("%s cannot be edited there: change it in the text", words)
}
